//! What a bolt clamps, layer by layer from head to nut, and how much it gives.

use std::f64::consts::PI;

use crate::model::Model;
use crate::model::joint::{Base, Joint, PolymerRole, Seat};
use crate::model::material::Material;
use crate::strength::bolt::clamped::{Clamped, Fit, tube_resilience};
use crate::strength::bolt::resilience::{Head, Hold, Shank};
use crate::strength::bolt::thermal::Layer as ThermalLayer;
use crate::strength::polymer::Layer as PolymerLayer;

use super::preload;
use super::rail_clamp::{self, Squeeze};

/// What a layer is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LayerKind {
    /// Hard washer.
    Washer,
    /// Foot of the bracket.
    Foot,
    /// Plate on the rail.
    Plate,
    /// Rail between its outer faces, hollow or with a sleeve in it.
    Rail,
    /// Flange of the sleeve, outside the far wall.
    Flange,
    /// Solid part.
    Solid,
    /// Layer of polymer in the way of the clamp force.
    Polymer,
}

impl LayerKind {
    /// Word for people and for the results document.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Washer => "washer",
            Self::Foot => "bracket foot",
            Self::Plate => "plate",
            Self::Rail => "rail",
            Self::Flange => "flange",
            Self::Solid => "solid part",
            Self::Polymer => "polymer",
        }
    }
}

/// One layer between head and nut.
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// What it is.
    pub kind: LayerKind,
    /// Along the bolt \[m\].
    pub thickness: f64,
    /// Name of its material.
    pub material: String,
    /// Young's modulus \[Pa\].
    pub youngs_modulus: f64,
    /// Thermal expansion \[1/K\].
    pub expansion: f64,
}

/// The layers and their resilience.
#[derive(Debug, Clone, PartialEq)]
pub struct Stack {
    /// From head to nut, or to the last thread in a tapped part.
    pub layers: Vec<Layer>,
    /// Clamped length \[m\].
    pub grip: f64,
    /// Length of the bolt below its head \[m\]: that of the file, else the shortest of a 5 mm step that reaches through grip and nut.
    pub bolt_length: f64,
    /// Diameter on which head or washer presses \[m\].
    pub bearing: f64,
    /// Resilience of the bolt [m/N].
    pub bolt_resilience: f64,
    /// Resilience of all layers [m/N].
    pub parts_resilience: f64,
    /// Load factor with the load under head and nut: the share of an axial load that the bolt feels.
    pub load_factor: f64,
    /// Faces between the layers that settle, head and nut left out.
    pub inner_faces: usize,
    /// Faces under head and nut: 2, or 1 for a bolt that is screwed into the part.
    pub head_faces: usize,
}

/// Step of bolt lengths \[m\].
const LENGTH_STEP: f64 = 5e-3;

/// Young's modulus and expansion of hard washers: those of steel.
const WASHER: (f64, f64) = (210e9, 12e-6);

impl Stack {
    pub(super) fn of(model: &Model, joint: &Joint) -> Self {
        let layers = layers(model, joint);
        let grip = joint.grip();
        let thread = &joint.bolt.thread;
        let tapped = match &joint.base {
            Base::Solid(solid) => solid.engagement,
            Base::Rail(_) => None,
        };
        // Two threads stand out of a nut.
        let reach = tapped.unwrap_or(thread.nut() + 2.0 * thread.pitch);
        let shortest = ((grip + reach) / LENGTH_STEP).ceil() * LENGTH_STEP;
        let bolt_length = joint.bolt.length.unwrap_or(shortest);
        let threaded = (grip - thread.plain_on(bolt_length)).max(0.0);
        let modulus = joint.bolt.grade.metal.youngs_modulus();
        let hold = match (&joint.base, tapped) {
            (Base::Solid(solid), Some(_)) => Hold::Tapped(solid.material.youngs_modulus),
            _ => Hold::Nut(modulus),
        };
        let bolt_resilience = Shank {
            thread,
            plain: grip - threaded,
            threaded,
            youngs_modulus: modulus,
            head: Head::Hexagon,
            hold,
        }
        .resilience();
        let bearing = joint.washer.as_ref().map_or(thread.head_bearing, |washer| {
            washer.pressed(thread.head_bearing)
        });
        let parts_resilience = parts(model, joint, &layers, bearing, tapped.is_some());
        Self {
            inner_faces: inner_faces(joint, &layers, tapped.is_some()),
            head_faces: if tapped.is_some() { 1 } else { 2 },
            grip,
            bolt_length,
            bearing,
            bolt_resilience,
            parts_resilience,
            load_factor: parts_resilience / (bolt_resilience + parts_resilience),
            layers,
        }
    }

    /// The layers as the thermal change of preload takes them.
    pub(super) fn thermal_layers(&self) -> Vec<ThermalLayer> {
        self.layers
            .iter()
            .map(|layer| ThermalLayer {
                length: layer.thickness,
                expansion: layer.expansion,
            })
            .collect()
    }
}

fn layer(kind: LayerKind, thickness: f64, material: &Material) -> Layer {
    Layer {
        kind,
        thickness,
        material: material.name.clone(),
        youngs_modulus: material.youngs_modulus,
        expansion: material.expansion,
    }
}

