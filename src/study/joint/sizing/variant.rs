//! A joint with other sizes, as a fabricator would make it, and its mass.

use std::f64::consts::PI;

use super::layout::spread;
use crate::model::Model;
use crate::model::fastener::{Grade, Metal, Thread};
use crate::model::joint::pattern::nearest;
use crate::model::joint::plate::usual_side;
use crate::model::joint::sleeve::GAP;
use crate::model::joint::{Bolt, Choices, Joint, PolymerRole, Seat, Sleeve};
use crate::model::material::Material;
use crate::study::joint::stack::Stack;

/// Thinnest wall of a sleeve that is turned or sawn square \[m\].
///
/// # Source
/// Common practice.
const THINNEST: f64 = 1.5e-3;

/// What a sleeve that is not in the file is made of.
pub const SLEEVE_STEEL: &str = "S235";

/// Lengths that differ by less are the same \[m\].
const SAME: f64 = 1e-9;

/// Height of head and nut together, in diameters.
///
/// # Source
/// ISO 4014 and ISO 4032, from memory: 0.63 and 0.84 for M10.
const HEAD_AND_NUT: f64 = 1.47;

/// Area of a hexagon over the square of its width across flats: √3/2.
const HEXAGON: f64 = 0.866_025;

/// Density of bolts [kg/m³].
///
/// # Source
/// EN 1993-1-1, 3.2.6, and EN 10088-1, from memory.
const DENSITIES: [(Metal, f64); 2] = [(Metal::Steel, 7850.0), (Metal::Stainless, 7900.0)];

/// A joint of certain sizes: which choice was taken of each list.
pub(super) struct Variant {
    pub(super) joint: Joint,
    /// Mass of bolts, sleeves and plates \[kg\].
    pub(super) mass: f64,
    /// Places in the lists, in rising order of size: thread, class, count, sleeve, plate.
    steps: [usize; 5],
}

impl Variant {
    /// Those that differ from this one by one step down in one list.
    pub(super) fn one_step_down<'v>(&self, all: &'v [Self]) -> Vec<&'v Self> {
        (0..self.steps.len())
            .filter_map(|list| {
                all.iter()
                    .filter(|other| self.is_above_in(list, other))
                    .max_by_key(|other| other.steps.get(list).copied())
            })
            .collect()
    }

    fn is_above_in(&self, list: usize, other: &Self) -> bool {
        self.steps
            .iter()
            .zip(&other.steps)
            .enumerate()
            .all(|(at, (own, its))| if at == list { its < own } else { its == own })
    }
}

/// Every combination that can be made, the lightest first, of equal mass the weaker class first.
pub(super) fn variants(model: &Model, joint: &Joint, choices: &Choices) -> Vec<Variant> {
    let mut threads = choices.threads.clone();
    threads.sort_by(|a, b| a.stress_area().total_cmp(&b.stress_area()));
    let mut counts: Vec<usize> = choices
        .counts
        .iter()
        .filter_map(|count| usize::try_from(*count).ok())
        .collect();
    if counts.is_empty() {
        counts.push(joint.pattern.len());
    }
    let sleeves = sleeves(joint, choices);
    let plates: Vec<Option<f64>> = if choices.plates.is_empty() {
        vec![joint.plate.as_ref().map(|plate| plate.thickness)]
    } else {
        choices.plates.iter().copied().map(Some).collect()
    };
    let mut found = Vec::new();
    for (t, thread) in threads.iter().enumerate() {
        for (g, grade) in choices.grades.iter().enumerate() {
            for (c, count) in counts.iter().enumerate() {
                for (s, sleeve) in sleeves.iter().enumerate() {
                    for (p, plate) in plates.iter().enumerate() {
                        let sized = made(joint, (thread, grade), *count, *sleeve, *plate);
                        found.extend(sized.map(|joint| Variant {
                            mass: mass(model, &joint),
                            joint,
                            steps: [t, g, c, s, p],
                        }));
                    }
                }
            }
        }
    }
    let rank = |variant: &Variant| (variant.mass, strength(&variant.joint.bolt.grade));
    found.sort_by(|a, b| {
        let ((mass_a, grade_a), (mass_b, grade_b)) = (rank(a), rank(b));
        mass_a.total_cmp(&mass_b).then(grade_a.total_cmp(&grade_b))
    });
    found
}

