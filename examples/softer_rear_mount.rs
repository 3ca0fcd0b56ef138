//! What a softer rear mount does to the pickup: frequencies go down, the weight on each mount stays.

#![allow(clippy::print_stdout, reason = "an example shows its answer")]

use bedplate::model::file;
use bedplate::study::evaluate::{Evaluation, evaluate};

const PICKUP: &str = include_str!("../models/forestry-pickup.toml");

pub(crate) fn main() -> Result<(), Box<dyn std::error::Error>> {
    let as_drawn = evaluated(PICKUP)?;
    let softer = evaluated(&PICKUP.replace("160, 85, 300 N/mm", "130, 70, 240 N/mm"))?;

    for (before, after) in as_drawn.modes[0]
        .solution
        .modes
        .iter()
        .zip(&softer.modes[0].solution.modes)
    {
        println!(
            "{:16} {:5.1} Hz -> {:5.1} Hz",
            before.name, before.frequency_hz, after.frequency_hz
        );
        // A stiffness that nowhere grows raises no natural frequency (Rayleigh).
        assert!(after.frequency_hz < before.frequency_hz + 0.01);
    }
    // Three mounts: statics alone fixes how they share the weight, all but for the small change of position.
    for (before, after) in lifts(&as_drawn)?.iter().zip(lifts(&softer)?) {
        println!("{before:7.1} N -> {after:7.1} N");
        assert!((before - after).abs() < 0.01 * before);
    }
    Ok(())
}

fn evaluated(text: &str) -> Result<Evaluation, Box<dyn std::error::Error>> {
    let checked = file::read(text.as_bytes()).map_err(|problems| format!("{problems:?}"))?;
    Ok(evaluate(&checked.model)?)
}

fn lifts(evaluation: &Evaluation) -> Result<Vec<f64>, Box<dyn std::error::Error>> {
    let rest = evaluation.loads[0].outcome.as_ref().map_err(Clone::clone)?;
    Ok(rest
        .mounts
        .iter()
        .map(|mount| mount.force_on_powertrain.z)
        .collect())
}
