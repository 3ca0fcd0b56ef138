//! Reads keys of one section of the model file, collects every problem with its place.
//!
//! A getter answers `None` for a key that is absent and for one that is wrong;
//! the wrong one is on the list of problems by then. So reading goes on to the
//! end of the file whatever it meets, and a [`Model`](super::Model) is made only
//! when the list holds no error.
//!
//! One cause gives one message: what leans on something broken is not blamed
//! for it ([`Section::judged`], [`Names`]), a misspelt key is not missing as
//! well, and what many items lack is said once ([`Section::refuse_once`]).

mod bound;
mod group;
mod list;
mod names;
mod quantity;
mod sink;
mod span;
mod value;

use std::cell::RefCell;
use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

pub(crate) use bound::Bound;
pub(crate) use group::{Items, NamedItems};
pub(crate) use names::{Names, unknown_name};
pub(crate) use sink::{MOST_PROBLEMS, Sink};
pub(crate) use span::{Column, Ends, Pair};
use value::{kind_in_words, number_of};

use crate::diagnostic::{Code, Diagnostic, did_you_mean};

/// Most items of one sort: far above any build, low enough to keep every answer quick.
const MOST_ITEMS: usize = 500;

/// Words that are written for a key, and the key.
const OTHER_WORDS: [(&str, &str); 21] = [
    ("weight", "mass"),
    ("position", "at"),
    ("pos", "at"),
    ("location", "at"),
    ("cg", "at"),
    ("cog", "at"),
    ("cg", "centre_of_gravity"),
    ("cog", "centre_of_gravity"),
    ("center_of_gravity", "centre_of_gravity"),
    ("stiffness", "rates"),
    ("rate", "rates"),
    ("ratio", "gears"),
    ("ratios", "gears"),
    ("id", "inner"),
    ("od", "outer"),
    ("inner_diameter", "inner"),
    ("outer_diameter", "outer"),
    ("radius", "diameter"),
    ("dia", "diameter"),
    ("thickness", "height"),
    ("shore", "hardness"),
];

/// The key, absent from its section, for which a word is written.
fn meant_by<'k>(written: &str, absent: &[&'k str]) -> Option<&'k str> {
    let lower = written.to_lowercase();
    let mut keys = OTHER_WORDS.iter().filter(|(word, _)| *word == lower);
    keys.find_map(|(_, key)| absent.iter().copied().find(|known| known == key))
}

/// Another section that a key leans on.
///
/// A broken section has its own problems on the list; what leans on it is not blamed again.
#[derive(Debug)]
pub(crate) enum Other<'a, T> {
    /// Not in the file.
    Absent,
    /// In the file, with problems.
    Broken,
    /// In the file, in order.
    Read(&'a T),
}

impl<T> Clone for Other<'_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Other<'_, T> {}

impl<'a, T> Other<'a, T> {
    /// From what [`Section::judged`] gave: the outer `None` is an absent section, the inner one a broken one.
    pub(crate) fn from_read(read: &'a Option<Option<T>>) -> Self {
        match read {
            None => Self::Absent,
            Some(None) => Self::Broken,
            Some(Some(value)) => Self::Read(value),
        }
    }
}

/// One table of the file while it is read.
pub(crate) struct Section<'a> {
    /// Where it stands in the file, such as `mount[2]`; empty for the file itself.
    path: String,
    /// What the user calls the thing it belongs to, such as "mount `rear`"; empty when it has no name.
    owner: String,
    /// What goes before a key for the rest of the way from the owner, such as `stops.`.
    within: String,
    span: Range<usize>,
    table: &'a DeTable<'a>,
    asked: RefCell<Vec<&'static str>>,
    /// Keys that were refused for a reason of their own: known, but not among those to write here.
    foreign: RefCell<Vec<&'static str>>,
    sink: &'a Sink<'a>,
}

impl<'a> Section<'a> {
    /// The whole file as a section without a path.
    pub(crate) fn root(table: &'a DeTable<'a>, sink: &'a Sink<'a>) -> Self {
        Self {
            path: String::new(),
            owner: String::new(),
            within: String::new(),
            span: 0..0,
            table,
            asked: RefCell::default(),
            foreign: RefCell::default(),
            sink,
        }
    }