/// Tensile strength of a class in a small size \[Pa\], to rank classes by.
fn strength(grade: &Grade) -> f64 {
    grade.limits(0.0).map_or(0.0, |limits| limits.tensile)
}

/// Sleeves to try: those of the list, and none where the file has none; on a solid part only none.
fn sleeves(joint: &Joint, choices: &Choices) -> Vec<Option<f64>> {
    if choices.sleeves.is_empty() {
        return vec![joint.sleeve.as_ref().map(|sleeve| sleeve.outer)];
    }
    let none = joint.sleeve.is_none().then_some(None);
    let listed = choices.sleeves.iter().copied().map(Some);
    none.into_iter().chain(listed).collect()
}

/// The joint with these sizes; `None` where they do not go together or are not made.
fn made(
    joint: &Joint,
    (thread, grade): (&Thread, &Grade),
    count: usize,
    sleeve: Option<f64>,
    plate: Option<f64>,
) -> Option<Joint> {
    let mut sized = joint.clone();
    sized.choices = None;
    // Holes of the file are kept for bolts as thick as its own.
    let is_as_thick = (thread.nominal - joint.bolt.thread.nominal).abs() < SAME;
    sized.bolt = Bolt {
        thread: *thread,
        grade: *grade,
        limits: grade.limits(thread.nominal)?,
        hole: if is_as_thick {
            joint.bolt.hole
        } else {
            thread.hole
        },
        torque: None,
        length: None,
        ..joint.bolt.clone()
    };
    sized.pattern = spread(&joint.pattern, count)?;
    let usual = [0, 1].map(|axis| {
        let far = |far: f64, place: &[f64; 2]| far.max(place[axis].abs());
        usual_side(sized.pattern.iter().fold(0.0, far), thread.nominal)
    });
    if let Some(foot) = &mut sized.foot {
        follow(
            foot.follows_bolts,
            [&mut foot.length, &mut foot.width],
            usual,
        );
    }
    if let Some(plate) = &mut sized.plate {
        follow(
            plate.follows_bolts,
            [&mut plate.length, &mut plate.width],
            usual,
        );
    }
    if let Some(washer) = &mut sized.washer
        && !is_as_thick
    {
        // A washer keeps its size relative to the head, in whole millimetres.
        let scaled = washer.diameter * thread.head_bearing / joint.bolt.thread.head_bearing;
        washer.diameter = (scaled * 1e3 - 1e-6).ceil() / 1e3;
    }
    if let Some(polymer) = &sized.polymer
        && matches!(polymer.role, PolymerRole::Clamped { diameter } if diameter <= sized.bolt.hole)
    {
        return None;
    }
    sized.sleeve = match sleeve {
        Some(outer) => Some(sleeve_of(joint, outer, &sized.bolt)?),
        None => None,
    };
    if let (Some(own), Some(thickness)) = (&mut sized.plate, plate) {
        own.material = own.material.at(thickness).ok()?;
        own.thickness = thickness;
    }
    fits(&sized).then_some(sized)
}

/// Sides that are usual for the bolts become those of the bolts tried.
fn follow(follows: [bool; 2], sides: [&mut f64; 2], usual: [f64; 2]) {
    for ((follows, side), usual) in follows.into_iter().zip(sides).zip(usual) {
        if follows {
            *side = usual;
        }
    }
}

