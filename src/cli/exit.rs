//! How a run ended, and the one place where that becomes a number.

use std::process::ExitCode;

use bedplate::study::check::{Check, Verdict};

/// How a run ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Exit {
    /// Ran, and no check fails; also when the reader of the output closed it early.
    Success,
    /// Ran, and at least one check fails.
    ChecksFail,
    /// Could not run: arguments, files, or a build without an answer.
    CouldNotRun,
}

/// The same for people; shown in the help of the commands that it concerns.
pub(crate) const IN_WORDS: &str = "\
Exit codes:
  0    ran, and no check fails (a check that is close or over
       what is advised counts as passed)
  1    ran, and at least one check fails
  2    could not run: arguments, files, or a build that nothing holds
  101  a bug in bedplate";

impl Exit {
    /// What the checks of an evaluation come to; always success when `forgiven`.
    pub(crate) fn of_checks(checks: &[Check], forgiven: bool) -> Self {
        Self::of_verdicts(checks.iter().map(|check| check.verdict), forgiven)
    }

    /// What some verdicts come to; always success when `forgiven`.
    pub(crate) fn of_verdicts(verdicts: impl IntoIterator<Item = Verdict>, forgiven: bool) -> Self {
        let fails = verdicts
            .into_iter()
            .any(|verdict| verdict == Verdict::Fails);
        if fails && !forgiven {
            Self::ChecksFail
        } else {
            Self::Success
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        match exit {
            Exit::Success => Self::SUCCESS,
            Exit::ChecksFail => Self::from(1),
            Exit::CouldNotRun => Self::from(2),
        }
    }
}
