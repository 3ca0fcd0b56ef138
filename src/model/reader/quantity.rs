//! Values of keys with a unit: one number, three of them, directions.

use std::ops::Range;

use toml::Spanned;
use toml::de::DeValue;

use super::value::number_of;
use super::{Bound, Section, quoted};
use crate::diagnostic::{Code, Diagnostic};
use crate::spatial::Vec3;
use crate::units::{self, Quantity, UnitError, UnitErrorKind};

/// Shortest direction that is taken as one.
const SHORTEST_DIRECTION: f64 = 1e-9;

impl<'a> Section<'a> {
    /// Number without a unit, or text such as "15 %".
    pub(crate) fn ratio(&self, key: &'static str, bound: Bound) -> Option<f64> {
        let value = self.value(key)?;
        match number_of(value.get_ref()) {
            Some(number) => self.bounded(key, value.span(), number, bound, "0.5"),
            None => self.quantity(key, Quantity::Ratio, bound),
        }
    }

    /// One number with its unit, in SI.
    pub(crate) fn quantity(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<f64> {
        let value = self.value(key)?;
        let [number] = self.quantity_texts::<1>(key, value, quantity, bound)?;
        self.bounded(
            key,
            value.span(),
            number,
            bound,
            &example(quantity, 1, bound),
        )
    }

    /// Three numbers with one unit, in SI.
    pub(crate) fn vector(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<Vec3> {
        let value = self.value(key)?;
        let numbers = self.quantity_texts::<3>(key, value, quantity, bound)?;
        for number in numbers {
            self.bounded(
                key,
                value.span(),
                number,
                bound,
                &example(quantity, 3, bound),
            )?;
        }
        Some(Vec3::from(numbers))
    }

    /// Whether one number is written, not several with commas between them.
    pub(crate) fn holds_one_number(&self, key: &'static str) -> bool {
        match self.value(key).map(Spanned::get_ref) {
            // With one comma a decimal comma is meant more often than a third number is forgotten.
            Some(DeValue::String(text)) => {
                let commas = text.matches(',').count();
                commas == 0 || (commas == 1 && !text.contains(", "))
            }
            Some(DeValue::Integer(_) | DeValue::Float(_)) => true,
            _ => false,
        }
    }

    /// One number for all three axes, or three numbers, with one unit, in SI.
    pub(crate) fn per_axis(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<Vec3> {
        self.value(key)?;
        if self.holds_one_number(key) {
            let all = self.quantity(key, quantity, bound)?;
            return Some(Vec3::repeat(all));
        }
        let value = self.value(key)?;
        if let Some(text) = value.get_ref().as_str()
            && text.matches(',').count() == 1
        {
            let message = format!("{} has two numbers: {}", self.key_name(key), quoted(text));
            let place = self.inside(value.span(), &(0..text.len()));
            self.note(
                Diagnostic::error(Code::NotAQuantity, message, Some(place)).help(format!(
                    "write one number for all three axes, such as {}, or three for u, v, w, such as {}",
                    example(quantity, 1, bound),
                    example(quantity, 3, bound)
                )),
            );
            return None;
        }
        self.vector(key, quantity, bound)
    }

    /// One number for each of `count` things, in one text with one unit at its end, in SI.
    pub(crate) fn row(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
        (count, things): (usize, &str),
    ) -> Option<Vec<f64>> {
        let value = self.value(key)?;
        let one = quantity.example_of(count.min(4));
        let Some(text) = value.get_ref().as_str() else {
            let wanted = format!("text such as \"{one}\"");
            self.wrong_kind(value.span(), key, &wanted, value.get_ref());
            return None;
        };
        let found = 1 + text.matches(',').count();
        if found != count {
            self.refuse(
                key,
                Code::WrongNumberOfItems,
                format!(
                    "{} has numbers for {found} {things}, not {count}",
                    self.key_name(key)
                ),
                format!("write {count} numbers with one unit at the end, like \"{one}\""),
            );
            return None;
        }
        let numbers = units::parse_row(text, quantity, count)
            .map_err(|error| self.note(self.unit_problem::<2>(key, value.span(), &error, bound)))
            .ok()?;
        for number in &numbers {
            self.bounded(key, value.span(), *number, bound, &format!("\"{one}\""))?;
        }
        Some(numbers)
    }

    /// Direction as three numbers, made a unit vector.
    pub(crate) fn direction(&self, key: &'static str) -> Option<Vec3> {
        let vector = self.vector(key, Quantity::Ratio, Bound::Any)?;
        let unit = vector.try_normalize(SHORTEST_DIRECTION);
        if unit.is_none() {
            self.refuse(
                key,
                Code::NoDirection,
                format!("{} has no length", self.key_name(key)),
                "three numbers that are not all zero, forward, left and up, such as \"0, 0, 1\"",
            );
        }
        unit
    }

    pub(super) fn quantity_texts<const N: usize>(
        &self,
        key: &str,
        value: &Spanned<DeValue<'a>>,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<[f64; N]> {
        let text = match value.get_ref() {
            DeValue::String(text) => text,
            DeValue::Integer(_) | DeValue::Float(_) if N == 1 && quantity != Quantity::Ratio => {
                self.note(self.bare_number(key, value.span(), quantity));
                return None;
            }
            other => {
                let wanted = format!("text such as {}", example(quantity, N, bound));
                self.wrong_kind(value.span(), key, &wanted, other);
                return None;
            }
        };
        let read = if N == 1 {
            units::parse(text, quantity).map(|one| [one; N])
        } else {
            units::parse_vector::<N>(text, quantity)
        };
        read.map_err(|error| self.note(self.unit_problem::<N>(key, value.span(), &error, bound)))
            .ok()
    }

    fn bare_number(&self, key: &str, place: Range<usize>, quantity: Quantity) -> Diagnostic {
        let unit = quantity.units().next().map_or("", units::UnitRow::symbol);
        let written = self.written(place.clone());
        Diagnostic::error(
            Code::BareNumber,
            format!("{} has no unit: {written}", self.key_name(key)),
            Some(place),
        )
        .label("no unit")
        .help(format!(
            "write number and unit as one text, such as `\"{written} {unit}\"`; units of {}: {}",
            quantity.name(),
            quantity.allowed()
        ))
    }

    fn unit_problem<const N: usize>(
        &self,
        key: &str,
        text_span: Range<usize>,
        error: &UnitError,
        bound: Bound,
    ) -> Diagnostic {
        let code = match &error.kind {
            UnitErrorKind::MissingUnit { .. } => Code::BareNumber,
            UnitErrorKind::UnknownUnit { .. } => Code::UnknownUnit,
            UnitErrorKind::WrongQuantity { .. } => Code::WrongUnit,
            UnitErrorKind::OutOfRange { .. } => Code::OutOfRange,
            _ => Code::NotAQuantity,
        };
        // Three plain numbers are a direction, of which the general advice on ratios says little.
        let is_direction = N > 1 && error.expected == Quantity::Ratio;
        let example = bare_example(error.expected, N, bound);
        let help = if is_direction {
            format!("write three numbers such as \"{example}\"")
        } else {
            error.help_like(&example)
        };
        let told = match &error.kind {
            UnitErrorKind::WrongQuantity {
                found,
                found_quantity,
                ..
            } if is_direction => format!(
                "{} is a unit of {}; a direction takes plain numbers",
                quoted(found),
                found_quantity.name()
            ),
            _ => error.to_string(),
        };
        Diagnostic::error(
            code,
            format!("{}: {told}", self.key_name(key)),
            Some(self.inside(text_span, &error.span)),
        )
        .help(help)
    }

    /// Bytes of the file for bytes inside a text value; the whole value when it holds escapes or is written in several lines.
    fn inside(&self, value: Range<usize>, part: &Range<usize>) -> Range<usize> {
        let written = self.sink.source.get(value.clone()).unwrap_or_default();
        let plain = !written.contains('\\')
            && !written.contains('\n')
            && !written.starts_with("\"\"\"")
            && !written.starts_with("'''");
        if !plain || part.is_empty() || value.start + 1 + part.end >= value.end {
            return value;
        }
        value.start + 1 + part.start..value.start + 1 + part.end
    }
}

/// A value as it is written in the file, quotes included.
pub(super) fn example(quantity: Quantity, count: usize, bound: Bound) -> String {
    format!("\"{}\"", bare_example(quantity, count, bound))
}

/// The same without quotes. Where nothing below zero is taken, three lengths are a size, not a place.
fn bare_example(quantity: Quantity, count: usize, bound: Bound) -> String {
    if quantity == Quantity::Length && count == 3 && !bound.holds(-0.15) {
        return "560, 520, 620 mm".to_owned();
    }
    quantity.example_of(count)
}
