//! What can be wrong with a value as written, and how to put it right.

use std::fmt;
use std::ops::Range;

use super::quantity::Quantity;

/// A value that could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnitError {
    /// What is wrong.
    pub kind: UnitErrorKind,
    /// The offending bytes of the text; always on character boundaries.
    pub span: Range<usize>,
    /// The quantity that was expected; [`Quantity::allowed`] lists its units.
    pub expected: Quantity,
}

/// What is wrong with a value. The texts found are as written.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub enum UnitErrorKind {
    /// Nothing but space.
    Empty,
    /// A number was expected here.
    NotANumber {
        /// What stands there.
        found: String,
    },
    /// A comma where a decimal point was probably meant.
    DecimalComma {
        /// The number with its comma.
        found: String,
    },
    /// The text ends after the number.
    MissingUnit {
        /// The number.
        found: String,
    },
    /// No unit of any quantity is spelled so.
    UnknownUnit {
        /// The spelling.
        found: String,
        /// The accepted spelling probably meant.
        suggestion: Option<&'static str>,
    },
    /// A unit of another quantity.
    WrongQuantity {
        /// The spelling.
        found: String,
        /// The quantity it is a unit of.
        found_quantity: Quantity,
        /// The accepted spelling probably meant.
        suggestion: Option<&'static str>,
    },
    /// More or fewer numbers than expected.
    WrongCount {
        /// How many numbers were expected.
        expected: usize,
        /// How many parts between commas there are.
        found: usize,
    },
    /// A unit in front of a further number.
    UnitNotLast {
        /// The unit.
        found: String,
    },
    /// Beyond any build: see [`LARGEST`](super::LARGEST), [`SMALLEST`](super::SMALLEST) and
    /// [`ABSOLUTE_ZERO`](super::ABSOLUTE_ZERO).
    OutOfRange {
        /// The number.
        found: String,
    },
}

/// A text found, in backticks, on one line and of bounded length.
struct Quoted<'a>(&'a str);

impl fmt::Display for Quoted<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use fmt::Write;
        const LONGEST: usize = 40;
        f.write_char('`')?;
        for c in self.0.chars().take(LONGEST) {
            f.write_char(if c.is_control() { ' ' } else { c })?;
        }
        if self.0.chars().nth(LONGEST).is_some() {
            f.write_str("...")?;
        }
        f.write_char('`')
    }
}

impl fmt::Display for UnitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let quantity = self.expected.name();
        match &self.kind {
            UnitErrorKind::Empty => write!(f, "no value where a value of {quantity} is expected"),
            UnitErrorKind::NotANumber { found } if found.is_empty() => {
                write!(f, "a number is missing")
            }
            UnitErrorKind::NotANumber { found } => write!(f, "{} is not a number", Quoted(found)),
            UnitErrorKind::DecimalComma { found } if may_be_thousands(found) => {
                write!(f, "{} has a comma inside the number", Quoted(found))
            }
            UnitErrorKind::DecimalComma { found } => {
                write!(
                    f,
                    "{} has a comma instead of a decimal point",
                    Quoted(found)
                )
            }
            UnitErrorKind::MissingUnit { found } => {
                write!(f, "{} has no unit of {quantity}", Quoted(found))
            }
            UnitErrorKind::UnknownUnit { found, .. } => {
                write!(f, "{} is not a known unit of {quantity}", Quoted(found))
            }
            UnitErrorKind::WrongQuantity {
                found,
                found_quantity,
                ..
            } => {
                let other = found_quantity.name();
                write!(
                    f,
                    "{} is a unit of {other}, not of {quantity}",
                    Quoted(found)
                )
            }
            UnitErrorKind::WrongCount { expected, found } => {
                let plural = if *expected == 1 { "" } else { "s" };
                write!(
                    f,
                    "expected {expected} number{plural} of {quantity}, found {found}"
                )
            }
            UnitErrorKind::UnitNotLast { found } => {
                write!(f, "{} stands in front of a further number", Quoted(found))
            }
            UnitErrorKind::OutOfRange { found } => {
                write!(f, "{} is beyond any {quantity} of a build", Quoted(found))
            }
        }
    }
}

impl std::error::Error for UnitError {}

impl UnitError {
    /// How to put it right, with an example: one line, lower case, no full stop.
    #[must_use]
    pub fn help(&self) -> String {
        let example = self.expected.example();
        let allowed = self.expected.allowed();
        match &self.kind {
            UnitErrorKind::Empty if self.expected.needs_unit() => {
                format!("write a number and a unit, for example `{example}`")
            }
            UnitErrorKind::Empty => format!("write a number, for example `{example}`"),
            UnitErrorKind::NotANumber { .. } => format!(
                "write digits with a point for decimals and nothing between thousands, for example \
                 `{example}`"
            ),
            UnitErrorKind::DecimalComma { found } if may_be_thousands(found) => {
                let decimal = found.replace(',', ".");
                format!(
                    "write {}, or {} if the comma is a decimal point",
                    Quoted(&found.replace(',', "")),
                    Quoted(decimal.trim_end_matches('0').trim_end_matches('.'))
                )
            }
            UnitErrorKind::DecimalComma { found } => format!(
                "use a point for decimals, for example `{}`",
                found.replace(',', ".").replace(char::is_control, " ")
            ),
            UnitErrorKind::MissingUnit { .. } => {
                format!("add one of {allowed}, for example `{example}`")
            }
            UnitErrorKind::UnknownUnit {
                suggestion: Some(meant),
                ..
            }
            | UnitErrorKind::WrongQuantity {
                suggestion: Some(meant),
                ..
            } => {
                format!("did you mean `{meant}`? allowed are {allowed}, for example `{example}`")
            }
            UnitErrorKind::UnknownUnit { .. } | UnitErrorKind::WrongQuantity { .. } => {
                format!("use one of {allowed}, for example `{example}`")
            }
            UnitErrorKind::WrongCount { expected: 1, .. } => {
                format!("write one number, without commas, for example `{example}`")
            }
            UnitErrorKind::WrongCount { expected, .. } => format!(
                "write {expected} numbers with a comma between them, a point for decimals and one \
                 unit at the end, for example `{}`",
                repeated(example, *expected)
            ),
            UnitErrorKind::UnitNotLast { .. } => {
                format!("write one unit, at the end, for example `{example}`")
            }
            UnitErrorKind::OutOfRange { .. } if self.expected == Quantity::Temperature => {
                format!(
                    "a temperature from {} to {:e} in °C is accepted, for example `{example}`",
                    super::ABSOLUTE_ZERO,
                    super::LARGEST
                )
            }
            UnitErrorKind::OutOfRange { .. } => format!(
                "zero, or a size from {:e} to {:e} in {}, is accepted, for example `{example}`",
                super::SMALLEST,
                super::LARGEST,
                self.expected.kept_in()
            ),
        }
    }
}

/// Whether a comma may stand between thousands: up to three digits before it, of which the first
/// is not zero, and exactly three after it. Read as a point it would be a thousand times less.
fn may_be_thousands(found: &str) -> bool {
    found.split_once(',').is_some_and(|(before, after)| {
        let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
        digits(before)
            && digits(after)
            && (1..=3).contains(&before.len())
            && !before.starts_with('0')
            && after.len() == 3
    })
}

/// The example `12 mm` as a vector: `12, 12, 12 mm`.
fn repeated(example: &str, count: usize) -> String {
    let (number, unit) = example.split_once(' ').unwrap_or((example, ""));
    let numbers = vec![number; count].join(", ");
    format!("{numbers} {unit}")
}
