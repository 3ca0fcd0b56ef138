//! What a joint is made of as shapes in its section, in metres: y across the rail, z out of it.

use super::shapes::{between_holes, block, channel, circle, rounded};
use crate::model::Model;
use crate::model::joint::{Base, Joint, Seat};
use crate::model::rail::Profile;
use crate::study::joint::JointResult;
use crate::study::joint::stack::LayerKind;

/// Height of a head and of a nut in bolt diameters, rounded: ISO 4014 and ISO 4032 (from memory).
const HEAD: f64 = 0.625;
const NUT: f64 = 0.8;

/// One cut face.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Piece {
    /// Outline, then holes.
    pub(super) rings: Vec<Vec<[f64; 2]>>,
    /// Place in [`Pieces::materials`].
    pub(super) material: usize,
    /// What to write beside it, and at which side and height.
    pub(super) label: Option<Label>,
}

/// A word beside the cut.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Label {
    pub(super) what: &'static str,
    pub(super) thickness: f64,
    /// Where its line ends.
    pub(super) at: [f64; 2],
}

/// The whole section.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pieces {
    /// Pieces of the base come first in `cut`: so many.
    pub(super) of_base: usize,
    /// Half of the hole in the walls of a rail; `None` in a solid part, which is drawn around its holes.
    pub(super) bore: Option<f64>,
    /// Depth of the base.
    pub(super) depth: f64,
    pub(super) cut: Vec<Piece>,
    /// Names in the order in which they get their slants.
    pub(super) materials: Vec<String>,
    /// y of each bolt, without those behind another.
    pub(super) bolts: Vec<f64>,
    /// Underside of the head.
    pub(super) under_head: f64,
    pub(super) head: f64,
    /// Lower and upper face of the nut; `None` in a tapped part.
    pub(super) nut: Option<[f64; 2]>,
    pub(super) bolt_end: f64,
    /// Length of thread at the end of the bolt.
    pub(super) threaded: f64,
    /// Far end of what the sleeve should fill.
    pub(super) sleeve_end: f64,
    /// Lowest and highest of everything.
    pub(super) heights: [f64; 2],
    /// Largest y, without sign.
    pub(super) reach: f64,
    pub(super) is_channel: bool,
}

