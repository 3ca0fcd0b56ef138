//! Why there is no static answer, in plain words.

use crate::numeric::NumericError;
use crate::units::{Digits, Shown, show};

use super::unsupported::FreeMotion;

/// Why the powertrain has no position to report.
#[derive(Debug, Clone, PartialEq)]
pub enum StaticsFailure {
    /// Nothing holds the powertrain against these motions.
    Unsupported(Vec<FreeMotion>),
    /// No balance was found within the work allowed.
    NotConverged {
        /// Share of the load that was still carried, 0 to 1.
        reached_share: f64,
        /// Force out of balance at the last attempt \[N\], moments over the arm length.
        residual: f64,
        /// Mount with the largest force, or the one that gave none.
        worst_mount: String,
        /// Solver iterations spent.
        iterations: usize,
    },
    /// The balance found is one the powertrain leaves at the slightest push, and it tips right over.
    Unstable {
        /// Rate [N/m] at which it is pushed away, below zero.
        rate: f64,
        /// Solver iterations spent.
        iterations: usize,
    },
    /// Numbers that cannot be calculated with.
    Numeric(NumericError),
}

impl From<NumericError> for StaticsFailure {
    fn from(error: NumericError) -> Self {
        Self::Numeric(error)
    }
}

impl std::fmt::Display for StaticsFailure {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Unsupported(motions) => {
                f.write_str("nothing holds the powertrain against ")?;
                for (place, motion) in motions.iter().enumerate() {
                    if place > 0 {
                        f.write_str("; or against ")?;
                    }
                    write!(f, "{motion}")?;
                }
                Ok(())
            }
            Self::NotConverged {
                reached_share,
                residual,
                worst_mount,
                iterations,
            } => write!(
                f,
                "the powertrain found no position in which the mounts carry the load: \
                 {:.0} % of it was carried, then {} stayed out of balance \
                 after {iterations} iterations; look first at mount {worst_mount}",
                reached_share * 100.0,
                out_of_balance(*residual)
            ),
            Self::Unstable { rate, iterations } => write!(
                f,
                "the powertrain tips over under this load: a push off the balance found \
                 is helped by {} ({iterations} iterations)",
                show(-rate, Shown::NewtonPerMillimetre, Digits::Significant(3))
            ),
            Self::Numeric(error) => write!(f, "the build cannot be calculated: {error}"),
        }
    }
}

/// A force that is missing, in words \[N\].
fn out_of_balance(force: f64) -> String {
    /// Below this no digit tells anything \[N\].
    const LEAST: f64 = 0.01;
    if force < LEAST {
        "less than 0.01 N".to_owned()
    } else {
        show(force, Shown::Newton, Digits::Significant(3))
    }
}

impl std::error::Error for StaticsFailure {}
