//! Kind `hydraulic`: a rubber mount with fluid inside, which swings in a narrow track along w.
//!
//! A mount that is described by its chambers has a pumping area A, chamber
//! compliances C₁ (upper) and C₂ (lower) in volume over pressure, and in the
//! track an inertance I and a resistance R. These become `upper` = A²/C₁,
//! `lower` = A²/C₂, `mass` = A² I, `damping` = A² R: with A 2500 mm², C₁
//! 3e-11 m⁵/N, C₂ 2.6e-9 m⁵/N, I 3.8e6 kg/m⁴ and R 1.05e8 N s/m⁵ they are
//! 208 N/mm, 2.4 N/mm, 23.8 kg and 656 N s/m.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `rates` | static rates of the rubber alone along u, v, w | linear rate | needed |
//! | `track` | the fluid: the four keys below | table | needed |
//! | `track.upper` | rate of the upper chamber's bulge, as felt along w | linear rate | needed |
//! | `track.lower` | rate of the lower chamber's membrane, as felt along w, may be 0 | linear rate | needed |
//! | `track.mass` | of the fluid in the track, as felt along w: its own mass times the square of the ratio of pumping area to track area | mass | needed |
//! | `track.damping` | resistance of the track, as felt along w | damping | needed |
//! | `rubber` | what the rubber is: see [`rubber`](super::rubber) | word | `"natural"` |

use std::sync::Arc;

use super::fluid::Fluid;
use super::rates::{self, Rates};
use super::rubber::read_compound;
use super::{Description, Kind};
use crate::diagnostic::Code;
use crate::model::reader::{Bound, Section};
use crate::spatial::Vec3;
use crate::units::{Digits, Quantity, Shown, show};

pub(super) const KIND: Kind = Kind {
    word: "hydraulic",
    gloss: "rubber with fluid inside",
    others: &["hydro", "fluid", "hydromount", "hydraulic mount"],
    read,
};

/// Resistances that a track may have [N s/m]; without any the fluid would swing for ever.
const DAMPING: Bound = Bound::Stated(1e-3, 1e9, "above zero and at most 1e9 N s/m");

fn read(section: &Section<'_>) -> Option<Description> {
    section.must_have(&[
        (
            "rates",
            "static rates of the rubber along u, v, w, such as \"90, 90, 225 N/mm\"",
        ),
        (
            "track",
            "the fluid, such as `track = { upper = \"208 N/mm\", lower = \"2.4 N/mm\", \
             mass = \"23.8 kg\", damping = \"656 N s/m\" }`",
        ),
    ]);
    let rates = section.per_axis("rates", Quantity::LinearRate, Bound::RATE_OR_NONE);
    if let Some(rates) = rates
        && rates.z <= 0.0
    {
        section.refuse(
            "rates",
            Code::OutOfRange,
            format!(
                "{} is zero along w, where the rubber carries the load",
                section.key_name("rates")
            ),
            "give the rates of the rubber along u, v, w",
        );
        return None;
    }
    let compound = read_compound(section);
    let fluid = section.section_like(
        "track",
        "{ upper = \"208 N/mm\", lower = \"2.4 N/mm\", mass = \"23.8 kg\", damping = \"656 N s/m\" }",
    ).and_then(read_track);
    let (rates, fluid) = (rates?, fluid?);
    let along_w = rates.z + fluid.static_rate();
    let law = Rates {
        rates: Vec3::new(rates.x, rates.y, along_w),
    };
    Some(Description {
        fluid: Some(fluid),
        compound: Some(compound?),
        remarks: remarks(&fluid, rates.z),
        ..Description::new(Arc::new(law), rates::usual())
    })
}

fn read_track(track: Section<'_>) -> Option<Fluid> {
    track.must_have(&[
        (
            "upper",
            "rate of the upper chamber's bulge, such as \"208 N/mm\"",
        ),
        (
            "lower",
            "rate of the lower chamber, such as \"2.4 N/mm\", or \"0 N/mm\"",
        ),
        (
            "mass",
            "of the fluid as felt at the rubber, such as \"23.8 kg\"",
        ),
        (
            "damping",
            "resistance of the track as felt at the rubber, such as \"656 N s/m\"",
        ),
    ]);
    let upper = track.quantity("upper", Quantity::LinearRate, Bound::RATE);
    let lower = track.quantity("lower", Quantity::LinearRate, Bound::RATE_OR_NONE);
    let mass = track.quantity("mass", Quantity::Mass, Bound::MASS);
    let damping = track.quantity("damping", Quantity::Damping, DAMPING);
    track.finish();
    Some(Fluid {
        upper: upper?,
        lower: lower?,
        mass: mass?,
        damping: damping?,
    })
}

/// What a reader of a data sheet looks for; `rubber` is the static rate of the rubber along w [N/m].
fn remarks(fluid: &Fluid, rubber: f64) -> Vec<String> {
    let hertz = |f| show(f, Shown::Hertz, Digits::Significant(3));
    let rate = |k| show(k, Shown::NewtonPerMillimetre, Digits::Significant(3));
    let peak = fluid.largest_loss(rubber);
    vec![
        format!(
            "The fluid swings in its track at {} while the rubber is held",
            hertz(fluid.track_frequency_hz())
        ),
        format!(
            "Along w rubber and fluid have {} far below that frequency and {} far above it, before the rubber stiffens in vibration",
            rate(rubber + fluid.static_rate()),
            rate(rubber + fluid.upper)
        ),
        format!(
            "The fluid turns most motion into heat at {}: a loss angle of {} there, the rubber's own loss left out",
            hertz(peak.frequency_hz),
            show(peak.angle, Shown::Degree, Digits::Decimals(0))
        ),
        "The resistance of a track grows with the motion, so these hold near the amplitude it was measured at; a decoupler, which lets small motion past the track, is not in them".to_owned(),
    ]
}
