//! Reads the sizes of a block: its outline, layers, pieces and their lean.

use super::{Footprint, Pad};
use crate::diagnostic::{Code, Diagnostic};
use crate::model::isolator::rubber::Moduli;
use crate::model::reader::{Bound, Section};
use crate::units::Quantity;

/// Outline, height and arrangement of the pieces of one isolator.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Form {
    /// Outline of one piece across its w.
    pub(crate) footprint: Footprint,
    /// Height of all its rubber along w \[m\].
    pub(crate) height: f64,
    /// Layers that the height is made of.
    pub(crate) layers: u32,
    /// Equal pieces side by side.
    pub(crate) count: u32,
    /// Angle by which half of them lean each way about u \[rad\].
    pub(crate) lean: f64,
}

impl Form {
    /// One piece of a material.
    pub(crate) fn pad(&self, moduli: Moduli) -> Pad {
        Pad {
            footprint: self.footprint,
            height: self.height,
            layers: self.layers,
            moduli,
        }
    }
}

/// Shapes, of which one is given.
const SHAPES: [&str; 4] = ["cylinder", "block", "hollow", "strip"];

/// Sizes of the shapes, and other words for them.
const SIZES: [&str; 9] = [
    "diameter", "height", "outer", "inner", "length", "width", "radius", "od", "id",
];

/// How the shapes are written.
const CYLINDER: &str = "{ diameter = \"50 mm\", height = \"30 mm\" }";
const HOLLOW: &str = "{ outer = \"60 mm\", inner = \"20 mm\", height = \"30 mm\" }";
const STRIP_EXAMPLE: &str = "{ length = \"400 mm\", width = \"40 mm\", height = \"30 mm\" }";

/// Least length over width of a strip.
///
/// # Source
/// Derived: from the pressure in a thin rectangular layer the rules of the
/// strip and of the block are equally wrong, 15 %, at 4.5 times.
const STRIP: f64 = 5.0;

/// Height over least width beyond which rubber does not stand under a load along w.
///
/// # Source
/// Derived: a column that gives way in bending and shear (Haringx, from memory), E = 3 G, its ends
/// square and free to slide: a cylinder of this height buckles at 11 % of compression.
const TALL: f64 = 2.0;

/// Lean of the pieces: beyond it nothing is left of the pair.
const LEAN: Bound = Bound::Stated(
    0.0,
    80.0 / 180.0 * std::f64::consts::PI,
    "between 0 and 80 deg",
);

/// What a height is, for one who would write that of the whole part.
const HEIGHT: (&str, &str) = (
    "height",
    "height of the rubber alone, plates left out, such as \"30 mm\"",
);

/// Reads the shape, `layers`, `count` and `inclined`; `None` when something in them is wrong.
pub(crate) fn read_form(section: &Section<'_>) -> Option<Form> {
    let shape = read_shape(section);
    let layers = read_count(section, "layers");
    let count = read_count(section, "count");
    let lean = read_lean(section, count);
    let (footprint, height) = shape?;
    Some(Form {
        footprint,
        height,
        layers: layers?,
        count: count?,
        lean: lean?,
    })
}

fn read_shape(section: &Section<'_>) -> Option<(Footprint, f64)> {
    if !SHAPES.into_iter().any(|key| section.has(key))
        && section.refuse_outside(&SIZES, "cylinder", CYLINDER)
    {
        return None;
    }
    section.must_have_one_of(
        &SHAPES,
        "size of the rubber, such as `cylinder = { diameter = \"50 mm\", height = \"30 mm\" }`, the height without plates; or `block`, `hollow`, `strip`",
    );
    let given: Vec<&'static str> = SHAPES.into_iter().filter(|key| section.has(key)).collect();
    if let [_, second, ..] = given[..] {
        section.refuse(
            second,
            Code::Conflict,
            format!("an isolator has one shape: {}", given.join(", ")),
            "keep one; pieces of different shape are isolators of their own at the same place",
        );
        return None;
    }
    let key = *given.first()?;
    let (footprint, height) = read_outline(section, key)?;
    warn_of_tall(section, key, footprint.least_width(), height);
    Some((footprint, height))
}

fn read_outline(section: &Section<'_>, key: &'static str) -> Option<(Footprint, f64)> {
    match key {
        "cylinder" => read_cylinder(section.section_like("cylinder", CYLINDER)?),
        "hollow" => read_hollow(section.section_like("hollow", HOLLOW)?),
        "strip" => read_strip(section, section.section_like("strip", STRIP_EXAMPLE)?),
        _ => {
            let size = section.vector("block", Quantity::Length, Bound::SIZE)?;
            let footprint = Footprint::Rectangle {
                u: size.x,
                v: size.y,
            };
            Some((footprint, size.z))
        }
    }
}

