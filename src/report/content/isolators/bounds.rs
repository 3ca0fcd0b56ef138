//! How far an isolator may be deflected along each axis, each with where the number comes from.

use crate::model::isolator::strain::Strains;
use crate::model::isolator::{AXIS_NAMES, Isolator, Tension};
use crate::model::strain_limit::StrainLimit;
use crate::report::content::quantity;
use crate::spatial::Vec3;

/// A strain that is a smaller share of the largest is rounding of an angle.
const ROUNDING: f64 = 1e-9;

/// What ends at a deflection.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BoundKind {
    /// What the file allows for a long life.
    Limit,
    /// A stop is touched.
    Stop,
    /// Strain that rubber bears day and night.
    StrainAtRest,
    /// Strain that rubber bears in the peaks of use.
    StrainInUse,
    /// Strain that rubber bears a few times.
    StrainRare,
}

impl BoundKind {
    /// All kinds in reading order.
    pub const ALL: [Self; 5] = [
        Self::Limit,
        Self::Stop,
        Self::StrainAtRest,
        Self::StrainInUse,
        Self::StrainRare,
    ];

    /// Name for people and programs.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Limit => "limit",
            Self::Stop => "stop",
            Self::StrainAtRest => "most at rest",
            Self::StrainInUse => "most in use",
            Self::StrainRare => "most in rare loads",
        }
    }

    /// Whether it comes from what rubber bears.
    #[must_use]
    pub fn is_strain(self) -> bool {
        self.strain().is_some()
    }

    /// What rubber bears; `None` where the bound comes from the file.
    fn strain(self) -> Option<StrainLimit> {
        match self {
            Self::Limit | Self::Stop => None,
            Self::StrainAtRest => Some(StrainLimit::AT_REST),
            Self::StrainInUse => Some(StrainLimit::IN_USE),
            Self::StrainRare => Some(StrainLimit::RARE),
        }
    }
}

/// One bound, on one side of the free position.
#[derive(Debug, Clone, PartialEq)]
pub struct Bound {
    /// Along which axis: 0 for u, 1 for v, 2 for w.
    pub axis: usize,
    /// What ends there.
    pub kind: BoundKind,
    /// Deflection along the axis alone \[m\], below zero on the pushed side.
    pub deflection: f64,
    /// Where it comes from.
    pub basis: String,
}

/// Every bound: axis by axis, kind by kind, below zero first.
#[must_use]
pub fn all(isolator: &Isolator) -> Vec<Bound> {
    (0..3)
        .flat_map(|axis| along(isolator, axis))
        .filter(|bound| bound.deflection.is_finite())
        .collect()
}

/// Strains of the rubber at a deflection \[m\]; `None` when its size is not known. What has lifted off is not pulled.
#[must_use]
pub fn strains(isolator: &Isolator, x: &Vec3) -> Option<Strains> {
    let mut strains = isolator.strain?.at(x);
    if isolator.tension == Tension::None && x.z > 0.0 {
        strains.tension = 0.0;
    }
    Some(strains)
}

/// The bounds along one axis. What rubber bears in rare loads is left out where it bears no more than in use.
#[must_use]
pub fn along(isolator: &Isolator, axis: usize) -> Vec<Bound> {
    let (Some(name), Some(limit), Some(stops)) = (
        AXIS_NAMES.get(axis),
        isolator.limits.get(axis),
        isolator.stops.get(axis),
    ) else {
        return Vec::new();
    };
    let of_file = |key: &str| format!("`{key}.{name}` of isolator {}", isolator.name);
    let mut bounds = Vec::new();
    for kind in BoundKind::ALL {
        for sense in [-1.0, 1.0] {
            let found = match kind {
                BoundKind::Limit => limit.map(|limit| (sense * limit, of_file("limits"))),
                BoundKind::Stop => {
                    let stop = if sense < 0.0 {
                        stops.lower
                    } else {
                        stops.upper
                    };
                    stop.map(|stop| (stop, of_file("stops")))
                }
                _ => kind
                    .strain()
                    .and_then(|limit| of_strain(isolator, axis, sense, &limit)),
            };
            bounds.extend(found.map(|(deflection, basis)| Bound {
                axis,
                kind,
                deflection,
                basis,
            }));
        }
    }
    let in_use: Vec<f64> = bounds
        .iter()
        .filter(|bound| bound.kind == BoundKind::StrainInUse)
        .map(|bound| bound.deflection)
        .collect();
    let is_said = |rare: f64| {
        let near = |in_use: &f64| (in_use - rare).abs() <= ROUNDING * rare.abs();
        in_use.iter().any(near)
    };
    bounds.retain(|bound| bound.kind != BoundKind::StrainRare || !is_said(bound.deflection));
    bounds
}

