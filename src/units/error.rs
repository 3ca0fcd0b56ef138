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
        /// The value probably meant, with the number as written.
        suggestion: Option<String>,
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
        /// The same numbers with the unit once, when it is the same after each.
        rewritten: Option<String>,
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
            UnitErrorKind::Empty => {
                write!(f, "no value where {} is expected", wanted(self.expected))
            }
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
            UnitErrorKind::UnknownUnit { found, .. } if self.expected == Quantity::Ratio => {
                write!(f, "{} is not a known unit of a share", Quoted(found))
            }
            UnitErrorKind::UnknownUnit { found, .. } => {
                write!(f, "{} is not a known unit of {quantity}", Quoted(found))
            }
            UnitErrorKind::WrongQuantity {
                found,
                found_quantity,
                ..
            } if self.expected == Quantity::Ratio => write!(
                f,
                "{} is a unit of {} where {} is expected",
                Quoted(found),
                found_quantity.name(),
                wanted(self.expected)
            ),
            UnitErrorKind::WrongQuantity {
                found,
                found_quantity,
                ..
            } => {
                let other = match found_quantity {
                    Quantity::Ratio => "shares",
                    other => other.name(),
                };
                write!(
                    f,
                    "{} is a unit of {other}, not of {quantity}",
                    Quoted(found)
                )
            }
            UnitErrorKind::WrongCount { expected, found } => {
                let plural = if *expected == 1 { "" } else { "s" };
                if self.expected == Quantity::Ratio {
                    return write!(f, "expected {expected} plain number{plural}, found {found}");
                }
                write!(
                    f,
                    "expected {expected} number{plural} of {quantity}, found {found}"
                )
            }
            UnitErrorKind::UnitNotLast { found, .. } => {
                write!(f, "{} stands in front of a further number", Quoted(found))
            }
            UnitErrorKind::OutOfRange { found } => {
                write!(f, "{} is beyond any {quantity} of a build", Quoted(found))
            }
        }
    }
}

/// What stands for a value of a quantity in the middle of a sentence.
fn wanted(quantity: Quantity) -> String {
    match quantity {
        Quantity::Ratio => "a plain number or a share".to_owned(),
        other => format!("a value of {}", other.name()),
    }
}

impl std::error::Error for UnitError {}

impl UnitError {
    /// How to put it right, with an example: one line, lower case, no full stop.
    #[must_use]
    pub fn help(&self) -> String {
        let count = match &self.kind {
            UnitErrorKind::WrongCount { expected, .. } => *expected,
            _ => 1,
        };
        self.help_like(&self.expected.example_of(count))
    }

    /// The same with an example of one's own, which may be of several numbers.
    #[must_use]
    pub fn help_like(&self, example: &str) -> String {
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
            } => {
                format!("did you mean `{meant}`? allowed are {allowed}, for example `{example}`")
            }
            UnitErrorKind::WrongQuantity {
                suggestion: Some(meant),
                ..
            } => format!(
                "did you mean {}? allowed are {allowed}, for example `{example}`",
                Quoted(meant)
            ),
            UnitErrorKind::UnknownUnit { .. } | UnitErrorKind::WrongQuantity { .. } => {
                format!("use one of {allowed}, for example `{example}`")
            }
            UnitErrorKind::WrongCount { expected: 1, .. } => {
                format!("write one number, without commas, for example `{example}`")
            }
            UnitErrorKind::WrongCount { expected, .. } => format!(
                "write {expected} numbers with a comma between them, a point for decimals and one \
                 unit at the end, for example `{example}`"
            ),
            UnitErrorKind::UnitNotLast {
                rewritten: Some(rewritten),
                ..
            } => format!("write the unit once, at the end: {}", Quoted(rewritten)),
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
