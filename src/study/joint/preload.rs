//! What tightening leaves in a bolt, and what settling, heat and polymer take from it.

use crate::model::joint::Joint;
use crate::strength::bolt::embedding::{self, Loading, Roughness};
use crate::strength::bolt::thermal;
use crate::strength::bolt::tightening::{
    Friction, USUAL_SHARE, friction_diameter, permissible_preload, preload, tighten,
};
use crate::strength::sleeve::gap::settlement_loss;

use super::coats;
use super::stack::{Stack, clamped_polymer, of_polymer};

/// Preload of one bolt \[N\], from tightening to the end of its losses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Preload {
    /// Torque to set [N m].
    pub torque: f64,
    /// Whether the torque is that of the file.
    pub is_stated: bool,
    /// Most that the torque gives, where the friction is lowest.
    pub most: f64,
    /// What it gives where the friction is highest.
    pub at_highest_friction: f64,
    /// Least that is counted on: where the friction is highest, or the tightening scatters most.
    pub least: f64,
    /// What the bolt bears while it is turned, at 90 % of its yield strength and lowest friction.
    pub permissible: f64,
    /// Lowest and highest friction in thread and under the head.
    pub friction: [f64; 2],
    /// Ratio of most to least preload of the way of tightening.
    pub scatter: f64,
    /// Torque over preload and diameter, from lowest to highest friction.
    pub nut_factor: [f64; 2],
    /// Lost as the faces settle.
    pub embedding: f64,
    /// Lost for each metre by which the stack shortens later, be it that it settles more or that an open gap of a sleeve closes [N/m].
    pub loss_per_settling: f64,
    /// Lost as paint and powder flow away from the clamped faces.
    pub coats: f64,
    /// Most that heat adds.
    pub thermal_gain: f64,
    /// Most that cold or heat takes.
    pub thermal_loss: f64,
    /// Share that a layer of polymer leaves; 1 without one.
    pub retained: f64,
}

/// Roughness Rz below which faces are fine, and above which they are coarse \[m\]: the bands of [`Roughness`].
const ROUGH: [f64; 2] = [10e-6, 40e-6];

impl Preload {
    pub(super) fn of(joint: &Joint, stack: &Stack) -> Self {
        let bolt = &joint.bolt;
        let friction = bolt.lubrication.friction;
        let scatter = bolt.tightening.scatter(&bolt.lubrication).high;
        let collar = friction_diameter(bolt.thread.head_bearing, bolt.hole);
        let yields = bolt.limits.yield_strength;
        let full = tighten(&bolt.thread, collar, yields, USUAL_SHARE, friction, scatter);
        let permissible = permissible_preload(&bolt.thread, yields, friction.low, USUAL_SHARE);
        let at = |torque: f64, mu: f64| preload(&bolt.thread, collar, torque, Friction::same(mu));
        let torque = bolt.torque.unwrap_or(full.torque);
        let most = most(joint);
        let at_highest_friction = at(torque, friction.high);
        let least = at_highest_friction.min(most / scatter);
        let (bolt_gives, parts_give) = (stack.bolt_resilience, stack.parts_resilience);
        let roughness = match bolt.roughness {
            rz if rz < ROUGH[0] => Roughness::Fine,
            rz if rz > ROUGH[1] => Roughness::Coarse,
            _ => Roughness::Medium,
        };
        // Settling under shear is the larger, and every mount is pushed across as well.
        let settled = embedding::flattening(
            roughness,
            Loading::Shear,
            stack.head_faces,
            stack.inner_faces,
        );
        let changes = joint.temperature.map(|at| {
            thermal::change(
                at - joint.assembled,
                &stack.thermal_layers(),
                bolt.grade.metal.thermal_expansion(),
                bolt_gives,
                parts_give,
            )
        });
        let nut_factor = |mu: f64| torque / (at(torque, mu) * bolt.thread.nominal);
        Self {
            torque,
            is_stated: bolt.torque.is_some(),
            most,
            at_highest_friction,
            least,
            permissible,
            friction: [friction.low, friction.high],
            scatter,
            nut_factor: [nut_factor(friction.low), nut_factor(friction.high)],
            embedding: embedding::loss(settled, bolt_gives, parts_give),
            coats: settlement_loss(coats::thickness(joint), bolt_gives, parts_give),
            loss_per_settling: settlement_loss(1.0, bolt_gives, parts_give),
            thermal_gain: changes.iter().copied().fold(0.0, f64::max),
            thermal_loss: changes.iter().map(|change| -change).fold(0.0, f64::max),
            retained: retained(joint, stack),
        }
    }

    /// Least clamp force of one bolt after all losses, with no load \[N\].
    #[must_use]
    pub fn clamp(&self) -> f64 {
        ((self.least - self.embedding - self.coats) * self.retained - self.thermal_loss).max(0.0)
    }

    /// Most force in one bolt before any load \[N\].
    #[must_use]
    pub fn hottest(&self) -> f64 {
        self.most + self.thermal_gain
    }
}

/// Most preload of one bolt, where the friction is lowest \[N\].
pub(super) fn most(joint: &Joint) -> f64 {
    let bolt = &joint.bolt;
    let friction = bolt.lubrication.friction;
    match bolt.torque {
        Some(torque) => {
            let collar = friction_diameter(bolt.thread.head_bearing, bolt.hole);
            preload(&bolt.thread, collar, torque, Friction::same(friction.low))
        }
        None => permissible_preload(
            &bolt.thread,
            bolt.limits.yield_strength,
            friction.low,
            USUAL_SHARE,
        ),
    }
}

/// Share of the preload that a clamped polymer leaves; 1 without one, and where its creep is not known.
fn retained(joint: &Joint, stack: &Stack) -> f64 {
    let creep = joint
        .polymer
        .as_ref()
        .and_then(|polymer| polymer.material.long_term_modulus);
    let (Some(layer), Some(creep)) = (clamped_polymer(joint), creep) else {
        return 1.0;
    };
    let metal = stack.parts_resilience - of_polymer(joint);
    layer.retained(stack.bolt_resilience + metal, creep)
}
