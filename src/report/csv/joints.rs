//! The tables of joints as a program reads them: the name of the joint before that of each row.

use crate::model::Model;
use crate::report::content::joints::{
    bolts, cases, each, metals, requirements, sizes, table, tightening,
};
use crate::report::content::table::Table;
use crate::study::evaluate::Evaluation;

/// All joints, or the one with this place in `Evaluation::joints`.
pub(super) fn tables(model: &Model, evaluation: &Evaluation, only: Option<usize>) -> Vec<Table> {
    let chosen = || {
        each(model, evaluation).filter(move |(place, ..)| only.is_none_or(|only| only == *place))
    };
    let names: Vec<&str> = chosen().map(|(_, joint, _)| joint.name.as_str()).collect();
    let mut tables = vec![
        table(model, evaluation),
        tightening::table(model, evaluation),
    ];
    for group in tables.iter_mut().flat_map(|table| &mut table.groups) {
        group.rows.retain(|row| names.contains(&row.item.as_str()));
    }
    for (_, joint, result) in chosen() {
        tables.push(named(
            requirements::table(model, evaluation, result),
            &joint.name,
        ));
        tables.push(named(cases::table(model, result), &joint.name));
        let sizes = result.sizing.as_ref();
        tables.extend(sizes.map(|found| named(sizes::table(model, joint, found), &joint.name)));
        tables.push(named(bolts::table(model, result), &joint.name));
        tables.push(named(metals::table(result), &joint.name));
    }
    tables
}

fn named(mut table: Table, joint: &str) -> Table {
    for group in &mut table.groups {
        // A remark would read as a load case without a position.
        group.remark = None;
        for row in &mut group.rows {
            row.item = format!("{joint}: {}", row.item);
        }
    }
    table
}
