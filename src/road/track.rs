//! A made track of a stated roughness.

use std::f64::consts::TAU;

use rand::rngs::ChaCha8Rng;
use rand::{RngExt, SeedableRng};

use super::roughness::{Band, Roughness};

/// Waves above which a track is refused.
const MOST_WAVES: f64 = 1e6;

/// A track that repeats after its length.
#[derive(Debug, Clone, PartialEq)]
pub struct Track {
    length: f64,
    waves: Vec<Wave>,
}

/// One cosine of a track.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wave {
    /// Spatial frequency \[cycle/m\].
    pub frequency: f64,
    /// Half its height from trough to crest \[m\].
    pub amplitude: f64,
    /// Phase at the start \[rad\].
    pub phase: f64,
}

/// Why no track was made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TrackError {
    /// The length is not a finite number above zero.
    Length,
    /// The track is shorter than the longest wave of the band.
    TooShort,
    /// The band and the length ask for more than a million waves.
    TooManyWaves,
}

impl std::fmt::Display for TrackError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Length => "the length of the track is not above zero",
            Self::TooShort => "the track is shorter than the longest wave of the band",
            Self::TooManyWaves => "the track would have more than a million waves",
        })
    }
}

impl std::error::Error for TrackError {}

impl Track {
    /// Makes a track of a roughness in a band, `length` \[m\] long, with phases from `seed`.
    ///
    /// The same seed gives the same track on every machine.
    ///
    /// # Equation
    ///   z(x) = Σ Ai cos(2π ni x + φi),   ni = i/L,   Ai²/2 = ∫ Gd dn over half a step either side,
    ///   the first and last of them cut at, or reaching to, the ends of the band
    ///
    /// The phases are even between 0 and 2π. Whole waves in the length make the mean square of
    /// one track equal to the integral of the density, not only that of many tracks.
    ///
    /// # Range
    /// Length at least that of the longest wave of the band.
    ///
    /// # Source
    /// Sum of cosines with √(2 Gd Δn): Agostinacchio et al., European Transport Research Review
    /// (2014), DOI 10.1007/s12544-013-0127-8. Integrals in place of the product: derived.
    ///
    /// # Errors
    /// [`TrackError`].
    pub fn synthesise(
        roughness: Roughness,
        band: Band,
        length: f64,
        seed: u64,
    ) -> Result<Self, TrackError> {
        if !(length.is_finite() && length > 0.0) {
            return Err(TrackError::Length);
        }
        let (from, to) = (band.from() * length, band.to() * length);
        if to - from > MOST_WAVES {
            return Err(TrackError::TooManyWaves);
        }
        // Rounding must not lose the wave that is exactly as long as the track.
        if from < 1.0 - 1e-9 {
            return Err(TrackError::TooShort);
        }
        let mut random = ChaCha8Rng::seed_from_u64(seed);
        let mut waves = Vec::new();
        let (mut low, mut place) = (from, from.round().max(1.0));
        while low < to {
            let next = place + 1.0;
            let high = if next > to { to } else { place + 0.5 };
            let share = Band::new(low / length, high / length);
            if let Some(share) = share {
                waves.push(Wave {
                    frequency: place / length,
                    amplitude: std::f64::consts::SQRT_2 * roughness.rms(share),
                    phase: TAU * random.random::<f64>(),
                });
            }
            (low, place) = (high, next);
        }
        Ok(Self { length, waves })
    }

    /// Length after which it repeats \[m\].
    #[must_use]
    pub fn length(&self) -> f64 {
        self.length
    }

    /// Its waves, the longest first.
    #[must_use]
    pub fn waves(&self) -> &[Wave] {
        &self.waves
    }

    /// Height \[m\] at a distance from the start \[m\].
    #[must_use]
    pub fn height(&self, at: f64) -> f64 {
        self.waves
            .iter()
            .map(|wave| wave.amplitude * wave.angle(at).cos())
            .sum()
    }

    /// Slope, rise over run, at a distance from the start \[m\]; times the speed, the vertical speed of a wheel.
    ///
    /// # Equation
    ///   dz/dx = −Σ 2π ni Ai sin(2π ni x + φi)
    ///
    /// # Source
    /// Derived.
    #[must_use]
    pub fn slope(&self, at: f64) -> f64 {
        self.waves
            .iter()
            .map(|wave| -TAU * wave.frequency * wave.amplitude * wave.angle(at).sin())
            .sum()
    }

    /// Root mean square height over the whole length \[m\].
    ///
    /// # Equation
    ///   rms = √(Σ Ai²/2)
    ///
    /// # Source
    /// Derived: whole waves of different length do not add to each other's mean square.
    #[must_use]
    pub fn rms(&self) -> f64 {
        let square: f64 = self.waves.iter().map(|wave| wave.amplitude.powi(2)).sum();
        (square / 2.0).sqrt()
    }
}

impl Wave {
    fn angle(&self, at: f64) -> f64 {
        TAU * self.frequency * at + self.phase
    }
}
