//! Names that a file gives, and keys that refer to them.

use std::collections::HashMap;
use std::ops::Range;

use super::{MOST_ITEMS, Section, quoted};
use crate::diagnostic::{Code, Diagnostic, did_you_mean};

/// Longest name that a report can show.
const LONGEST_NAME: usize = 100;

/// The names of all things of one sort in the file.
pub(crate) struct Names<'a> {
    sort: &'static str,
    list: Vec<&'a str>,
    places: HashMap<&'a str, usize>,
    complete: bool,
}

impl<'a> Names<'a> {
    /// Names in the order of the file.
    ///
    /// Not `complete` when something of the sort could not be read at all: a
    /// reference that finds nothing is then no fault of its own.
    pub(crate) fn new(sort: &'static str, list: Vec<&'a str>, complete: bool) -> Self {
        let mut places = HashMap::with_capacity(list.len());
        for (place, name) in list.iter().enumerate() {
            places.entry(*name).or_insert(place);
        }
        Self {
            sort,
            list,
            places,
            complete,
        }
    }

    /// The same with names that need not be in the file; where a name stands twice, the first counts.
    pub(crate) fn followed_by(self, more: impl Iterator<Item = &'a str>) -> Self {
        let list = self.list.into_iter().chain(more).collect();
        Self::new(self.sort, list, self.complete)
    }

    /// How many there are.
    pub(crate) fn len(&self) -> usize {
        self.list.len()
    }

    /// What the things are called.
    pub(crate) fn sort(&self) -> &'static str {
        self.sort
    }
}

impl<'a> Section<'a> {
    /// Text of a key that is a name: not empty, not too long, nothing that cannot be seen.
    pub(crate) fn name(&self, key: &'static str) -> Option<String> {
        let name = self.text(key)?;
        self.usable_name(name, self.place(key))
            .then(|| name.to_owned())
    }

    /// Name as written, whatever it is, without a word about it; empty when there is none.
    pub(crate) fn written_name(&self) -> &'a str {
        self.table
            .get("name")
            .and_then(|value| value.get_ref().as_str())
            .unwrap_or_default()
    }

    pub(super) fn usable_name(&self, name: &str, place: Range<usize>) -> bool {
        let complaint = if name.trim().is_empty() {
            "the name is empty".to_owned()
        } else if name.chars().nth(LONGEST_NAME).is_some() {
            format!("the name is longer than {LONGEST_NAME} characters")
        } else if name.chars().any(char::is_control) {
            "the name holds a line end or a control character".to_owned()
        } else if name.trim() != name {
            "the name starts or ends with a space".to_owned()
        } else {
            return true;
        };
        self.note(
            Diagnostic::error(Code::BadName, complaint, Some(place))
                .help("a name is a few words on one line, such as \"front left\""),
        );
        false
    }

    /// Names of a list, each looked up among known ones.
    pub(crate) fn references(&self, key: &'static str, known: &Names<'_>) -> Option<Vec<usize>> {
        let value = self.value(key)?;
        let Some(items) = value.get_ref().as_array() else {
            self.wrong_kind(value.span(), key, "a list of names", value.get_ref());
            return None;
        };
        self.refuse_crowd(key, items.len());
        let mut found = Vec::new();
        for item in items.iter().take(MOST_ITEMS) {
            match item.get_ref().as_str() {
                Some(name) => found.extend(self.look_up(name, item.span(), known)),
                None => self.wrong_kind(item.span(), key, "a name in quotes", item.get_ref()),
            }
        }
        found.sort_unstable();
        found.dedup();
        Some(found)
    }

    /// A name, looked up among known ones.
    pub(crate) fn reference(&self, key: &'static str, known: &Names<'_>) -> Option<usize> {
        let name = self.text(key)?;
        self.look_up(name, self.place(key), known)
    }

    fn look_up(&self, name: &str, place: Range<usize>, known: &Names<'_>) -> Option<usize> {
        let found = known.places.get(name).copied();
        if found.is_some() {
            return found;
        }
        if !known.complete || self.sink.is_full() {
            self.sink.count_error();
            return None;
        }
        self.note(unknown_name(
            Code::UnknownName,
            format!("there is no {} named {}", known.sort, quoted(name)),
            Some(place),
            name,
            &known.list,
        ));
        None
    }

    /// Notes every section of a list whose name stands there already.
    pub(super) fn refuse_duplicates(sort: &str, sections: &[Self]) {
        let mut seen = HashMap::new();
        for section in sections {
            let name = section.written_name();
            if name.is_empty() || seen.insert(name, ()).is_none() {
                continue;
            }
            section.note(
                Diagnostic::error(
                    Code::DuplicateName,
                    format!("there are two {sort}s named {}", quoted(name)),
                    section.span_of("name"),
                )
                .label("second one")
                .help("give one of them another name"),
            );
        }
    }
}

/// A problem with a name that is not known, with the nearest known one or all of them.
pub(crate) fn unknown_name(
    code: Code,
    message: String,
    place: Option<Range<usize>>,
    written: &str,
    known: &[&str],
) -> Diagnostic {
    let diagnostic = Diagnostic::error(code, message, place);
    let known: Vec<&str> = known
        .iter()
        .copied()
        .filter(|name| !name.is_empty())
        .collect();
    if let Some(near) = did_you_mean(written, known.iter().copied()) {
        return diagnostic.help(format!("did you mean {}?", quoted(near)));
    }
    if known.is_empty() {
        return diagnostic.help("the file defines none");
    }
    let shown: Vec<String> = known.iter().take(12).map(|name| quoted(name)).collect();
    let more = if known.len() > shown.len() {
        ", …"
    } else {
        ""
    };
    diagnostic.help(format!("known: {}{more}", shown.join(", ")))
}
