//! Sizes of bolts: metric threads M6 to M20, unified inch threads 1/4 to 3/4.

use std::f64::consts::PI;

use super::plain;

/// System of threads; both have flanks at 60° and differ in the root.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Series {
    /// ISO metric.
    Metric,
    /// Unified inch, UNC and UNF.
    Unified,
}

/// A thread, and what is usually found around it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Thread {
    /// Designation: "M10", "M10x1.25", "3/8-16 UNC".
    pub name: &'static str,
    /// System of the thread.
    pub series: Series,
    /// Nominal diameter d \[m\].
    pub nominal: f64,
    /// Pitch P \[m\].
    pub pitch: f64,
    /// Width across flats of the hexagon \[m\].
    pub flats: f64,
    /// Outer diameter dW of the bearing face of a hexagon head \[m\].
    pub head_bearing: f64,
    /// Clearance hole, medium or normal fit \[m\].
    pub hole: f64,
}

const INCH: f64 = 25.4e-3;

const fn metric(name: &'static str, pitch: f64, size: [f64; 4]) -> Thread {
    let [nominal, flats, head_bearing, hole] = size;
    Thread {
        name,
        series: Series::Metric,
        nominal: nominal / 1e3,
        pitch: pitch / 1e3,
        flats: flats / 1e3,
        head_bearing: head_bearing / 1e3,
        hole: hole / 1e3,
    }
}

const fn unified(name: &'static str, per_inch: f64, size: [f64; 3]) -> Thread {
    let [nominal, flats, hole] = size;
    Thread {
        name,
        series: Series::Unified,
        nominal: nominal * INCH,
        pitch: INCH / per_inch,
        flats: flats * INCH,
        head_bearing: 0.9 * flats * INCH,
        hole: hole * INCH,
    }
}

/// Nominal diameter, width across flats, bearing face, medium hole \[mm\].
///
/// # Source
/// Flats and bearing face (least, grade A): ISO 4014, holes: ISO 273, both from memory.
const M6: [f64; 4] = [6.0, 10.0, 8.88, 6.6];
const M8: [f64; 4] = [8.0, 13.0, 11.63, 9.0];
const M10: [f64; 4] = [10.0, 16.0, 14.63, 11.0];
const M12: [f64; 4] = [12.0, 18.0, 16.63, 13.5];
const M14: [f64; 4] = [14.0, 21.0, 19.64, 15.5];
const M16: [f64; 4] = [16.0, 24.0, 22.49, 17.5];
const M18: [f64; 4] = [18.0, 27.0, 25.34, 20.0];
const M20: [f64; 4] = [20.0, 30.0, 28.19, 22.0];

/// Nominal diameter, width across flats, normal hole \[in\].
///
/// # Source
/// Flats: ASME B18.2.1, holes: ASME B18.2.8, from memory; the hole of 9/16, which is not listed
/// there, common practice. The bearing face is a tenth below the flats, the least that ASME
/// B18.2.1 allows (from memory).
const QUARTER: [f64; 3] = [0.25, 0.4375, 0.281];
const FIVE_16: [f64; 3] = [0.3125, 0.5, 0.344];
const THREE_8: [f64; 3] = [0.375, 0.5625, 0.406];
const SEVEN_16: [f64; 3] = [0.4375, 0.625, 0.469];
const HALF: [f64; 3] = [0.5, 0.75, 0.562];
const NINE_16: [f64; 3] = [0.5625, 0.8125, 0.625];
const FIVE_8: [f64; 3] = [0.625, 0.9375, 0.688];
const THREE_4: [f64; 3] = [0.75, 1.125, 0.812];

/// Pitches: ISO 261 and ASME B1.1, from memory.
const THREADS: [Thread; 33] = [
    metric("M6", 1.0, M6),
    metric("M8", 1.25, M8),
    metric("M8x1", 1.0, M8),
    metric("M10", 1.5, M10),
    metric("M10x1.25", 1.25, M10),
    metric("M10x1", 1.0, M10),
    metric("M12", 1.75, M12),
    metric("M12x1.5", 1.5, M12),
    metric("M12x1.25", 1.25, M12),
    metric("M14", 2.0, M14),
    metric("M14x1.5", 1.5, M14),
    metric("M16", 2.0, M16),
    metric("M16x1.5", 1.5, M16),
    metric("M18", 2.5, M18),
    metric("M18x1.5", 1.5, M18),
    metric("M20", 2.5, M20),
    metric("M20x1.5", 1.5, M20),
    unified("1/4-20 UNC", 20.0, QUARTER),
    unified("1/4-28 UNF", 28.0, QUARTER),
    unified("5/16-18 UNC", 18.0, FIVE_16),
    unified("5/16-24 UNF", 24.0, FIVE_16),
    unified("3/8-16 UNC", 16.0, THREE_8),
    unified("3/8-24 UNF", 24.0, THREE_8),
    unified("7/16-14 UNC", 14.0, SEVEN_16),
    unified("7/16-20 UNF", 20.0, SEVEN_16),
    unified("1/2-13 UNC", 13.0, HALF),
    unified("1/2-20 UNF", 20.0, HALF),
    unified("9/16-12 UNC", 12.0, NINE_16),
    unified("9/16-18 UNF", 18.0, NINE_16),
    unified("5/8-11 UNC", 11.0, FIVE_8),
    unified("5/8-18 UNF", 18.0, FIVE_8),
    unified("3/4-10 UNC", 10.0, THREE_4),
    unified("3/4-16 UNF", 16.0, THREE_4),
];