    fn child(
        &self,
        path: String,
        owner: String,
        within: String,
        span: Range<usize>,
        table: &'a DeTable<'a>,
    ) -> Self {
        Self {
            path,
            owner,
            within,
            span,
            table,
            asked: RefCell::default(),
            foreign: RefCell::default(),
            sink: self.sink,
        }
    }

    /// Place of a key in the file, such as `mount[2].w`.
    fn key_path(&self, key: &str) -> String {
        if self.path.is_empty() {
            key.to_owned()
        } else {
            format!("{}.{key}", self.path)
        }
    }

    /// A key by the user's own names, such as "`w` of mount `rear`".
    pub(crate) fn key_name(&self, key: &str) -> String {
        let key = shortened(key);
        if self.owner.is_empty() {
            format!("`{}{key}`", self.within)
        } else {
            format!("`{}{key}` of {}", self.within, self.owner)
        }
    }

    /// Whether the key is in the file, right or wrong.
    pub(crate) fn has(&self, key: &'static str) -> bool {
        self.value(key).is_some()
    }

    fn value(&self, key: &'static str) -> Option<&'a Spanned<DeValue<'a>>> {
        let mut asked = self.asked.borrow_mut();
        if !asked.contains(&key) {
            asked.push(key);
        }
        self.table.get(key)
    }

    /// Place of a key's value, or of the section when the key is absent.
    fn place(&self, key: &'static str) -> Range<usize> {
        self.value(key).map_or(self.span.clone(), Spanned::span)
    }

    /// Notes an error at the value of a key, with what to write instead.
    pub(crate) fn refuse(
        &self,
        key: &'static str,
        code: Code,
        message: impl Into<String>,
        help: impl Into<String>,
    ) {
        self.note(Diagnostic::error(code, message, Some(self.place(key))).help(help));
    }

    /// Refuses a key that others of its sort take and this one does not, with the reason that completes
    /// its name; it is not listed among the known keys. Whether it was there.
    pub(crate) fn refuse_foreign(
        &self,
        key: &'static str,
        reason: &str,
        help: impl Into<String>,
    ) -> bool {
        self.foreign.borrow_mut().push(key);
        let Some((_, value)) = self.table.get_key_value(key) else {
            return false;
        };
        let message = format!("{} {reason}", self.key_name(key));
        self.note(Diagnostic::error(Code::Conflict, message, Some(value.span())).help(help));
        true
    }

    /// The same for a cause that lies elsewhere and may be met at many keys: only the first is told.
    pub(crate) fn refuse_once(
        &self,
        cause: &'static str,
        key: &'static str,
        code: Code,
        message: impl Into<String>,
        help: impl Into<String>,
    ) {
        if self.sink.first_time(cause) {
            self.refuse(key, code, message, help);
        }
    }

    /// Notes a problem that was made with a place of its own.
    pub(crate) fn note(&self, diagnostic: Diagnostic) {
        self.sink.push(diagnostic);
    }

    /// Place of a key's value, for a problem of its own making.
    pub(crate) fn span_of(&self, key: &'static str) -> Option<Range<usize>> {
        Some(self.place(key))
    }

    /// Notes what was taken for granted in place of a key.
    pub(crate) fn assume(&self, key: &str, text: impl Into<String>) {
        self.sink.assume(self.key_path(key), text.into());
    }

