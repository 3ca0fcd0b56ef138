//! What a build is bolted with: threads, grades, lubrication, ways of tightening.
//!
//! Tables and names only; what a bolt bears is computed in `strength`.

pub mod grade;
pub mod lubrication;
pub mod thread;
pub mod tightening;

pub use grade::{Grade, Limits, Metal};
pub use lubrication::Lubrication;
pub use thread::{Series, Thread};
pub use tightening::Tightening;

/// Both ends of a number that is known only so well; `low` is not above `high`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// Smallest value to be reckoned with.
    pub low: f64,
    /// Largest value to be reckoned with.
    pub high: f64,
}

/// A name as it is compared: small letters, no blanks, no marks of inches.
fn plain(text: &str) -> String {
    text.chars()
        .filter(|c| !c.is_whitespace() && *c != '"')
        .flat_map(char::to_lowercase)
        .map(|c| match c {
            '×' => 'x',
            ',' => '.',
            other => other,
        })
        .collect()
}

/// The entry of a table that has this name.
fn find_named<T: Copy>(table: &[T], name: impl Fn(&T) -> &'static str, text: &str) -> Option<T> {
    let wanted = plain(text);
    table
        .iter()
        .find(|entry| plain(name(entry)) == wanted)
        .copied()
}

#[cfg(test)]
mod tests;
