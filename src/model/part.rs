//! Section `[[part]]`: one supported item with mass.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `name` | what to call it | words | needed |
//! | `mass` | what it weighs, fluids included, 1 g to 1000 t | mass | needed |
//! | `at` | its centre of gravity, vehicle axes, within 100 m of the datum | 3 lengths | needed |
//! | `inertia` | `{ xx, yy, zz, xy, xz, yz, products }` about its centre of gravity, along its own axes | inertia | from the shape |
//! | `inertia.xy`, `inertia.xz`, `inertia.yz` | products of inertia | inertia | 0 |
//! | `inertia.products` | `"integral"` when xy is +∫ x y dm, `"tensor"` when it is the off-diagonal element | word | needed with a product |
//! | `box` | sizes along its own x, y, z | 3 lengths | none |
//! | `cylinder` | `{ diameter, length }`, along its own x | lengths | none |
//! | `tube` | `{ outer, inner, length }`, along its own x | lengths | none |
//! | `fill` | share of the shape's inertia that is counted, 0.05 to 1.5 | ratio | 0.8 for a box, 1 otherwise |
//! | `turned` | roll, pitch, yaw of its own axes against the vehicle's | 3 angles | 0 |
//!
//! `inertia` or one of the three shapes is needed; with `inertia` a shape is only drawn.

use nalgebra::Rotation3;

use super::mass::{ImpossibleMass, MassProperties, Shape, turned};
use super::reader::{Bound, Section};
use crate::diagnostic::{Code, Diagnostic};
use crate::spatial::{Mat3, Vec3, rotation_from_roll_pitch_yaw};
use crate::units::Quantity;

/// Share of a full box's inertia that an engine or gearbox in its tight box has.
///
/// # Source
/// Common practice: pan, pulleys and manifolds fill the box loosely, so less
/// mass sits far out. Good to about ±25 %.
const BOX_FILL: f64 = 0.8;

/// One supported item.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Part {
    /// Name in the file.
    pub name: String,
    /// Mass, centre of gravity and inertia in vehicle axes.
    pub mass: MassProperties,
    /// Shape for the drawing, when the file gives one.
    pub shape: Option<Shape>,
    /// Share of the shape's inertia that was counted; `None` when the tensor was given.
    pub fill: Option<f64>,
    /// `R_VE`: takes the part's own axes to vehicle axes.
    pub turned: Rotation3<f64>,
}

/// Reads one part; `None` when something in it is wrong.
pub(super) fn read(section: Section<'_>) -> Option<Part> {
    section.must_have(&[
        ("name", "a name to speak of it, such as \"engine\""),
        (
            "mass",
            "what it weighs, fluids included, such as \"180 kg\"",
        ),
        ("at", "its centre of gravity, such as \"-150, 5, 180 mm\""),
    ]);
    let name = section.name("name");
    let mass = section.quantity("mass", Quantity::Mass, Bound::MASS);
    let at = section.vector("at", Quantity::Length, Bound::PLACE);
    let turned_by = section
        .vector("turned", Quantity::Angle, Bound::ANGLE)
        .unwrap_or_else(Vec3::zeros);
    let R_VE = rotation_from_roll_pitch_yaw(turned_by.x, turned_by.y, turned_by.z);
    let shape = read_shape(&section);
    let inertia = read_inertia(&section, mass, shape);
    let body = match (mass, at, inertia.as_ref()) {
        (Some(mass), Some(at), Some((inertia_E, _))) => {
            MassProperties::new(mass, at, turned(inertia_E, &R_VE))
                .map_err(|problem| section.note(describe(&section, problem)))
                .ok()
        }
        _ => None,
    };
    if let (Some(body), true) = (&body, section.has("inertia"))
        && body.is_sheet_like()
    {
        let (principal, _) = body.principal();
        section.note(
            Diagnostic::warning(
                Code::SheetLike,
                format!(
                    "{} has the principal moments of a flat sheet: {} kg m2",
                    section.key_name("inertia"),
                    in_words(&[principal[0], principal[1], principal[2]])
                ),
                section.span_of("inertia"),
            )
            .label("as flat as a sheet")
            .help("check the sign convention of the products and the point the tensor is about"),
        );
    }
    section.finish();
    Some(Part {
        name: name?,
        mass: body?,
        shape,
        fill: inertia?.1,
        turned: R_VE,
    })
}

fn read_shape(section: &Section<'_>) -> Option<Shape> {
    let given: Vec<&'static str> = ["box", "cylinder", "tube"]
        .into_iter()
        .filter(|key| section.has(key))
        .collect();
    if let [_, second, ..] = given[..] {
        section.refuse(
            second,
            Code::Conflict,
            format!("a part has one shape: {}", given.join(", ")),
            "keep the shape that comes nearest, or make two parts of it",
        );
    }
    match *given.first()? {
        "box" => section
            .vector("box", Quantity::Length, Bound::SIZE)
            .map(|size| Shape::Box { size }),
        "cylinder" => read_cylinder(section.section("cylinder")?),
        _ => read_tube(section.section("tube")?),
    }
}

fn read_cylinder(section: Section<'_>) -> Option<Shape> {
    section.must_have(&[
        ("diameter", "such as \"200 mm\""),
        ("length", "along the part's own x axis, such as \"400 mm\""),
    ]);
    let diameter = section.quantity("diameter", Quantity::Length, Bound::SIZE);
    let length = section.quantity("length", Quantity::Length, Bound::SIZE);
    section.finish();
    Some(Shape::Cylinder {
        diameter: diameter?,
        length: length?,
    })
}

