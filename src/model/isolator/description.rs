//! What a kind of isolator makes of its keys in the file.

use std::sync::Arc;

use super::fluid::Fluid;
use super::law::Law;
use super::rubber::Compound;
use super::strain::StrainMeasure;
use crate::model::reader::Section;
use crate::spatial::Vec3;

/// One kind of isolator: its word in the file, and how its own keys are read.
pub(crate) struct Kind {
    /// Word of the file.
    pub(crate) word: &'static str,
    /// What it is described by, in a few words.
    pub(crate) gloss: &'static str,
    /// Other words for it.
    pub(crate) others: &'static [&'static str],
    /// Reads the keys of the kind; `None` when something in them is wrong.
    pub(crate) read: fn(&Section<'_>) -> Option<Description>,
}

/// An isolator as its kind understands it, before what every kind has in common is added.
#[derive(Debug, Clone)]
pub(crate) struct Description {
    /// Static law, as new at 20 °C.
    pub(crate) law: Arc<dyn Law>,
    /// Static rates about u, v, w [N m/rad].
    pub(crate) rotational: Vec3,
    /// How a deflection strains the rubber; `None` when the kind does not know its size.
    pub(crate) strain: Option<StrainMeasure>,
    /// Deflections along u, v, w that were measured \[m\]; `None` where the law needs no measuring.
    pub(crate) measured: [Option<[f64; 2]>; 3],
    /// Fluid beside the rubber, along w; its static part is in `law`.
    pub(crate) fluid: Option<Fluid>,
    /// What the rubber is; `None` for metal.
    pub(crate) compound: Option<&'static Compound>,
    /// Whether it is a rod between two eyes, which acts along its own line only.
    pub(crate) is_rod: bool,
    /// Whether the rates come from a formula, which a measured rate may replace.
    pub(crate) is_computed: bool,
    /// What is taken where the file is silent.
    pub(crate) usual: Usual,
    /// How the numbers came about, and what to keep in mind, each a sentence without its full stop.
    pub(crate) remarks: Vec<String>,
    /// What else to keep in mind of a part that can be pulled along w.
    pub(crate) when_held: Vec<String>,
    /// What else to keep in mind of a part that lifts off.
    pub(crate) when_loose: Vec<String>,
}

impl Description {
    /// A law with nothing known beside it.
    pub(crate) fn new(law: Arc<dyn Law>, usual: Usual) -> Self {
        Self {
            law,
            rotational: Vec3::zeros(),
            strain: None,
            measured: [None; 3],
            fluid: None,
            compound: None,
            is_rod: false,
            is_computed: false,
            usual,
            remarks: Vec::new(),
            when_held: Vec::new(),
            when_loose: Vec::new(),
        }
    }
}

/// Values that are taken where the file is silent, all common practice.
#[derive(Debug, Clone)]
pub(crate) struct Usual {
    /// Ratio of the rate in vibration of some micrometres to the static rate.
    pub(crate) dynamic_ratio: f64,
    /// The same in vibration of a millimetre and more.
    pub(crate) dynamic_ratio_large: f64,
    /// Loss factor in vibration.
    pub(crate) loss_factor: f64,
    /// Half-width of the band of the real rate.
    pub(crate) scatter: f64,
    /// Creep in service, as a share of the deflection at rest.
    pub(crate) creep: f64,
    /// Whether it may be pulled along `w`.
    pub(crate) tension: super::Tension,
    /// What they hold for, in words.
    pub(crate) of: String,
}
