//! Section `[rail.NAME]`: the profile that a joint is bolted to.
//!
//! `width` lies across the vehicle and `height` up when the rail runs forward; a joint
//! says which way its rail runs. A channel has its web upright, of `height`, and two
//! flanges of `width`. All sizes are outside ones.
//!
//! | key | meaning | unit | default |
//! |---|---|---|---|
//! | `section` | `"box"`, `"round"` or `"channel"` | word | needed |
//! | `width` | of a box or channel | length | needed for these |
//! | `height` | of a box or channel | length | needed for these |
//! | `diameter` | of a round tube | length | needed for it |
//! | `wall` | thickness, below half of every size | length | needed |
//! | `corner` | outside radius of the corners, at most half of every size; not of a round tube | length | twice the wall |
//! | `material` | listed or `[material.NAME]`: see [`material`](super::material) | name | needed |
//! | `weldable` | `false` when nothing may be welded to it | flag | `true` |
//! | `coating` | `"bare"`, `"zinc plated"`, `"hot-dip zinc"`, `"painted"`, `"powder coated"`, `"anodised"` | word | `"bare"` |

use super::material::{Catalogue, Material, Surface, read_surface};
use super::reader::{Bound, Section};
use crate::diagnostic::Code;
use crate::units::{Digits, Quantity, Shown, show};

/// Walls of anything that is a rail \[m\].
const WALL: Bound = Bound::Stated(1e-4, 0.1, "between 0.1 mm and 100 mm");

/// Outside shape of a rail.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Profile {
    /// Closed, with four walls.
    Box {
        /// Width \[m\].
        width: f64,
        /// Height \[m\].
        height: f64,
        /// Outside radius of the corners \[m\].
        corner: f64,
    },
    /// Closed and round.
    Round {
        /// Diameter \[m\].
        diameter: f64,
    },
    /// Open: an upright web with two flanges. Nothing holds its flanges apart but a spacer.
    Channel {
        /// Width of the flanges \[m\].
        width: f64,
        /// Height of the web \[m\].
        height: f64,
        /// Outside radius of the corners \[m\].
        corner: f64,
    },
}

/// Which size of a rail the bolts cross.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Through {
    /// The width of a box or channel.
    Width,
    /// The height of a box or channel.
    Height,
    /// The diameter of a round tube.
    Diameter,
}

/// A rail, checked.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Rail {
    /// Name in the file.
    pub name: String,
    /// Outside shape.
    pub profile: Profile,
    /// Thickness of the wall \[m\].
    pub wall: f64,
    /// What it is made of.
    pub material: Material,
    /// Whether something may be welded to it.
    pub weldable: bool,
    /// What covers it.
    pub surface: Surface,
}

impl Profile {
    /// Outside size that bolts cross \[m\], and that of the face they enter by, across the rail \[m\]; `None` where the profile has no such size.
    #[must_use]
    pub fn crossed(self, through: Through) -> Option<(f64, f64)> {
        match (self, through) {
            (
                Self::Box { width, height, .. } | Self::Channel { width, height, .. },
                Through::Width,
            ) => Some((width, height)),
            (
                Self::Box { width, height, .. } | Self::Channel { width, height, .. },
                Through::Height,
            ) => Some((height, width)),
            (Self::Round { diameter }, Through::Diameter) => Some((diameter, diameter)),
            _ => None,
        }
    }

    /// The smaller of its outside sizes \[m\].
    #[must_use]
    pub fn smallest(self) -> f64 {
        match self {
            Self::Box { width, height, .. } | Self::Channel { width, height, .. } => {
                width.min(height)
            }
            Self::Round { diameter } => diameter,
        }
    }
}

#[derive(Clone, Copy)]
enum Sort {
    Box,
    Round,
    Channel,
}

/// Reads one `[rail.NAME]`; `None` when something in it is wrong.
pub(super) fn read(name: &str, section: Section<'_>, materials: &Catalogue<'_>) -> Option<Rail> {
    section.must_have(&[
        ("section", "its shape: \"box\", \"round\" or \"channel\""),
        ("wall", "thickness of its wall, such as \"3 mm\""),
        ("material", "what it is made of, such as \"S355\""),
    ]);
    let wall = section.quantity("wall", Quantity::Length, WALL);
    let material = materials.pick(&section, wall);
    let surface = read_surface(&section);
    let weldable = section.flag("weldable");
    let may_weld = !section.has("weldable");
    if may_weld {
        section.assume("weldable", "true: nothing forbids to weld to it");
    }
    // Without its shape nobody knows which sizes it takes, so they are not judged.
    let sort = section.choice(
        "section",
        &[
            ("box", Sort::Box),
            ("round", Sort::Round),
            ("channel", Sort::Channel),
        ],
    )?;
    let profile = read_profile(&section, sort, wall);
    section.finish();
    Some(Rail {
        name: name.to_owned(),
        profile: profile?,
        wall: wall?,
        material: material?,
        weldable: if may_weld { true } else { weldable? },
        surface: surface?,
    })
}

fn read_profile(section: &Section<'_>, sort: Sort, wall: Option<f64>) -> Option<Profile> {
    let length = |key| section.quantity(key, Quantity::Length, Bound::SIZE);
    let profile = if let Sort::Round = sort {
        section.must_have(&[("diameter", "outside, such as \"50 mm\"")]);
        Profile::Round {
            diameter: length("diameter")?,
        }
    } else {
        section.must_have(&[
            ("width", "outside, such as \"60 mm\""),
            ("height", "outside, such as \"120 mm\""),
        ]);
        let (width, height) = (length("width"), length("height"));
        let corner = section.quantity("corner", Quantity::Length, Bound::TRAVEL);
        let has_corner = section.has("corner");
        let (width, height, wall) = (width?, height?, wall?);
        if !has_corner {
            section.assume(
                "corner",
                format!(
                    "{}: twice the wall, usual for bent profiles (common practice)",
                    millimetres(2.0 * wall)
                ),
            );
        }
        let half = width.min(height) / 2.0;
        let corner = if has_corner {
            corner?
        } else {
            (2.0 * wall).min(half)
        };
        if corner > half {
            section.refuse(
                "corner",
                Code::OutOfRange,
                format!(
                    "{} must be at most half of every size, {}: {}",
                    section.key_name("corner"),
                    millimetres(half),
                    millimetres(corner)
                ),
                "give the outside radius of the corners",
            );
            return None;
        }
        match sort {
            Sort::Channel => Profile::Channel {
                width,
                height,
                corner,
            },
            _ => Profile::Box {
                width,
                height,
                corner,
            },
        }
    };
    let half = profile.smallest() / 2.0;
    if wall? >= half {
        section.refuse(
            "wall",
            Code::OutOfRange,
            format!(
                "{} must be below half of every size, {}: {}",
                section.key_name("wall"),
                millimetres(half),
                millimetres(wall?)
            ),
            "check the wall and the outside sizes; a solid bar is no rail: give it as `to` of the joint",
        );
        return None;
    }
    Some(profile)
}

/// A length for a message.
pub(super) fn millimetres(length: f64) -> String {
    show(length, Shown::Millimetre, Digits::Significant(4))
}
