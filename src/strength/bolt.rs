//! One bolt: how tight it is, how stiff, how much of the load it takes, what it bears.
//!
//! Order of a calculation: [`tightening`], [`resilience`] and [`clamped`], [`load_share`],
//! what is lost by [`embedding`] and [`thermal`], then the limits: [`yielding`], [`slip`],
//! [`fatigue`], [`head`], [`stripping`], [`resistance`]. [`stiffness_models`] and [`endurance`]
//! hold second models: the first pair shows how far the models are apart, the second is another
//! school of fatigue.

pub mod clamped;
pub mod embedding;
pub mod endurance;
pub mod fatigue;
pub mod head;
pub mod load_share;
pub mod resilience;
pub mod resistance;
pub mod slip;
pub mod stiffness_models;
pub mod stripping;
pub mod thermal;
pub mod tightening;
pub mod yielding;
