//! Text to SI.

use std::ops::Range;

use super::commas::{self, Slip};
use super::error::{UnitError, UnitErrorKind};
use super::lookup;
use super::number::{self, NumberError};
use super::quantity::Quantity;
use super::table::UnitRow;

/// The largest magnitude read, in the SI unit of the quantity. The largest honest value of a build
/// is a modulus of some 1e12 Pa; beyond a thousand times that an exponent has slipped.
pub const LARGEST: f64 = 1e15;

/// The smallest magnitude read other than zero, in the SI unit of the quantity; of temperatures
/// every one is read, because their zero is only a convention. A product of inertia
/// of a gram at a millimetre is 1e-9 kg m²; below a millionth of that an exponent has slipped.
pub const SMALLEST: f64 = 1e-15;

/// The lowest temperature read, in °C: 0 K by the definition of the Celsius scale.
pub const ABSOLUTE_ZERO: f64 = -273.15;

/// Reads one value, `12 mm`, into the SI unit of the quantity ([`Quantity::kept_in`]).
///
/// # Errors
///
/// [`UnitError`] says what is wrong, where, and how to put it right.
pub fn parse(text: &str, quantity: Quantity) -> Result<f64, UnitError> {
    let [value] = parse_vector(text, quantity)?;
    Ok(value)
}

/// Reads `N` numbers with commas between them and one unit at the end, `-150, 5, 180 mm`, into the
/// SI unit of the quantity.
///
/// # Errors
///
/// [`UnitError`] says what is wrong, where, and how to put it right.
pub fn parse_vector<const N: usize>(text: &str, quantity: Quantity) -> Result<[f64; N], UnitError> {
    let mut values = [0.0; N];
    Text { text, quantity }.fill(&mut values)?;
    Ok(values)
}

/// The same for a number of numbers that is known only when the text is read.
///
/// # Errors
///
/// [`UnitError`] says what is wrong, where, and how to put it right.
pub fn parse_row(text: &str, quantity: Quantity, count: usize) -> Result<Vec<f64>, UnitError> {
    let mut values = vec![0.0; count];
    Text { text, quantity }.fill(&mut values)?;
    Ok(values)
}

/// A text to be read as a quantity.
#[derive(Clone, Copy)]
struct Text<'a> {
    text: &'a str,
    quantity: Quantity,
}

impl<'a> Text<'a> {
    fn fill(self, values: &mut [f64]) -> Result<(), UnitError> {
        let count = values.len();
        let all = self.trimmed(0..self.text.len());
        if all.is_empty() {
            return Err(self.error(UnitErrorKind::Empty, 0..self.text.len()));
        }
        commas::check(self.at(all.clone()), count).map_err(|slip| match slip {
            Slip::Count(found) => self.error(
                UnitErrorKind::WrongCount {
                    expected: count,
                    found,
                },
                all.clone(),
            ),
            Slip::Decimal(at) => {
                let at = all.start + at.start..all.start + at.end;
                let found = self.at(at.clone()).to_owned();
                self.error(UnitErrorKind::DecimalComma { found }, at)
            }
        })?;
        let mut places = vec![0..0; count];
        let mut unit = all.end..all.end;
        let mut start = all.start;
        for (i, (value, place)) in values.iter_mut().zip(&mut places).enumerate() {
            // The last part reaches to the end; there are exactly so many of them.
            let rest = self.at(start..all.end);
            let end = rest.find(',').map_or(all.end, |comma| start + comma);
            let part = self.trimmed(start..end);
            let number = number::read(self.at(part.clone())).map_err(|e| self.bad(&e, &part))?;
            *value = number.value;
            *place = part.start..part.start + number.end;
            unit = self.trimmed(place.end..part.end);
            if i + 1 < count && !unit.is_empty() {
                let found = self.at(unit.clone()).to_owned();
                let rewritten = self.unit_once(all, &found);
                return Err(self.error(UnitErrorKind::UnitNotLast { found, rewritten }, unit));
            }
            start = end + 1;
        }
        let row = self.unit(&unit, places.last())?;
        for (value, place) in values.iter_mut().zip(&places) {
            *value = row.map_or(*value, |row| row.to_si(*value));
            self.check_size(*value, place)?;
        }
        Ok(())
    }

    /// The numbers with their unit once at the end, when each of them has this one.
    fn unit_once(self, all: Range<usize>, unit: &str) -> Option<String> {
        lookup::row(unit, self.quantity).ok()?;
        let numbers: Option<Vec<&str>> = self
            .at(all)
            .split(',')
            .map(|part| {
                let number = part.trim().strip_suffix(unit)?.trim_end();
                let read = number::read(number).ok()?;
                (read.end == number.len()).then_some(number)
            })
            .collect();
        Some(format!("{} {unit}", numbers?.join(", ")))
    }

    /// The row of the unit; none for a plain number.
    fn unit(
        self,
        span: &Range<usize>,
        number: Option<&Range<usize>>,
    ) -> Result<Option<&'static UnitRow>, UnitError> {
        let found = self.at(span.clone());
        if !found.is_empty() {
            let row = lookup::row(found, self.quantity);
            return row.map(Some).map_err(|mut kind| {
                if let UnitErrorKind::WrongQuantity {
                    suggestion: Some(meant),
                    ..
                } = &mut kind
                {
                    let numbers = self.at(0..span.start).trim();
                    *meant = format!("{numbers} {meant}");
                }
                let end = match &kind {
                    UnitErrorKind::UnitNotLast { found, .. } => span.start + found.len(),
                    _ => span.end,
                };
                self.error(kind, span.start..end)
            });
        }
        if self.quantity.needs_unit() {
            let number = number.cloned().unwrap_or(span.clone());
            let found = self.at(number.clone()).to_owned();
            return Err(self.error(UnitErrorKind::MissingUnit { found }, number));
        }
        Ok(None)
    }

    fn check_size(self, si: f64, at: &Range<usize>) -> Result<(), UnitError> {
        let sane = if self.quantity == Quantity::Temperature {
            // Near 0 °C the kept value may be as small as rounding leaves it: 32.1 °F less 32.
            (ABSOLUTE_ZERO..=LARGEST).contains(&si)
        } else {
            si == 0.0 || (SMALLEST..=LARGEST).contains(&si.abs())
        };
        if sane {
            return Ok(());
        }
        let found = self.at(at.clone()).to_owned();
        Err(self.error(UnitErrorKind::OutOfRange { found }, at.clone()))
    }

    fn bad(self, error: &NumberError, part: &Range<usize>) -> UnitError {
        let (NumberError::NotANumber(at) | NumberError::OutOfRange(at)) = error;
        let at = part.start + at.start..part.start + at.end;
        let found = self.at(at.clone()).to_owned();
        let kind = match error {
            NumberError::NotANumber(_) => UnitErrorKind::NotANumber { found },
            NumberError::OutOfRange(_) => UnitErrorKind::OutOfRange { found },
        };
        self.error(kind, at)
    }

    fn at(self, span: Range<usize>) -> &'a str {
        self.text.get(span).unwrap_or_default()
    }

    fn trimmed(self, span: Range<usize>) -> Range<usize> {
        let text = self.at(span.clone());
        let start = span.start + (text.len() - text.trim_start().len());
        start..start + text.trim().len()
    }

    fn error(self, kind: UnitErrorKind, span: Range<usize>) -> UnitError {
        UnitError {
            kind,
            span,
            expected: self.quantity,
        }
    }
}

#[cfg(test)]
mod tests;
