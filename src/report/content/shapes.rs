//! Section: the shape of each mode.

use crate::model::Model;
use crate::rigid::modes::Mode;
use crate::study::evaluate::{Evaluation, LoadResult};

use super::{Block, Drawing, Plate, Section, names, quantity};

/// Below this a share is left out of a sentence.
const WORTH_SAYING: f64 = 0.05;

/// Below this the straightening of the mounts' forces is not worth a sentence.
const GEOMETRY_COUNTS: f64 = 0.02;

/// Frequencies nearer than this share have shapes that no one tells apart on paper.
const SAME_FREQUENCY: f64 = 0.01;

/// One plate a mode, for each position with frequencies of its own.
#[must_use]
pub fn section(model: &Model, evaluation: &Evaluation) -> Section {
    let mut blocks = vec![Block::paragraph(
        "How the powertrain swings in each mode: dashed still, solid displaced, arrows at the mounts and the centre \
         of gravity. All is drawn far larger than it is; only the ratios of the motions mean something. The energy \
         shares say what moves; the strain shares say which mounts work, so which isolator changes that frequency.",
    )];
    for (position, at) in evaluation.modes.iter().enumerate() {
        let load = names::load(model, at.load);
        blocks.push(Block::Heading(format!(
            "About the position \u{201c}{load}\u{201d}"
        )));
        if same_as_at_rest(evaluation, position) {
            blocks.push(Block::Paragraph(format!(
                "In \u{201c}{load}\u{201d} no natural frequency differs from the one at rest by more than {}; \
                 the shapes are those above.",
                quantity::share(SAME_FREQUENCY)
            )));
            continue;
        }
        let held: &[usize] = evaluation
            .loads
            .iter()
            .find(|result: &&LoadResult| result.load == at.load)
            .map_or(&[], |result| &result.mounts);
        let plates = at
            .solution
            .modes
            .iter()
            .enumerate()
            .map(|(place, mode)| Plate {
                drawing: Drawing::ModeShape {
                    position,
                    mode: place,
                },
                text: Some(sentence(model, held, mode)),
            })
            .collect();
        blocks.push(Block::Plates(plates));
    }
    if evaluation.modes.is_empty() {
        blocks.push(Block::paragraph(
            "No loaded position was found, so there are no mode shapes.",
        ));
    }
    Section {
        id: "shapes",
        heading: "Mode shapes",
        blocks,
    }
}

/// Whether each mode of a further position is one of the rest position again; a mode that grows never is.
fn same_as_at_rest(evaluation: &Evaluation, position: usize) -> bool {
    let (Some(rest), Some(at)) = (evaluation.modes.first(), evaluation.modes.get(position)) else {
        return false;
    };
    let at_rest = evaluation.loads.first().map(|result| result.load) == Some(rest.load);
    let (rest, here) = (&rest.solution.modes, &at.solution.modes);
    position > 0
        && at_rest
        && rest.len() == here.len()
        && rest.iter().zip(here).all(|(rest, here)| {
            let apart = (here.frequency_hz - rest.frequency_hz).abs();
            rest.growth_rate.is_none()
                && here.growth_rate.is_none()
                && apart <= SAME_FREQUENCY * rest.frequency_hz
        })
}

fn sentence(model: &Model, held: &[usize], mode: &Mode) -> String {
    let moving = largest_first(names::energy(mode));
    let strained = largest_first(
        mode.mount_strain_share
            .iter()
            .zip(held)
            .map(|(share, mount)| (*share, names::mount(model, *mount))),
    );
    let mut text = format!("Energy: {moving}. Strain: {strained}.");
    if mode.geometric_strain_share.abs() >= GEOMETRY_COUNTS {
        text.push_str(&format!(
            " {} of its stiffness comes from the weight hanging or standing on the mounts.",
            quantity::share(mode.geometric_strain_share)
        ));
    }
    text
}

fn largest_first<'a>(shares: impl Iterator<Item = (f64, &'a str)>) -> String {
    let mut worth: Vec<(f64, &str)> = shares
        .filter(|(share, _)| share.abs() >= WORTH_SAYING)
        .collect();
    worth.sort_by(|a, b| b.0.abs().total_cmp(&a.0.abs()));
    let said: Vec<String> = worth
        .iter()
        .map(|(share, name)| format!("{name} {}", quantity::share(*share)))
        .collect();
    if said.is_empty() {
        "spread evenly".to_owned()
    } else {
        said.join(", ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::fixture;

    fn plates(model: &Model, evaluation: &Evaluation) -> usize {
        let blocks = section(model, evaluation).blocks;
        blocks
            .iter()
            .filter(|block| matches!(block, Block::Plates(_)))
            .count()
    }

    #[test]
    fn shapes_are_drawn_again_only_where_a_frequency_differs() {
        let (model, mut evaluation) = fixture::build();
        evaluation.modes.truncate(1);
        for mode in &mut evaluation.modes[0].solution.modes {
            mode.growth_rate = None;
        }
        let mut further = evaluation.modes[0].clone();
        further.load = 2;
        further.solution.modes[3].frequency_hz *= 1.009;
        evaluation.modes.push(further);
        assert_eq!(plates(&model, &evaluation), 1);
        evaluation.modes[1].solution.modes[3].frequency_hz *= 1.009;
        assert_eq!(plates(&model, &evaluation), 2);
        evaluation.modes[1].solution.modes[3].frequency_hz = f64::NAN;
        assert_eq!(plates(&model, &evaluation), 2);
    }
}
