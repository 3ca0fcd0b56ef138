//! What each bolt of a joint takes, load case by load case.

use crate::model::Model;
use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::report::content::{names, quantity};
use crate::study::joint::JointResult;
use crate::study::joint::sharing::LoadedJoint;
use crate::units::Shown;

/// Below this a moment is not worth a remark, as a share of that at the joint.
const NOTHING: f64 = 1e-6;

/// One row a load case and bolt.
#[must_use]
pub fn table(model: &Model, result: &JointResult) -> Table {
    Table {
        id: "joint_bolts",
        about: "What each bolt takes of the mount reaction, load case by load case.".to_owned(),
        item: "bolt",
        columns: vec![
            Column::number("axial", "pull along it", Shown::Newton),
            Column::number("shear_x", "along the rail", Shown::Newton),
            Column::number("shear_y", "across it", Shown::Newton),
            Column::number("shear", "both together", Shown::Newton),
        ],
        groups: result.loads.iter().map(|one| group(model, one)).collect(),
        note: Some(
            "Without preload: what the mount adds. Below zero a bolt is relieved, since the foot presses on the face there. \
             The bolts stand in the order of `pattern`."
                .to_owned(),
        ),
    }
}

fn group(model: &Model, loaded: &LoadedJoint) -> Group {
    Group {
        load: Some(names::load(model, loaded.load).to_owned()),
        remark: untaken(loaded),
        rows: loaded
            .bolts
            .iter()
            .enumerate()
            .map(|(place, bolt)| {
                let [x, y] = bolt.shear;
                let cells = [bolt.axial, x, y, bolt.shear_size()];
                Row::new(
                    format!("bolt {}", place + 1),
                    cells.map(Cell::Number).to_vec(),
                )
            })
            .collect(),
    }
}

/// Moments that the pattern cannot take, so that nobody thinks it does.
fn untaken(loaded: &LoadedJoint) -> Option<String> {
    let least = NOTHING * loaded.wrench.moment.norm().max(1.0);
    let words: Vec<String> = ["about the rail", "across it", "about the bolts"]
        .into_iter()
        .zip(loaded.untaken)
        .filter(|(_, moment)| moment.abs() > least)
        .map(|(axis, moment)| format!("{} {axis}", quantity::with_unit(moment, Shown::NewtonMetre)))
        .collect();
    (!words.is_empty()).then(|| {
        format!(
            "Bolts so placed take no moment of {}: what else holds it is not computed here",
            names::and(&words)
        )
    })
}
