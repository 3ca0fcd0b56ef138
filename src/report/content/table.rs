//! A table as data: columns with unit and digits, rows in groups, one group a load case.
//!
//! Cells hold numbers in SI; a writer turns them into text in the column's
//! unit. So the same table is read by people with the digits that are meant
//! and by programs with all digits.

use crate::study::check::Verdict;
use crate::units::{Digits, Shown};

use super::quantity;

/// A table.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// Short name, unique in the report; the first column of the CSV document.
    pub id: &'static str,
    /// What the table tells, in one sentence.
    pub about: String,
    /// Head of the column with the names of the rows.
    pub item: &'static str,
    /// Columns beside the names.
    pub columns: Vec<Column>,
    /// Rows.
    pub groups: Vec<Group>,
    /// How to read it, below the table.
    pub note: Option<String>,
}

/// A column.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// Name of the quantity in the CSV document; `None` keeps the column for people only.
    pub key: Option<&'static str>,
    /// Head for people, without the unit.
    pub head: &'static str,
    /// Unit of its numbers.
    pub unit: Shown,
    /// Digits, when other than usual for the unit.
    pub digits: Option<Digits>,
    /// On which side its cells stand.
    pub align: Align,
    /// Where people find it.
    pub stands: Stands,
}

/// Where people find a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stands {
    /// Beside the others.
    Beside,
    /// Beside the others where a row has room for sentences, else as a list below the table.
    Below,
    /// Nowhere: other columns say it in fewer words, and it is there for programs.
    Nowhere,
}

/// Side of a column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Align {
    /// Text, to the left.
    Text,
    /// Numbers, decimal points lined up.
    Number,
}

/// Rows that belong together.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// Load case of these rows; `None` when the table has no load cases.
    pub load: Option<String>,
    /// What is said of the group as a whole, such as why it has no rows.
    pub remark: Option<String>,
    /// Its rows.
    pub rows: Vec<Row>,
}

/// A row.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Name of the row.
    pub item: String,
    /// A shorter one for a narrow page, which tells the whole one elsewhere.
    pub brief: Option<&'static str>,
    /// Load case of this row alone, in a table without groups.
    pub load: Option<String>,
    /// One cell a column.
    pub cells: Vec<Cell>,
}

/// A cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// A number in SI, shown in the column's unit; not shown when it is not finite.
    Number(f64),
    /// A number in SI with a unit and digits of its own, in a column that mixes units.
    Quantity(f64, Shown, Digits),
    /// Words.
    Text(String),
    /// A verdict.
    Verdict(Verdict),
    /// Nothing to say.
    Empty,
}

impl Column {
    /// A column of numbers.
    #[must_use]
    pub fn number(key: &'static str, head: &'static str, unit: Shown) -> Self {
        Self {
            key: Some(key),
            head,
            unit,
            digits: None,
            align: Align::Number,
            stands: Stands::Beside,
        }
    }

    /// A column of words.
    #[must_use]
    pub fn text(key: &'static str, head: &'static str) -> Self {
        Self {
            key: Some(key),
            head,
            unit: Shown::Number,
            digits: None,
            align: Align::Text,
            stands: Stands::Beside,
        }
    }

    /// A column of words that only repeats for people what other columns say.
    #[must_use]
    pub fn words(head: &'static str) -> Self {
        Self {
            key: None,
            ..Self::text("", head)
        }
    }

    /// Of sentences too long for a cell of a narrow page.
    #[must_use]
    pub fn below(mut self) -> Self {
        self.stands = Stands::Below;
        self
    }

    /// Not shown to people.
    #[must_use]
    pub fn for_programs(mut self) -> Self {
        self.stands = Stands::Nowhere;
        self
    }

    /// With a number of digits other than usual for the unit.
    #[must_use]
    pub fn digits(mut self, digits: Digits) -> Self {
        self.digits = Some(digits);
        self
    }
}

impl Cell {
    /// A number when there is one.
    #[must_use]
    pub fn maybe(value: Option<f64>) -> Self {
        value.map_or(Self::Empty, Self::Number)
    }

    /// A value and the limit it is held against, each when there is one, with digits that suit both.
    #[must_use]
    pub fn compared(value: Option<f64>, limit: Option<f64>, unit: Shown) -> [Self; 2] {
        let digits = quantity::compared(value.unwrap_or(f64::NAN), limit.unwrap_or(f64::NAN), unit);
        let [of_value, of_limit] = digits;
        [(value, of_value), (limit, of_limit)].map(|(number, digits)| match number {
            Some(number) => Self::Quantity(number, unit, digits),
            None => Self::Empty,
        })
    }

    /// Text for people; a verdict as its plain word.
    #[must_use]
    pub fn shown(&self, column: &Column) -> String {
        match self {
            Self::Number(value) => match column.digits {
                Some(digits) => quantity::number_with(*value, column.unit, digits),
                None => quantity::number(*value, column.unit),
            },
            Self::Quantity(value, unit, digits) => quantity::with_digits(*value, *unit, *digits),
            Self::Text(text) => text.clone(),
            Self::Verdict(verdict) => verdict.word().to_owned(),
            Self::Empty => String::new(),
        }
    }
}

impl Group {
    /// Rows without a load case.
    #[must_use]
    pub fn plain(rows: Vec<Row>) -> Self {
        Self {
            load: None,
            remark: None,
            rows,
        }
    }
}

impl Row {
    /// A row of a group.
    #[must_use]
    pub fn new(item: impl Into<String>, cells: Vec<Cell>) -> Self {
        Self {
            item: item.into(),
            brief: None,
            load: None,
            cells,
        }
    }
}

impl Table {
    /// Whether there is neither a row nor a remark.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.groups
            .iter()
            .all(|group| group.rows.is_empty() && group.remark.is_none())
    }
}
