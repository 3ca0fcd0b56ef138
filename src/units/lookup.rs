//! From the spelling of a unit to its row in the table.

use super::error::UnitErrorKind;
use super::normal;
use super::quantity::Quantity;
use super::table::UnitRow;

/// The row that `found`, as written by a person, names for this quantity, or what is wrong with it.
pub(super) fn row(found: &str, quantity: Quantity) -> Result<&'static UnitRow, UnitErrorKind> {
    let text = normal::unit(found);
    if let Some(row) = exact(&text, quantity).or_else(|| any_case(&text, quantity)) {
        return Ok(row);
    }
    let elsewhere = Quantity::ALL
        .into_iter()
        .find(|&other| exact(&text, other).is_some());
    Err(match elsewhere {
        Some(found_quantity) => UnitErrorKind::WrongQuantity {
            found: found.to_owned(),
            found_quantity,
            suggestion: as_force(&text, quantity)
                .or_else(|| as_mass(&text, quantity))
                .map(str::to_owned),
        },
        None => match before_number(found) {
            Some(unit) => UnitErrorKind::UnitNotLast {
                found: unit.to_owned(),
                rewritten: None,
            },
            None => UnitErrorKind::UnknownUnit {
                found: found.to_owned(),
                suggestion: suggestion(&text, quantity),
            },
        },
    })
}

/// Whether `text` is this spelling, in which a space stands for a product and may be missing.
fn same(spelling: &str, text: &str, fold: bool) -> bool {
    let mut text = text.bytes().peekable();
    for expected in spelling.bytes() {
        if expected == b' ' {
            text.next_if_eq(&b' ');
            continue;
        }
        match text.next() {
            Some(b) if b == expected || (fold && b.eq_ignore_ascii_case(&expected)) => {}
            _ => return false,
        }
    }
    text.next().is_none()
}

fn spelled(row: &UnitRow, text: &str, fold: bool) -> bool {
    row.spellings
        .iter()
        .any(|spelling| same(spelling, text, fold))
}

fn exact(text: &str, quantity: Quantity) -> Option<&'static UnitRow> {
    quantity.units().find(|row| spelled(row, text, false))
}

/// The only row that matches without regard to case, if its meaning does not hang on case.
fn any_case(text: &str, quantity: Quantity) -> Option<&'static UnitRow> {
    let mut rows = quantity.units().filter(|row| spelled(row, text, true));
    let row = rows.next()?;
    (row.any_case && rows.next().is_none()).then_some(row)
}

fn spellings(quantity: Quantity) -> impl Iterator<Item = &'static str> {
    quantity
        .units()
        .flat_map(|row| row.spellings.iter().copied())
}

/// The unit of force for a unit of mass that was probably meant as its weight: `kg m` to `kgf m`.
fn as_force(text: &str, quantity: Quantity) -> Option<&'static str> {
    ["kg", "lb"].iter().find_map(|mass| {
        let (before, after) = text.split_once(mass)?;
        let force = format!(
            "{before}{mass}f{}",
            after.strip_prefix('s').unwrap_or(after)
        );
        spellings(quantity).find(|spelling| same(spelling, &force, false))
    })
}

/// The unit of mass for its weight as a force: `lbf` to `lb`.
fn as_mass(text: &str, quantity: Quantity) -> Option<&'static str> {
    let mass = text.strip_suffix('f')?;
    let mut masses = spellings(quantity).filter(|_| quantity == Quantity::Mass);
    masses.find(|spelling| same(spelling, mass, false))
}

/// The spelling probably meant: the same but for case, else weight for mass, else a few slips away.
fn suggestion(text: &str, quantity: Quantity) -> Option<&'static str> {
    if let Some(spelling) = spellings(quantity).find(|spelling| same(spelling, text, true)) {
        return Some(spelling);
    }
    if let Some(spelling) = as_force(text, quantity) {
        return Some(spelling);
    }
    let len = text.chars().count();
    let slips = (len / 3).max(1);
    spellings(quantity)
        .map(|spelling| (strsim::osa_distance(text, spelling), spelling))
        // Of a single character nothing would be left in common.
        .filter(|&(distance, _)| distance <= slips && distance < len)
        .min_by_key(|&(distance, _)| distance)
        .map(|(_, spelling)| spelling)
}

/// The unit in front of a further number: `ft` of `ft 3 in`.
fn before_number(found: &str) -> Option<&str> {
    let (at, _) = found.char_indices().find(|&(at, c)| {
        let next = found
            .get(at + c.len_utf8()..)
            .and_then(|rest| rest.chars().next());
        c.is_whitespace() && next.is_some_and(|next| next.is_ascii_digit())
    })?;
    let unit = found.get(..at)?.trim_end();
    let text = normal::unit(unit);
    Quantity::ALL
        .into_iter()
        .any(|quantity| exact(&text, quantity).is_some())
        .then_some(unit)
}

#[cfg(test)]
mod tests {
    use super::{Quantity, UnitRow, exact, normal, row, same, spellings, suggestion};

    #[test]
    fn every_spelling_finds_its_own_row_with_and_without_spaces() {
        for quantity in Quantity::ALL {
            for unit in quantity.units() {
                for spelling in unit.spellings {
                    assert_eq!(normal::unit(spelling), *spelling);
                    let tight = spelling.replace(' ', "");
                    assert_eq!(exact(spelling, quantity), Some(unit), "{spelling}");
                    assert_eq!(exact(&tight, quantity), Some(unit), "{tight}");
                }
            }
        }
    }

    #[test]
    fn no_two_spellings_of_a_quantity_are_the_same() {
        for quantity in Quantity::ALL {
            for spelling in spellings(quantity) {
                let matching = spellings(quantity)
                    .filter(|other| same(other, &spelling.replace(' ', ""), false))
                    .count();
                assert_eq!(matching, 1, "{spelling} for {quantity:?}");
            }
        }
    }

    #[test]
    fn trade_units_match_in_any_case_and_si_symbols_do_not() {
        let symbol = |text, quantity| row(text, quantity).map(UnitRow::symbol).ok();
        assert_eq!(symbol("LB-FT", Quantity::Torque), Some("lbf ft"));
        assert_eq!(symbol("RPM", Quantity::Frequency), Some("rpm"));
        assert_eq!(symbol("IN", Quantity::Length), Some("in"));
        assert_eq!(symbol("Mm", Quantity::Length), None);
        assert_eq!(symbol("mPa", Quantity::Pressure), None);
        assert_eq!(symbol("NM", Quantity::Torque), None);
        assert_eq!(symbol("kgf/Mm", Quantity::LinearRate), None);
    }

    #[test]
    fn suggestions_are_near_or_absent() {
        for (text, quantity, expected) in [
            ("Mm", Quantity::Length, Some("mm")),
            ("mPa", Quantity::Pressure, Some("MPa")),
            ("KPA", Quantity::Pressure, Some("kPa")),
            ("NM", Quantity::Torque, Some("N m")),
            ("ft/lb", Quantity::Torque, Some("ft lb")),
            ("kg m", Quantity::Torque, Some("kgf m")),
            ("lb in s2", Quantity::Inertia, Some("lbf in s2")),
            ("inchs", Quantity::Length, Some("inch")),
            ("mil", Quantity::Length, None),
            ("x", Quantity::Length, None),
            ("furlong", Quantity::Length, None),
        ] {
            assert_eq!(suggestion(text, quantity), expected, "{text}");
        }
    }
}
