//! Supports that lie loose on their seat: they push but do not pull.

use std::sync::Arc;

use super::{Law, LawPoint};
use crate::spatial::{Mat3, Vec3};

/// How far a loose support beds into its seat under its first load \[m\].
///
/// # Source
/// Common practice: small against any sag, large enough that the contact is no kink.
pub(super) const BEDDING: f64 = 0.05e-3;

/// Largest deflection at which a lifted law is asked where it pulls no more \[m\].
const FARTHEST: f64 = 10.0;

/// Most steps of a search for a root; halving alone needs fewer.
const STEPS: u32 = 200;

/// A law that carries no tension along w: where it would be pulled it lifts off.
///
/// # Equation
///   φ'(u, v, w) = min over 0 ≤ z ≤ 1 of φ(u, v, w + b (1 − z²)) + c(z)
///   c = F₀ b (1/6 − z² + 4 z³/3 − z⁴/2), so that the contact pushes F₀ (1 − z)²
///   tangent:   k' = k − (k e)(k e)'/(e' k e + 1/a),   a = b z/(F₀ (1 − z)),   e along w
///
///   φ, k  energy and tangent of the law                     \[J\], [N/m]
///   b     how far the support beds in                       \[m\]   0.05 mm
///   z     1 where it just lies on its seat, 0 where it is bedded in
///   F₀    push of the law at −b                             \[N\]
///   a     softness of the contact                           [m/N]
///
/// # Range
/// Any convex law. Where the law does not push, it has lifted off: its force
/// along w is nothing, and w is free where u and v are rated. Pushed with F₀ or
/// more it is bedded in, and the law itself, to the last digit, at a deflection
/// less b. Between, a constant rate k gives the force k w²/(4 b), down to
/// w = −2 b. Across w the law keeps its rates: a bolt or a spigot locates it.
/// Force and energy at the free position are nothing, as of every law.
///
/// # Source
/// Derived: of a function that is convex in all its arguments, the minimum over
/// one of them is convex in the others, so that a tangent never has a negative
/// direction. Lifting off at a fixed deflection would not have that property for
/// a law whose axes know of each other: pieces that lean, sheared, push or pull
/// along w without any deflection along w. The contact is that whose softness
/// rises from none to all, so that the tangent has no jump at either end.
#[derive(Debug)]
pub(super) struct LiftsOff {
    law: Arc<dyn Law>,
    /// Push under which it is bedded in \[N\].
    bedding_push: f64,
}

impl LiftsOff {
    pub(super) fn new(law: Arc<dyn Law>) -> Self {
        let bedding_push = -law.at(&Vec3::new(0.0, 0.0, -BEDDING)).force.z;
        Self { law, bedding_push }
    }

    /// The law at a place at which it does not push: w is what it takes by itself.
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
        let push = |y: f64| {
            let point = self.law.at(&Vec3::new(x.x, x.y, y));
            (point.force.z, point.tangent[(2, 2)])
        };
        let mut reach = BEDDING;
        while reach < FARTHEST && push(x.z - reach).0 > 0.0 {
            reach *= 2.0;
        }
        root([x.z - reach, x.z], push)
    }

    /// Between lifted and bedded in: where law and contact push alike.
    fn in_contact(&self, x: &Vec3) -> LawPoint {
        let bedded = |z: f64| {
            let settled = BEDDING * (1.0 - z * z);
            self.law.at(&Vec3::new(x.x, x.y, x.z + settled))
        };
        let z = root([0.0, 1.0], |z| {
            let point = bedded(z);
            let slack = 1.0 - z;
            (
                -point.force.z - self.bedding_push * slack * slack,
                2.0 * (point.tangent[(2, 2)] * BEDDING * z + self.bedding_push * slack),
            )
        });
        let slack = 1.0 - z;
        let mut point = bedded(z);
        point.force.z = -self.bedding_push * slack * slack;
        let z2 = z * z;
        let stored = 1.0 / 6.0 - z2 + 4.0 / 3.0 * z2 * z - z2 * z2 / 2.0;
        point.energy += self.bedding_push * BEDDING * stored;
        // A contact that is all but rigid leaves the law its own tangent.
        if z <= 0.0 {
            return point;
        }
        softened(point, self.bedding_push * slack / (BEDDING * z))
    }
}

