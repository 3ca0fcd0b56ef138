//! What to set the wrench to, and what it leaves in the bolt.

use crate::model::Model;
use crate::model::joint::Joint;
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::report::content::{Line, names, quantity};
use crate::study::evaluate::Evaluation;
use crate::study::joint::JointResult;
use crate::units::{Digits, Shown};

use super::{bolts_in_words, each, force, requirements};

/// Step in which later settling is told \[m\].
const TEN_MICROMETRES: f64 = 1e-5;

/// Torque, friction, preload and its losses, as they follow from each other.
#[must_use]
pub fn lines(
    model: &Model,
    evaluation: &Evaluation,
    joint: &Joint,
    result: &JointResult,
) -> Vec<Line> {
    let (preload, stack) = (&result.preload, &result.stack);
    let length = quantity::with_digits(stack.bolt_length, Shown::Millimetre, Digits::Decimals(0));
    let mut bolts = Line::new(
        "bolts",
        format!("{}, {length} long at least", bolts_in_words(joint)),
    );
    bolts.verdict = Some(requirements::of_joint(evaluation, result));
    let mut lines = vec![bolts];
    lines.extend(governs(model, result));
    lines.extend([
        Line::new("torque to set", torque(joint, result)),
        Line::new(
            "friction",
            format!(
                "{} to {} in thread and under the head ({}): K from {} to {}, torque over preload and diameter",
                ratio(preload.friction[0]),
                ratio(preload.friction[1]),
                joint.bolt.lubrication.name,
                ratio(preload.nut_factor[0]),
                ratio(preload.nut_factor[1]),
            ),
        ),
        Line::new(
            "preload of a bolt",
            format!(
                "{} at most, where friction is lowest; {} at least, where it is highest or the tightening scatters most ({} to 1)",
                force(preload.most),
                force(preload.least),
                ratio(preload.scatter),
            ),
        ),
    ]);
    lines.extend(folding(result).map(|words| Line::new("but the walls", words)));
    lines.push(Line::new("lost after that", losses(result)));
    lines.push(Line::new("if it settles later", settling(joint, result)));
    lines.push(Line::new(
        "clamp force left",
        format!("{} at each bolt", force(preload.clamp())),
    ));
    lines.push(Line::new(
        "load factor",
        format!(
            "{}: of an axial pull under head and nut the bolt feels {}, the faces lose the rest",
            ratio(stack.load_factor),
            quantity::share(stack.load_factor)
        ),
    ));
    lines
}

/// The requirement that decides, with what it uses of its limit.
fn governs(model: &Model, result: &JointResult) -> Option<Line> {
    let one = requirements::governing(result)?;
    let used = quantity::share(one.utilisation());
    let load = one.load.map_or_else(
        || "before any load".to_owned(),
        |load| names::load(model, load).to_owned(),
    );
    Some(Line::new(
        "what governs",
        format!("{} ({load}): {used} of its limit used", one.title),
    ))
}

/// One row a joint: the numbers of its tightening, for programs.
#[must_use]
pub fn table(model: &Model, evaluation: &Evaluation) -> Table {
    Table {
        id: "joint_preload",
        about: "Tightening of each joint, for one bolt.".to_owned(),
        item: "joint",
        columns: vec![
            Column::number("preload_most", "most preload", Shown::Newton),
            Column::number("preload_least", "least preload", Shown::Newton),
            Column::number("embedding", "lost by settling", Shown::Newton),
            Column::number("thermal_loss", "lost by cold or heat", Shown::Newton),
            Column::number("thermal_gain", "added by cold or heat", Shown::Newton),
            Column::number("load_factor", "load factor", Shown::Number),
        ],
        groups: vec![Group::plain(
            each(model, evaluation)
                .map(|(_, joint, result)| {
                    let preload = &result.preload;
                    let numbers = [
                        preload.most,
                        preload.least,
                        preload.embedding,
                        preload.thermal_loss,
                        preload.thermal_gain,
                        result.stack.load_factor,
                    ];
                    Row::new(&joint.name, numbers.map(Cell::Number).to_vec())
                })
                .collect(),
        )],
        note: None,
    }
}

fn torque(joint: &Joint, result: &JointResult) -> String {
    let torque = quantity::with_unit(result.preload.torque, Shown::NewtonMetre);
    let from = if result.preload.is_stated {
        "as the file says"
    } else {
        "90 % of the yield strength of the bolt where friction is lowest"
    };
    format!(
        "{torque} at each bolt, {} ({from})",
        joint.bolt.tightening.name
    )
}

fn losses(result: &JointResult) -> String {
    let preload = &result.preload;
    let mut parts = vec![format!("{} as the faces settle", force(preload.embedding))];
    if preload.coats > 0.0 {
        parts.push(format!(
            "{} as paint or powder flows away",
            force(preload.coats)
        ));
    }
    if preload.thermal_loss > 0.0 {
        parts.push(format!("{} by cold or heat", force(preload.thermal_loss)));
    }
    if preload.retained < 1.0 {
        parts.push(format!(
            "{} of the rest as the polymer creeps",
            quantity::share(1.0 - preload.retained)
        ));
    }
    let mut text = parts.join(", ");
    if preload.thermal_gain > 0.0 {
        text.push_str(&format!(
            "; heat or cold may add {}",
            force(preload.thermal_gain)
        ));
    }
    text
}

/// That the rail folds before the bolts are tight, when it does: what is told below is then never reached.
fn folding(result: &JointResult) -> Option<String> {
    let rail = result.rail.as_ref()?;
    if rail.sleeve.is_some_and(|share| share.carries) {
        return None;
    }
    let fold = rail.folds() / rail.face_share;
    (fold < result.preload.most).then(|| {
        format!(
            "fold at {}, before the bolts are tight: the figures below suppose that they hold",
            force(fold)
        )
    })
}

/// What paint left in the joint costs, or a sleeve whose gap has not closed.
fn settling(joint: &Joint, result: &JointResult) -> String {
    let lost = result.preload.loss_per_settling * TEN_MICROMETRES;
    let lost = quantity::with_digits(lost, Shown::Kilonewton, Digits::Significant(2));
    let gap = match &joint.sleeve {
        Some(sleeve) if sleeve.gap > 0.0 => ", also of a gap of the sleeve that closes only then,",
        _ => "",
    };
    format!("each 10 µm{gap} costs {lost} of each bolt")
}

fn ratio(value: f64) -> String {
    quantity::with_digits(value, Shown::Number, Digits::Decimals(2))
}
