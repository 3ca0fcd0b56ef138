//! Four equal mounts level with the centre of gravity under a pure roll torque: the answer is known.
//!
//! The torque M turns the block by `sin θ = M/(4 k b²)`, whatever its mass.

#![allow(clippy::print_stdout, reason = "an example shows its answer")]

use bedplate::model::file;
use bedplate::study::evaluate::evaluate;

const BUILD: &str = r#"
title = "Level block"
[datum]
origin = "centre of gravity"
fitted = "free"
[[part]]
name = "block"
mass = "1 g"                      # next to nothing, so that only the torque acts
at = "0, 0, 0 mm"
box = "600, 500, 500 mm"
[isolator.pad]
kind = "rates"
rates = "100 N/mm"
[[mount]]
name = "front left"
at = "400, 250, 0 mm"
isolator = "pad"
[[mount]]
name = "front right"
at = "400, -250, 0 mm"
isolator = "pad"
[[mount]]
name = "rear left"
at = "-400, 250, 0 mm"
isolator = "pad"
[[mount]]
name = "rear right"
at = "-400, -250, 0 mm"
isolator = "pad"
[[point]]
name = "centre"
at = "0, 0, 0 mm"
[loads]
usual = false
[[load]]
name = "roll torque"
apply = [{ point = "centre", moment = "8550.503583, 0, 0 N m" }]
"#;

pub(crate) fn main() -> Result<(), Box<dyn std::error::Error>> {
    let checked = file::read(BUILD.as_bytes()).map_err(|problems| format!("{problems:?}"))?;
    let evaluation = evaluate(&checked.model)?;
    let loaded = evaluation.loads[1].outcome.as_ref().map_err(Clone::clone)?;
    let roll = loaded.rotation.angle().to_degrees();
    println!("roll: {roll:.4} deg");

    // sin 20° = 8550.503583/(4 · 100e3 · 0.25²).
    assert!((roll - 20.0).abs() < 1e-4, "roll is {roll} deg");
    Ok(())
}