fn warn_of_tall(section: &Section<'_>, key: &'static str, width: f64, height: f64) {
    let times = height / width;
    if times <= TALL {
        return;
    }
    section.note(
        Diagnostic::warning(
            Code::TallRubber,
            format!(
                "{} is {times:.2} times as tall as it is wide: it leans over or buckles under a load along w",
                section.key_name(key)
            ),
            section.span_of(key),
        )
        .label("too tall to stand")
        .help("make it lower or wider, or give several side by side as `count`; the height is that along w, without plates"),
    );
}

fn read_cylinder(cylinder: Section<'_>) -> Option<(Footprint, f64)> {
    cylinder.must_have(&[("diameter", "of the rubber, such as \"50 mm\""), HEIGHT]);
    let diameter = cylinder.quantity("diameter", Quantity::Length, Bound::SIZE);
    let height = cylinder.quantity("height", Quantity::Length, Bound::SIZE);
    cylinder.finish();
    let diameter = diameter?;
    Some((Footprint::Circle { diameter }, height?))
}

fn read_hollow(hollow: Section<'_>) -> Option<(Footprint, f64)> {
    hollow.must_have(&[
        ("outer", "outer diameter of the rubber, such as \"60 mm\""),
        ("inner", "diameter of the hole, such as \"20 mm\""),
        HEIGHT,
    ]);
    let outer = hollow.quantity("outer", Quantity::Length, Bound::SIZE);
    let inner = hollow.quantity("inner", Quantity::Length, Bound::SIZE);
    let height = hollow.quantity("height", Quantity::Length, Bound::SIZE);
    let inside_out = outer
        .zip(inner)
        .is_some_and(|(outer, inner)| inner >= outer);
    if inside_out {
        hollow.refuse(
            "inner",
            Code::InsideOut,
            format!("{} is not smaller than `outer`", hollow.key_name("inner")),
            "give both diameters, the hole as `inner`",
        );
    }
    hollow.finish();
    let (outer, inner, height) = (outer?, inner?, height?);
    (!inside_out).then_some((Footprint::Ring { outer, inner }, height))
}

fn read_strip(section: &Section<'_>, strip: Section<'_>) -> Option<(Footprint, f64)> {
    strip.must_have(&[
        ("length", "along u, such as \"400 mm\""),
        ("width", "along v, such as \"40 mm\""),
        HEIGHT,
    ]);
    let length = strip.quantity("length", Quantity::Length, Bound::SIZE);
    let width = strip.quantity("width", Quantity::Length, Bound::SIZE);
    let height = strip.quantity("height", Quantity::Length, Bound::SIZE);
    strip.finish();
    let (length, width, height) = (length?, width?, height?);
    if length < STRIP * width {
        section.refuse(
            "strip",
            Code::OutOfRange,
            format!(
                "{} must be at least {STRIP} times as long as wide: {:.2} times",
                section.key_name("strip"),
                length / width
            ),
            "rubber this short bulges at its ends too: write it as `block`, sizes along u, v, w; `length` of a strip lies along u, `width` along v",
        );
        return None;
    }
    Some((Footprint::Strip { length, width }, height))
}

fn read_count(section: &Section<'_>, key: &'static str) -> Option<u32> {
    if section.has(key) {
        return section.count(key, 1, 100);
    }
    section.assume(key, "1");
    Some(1)
}

fn read_lean(section: &Section<'_>, count: Option<u32>) -> Option<f64> {
    if !section.has("inclined") {
        return Some(0.0);
    }
    let lean = section.quantity("inclined", Quantity::Angle, LEAN)?;
    if !section.has("count") {
        section.refuse(
            "inclined",
            Code::NeedsOther,
            format!(
                "{} needs `count`: half of the pieces lean each way",
                section.key_name("inclined")
            ),
            "give `count = 2` for a pair; a single leaning piece is a mount with its `w` along the piece",
        );
        return None;
    }
    if count?.is_multiple_of(2) {
        return Some(lean);
    }
    section.refuse(
        "count",
        Code::OutOfRange,
        format!(
            "{} must be even beside `inclined`, half of the pieces lean each way: {}",
            section.key_name("count"),
            count?
        ),
        "give an even number, or make isolators of their own of the pieces",
    );
    None
}
