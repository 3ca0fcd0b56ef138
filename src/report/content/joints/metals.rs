//! Metals of a joint that touch or are joined by its bolts, and what to do about each two.

use crate::report::content::table::{Cell, Column, Group, Row, Table};
use crate::strength::galvanic::{Advice, AreaEffect};
use crate::study::joint::JointResult;
use crate::study::joint::metals::{Excuse, MetalPair};
use crate::units::{Digits, Shown};

/// One row a pair.
#[must_use]
pub fn table(result: &JointResult) -> Table {
    let volts = |key, head| Column::number(key, head, Shown::Number).digits(Digits::Decimals(2));
    Table {
        id: "joint_metals",
        about: "Metals that touch, or are joined by the bolts.".to_owned(),
        item: "pair",
        columns: vec![
            volts("difference_v", "difference (V)"),
            volts("allowed_v", "allowed here (V)"),
            Column::text("eaten", "which is eaten"),
            Column::number("area_ratio", "nobler area over the other", Shown::Number)
                .digits(Digits::Decimals(1)),
            Column::text("to_do", "what to do"),
        ],
        groups: vec![Group::plain(result.metals.iter().map(row).collect())],
        note: Some(
            "Differences of anodic indices (MIL-STD-889 style list, from memory): a first look, not a rate of corrosion. \
             A nobler part that is much the larger eats deep. What keeps the wet out mends every row."
                .to_owned(),
        ),
    }
}

fn row(metals: &MetalPair) -> Row {
    let [one, other] = metals.parts;
    let pair = &metals.pair;
    let eaten = metals.eaten_and_nobler();
    Row::new(
        format!("{one} and {other}"),
        vec![
            Cell::Number(pair.difference),
            Cell::Number(pair.allowed),
            Cell::Text(eaten.map_or("neither", |[eaten, _]| eaten).to_owned()),
            match eaten {
                Some(_) => Cell::Number(pair.area_ratio),
                None => Cell::Empty,
            },
            Cell::Text(to_do(metals)),
        ],
    )
}

/// What to do about a pair, in words.
#[must_use]
pub fn to_do(metals: &MetalPair) -> String {
    let Some([eaten, nobler]) = metals.eaten_and_nobler() else {
        return "nothing".to_owned();
    };
    match metals.excuse {
        Some(Excuse::NoblerCoated) => {
            return format!(
                "nothing while the coat of the {nobler} is whole: it keeps the wet from it"
            );
        }
        Some(Excuse::ZincOnSteel) => {
            return "nothing: the zinc is there to be eaten in place of the steel".to_owned();
        }
        None => {}
    }
    let deep = match metals.pair.area_effect {
        AreaEffect::Severe => ", which is so much larger that it eats deep",
        AreaEffect::Worse | AreaEffect::Mild => "",
    };
    match metals.pair.advice {
        Advice::Fine => "nothing".to_owned(),
        Advice::ZincSpent => {
            format!(
                "look at the zinc of the {eaten} each year, or coat the {nobler} and the {eaten}"
            )
        }
        Advice::Coat => format!("coat the {nobler} and the {eaten}, or the {nobler} alone"),
        Advice::Avoid => format!(
            "other metals, or keep them apart; else coat the {eaten} and above all the {nobler}{deep}"
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::galvanic::{Exposure, Side, judge};

    /// Bolt and rail of these indices, seven times as much rail as bolt or the other way round.
    fn pair(bolt: f64, rail: f64, areas: [f64; 2], excuse: Option<Excuse>) -> MetalPair {
        let side = |index| Side {
            index,
            is_sacrificial: (1.2..1.3).contains(&index),
        };
        MetalPair {
            parts: ["bolt", "rail"],
            indices: [bolt, rail],
            pair: judge([side(bolt), side(rail)], areas, Exposure::Harsh),
            excuse,
        }
    }

    /// The indices: stainless 0.50, steel 0.85, aluminium 0.90, zinc 1.25, magnesium 1.75 V.
    #[test]
    fn what_to_do_names_the_nobler_part_first() {
        let even = [1.0, 7.0];
        for (found, words) in [
            (pair(0.85, 0.85, even, None), "nothing"),
            (pair(0.85, 0.90, even, None), "nothing"),
            (
                pair(0.50, 0.90, even, None),
                "coat the bolt and the rail, or the bolt alone",
            ),
            (
                pair(1.25, 0.90, even, None),
                "look at the zinc of the bolt each year, or coat the rail and the bolt",
            ),
            (
                pair(0.50, 1.75, even, None),
                "other metals, or keep them apart; else coat the rail and above all the bolt",
            ),
            (
                pair(0.50, 0.90, [70.0, 1.0], None),
                "other metals, or keep them apart; else coat the rail and above all the bolt, which is so much larger that it eats deep",
            ),
            (
                pair(0.50, 0.90, even, Some(Excuse::NoblerCoated)),
                "nothing while the coat of the bolt is whole: it keeps the wet from it",
            ),
            (
                pair(1.25, 0.85, even, Some(Excuse::ZincOnSteel)),
                "nothing: the zinc is there to be eaten in place of the steel",
            ),
        ] {
            assert_eq!(to_do(&found), words);
        }
    }
}