    /// Notes every key of the list that is absent, with what it is for.
    pub(crate) fn must_have(&self, keys: &[(&'static str, &str)]) {
        for &(key, purpose) in keys {
            self.must_have_one_of(&[key], purpose);
        }
    }

    /// Notes that a key is absent, and all those that could stand in its place, with what it is for.
    pub(crate) fn must_have_one_of(&self, keys: &[&'static str], purpose: &str) {
        let Some(first) = keys.first() else {
            return;
        };
        if keys.iter().any(|key| self.has(key)) {
            return;
        }
        let others = if keys.len() > 1 {
            " (or what stands for it)"
        } else {
            ""
        };
        let diagnostic = Diagnostic::error(
            Code::MissingKey,
            format!("{} is missing{others}", self.key_name(first)),
            Some(self.span.clone()),
        );
        self.sink.push_missing(
            keys.iter().map(|key| self.key_path(key)).collect(),
            diagnostic.help(format!("add `{first}`: {purpose}")),
        );
    }

    /// Notes every key that was never asked for. The last word on a section.
    pub(crate) fn finish(self) {
        let foreign = self.foreign.borrow();
        let mut asked = self.asked.borrow().clone();
        asked.retain(|key| !foreign.contains(key));
        let section = match (self.within.trim_end_matches('.'), self.owner.as_str()) {
            ("", "") => "the file".to_owned(),
            ("", owner) => owner.to_owned(),
            (within, "") => format!("`{within}`"),
            (within, owner) => format!("`{within}` of {owner}"),
        };
        for (key, _) in self.table.iter() {
            let written = key.get_ref().as_ref();
            if asked.contains(&written) || foreign.contains(&written) {
                continue;
            }
            if self.sink.is_full() {
                self.sink.count_error();
                continue;
            }
            let absent = asked
                .iter()
                .copied()
                .filter(|known| !self.table.contains_key(*known));
            let absent: Vec<&str> = absent.collect();
            let near = meant_by(written, &absent)
                .or_else(|| did_you_mean(written, absent.iter().copied()));
            let help = match near {
                Some(near) => {
                    self.sink.misspelt(self.key_path(near));
                    let doubled = written.eq_ignore_ascii_case("radius");
                    let twice = if doubled { ", twice the radius" } else { "" };
                    format!("did you mean `{near}`{twice}?")
                }
                None => format!("known keys here: {}", asked.join(", ")),
            };
            self.sink.push(
                Diagnostic::error(
                    Code::UnknownKey,
                    format!("unknown key in {section}: {}", quoted(written)),
                    Some(key.span()),
                )
                .label("not a key here")
                .help(help),
            );
        }
    }

    /// That something else stands there than is wanted; the help is left to the caller.
    fn of_wrong_kind(
        &self,
        place: Range<usize>,
        key: &str,
        wanted: &str,
        found: &DeValue<'_>,
    ) -> Diagnostic {
        let message = format!(
            "{} needs {wanted}, found {}",
            self.key_name(key),
            kind_in_words(found)
        );
        Diagnostic::error(Code::WrongKind, message, Some(place)).label(format!("not {wanted}"))
    }

    fn wrong_kind(&self, place: Range<usize>, key: &str, wanted: &str, found: &DeValue<'_>) {
        let diagnostic = self.of_wrong_kind(place.clone(), key, wanted, found);
        let help = match found {
            DeValue::Array(_) | DeValue::Table(_) if wanted.ends_with("in quotes") => {
                format!("write {wanted}")
            }
            _ if wanted.ends_with("in quotes") => {
                format!("put it in quotes: `\"{}\"`", self.written(place))
            }
            DeValue::String(text) if wanted.ends_with("number") => {
                format!("write the number without quotes: `{}`", text.trim())
            }
            DeValue::Array(_) if wanted == "a table" && self.is_list_header(&place) => {
                let header = self.written(place);
                let name = header.trim_matches(['[', ']', ' ']);
                format!("single brackets: `[{name}]`")
            }
            _ if wanted == "a table" => {
                "write names and values in braces, such as `{ name = value }`".to_owned()
            }
            _ => format!("write {wanted}"),
        };
        self.note(diagnostic.help(help));
    }

    /// Whether a place of the file is a line `[[name]]`, not a value such as `[[1, 2]]`.
    fn is_list_header(&self, place: &Range<usize>) -> bool {
        let before = self.sink.source.get(..place.start).unwrap_or_default();
        let line = before.trim_end_matches([' ', '\t']);
        let starts_line = line.is_empty() || line.ends_with('\n');
        starts_line && self.written(place.clone()).starts_with("[[")
    }

    /// What stands at a place of the file, on one line and of bounded length.
    fn written(&self, place: Range<usize>) -> String {
        shortened(self.sink.source.get(place).unwrap_or_default())
    }
}

/// A text of the file in backticks, on one line and of bounded length.
pub(crate) fn quoted(text: &str) -> String {
    format!("`{}`", shortened(text))
}

fn shortened(text: &str) -> String {
    const LONGEST: usize = 60;
    let mut short: String = text
        .chars()
        .take(LONGEST)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if text.chars().nth(LONGEST).is_some() {
        short.push('…');
    }
    short
}
