//! Tables inside a section: one, a list of them, or one for each name of the user's.

use std::ops::Range;

use super::names::Names;
use super::{Bound, MOST_ITEMS, Section, number_of};
use crate::diagnostic::{Code, Diagnostic};

/// The tables of one `[[key]]` of the file with their names.
pub(crate) struct Items<'a> {
    /// One section an item.
    pub(crate) sections: Vec<Section<'a>>,
    /// Their names as written, in the same order; empty where there is none.
    pub(crate) names: Names<'a>,
}

/// The tables of `[key.NAME]`, in the order of the file.
pub(crate) struct NamedItems<'a> {
    /// Name, place and table; no table when the name or what it stands for is wrong.
    pub(crate) sections: Vec<(&'a str, Range<usize>, Option<Section<'a>>)>,
    /// Their names.
    pub(crate) names: Names<'a>,
}

impl<'a> Section<'a> {
    /// A table inside this one; `example` is what to write where there is none, braces included.
    pub(crate) fn section_like(&self, key: &'static str, example: &str) -> Option<Section<'a>> {
        let value = self.value(key)?;
        if value.get_ref().is_table() {
            return self.section(key);
        }
        self.note(
            self.of_wrong_kind(value.span(), key, "a table", value.get_ref())
                .help(format!("write names and values in braces: `{example}`")),
        );
        None
    }

    /// Whether any of some keys of a table inside this one stand outside of its braces; says so once.
    pub(crate) fn refuse_outside(
        &self,
        keys: &[&'static str],
        table: &'static str,
        example: &str,
    ) -> bool {
        let outside: Vec<&'static str> = keys
            .iter()
            .copied()
            .filter(|key| self.table.contains_key(*key))
            .collect();
        let Some(first) = outside.first() else {
            return false;
        };
        self.foreign.borrow_mut().extend(&outside);
        let message = format!("{} stands outside of its braces", self.key_name(first));
        self.note(
            Diagnostic::error(Code::UnknownKey, message, Some(self.place(first)))
                .label("not a key here")
                .help(format!("write the sizes together: `{table} = {example}`")),
        );
        true
    }

    /// Whether a key holds a table.
    pub(crate) fn has_table(&self, key: &'static str) -> bool {
        self.value(key)
            .is_some_and(|value| value.get_ref().is_table())
    }

    /// A table inside this one.
    pub(crate) fn section(&self, key: &'static str) -> Option<Section<'a>> {
        let value = self.value(key)?;
        let Some(table) = value.get_ref().as_table() else {
            self.wrong_kind(value.span(), key, "a table", value.get_ref());
            return None;
        };
        let within = format!("{}{key}.", self.within);
        Some(self.child(
            self.key_path(key),
            self.owner.clone(),
            within,
            value.span(),
            table,
        ))
    }

    /// Reads a table inside this one. The outer `None` says that it is absent,
    /// the inner one that something in it is wrong, be it only an unknown key.
    pub(crate) fn judged<T>(
        &self,
        key: &'static str,
        read: impl FnOnce(Section<'a>) -> Option<T>,
    ) -> Option<Option<T>> {
        if !self.has(key) {
            return None;
        }
        let before = self.sink.errors();
        let read = self.section(key).and_then(read);
        Some(read.filter(|_| self.sink.errors() == before))
    }

    /// A list of tables, written as a list of `{ … }`.
    pub(crate) fn sections(&self, key: &'static str) -> Vec<Section<'a>> {
        self.tables(key, None).0
    }

    /// A list of tables with names, written `[[key]]`; `sort` says what they are.
    pub(crate) fn items(&self, key: &'static str, sort: &'static str) -> Items<'a> {
        let (sections, complete) = self.tables(key, Some(sort));
        Self::refuse_duplicates(sort, &sections);
        let list = sections.iter().map(Section::written_name).collect();
        Items {
            names: Names::new(sort, list, complete),
            sections,
        }
    }

    /// The tables, and whether that is all of them.
    fn tables(&self, key: &'static str, sort: Option<&str>) -> (Vec<Section<'a>>, bool) {
        let Some(value) = self.value(key) else {
            return (Vec::new(), true);
        };
        let Some(items) = value.get_ref().as_array() else {
            let wanted = match sort {
                Some(_) => format!("a list of tables, each headed `[[{key}]]`"),
                None => format!("a list of tables, `{key} = [{{ … }}]`"),
            };
            self.wrong_kind(value.span(), key, &wanted, value.get_ref());
            return (Vec::new(), false);
        };
        if self.refuse_crowd(key, items.len()) {
            return (Vec::new(), false);
        }
        let mut found = Vec::new();
        for (index, item) in items.iter().enumerate() {
            let Some(table) = item.get_ref().as_table() else {
                self.wrong_kind(item.span(), key, "a table", item.get_ref());
                continue;
            };
            let path = format!("{}[{index}]", self.key_path(key));
            let (owner, within) = match sort {
                Some(sort) => (item_name(sort, index, table), String::new()),
                None => (
                    self.owner.clone(),
                    format!("{}{key}[{index}].", self.within),
                ),
            };
            found.push(self.child(path, owner, within, item.span(), table));
        }
        let complete = found.len() == items.len();
        (found, complete)
    }

    /// Tables with names of the user's, written `[key.NAME]`; `sort` says what they are.
    pub(crate) fn named_items(&self, key: &'static str, sort: &'static str) -> NamedItems<'a> {
        let group = match self.value(key) {
            Some(value) if value.get_ref().is_array() => {
                let wanted = format!("tables, each headed `[{key}.NAME]`");
                self.wrong_kind(value.span(), key, &wanted, value.get_ref());
                None
            }
            _ => self.section(key),
        };
        // That a needed one is absent was told; that there are none of another sort is no fault.
        let absent_at_will = !self.has(key) && !self.sink.misses(&self.key_path(key));
        let group = group.filter(|group| !self.refuse_crowd(key, group.table.len()));
        let mut sections = Vec::new();
        if let Some(group) = &group {
            for (name, value) in group.table.iter() {
                let written = name.get_ref().as_ref();
                let section = match value.get_ref().as_table() {
                    Some(table) => {
                        let (path, owner) =
                            (format!("{key}.{written}"), format!("{sort} `{written}`"));
                        Some(self.child(path, owner, String::new(), value.span(), table))
                    }
                    None => {
                        group.wrong_kind(value.span(), written, "a table", value.get_ref());
                        None
                    }
                };
                let usable = group.usable_name(written, name.span());
                sections.push((written, value.span(), section.filter(|_| usable)));
            }
        }
        let complete = group.is_some() || absent_at_will;
        let list = sections.iter().map(|(name, ..)| *name).collect();
        NamedItems {
            names: Names::new(sort, list, complete),
            sections,
        }
    }

    /// Names and numbers of a table such as `gears = { "1" = 4.12 }`; none when one of them is wrong.
    pub(crate) fn named_ratios(
        &self,
        key: &'static str,
        bound: Bound,
    ) -> Option<Vec<(String, f64)>> {
        let group = self.section(key)?;
        if self.refuse_crowd(key, group.table.len()) {
            return None;
        }
        let mut found = Vec::new();
        for (name, value) in group.table.iter() {
            let written = name.get_ref().as_ref();
            let usable = group.usable_name(written, name.span());
            let Some(number) = number_of(value.get_ref()) else {
                group.wrong_kind(value.span(), written, "a number", value.get_ref());
                continue;
            };
            let ratio = group.bounded(written, value.span(), number, bound, "3.6");
            if let (true, Some(ratio)) = (usable, ratio) {
                found.push((written.to_owned(), ratio));
            }
        }
        (found.len() == group.table.len()).then_some(found)
    }

    /// Notes that a list or table holds nothing, where something is needed.
    pub(crate) fn refuse_empty(&self, key: &'static str, purpose: &str) {
        let empty = self.value(key).is_some_and(|value| {
            let value = value.get_ref();
            value.as_array().is_some_and(|list| list.is_empty())
                || value.as_table().is_some_and(|table| table.is_empty())
        });
        if empty {
            self.refuse(
                key,
                Code::WrongNumberOfItems,
                format!("{} holds nothing", self.key_name(key)),
                format!("add {purpose}"),
            );
        }
    }

    /// Whether there are more items than are taken; says so.
    pub(super) fn refuse_crowd(&self, key: &'static str, number: usize) -> bool {
        self.refuse_more_than(MOST_ITEMS, key, number)
    }

    /// The same for another number than that of the items of a sort.
    pub(super) fn refuse_more_than(&self, most: usize, key: &'static str, number: usize) -> bool {
        if number > most {
            self.refuse(
                key,
                Code::WrongNumberOfItems,
                format!("too many entries in {}: {number}", self.key_name(key)),
                format!("at most {most} are taken"),
            );
        }
        number > most
    }
}

/// What to call an item of a list: by its name, or by its number when it has none.
fn item_name(sort: &str, index: usize, table: &toml::de::DeTable<'_>) -> String {
    let name = table
        .get("name")
        .and_then(|value| value.get_ref().as_str())
        .unwrap_or_default();
    if name.trim().is_empty() {
        format!("{sort} {}", index + 1)
    } else {
        format!("{sort} {}", super::quoted(name))
    }
}
