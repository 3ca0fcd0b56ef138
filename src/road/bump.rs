//! A bump or pothole as the path of a wheel against time.

use super::pulse::{Pulse, Shape};

/// Shape of a bump along the road.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Profile {
    /// Half a sine: a kink at either end, where the wheel gains speed at once.
    HalfSine,
    /// Versed sine: smooth at either end.
    VersedSine,
}

/// A bump, or a pothole where its height is negative.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bump {
    profile: Profile,
    height: f64,
    length: f64,
}

/// Motion of the point where a wheel stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motion {
    /// Height above the level road \[m\], up positive.
    pub height: f64,
    /// Its rate \[m/s\].
    pub velocity: f64,
    /// Its second rate \[m/s²\]; the blow at a kink is not in it.
    pub acceleration: f64,
}

impl Bump {
    /// A bump by its height \[m\], negative for a pothole, and its length along the road \[m\].
    ///
    /// `None` when it has no length or a number is not finite.
    #[must_use]
    pub fn new(profile: Profile, height: f64, length: f64) -> Option<Self> {
        (height.is_finite() && length.is_finite() && length > 0.0).then_some(Self {
            profile,
            height,
            length,
        })
    }

    /// A pothole by its depth and length along the road \[m\], entered by a wheel of a radius \[m\].
    ///
    /// A versed sine as deep as the wheel reaches. `None` when depth, length or radius is not
    /// above zero or not finite.
    #[must_use]
    pub fn pothole(depth: f64, length: f64, wheel_radius: f64) -> Option<Self> {
        let reached = depth_reached(depth, length, wheel_radius)?;
        Self::new(Profile::VersedSine, -reached, length)
    }

    /// Height \[m\], negative for a pothole.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.height
    }

    /// The bump crossed at a speed \[m/s\]; `None` unless the speed is above zero and finite.
    #[must_use]
    pub fn crossed_at(&self, speed: f64) -> Option<Crossing> {
        if !(speed.is_finite() && speed > 0.0) {
            return None;
        }
        let shape = match self.profile {
            Profile::HalfSine => Shape::HalfSine,
            Profile::VersedSine => Shape::VersedSine,
        };
        Pulse::new(shape, self.height, self.length / speed).map(Crossing)
    }
}

/// How deep a rigid wheel drops into a hole with sharp edges \[m\].
///
/// `None` when a number is not above zero or not finite.
///
/// # Equation
///   L < 2R:  least of D and R − √(R² − L²/4);   else D
///
///   D  depth, L length of the hole along the road, R radius of the wheel   \[m\]
///
/// # Range
/// The tyre is taken as rigid: a soft one folds into the hole and reaches deeper. At speed a
/// wheel may fly across before it has fallen that far.
///
/// # Source
/// Derived: the wheel rests on both edges at once.
#[must_use]
pub fn depth_reached(depth: f64, length: f64, wheel_radius: f64) -> Option<f64> {
    let sound = [depth, length, wheel_radius]
        .iter()
        .all(|size| size.is_finite() && *size > 0.0);
    if !sound {
        return None;
    }
    let half = length / 2.0;
    if half >= wheel_radius {
        return Some(depth);
    }
    // As a quotient: a short hole must not vanish in the difference of two radii.
    let across = half * half / (wheel_radius + (wheel_radius * wheel_radius - half * half).sqrt());
    Some(depth.min(across))
}

/// A bump crossed at a steady speed; the wheel meets it at time 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crossing(Pulse);

impl Crossing {
    /// How long the wheel is on it \[s\].
    #[must_use]
    pub fn duration(&self) -> f64 {
        self.0.duration()
    }

    /// Path of the wheel at a time \[s\] from where it meets the bump; level outside.
    ///
    /// # Equation
    ///   half sine:    z = H sin(π v t/L)
    ///   versed sine:  z = H (1 − cos(2π v t/L))/2
    ///
    ///   H  height, L length \[m\], v speed \[m/s\]
    ///
    /// # Range
    /// The wheel stays on the road and is small against the bump.
    ///
    /// # Source
    /// Common practice for bumps in simulation; derivatives derived.
    #[must_use]
    pub fn motion(&self, time: f64) -> Motion {
        let [height, velocity, acceleration] = self.0.at(time);
        Motion {
            height,
            velocity,
            acceleration,
        }
    }

    /// Vertical speed that the wheel gains at once where it meets the bump \[m/s\], up positive;
    /// zero for a versed sine. It gains the same again where it leaves.
    ///
    /// # Equation
    ///   half sine:  Δv = π H v/L
    ///
    /// # Source
    /// Derived: slope at the kink times speed.
    #[must_use]
    pub fn kick(&self) -> f64 {
        self.motion(0.0).velocity
    }

    /// Largest vertical acceleration of the wheel between the ends \[m/s²\], as a magnitude.
    ///
    /// # Equation
    ///   half sine:  π² H v²/L²        versed sine:  2 π² H v²/L²
    ///
    /// # Source
    /// Derived: at the top; of a versed sine at its ends as well.
    #[must_use]
    pub fn largest_acceleration(&self) -> f64 {
        self.motion(self.duration() / 2.0).acceleration.abs()
    }
}
