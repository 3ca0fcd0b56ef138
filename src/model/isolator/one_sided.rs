//! Supports that lie loose on their seat: they push but do not pull.

use std::sync::Arc;

use super::{Law, LawPoint};
use crate::spatial::{Mat3, Vec3};

/// Gap at which a loose support has lost the last of its load \[m\].
///
/// # Source
/// Common practice: small against any sag, large enough that the contact is no kink.
pub(super) const SEATED: f64 = 0.1e-3;

/// Largest deflection at which a lifted law is asked where it pulls no more \[m\].
const FARTHEST: f64 = 10.0;

/// Most steps of a search for a root; halving alone needs fewer.
const STEPS: u32 = 200;

/// A law that carries no tension along w: where it would be pulled it lifts off.
///
/// # Equation
///   φ'(u, v, w) = min over gaps s ≥ 0 of φ(u, v, w − s) + c(s)
///   −dc/ds = F₀ (1 − √(s/s₁))²  for s < s₁, 0 beyond
///   with s = s₁ z²:   c = F₀ s₁ (1/6 − z² + 4 z³/3 − z⁴/2)
///   tangent:   k' = k − (k e)(k e)'/(e' k e + 1/a),   a = s₁ z/(F₀ (1 − z)),   e along w
///
///   φ, k  energy and tangent of the law at the seated deflection   \[J\], [N/m]
///   s     gap between support and seat                             \[m\]
///   s₁    gap at which the last contact is lost                    \[m\]   0.1 mm
///   F₀    push of the law at −s₁                                   \[N\]
///   a     softness of the contact                                  [m/N]
///
/// # Range
/// Any convex law. Pushed with F₀ or more it is the law itself, to the last
/// digit; where the axes know nothing of each other that is from 0.1 mm of push
/// on. Pulled by 0.1 mm beyond the deflection at which the law loses its push,
/// its force along w is nothing. Between the two, a constant rate k gives the
/// force k (s₁ − w)²/(4 s₁). Across w the law keeps its rates, with w free where
/// it has lifted off: a bolt or a spigot locates it. Its energy is nothing where
/// it has lifted off, not quite at the free position.
///
/// # Source
/// Derived: of a function that is convex in all its arguments, the minimum over
/// one of them is convex in the others, so that a tangent never has a negative
/// direction. Lifting off at a fixed deflection would not have that property for
/// a law whose axes know of each other: sheared pieces that lean push or pull
/// along w without any deflection along w. The contact is that whose softness
/// rises from none to all, so that the tangent has no jump at either end.
#[derive(Debug)]
pub(super) struct LiftsOff {
    law: Arc<dyn Law>,
    seated_push: f64,
}

impl LiftsOff {
    pub(super) fn new(law: Arc<dyn Law>) -> Self {
        let seated_push = -law.at(&Vec3::new(0.0, 0.0, -SEATED)).force.z;
        Self { law, seated_push }
    }

    /// The law without deflection along w beyond what it takes by itself.
    fn lifted(&self, x: &Vec3) -> LawPoint {
        let mut least = self.law.at(&Vec3::new(x.x, x.y, 0.0));
        // Where the axes know of each other the support settles at another place.
        if least.force.z.abs() > 0.0 {
            let place = self.unpushed(x);
            least = self.law.at(&Vec3::new(x.x, x.y, place));
        }
        let mut point = softened(least, 0.0);
        // To the last digit, where rounding would leave a trace.
        point.force.z = 0.0;
        point.tangent.set_row(2, &Vec3::zeros().transpose());
        point.tangent.set_column(2, &Vec3::zeros());
        point
    }

    /// Deflection along w at which the law neither pushes nor pulls, below that of `x`.
    fn unpushed(&self, x: &Vec3) -> f64 {
        let upper = x.z - SEATED;
        let mut reach = SEATED;
        let push = |y: f64| {
            let point = self.law.at(&Vec3::new(x.x, x.y, y));
            (point.force.z, point.tangent[(2, 2)])
        };
        while reach < FARTHEST && push(upper - reach).0 > 0.0 {
            reach *= 2.0;
        }
        root([upper - reach, upper], push)
    }

    /// Between seated and lifted: the gap at which law and contact push alike.
    fn in_contact(&self, x: &Vec3) -> LawPoint {
        let at_gap = |z: f64| self.law.at(&Vec3::new(x.x, x.y, x.z - SEATED * z * z));
        let z = root([0.0, 1.0], |z| {
            let point = at_gap(z);
            let slack = 1.0 - z;
            (
                -point.force.z - self.seated_push * slack * slack,
                2.0 * (point.tangent[(2, 2)] * SEATED * z + self.seated_push * slack),
            )
        });
        let slack = 1.0 - z;
        let mut point = at_gap(z);
        point.force.z = -self.seated_push * slack * slack;
        let z2 = z * z;
        let stored = 1.0 / 6.0 - z2 + 4.0 / 3.0 * z2 * z - z2 * z2 / 2.0;
        point.energy += self.seated_push * SEATED * stored;
        // A contact that is all but rigid: the law's own tangent.
        if z <= 0.0 {
            return point;
        }
        softened(point, self.seated_push * slack / (SEATED * z))
    }
}

impl Law for LiftsOff {
    fn at(&self, x: &Vec3) -> LawPoint {
        let seated = self.law.at(x);
        if seated.force.z <= -self.seated_push {
            return seated;
        }
        let nearly = self.law.at(&Vec3::new(x.x, x.y, x.z - SEATED));
        if nearly.force.z >= 0.0 {
            return self.lifted(x);
        }
        self.in_contact(x)
    }
}

/// The law behind a spring of rate `contact` along w [N/m].
fn softened(mut point: LawPoint, contact: f64) -> LawPoint {
    let column = point.tangent.column(2).into_owned();
    let both = column.z + contact;
    if both > 0.0 {
        let gone: Mat3 = column * column.transpose() / both;
        point.tangent -= gone;
    }
    point
}

/// Root of a rising function, given with its slope, between two ends: Newton's method, halving where it would leave them.
fn root([mut low, mut high]: [f64; 2], f: impl Fn(f64) -> (f64, f64)) -> f64 {
    let mut x = (low + high) / 2.0;
    for _ in 0..STEPS {
        let (value, slope) = f(x);
        if value > 0.0 {
            high = x;
        } else if value < 0.0 {
            low = x;
        } else {
            return x;
        }
        let newton = x - value / slope;
        let next = if newton > low && newton < high {
            newton
        } else {
            (low + high) / 2.0
        };
        if (next - x).abs() <= 4.0 * f64::EPSILON * x.abs() {
            return next;
        }
        x = next;
    }
    x
}
