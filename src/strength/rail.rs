//! Hollow rails that are squeezed, pushed or pulled on a face.
//!
//! Four limits; the smallest rules. Collapse of the face ([`face`],
//! [`plate_on_face`]; of a round tube [`round_local`]), punching ([`punching`]), the side
//! walls ([`side_wall`], [`web_crippling`]), and squeezing, which gives stiffness and first
//! yield ([`box_squeeze`], [`round_squeeze`], and [`local`] for what patches, ends and
//! holes do to them). [`couple`] turns a moment on a face into two forces.

pub mod box_squeeze;
pub mod couple;
pub mod face;
pub mod local;
pub mod plate_on_face;
pub mod punching;
pub mod round_local;
pub mod round_squeeze;
pub mod side_wall;
pub mod web_crippling;

/// Rectangular hollow section of one wall thickness, by its outside sizes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BoxRail {
    /// Width of the loaded face, outside \[m\].
    pub face: f64,
    /// Height square to the loaded face, outside \[m\].
    pub height: f64,
    /// Wall \[m\], below half of both sizes.
    pub wall: f64,
}

impl BoxRail {
    /// Width of the loaded face between the middles of the side walls \[m\].
    #[must_use]
    pub fn middle_width(&self) -> f64 {
        self.face - self.wall
    }

    /// Height between the middles of the loaded faces \[m\].
    #[must_use]
    pub fn middle_height(&self) -> f64 {
        self.height - self.wall
    }
}

/// Round tube.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoundRail {
    /// Outer diameter \[m\].
    pub outer: f64,
    /// Wall \[m\], below half of the diameter.
    pub wall: f64,
}

impl RoundRail {
    /// Radius of the middle of the wall \[m\].
    #[must_use]
    pub fn middle_radius(&self) -> f64 {
        (self.outer - self.wall) / 2.0
    }
}

/// Evenly loaded rectangle on a face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// Along the rail \[m\].
    pub length: f64,
    /// Across the face; on a round tube along the arc \[m\].
    pub width: f64,
}
