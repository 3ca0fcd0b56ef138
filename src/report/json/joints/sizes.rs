//! Sizes found for a joint, in the results document.

use serde::Serialize;

use crate::report::json::finite;
use crate::study::joint::sizing::{Sizing, Trial};

#[derive(Serialize)]
pub(super) struct SizingOut<'a> {
    /// Whether every requirement that is no rule of good practice holds with the best sizes.
    holds: bool,
    /// Combinations there were to choose from.
    choices: usize,
    best: TrialOut<'a>,
    /// One step down in one size each.
    smaller: Vec<TrialOut<'a>>,
}

#[derive(Serialize)]
struct TrialOut<'a> {
    thread: &'static str,
    class: &'static str,
    count: usize,
    /// x and y of each bolt in the joint face.
    pattern_m: &'a [[f64; 2]],
    /// Outside; `null` without a sleeve.
    sleeve_outer_m: Option<f64>,
    sleeve_length_m: Option<f64>,
    sleeve_inner_m: Option<f64>,
    sleeve_gap_m: Option<f64>,
    sleeve_material: Option<&'a str>,
    /// Diameter of the flange of the sleeve; `null` without one.
    shoulder_m: Option<f64>,
    /// Outside diameter; `null` without a washer.
    washer_m: Option<f64>,
    plate_m: Option<f64>,
    tightening_torque_nm: f64,
    /// Bolts with nuts, sleeves and plates.
    mass_kg: f64,
    /// Id of the requirement that is used most.
    governs: &'static str,
    utilisation: Option<f64>,
}

impl<'a> SizingOut<'a> {
    pub(super) fn of(sizing: &'a Sizing) -> Self {
        Self {
            holds: sizing.holds,
            choices: sizing.choices,
            best: TrialOut::of(&sizing.best),
            smaller: sizing.smaller.iter().map(TrialOut::of).collect(),
        }
    }
}

impl<'a> TrialOut<'a> {
    fn of(trial: &'a Trial) -> Self {
        let joint = &trial.joint;
        let sleeve = joint.sleeve.as_ref();
        Self {
            thread: joint.bolt.thread.name,
            class: joint.bolt.grade.name,
            count: joint.pattern.len(),
            pattern_m: &joint.pattern,
            sleeve_outer_m: sleeve.map(|sleeve| sleeve.outer),
            sleeve_length_m: sleeve.map(|sleeve| sleeve.length),
            sleeve_inner_m: sleeve.map(|sleeve| sleeve.inner),
            sleeve_gap_m: sleeve.map(|sleeve| sleeve.gap),
            sleeve_material: sleeve.map(|sleeve| sleeve.material.name.as_str()),
            shoulder_m: sleeve.and_then(|sleeve| Some(sleeve.shoulder?.diameter)),
            washer_m: joint.washer.map(|washer| washer.diameter),
            plate_m: joint.plate.as_ref().map(|plate| plate.thickness),
            tightening_torque_nm: trial.torque,
            mass_kg: trial.mass,
            governs: trial.governs.id,
            utilisation: finite(trial.used),
        }
    }
}
