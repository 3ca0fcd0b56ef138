//! Reads keys of one section of the model file, collects every problem with its place.
//!
//! A getter answers `None` for a key that is absent and for one that is wrong;
//! the wrong one is on the list of problems by then. So reading goes on to the
//! end of the file whatever it meets, and a [`Model`](super::Model) is made only
//! when the list holds no error.

use std::cell::RefCell;
use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::Assumption;
use crate::diagnostic::{Code, Diagnostic, did_you_mean};
use crate::spatial::Vec3;
use crate::units::{self, Quantity, UnitError, UnitErrorKind};

/// Longest name that a report can show.
const LONGEST_NAME: usize = 100;

/// Most items of one sort: far above any build, low enough to keep every answer quick.
const MOST_ITEMS: usize = 500;

/// Where problems and assumptions of one file are collected.
pub(crate) struct Sink<'a> {
    source: &'a str,
    diagnostics: RefCell<Vec<Diagnostic>>,
    assumptions: RefCell<Vec<Assumption>>,
}

impl<'a> Sink<'a> {
    pub(crate) fn new(source: &'a str) -> Self {
        Self {
            source,
            diagnostics: RefCell::default(),
            assumptions: RefCell::default(),
        }
    }

    pub(crate) fn push(&self, diagnostic: Diagnostic) {
        self.diagnostics.borrow_mut().push(diagnostic);
    }

    /// Problems in the order of the file, and assumptions in the order they were made.
    pub(crate) fn into_parts(self) -> (Vec<Diagnostic>, Vec<Assumption>) {
        let mut diagnostics = self.diagnostics.into_inner();
        diagnostics.sort_by_key(|d| d.span.as_ref().map_or(0, |span| span.start));
        (diagnostics, self.assumptions.into_inner())
    }
}

/// Which numbers a key takes.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Bound {
    /// Any finite number.
    Any,
    /// Above zero.
    Positive,
    /// Zero or above.
    NotNegative,
    /// Between two numbers, both included.
    Within(f64, f64),
}

impl Bound {
    fn holds(self, value: f64) -> bool {
        match self {
            Self::Any => value.is_finite(),
            Self::Positive => value > 0.0,
            Self::NotNegative => value >= 0.0,
            Self::Within(low, high) => (low..=high).contains(&value),
        }
    }

    fn words(self) -> String {
        match self {
            Self::Any => "finite".to_owned(),
            Self::Positive => "above zero".to_owned(),
            Self::NotNegative => "zero or above".to_owned(),
            Self::Within(low, high) => format!("between {low} and {high}"),
        }
    }
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
    /// From what reading gave: the outer `None` is an absent section, the inner one a broken one.
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
    path: String,
    span: Range<usize>,
    table: &'a DeTable<'a>,
    asked: RefCell<Vec<&'static str>>,
    sink: &'a Sink<'a>,
}

impl<'a> Section<'a> {
    /// The whole file as a section without a path.
    pub(crate) fn root(table: &'a DeTable<'a>, sink: &'a Sink<'a>) -> Self {
        Self {
            path: String::new(),
            span: 0..0,
            table,
            asked: RefCell::default(),
            sink,
        }
    }

    fn child(&self, path: String, span: Range<usize>, table: &'a DeTable<'a>) -> Self {
        Self {
            path,
            span,
            table,
            asked: RefCell::default(),
            sink: self.sink,
        }
    }