/// Deflection along one axis at which the first strain reaches its limit.
///
/// `None` for a pull where tension is to be avoided altogether: that is said in
/// words. Tension beside a larger shear, as of leaning pieces shifted sideways,
/// is not counted: what they carry presses them (common practice).
fn of_strain(
    isolator: &Isolator,
    axis: usize,
    sense: f64,
    limit: &StrainLimit,
) -> Option<(f64, String)> {
    let mut x = Vec3::zeros();
    x[axis] = sense;
    // Of one metre: nominal strains grow in proportion to a deflection along one axis.
    let each = strains(isolator, &x)?;
    let is_pulled = each.tension > each.shear;
    if is_pulled && limit.tension <= 0.0 {
        return None;
    }
    let tension = if is_pulled { each.tension } else { 0.0 };
    let largest = each.compression.max(each.shear).max(tension);
    [
        (each.compression, limit.compression, "compression"),
        (tension, limit.tension, "tension across the bond"),
        (each.shear, limit.shear, "shear"),
    ]
    .into_iter()
    .filter(|(strain, ..)| *strain > ROUNDING * largest)
    .map(|(strain, most, what)| {
        let basis = format!("{} {what}: {}", quantity::share(most), limit.basis);
        (sense * most / strain, basis)
    })
    .min_by(|a, b| a.0.abs().total_cmp(&b.0.abs()))
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use approx::assert_relative_eq;

    use super::*;
    use crate::model::isolator::rates::Rates;
    use crate::model::isolator::strain::StrainMeasure;

    fn block(lean: f64) -> Isolator {
        let rates = Vec3::repeat(1e5);
        let mut block = Isolator::new("pad", "block", Arc::new(Rates { rates }));
        block.strain = Some(StrainMeasure::Block {
            height: 40e-3,
            lean,
        });
        block
    }

    fn at(bounds: &[Bound], kind: BoundKind, axis: usize, sense: f64) -> Option<f64> {
        bounds
            .iter()
            .find(|b| b.kind == kind && b.axis == axis && b.deflection * sense > 0.0)
            .map(|b| b.deflection)
    }

    /// Derived: 15 % of 40 mm is 6 mm pushed, 50 % is 20 mm across; pulled 5 % is 2 mm in use, and at rest
    /// there is none, since a pull is to be avoided.
    #[test]
    fn strains_become_deflections() {
        let bounds = all(&block(0.0));
        let found = |kind, axis, sense| at(&bounds, kind, axis, sense);
        assert_relative_eq!(
            found(BoundKind::StrainAtRest, 2, -1.0).unwrap(),
            -6e-3,
            max_relative = 1e-12
        );
        assert_relative_eq!(
            found(BoundKind::StrainAtRest, 0, 1.0).unwrap(),
            20e-3,
            max_relative = 1e-12
        );
        assert_relative_eq!(
            found(BoundKind::StrainInUse, 2, 1.0).unwrap(),
            2e-3,
            max_relative = 1e-12
        );
        assert_eq!(found(BoundKind::StrainAtRest, 2, 1.0), None);
    }

    /// Derived: of pieces 40 mm high that lean by 30°, a push along w compresses cos 30° of it and shears
    /// sin 30°: 15 % compression comes at 6 mm/cos 30° = 6.928 mm, before 50 % shear at 40 mm. A shift along v
    /// compresses half of them by sin 30°: 15 % at 12 mm, before 50 % shear at 23.09 mm; that the other half is
    /// pulled does not count. A pull along w has no place at rest.
    #[test]
    fn of_leaning_pieces_the_first_strain_counts() {
        let bounds = all(&block(30.0_f64.to_radians()));
        let rest = |axis, sense| at(&bounds, BoundKind::StrainAtRest, axis, sense);
        assert_relative_eq!(rest(2, -1.0).unwrap(), -6.9282e-3, max_relative = 1e-4);
        assert_relative_eq!(rest(1, 1.0).unwrap(), 12e-3, max_relative = 1e-12);
        assert_eq!(rest(2, 1.0), None);
    }

    /// Derived: pulled, rubber bears 5 % of 40 mm in use and in rare loads alike, which is said once; pushed 40 % are
    /// more than 30 %. A loose pad is not pulled at all, nor strained once it has lifted.
    #[test]
    fn a_bound_that_says_nothing_new_is_left_out() {
        let mut pad = block(0.0);
        let rare = |pad: &Isolator, sense| at(&all(pad), BoundKind::StrainRare, 2, sense);
        let in_use = |pad: &Isolator, sense| at(&all(pad), BoundKind::StrainInUse, 2, sense);
        assert_eq!(rare(&pad, 1.0), None);
        assert_relative_eq!(rare(&pad, -1.0).unwrap(), -16e-3, max_relative = 1e-12);
        assert!(in_use(&pad, 1.0).is_some());
        pad.tension = Tension::None;
        assert_eq!(in_use(&pad, 1.0), None);
        assert!(in_use(&pad, -1.0).is_some());
        let lifted = strains(&pad, &Vec3::new(1e-3, 0.0, 2e-3)).unwrap();
        assert!(lifted.tension <= 0.0);
        assert!(lifted.shear > 0.0);
    }

    #[test]
    fn without_a_size_only_the_file_bounds() {
        let mut plain = block(0.0);
        plain.strain = None;
        assert!(all(&plain).is_empty());
        plain.limits[2] = Some(7e-3);
        let bounds = all(&plain);
        assert_eq!(bounds.len(), 2);
        assert_eq!(bounds[0].basis, "`limits.w` of isolator pad");
        assert_relative_eq!(bounds[0].deflection, -7e-3);
    }
}
