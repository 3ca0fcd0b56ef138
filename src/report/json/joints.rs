//! Bolted joints, in the results document, and one of them in a document of its own.

mod metals;
mod rail;
mod sizes;

use serde::Serialize;

use crate::model::Model;
use crate::model::joint::Joint;
use crate::report::content::joints::each;
use crate::report::content::joints::requirements::{self, Judged};
use crate::report::content::{names, quantity};
use crate::study::evaluate::Evaluation;
use crate::study::joint::JointResult;
use crate::study::joint::sharing::LoadedJoint;

use super::checks::{CheckOut, ComparedOut};
use super::loads::WrenchOut;
use super::{FORMAT, TOOL, finite, written};
use metals::MetalPairOut;
use rail::{RailOut, SleeveOut};
use sizes::SizingOut;

/// One joint over all load cases. Forces are those of one bolt unless the name says otherwise.
#[derive(Serialize)]
pub(super) struct JointOut<'a> {
    name: &'a str,
    mount: &'a str,
    /// `ok`, `close`, `over`, `fails` or `not checked`: the worst of its requirements.
    verdict: &'static str,
    /// The same as in `bolt`, where it is looked for first.
    torque_nm: f64,
    bolt: BoltOut<'a>,
    preload: PreloadOut,
    embedding_loss_n: f64,
    clamped: ClampedOut<'a>,
    /// Share of an axial pull under head and nut that the bolt feels.
    load_factor: f64,
    /// What the mount puts into each bolt, load case by load case; cases without a position are left out.
    bolts: Vec<LoadedOut<'a>>,
    /// `null` without a sleeve in a hollow rail.
    sleeve: Option<SleeveOut>,
    /// `null` on a solid part and for an open channel, whose squeeze is not computed.
    rail: Option<RailOut>,
    /// Every two parts that touch, or are joined by the bolts.
    metals: Vec<MetalPairOut>,
    /// The worst first.
    requirements: Vec<RequirementOut<'a>>,
    /// What is required and could not be judged by what the file says.
    not_checked: Vec<OpenOut<'a>>,
    /// `null` when the file does not ask for sizes.
    sizing: Option<SizingOut<'a>>,
}

#[derive(Serialize)]
struct OpenOut<'a> {
    id: &'static str,
    title: &'a str,
    reason: &'static str,
    cure: &'static str,
}

/// Least and most of a range.
#[derive(Serialize)]
struct Range {
    low: f64,
    high: f64,
}

#[derive(Serialize)]
struct BoltOut<'a> {
    /// Word of the model file.
    thread: &'static str,
    class: &'a str,
    count: usize,
    tightening_torque_nm: f64,
    /// Whether the file states the torque.
    torque_is_stated: bool,
    /// Of thread and head.
    friction: Range,
    /// Torque over preload and diameter.
    nut_factor: Range,
    /// What the torque gives over the range of friction; the scatter of tightening is in `preload.least_n`.
    preload_n: Range,
    stress_area_m2: f64,
    /// That of the file, else the shortest that reaches in steps of 5 mm.
    length_m: f64,
    resilience_m_per_n: f64,
}

#[derive(Serialize)]
struct PreloadOut {
    most_n: f64,
    least_n: f64,
    /// Least clamp force after all losses, with no load.
    clamp_n: f64,
    /// What the bolt bears while it is turned.
    permissible_n: f64,
    thermal_gain_n: f64,
    thermal_loss_n: f64,
    /// Share that a layer of polymer leaves.
    retained: f64,
    /// For each metre by which the stack shortens later.
    loss_n_per_m: f64,
}

#[derive(Serialize)]
struct ClampedOut<'a> {
    resilience_m_per_n: f64,
    length_m: f64,
    /// From head to nut.
    layers: Vec<LayerOut<'a>>,
}

#[derive(Serialize)]
struct LayerOut<'a> {
    /// `washer`, `bracket foot`, `plate`, `rail`, `flange`, `solid part` or `polymer`.
    kind: &'static str,
    thickness_m: f64,
    material: &'a str,
}

#[derive(Serialize)]
struct LoadedOut<'a> {
    load: &'a str,
    /// On the chassis, about the middle of the joint face: x along the rail, y across it, z out of it.
    wrench: WrenchOut,
    /// In the order of `pattern`, without preload.
    forces: Vec<ForceOut>,
    /// Moments about x, y, z that bolts so placed do not take.
    untaken_nm: [f64; 3],
}

#[derive(Serialize)]
struct ForceOut {
    /// Positive pulls.
    axial_n: f64,
    /// Along x and y of the joint face.
    shear_n: [f64; 2],
}

#[derive(Serialize)]
struct RequirementOut<'a> {
    #[serde(flatten)]
    compared: ComparedOut<'a>,
    /// SI unit of value and limit; `1` for plain numbers and shares.
    unit: &'static str,
    utilisation: Option<f64>,
    /// The value in every load case that counts; empty when it holds before any load or lies between several.
    loads: Vec<InLoadOut<'a>>,
    /// A rule of good practice: missing it breaks nothing, and the worst verdict is `over`.
    advisory: bool,
    /// `ok`, `close`, `over` or `fails`.
    verdict: &'static str,
    basis: &'a str,
    /// What would mend it; `null` when it holds.
    cure: Option<&'a str>,
}

#[derive(Serialize)]
struct InLoadOut<'a> {
    load: &'a str,
    value: Option<f64>,
}