fn read_tube(section: Section<'_>) -> Option<Shape> {
    section.must_have(&[
        ("outer", "outer diameter, such as \"120 mm\""),
        ("inner", "inner diameter, such as \"100 mm\""),
        ("length", "along the part's own x axis, such as \"400 mm\""),
    ]);
    let outer = section.quantity("outer", Quantity::Length, Bound::SIZE);
    let inner = section.quantity("inner", Quantity::Length, Bound::TRAVEL);
    let length = section.quantity("length", Quantity::Length, Bound::SIZE);
    if let (Some(outer), Some(inner)) = (outer, inner)
        && inner >= outer
    {
        section.refuse(
            "inner",
            Code::InsideOut,
            format!("{} is not smaller than `outer`", section.key_name("inner")),
            "give both diameters, the hole as `inner`",
        );
    }
    section.finish();
    Some(Shape::Tube {
        outer: outer?,
        inner: inner?,
        length: length?,
    })
}

/// Tensor in the part's own axes, with the fill that was counted when it comes from a shape.
fn read_inertia(
    section: &Section<'_>,
    mass: Option<f64>,
    shape: Option<Shape>,
) -> Option<(Mat3, Option<f64>)> {
    let fill = section.ratio("fill", Bound::Within(0.05, 1.5));
    if let Some(given) = section.section("inertia") {
        if section.has("fill") {
            section.refuse(
                "fill",
                Code::Conflict,
                format!(
                    "{} scales the inertia of a shape, but `inertia` is given",
                    section.key_name("fill")
                ),
                "take out `fill`, or `inertia` when it is only a guess",
            );
        }
        return Some((read_tensor(given)?, None));
    }
    if section.has("inertia") {
        return None;
    }
    let Some(shape) = shape else {
        section.must_have_one_of(
            &["inertia", "box", "cylinder", "tube"],
            "such as `inertia = { xx = \"8 kg m2\", … }`, or a shape to estimate it from, such as `box = \"720, 340, 360 mm\"`, `cylinder` or `tube`",
        );
        return None;
    };
    let fill = fill.unwrap_or_else(|| default_fill(section, shape));
    Some((shape.inertia(mass?) * fill, Some(fill)))
}

fn default_fill(section: &Section<'_>, shape: Shape) -> f64 {
    let (fill, reason) = match shape {
        Shape::Box { .. } => (
            BOX_FILL,
            "an engine or gearbox fills its tight box loosely (common practice, good to about 25 %)",
        ),
        Shape::Cylinder { .. } | Shape::Tube { .. } => (1.0, "a uniform body of this shape"),
    };
    section.assume("fill", format!("{fill} of the shape's inertia: {reason}"));
    fill
}

fn read_tensor(section: Section<'_>) -> Option<Mat3> {
    section.must_have(&[
        (
            "xx",
            "moment about x through the centre of gravity, such as \"8.1 kg m2\"",
        ),
        ("yy", "moment about y, such as \"15.9 kg m2\""),
        ("zz", "moment about z, such as \"13.2 kg m2\""),
    ]);
    let moment = |key| section.quantity(key, Quantity::Inertia, Bound::MOMENT);
    let [xx, yy, zz] = ["xx", "yy", "zz"].map(moment);
    let product_keys = ["xy", "xz", "yz"];
    let any_product = product_keys.map(|key| section.has(key)).contains(&true);
    let [xy, xz, yz] = product_keys.map(|key| {
        let read = section.quantity(key, Quantity::Inertia, Bound::PRODUCT);
        if !section.has(key) {
            section.assume(key, "0 kg m2: the product of inertia is not given");
        }
        read.unwrap_or(0.0)
    });
    let sign = section.choice("products", &[("integral", -1.0), ("tensor", 1.0)]);
    if any_product && !section.has("products") {
        section.must_have(&[(
            "products",
            "\"integral\" when xy is +∫ x y dm, \"tensor\" when it is the off-diagonal element of the tensor (the other sign)",
        )]);
    }
    section.finish();
    let sign = if any_product { sign? } else { 1.0 };
    let (xx, yy, zz) = (xx?, yy?, zz?);
    Some(Mat3::new(
        xx,
        sign * xy,
        sign * xz,
        sign * xy,
        yy,
        sign * yz,
        sign * xz,
        sign * yz,
        zz,
    ))
}

fn describe(section: &Section<'_>, problem: ImpossibleMass) -> Diagnostic {
    let name = section.key_name("inertia");
    let (message, help) = match problem {
        ImpossibleMass::BreaksTriangleRule { principal } => (
            format!(
                "{name} belongs to no body, the largest principal moment is above the sum of the others: {} kg m2",
                in_words(&principal)
            ),
            "check the sign convention of the products, the reference point (it must be the centre of gravity) and the units",
        ),
        ImpossibleMass::NotPositiveDefinite { principal } => (
            format!(
                "{name} belongs to no body, all principal moments must be above zero: {} kg m2",
                in_words(&principal)
            ),
            "a product of inertia is too large for the moments beside it",
        ),
        ImpossibleMass::NotPositive(_)
        | ImpossibleMass::NotFinite
        | ImpossibleMass::NotSymmetric => (
            format!("{name} is not a usable tensor"),
            "check the numbers and their units",
        ),
    };
    Diagnostic::error(Code::ImpossibleInertia, message, section.span_of("inertia"))
        .label("no body has this inertia")
        .help(help)
}

fn in_words(values: &[f64; 3]) -> String {
    values.map(|value| format!("{value:.4e}")).join(", ")
}
