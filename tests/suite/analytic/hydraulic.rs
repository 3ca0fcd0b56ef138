//! Hydraulic mounts: the fluid in its track against the formula in volumes, in time, and in a file.

use std::f64::consts::TAU;

use bedplate::model::isolator::fluid::Fluid;
use bedplate::model::isolator::{Amplitude, Vibration};
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::solve_modes;
use bedplate::rigid::supported::Supported;
use bedplate::spatial::Vec3;
use nalgebra::Complex;

use crate::kit::assert_close;
use crate::kit::law::{assert_elastic, assumed, described};

/// A mount in volumes: rubber rate and damping, pumping area, compliances, inertance, resistance.
///
/// From memory of A. Geisberger, Hydraulic Engine Mount Modeling, Parameter
/// Identification and Experimental Validation, MASc thesis, University of
/// Waterloo, 2000.
struct Volumes {
    rubber: f64,
    rubber_damping: f64,
    area: f64,
    upper: f64,
    lower: f64,
    inertance: f64,
    resistance: f64,
}

const GEISBERGER: Volumes = Volumes {
    rubber: 225e3,
    rubber_damping: 100.0,
    area: 2.5e-3,
    upper: 3.0e-11,
    lower: 2.6e-9,
    inertance: 3.8e6,
    resistance: 1.05e8,
};

impl Volumes {
    fn fluid(&self) -> Fluid {
        let square = self.area * self.area;
        Fluid {
            upper: square / self.upper,
            lower: square / self.lower,
            mass: square * self.inertance,
            damping: square * self.resistance,
        }
    }

    /// Rate of the whole at a frequency \[Hz\], with the fluid of the library.
    fn rate(&self, hz: f64) -> Complex<f64> {
        let omega = TAU * hz;
        self.fluid().rate(omega) + Complex::new(self.rubber, omega * self.rubber_damping)
    }

    /// Derived: continuity of both chambers and momentum of the track, solved for the force.
    ///   C₁ P₁' = A x' − Q,   C₂ P₂' = Q,   I Q' = P₁ − P₂ − R Q,   F = K x + B x' + A P₁
    fn rate_from_volumes(&self, hz: f64) -> Complex<f64> {
        let s = Complex::new(0.0, TAU * hz);
        let track = s * self.inertance + self.resistance + (s * self.lower).inv();
        let fluid = s * self.area.powi(2) / (s * self.upper + track.inv());
        s * self.rubber_damping + self.rubber + fluid
    }
}

/// Independent route: the formula in volumes, over five decades.
#[test]
fn rates_at_the_rubber_are_those_of_the_volumes() {
    for resistance in [1.05e7, 1.05e8, 1.05e9] {
        let mount = Volumes {
            resistance,
            ..GEISBERGER
        };
        for hz in [0.01, 1.0, 5.0, 9.54, 12.7, 15.8, 30.0, 200.0, 1000.0] {
            let (found, expected) = (mount.rate(hz), mount.rate_from_volumes(hz));
            let scale = expected.norm();
            let parts = [found.re, found.im];
            assert_close(hz, &parts, &[expected.re, expected.im], 0.0, 1e-12 * scale);
        }
    }
}

/// Parameters from memory of Geisberger; values computed independently on a grid of 4 million
/// frequencies from the formula in volumes.
#[test]
fn the_mount_of_a_thesis_has_its_notch_its_peak_and_its_loss() {
    let fluid = GEISBERGER.fluid();
    assert_close(
        "track",
        &[fluid.track_frequency_hz()],
        &[14.991_977],
        1e-7,
        0.0,
    );
    let limits = [
        GEISBERGER.rubber + fluid.static_rate(),
        GEISBERGER.rate(1e-6).re,
        GEISBERGER.rubber + fluid.upper,
        GEISBERGER.rate(1e6).re,
    ];
    let expected = [227_376.426, 227_376.426, 433_333.333, 433_333.333];
    assert_close("limits", &limits, &expected, 1e-8, 0.0);
    let size = |hz: f64| GEISBERGER.rate(hz).norm();
    let found = [size(9.544_59), size(15.792_44), size(10.0)];
    let expected = [158_016.959, 881_052.280, 160_331.460];
    assert_close("notch, peak, 10 Hz", &found, &expected, 1e-8, 0.0);
    // They are the smallest and the largest of their surroundings.
    assert!(size(9.50) > found[0] && size(9.59) > found[0]);
    assert!(size(15.74) < found[1] && size(15.84) < found[1]);
}

