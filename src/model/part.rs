//! Section `[[part]]`: one supported item with mass.

use super::mass::{MassProperties, Shape};
use nalgebra::Rotation3;

/// One supported item.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Part {
    /// Name in the file.
    pub name: String,
    /// Mass, centre of gravity and inertia in vehicle axes.
    pub mass: MassProperties,
    /// Shape for the drawing, when the file gives one.
    pub shape: Option<Shape>,
    /// Share of the shape's inertia that was counted; `None` when the tensor was given.
    pub fill: Option<f64>,
    /// `R_VE`: takes the part's own axes to vehicle axes.
    pub turned: Rotation3<f64>,
}
