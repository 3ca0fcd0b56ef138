//! Rates of an isolator at its free position: at rest, in vibration, and of a fluid by frequency.

use crate::model::isolator::{Amplitude, Isolator, IsolatorState, LawPoint, Vibration};
use crate::spatial::{Mat3, Vec3};

/// Rates along and about u, v, w at the free position.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates {
    /// Static rates [N/m].
    pub at_rest: Vec3,
    /// Storage rates in vibration of micrometres to a tenth of a millimetre [N/m], of a fluid at 10 Hz.
    pub small: Vec3,
    /// Storage rates in vibration of a millimetre and more [N/m], of a fluid at 10 Hz.
    pub large: Vec3,
    /// Static rates about u, v, w [N m/rad].
    pub turning: Vec3,
    /// The same in vibration of micrometres to a tenth of a millimetre [N m/rad].
    pub turning_small: Vec3,
    /// The same in vibration of a millimetre and more [N m/rad].
    pub turning_large: Vec3,
}

impl Rates {
    /// Rates of an isolator.
    #[must_use]
    pub fn of(isolator: &Isolator) -> Self {
        let turning = |amplitude| isolator.rotational * isolator.rotational_ratio(amplitude);
        Self {
            at_rest: free_rates(isolator),
            small: in_vibration(isolator, Amplitude::Small),
            large: in_vibration(isolator, Amplitude::Large),
            turning: isolator.rotational,
            turning_small: turning(Amplitude::Small),
            turning_large: turning(Amplitude::Large),
        }
    }
}

fn free_rates(isolator: &Isolator) -> Vec3 {
    Vec3::from([0, 1, 2].map(|axis| isolator.free_rate(axis)))
}

fn in_vibration(isolator: &Isolator, amplitude: Amplitude) -> Vec3 {
    let vibration = Vibration {
        amplitude,
        ..Vibration::OF_MODES
    };
    isolator
        .dynamic_rate(&free_state(isolator), &vibration)
        .0
        .diagonal()
}

/// The isolator at its free position, with the rate that a loose support has once it is pushed at all.
fn free_state(isolator: &Isolator) -> IsolatorState {
    IsolatorState {
        point: LawPoint {
            force: Vec3::zeros(),
            tangent: Mat3::from_diagonal(&free_rates(isolator)),
            energy: 0.0,
        },
        stop_tangent: Vec3::zeros(),
        on_stop: [false; 3],
    }
}

/// Frequencies at which a fluid is shown \[Hz\]: from a slow sway to the second order of a fast engine.
const FREQUENCIES: [f64; 7] = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0];

/// Rate along w of an isolator with a fluid, at one frequency and small amplitude.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AtFrequency {
    /// Frequency \[Hz\].
    pub frequency_hz: f64,
    /// Storage part [N/m].
    pub storage: f64,
    /// Loss part [N/m].
    pub loss: f64,
}

/// How the rate along w runs with frequency; empty without a fluid.
#[must_use]
pub fn by_frequency(isolator: &Isolator) -> Vec<AtFrequency> {
    if isolator.dynamics.fluid.is_none() {
        return Vec::new();
    }
    let state = free_state(isolator);
    FREQUENCIES
        .into_iter()
        .map(|frequency_hz| {
            let vibration = Vibration {
                omega: frequency_hz * std::f64::consts::TAU,
                amplitude: Amplitude::Small,
            };
            let (storage, loss) = isolator.dynamic_rate(&state, &vibration);
            AtFrequency {
                frequency_hz,
                storage: storage[(2, 2)],
                loss: loss[(2, 2)],
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use approx::assert_relative_eq;

    use super::*;
    use crate::model::isolator::fluid::Fluid;
    use crate::model::isolator::rates::Rates as Constant;
    use crate::model::isolator::{Dynamics, Tension};

    fn pad() -> Isolator {
        let rates = Vec3::new(1e5, 2e5, 3e5);
        let mut pad = Isolator::new("pad", "rates", Arc::new(Constant { rates }));
        pad.dynamics = Dynamics {
            ratio: Vec3::new(1.2, 1.3, 1.4),
            ratio_large: Vec3::repeat(1.1),
            loss_factor: 0.1,
            fluid: None,
        };
        pad.rotational = Vec3::new(10.0, 20.0, 30.0);
        pad
    }

    /// Derived: ratio times static rate along each axis; about an axis the largest ratio.
    #[test]
    fn rates_in_vibration_are_the_ratio_times_those_at_rest() {
        let rates = Rates::of(&pad());
        assert_relative_eq!(rates.small, Vec3::new(1.2e5, 2.6e5, 4.2e5), epsilon = 1e-6);
        assert_relative_eq!(rates.large, Vec3::new(1.1e5, 2.2e5, 3.3e5), epsilon = 1e-6);
        assert_relative_eq!(
            rates.turning_small,
            Vec3::new(14.0, 28.0, 42.0),
            epsilon = 1e-9
        );
    }

    /// Derived: at a frequency far below the track's the fluid adds its static rate, which the law holds
    /// already; far above it the track is shut and the chamber bulges: k₁ beside the rubber.
    #[test]
    fn a_fluid_runs_from_its_static_rate_to_the_bulge_of_its_chamber() {
        let mut mount = pad();
        mount.dynamics.ratio = Vec3::repeat(1.0);
        mount.dynamics.fluid = Some(Fluid {
            upper: 2e5,
            lower: 1e3,
            mass: 50.0,
            damping: 100.0,
        });
        let runs = by_frequency(&mount);
        // The track swings at √((k₁ + k₂)/m)/(2π) = 10.1 Hz.
        let rubber = 3e5 - 2e5 * 1e3 / 2.01e5;
        assert_relative_eq!(runs[6].storage, rubber + 2e5, max_relative = 0.02);
        assert!(runs[0].storage < 3.02e5 && runs[0].storage > 2.9e5);
        assert!(by_frequency(&pad()).is_empty());
    }

    #[test]
    fn a_loose_support_has_the_rate_it_is_pushed_with() {
        let mut loose = pad();
        loose.tension = Tension::None;
        assert_relative_eq!(Rates::of(&loose).at_rest.z, 3e5);
    }
}