impl Law for LiftsOff {
    fn at(&self, x: &Vec3) -> LawPoint {
        if self.law.at(x).force.z >= 0.0 {
            return self.lifted(x);
        }
        let mut bedded = self.law.at(&Vec3::new(x.x, x.y, x.z + BEDDING));
        if bedded.force.z <= -self.bedding_push {
            bedded.energy += self.bedding_push * BEDDING / 6.0;
            return bedded;
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numeric::symmetric_eigen3;
    use approx::assert_relative_eq;

    /// Energy ½ x' k x + q (d · x)⁴/4: convex, every axis knows of the others.
    #[derive(Debug)]
    struct Leaning {
        k: Mat3,
        q: f64,
        d: Vec3,
    }

    impl Law for Leaning {
        fn at(&self, x: &Vec3) -> LawPoint {
            let along = self.d.dot(x);
            LawPoint {
                force: self.k * x + self.d * (self.q * along.powi(3)),
                tangent: self.k + self.d * self.d.transpose() * (3.0 * self.q * along * along),
                energy: (self.k * x).dot(x) / 2.0 + self.q * along.powi(4) / 4.0,
            }
        }
    }

    /// Pieces that lean by 40°, and stiffen along another direction.
    fn leaning() -> Leaning {
        let (sin, cos) = 40_f64.to_radians().sin_cos();
        let across = Vec3::new(cos, 0.0, sin);
        let along = Vec3::new(-sin, 0.0, cos);
        let k = across * across.transpose() * 80e3
            + Vec3::y() * Vec3::y().transpose() * 90e3
            + along * along.transpose() * 500e3;
        Leaning {
            k,
            q: 2e9,
            d: Vec3::new(0.4, -0.3, 0.8),
        }
    }

    fn places() -> impl Iterator<Item = Vec3> {
        let across = [-4e-3, -0.3e-3, 0.0, 2e-3];
        let along = (-40..=40).map(|i| f64::from(i) * 0.11e-3);
        along.flat_map(move |w| {
            across
                .into_iter()
                .flat_map(move |u| [-1e-3, 2e-3].map(|v| Vec3::new(u, v, w)))
        })
    }

    /// Derived: no tension anywhere, the law itself wherever it pushes enough, no negative rate, and
    /// force and tangent are the slopes of energy and force (central differences).
    #[test]
    fn a_law_whose_axes_know_of_each_other_stays_convex_and_elastic() {
        let bound = leaning();
        let loose = LiftsOff::new(Arc::new(leaning()));
        let (mut bedded, mut lifted, mut between) = (0, 0, 0);
        for x in places() {
            let settled = Vec3::new(x.x, x.y, x.z + BEDDING);
            let (point, law) = (loose.at(&x), bound.at(&settled));
            assert!(point.force.z <= 0.0, "{x}");
            assert!(point.energy >= 0.0, "{x}");
            if -law.force.z >= loose.bedding_push {
                assert_eq!((point.force, point.tangent), (law.force, law.tangent));
                bedded += 1;
            } else if point.force.z.abs() <= 0.0 {
                assert!(point.tangent.column(2).amax() <= 0.0);
                lifted += 1;
            } else {
                between += 1;
            }
            let scale = law.tangent.amax();
            let least = symmetric_eigen3(&point.tangent).unwrap().values[0];
            assert!(least >= -1e-9 * scale, "{x}: {least}");
            let h = 1e-8;
            for axis in 0..3 {
                let mut step = Vec3::zeros();
                step[axis] = h;
                let (after, before) = (loose.at(&(x + step)), loose.at(&(x - step)));
                let slope = (after.force - before.force) / (2.0 * h);
                let column = point.tangent.column(axis).into_owned();
                assert_relative_eq!(slope, column, epsilon = 2e-4 * scale);
                let slope = (after.energy - before.energy) / (2.0 * h);
                assert_relative_eq!(slope, point.force[axis], epsilon = 1e-3);
            }
        }
        assert!(
            bedded > 100 && lifted > 100 && between > 5,
            "{bedded} {lifted} {between}"
        );
    }

    /// Derived: lifting off where the law stops pushing, not at a place: sheared one way these
    /// pieces no longer carry when pushed by 1 mm, the other way they carry when pulled by 1 mm.
    #[test]
    fn where_it_lifts_off_depends_on_the_shear() {
        let loose = LiftsOff::new(Arc::new(leaning()));
        let push = |u: f64, w: f64| -loose.at(&Vec3::new(u, 0.0, w)).force.z;
        let law = leaning();
        let pull = law.at(&Vec3::new(-4e-3, 0.0, -1e-3)).force.z;
        assert!(pull > 0.0, "{pull}");
        assert!(push(-4e-3, -1e-3) <= 0.0);
        let carried = -law.at(&Vec3::new(4e-3, 0.0, 1e-3 + BEDDING)).force.z;
        assert!(carried > 0.0);
        assert_relative_eq!(push(4e-3, 1e-3), carried);
    }

    /// A law without a rate along w, or with a dead zone there, is left alone by the contact.
    #[test]
    fn a_law_that_does_not_push_is_what_it_was() {
        let law = Leaning {
            k: Mat3::from_diagonal(&Vec3::new(1e5, 2e5, 0.0)),
            q: 0.0,
            d: Vec3::zeros(),
        };
        let bound = law.at(&Vec3::new(1e-3, 1e-3, 2e-3));
        let loose = LiftsOff::new(Arc::new(law));
        assert_eq!(loose.at(&Vec3::new(1e-3, 1e-3, 2e-3)), bound);
        assert_eq!(loose.at(&Vec3::new(1e-3, 1e-3, -2e-3)), bound);
    }
}
