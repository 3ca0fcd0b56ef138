//! Each mount in one row: what it carries at rest, how far it sinks, and the most it ever holds.

use crate::model::Model;
use crate::rigid::equilibrium::MountState;
use crate::study::evaluate::Evaluation;
use crate::units::Shown;

use super::deflections::the_way_it_carries;
use super::names;
use super::reactions::{at_rest, held_by, upward_shares};
use super::table::{Cell, Column, Group, Row, Table};

/// One row a mount.
#[must_use]
pub fn mounts(model: &Model, evaluation: &Evaluation) -> Table {
    Table {
        id: "overview",
        about: "What each mount carries at rest, and the most it holds in any load case."
            .to_owned(),
        item: "mount",
        columns: vec![
            Column::number("force_up_at_rest", "carries at rest", Shown::Newton),
            Column::number("share_at_rest", "share", Shown::Percent),
            Column::words("isolator at rest"),
            Column::number("force_most", "most force", Shown::Newton),
            Column::text("force_most_at", "in load case"),
        ],
        groups: vec![Group::plain(
            (0..model.mounts.len())
                .map(|place| row(model, evaluation, place))
                .collect(),
        )],
        note: None,
    }
}

fn row(model: &Model, evaluation: &Evaluation, place: usize) -> Row {
    let mut cells = match carried(model, evaluation, place) {
        Some((state, share)) => {
            let isolator = model
                .mounts
                .get(place)
                .and_then(|mount| model.isolators.get(mount.isolator));
            vec![
                Cell::Number(state.force_on_powertrain.z),
                Cell::maybe(share),
                Cell::Text(the_way_it_carries(state, isolator)),
            ]
        }
        None => vec![Cell::Empty, Cell::Empty, Cell::Empty],
    };
    match most(model, evaluation, place) {
        Some((load, force)) => cells.extend([
            Cell::Number(force),
            Cell::Text(names::load(model, load).to_owned()),
        ]),
        None => cells.extend([Cell::Empty, Cell::Empty]),
    }
    Row::new(names::mount(model, place), cells)
}

fn carried<'a>(
    model: &'a Model,
    evaluation: &'a Evaluation,
    place: usize,
) -> Option<(&'a MountState, Option<f64>)> {
    let (result, found) = at_rest(evaluation)?;
    held_by(model, result, found)
        .zip(upward_shares(model, found))
        .find(|((at, ..), _)| *at == place)
        .map(|((_, _, state), share)| (state, share))
}

/// Load case and size of the largest force on a mount \[N\].
fn most(model: &Model, evaluation: &Evaluation, place: usize) -> Option<(usize, f64)> {
    evaluation
        .loads
        .iter()
        .filter_map(|result| {
            let found = result.outcome.as_ref().ok()?;
            let (_, _, state) = held_by(model, result, found).find(|(at, ..)| *at == place)?;
            Some((result.load, state.force_on_powertrain.norm()))
        })
        .filter(|(_, force)| force.is_finite())
        .max_by(|a, b| a.1.total_cmp(&b.1))
}