impl Pieces {
    pub(super) fn of(model: &Model, joint: &Joint, result: &JointResult) -> Self {
        let thread = &joint.bolt.thread;
        let mut bolts: Vec<f64> = joint.pattern.iter().map(|place| place[1]).collect();
        bolts.sort_by(f64::total_cmp);
        bolts.dedup_by(|a, b| (*a - *b).abs() < thread.nominal / 2.0);
        let aside = bolts.iter().fold(0.0_f64, |far, y| far.max(y.abs()));
        let base_half = match &joint.base {
            Base::Rail(base) => base.face_width / 2.0,
            Base::Solid(_) => aside + 2.0 * thread.flats,
        };
        let beside = base_half.max(aside + thread.flats);
        let foot_half = joint.foot.as_ref().map_or(beside, |foot| foot.width / 2.0);
        let plate_half = joint
            .plate
            .as_ref()
            .map_or(beside, |plate| plate.width / 2.0);
        // What lies loose between foot and plate ends where the narrower does.
        let half_of = |kind: LayerKind| match kind {
            LayerKind::Foot => foot_half,
            LayerKind::Plate => plate_half,
            _ => foot_half.min(plate_half),
        };
        let mut built = Builder {
            joint,
            bolts: &bolts,
            cut: Vec::new(),
            materials: Vec::new(),
        };
        built.base(model, base_half);
        let of_base = built.cut.len();
        let depth = match &joint.base {
            Base::Rail(base) => base.depth,
            Base::Solid(solid) => solid.thickness,
        };
        let layers = &result.stack.layers;
        let is_base = |kind: LayerKind| matches!(kind, LayerKind::Rail | LayerKind::Solid);
        let split = layers
            .iter()
            .position(|layer| is_base(layer.kind))
            .unwrap_or(layers.len());
        // From the face of the base up, then from its far side down.
        let mut high = 0.0;
        for layer in layers.iter().take(split).rev() {
            built.layer(
                layer.kind,
                &layer.material,
                [high, high + layer.thickness],
                half_of(layer.kind),
            );
            high += layer.thickness;
        }
        let mut low = -depth;
        for layer in layers.iter().skip(split + 1) {
            built.layer(
                layer.kind,
                &layer.material,
                [low - layer.thickness, low],
                half_of(layer.kind),
            );
            low -= layer.thickness;
        }
        let sleeve_end = built.sleeve();
        let tapped = matches!(&joint.base, Base::Solid(solid) if solid.engagement.is_some());
        let nut = (!tapped).then_some([low - NUT * thread.nominal, low]);
        let bolt_end = match &joint.base {
            Base::Solid(solid) if tapped => -solid.engagement.unwrap_or(solid.thickness),
            _ => (high - result.stack.bolt_length).min(low - NUT * thread.nominal),
        };
        let head = HEAD * thread.nominal;
        let bottom = bolt_end.min(-depth);
        let reach = built
            .cut
            .iter()
            .flat_map(|piece| piece.rings.iter().flatten())
            .fold(aside + thread.flats / 2.0, |far, spot| {
                far.max(spot[0].abs())
            });
        let (cut, materials) = (built.cut, built.materials);
        Self {
            of_base,
            bore: bore(joint),
            depth,
            cut,
            materials,
            under_head: high,
            head,
            nut,
            bolt_end,
            threaded: thread.length_on(result.stack.bolt_length),
            sleeve_end,
            heights: [bottom, high + head],
            reach,
            is_channel: is_channel(model, joint),
            bolts,
        }
    }

    pub(super) fn is_finite(&self) -> bool {
        let spots = self
            .cut
            .iter()
            .flat_map(|piece| piece.rings.iter().flatten());
        let [low, high] = self.heights;
        let mut numbers = spots.flatten().chain(&self.heights).chain(&self.bolts);
        numbers.all(|number| number.is_finite())
            && self.bolt_end.is_finite()
            && self.threaded.is_finite()
            && high > low
            && self.reach > 0.0
    }
}

/// A sleeve through the walls needs a hole of its own size.
fn bore(joint: &Joint) -> Option<f64> {
    joint.base.rail()?;
    let sleeve = joint.sleeve.as_ref();
    let through = sleeve.filter(|sleeve| sleeve.seat == Seat::Through);
    Some(through.map_or(joint.bolt.hole, |sleeve| sleeve.hole) / 2.0)
}

fn is_channel(model: &Model, joint: &Joint) -> bool {
    let rail = joint
        .base
        .rail()
        .and_then(|base| model.rails.get(base.rail));
    rail.is_some_and(|rail| matches!(rail.profile, Profile::Channel { .. }))
}

/// Pieces as they are put on each other.
struct Builder<'a> {
    joint: &'a Joint,
    bolts: &'a [f64],
    cut: Vec<Piece>,
    materials: Vec<String>,
}