    /// Full name of a key, such as `mount[2].w`.
    pub(crate) fn key_path(&self, key: &str) -> String {
        if self.path.is_empty() {
            key.to_owned()
        } else {
            format!("{}.{key}", self.path)
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

    /// Notes an error at the value of a key.
    pub(crate) fn error(&self, key: &'static str, code: Code, message: impl Into<String>) {
        self.note(Diagnostic::error(code, message, Some(self.place(key))));
    }

    /// Notes a problem that was made with a place of its own.
    pub(crate) fn note(&self, diagnostic: Diagnostic) {
        self.sink.push(diagnostic);
    }

    /// Place of a key's value, for a problem of its own making.
    pub(crate) fn span_of(&self, key: &'static str) -> Option<Range<usize>> {
        Some(self.place(key))
    }

    /// Place of the section itself.
    pub(crate) fn place_of_section(&self) -> Range<usize> {
        self.span.clone()
    }

    /// Notes what was taken for granted in place of a key.
    pub(crate) fn assume(&self, key: &str, text: impl Into<String>) {
        self.sink.assumptions.borrow_mut().push(Assumption {
            key: self.key_path(key),
            text: text.into(),
        });
    }

    /// Notes every key of the list that is absent, with what it is for.
    pub(crate) fn must_have(&self, keys: &[(&'static str, &str)]) {
        for &(key, purpose) in keys {
            if !self.has(key) {
                self.note(
                    Diagnostic::error(
                        Code::MissingKey,
                        format!("`{}` is missing", self.key_path(key)),
                        Some(self.span.clone()),
                    )
                    .help(format!("add `{key}`: {purpose}")),
                );
            }
        }
    }

    /// Notes every key that was never asked for. The last word on a section.
    pub(crate) fn finish(self) {
        let asked = self.asked.borrow();
        for (key, _) in self.table.iter() {
            let written = key.get_ref().as_ref();
            if asked.contains(&written) {
                continue;
            }
            let section = if self.path.is_empty() {
                "the file".to_owned()
            } else {
                format!("`{}`", self.path)
            };
            let mut diagnostic = Diagnostic::error(
                Code::UnknownKey,
                format!("unknown key `{written}` in {section}"),
                Some(key.span()),
            )
            .label("not a key here");
            diagnostic = match did_you_mean(written, asked.iter().copied()) {
                Some(near) => diagnostic.help(format!("did you mean `{near}`?")),
                None => diagnostic.help(format!("known keys here: {}", asked.join(", "))),
            };
            self.sink.push(diagnostic);
        }
    }

    fn wrong_kind(&self, place: Range<usize>, key: &str, wanted: &str, found: &DeValue<'_>) {
        self.sink.push(
            Diagnostic::error(
                Code::WrongKind,
                format!(
                    "`{}` needs {wanted}, found {}",
                    self.key_path(key),
                    kind_in_words(found)
                ),
                Some(place),
            )
            .label(format!("not {wanted}")),
        );
    }

    /// Text of a key.
    pub(crate) fn text(&self, key: &'static str) -> Option<&'a str> {
        let value = self.value(key)?;
        let text = value.get_ref().as_str();
        if text.is_none() {
            self.wrong_kind(value.span(), key, "text in quotes", value.get_ref());
        }
        text
    }

    /// Text of a key that is a name: not empty, not too long, no control characters.
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

    fn usable_name(&self, name: &str, place: Range<usize>) -> bool {
        let complaint = if name.trim().is_empty() {
            "the name is empty".to_owned()
        } else if name.chars().count() > LONGEST_NAME {
            format!("the name is longer than {LONGEST_NAME} characters")
        } else if name.chars().any(char::is_control) {
            "the name holds a control character".to_owned()
        } else {
            return true;
        };
        self.note(Diagnostic::error(Code::BadName, complaint, Some(place)));
        false
    }

    /// One of several words.
    pub(crate) fn choice<T: Copy>(&self, key: &'static str, words: &[(&str, T)]) -> Option<T> {
        let written = self.text(key)?;
        if let Some((_, meaning)) = words.iter().find(|(word, _)| *word == written) {
            return Some(*meaning);
        }
        let allowed: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        self.note(unknown_name(
            Code::UnknownWord,
            format!("unknown word `{written}` for `{}`", self.key_path(key)),
            Some(self.place(key)),
            written,
            &allowed,
        ));
        None
    }

    /// `true` or `false`.
    pub(crate) fn flag(&self, key: &'static str) -> Option<bool> {
        let value = self.value(key)?;
        let flag = value.get_ref().as_bool();
        if flag.is_none() {
            self.wrong_kind(value.span(), key, "`true` or `false`", value.get_ref());
        }
        flag
    }

    /// Whole number between two others.
    pub(crate) fn count(&self, key: &'static str, from: u32, to: u32) -> Option<u32> {
        let value = self.value(key)?;
        let Some(integer) = value.get_ref().as_integer() else {
            self.wrong_kind(value.span(), key, "a whole number", value.get_ref());
            return None;
        };
        let count = u32::from_str_radix(integer.as_str(), integer.radix())
            .ok()
            .filter(|count| (from..=to).contains(count));
        if count.is_none() {
            self.error(
                key,
                Code::OutOfRange,
                format!(
                    "`{}` must be a whole number from {from} to {to}, found {}",
                    self.key_path(key),
                    integer.as_str()
                ),
            );
        }
        count
    }

    /// Number without a unit, or text such as "15 %".
    pub(crate) fn ratio(&self, key: &'static str, bound: Bound) -> Option<f64> {
        let value = self.value(key)?;
        let number = match value.get_ref() {
            DeValue::Integer(integer) => integer.as_str().parse().ok(),
            DeValue::Float(float) => float.as_str().parse().ok(),
            _ => return self.quantity(key, Quantity::Ratio, bound),
        };
        self.bounded(key, value.span(), number.unwrap_or(f64::NAN), bound)
    }

    /// One number with its unit, in SI.
    pub(crate) fn quantity(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<f64> {
        let [number] = self.quantity_texts::<1>(key, self.value(key)?, quantity)?;
        self.bounded(key, self.place(key), number, bound)
    }

    /// Three numbers with one unit, in SI.
    pub(crate) fn vector(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<Vec3> {
        let numbers = self.quantity_texts::<3>(key, self.value(key)?, quantity)?;
        for number in numbers {
            self.bounded(key, self.place(key), number, bound)?;
        }
        Some(Vec3::from(numbers))
    }

    /// One number for all three axes, or three numbers, with one unit, in SI.
    pub(crate) fn per_axis(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<Vec3> {
        if self
            .value(key)?
            .get_ref()
            .as_str()
            .is_some_and(|text| !text.contains(','))
        {
            let all = self.quantity(key, quantity, bound)?;
            return Some(Vec3::repeat(all));
        }
        self.vector(key, quantity, bound)
    }

    /// Direction as three numbers, made a unit vector.
    pub(crate) fn direction(&self, key: &'static str) -> Option<Vec3> {
        let vector = self.vector(key, Quantity::Ratio, Bound::Any)?;
        let unit = vector.try_normalize(1e-12);
        if unit.is_none() {
            self.error(
                key,
                Code::NoDirection,
                format!("`{}` has no length", self.key_path(key)),
            );
        }
        unit
    }

    /// List of two numbers with units, the first below the second, in SI.
    pub(crate) fn span(
        &self,
        key: &'static str,
        quantity: Quantity,
        bound: Bound,
    ) -> Option<[f64; 2]> {
        let value = self.value(key)?;
        let items = value.get_ref().as_array().filter(|list| list.len() == 2);
        let Some(items) = items else {
            self.wrong_kind(value.span(), key, "a list of two texts", value.get_ref());
            return None;
        };
        let mut ends = [0.0; 2];
        for (end, item) in ends.iter_mut().zip(items.iter()) {
            let [number] = self.quantity_texts::<1>(key, item, quantity)?;
            *end = self.bounded(key, item.span(), number, bound)?;
        }
        if ends[0] > ends[1] {
            self.error(
                key,
                Code::InsideOut,
                format!(
                    "the first end of `{}` is above the second",
                    self.key_path(key)
                ),
            );
            return None;
        }
        Some(ends)
    }

    fn bounded(&self, key: &str, place: Range<usize>, number: f64, bound: Bound) -> Option<f64> {
        if number.is_finite() && bound.holds(number) {
            return Some(number);
        }
        let written = self.sink.source.get(place.clone()).unwrap_or_default();
        self.note(Diagnostic::error(
            Code::OutOfRange,
            format!(
                "`{}` must be {}, found {written}",
                self.key_path(key),
                bound.words()
            ),
            Some(place),
        ));
        None
    }

    fn quantity_texts<const N: usize>(
        &self,
        key: &str,
        value: &Spanned<DeValue<'a>>,
        quantity: Quantity,
    ) -> Option<[f64; N]> {
        let text = match value.get_ref() {
            DeValue::String(text) => text,
            DeValue::Integer(_) | DeValue::Float(_) => {
                let written = self.sink.source.get(value.span()).unwrap_or_default();
                let unit = quantity
                    .example()
                    .split_once(' ')
                    .map_or("", |(_, unit)| unit);
                let cure = if N == 1 {
                    format!(
                        "write `\"{written} {unit}\"`, or another unit of {}",
                        quantity.name()
                    )
                } else {
                    format!("write text such as {}", example(quantity, N))
                };
                self.note(
                    Diagnostic::error(
                        Code::BareNumber,
                        format!("`{}` is a number without a unit", self.key_path(key)),
                        Some(value.span()),
                    )
                    .label("no unit")
                    .help(cure),
                );
                return None;
            }
            other => {
                let wanted = format!("text such as {}", example(quantity, N));
                self.wrong_kind(value.span(), key, &wanted, other);
                return None;
            }
        };
        let read = if N == 1 {
            units::parse(text, quantity).map(|one| [one; N])
        } else {
            units::parse_vector::<N>(text, quantity)
        };
        read.map_err(|error| self.note(self.unit_problem(key, value.span(), &error)))
            .ok()
    }

    fn unit_problem(&self, key: &str, text_span: Range<usize>, error: &UnitError) -> Diagnostic {
        let code = match &error.kind {
            UnitErrorKind::MissingUnit { .. } => Code::BareNumber,
            UnitErrorKind::UnknownUnit { .. } => Code::UnknownUnit,
            UnitErrorKind::WrongQuantity { .. } => Code::WrongUnit,
            UnitErrorKind::OutOfRange { .. } => Code::OutOfRange,
            _ => Code::NotAQuantity,
        };
        Diagnostic::error(
            code,
            format!("`{}`: {error}", self.key_path(key)),
            Some(self.inside(text_span, &error.span)),
        )
        .help(error.help())
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

    /// A table inside this one.
    pub(crate) fn section(&self, key: &'static str) -> Option<Section<'a>> {
        let value = self.value(key)?;
        let Some(table) = value.get_ref().as_table() else {
            self.wrong_kind(value.span(), key, "a table", value.get_ref());
            return None;
        };
        Some(self.child(self.key_path(key), value.span(), table))
    }

    /// A list of tables, written `[[key]]` or as a list of `{ … }`.
    pub(crate) fn sections(&self, key: &'static str) -> Vec<Section<'a>> {
        let Some(value) = self.value(key) else {
            return Vec::new();
        };
        let Some(items) = value.get_ref().as_array() else {
            let wanted = format!("a list of tables, each headed `[[{key}]]`");
            self.wrong_kind(value.span(), key, &wanted, value.get_ref());
            return Vec::new();
        };
        self.refuse_crowd(key, items.len());
        let mut found = Vec::new();
        for (index, item) in items.iter().take(MOST_ITEMS).enumerate() {
            let path = format!("{}[{index}]", self.key_path(key));
            match item.get_ref().as_table() {
                Some(table) => found.push(self.child(path, item.span(), table)),
                None => self.wrong_kind(item.span(), key, "a table", item.get_ref()),
            }
        }
        found
    }

    /// Tables with names of the user's, written `[key.NAME]`.
    pub(crate) fn named_sections(&self, key: &'static str) -> Vec<(String, Section<'a>)> {
        let Some(group) = self.section(key) else {
            return Vec::new();
        };
        self.refuse_crowd(key, group.table.len());
        let mut found = Vec::new();
        for (name, value) in group.table.iter().take(MOST_ITEMS) {
            let written = name.get_ref().as_ref();
            if !self.usable_name(written, name.span()) {
                continue;
            }
            match value.get_ref().as_table() {
                Some(table) => {
                    let path = format!("{key}.{written}");
                    found.push((written.to_owned(), self.child(path, value.span(), table)));
                }
                None => self.wrong_kind(value.span(), written, "a table", value.get_ref()),
            }
        }
        found
    }

    /// Names and numbers of a table such as `gears = { "1" = 4.12 }`, all above zero.
    pub(crate) fn named_ratios(&self, key: &'static str) -> Option<Vec<(String, f64)>> {
        let group = self.section(key)?;
        self.refuse_crowd(key, group.table.len());
        let mut found = Vec::new();
        for (name, value) in group.table.iter().take(MOST_ITEMS) {
            let written = name.get_ref().as_ref();
            let number = match value.get_ref() {
                DeValue::Integer(integer) => integer.as_str().parse().ok(),
                DeValue::Float(float) => float.as_str().parse().ok(),
                other => {
                    group.wrong_kind(value.span(), written, "a number", other);
                    continue;
                }
            };
            let ratio = group.bounded(
                written,
                value.span(),
                number.unwrap_or(f64::NAN),
                Bound::Within(0.01, 1000.0),
            );
            if self.usable_name(written, name.span())
                && let Some(ratio) = ratio
            {
                found.push((written.to_owned(), ratio));
            }
        }
        Some(found)
    }

    /// Names of a list, each looked up among known ones.
    pub(crate) fn references(
        &self,
        key: &'static str,
        sort: &str,
        known: &[&str],
    ) -> Option<Vec<usize>> {
        let value = self.value(key)?;
        let Some(items) = value.get_ref().as_array() else {
            self.wrong_kind(value.span(), key, "a list of names", value.get_ref());
            return None;
        };
        let mut found = Vec::new();
        for item in items.iter() {
            match item.get_ref().as_str() {
                Some(name) => found.extend(self.look_up(sort, name, item.span(), known)),
                None => self.wrong_kind(item.span(), key, "a name in quotes", item.get_ref()),
            }
        }
        found.sort_unstable();
        found.dedup();
        Some(found)
    }

    /// A name, looked up among known ones.
    pub(crate) fn reference(&self, key: &'static str, sort: &str, known: &[&str]) -> Option<usize> {
        let name = self.text(key)?;
        self.look_up(sort, name, self.place(key), known)
    }

    fn look_up(
        &self,
        sort: &str,
        name: &str,
        place: Range<usize>,
        known: &[&str],
    ) -> Option<usize> {
        let found = known.iter().position(|known| *known == name);
        if found.is_none() {
            self.note(unknown_name(
                Code::UnknownName,
                format!("there is no {sort} named `{name}`"),
                Some(place),
                name,
                known,
            ));
        }
        found
    }

    /// Notes every section of a list whose name stands there already.
    pub(crate) fn refuse_duplicates(sort: &str, sections: &[Self]) {
        for (index, section) in sections.iter().enumerate() {
            let name = section.written_name();
            if !name.is_empty()
                && sections[..index]
                    .iter()
                    .any(|earlier| earlier.written_name() == name)
            {
                section.note(
                    Diagnostic::error(
                        Code::DuplicateName,
                        format!("there are two {sort}s named `{name}`"),
                        section.span_of("name"),
                    )
                    .label("second one")
                    .help("give one of them another name"),
                );
            }
        }
    }

    fn refuse_crowd(&self, key: &'static str, number: usize) {
        if number > MOST_ITEMS {
            self.error(
                key,
                Code::WrongNumberOfItems,
                format!("{number} entries in `{key}`; at most {MOST_ITEMS} are taken"),
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
    if let Some(near) = did_you_mean(written, known.iter().copied()) {
        return diagnostic.help(format!("did you mean `{near}`?"));
    }
    if known.is_empty() {
        return diagnostic.help("the file defines none");
    }
    let shown: Vec<String> = known
        .iter()
        .take(12)
        .map(|name| format!("`{name}`"))
        .collect();
    let more = if known.len() > shown.len() {
        ", …"
    } else {
        ""
    };
    diagnostic.help(format!("known: {}{more}", shown.join(", ")))
}

fn example(quantity: Quantity, count: usize) -> String {
    let one = quantity.example();
    match one.split_once(' ') {
        Some((number, unit)) if count > 1 => {
            format!("\"{} {unit}\"", vec![number; count].join(", "))
        }
        _ => format!("\"{one}\""),
    }
}

fn kind_in_words(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) | DeValue::Float(_) => "a number",
        DeValue::Boolean(_) => "`true` or `false`",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}
