//! Where the problems and the assumptions of one file are collected.

use std::cell::{Cell, RefCell};
use std::collections::HashSet;

use super::super::Assumption;
use crate::diagnostic::{Code, Diagnostic, Severity};

/// Most problems of one severity that are listed: more tell nobody more, and a hostile file stays cheap.
pub(crate) const MOST_PROBLEMS: usize = 200;

/// A problem, and the paths of the keys it misses when that is what it says: any one of them would do.
struct Noted {
    diagnostic: Diagnostic,
    missing: Vec<String>,
}

/// Where problems and assumptions of one file are collected.
pub(crate) struct Sink<'a> {
    pub(super) source: &'a str,
    noted: RefCell<Vec<Noted>>,
    errors: Cell<usize>,
    warnings: Cell<usize>,
    /// Paths of absent keys that a misspelt key stands for.
    misspelt: RefCell<HashSet<String>>,
    /// Causes that were told already.
    told: RefCell<HashSet<&'static str>>,
    assumptions: RefCell<Vec<Assumption>>,
}

impl<'a> Sink<'a> {
    pub(crate) fn new(source: &'a str) -> Self {
        Self {
            source,
            noted: RefCell::default(),
            errors: Cell::new(0),
            warnings: Cell::new(0),
            misspelt: RefCell::default(),
            told: RefCell::default(),
            assumptions: RefCell::default(),
        }
    }

    pub(crate) fn push(&self, diagnostic: Diagnostic) {
        self.keep(diagnostic, Vec::new());
    }

    /// Notes that the keys at some paths are all missing; taken back when a misspelt key turns out to stand for one.
    pub(super) fn push_missing(&self, paths: Vec<String>, diagnostic: Diagnostic) {
        self.keep(diagnostic, paths);
    }

    /// Whether it was told that the key at a path is missing.
    pub(super) fn misses(&self, path: &str) -> bool {
        let noted = self.noted.borrow();
        noted
            .iter()
            .any(|noted| noted.missing.iter().any(|missing| missing == path))
    }

    /// Says that the absent key at a path is there under a misspelt name.
    pub(super) fn misspelt(&self, path: String) {
        self.misspelt.borrow_mut().insert(path);
    }

    /// Whether a cause is told for the first time, so that many places with one cause give one message.
    pub(super) fn first_time(&self, cause: &'static str) -> bool {
        self.told.borrow_mut().insert(cause)
    }

    /// Number of errors so far, those beyond the list included.
    pub(super) fn errors(&self) -> usize {
        self.errors.get()
    }

    /// Whether a further error would only be counted.
    pub(super) fn is_full(&self) -> bool {
        self.errors.get() >= MOST_PROBLEMS
    }

    /// Counts an error that nobody will see, without making it.
    pub(crate) fn count_error(&self) {
        self.errors.set(self.errors.get() + 1);
    }

    pub(super) fn assume(&self, key: String, text: String) {
        self.assumptions.borrow_mut().push(Assumption { key, text });
    }

    fn keep(&self, diagnostic: Diagnostic, missing: Vec<String>) {
        let count = match diagnostic.severity {
            Severity::Error => &self.errors,
            Severity::Warning => &self.warnings,
        };
        if count.get() < MOST_PROBLEMS {
            self.noted.borrow_mut().push(Noted {
                diagnostic,
                missing,
            });
        }
        count.set(count.get() + 1);
    }

    /// Problems in the order of the file, and assumptions in the order they were made.
    pub(crate) fn into_parts(self) -> (Vec<Diagnostic>, Vec<Assumption>) {
        let misspelt = self.misspelt.into_inner();
        let mut diagnostics: Vec<Diagnostic> = self
            .noted
            .into_inner()
            .into_iter()
            .filter(|noted| !noted.missing.iter().any(|path| misspelt.contains(path)))
            .map(|noted| noted.diagnostic)
            .collect();
        diagnostics.sort_by_key(|d| d.span.as_ref().map_or(0, |span| span.start));
        for (count, sort, problem) in [
            (
                self.errors.get(),
                "errors",
                Diagnostic::error as fn(_, _, _) -> _,
            ),
            (self.warnings.get(), "warnings", Diagnostic::warning),
        ] {
            if let Some(more) = count.checked_sub(MOST_PROBLEMS).filter(|more| *more > 0) {
                let message: String = format!("{sort} that are not listed: {more}");
                diagnostics.push(
                    problem(Code::TooManyProblems, message, None)
                        .help("mend those that are listed, then read the file again"),
                );
            }
        }
        (diagnostics, self.assumptions.into_inner())
    }
}