/// The sleeve of this outside diameter around a bolt, which may be of another size than the joint's own.
fn sleeve_of(joint: &Joint, outer: f64, bolt: &Bolt) -> Option<Sleeve> {
    let is_as_thick = (bolt.thread.nominal - joint.bolt.thread.nominal).abs() < SAME;
    let own_inner = joint.sleeve.as_ref().map(|own| own.inner);
    let inner = own_inner.filter(|_| is_as_thick).unwrap_or(bolt.hole);
    let wall = (outer - inner) / 2.0;
    if wall < THINNEST {
        return None;
    }
    let Some(own) = &joint.sleeve else {
        return Some(Sleeve {
            outer,
            inner,
            length: joint.base.rail()?.depth - GAP,
            gap: GAP,
            material: Material::find(SLEEVE_STEEL, wall).ok()?,
            seat: Seat::Through,
            shoulder: None,
            hole: outer,
            weld: None,
        });
    };
    let mut sleeve = own.clone();
    sleeve.material = own.material.at(wall).ok()?;
    if let Some(shoulder) = &mut sleeve.shoulder {
        // A shoulder keeps what it stands out.
        shoulder.diameter += outer - own.outer;
    }
    sleeve.hole = match own.seat {
        // The hole keeps the play it leaves around the sleeve.
        Seat::Through => outer + (own.hole - own.outer),
        Seat::Inside => bolt.hole,
    };
    (sleeve.outer, sleeve.inner) = (outer, inner);
    Some(sleeve)
}

/// Whether the file with these sizes would be taken: bolts and sleeves beside each other, every hole in foot
/// and plate, every hole or sleeve inside the hollow of the rail and before its cut end.
fn fits(joint: &Joint) -> bool {
    let reach = joint.pattern.iter().fold([0.0_f64; 2], |[x, y], place| {
        [x.max(place[0].abs()), y.max(place[1].abs())]
    });
    let holds = |sides: [f64; 2]| {
        let mut both = sides.into_iter().zip(reach);
        both.all(|(side, reach)| side > 2.0 * reach + joint.bolt.hole)
    };
    let foot = joint.foot.as_ref().map(|foot| [foot.length, foot.width]);
    let plate = joint.plate.as_ref();
    let plate = plate.map(|plate| [plate.length, plate.width]);
    if !foot.into_iter().chain(plate).all(holds) {
        return false;
    }
    let head = joint.bolt.thread.head_bearing;
    let Some(rail) = joint.base.rail() else {
        return nearest(&joint.pattern) >= head;
    };
    let [hole, widest] = joint
        .sleeve
        .as_ref()
        .map_or([joint.bolt.hole; 2], |sleeve| {
            [sleeve.hole, sleeve.outer.max(sleeve.hole)]
        });
    let [along, across] = reach;
    let hollow = rail.face_width - 2.0 * rail.wall - 2.0 * across;
    let end = rail.edge.unwrap_or(f64::INFINITY);
    nearest(&joint.pattern) >= head.max(widest)
        && hollow >= widest.max(joint.bolt.hole)
        && along + hole / 2.0 < end
}

/// Mass of bolts with nuts, sleeves and plates \[kg\].
fn mass(model: &Model, joint: &Joint) -> f64 {
    let stack = Stack::of(model, joint);
    let bolts = joint.pattern.len() as f64;
    let thread = &joint.bolt.thread;
    let density = DENSITIES
        .iter()
        .find(|(metal, _)| *metal == joint.bolt.grade.metal)
        .map_or(0.0, |(_, density)| *density);
    let shank = PI / 4.0 * thread.nominal.powi(2) * stack.bolt_length;
    let ends = HEXAGON * thread.flats.powi(2) * HEAD_AND_NUT * thread.nominal;
    let sleeve = joint.sleeve.as_ref().map_or(0.0, |sleeve| {
        let area = PI / 4.0 * (sleeve.outer.powi(2) - sleeve.inner.powi(2));
        let flange = sleeve.shoulder.map_or(0.0, |flange| {
            PI / 4.0 * (flange.diameter.powi(2) - sleeve.inner.powi(2)) * flange.thickness
        });
        (area * sleeve.length + flange) * sleeve.material.density
    });
    let plates = joint.plate.as_ref().map_or(0.0, |plate| {
        let sides = if plate.both_sides { 2.0 } else { 1.0 };
        sides * plate.length * plate.width * plate.thickness * plate.material.density
    });
    bolts * (density * (shank + ends) + sleeve) + plates
}