/// Computed independently on a grid of 4 million frequencies, the rubber without its own damping.
#[test]
fn the_largest_loss_falls_and_moves_down_as_the_track_grows_narrow() {
    for (resistance, degrees, hz) in [
        (1.05e8, 86.483_260, 12.737_5),
        (2e8, 53.438_071, 12.240_02),
        (3e8, 38.296_578, 11.389_45),
        (4e8, 30.591_498, 10.242_19),
    ] {
        let mount = Volumes {
            resistance,
            ..GEISBERGER
        };
        let peak = mount.fluid().largest_loss(mount.rubber);
        let found = [peak.angle.to_degrees(), peak.frequency_hz];
        assert_close(resistance, &found, &[degrees, hz], 2e-6, 0.0);
    }
}

/// Independent route: the state equations of the chambers run in time by the classical
/// fourth-order method until the swing is steady, then its size and lead are taken out by
/// Fourier's integral over one period.
#[test]
fn a_run_in_time_gives_the_same_rate() {
    const PER_PERIOD: u32 = 4000;
    for hz in [10.0, 14.0] {
        let m = &GEISBERGER;
        let (omega, swing) = (TAU * hz, 1e-3);
        let speed = |t: f64| -swing * omega * (omega * t).sin();
        let slope = |t: f64, [p1, p2, q]: [f64; 3]| {
            [
                (m.area * speed(t) - q) / m.upper,
                q / m.lower,
                (p1 - p2 - m.resistance * q) / m.inertance,
            ]
        };
        let step = 1.0 / (hz * f64::from(PER_PERIOD));
        let add = |y: [f64; 3], k: [f64; 3], h: f64| [0, 1, 2].map(|i| y[i] + h * k[i]);
        let mut state = [0.0; 3];
        // The slowest transient decays with R/(2 I), 14 1/s: 40 periods leave below 1e-12.
        let settle = 40 * PER_PERIOD;
        let mut force = Complex::new(0.0, 0.0);
        let mut rest = 0.0;
        for i in 0..settle + PER_PERIOD {
            let t = f64::from(i) * step;
            if i >= settle {
                let turned = Complex::new(0.0, -omega * t).exp();
                force += turned * (m.area * state[0]) * 2.0 / f64::from(PER_PERIOD);
                rest += state[0] / f64::from(PER_PERIOD);
            }
            let k1 = slope(t, state);
            let k2 = slope(t + step / 2.0, add(state, k1, step / 2.0));
            let k3 = slope(t + step / 2.0, add(state, k2, step / 2.0));
            let k4 = slope(t + step, add(state, k3, step));
            state = [0, 1, 2]
                .map(|i| state[i] + step / 6.0 * (k1[i] + 2.0 * k2[i] + 2.0 * k3[i] + k4[i]));
        }
        assert!(rest.is_finite());
        let found = force / swing;
        let expected = m.fluid().rate(omega);
        let parts = [found.re, found.im];
        let scale = expected.norm();
        assert_close(hz, &parts, &[expected.re, expected.im], 0.0, 1e-6 * scale);
    }
}

const HYDRAULIC: &str = "kind = \"hydraulic\"\nrates = \"90, 100, 225 N/mm\"\n\
    track = { upper = \"208 N/mm\", lower = \"2.4 N/mm\", mass = \"23.8 kg\", damping = \"0.656 N s/mm\" }";

/// Derived: at rest the chambers are springs in series, 208 · 2.4/210.4 = 2.372624 N/mm beside 225.
#[test]
fn at_rest_the_fluid_is_a_soft_spring_beside_the_rubber() {
    let isolator = described(HYDRAULIC);
    let point = isolator.law.at(&Vec3::new(1e-3, -1e-3, -2e-3));
    let found = point.force;
    let expected = [90.0, -100.0, -454.745_247];
    assert_close("force", found.as_slice(), &expected, 1e-8, 0.0);
    assert_elastic(
        isolator.law.as_ref(),
        &[[1e-3, 2e-3, -3e-3], [-1e-3, 0.0, 4e-3], [0.0, -2e-3, 1e-3]],
    );
    assert!(isolator.compound.is_some());
}

