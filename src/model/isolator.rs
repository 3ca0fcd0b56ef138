//! What the powertrain rests on: laws of isolators, and what is known beside the law.
//!
//! A kind is one file below this one and one line in `KINDS`. A kind gives a
//! [`Law`] (force and tangent at a deflection); stops, limits, dynamic ratio,
//! loss factor and scatter are the same for every kind and live here.
//!
//! Section `[isolator.NAME]`, keys of every kind; those of one kind are in its file:
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `kind` | how it is described: `"rates"`, `"solid"` | word | needed |
//! | `stops` | free travel and rate of its stops: see [`stop`] | table | none |
//! | `limits` | `{ u, v, w }`: largest deflection either way for a long life | lengths | not checked |
//! | `dynamic_ratio` | rate in vibration over static rate, 0.5 to 10 | ratio | by kind |
//! | `loss_factor` | loss factor in vibration, 0 to 2 | ratio | by kind |
//! | `scatter` | half-width of the band of the real rate, 0 to 0.9 | ratio | by kind |
//! | `tension` | `"allowed"` or `"avoid"`: whether it may be pulled along `w` | word | `"allowed"` |

pub mod altered;
pub mod rates;
pub mod solid;
pub mod stop;

use std::sync::Arc;

use super::reader::{Bound, Section, quoted, unknown_name};
use crate::diagnostic::{Code, Diagnostic};
use crate::spatial::{Mat3, Vec3};
use crate::units::Quantity;
use stop::AxisStops;

/// One kind of isolator: its word in the file, how its law is read, and what is usual for it.
pub(crate) struct Kind {
    /// Word of the file.
    pub(crate) word: &'static str,
    /// Reads the keys of the law.
    pub(crate) read_law: fn(&Section<'_>) -> Option<Arc<dyn Law>>,
    /// What is taken where the file is silent.
    pub(crate) usual: Usual,
}

/// Values of a kind that are taken where the file is silent, all common practice.
pub(crate) struct Usual {
    /// Ratio of the rate in vibration to the static rate.
    pub(crate) dynamic_ratio: f64,
    /// Loss factor in vibration.
    pub(crate) loss_factor: f64,
    /// Half-width of the band of the real rate.
    pub(crate) scatter: f64,
    /// What they hold for, in words.
    pub(crate) of: &'static str,
}

/// Every kind that a file can name.
const KINDS: &[Kind] = &[rates::KIND, solid::KIND];

/// Force, tangent and energy of a law at one deflection, in mount axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LawPoint {
    /// Gradient of the energy \[N\]: force that holds the deflection, so the powertrain feels its negative.
    pub force: Vec3,
    /// Derivative of the force [N/m], symmetric.
    pub tangent: Mat3,
    /// Stored energy \[J\], zero at no deflection.
    pub energy: f64,
}

/// Elastic law of one isolator kind in its own axes u, v, w.
pub trait Law: std::fmt::Debug + Send + Sync {
    /// Force, tangent and energy at the isolator's own deflection `x` \[m\], powertrain side minus chassis side.
    fn at(&self, x: &Vec3) -> LawPoint;
}

/// Whether an isolator may be pulled along its own axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tension {
    /// Pulling is as good as pushing (a bush, a captive mount).
    Allowed,
    /// The maker or the design wants it pushed only; pulling is a failed check.
    Avoid,
}

/// Which direction of the list below a limit or a verdict speaks of.
pub const AXIS_NAMES: [&str; 3] = ["u", "v", "w"];

/// One isolator of the file: a law and what belongs to the part beside it.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Isolator {
    /// Name in the file.
    pub name: String,
    /// Kind as written in the file.
    pub kind: &'static str,
    /// Static law of the rubber or metal, without stops.
    pub law: Arc<dyn Law>,
    /// Stops along u, v, w, in parallel to the law.
    pub stops: [AxisStops; 3],
    /// Largest deflection either way for a long life, along u, v, w \[m\].
    pub limits: [Option<f64>; 3],
    /// Ratio of the rate in vibration to the static rate.
    pub dynamic_ratio: f64,
    /// Loss factor in vibration (imaginary part over real part of the dynamic rate).
    pub loss_factor: f64,
    /// Half-width of the band the real rate lies in, as a share of the rate.
    pub scatter: f64,
    /// Whether it may be pulled along `w`.
    pub tension: Tension,
}

/// What an isolator does at a deflection, stops included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IsolatorState {
    /// Law and stops together.
    pub point: LawPoint,
    /// Part of the tangent that the stops give [N/m], a diagonal.
    pub stop_tangent: Vec3,
    /// Whether a stop is touched, along u, v, w.
    pub on_stop: [bool; 3],
}

impl Isolator {
    /// An isolator with a law and nothing else: no stops, no limits, dynamic rate equal to the static one, no loss, no scatter.
    #[must_use]
    pub fn new(name: impl Into<String>, kind: &'static str, law: Arc<dyn Law>) -> Self {
        Self {
            name: name.into(),
            kind,
            law,
            stops: [AxisStops::NONE; 3],
            limits: [None; 3],
            dynamic_ratio: 1.0,
            loss_factor: 0.0,
            scatter: 0.0,
            tension: Tension::Allowed,
        }
    }

