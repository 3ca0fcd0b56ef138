//! What the machine does to the block that carries it: forces and moments by order.

use nalgebra::{Complex, Vector3};

use super::balance::{Turning, unbalance};
use super::crank::{HIGHEST, SliderCrank};
use super::gas::{WorkingCycle, gas_torque};
use crate::model::drivetrain::{Cycle, Engine};
use crate::model::shaking::{Gas, Reciprocating, Shaking};

/// Complex vector in vehicle axes.
type Amplitude = Vector3<Complex<f64>>;

/// Share of the largest harmonic below which one is rounding.
const ROUNDING: f64 = 1e-10;

/// How hard the machine works: 0 at idle, 1 at full load.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Load(f64);

impl Load {
    /// Running by itself.
    pub const IDLE: Self = Self(0.0);
    /// All it can give.
    pub const FULL: Self = Self(1.0);

    /// From a share, 0 to 1; `None` outside.
    #[must_use]
    pub fn new(share: f64) -> Option<Self> {
        (0.0..=1.0).contains(&share).then_some(Self(share))
    }

    /// The share.
    #[must_use]
    pub fn share(self) -> f64 {
        self.0
    }

    fn between(self, idle: f64, full: f64) -> f64 {
        idle + self.0 * (full - idle)
    }
}

/// One order of what the machine does to its block.
///
/// Each amplitude means Re(F e^(i order θ)), θ = ωt the crank angle from the
/// firing top dead centre of cylinder 1, ω the speed. Vehicle axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Harmonic {
    /// Order of the crank.
    pub order: f64,
    /// Force on the block \[N\].
    pub force: Amplitude,
    /// Moment on the block about [`acts_at`] [N m].
    pub moment: Amplitude,
}

impl Harmonic {
    fn size(&self) -> f64 {
        self.force.norm().max(self.moment.norm())
    }
}

/// The point about which the moments of [`harmonics`] are counted \[m\]: on the crank line, amid the cylinders or the
/// rotor. `None` when the file does not say where that is.
#[must_use]
pub fn acts_at(engine: &Engine) -> Option<Vector3<f64>> {
    engine.shaking.as_ref()?.at
}

/// Forces and moments on the block at a crank speed [rad/s, not below zero], in rising order.
///
/// Empty when the file tells nothing of them. The mean torque, order 0, is left
/// out: it belongs to the load cases.
///
/// # Equation
///   pistons:  F = A_k m r ω² Σ of the cylinders,  M likewise with their places
///   torque:   M = −T e,   T of inertia and gas on the crank, e crank direction
///   ripple:   order 6p, or one for each rotor;   cogging: lcm(slots, 2p);   p pole pairs
///   rotor:    F = U ω², turning with it
///
/// # Range
/// Steady speed, rigid crank. Rods as two masses. A dead cylinder breathes but
/// does not fire, and the others work no harder for it. Phases of ripple,
/// cogging and unbalance are not known and taken as 0.
///
/// # Source
/// Derived: momentum of the moving parts; the block feels minus the torque on
/// the crank. Orders of three-phase machines: common practice.
#[must_use]
pub fn harmonics(engine: &Engine, speed: f64, load: Load) -> Vec<Harmonic> {
    let Some(shaking) = &engine.shaking else {
        return Vec::new();
    };
    let mut sum = Sum {
        crank: engine.crank_direction,
        upright: shaking.upright,
        across: engine.crank_direction.cross(&shaking.upright),
        found: Vec::with_capacity(26),
    };
    if let Some(pistons) = &shaking.reciprocating {
        sum.add_pistons(pistons, speed);
    }
    if let Some(gas) = &shaking.gas {
        let four_stroke = matches!(engine.cycle, Cycle::FourStroke { .. });
        sum.add_gas(gas, four_stroke, load);
    }
    for given in &shaking.given {
        let amplitude = load.between(given.idle, given.full);
        sum.add_torque(given.order, Complex::from_polar(amplitude, given.phase));
    }
    sum.add_rotor(engine.cycle, shaking, speed, load);
    let largest = sum.found.iter().map(Harmonic::size).fold(0.0, f64::max);
    sum.found
        .retain(|harmonic| harmonic.size() > ROUNDING * largest);
    sum.found.sort_by(|a, b| a.order.total_cmp(&b.order));
    sum.found
}

/// Harmonics while they are added up.
struct Sum {
    crank: Vector3<f64>,
    upright: Vector3<f64>,
    across: Vector3<f64>,
    found: Vec<Harmonic>,
}

impl Sum {
    /// The harmonic of an order, which is a multiple of one half.
    fn add(&mut self, order: f64, force: Amplitude, moment: Amplitude) {
        let same = |harmonic: &&mut Harmonic| (harmonic.order - order).abs() < 0.25;
        match self.found.iter_mut().find(same) {
            Some(harmonic) => {
                harmonic.force += force;
                harmonic.moment += moment;
            }
            None => self.found.push(Harmonic {
                order,
                force,
                moment,
            }),
        }
    }

    fn in_vehicle(&self, turning: &Turning) -> Amplitude {
        let [upright, across] = turning.along_axes();
        self.upright.map(Complex::from) * upright + self.across.map(Complex::from) * across
    }