/// Derived: ratio and loss factor act on the rubber alone, the fluid is added; complex series by hand.
#[test]
fn in_vibration_ratio_and_loss_belong_to_the_rubber_and_the_fluid_comes_beside() {
    let isolator = described(&format!(
        "{HYDRAULIC}\ndynamic_ratio = 1.4\ndynamic_ratio_large = 1.1\nloss_factor = 0.1"
    ));
    let state = isolator.at(&Vec3::new(0.0, 0.0, -3e-3));
    let omega = TAU * 12.0;
    // k₂ − m ω² + i c ω, then the product over the sum with k₁.
    let (re, im) = (2.4e3 - 23.8 * omega * omega, 656.0 * omega);
    let below = Complex::new(re, im);
    let fluid = below * 208e3 / (below + 208e3);
    for (amplitude, ratio) in [(Amplitude::Small, 1.4), (Amplitude::Large, 1.1)] {
        let (storage, loss) = isolator.dynamic_rate(&state, &Vibration { omega, amplitude });
        let found = [storage[(0, 0)], storage[(2, 2)], loss[(0, 0)], loss[(2, 2)]];
        let expected = [
            ratio * 90e3,
            ratio * 225e3 + fluid.re,
            ratio * 9e3,
            ratio * 22.5e3 + fluid.im,
        ];
        assert_close(ratio, &found, &expected, 1e-12, 0.0);
    }
}

/// Derived: a hotter or scattered rubber has softer chambers but the same fluid, so static and
/// dynamic rate stay those of one part: at no frequency the dynamic rate of rubber without
/// stiffening is the static tangent.
#[test]
fn what_alters_the_rubber_alters_static_and_dynamic_rate_alike() {
    let still = Vibration {
        omega: 0.0,
        amplitude: Amplitude::Small,
    };
    let keys = format!("{HYDRAULIC}\ndynamic_ratio = 1\ndynamic_ratio_large = 1\nloss_factor = 0");
    let hot = described(&format!("{keys}\ntemperature_factor = 0.8"));
    let harder = described(&keys).scaled(1.15);
    for (isolator, factor) in [(hot, 0.8), (harder, 1.15)] {
        let state = isolator.at(&Vec3::new(0.0, 0.0, -2e-3));
        let tangent = state.point.tangent[(2, 2)];
        assert_close("static", &[tangent], &[factor * 227_372.624], 1e-8, 0.0);
        let (storage, loss) = isolator.dynamic_rate(&state, &still);
        let found = [storage[(2, 2)], loss[(2, 2)]];
        assert_close(factor, &found, &[tangent, 0.0], 1e-12, 0.0);
        let fluid = isolator.dynamics.fluid.unwrap();
        assert_close(
            "fluid",
            &[fluid.mass, fluid.damping],
            &[23.8, 656.0],
            0.0,
            0.0,
        );
    }
}

/// Derived: 450 over 225 N/mm is 2 for the rubber alone; with the fluid's 2.37 N/mm it would be 1.979.
#[test]
fn measured_dynamic_rates_are_those_of_the_rubber() {
    let isolator = described(&format!(
        "{HYDRAULIC}\ndynamic_rates = \"126, 150, 450 N/mm\"\nloss_factor = 0.2"
    ));
    let found = isolator.dynamics.ratio;
    assert_close("ratio", found.as_slice(), &[1.4, 1.5, 2.0], 1e-12, 0.0);
}

/// Computed independently as above for these rounded parameters: 14.96 Hz, 227 and 433 N/mm,
/// largest loss 86 deg at 12.7 Hz.
#[test]
fn the_remarks_say_what_stands_on_a_data_sheet() {
    let remarks = described(HYDRAULIC).remarks.join("\n");
    for words in [
        "swings in its track at 15.0 Hz",
        "have 227 N/mm far below that frequency and 433 N/mm far above it",
        "at 12.7 Hz: a loss angle of 86 deg there",
        "The resistance of a track grows with the motion",
    ] {
        assert!(remarks.contains(words), "{words}: {remarks}");
    }
    let told: Vec<String> = assumed(HYDRAULIC).into_iter().map(|(key, _)| key).collect();
    for key in ["rubber", "dynamic_ratio", "loss_factor", "creep", "scatter"] {
        assert!(told.contains(&key.to_owned()), "{key}: {told:?}");
    }
}

