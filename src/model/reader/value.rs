//! Values of keys without a unit: text, words, flags and plain numbers.

use std::ops::Range;

use toml::Spanned;
use toml::de::DeValue;

use super::{Bound, Section, quoted, unknown_name};
use crate::diagnostic::{Code, Diagnostic};

impl<'a> Section<'a> {
    /// Text of a key.
    pub(crate) fn text(&self, key: &'static str) -> Option<&'a str> {
        let value = self.value(key)?;
        let text = value.get_ref().as_str();
        if text.is_none() {
            self.wrong_kind(value.span(), key, "text in quotes", value.get_ref());
        }
        text
    }

    /// Text of a key without a word about it; `None` where there is none.
    pub(crate) fn word_of(&self, key: &'static str) -> Option<&'a str> {
        self.value(key)?.get_ref().as_str()
    }

    /// Whether a number without quotes stands where a text is wanted.
    pub(crate) fn is_bare_number(&self, key: &'static str) -> bool {
        self.value(key)
            .is_some_and(|value| number_of(value.get_ref()).is_some())
    }

    /// One of several words.
    pub(crate) fn choice<T: Copy>(&self, key: &'static str, words: &[(&str, T)]) -> Option<T> {
        self.choice_like(key, words, &[], "")
    }

    /// The same with other words that are written for them, and what each means when it has to be told.
    pub(crate) fn choice_like<T: Copy>(
        &self,
        key: &'static str,
        words: &[(&str, T)],
        others: &[(&str, &str)],
        meanings: &str,
    ) -> Option<T> {
        let value = self.value(key)?;
        let Some(written) = value.get_ref().as_str() else {
            let listed: Vec<String> = words.iter().map(|(word, _)| quoted(word)).collect();
            let wanted = format!("one of the words {}", listed.join(", "));
            let help = if meanings.is_empty() {
                format!("write it in quotes, such as `\"{}\"`", words.first()?.0)
            } else {
                format!("write {meanings}")
            };
            self.note(
                self.of_wrong_kind(value.span(), key, &wanted, value.get_ref())
                    .help(help),
            );
            return None;
        };
        if let Some((_, meaning)) = words.iter().find(|(word, _)| *word == written) {
            return Some(*meaning);
        }
        let lower = written.trim().to_lowercase();
        let meant = others.iter().find(|(other, _)| *other == lower);
        let message = format!(
            "unknown word for {}: {}",
            self.key_name(key),
            quoted(written)
        );
        let place = Some(self.place(key));
        let allowed: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        let problem = match meant {
            Some((_, word)) => Diagnostic::error(Code::UnknownWord, message, place)
                .help(format!("did you mean {}?", quoted(word))),
            None => unknown_name(Code::UnknownWord, message, place, written, &allowed),
        };
        self.note(if meanings.is_empty() {
            problem
        } else {
            problem.help(format!("write {meanings}"))
        });
        None
    }

    /// `true` or `false`.
    pub(crate) fn flag(&self, key: &'static str) -> Option<bool> {
        let value = self.value(key)?;
        let flag = value.get_ref().as_bool();
        if flag.is_none() {
            let wanted = "`true` or `false` without quotes";
            self.wrong_kind(value.span(), key, wanted, value.get_ref());
        }
        flag
    }

    /// Whole number between two others.
    pub(crate) fn count(&self, key: &'static str, from: u32, to: u32) -> Option<u32> {
        self.whole_number(key, self.value(key)?, from, to)
    }

    pub(super) fn whole_number(
        &self,
        key: &str,
        value: &Spanned<DeValue<'a>>,
        from: u32,
        to: u32,
    ) -> Option<u32> {
        let Some(integer) = value.get_ref().as_integer() else {
            let wanted = "a whole number without quotes";
            self.wrong_kind(value.span(), key, wanted, value.get_ref());
            return None;
        };
        let count = u32::from_str_radix(integer.as_str(), integer.radix())
            .ok()
            .filter(|count| (from..=to).contains(count));
        if count.is_none() {
            let message = format!(
                "{} must be a whole number from {from} to {to}: {}",
                self.key_name(key),
                self.written(value.span())
            );
            self.note(
                Diagnostic::error(Code::OutOfRange, message, Some(value.span()))
                    .help("check the number"),
            );
        }
        count
    }

    /// The number when it is within the bound; else a problem, with an example of what is taken.
    pub(super) fn bounded(
        &self,
        key: &str,
        place: Range<usize>,
        number: f64,
        bound: Bound,
        example: &str,
    ) -> Option<f64> {
        if number.is_finite() && bound.holds(number) {
            return Some(number);
        }
        self.note(
            Diagnostic::error(
                Code::OutOfRange,
                format!(
                    "{} must be {}: {}",
                    self.key_name(key),
                    bound.words(number),
                    self.written(place.clone())
                ),
                Some(place),
            )
            .help(format!(
                "check the number, its sign and its unit; it is written like {example}"
            )),
        );
        None
    }
}

/// A number without quotes; not a number when it is too large to hold, so that every bound refuses it.
pub(super) fn number_of(value: &DeValue<'_>) -> Option<f64> {
    match value {
        DeValue::Integer(integer) => Some(
            i64::from_str_radix(integer.as_str(), integer.radix())
                .map_or(f64::NAN, |number| number as f64),
        ),
        DeValue::Float(float) => Some(float.as_str().parse().unwrap_or(f64::NAN)),
        _ => None,
    }
}

pub(super) fn kind_in_words(value: &DeValue<'_>) -> String {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) | DeValue::Float(_) => "a number",
        DeValue::Boolean(_) => "`true` or `false`",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(items) if items.is_empty() => "an empty list",
        DeValue::Array(items) => return format!("a list of {}", items.len()),
        DeValue::Table(_) => "a table",
    }
    .to_owned()
}
