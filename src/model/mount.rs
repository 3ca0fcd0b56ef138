//! Section `[[mount]]`: one placed isolator with the stiffness of what holds it.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `name` | what to call it | words | needed |
//! | `at` | its place, vehicle axes, within 100 m of the datum | 3 lengths | needed |
//! | `isolator` | which `[isolator.NAME]` sits there | name | needed |
//! | `w` | main axis of the isolator | direction | up; of a rod its own line |
//! | `u` | second axis, made square to `w` | direction | forward; left when `w` points along the vehicle |
//! | `rod` | `{ to }`: place of the chassis-side eye of a torque rod; `at` is its powertrain-side eye | 3 lengths | needed for a rod, and only there |
//! | `temperature` | hottest that the mount gets, to compare with what its rubber lasts at | temperature | not checked |
//! | `bracket` | stiffness of the powertrain-side bracket along u, v, w, or one for all three | linear rate | rigid |
//! | `chassis` | stiffness of the chassis at the mount, likewise | linear rate | rigid |

use super::isolator::{Isolator, service};
use super::reader::{Bound, Names, Section, quoted};
use crate::diagnostic::Code;
use crate::spatial::{Mat3, Vec3, axes_from_w_u};
use crate::units::Quantity;

/// Shortest rod that is taken as one \[m\].
const SHORTEST_ROD: f64 = 10e-3;

/// How the far eye of a rod is written.
const ROD: &str = "{ to = \"-1400, 0, 20 mm\" }";

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
    /// Chassis-side eye of a torque rod, in vehicle axes \[m\]; `None` for an isolator that is bonded in place.
    pub rod_to: Option<Vec3>,
    /// Hottest that the mount gets \[°C\].
    pub temperature: Option<f64>,
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
    let sits = isolator.and_then(|place| isolators.get(place)?.as_ref());
    let rod_to = read_rod(&section, sits);
    let axes = match (rod_to, at) {
        (Some(Some(to)), Some(at)) => axes_of_rod(&section, &(at - to)),
        _ if section.has("rod") => {
            // Without its eyes nobody knows where a rod points, so its axes are not judged.
            let _ = (section.has("w"), section.has("u"));
            None
        }
        _ => read_axes(&section),
    };
    let temperature = section.quantity("temperature", Quantity::Temperature, service::TEMPERATURE);
    let [bracket, chassis] = ["bracket", "chassis"].map(|key| {
        if !section.has(key) {
            section.assume(key, "rigid: no stiffness is given");
        }
        section.per_axis(key, Quantity::LinearRate, Bound::RATE)
    });
    section.finish();
    let isolator = isolator?;
    sits?;
    Some(Mount {
        name: name?,
        at: at?,
        axes: axes?,
        rod_to: rod_to?,
        temperature,
        isolator,
        bracket,
        chassis,
    })
}

/// Chassis-side eye of a rod; the inner `None` for every other isolator.
fn read_rod(section: &Section<'_>, isolator: Option<&Isolator>) -> Option<Option<Vec3>> {
    let read = section.section_like("rod", ROD).map(|rod| {
        rod.must_have(&[(
            "to",
            "place of the chassis-side eye, such as \"-1400, 0, 20 mm\"",
        )]);
        let to = rod.vector("to", Quantity::Length, Bound::PLACE);
        rod.finish();
        to
    });
    let isolator = isolator?;
    match (isolator.is_rod, section.has("rod")) {
        (true, true) => Some(Some(read??)),
        (false, false) => Some(None),
        (true, false) => {
            section.must_have(&[(
                "rod",
                "`{ to = \"-1400, 0, 20 mm\" }`, the chassis-side eye of the rod; `at` is the eye at the powertrain",
            )]);
            None
        }
        // What is no table was told already.
        (false, true) if read.is_none() => None,
        (false, true) => {
            section.refuse(
                "rod",
                Code::Conflict,
                format!(
                    "{} stands beside an isolator that is no rod: {}",
                    section.key_name("rod"),
                    quoted(&isolator.name)
                ),
                "take `rod` out, or name an isolator of kind \"rod\"",
            );
            None
        }
    }
}

/// Axes of a rod as drawn: w along it, from the chassis eye to the powertrain eye.
fn axes_of_rod(section: &Section<'_>, along: &Vec3) -> Option<Mat3> {
    if section.has("w") {
        section.refuse(
            "w",
            Code::Conflict,
            format!("{} is given beside `rod`", section.key_name("w")),
            "take it out: the main axis of a rod is its own line",
        );
        return None;
    }
    if along.norm() < SHORTEST_ROD {
        section.refuse(
            "rod",
            Code::NoDirection,
            format!(
                "{} leads to within {:.1} mm of the mount itself",
                section.key_name("rod"),
                along.norm() * 1e3
            ),
            "`at` is the eye at the powertrain, `rod.to` the eye at the chassis, at least 10 mm away",
        );
        return None;
    }
    let w = along.normalize();
    let (u, _) = default_u(&w);
    let given = section.direction("u");
    axes_from_w_u(&w, &given.unwrap_or(u)).or_else(|| axes_from_w_u(&w, &u))
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
