//! Lists of values: words, numbers with units, places in a plane.

use toml::Spanned;
use toml::de::DeValue;

use super::quantity::example;
use super::value::number_of;
use super::{Bound, Section};
use crate::diagnostic::Code;
use crate::units::Quantity;

/// Most values of one list: far above any build, low enough to keep every answer quick.
const MOST_VALUES: usize = 50;

impl<'a> Section<'a> {
    /// The values of a list that holds at least one; `wanted` says what it should be.
    fn values(&self, key: &'static str, wanted: &str) -> Option<Vec<&'a Spanned<DeValue<'a>>>> {
        let value = self.value(key)?;
        let Some(items) = value.get_ref().as_array() else {
            self.wrong_kind(value.span(), key, wanted, value.get_ref());
            return None;
        };
        if self.refuse_more_than(MOST_VALUES, key, items.len()) {
            return None;
        }
        if items.is_empty() {
            self.refuse(
                key,
                Code::WrongNumberOfItems,
                format!("{} holds nothing", self.key_name(key)),
                format!("write {wanted}, or take the key out"),
            );
            return None;
        }
        Some(items.iter().collect())
    }

    /// List of numbers with units, in SI; never empty.
    pub(crate) fn quantities(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<Vec<f64>> {
        let one = example(quantity, 1, bound);
        let items = self.values(key, &format!("a list of texts such as [{one}]"))?;
        let numbers: Vec<Option<f64>> = items
            .into_iter()
            .map(|item| {
                let [number] = self.quantity_texts::<1>(key, item, quantity, bound)?;
                self.bounded(key, item.span(), number, bound, &one)
            })
            .collect();
        numbers.into_iter().collect()
    }

    /// List of places in a plane, each a text of two numbers with one unit, in SI; never empty.
    pub(crate) fn places(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<Vec<[f64; 2]>> {
        let one = example(quantity, 2, bound);
        let items = self.values(key, &format!("a list of texts such as [{one}]"))?;
        let pairs: Vec<Option<[f64; 2]>> = items
            .into_iter()
            .map(|item| {
                let pair = self.quantity_texts::<2>(key, item, quantity, bound)?;
                for number in pair {
                    self.bounded(key, item.span(), number, bound, &one)?;
                }
                Some(pair)
            })
            .collect();
        pairs.into_iter().collect()
    }

    /// Two numbers without unit, the first not above the second.
    pub(crate) fn ratio_band(&self, key: &'static str, bound: Bound) -> Option<[f64; 2]> {
        let wanted = "a list of two numbers such as [0.10, 0.16]";
        let items = self.values(key, wanted)?;
        let numbers: Vec<f64> = items
            .iter()
            .filter_map(|item| number_of(item.get_ref()))
            .collect();
        let ([low, high], [first, second]) = (&numbers[..], &items[..]) else {
            self.refuse(
                key,
                Code::WrongKind,
                format!("{} needs {wanted}", self.key_name(key)),
                format!("write {wanted}"),
            );
            return None;
        };
        let low = self.bounded(key, first.span(), *low, bound, "0.12");
        let high = self.bounded(key, second.span(), *high, bound, "0.12");
        let (low, high) = (low?, high?);
        if low > high {
            self.refuse(
                key,
                Code::InsideOut,
                format!(
                    "the first end of {} is above the second: {low} and {high}",
                    self.key_name(key)
                ),
                "write the smaller number first",
            );
            return None;
        }
        Some([low, high])
    }

    /// Whether a list stands at a key.
    pub(crate) fn is_list(&self, key: &'static str) -> bool {
        self.value(key)
            .is_some_and(|value| value.get_ref().is_array())
    }

    /// List of words, each with what `meaning` makes of it; a problem is noted where that is nothing.
    pub(crate) fn words<T>(
        &self,
        key: &'static str,
        wanted: &str,
        allowed: &[&str],
        meaning: impl Fn(&str) -> Option<T>,
    ) -> Option<Vec<T>> {
        let items = self.values(key, &format!("a list of texts such as {wanted}"))?;
        let found: Vec<Option<T>> = items
            .into_iter()
            .map(|item| {
                let Some(word) = item.get_ref().as_str() else {
                    self.wrong_kind(item.span(), key, "a text in quotes", item.get_ref());
                    return None;
                };
                self.known_word(key, word, item.span(), allowed, &meaning)
            })
            .collect();
        found.into_iter().collect()
    }

    /// A text with what `meaning` makes of it; a problem is noted where that is nothing.
    pub(crate) fn word<T>(
        &self,
        key: &'static str,
        allowed: &[&str],
        meaning: impl Fn(&str) -> Option<T>,
    ) -> Option<T> {
        let word = self.text(key)?;
        self.known_word(key, word, self.place(key), allowed, &meaning)
    }

    fn known_word<T>(
        &self,
        key: &'static str,
        word: &str,
        place: std::ops::Range<usize>,
        allowed: &[&str],
        meaning: &impl Fn(&str) -> Option<T>,
    ) -> Option<T> {
        let found = meaning(word);
        if found.is_none() && self.sink.is_full() {
            self.sink.count_error();
        } else if found.is_none() {
            self.note(super::unknown_name(
                Code::UnknownWord,
                format!(
                    "unknown word for {}: {}",
                    self.key_name(key),
                    super::quoted(word)
                ),
                Some(place),
                word,
                allowed,
            ));
        }
        found
    }

    /// List of whole numbers between two others; never empty.
    pub(crate) fn counts(&self, key: &'static str, from: u32, to: u32) -> Option<Vec<u32>> {
        let wanted = "a list of whole numbers such as [1, 2]";
        let items = self.values(key, wanted)?;
        let counts: Vec<Option<u32>> = items
            .into_iter()
            .map(|item| self.whole_number(key, item, from, to))
            .collect();
        counts.into_iter().collect()
    }
}