    /// A torque on the crank; the block feels the opposite.
    fn add_torque(&mut self, order: f64, torque: Complex<f64>) {
        let moment = self.crank.map(|axis| torque * -axis);
        self.add(order, Amplitude::zeros(), moment);
    }

    fn add_pistons(&mut self, pistons: &Reciprocating, speed: f64) {
        let (Some(crank), Some(first)) = (
            SliderCrank::new(pistons.radius / pistons.rod),
            pistons.cylinders.first(),
        ) else {
            return;
        };
        let coefficients = crank.coefficients();
        let pull = pistons.mass * pistons.radius * speed * speed;
        for order in 1..=HIGHEST {
            let (Some(a), Some(t)) = (coefficients.pull.get(order), coefficients.torque.get(order))
            else {
                continue;
            };
            let mut left = unbalance(&pistons.cylinders, order);
            for turning in [&mut left.force, &mut left.moment] {
                let (with, against) = match order {
                    1 if pistons.first_order_shaft => (1.0 - pistons.counterweight, 0.0),
                    1 => (1.0 - pistons.counterweight, 1.0),
                    2 if pistons.second_order_shafts => (0.0, 0.0),
                    _ => (1.0, 1.0),
                };
                turning.with *= with * a * pull;
                turning.against *= against * a * pull;
            }
            let force = self.in_vehicle(&left.force);
            let moment = self.in_vehicle(&left.moment);
            self.add(order as f64, force, moment);
            let phases: Complex<f64> = pistons
                .cylinders
                .iter()
                .map(|cylinder| Complex::from_polar(1.0, order as f64 * cylinder.phase(first)))
                .sum();
            // sin kα as the real part of −i e^(ikα).
            let torque = phases * Complex::new(0.0, -t * pull * pistons.radius);
            self.add_torque(order as f64, torque);
        }
    }

    fn add_gas(&mut self, gas: &Gas, four_stroke: bool, load: Load) {
        let Some(crank) = SliderCrank::new(gas.ratio) else {
            return;
        };
        let firing = WorkingCycle {
            four_stroke,
            swept: gas.swept,
            compression: gas.compression,
            effective: Some(load.between(gas.effective.idle, gas.effective.full)),
            inlet: load.between(gas.inlet.idle, gas.inlet.full),
        };
        let alive = gas_torque(&crank, &firing);
        let dead = gas.dead.map(|place| {
            let motored = WorkingCycle {
                effective: None,
                ..firing
            };
            (place, gas_torque(&crank, &motored))
        });
        for half in 1..alive.len() {
            let order = half as f64 / 2.0;
            let mut torque = Complex::new(0.0, 0.0);
            for (place, angle) in gas.firing.iter().enumerate() {
                let cycle = match &dead {
                    Some((cylinder, motored)) if *cylinder == place => motored,
                    _ => &alive,
                };
                let one = cycle.get(half).copied().unwrap_or_default();
                torque += one * Complex::from_polar(1.0, -order * angle);
            }
            self.add_torque(order, torque);
        }
    }

    fn add_rotor(&mut self, cycle: Cycle, shaking: &Shaking, speed: f64, load: Load) {
        if let (Some(ripple), Some(order)) = (&shaking.ripple, ripple_order(cycle)) {
            let torque = load.between(0.0, ripple.torque);
            self.add_torque(order, Complex::from(torque));
        }
        if let (
            Some(cogging),
            Cycle::Electric {
                pole_pairs: Some(p),
            },
        ) = (&shaking.cogging, cycle)
        {
            let order = cogging_order(cogging.slots, p);
            self.add_torque(order, Complex::from(cogging.torque));
        }
        if let Some(unbalance) = shaking.unbalance {
            let turning = Turning {
                with: Complex::from(unbalance * speed * speed),
                ..Turning::NONE
            };
            let force = self.in_vehicle(&turning);
            self.add(1.0, force, Amplitude::zeros());
        }
    }
}

/// Lowest order of the torque pulses of a machine that turns; `None` for one with pistons or unknown poles.
///
/// # Equation
///   electric: 6 p,   p pole pairs;   rotary-piston: one for each rotor
///
/// # Source
/// Common practice for three phases: the fifth and seventh harmonic of the
/// field, seen from the rotor, give the sixth. Derived for rotors: each gives a pulse a turn.
#[must_use]
pub fn ripple_order(cycle: Cycle) -> Option<f64> {
    match cycle {
        Cycle::Electric { pole_pairs } => Some(6.0 * f64::from(pole_pairs?)),
        Cycle::RotaryPiston { rotors } => Some(f64::from(rotors)),
        Cycle::FourStroke { .. } | Cycle::TwoStroke { .. } => None,
    }
}

/// Lowest order of cogging.
///
/// # Equation
///   lcm(slots, 2 p),   p pole pairs
///
/// # Source
/// Derived: the least number of equal steps of a turn after which slots and
/// poles stand to each other as before. Also common practice.
#[must_use]
pub fn cogging_order(slots: u32, pole_pairs: u32) -> f64 {
    let poles = 2 * u64::from(pole_pairs);
    let (mut a, mut b) = (u64::from(slots), poles);
    while b > 0 {
        (a, b) = (b, a % b);
    }
    (u64::from(slots) * poles / a.max(1)) as f64
}