pub(super) fn all<'a>(model: &'a Model, evaluation: &'a Evaluation) -> Vec<JointOut<'a>> {
    each(model, evaluation)
        .map(|(_, joint, result)| JointOut::of(model, evaluation, joint, result))
        .collect()
}

/// The document of one joint: what stands of it in the results document, and its checks.
///
/// # Errors
/// An error of the writer; in memory none is expected.
pub fn joint(
    model: &Model,
    evaluation: &Evaluation,
    joint: &Joint,
    result: &JointResult,
) -> Result<String, serde_json::Error> {
    written(&Document {
        format: FORMAT,
        tool: TOOL,
        joint: JointOut::of(model, evaluation, joint, result),
        checks: requirements::checks(evaluation, result)
            .map(|check| CheckOut::of(model, check))
            .collect(),
    })
}

#[derive(Serialize)]
struct Document<'a> {
    format: u32,
    tool: &'static str,
    #[serde(flatten)]
    joint: JointOut<'a>,
    /// As in the results document.
    checks: Vec<CheckOut<'a>>,
}

impl<'a> JointOut<'a> {
    fn of(
        model: &'a Model,
        evaluation: &Evaluation,
        joint: &'a Joint,
        result: &'a JointResult,
    ) -> Self {
        let (stack, preload) = (&result.stack, &result.preload);
        let clamp = result.rail.as_ref();
        let share = clamp.and_then(|clamp| clamp.sleeve.as_ref());
        Self {
            name: &joint.name,
            mount: names::mount(model, joint.mount),
            verdict: requirements::of_joint(evaluation, result).word(),
            torque_nm: preload.torque,
            bolt: BoltOut::of(joint, result),
            preload: PreloadOut {
                most_n: preload.most,
                least_n: preload.least,
                clamp_n: preload.clamp(),
                permissible_n: preload.permissible,
                thermal_gain_n: preload.thermal_gain,
                thermal_loss_n: preload.thermal_loss,
                retained: preload.retained,
                loss_n_per_m: preload.loss_per_settling,
            },
            embedding_loss_n: preload.embedding,
            clamped: ClampedOut {
                resilience_m_per_n: stack.parts_resilience,
                length_m: stack.grip,
                layers: stack
                    .layers
                    .iter()
                    .map(|layer| LayerOut {
                        kind: layer.kind.word(),
                        thickness_m: layer.thickness,
                        material: &layer.material,
                    })
                    .collect(),
            },
            load_factor: stack.load_factor,
            bolts: result
                .loads
                .iter()
                .map(|loaded| LoadedOut::of(model, loaded))
                .collect(),
            sleeve: joint
                .sleeve
                .as_ref()
                .zip(share)
                .map(|(sleeve, share)| SleeveOut::of(sleeve, share)),
            rail: clamp.map(RailOut::of),
            metals: result.metals.iter().map(MetalPairOut::of).collect(),
            requirements: requirements::ordered(evaluation, result)
                .into_iter()
                .map(|judged| RequirementOut::of(model, judged))
                .collect(),
            not_checked: result
                .unjudged
                .iter()
                .map(|open| OpenOut {
                    id: open.id,
                    title: &open.title,
                    reason: open.reason,
                    cure: open.cure,
                })
                .collect(),
            sizing: result.sizing.as_ref().map(SizingOut::of),
        }
    }
}

impl<'a> BoltOut<'a> {
    fn of(joint: &'a Joint, result: &JointResult) -> Self {
        let (bolt, preload) = (&joint.bolt, &result.preload);
        let [slippery, rough] = preload.friction;
        let [small, large] = preload.nut_factor;
        Self {
            thread: bolt.thread.name,
            class: bolt.grade.name,
            count: joint.pattern.len(),
            tightening_torque_nm: preload.torque,
            torque_is_stated: preload.is_stated,
            friction: Range {
                low: slippery,
                high: rough,
            },
            nut_factor: Range {
                low: small,
                high: large,
            },
            preload_n: Range {
                low: preload.at_highest_friction,
                high: preload.most,
            },
            stress_area_m2: bolt.thread.stress_area(),
            length_m: result.stack.bolt_length,
            resilience_m_per_n: result.stack.bolt_resilience,
        }
    }
}

impl<'a> LoadedOut<'a> {
    fn of(model: &'a Model, loaded: &LoadedJoint) -> Self {
        Self {
            load: names::load(model, loaded.load),
            wrench: WrenchOut::of(&loaded.wrench),
            forces: loaded
                .bolts
                .iter()
                .map(|bolt| ForceOut {
                    axial_n: bolt.axial,
                    shear_n: bolt.shear,
                })
                .collect(),
            untaken_nm: loaded.untaken,
        }
    }
}

impl<'a> RequirementOut<'a> {
    fn of(model: &'a Model, judged: Judged<'a>) -> Self {
        let one = judged.required;
        Self {
            compared: ComparedOut::of_requirement(model, one),
            unit: quantity::si_symbol(one.unit),
            utilisation: finite(one.utilisation()),
            loads: one
                .each
                .iter()
                .map(|&(load, value)| InLoadOut {
                    load: names::load(model, load),
                    value: finite(value),
                })
                .collect(),
            advisory: one.advisory,
            verdict: judged.verdict.word(),
            basis: &one.basis,
            cure: (!one.holds() && !one.cure.is_empty()).then_some(one.cure),
        }
    }
}
