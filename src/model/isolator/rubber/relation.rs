//! From hardness to moduli, by one of several relations that do not agree.

use super::hardness::Scale;
use super::table::interpolated;
use super::{Compound, Moduli};
use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::Section;
use crate::units::{Digits, Shown, number};

/// How moduli follow from a hardness.
///
/// At 60 degrees the four give a Young's modulus of 3.5 to 5.9 MPa. A measured rate is better than any.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Relation {
    /// Table of natural-rubber springs, `"table"`: the only one with moduli that were all measured.
    Table,
    /// A blunt cone pressed into an elastic half-space, `"indentation"`.
    Indentation,
    /// A straight line for the decimal logarithm of Young's modulus, `"base-10"`.
    Base10,
    /// The curve by which the IRHD scale is defined, `"probit"`.
    Probit,
}

/// Constants of natural-rubber springs by hardness \[IRHD\].
///
/// # Source
/// Published: P. B. Lindley, Engineering Design with Natural Rubber, NR
/// Technical Bulletin, MRPRA, Table 3 (hardness ±2 degrees, black filler above
/// 48 IRHD).
const TABLE: [(f64, Moduli); 10] = [
    row(30.0, 0.92, 0.30, 0.93, 1000.0),
    row(35.0, 1.18, 0.37, 0.89, 1000.0),
    row(40.0, 1.50, 0.45, 0.85, 1000.0),
    row(45.0, 1.80, 0.54, 0.80, 1000.0),
    row(50.0, 2.20, 0.64, 0.73, 1030.0),
    row(55.0, 3.25, 0.81, 0.64, 1090.0),
    row(60.0, 4.45, 1.06, 0.57, 1150.0),
    row(65.0, 5.85, 1.37, 0.54, 1210.0),
    row(70.0, 7.35, 1.73, 0.53, 1270.0),
    row(75.0, 9.40, 2.22, 0.52, 1330.0),
];

/// A row as it is printed, moduli in MPa.
const fn row(hardness: f64, youngs: f64, shear: f64, shape: f64, bulk: f64) -> (f64, Moduli) {
    let moduli = Moduli {
        youngs: youngs * 1e6,
        shear: shear * 1e6,
        shape,
        bulk: bulk * 1e6,
    };
    (hardness, moduli)
}

/// Every relation, in the order in which they are listed for people.
const ALL: [Relation; 4] = [
    Relation::Table,
    Relation::Indentation,
    Relation::Base10,
    Relation::Probit,
];

impl Relation {
    /// Word of the file.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Table => "table",
            Self::Indentation => "indentation",
            Self::Base10 => "base-10",
            Self::Probit => "probit",
        }
    }

    /// Name for people.
    #[must_use]
    pub fn in_words(self) -> &'static str {
        match self {
            Self::Table => "the table of natural-rubber springs (Lindley)",
            Self::Indentation => "the indentation relation (Gent 1958)",
            Self::Base10 => "the base-10 relation (common practice)",
            Self::Probit => "the probit curve (ISO 48)",
        }
    }

    /// Smallest and largest hardness it holds for.
    ///
    /// # Source
    /// The table: its ends. The others common practice; the indentation
    /// relation has a pole at 100 and the IRHD scale is flat at both its ends.
    #[must_use]
    pub fn range(self) -> [f64; 2] {
        match self {
            Self::Table => [30.0, 75.0],
            Self::Indentation => [20.0, 90.0],
            Self::Base10 => [20.0, 80.0],
            Self::Probit => [30.0, 95.0],
        }
    }

    /// Scale that it was made for.
    pub(super) fn scale(self) -> Scale {
        match self {
            Self::Table | Self::Probit => Scale::Irhd,
            Self::Indentation | Self::Base10 => Scale::ShoreA,
        }
    }

    /// Young's modulus of small strain \[Pa\] at a hardness; `None` outside of [`range`](Self::range).
    ///
    /// # Equation
    ///   table:        E₀ between its rows
    ///   indentation:  E = 0.0981 (56 + 7.62336 S)/(0.137505 (254 − 2.54 S))
    ///   base-10:      lg E = 0.0235 S − 0.6403
    ///   probit:       S = 100 Φ((lg E − 0.364)/s),   s = 100/(57 √(2π))
    ///
    ///   S  hardness, E  Young's modulus in MPa, Φ  normal distribution, lg  logarithm of base ten
    ///
    /// # Source
    /// Table: P. B. Lindley, Engineering Design with Natural Rubber, Table 3.
    /// Indentation: A. N. Gent 1958 (from memory). Base-10: common practice;
    /// it circulates with a natural exponent too, which gives 2.16 MPa at 60 in
    /// place of 5.88 MPa. Probit: ISO 48 (from memory).
    #[must_use]
    pub fn youngs(self, hardness: f64) -> Option<f64> {
        let [low, high] = self.range();
        if !(low..=high).contains(&hardness) {
            return None;
        }
        let megapascal = match self {
            Self::Table => return Some(row_at(hardness).youngs),
            Self::Indentation => {
                0.0981 * (56.0 + 7.62336 * hardness) / (0.137_505 * (254.0 - 2.54 * hardness))
            }
            Self::Base10 => 10_f64.powf(0.0235 * hardness - 0.6403),
            Self::Probit => {
                let spread = 100.0 / (57.0 * std::f64::consts::TAU.sqrt());
                10_f64.powf(0.364 + spread * normal_quantile(hardness / 100.0))
            }
        };
        Some(megapascal * 1e6)
    }

    /// All moduli at a hardness; `None` outside of [`range`](Self::range).
    ///
    /// Other relations than the table know Young's modulus alone. The shape
    /// coefficient is 1 then, since that of the table belongs to the E₀ of the
    /// table; the ratio of Young's to shear modulus and the bulk modulus are
    /// those of the table at that hardness, beyond its ends those of its end.
    #[must_use]
    pub fn moduli(self, hardness: f64) -> Option<Moduli> {
        let youngs = self.youngs(hardness)?;
        let row = row_at(hardness);
        Some(match self {
            Self::Table => row,
            Self::Indentation | Self::Base10 | Self::Probit => Moduli {
                youngs,
                shear: youngs * row.shear / row.youngs,
                shape: 1.0,
                bulk: row.bulk,
            },
        })
    }
}