impl Thread {
    /// Length of the thread of a bolt that is not threaded to the head \[m\].
    ///
    /// # Equation
    ///   metric:  2 d + 6 mm (up to 125 mm long), + 12 mm (up to 200 mm), + 25 mm
    ///   inch:    2 d + 1/4 in (up to 6 in long), + 1/2 in
    ///
    /// # Range
    /// Bolts shorter than this are threaded to the head.
    ///
    /// # Source
    /// R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., p. 426.
    #[must_use]
    pub fn length_on(&self, bolt: f64) -> f64 {
        let more = match self.series {
            Series::Metric if bolt <= 125e-3 => 6e-3,
            Series::Metric if bolt <= 200e-3 => 12e-3,
            Series::Metric => 25e-3,
            Series::Unified if bolt <= 152.4e-3 => 6.35e-3,
            Series::Unified => 12.7e-3,
        };
        2.0 * self.nominal + more
    }

    /// Length of a bolt that has no thread \[m\].
    #[must_use]
    pub fn plain_on(&self, bolt: f64) -> f64 {
        (bolt - self.length_on(bolt)).max(0.0)
    }

    /// Height of a nut \[m\].
    ///
    /// # Source
    /// ISO 4032, from memory: 0.8 to 0.9 of the diameter.
    #[must_use]
    pub fn nut(&self) -> f64 {
        0.8 * self.nominal
    }

    /// The thread of a designation; a metric pitch may be left out when it is the coarse one, and
    /// of an inch thread the letters or the number of threads.
    #[must_use]
    pub fn find(text: &str) -> Option<Self> {
        let wanted = plain(text);
        THREADS
            .iter()
            .find(|thread| thread.spellings().contains(&wanted))
            .copied()
    }

    /// Every designation known, as it is usually written.
    #[must_use]
    pub fn names() -> Vec<&'static str> {
        THREADS.iter().map(|thread| thread.name).collect()
    }

    fn spellings(&self) -> Vec<String> {
        let name = plain(self.name);
        match self.series {
            Series::Metric if name.contains('x') => vec![name],
            Series::Metric => vec![format!("{name}x{}", self.pitch * 1e3), name],
            Series::Unified => {
                let (size, letters) = name.split_once('-').unwrap_or((&name, ""));
                let letters = letters.trim_start_matches(|c: char| c.is_ascii_digit());
                let per_inch = name.trim_end_matches(char::is_alphabetic);
                vec![format!("{size}{letters}"), per_inch.to_owned(), name]
            }
        }
    }

    /// Diameter d2 at which thread and gap are equally wide \[m\].
    ///
    /// # Equation
    ///   d2 = d − 0.649519 P
    ///
    /// # Source
    /// ISO 724, from memory; the same in R. G. Budynas, J. K. Nisbett, Shigley's Mechanical
    /// Engineering Design, 9th ed., table 8-2, footnote, for inch threads.
    #[must_use]
    pub fn pitch_diameter(&self) -> f64 {
        self.nominal - 0.649_519 * self.pitch
    }

    /// Diameter d3 at the root of the bolt's thread \[m\].
    ///
    /// # Equation
    ///   metric:   d3 = d − 1.226869 P
    ///   unified:  d3 = d − 1.299038 P
    ///
    /// # Source
    /// Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., footnotes of tables
    /// 8-1 and 8-2 (from memory); the first also in ISO 724.
    #[must_use]
    pub fn root_diameter(&self) -> f64 {
        let depth = match self.series {
            Series::Metric => 1.226_869,
            Series::Unified => 1.299_038,
        };
        self.nominal - depth * self.pitch
    }

    /// Inner diameter D1 of the nut's thread \[m\].
    ///
    /// # Equation
    ///   D1 = d − 1.082532 P
    ///
    /// # Source
    /// ISO 724, from memory.
    #[must_use]
    pub fn nut_minor_diameter(&self) -> f64 {
        self.nominal - 1.082_532 * self.pitch
    }

    /// Diameter of the round bar that bears as much tension as the thread \[m\].
    ///
    /// # Equation
    ///   d0 = (d2 + d3)/2
    ///
    /// # Source
    /// ISO 898-1, from memory; inch threads, d0 = d − 0.974279 P: ASME B1.1, from memory.
    #[must_use]
    pub fn stress_diameter(&self) -> f64 {
        f64::midpoint(self.pitch_diameter(), self.root_diameter())
    }

    /// Area As that bears tension \[m²\].
    ///
    /// # Equation
    ///   As = π/4 ((d2 + d3)/2)²
    ///
    /// # Source
    /// As [`Self::stress_diameter`].
    #[must_use]
    pub fn stress_area(&self) -> f64 {
        PI / 4.0 * self.stress_diameter().powi(2)
    }
}
