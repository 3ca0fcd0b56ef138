//! What the clamp force does to the rail and to the sleeve in it.

use crate::model::Model;
use crate::model::joint::{Base, Joint, Seat, Sleeve};
use crate::model::rail::Profile;
use crate::report::content::{Line, quantity};
use crate::study::joint::JointResult;
use crate::study::joint::rail_clamp::{RailClamp, SleeveShare};
use crate::units::{Digits, Shown};

use super::force;

/// The rail with its strength, and the sleeve with its share.
#[must_use]
pub fn lines(model: &Model, joint: &Joint, result: &JointResult) -> Vec<Line> {
    let base = match &joint.base {
        Base::Solid(solid) => {
            return vec![Line::new(
                "bolted to",
                match solid.engagement {
                    Some(length) => format!(
                        "a solid part of {}, {} of thread in it",
                        solid.material.name,
                        millimetres(length)
                    ),
                    None => format!(
                        "a solid part of {}, {} thick",
                        solid.material.name,
                        millimetres(solid.thickness)
                    ),
                },
            )];
        }
        Base::Rail(base) => base,
    };
    let Some(rail) = model.rails.get(base.rail) else {
        return Vec::new();
    };
    let mut lines = vec![Line::new(
        "rail",
        format!(
            "{} of {}: the bolts cross {}, wall {}",
            rail.name,
            rail.material.name,
            millimetres(base.depth),
            millimetres(base.wall)
        ),
    )];
    if let Profile::Channel { .. } = rail.profile {
        lines.push(Line::new(
            "open channel",
            "nothing holds its flanges apart: fit a spacer block the full depth around each bolt; \
             its squeeze is not computed",
        ));
    }
    if let Some(clamp) = &result.rail {
        lines.extend(walls(clamp));
        if let (Some(sleeve), Some(share)) = (&joint.sleeve, &clamp.sleeve) {
            lines.extend(self::sleeve(sleeve, share));
        }
    }
    lines
}

fn walls(clamp: &RailClamp) -> Vec<Line> {
    let mut strength = vec![
        format!("first yield at {}", force(clamp.first_yield)),
        format!("folds at {}", force(clamp.plastic)),
    ];
    if let Some(face) = clamp.face {
        strength.push(format!("one face gives way at {}", force(face)));
    }
    strength.push(format!("punched at {}", force(clamp.punching)));
    if let Some(side) = clamp.side_walls {
        strength.push(format!("side walls crushed at {}", force(side)));
    }
    let rough = if clamp.is_within_range {
        ""
    } else {
        "; its sizes lie outside those that the working length was fitted to, so take it as a rough guess"
    };
    vec![
        Line::new(
            "squeeze of the rail",
            format!(
                "{} at each bolt, {} of its length working{rough}",
                quantity::with_unit(clamp.squeeze_rate, Shown::KilonewtonPerMillimetre),
                quantity::with_digits(
                    clamp.effective_length,
                    Shown::Millimetre,
                    Digits::Decimals(0)
                ),
            ),
        ),
        Line::new("what it bears", strength.join(", ")),
        Line::new(
            "force in its walls",
            format!(
                "{} at the most preload, with the plates that stand on its sides; {} of it bends a face",
                force(clamp.walls),
                quantity::share(clamp.face_share)
            ),
        ),
        Line::new(
            "pressed on the rail",
            format!("{} at each bolt after all losses", force(clamp.gripped)),
        ),
    ]
}

fn sleeve(sleeve: &Sleeve, share: &SleeveShare) -> Vec<Line> {
    let seat = match sleeve.seat {
        Seat::Through => "through both walls",
        Seat::Inside => "between the walls",
    };
    let fit = if share.is_proud {
        format!(
            "stands {} proud: the bracket sits on its ends alone",
            hundredths(-sleeve.gap)
        )
    } else {
        let (gap, allowed) = quantity::pair(sleeve.gap, share.allowed_gap, Shown::Millimetre);
        format!(
            "{gap} short; up to {allowed} it still carries and no wall yields; {}",
            if share.carries {
                format!(
                    "{} go into the walls before it carries",
                    force(share.gap_force)
                )
            } else {
                "the preload does not close the gap: the walls carry all".to_owned()
            }
        )
    };
    vec![
        Line::new(
            "sleeve",
            format!(
                "{} outside, {} inside, {} long, of {}, {seat}{}",
                millimetres(sleeve.outer),
                millimetres(sleeve.inner),
                hundredths(sleeve.length),
                sleeve.material.name,
                if sleeve.weld.is_some() {
                    ", welded in"
                } else {
                    ""
                }
            ),
        ),
        Line::new("its fit", fit),
        Line::new(
            "force in it",
            format!(
                "{}, {}",
                force(share.force),
                quantity::with_unit(share.stress, Shown::Megapascal)
            ),
        ),
    ]
}

fn millimetres(length: f64) -> String {
    quantity::with_unit(length, Shown::Millimetre)
}

/// Lengths where hundredths of a millimetre matter.
fn hundredths(length: f64) -> String {
    quantity::with_digits(length, Shown::Millimetre, Digits::Decimals(2))
}
