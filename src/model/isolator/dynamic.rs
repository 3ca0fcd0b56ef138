//! How an isolator answers in vibration: storage and loss rate at a frequency and amplitude.

use super::description::Description;
use super::fluid::Fluid;
use super::{AXIS_NAMES, Isolator, IsolatorState};
use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::{Bound, Section};
use crate::spatial::{Mat3, Vec3};
use crate::units::Quantity;

/// Ratios of dynamic to static rate that a file may state.
const RATIO: Bound = Bound::Within(0.5, 10.0);

/// Decades of time between a static test (a minute) and vibration (10 Hz to 100 Hz).
///
/// # Source
/// Common practice.
pub(super) const DECADES: f64 = 3.0;

/// A loss factor below this share of what the stiffening implies is doubted.
const DOUBTFUL_LOSS: f64 = 1.0 / 3.0;

/// How far the rubber swings; filled rubber is stiffer the less it moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Amplitude {
    /// Micrometres to a tenth of a millimetre: an engine at idle, noise.
    Small,
    /// A millimetre and more: roads, starts and stops.
    Large,
}

/// A steady vibration.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Vibration {
    /// Angular frequency [rad/s].
    pub omega: f64,
    /// How far the rubber swings.
    pub amplitude: Amplitude,
}

impl Vibration {
    /// What natural frequencies are computed for: small motion at 10 Hz, where
    /// most modes of a powertrain on rubber lie.
    ///
    /// Only a hydraulic mount asks for the frequency.
    ///
    /// # Source
    /// Common practice: bounce lies between 7 and 12 Hz.
    pub const OF_MODES: Self = Self {
        omega: 10.0 * std::f64::consts::TAU,
        amplitude: Amplitude::Small,
    };
}

/// What an isolator has in vibration beside its static law.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dynamics {
    /// Ratio of the rate to the static one along u, v, w at [`Amplitude::Small`].
    pub ratio: Vec3,
    /// The same at [`Amplitude::Large`].
    pub ratio_large: Vec3,
    /// Loss factor: imaginary part over real part of the dynamic rate.
    pub loss_factor: f64,
    /// Fluid along w, in parallel; its static rate is part of the static law.
    pub fluid: Option<Fluid>,
}

impl Dynamics {
    /// The static law itself: no stiffening, no loss.
    pub const STATIC: Self = Self {
        ratio: Vec3::new(1.0, 1.0, 1.0),
        ratio_large: Vec3::new(1.0, 1.0, 1.0),
        loss_factor: 0.0,
        fluid: None,
    };

    /// The same ratio along every axis at every amplitude, and a loss factor.
    #[must_use]
    pub fn uniform(ratio: f64, loss_factor: f64) -> Self {
        Self {
            ratio: Vec3::repeat(ratio),
            ratio_large: Vec3::repeat(ratio),
            loss_factor,
            fluid: None,
        }
    }

    fn ratio_at(&self, amplitude: Amplitude) -> Vec3 {
        match amplitude {
            Amplitude::Small => self.ratio,
            Amplitude::Large => self.ratio_large,
        }
    }
}

impl Isolator {
    /// Storage and loss parts of the dynamic rate [N/m] about the deflection of `state`.
    ///
    /// # Equation
    ///   k* = √ρᵢ √ρⱼ kᵢⱼ (1 + i η) + k_fluid(ω) + k_stop
    ///
    ///   ρ  ratio of dynamic to static rate along each axis
    ///   k  static tangent of the rubber                     [N/m]
    ///   η  loss factor
    ///
    /// # Range
    /// Steady harmonic vibration. Ratio and loss factor belong to the rubber, not to the stops.
    ///
    /// # Source
    /// Common practice for rubber (hysteretic damping); the roots keep the rate symmetric.
    #[must_use]
    pub fn dynamic_rate(&self, state: &IsolatorState, vibration: &Vibration) -> (Mat3, Mat3) {
        let (mut storage, mut loss) = self.rate_without_fluid(state, vibration.amplitude);
        if let Some(fluid) = &self.dynamics.fluid {
            let rate = fluid.rate(vibration.omega);
            storage[(2, 2)] += rate.re;
            loss[(2, 2)] += rate.im;
        }
        (storage, loss)
    }

    /// The same while the fluid is held in its track, so that only the upper chamber bulges.
    #[must_use]
    pub fn rate_with_fluid_held(
        &self,
        state: &IsolatorState,
        amplitude: Amplitude,
    ) -> (Mat3, Mat3) {
        let (mut storage, loss) = self.rate_without_fluid(state, amplitude);
        storage[(2, 2)] += self.dynamics.fluid.map_or(0.0, |fluid| fluid.upper);
        (storage, loss)
    }

    /// Rubber and stops in vibration.
    fn rate_without_fluid(&self, state: &IsolatorState, amplitude: Amplitude) -> (Mat3, Mat3) {
        let stops = Mat3::from_diagonal(&state.stop_tangent);
        let mut rubber = state.point.tangent - stops;
        if let Some(fluid) = &self.dynamics.fluid {
            rubber[(2, 2)] -= fluid.static_rate();
        }
        let ratio = self.dynamics.ratio_at(amplitude);
        let root = Mat3::from_diagonal(&ratio.map(f64::sqrt));
        let of_rubber = root * rubber * root;
        (of_rubber + stops, of_rubber * self.dynamics.loss_factor)
    }