/// The table between its rows, beyond its ends the end row.
fn row_at(hardness: f64) -> Moduli {
    let column = |of: fn(&Moduli) -> f64| {
        interpolated(&TABLE.map(|(at, moduli)| (at, of(&moduli))), hardness)
    };
    Moduli {
        youngs: column(|row| row.youngs),
        shear: column(|row| row.shear),
        shape: column(|row| row.shape),
        bulk: column(|row| row.bulk),
    }
}

/// Hardness \[IRHD\] at which natural rubber has a shear modulus \[Pa\], by the table; beyond its ends that of its end.
pub(super) fn hardness_of_shear(shear: f64) -> f64 {
    interpolated(&TABLE.map(|(at, moduli)| (moduli.shear, at)), shear)
}

/// How far the relations lie apart at a hardness, without its full stop.
pub(super) fn spread_in_words(hardness: f64) -> String {
    let all = ALL.iter().filter_map(|relation| relation.youngs(hardness));
    let (least, most) = all.fold((f64::INFINITY, 0.0_f64), |(least, most), one| {
        (least.min(one), most.max(one))
    });
    let shown = |value| number(Shown::Megapascal.from_si(value), Digits::Significant(2));
    format!(
        "Relations in use give a Young's modulus from {} to {} MPa at this hardness: a measured rate is better, as `measured_rates`",
        shown(least),
        shown(most)
    )
}

/// Reads `relation`; by the rubber when the file is silent. A rubber that could not be read is taken as another one.
pub(super) fn read(section: &Section<'_>, compound: Option<&Compound>) -> Option<Relation> {
    if section.has("relation") {
        let words = ALL.map(|relation| (relation.word(), relation));
        let stated = section.choice("relation", &words);
        if let (Some(Relation::Table), Some(compound)) = (stated, compound)
            && *compound != super::compound::NATURAL
        {
            warn_of_the_wrong_table(section, compound);
        }
        return stated;
    }
    let natural = compound.is_some_and(|compound| *compound == super::compound::NATURAL);
    let usual = if natural {
        Relation::Table
    } else {
        Relation::Indentation
    };
    if section.has("hardness") {
        section.assume(
            "relation",
            format!("{}: {}", usual.word(), usual.in_words()),
        );
    }
    Some(usual)
}

/// The table was measured on natural rubber, and other rubbers have other moduli at one hardness.
fn warn_of_the_wrong_table(section: &Section<'_>, compound: &Compound) {
    section.note(
        Diagnostic::warning(
            Code::UnlikelyModulus,
            format!(
                "{} names the table of natural-rubber springs for {}",
                section.key_name("relation"),
                compound.name
            ),
            section.span_of("relation"),
        )
        .label("measured on natural rubber")
        .help("take `relation` out, which leaves \"indentation\", or give `modulus`, measured on the part"),
    );
}

/// Where the normal distribution reaches a share between 0 and 1.
///
/// # Equation
///   Φ(z) = 1/2 + φ(z) (z + z³/3 + z⁵/(3·5) + …)
///
/// # Range
/// Shares from 0.001 to 0.999, to 1e-14.
///
/// # Source
/// Derived: Newton's method on the series, which follows from (Φ − 1/2)/φ by parts.
fn normal_quantile(share: f64) -> f64 {
    let mut z = 0.0_f64;
    // From the middle the steps approach from one side, at most ten of them.
    for _ in 0..40 {
        let density = (-z * z / 2.0).exp() / std::f64::consts::TAU.sqrt();
        let (mut term, mut sum) = (z, z);
        for odd in (3..120).step_by(2) {
            term *= z * z / f64::from(odd);
            sum += term;
        }
        let step = (share - 0.5) / density - sum;
        z += step;
        if step.abs() < 1e-15 {
            break;
        }
    }
    z
}
