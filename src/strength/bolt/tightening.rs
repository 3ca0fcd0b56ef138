//! Preload and tightening torque.

use std::f64::consts::PI;

use crate::model::fastener::{Band, Thread};

/// Share of the yield strength up to which a bolt is tightened by torque.
///
/// # Source
/// VDI 2230-1:2003, from memory.
pub const USUAL_SHARE: f64 = 0.9;

/// Inverse cosine of half the flank angle of 60°, through which a flank presses harder than the axial force.
pub(super) const FLANK: f64 = 1.155;

/// Coefficients of friction of a bolt that is tightened.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Friction {
    /// In the thread.
    pub thread: f64,
    /// Under the head or nut that is turned.
    pub head: f64,
}

impl Friction {
    /// The same in the thread and under the head.
    #[must_use]
    pub fn same(friction: f64) -> Self {
        Self {
            thread: friction,
            head: friction,
        }
    }
}

/// Mean diameter on which the friction under a head acts \[m\].
///
/// # Equation
///   D = (dW + dh)/2
///
///   dW, dh  outer diameter of the bearing face, hole  \[m\]
///
/// # Source
/// VDI 2230-1:2003, from memory.
#[must_use]
pub fn friction_diameter(head_bearing: f64, hole: f64) -> f64 {
    f64::midpoint(head_bearing, hole)
}

/// Torque that tightens a bolt to a preload [N m].
///
/// # Equation
///   M = F c,   c = 0.16 P + 0.58 d2 μG + D/2 μK
///
///   F       preload                                   \[N\]
///   P, d2   pitch and pitch diameter of the thread    \[m\]
///   D       mean diameter of friction under the head  \[m\]
///   μG, μK  friction in the thread, under the head
///
/// # Range
/// Flanks at 60°. No prevailing torque of a locking nut.
///
/// # Source
/// VDI 2230-1:2003, from memory.
#[must_use]
pub fn torque(thread: &Thread, friction_diameter: f64, preload: f64, friction: Friction) -> f64 {
    preload * torque_per_preload(thread, friction_diameter, friction)
}

fn torque_per_preload(thread: &Thread, friction_diameter: f64, friction: Friction) -> f64 {
    0.16 * thread.pitch
        + 0.58 * thread.pitch_diameter() * friction.thread
        + friction_diameter / 2.0 * friction.head
}

/// Preload that a torque gives \[N\]: [`torque`] solved for it.
#[must_use]
pub fn preload(thread: &Thread, friction_diameter: f64, torque: f64, friction: Friction) -> f64 {
    torque / torque_per_preload(thread, friction_diameter, friction)
}

/// Factor K of the short form M = K d F, to be shown beside the torque and never put in.
///
/// # Equation
///   K = M/(F d)
///
/// # Source
/// R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., section 8-8.
#[must_use]
pub fn nut_factor(torque: f64, preload: f64, nominal: f64) -> f64 {
    torque / (preload * nominal)
}

/// Preload at which pull and twist of tightening together reach a share of the yield strength \[N\].
///
/// # Equation
///   F = ν R A0 / √(1 + 3 (3/2 (d2/d0) (P/(π d2) + 1.155 μG))²)
///
///   ν       share of the yield strength, see [`USUAL_SHARE`]
///   R       yield strength                            \[Pa\]
///   A0, d0  stress area and its diameter              \[m²\], \[m\]
///   P, d2   pitch and pitch diameter of the thread    \[m\]
///   μG      friction in the thread
///
/// 3/2 is the twist spread evenly over a section that yields; the elastic section has 2.
///
/// # Range
/// Fully threaded or full shank; no waisted bolt.
///
/// # Source
/// VDI 2230-1:2003, from memory.
#[must_use]
pub fn permissible_preload(
    thread: &Thread,
    yield_strength: f64,
    thread_friction: f64,
    share: f64,
) -> f64 {
    let (d2, d0) = (thread.pitch_diameter(), thread.stress_diameter());
    let lead = thread.pitch / (PI * d2);
    let twist = 1.5 * d2 / d0 * (lead + FLANK * thread_friction);
    share * yield_strength * thread.stress_area() / (1.0 + 3.0 * twist * twist).sqrt()
}

/// What comes of tightening to one torque while friction is known only within a band.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tightened {
    /// Torque that overloads no bolt, set by the low friction [N m].
    pub torque: f64,
    /// Preload of the slipperiest bolt: the permissible one \[N\].
    pub most: f64,
    /// Preload of the bolt with the highest friction at this torque \[N\].
    pub least_by_friction: f64,
    /// Preload below which the way of tightening leaves no bolt \[N\].
    pub least_by_scatter: f64,
    /// Factor K of the short form at the low and at the high friction, to be shown.
    pub nut_factor: Band,
}

impl Tightened {
    /// Preload to rely on \[N\]: the smaller of the two estimates.
    ///
    /// They are not multiplied, since the scatter of a torque wrench holds that of friction.
    #[must_use]
    pub fn least(&self) -> f64 {
        self.least_by_friction.min(self.least_by_scatter)
    }
}

/// Torque for a bolt, and the preloads between which it leaves it.
///
/// # Equation
///   Fmax = F(μlow),   M = Fmax c(μlow),   Fmin = min(M/c(μhigh), Fmax/αA)
///
///   F(μ), c(μ)  [`permissible_preload`], [`torque`] over preload
///   αA          scatter of the way of tightening, at least 1
///
/// # Source
/// VDI 2230-1:2003, from memory; the torque from the low, the least preload from the high end of
/// friction: the same.
#[must_use]
pub fn tighten(
    thread: &Thread,
    friction_diameter: f64,
    yield_strength: f64,
    share: f64,
    friction: Band,
    scatter: f64,
) -> Tightened {
    let [low, high] = [friction.low, friction.high].map(Friction::same);
    let most = permissible_preload(thread, yield_strength, friction.low, share);
    let torque = torque(thread, friction_diameter, most, low);
    let least_by_friction = preload(thread, friction_diameter, torque, high);
    Tightened {
        torque,
        most,
        least_by_friction,
        least_by_scatter: most / scatter,
        nut_factor: Band {
            low: nut_factor(torque, most, thread.nominal),
            high: nut_factor(torque, least_by_friction, thread.nominal),
        },
    }
}

/// Largest over least preload of bolts that come out within `deviation` of the mean.
///
/// # Equation
///   αA = (1 + x)/(1 − x)
///
/// # Range
/// x from 0 to below 1.
///
/// # Source
/// Derived from the meaning of both.
#[must_use]
pub fn scatter_of_deviation(deviation: f64) -> f64 {
    (1.0 + deviation) / (1.0 - deviation)
}

/// Preload from turning a nut by an angle past snug \[N\].
///
/// # Equation
///   F = (θ/2π) P/(δS + δP)
///
///   θ       turn                                      \[rad\]
///   P       pitch                                     \[m\]
///   δS, δP  resilience of the bolt, the clamped parts  [m/N]
///
/// # Range
/// Elastic, all faces already in contact.
///
/// # Source
/// Derived: what the nut moves is shared by bolt and parts.
#[must_use]
pub fn preload_of_turn(turn: f64, pitch: f64, bolt: f64, clamped: f64) -> f64 {
    turn / (2.0 * PI) * pitch / (bolt + clamped)
}