    /// Ratio of the rates about u, v, w in vibration to the static ones: that of the axis that stiffens most.
    #[must_use]
    pub fn rotational_ratio(&self, amplitude: Amplitude) -> f64 {
        self.dynamics.ratio_at(amplitude).max()
    }
}

/// Reads the keys; `None` when something is wrong or the kind is not known. The fluid is the kind's.
pub(super) fn read(section: &Section<'_>, description: Option<&Description>) -> Option<Dynamics> {
    let ratio = section.ratio("dynamic_ratio", RATIO);
    let ratio_large = section.ratio("dynamic_ratio_large", RATIO);
    let rates = section.per_axis("dynamic_rates", Quantity::LinearRate, Bound::RATE_OR_NONE);
    let loss_factor = section.ratio("loss_factor", Bound::Within(0.0, 2.0));
    let has_rates = section.has("dynamic_rates");
    if has_rates && section.has("dynamic_ratio") {
        section.refuse(
            "dynamic_rates",
            Code::Conflict,
            format!(
                "{} is given beside `dynamic_ratio`",
                section.key_name("dynamic_rates")
            ),
            "keep `dynamic_rates` when they were measured, else `dynamic_ratio`",
        );
        return None;
    }
    let description = description?;
    let usual = &description.usual;
    let assume = |key, value: f64, meaning: &str| {
        section.assume(
            key,
            format!(
                "{value}: {meaning} usual for {} (common practice)",
                usual.of
            ),
        );
    };
    let small = if has_rates {
        ratio_of_rates(section, &rates?, description)?
    } else {
        if !section.has("dynamic_ratio") {
            let meaning = "ratio of dynamic to static rate";
            assume("dynamic_ratio", usual.dynamic_ratio, meaning);
        }
        Vec3::repeat(ratio.unwrap_or(usual.dynamic_ratio))
    };
    if !section.has("loss_factor") {
        assume("loss_factor", usual.loss_factor, "loss factor");
    }
    let loss_factor = loss_factor.unwrap_or(usual.loss_factor);
    warn_of_a_pair_no_rubber_has(section, small.max(), loss_factor);
    // Large motion breaks up what stiffens small motion, so it is never the stiffer.
    let large = ratio_large.unwrap_or(usual.dynamic_ratio_large);
    Some(Dynamics {
        ratio: small,
        ratio_large: if section.has("dynamic_ratio_large") {
            Vec3::repeat(large)
        } else {
            small.map(|small| small.min(large.max(1.0)))
        },
        loss_factor,
        fluid: None,
    })
}

/// Ratios of the rubber from rates along each axis.
fn ratio_of_rates(section: &Section<'_>, rates: &Vec3, description: &Description) -> Option<Vec3> {
    let tangent = description.law.at(&Vec3::zeros()).tangent;
    let mut ratio = Vec3::repeat(1.0);
    for (axis, name) in AXIS_NAMES.into_iter().enumerate() {
        // The fluid has a dynamic rate of its own.
        let of_fluid = match &description.fluid {
            Some(fluid) if axis == 2 => fluid.static_rate(),
            _ => 0.0,
        };
        let rate = tangent[(axis, axis)] - of_fluid;
        if rate <= 0.0 && rates[axis] <= 0.0 {
            continue;
        }
        ratio[axis] = rates[axis] / rate;
        if !(0.5..=10.0).contains(&ratio[axis]) {
            section.refuse(
                "dynamic_rates",
                Code::OutOfRange,
                format!(
                    "{} must be 0.5 to 10 times the static rate: along {name} {:.3} and {:.3} N/mm",
                    section.key_name("dynamic_rates"),
                    rates[axis] * 1e-3,
                    rate * 1e-3
                ),
                "give the rates in vibration along u, v, w",
            );
            return None;
        }
    }
    Some(ratio)
}

/// Stiffening and loss are two sides of one thing; a pair far apart is a slip or a wish.
///
/// # Equation
///   k ~ f^m:   m = lg R / decades,   tan δ = tan(π m/2)
///
/// # Source
/// Derived: the loss angle of a power law in frequency.
fn warn_of_a_pair_no_rubber_has(section: &Section<'_>, ratio: f64, loss_factor: f64) {
    if !(section.has("loss_factor") || section.has("dynamic_ratio") || section.has("dynamic_rates"))
    {
        return;
    }
    let exponent = ratio.max(1.0).log10() / DECADES;
    let implied = (std::f64::consts::FRAC_PI_2 * exponent).tan();
    if loss_factor >= implied * DOUBTFUL_LOSS {
        return;
    }
    let keys = ["loss_factor", "dynamic_rates"];
    let stated = keys.into_iter().find(|key| section.has(key));
    let key = stated.unwrap_or("dynamic_ratio");
    section.note(
        Diagnostic::warning(
            Code::UnlikelyLoss,
            format!(
                "{}: rubber that is {ratio:.2} times stiffer in vibration has a loss factor near {implied:.2}, not {loss_factor:.2}",
                section.key_name(key)
            ),
            section.span_of(key),
        )
        .label("the two do not go together")
        .help("look at both numbers again; one may be from another rubber or another test"),
    );
}