    /// Force, tangent and energy at the isolator's own deflection `x` \[m\], stops included.
    #[must_use]
    pub fn at(&self, x: &Vec3) -> IsolatorState {
        let mut state = IsolatorState {
            point: self.law.at(x),
            stop_tangent: Vec3::zeros(),
            on_stop: [false; 3],
        };
        for (axis, stops) in self.stops.iter().enumerate() {
            let Some(contact) = stops.contact(x[axis]) else {
                continue;
            };
            state.point.force[axis] += contact.force;
            state.point.tangent[(axis, axis)] += contact.tangent;
            state.point.energy += contact.energy;
            state.stop_tangent[axis] = contact.tangent;
            state.on_stop[axis] = true;
        }
        state
    }

    /// Storage and loss parts of the dynamic rate [N/m] about the deflection of `state`.
    ///
    /// The dynamic ratio and the loss factor belong to the law, not to the stops.
    #[must_use]
    pub fn dynamic_rate(&self, state: &IsolatorState) -> (Mat3, Mat3) {
        let stops = Mat3::from_diagonal(&state.stop_tangent);
        let of_law = (state.point.tangent - stops) * self.dynamic_ratio;
        (of_law + stops, of_law * self.loss_factor)
    }
}

/// Reads one `[isolator.NAME]`; `None` when something in it is wrong.
pub(super) fn read(name: &str, section: Section<'_>) -> Option<Isolator> {
    section.must_have(&[("kind", "how the isolator is described, such as \"rates\"")]);
    // Without its kind nobody knows which keys it takes, so they are not judged.
    let word = section.text("kind")?;
    let Some(kind) = KINDS.iter().find(|kind| kind.word == word) else {
        let words: Vec<&str> = KINDS.iter().map(|kind| kind.word).collect();
        section.note(
            unknown_name(
                Code::UnknownIsolatorKind,
                format!("unknown kind of isolator `{name}`: {}", quoted(word)),
                section.span_of("kind"),
                word,
                &words,
            )
            .label("not a kind"),
        );
        return None;
    };
    let law = (kind.read_law)(&section);
    let stops = stop::read(&section);
    let limits = read_limits(&section);
    let or_usual = |key, bound, usual: f64, meaning: &str| {
        let given = section.ratio(key, bound);
        if !section.has(key) {
            let of = kind.usual.of;
            section.assume(
                key,
                format!("{usual}: {meaning} usual for {of} (common practice)"),
            );
        }
        given.unwrap_or(usual)
    };
    let dynamic_ratio = or_usual(
        "dynamic_ratio",
        Bound::Within(0.5, 10.0),
        kind.usual.dynamic_ratio,
        "ratio of dynamic to static rate",
    );
    let loss_factor = or_usual(
        "loss_factor",
        Bound::Within(0.0, 2.0),
        kind.usual.loss_factor,
        "loss factor",
    );
    let scatter = or_usual(
        "scatter",
        Bound::Within(0.0, 0.9),
        kind.usual.scatter,
        "scatter of the rate",
    );
    let tension = section.choice(
        "tension",
        &[("allowed", Tension::Allowed), ("avoid", Tension::Avoid)],
    );
    if let (Some(stops), Some(limits)) = (&stops, &limits) {
        warn_of_idle_limits(&section, stops, limits);
    }
    section.finish();
    Some(Isolator {
        stops: stops?,
        limits: limits?,
        dynamic_ratio,
        loss_factor,
        scatter,
        tension: tension.unwrap_or(Tension::Allowed),
        ..Isolator::new(name, kind.word, law?)
    })
}

/// Limits along u, v, w; none when the key is absent.
fn read_limits(section: &Section<'_>) -> Option<[Option<f64>; 3]> {
    if !section.has("limits") {
        return Some([None; 3]);
    }
    let limits = section.section("limits")?;
    let read = AXIS_NAMES.map(|axis| limits.quantity(axis, Quantity::Length, Bound::SIZE));
    limits.finish();
    Some(read)
}

/// A limit that lies beyond the stops on both sides limits little.
fn warn_of_idle_limits(section: &Section<'_>, stops: &[AxisStops; 3], limits: &[Option<f64>; 3]) {
    for ((axis, stops), limit) in AXIS_NAMES.into_iter().zip(stops).zip(limits) {
        let (Some(lower), Some(upper), Some(limit)) = (stops.lower, stops.upper, *limit) else {
            continue;
        };
        if limit <= upper.max(-lower) {
            continue;
        }
        let place = section
            .section("limits")
            .and_then(|limits| limits.span_of(axis));
        section.note(
            Diagnostic::warning(
                Code::LimitBeyondStop,
                format!(
                    "{} is beyond both stops along {axis}: {:.1} mm, stops at {:.1} mm and {:.1} mm",
                    section.key_name("limits"),
                    limit * 1e3,
                    lower * 1e3,
                    upper * 1e3
                ),
                place,
            )
            .label("the stop comes first")
            .help("give the deflection that the rubber bears for a long life, or check the stops"),
        );
    }
}
