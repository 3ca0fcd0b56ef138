//! How far a bolt stretches.

use std::f64::consts::PI;

use crate::model::fastener::Thread;

/// Form of the head.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Head {
    /// Hexagon.
    Hexagon,
    /// Round with a socket.
    Socket,
}

/// What holds the thread; its Young's modulus \[Pa\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Hold {
    /// A nut.
    Nut(f64),
    /// A tapped part.
    Tapped(f64),
}

/// A bolt as it stretches between head and thread.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shank<'a> {
    /// Its thread.
    pub thread: &'a Thread,
    /// Length of full diameter in the grip \[m\].
    pub plain: f64,
    /// Length of free thread in the grip \[m\].
    pub threaded: f64,
    /// Young's modulus of the bolt \[Pa\].
    pub youngs_modulus: f64,
    /// Form of the head.
    pub head: Head,
    /// What holds the thread.
    pub hold: Hold,
}

impl Shank<'_> {
    /// Resilience of the bolt, δS [m/N].
    ///
    /// # Equation
    ///   δS = Σ li/(E Ai):
    ///   head 0.5 d on AN (socket 0.4 d); plain length on AN; free thread on A3;
    ///   thread held 0.5 d on A3; nut 0.4 d on AN (tapped part 0.33 d, with its own E)
    ///
    ///   AN, A3  areas of nominal and root diameter  \[m²\]
    ///
    /// # Range
    /// Shank of nominal diameter, no waist.
    ///
    /// # Source
    /// VDI 2230-1:2003, from memory. A form without head and nut is stiffer by some 28 % for an
    /// ordinary bolt through a rail, see [`short_resilience`](super::stiffness_models::short_resilience).
    #[must_use]
    pub fn resilience(&self) -> f64 {
        let d = self.thread.nominal;
        let full = PI / 4.0 * d.powi(2);
        let root = PI / 4.0 * self.thread.root_diameter().powi(2);
        let head = match self.head {
            Head::Hexagon => 0.5 * d,
            Head::Socket => 0.4 * d,
        };
        let (held, modulus) = match self.hold {
            Hold::Nut(modulus) => (0.4 * d, modulus),
            Hold::Tapped(modulus) => (0.33 * d, modulus),
        };
        ((head + self.plain) / full + (self.threaded + 0.5 * d) / root) / self.youngs_modulus
            + held / (full * modulus)
    }
}
