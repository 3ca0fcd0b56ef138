//! From a model file to an evaluation, for the commands that need one.

use std::path::Path;

use bedplate::diagnostic::{Code, Diagnostic};
use bedplate::model::Model;
use bedplate::model::file;
use bedplate::rigid::failure::StaticsFailure;
use bedplate::study::evaluate::{Evaluation, evaluate};

use super::console::Console;
use super::failure::Failure;
use super::files::input::{self, Input};
use super::messages::Problems;

/// A model that was read without errors.
pub(crate) struct Build {
    pub(crate) input: Input,
    pub(crate) model: Model,
    pub(crate) warnings: Problems,
}

impl Build {
    /// Reads a model file; its errors are the failure.
    pub(crate) fn read(path: &Path) -> Result<Self, Failure> {
        let input = input::read(path)?;
        match file::read(&input.bytes) {
            Ok(checked) => Ok(Self {
                warnings: Problems::of_file(&input.name, &input.bytes, checked.warnings),
                model: checked.model,
                input,
            }),
            Err(problems) => Err(Failure::Model(Problems::of_file(
                &input.name,
                &input.bytes,
                problems,
            ))),
        }
    }

    /// Computes everything; warnings are told here, once it is known what else there is to tell.
    pub(crate) fn evaluate(&self, console: &Console) -> Result<Evaluation, Failure> {
        match evaluate(&self.model) {
            Ok(evaluation) => {
                console.warn(&self.warnings);
                Ok(evaluation)
            }
            Err(failure) => {
                let mut problems = self.warnings.clone();
                if console.is_quiet() {
                    problems = problems.errors_only();
                }
                problems.push(no_answer(&failure));
                Err(Failure::Model(problems))
            }
        }
    }
}

/// Why the build as a whole has no position at rest.
fn no_answer(failure: &StaticsFailure) -> Diagnostic {
    let (code, help) = match failure {
        StaticsFailure::Unsupported(_) => (
            Code::NothingHolds,
            "add a mount that resists this motion, or give an isolator a rate along it",
        ),
        StaticsFailure::NotConverged { .. } => (
            Code::NoPosition,
            "look for a rate far too low or a mass far too high, often a slip of unit",
        ),
        StaticsFailure::Unstable { .. } => (
            Code::Unstable,
            "raise or spread the mounts, or give them more rate sideways",
        ),
        StaticsFailure::Numeric(_) => (
            Code::NotComputable,
            "look for a value that is very large or very small beside the others",
        ),
    };
    Diagnostic::error(code, failure.to_string(), None).help(help)
}
