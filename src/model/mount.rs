//! Section `[[mount]]`: one placed isolator with the stiffness of what holds it.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `name` | what to call it | words | needed |
//! | `at` | its place, vehicle axes, within 100 m of the datum | 3 lengths | needed |
//! | `isolator` | which `[isolator.NAME]` sits there | name | needed |
//! | `w` | main axis of the isolator | direction | up |
//! | `u` | second axis, made square to `w` | direction | forward; left when `w` points along the vehicle |
//! | `bracket` | stiffness of the powertrain-side bracket along u, v, w, or one for all three | linear rate | rigid |
//! | `chassis` | stiffness of the chassis at the mount, likewise | linear rate | rigid |

use super::isolator::Isolator;
use super::reader::{Bound, Names, Section};
use crate::diagnostic::Code;
use crate::spatial::{Mat3, Vec3, axes_from_w_u};
use crate::units::Quantity;

/// One placed isolator.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Mount {
    /// Name in the file.
    pub name: String,
    /// Place in the file's fitted state, in vehicle axes \[m\].
    pub at: Vec3,
    /// `R_VM`: columns are the mount axes u, v, w in vehicle axes, fixed to the chassis.
    pub axes: Mat3,
    /// Which isolator, as a place in `Model::isolators`.
    pub isolator: usize,
    /// Stated stiffness of the powertrain-side bracket along u, v, w [N/m]; `None` when it is taken as rigid.
    pub bracket: Option<Vec3>,
    /// Stated stiffness of the chassis at the mount along u, v, w [N/m]; `None` when it is taken as rigid.
    pub chassis: Option<Vec3>,
}

impl Mount {
    /// Compliance of bracket and chassis in series with the isolator, in mount axes [m/N]; zero when both are taken as rigid.
    #[must_use]
    pub fn compliance(&self) -> Mat3 {
        let of = |rate: Option<Vec3>| rate.map_or_else(Vec3::zeros, |rate| rate.map(f64::recip));
        Mat3::from_diagonal(&(of(self.bracket) + of(self.chassis)))
    }
}

/// Reads one mount; `None` when something in it is wrong.
pub(super) fn read(
    section: Section<'_>,
    isolators: &[Option<Isolator>],
    names: &Names<'_>,
) -> Option<Mount> {
    section.must_have(&[
        ("name", "a name to speak of it, such as \"front left\""),
        ("at", "its place, such as \"-100, 300, 60 mm\""),
        ("isolator", "which `[isolator.NAME]` sits there"),
    ]);
    let name = section.name("name");
    let at = section.vector("at", Quantity::Length, Bound::PLACE);
    let isolator = section.reference("isolator", names);
    let axes = read_axes(&section);
    let [bracket, chassis] = ["bracket", "chassis"].map(|key| {
        if !section.has(key) {
            section.assume(key, "rigid: no stiffness is given");
        }
        section.per_axis(key, Quantity::LinearRate, Bound::RATE)
    });
    section.finish();
    let isolator = isolator?;
    isolators.get(isolator)?.as_ref()?;
    Some(Mount {
        name: name?,
        at: at?,
        axes: axes?,
        isolator,
        bracket,
        chassis,
    })
}

fn read_axes(section: &Section<'_>) -> Option<Mat3> {
    let given_u = section.direction("u");
    let w = if section.has("w") {
        section.direction("w")?
    } else {
        section.assume("w", "up (0, 0, 1)");
        Vec3::z()
    };
    let u = if section.has("u") {
        given_u?
    } else {
        let (u, words) = default_u(&w);
        section.assume("u", words);
        u
    };
    let axes = axes_from_w_u(&w, &u);
    if axes.is_none() {
        section.refuse(
            "u",
            Code::NoDirection,
            format!("{} lies along its `w`", section.key_name("u")),
            "give a `u` across `w`, or leave it out",
        );
    }
    axes
}

/// Forward, made square to `w`; left when `w` itself points along the vehicle within about 8°.
fn default_u(w: &Vec3) -> (Vec3, &'static str) {
    if w.x.abs() < 0.99 {
        (Vec3::x(), "forward (1, 0, 0), made square to w")
    } else {
        (
            Vec3::y(),
            "left (0, 1, 0), since w points along the vehicle",
        )
    }
}