/// Derived: 60 kg on one hydraulic mount, which guides it up and down: body and fluid are two
/// masses on three springs. Rubber k, chambers k₁, k₂:
///   (k + k₁ − ω² m)(k₁ + k₂ − ω² m_f) = k₁²
/// with k = 200, k₁ = 160, k₂ = 4 N/mm, m = 60, m_f = 16 kg:
///   ω² = [360/60 + 164/16 ± √((360/60 − 164/16)² + 4 · 160²/(60 · 16))]/2 · 1000
///      = [6 + 10.25 ± √(18.0625 + 106.6667)]/2 · 1000 = 13 709.0 and 2541.0
///   18.635 Hz and 8.0227 Hz
/// The same numbers satisfy the frequency-dependent rate: k + Re k_f(ω) = m ω² without damping.
#[test]
fn body_and_fluid_swing_together() {
    let part = described(
        "kind = \"hydraulic\"\nrates = \"1e4, 1e4, 200 N/mm\"\ndynamic_ratio = 1.0\nloss_factor = 0.0\nrotational_rates = \"1e6 N m/rad\"\ntrack = { upper = \"160 N/mm\", lower = \"4 N/mm\", mass = \"16 kg\", damping = \"1e-3 N s/m\" }",
    );
    let mounts = vec![crate::kit::plain_mount("only", Vec3::zeros(), &part)];
    let mass = super::rest_and_torque::body_of(60.0, [2.0, 3.0, 4.0]);
    let body = Supported::new(mass, mounts).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(60.0), None).unwrap();
    let modes = solve_modes(&body, &rest).unwrap().modes;
    assert_eq!(modes.len(), 7);
    let found = [modes[0].frequency_hz, modes[1].frequency_hz];
    let root = (18.0625_f64 + 4.0 * 160.0 * 160.0 / 960.0).sqrt();
    let expected = [-root, root].map(|root| ((16.25 + root) / 2.0 * 1e3).sqrt() / TAU);
    assert_close("two masses", &found, &expected, 1e-8, 0.0);
    assert_close("by hand", &found, &[8.0227, 18.635], 1e-4, 0.0);
    for mode in &modes[..2] {
        let omega = mode.frequency_hz * TAU;
        let fluid = part.dynamics.fluid.unwrap().rate(omega).re;
        let rate = 60.0 * omega * omega;
        assert_close("own frequency", &[200e3 + fluid], &[rate], 1e-6, 0.0);
        let whole = mode.energy_share.sum() + mode.fluid_share;
        assert_close("shares", &[whole], &[1.0], 1e-12, 0.0);
        let strain: f64 = mode.mount_strain_share.iter().sum();
        assert_close("strain", &[strain], &[1.0], 1e-9, 0.0);
    }
}

/// A bracket in series: without damping the rate of the mount at each found frequency is that of
/// the same mount at that frequency, fluid and bracket together.
#[test]
fn a_bracket_behind_a_fluid() {
    let part = described(
        "kind = \"hydraulic\"\nrates = \"1e4, 1e4, 200 N/mm\"\ndynamic_ratio = 1.2\nloss_factor = 0.0\nrotational_rates = \"1e6 N m/rad\"\ntrack = { upper = \"160 N/mm\", lower = \"4 N/mm\", mass = \"16 kg\", damping = \"1e-3 N s/m\" }",
    );
    let soft = bedplate::rigid::mount_response::HeldMount {
        compliance: bedplate::spatial::Mat3::identity() * 1e-6,
        ..crate::kit::plain_mount("only", Vec3::zeros(), &part)
    };
    let mass = super::rest_and_torque::body_of(60.0, [2.0, 3.0, 4.0]);
    let body = Supported::new(mass, vec![soft]).unwrap();
    let rest = solve_equilibrium(&body, &Loading::weight(60.0), None).unwrap();
    let modes = solve_modes(&body, &rest).unwrap().modes;
    let vertical = modes.iter().filter(|mode| mode.shape.z.abs() > 1e-3);
    let mut seen = 0;
    for mode in vertical {
        let omega = mode.frequency_hz * TAU;
        let at = Vibration {
            omega,
            amplitude: Amplitude::Small,
        };
        let (storage, _) = soft.dynamic_rate(&rest.mounts[0].isolator, &at).unwrap();
        let rate = 60.0 * omega * omega;
        assert_close("own frequency", &[storage[(2, 2)]], &[rate], 1e-6, 0.0);
        seen += 1;
    }
    assert_eq!(seen, 2);
}