fn layers(model: &Model, joint: &Joint) -> Vec<Layer> {
    let mut layers = Vec::new();
    let washer = joint.washer.as_ref().map(|washer| Layer {
        kind: LayerKind::Washer,
        thickness: washer.thickness,
        material: "hard steel".to_owned(),
        youngs_modulus: WASHER.0,
        expansion: WASHER.1,
    });
    layers.extend(washer.clone());
    if let Some(foot) = &joint.foot {
        layers.push(layer(LayerKind::Foot, foot.thickness, &foot.material));
    }
    if let Some(polymer) = &joint.polymer
        && matches!(polymer.role, PolymerRole::Clamped { .. })
    {
        layers.push(layer(
            LayerKind::Polymer,
            polymer.thickness,
            &polymer.material,
        ));
    }
    if let Some(plate) = &joint.plate {
        layers.push(layer(LayerKind::Plate, plate.thickness, &plate.material));
    }
    match &joint.base {
        Base::Rail(base) => {
            // What is between its faces: the sleeve when there is one, else its own walls.
            let between = joint.sleeve.as_ref().map_or_else(
                || model.rails.get(base.rail).map(|rail| rail.material.clone()),
                |sleeve| Some(sleeve.material.clone()),
            );
            layers.extend(between.map(|material| layer(LayerKind::Rail, base.depth, &material)));
            if let Some(sleeve) = &joint.sleeve
                && let Some(flange) = &sleeve.shoulder
            {
                let kind = LayerKind::Flange;
                layers.push(layer(kind, flange.thickness, &sleeve.material));
            }
            if let Some(plate) = joint.plate.as_ref().filter(|plate| plate.both_sides) {
                layers.push(layer(LayerKind::Plate, plate.thickness, &plate.material));
            }
            layers.extend(washer);
        }
        Base::Solid(solid) => {
            if solid.engagement.is_none() {
                layers.push(layer(LayerKind::Solid, solid.thickness, &solid.material));
                layers.extend(washer);
            }
        }
    }
    layers
}

/// Resilience of all layers.
///
/// # Equation
///   δ = cone through washers, foot, plates and solid part, as one body
///       + h/(E A) of a polymer + 1/(1/δ_sleeve + k_r) of a rail
///
///   k_r  squeeze stiffness of the rail [N/m]; its spacer counts as rigid in an open channel
///
/// # Source
/// Derived: there is no cone inside a hollow, so the force goes through the
/// sleeve beside what the walls resist. The layers of one cone share it by
/// thickness over modulus.
fn parts(model: &Model, joint: &Joint, layers: &[Layer], bearing: f64, tapped: bool) -> f64 {
    let hole = joint.bolt.hole;
    let outer = joint.plate.as_ref().map_or(3.0 * bearing, |plate| {
        plate.length.min(plate.width).max(bearing)
    });
    let fit = if tapped { Fit::Tapped } else { Fit::Through };
    let outside: Vec<&Layer> = layers
        .iter()
        .filter(|layer| !matches!(layer.kind, LayerKind::Rail | LayerKind::Polymer))
        .collect();
    let length: f64 = outside.iter().map(|layer| layer.thickness).sum();
    let mut resilience = of_polymer(joint);
    if length > 0.0 {
        let softness = outside
            .iter()
            .map(|layer| layer.thickness / layer.youngs_modulus)
            .sum::<f64>();
        let unit = Clamped {
            head_bearing: bearing,
            hole,
            outer,
            length,
            youngs_modulus: 1.0,
        };
        resilience += unit.resilience(fit) * softness / length;
    }
    if let Base::Rail(_) = &joint.base {
        let walls = Squeeze::of(model, joint).map_or(0.0, |squeeze| squeeze.rate());
        let closing = rail_clamp::closing(model, joint).unwrap_or(walls);
        let touching = joint.sleeve.as_ref().filter(|sleeve| {
            closing <= 0.0 || sleeve.gap.max(0.0) * closing < preload::most(joint)
        });
        let sleeve = touching.map(|sleeve| {
            tube_resilience(
                sleeve.outer,
                sleeve.inner,
                sleeve.length,
                sleeve.material.youngs_modulus,
            )
        });
        resilience += match sleeve {
            Some(tube) => 1.0 / (1.0 / tube + walls),
            None if closing > 0.0 => 1.0 / closing,
            None => 0.0,
        };
    }
    resilience
}

/// The layer of polymer that the clamp force goes through; `None` without one.
pub(super) fn clamped_polymer(joint: &Joint) -> Option<PolymerLayer> {
    let polymer = joint.polymer.as_ref()?;
    let PolymerRole::Clamped { diameter } = polymer.role else {
        return None;
    };
    // It lies on what is below it: where a sleeve comes through the wall, on its end.
    let [outer, inner] = match &joint.sleeve {
        Some(sleeve) if joint.plate.is_none() && sleeve.seat == Seat::Through => [
            diameter.min(sleeve.outer),
            joint.bolt.hole.max(sleeve.inner),
        ],
        _ => [diameter, joint.bolt.hole],
    };
    Some(PolymerLayer {
        thickness: polymer.thickness,
        area: PI / 4.0 * (outer.powi(2) - inner.powi(2)),
        youngs_modulus: polymer.material.youngs_modulus,
        yield_strength: polymer.material.yield_strength,
    })
}

/// Resilience of a layer of polymer in the way of the clamp force [m/N]; 0 without one.
pub(super) fn of_polymer(joint: &Joint) -> f64 {
    clamped_polymer(joint).map_or(0.0, |layer| {
        layer.thickness / (layer.youngs_modulus * layer.area)
    })
}

/// Faces inside the stack; the two faces of a rail each touch the sleeve as well.
fn inner_faces(joint: &Joint, layers: &[Layer], tapped: bool) -> usize {
    // A flange is one piece with its sleeve.
    let layers = layers
        .iter()
        .filter(|layer| layer.kind != LayerKind::Flange)
        .count();
    // The last layer lies on the tapped part, which is no layer itself.
    let between = if tapped {
        layers
    } else {
        layers.saturating_sub(1)
    };
    let of_sleeve = joint
        .sleeve
        .as_ref()
        .map_or(0, |sleeve| if sleeve.seat == Seat::Inside { 2 } else { 0 });
    between + of_sleeve
}