impl Builder<'_> {
    fn material(&mut self, name: &str) -> usize {
        let known = self.materials.iter().position(|known| known == name);
        known.unwrap_or_else(|| {
            self.materials.push(name.to_owned());
            self.materials.len() - 1
        })
    }

    fn push(&mut self, rings: Vec<Vec<[f64; 2]>>, material: &str, label: Option<Label>) {
        let material = self.material(material);
        self.cut.push(Piece {
            rings,
            material,
            label,
        });
    }

    /// A strip from side to side, or a ring round each bolt, with holes where the bolts cross.
    fn layer(&mut self, kind: LayerKind, material: &str, [low, high]: [f64; 2], half: f64) {
        let hole = self.joint.bolt.hole / 2.0;
        let rings = |[hole, outer]: [f64; 2]| -> Vec<[f64; 2]> {
            let ring = |y: &f64| [[y - outer, y - hole], [y + hole, y + outer]];
            self.bolts.iter().flat_map(ring).collect()
        };
        let sleeve = self.joint.sleeve.as_ref();
        let flange = sleeve.and_then(|sleeve| Some((sleeve, sleeve.shoulder?)));
        let pieces: Vec<[f64; 2]> = match (kind, &self.joint.washer, flange) {
            (LayerKind::Washer, Some(washer), _) => rings([hole, washer.diameter / 2.0]),
            (LayerKind::Flange, _, Some((sleeve, flange))) => {
                rings([sleeve.inner / 2.0, flange.diameter / 2.0])
            }
            _ => between_holes(self.bolts, hole, half),
        };
        let end = pieces.iter().map(|piece| piece[0]).reduce(f64::min);
        for (place, [from, to]) in pieces.into_iter().enumerate() {
            let label = end.filter(|_| place == 0).map(|end| Label {
                what: kind.word(),
                thickness: high - low,
                at: [end, f64::midpoint(low, high)],
            });
            self.push(vec![block([from, low], [to, high])], material, label);
        }
    }

    /// The rail, or the solid part.
    fn base(&mut self, model: &Model, half: f64) {
        match &self.joint.base {
            Base::Solid(solid) => {
                let hole = match solid.engagement {
                    Some(_) => self.joint.bolt.thread.nominal / 2.0,
                    None => self.joint.bolt.hole / 2.0,
                };
                let name = solid.material.name.clone();
                let ends = [-solid.thickness, 0.0];
                if let Some(depth) = solid.engagement.filter(|depth| *depth < solid.thickness) {
                    // Below the bolt the part is whole.
                    self.push(
                        vec![block([-half, -solid.thickness], [half, -depth])],
                        &name,
                        None,
                    );
                    self.strips([-depth, 0.0], hole, half, &name);
                } else {
                    self.strips(ends, hole, half, &name);
                }
            }
            Base::Rail(base) => {
                let Some(rail) = model.rails.get(base.rail) else {
                    return;
                };
                let name = rail.material.name.clone();
                let (depth, wall) = (base.depth, base.wall);
                match rail.profile {
                    Profile::Round { diameter } => {
                        let middle = [0.0, -diameter / 2.0];
                        let rings = vec![
                            circle(middle, diameter / 2.0),
                            circle(middle, diameter / 2.0 - wall),
                        ];
                        self.push(rings, &name, None);
                    }
                    Profile::Box { corner, .. } => {
                        let rings = vec![
                            rounded([-half, -depth], [half, 0.0], corner),
                            rounded(
                                [wall - half, wall - depth],
                                [half - wall, -wall],
                                (corner - wall).max(0.0),
                            ),
                        ];
                        self.push(rings, &name, None);
                    }
                    Profile::Channel { .. } => {
                        let ring = channel(half, depth, wall);
                        self.push(vec![ring], &name, None);
                    }
                }
            }
        }
    }

    fn strips(&mut self, [low, high]: [f64; 2], hole: f64, half: f64, material: &str) {
        for [from, to] in between_holes(self.bolts, hole, half) {
            self.push(vec![block([from, low], [to, high])], material, None);
        }
    }

    /// The sleeves without their flanges, which are layers; returns where they should end.
    fn sleeve(&mut self) -> f64 {
        let (Some(sleeve), Base::Rail(base)) = (&self.joint.sleeve, &self.joint.base) else {
            return 0.0;
        };
        let [low, high] = match sleeve.seat {
            Seat::Through => [-base.depth, 0.0],
            Seat::Inside => [base.wall - base.depth, -base.wall],
        };
        let name = sleeve.material.name.clone();
        let (inner, outer) = (sleeve.inner / 2.0, sleeve.outer / 2.0);
        for &y in self.bolts {
            for side in [-1.0, 1.0] {
                let ring = block([y + side * inner, low], [y + side * outer, high]);
                self.push(vec![ring], &name, None);
            }
        }
        low
    }
}
