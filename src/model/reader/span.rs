//! Lists of quantities: two ends of a travel or band, pairs of a measured curve.

use std::ops::Range;

use toml::Spanned;
use toml::de::DeValue;

use super::quantity::example;
use super::{Bound, Section};
use crate::diagnostic::Code;
use crate::units::Quantity;

/// Word in the place of an end that is not there.
const OPEN: &str = "none";

/// How a list of two ends is written.
pub(crate) struct Ends<'t> {
    /// A list that is taken, as it stands in a file.
    pub(crate) example: &'t str,
    /// What to write when the first end is above the second.
    pub(crate) order: &'t str,
}

/// One of two numbers that stand together in a list of pairs.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Column {
    /// What it is.
    pub(crate) quantity: Quantity,
    /// Which numbers are taken.
    pub(crate) bound: Bound,
}

/// Two numbers that stand together in a list of pairs.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Pair {
    /// First and second, in SI.
    pub(crate) values: [f64; 2],
    /// Where they stand in the file.
    pub(crate) place: Range<usize>,
}

impl<'a> Section<'a> {
    /// List of two numbers with units, the first not above the second, in SI.
    pub(crate) fn span(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
        ends: &Ends<'_>,
    ) -> Option<[f64; 2]> {
        let read = self.ends(key, ends, |item| {
            self.list_number(key, item, Column { quantity, bound })
        });
        let [low, high] = read?;
        self.in_order(key, [low, high], ends).then_some([low, high])
    }

    /// The same with `"none"` in the place of an end that is not there; one of the two is.
    pub(crate) fn open_span(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
        ends: &Ends<'_>,
    ) -> Option<[Option<f64>; 2]> {
        let read = self.ends(key, ends, |item| match item.get_ref().as_str() {
            Some(word) if word.trim().eq_ignore_ascii_case(OPEN) => Some(None),
            _ => self
                .list_number(key, item, Column { quantity, bound })
                .map(Some),
        });
        match read? {
            [None, None] => {
                self.refuse(
                    key,
                    Code::InsideOut,
                    format!("{} has no end", self.key_name(key)),
                    format!("give one end at least, or leave `{key}` out"),
                );
                None
            }
            [Some(low), Some(high)] if !self.in_order(key, [low, high], ends) => None,
            read => Some(read),
        }
    }

    /// Two items of a list, each read; `None` when one of them is wrong.
    fn ends<T>(
        &self,
        key: &'static str,
        ends: &Ends<'_>,
        read: impl Fn(&Spanned<DeValue<'a>>) -> Option<T>,
    ) -> Option<[T; 2]> {
        let value = self.value(key)?;
        let items = value.get_ref().as_array();
        let Some([low, high]) = items.map(|items| &items[..]) else {
            let wanted = format!("a list of two texts such as {}", ends.example);
            self.wrong_kind(value.span(), key, &wanted, value.get_ref());
            return None;
        };
        // Both are read before one is given up, so that both are judged.
        let (low, high) = (read(low), read(high));
        Some([low?, high?])
    }

    fn in_order(&self, key: &'static str, [low, high]: [f64; 2], ends: &Ends<'_>) -> bool {
        if low > high {
            self.refuse(
                key,
                Code::InsideOut,
                format!(
                    "the first end of {} is above the second: {}",
                    self.key_name(key),
                    self.written(self.place(key))
                ),
                ends.order,
            );
        }
        low <= high
    }

    /// List of pairs of numbers with units, in SI and in the order of the file; `None` when one of them is wrong.
    pub(crate) fn pairs(&self, key: &'static str, columns: [Column; 2]) -> Option<Vec<Pair>> {
        let [first, second] = columns;
        let one = format!(
            "[{}, {}]",
            example(first.quantity, 1, first.bound),
            example(second.quantity, 1, second.bound)
        );
        let value = self.value(key)?;
        let Some(items) = value.get_ref().as_array() else {
            let wanted = format!("a list of pairs such as [{one}, …]");
            self.wrong_kind(value.span(), key, &wanted, value.get_ref());
            return None;
        };
        if self.refuse_crowd(key, items.len()) {
            return None;
        }
        let mut pairs = Vec::with_capacity(items.len());
        for item in items.iter() {
            let both = item.get_ref().as_array();
            let Some([a, b]) = both.map(|both| &both[..]) else {
                // A list without its inner brackets is wrong all along: said once.
                self.wrong_kind(
                    item.span(),
                    key,
                    &format!("pairs such as {one}"),
                    item.get_ref(),
                );
                return None;
            };
            let (a, b) = (
                self.list_number(key, a, first),
                self.list_number(key, b, second),
            );
            if let (Some(a), Some(b)) = (a, b) {
                pairs.push(Pair {
                    values: [a, b],
                    place: item.span(),
                });
            }
        }
        (pairs.len() == items.len()).then_some(pairs)
    }

    fn list_number(
        &self,
        key: &'static str,
        item: &Spanned<DeValue<'a>>,
        Column { quantity, bound }: Column,
    ) -> Option<f64> {
        let [number] = self.quantity_texts::<1>(key, item, quantity, bound)?;
        let written_like = example(quantity, 1, bound);
        self.bounded(key, item.span(), number, bound, &written_like)
    }
}
