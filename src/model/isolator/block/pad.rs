//! Rates of one piece of rubber between bonded plates.

use std::f64::consts::PI;

use super::compression::Bulge;
use crate::model::isolator::rubber::Moduli;
use crate::spatial::Vec3;

/// Outline of the rubber across w.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Footprint {
    /// Sides along u and v \[m\].
    Rectangle {
        /// Along u \[m\].
        u: f64,
        /// Along v \[m\].
        v: f64,
    },
    /// Full circle.
    Circle {
        /// Diameter \[m\].
        diameter: f64,
    },
    /// Circle with a hole in its middle, through which the rubber may bulge.
    Ring {
        /// Outer diameter \[m\].
        outer: f64,
        /// Diameter of the hole \[m\].
        inner: f64,
    },
    /// So long that nothing bulges out at its ends.
    Strip {
        /// Along u \[m\].
        length: f64,
        /// Along v \[m\].
        width: f64,
    },
}

impl Footprint {
    /// Loaded area \[m²\].
    #[must_use]
    pub fn area(&self) -> f64 {
        match *self {
            Self::Rectangle { u, v } => u * v,
            Self::Circle { diameter } => PI / 4.0 * diameter * diameter,
            Self::Ring { outer, inner } => PI / 4.0 * (outer - inner) * (outer + inner),
            Self::Strip { length, width } => length * width,
        }
    }

    /// Length of the edge at which the rubber is free to bulge \[m\].
    #[must_use]
    pub fn free_edge(&self) -> f64 {
        match *self {
            Self::Rectangle { u, v } => 2.0 * (u + v),
            Self::Circle { diameter } => PI * diameter,
            Self::Ring { outer, inner } => PI * (outer + inner),
            Self::Strip { length, .. } => 2.0 * length,
        }
    }

    /// Least size across w \[m\].
    #[must_use]
    pub fn least_width(&self) -> f64 {
        match *self {
            Self::Rectangle { u, v } => u.min(v),
            Self::Circle { diameter } => diameter,
            Self::Ring { outer, .. } => outer,
            Self::Strip { width, .. } => width,
        }
    }

    /// Which way the rubber bulges when it is pressed.
    #[must_use]
    pub fn bulge(&self) -> Bulge {
        match self {
            Self::Rectangle { .. } | Self::Circle { .. } => Bulge::AllRound,
            Self::Ring { .. } | Self::Strip { .. } => Bulge::TwoSides,
        }
    }

    /// Squares of the radii of gyration of the section, along u and v \[m²\].
    fn gyration_squares(&self) -> [f64; 2] {
        match *self {
            Self::Rectangle { u, v } => [u * u / 12.0, v * v / 12.0],
            Self::Circle { diameter } => [diameter * diameter / 16.0; 2],
            Self::Ring { outer, inner } => [(outer * outer + inner * inner) / 16.0; 2],
            Self::Strip { length, width } => [length * length / 12.0, width * width / 12.0],
        }
    }

    /// What multiplies 1 and k S² in the modulus in compression.
    fn coefficients(&self) -> [f64; 2] {
        match *self {
            Self::Rectangle { .. } | Self::Circle { .. } => [1.0, 2.0],
            Self::Strip { .. } => [4.0 / 3.0, 4.0 / 3.0],
            Self::Ring { outer, inner } => {
                let squares = outer * outer + inner * inner;
                let across = (outer - inner) * (outer + inner) / (outer / inner).ln();
                let of_pressure = 2.0 * (squares - across) / (outer - inner).powi(2);
                // A thin wall is a strip; the difference of nearly equal numbers is kept from straying.
                [4.0 / 3.0, of_pressure.clamp(4.0 / 3.0, 2.0)]
            }
        }
    }
}

/// One piece of rubber, in layers of equal height between bonded plates.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pad {
    /// Outline across w.
    pub footprint: Footprint,
    /// Height of all rubber along w, plates left out \[m\].
    pub height: f64,
    /// Layers that the height is made of.
    pub layers: u32,
    /// What it is made of.
    pub moduli: Moduli,
}

impl Pad {
    fn layer(&self) -> f64 {
        self.height / f64::from(self.layers.max(1))
    }

    /// Shape factor S of one layer: loaded area over force-free area.
    ///
    /// # Source
    /// Published: P. B. Lindley, Engineering Design with Natural Rubber, pp. 26-28.
    #[must_use]
    pub fn shape_factor(&self) -> f64 {
        self.footprint.area() / (self.footprint.free_edge() * self.layer())
    }

    /// Modulus in compression of small strain \[Pa\].
    ///
    /// # Equation
    ///   E_c = E₀ (1 + 2 k S²)            rectangle, circle
    ///   E_c = E₀ (4/3) (1 + k S²)        strip
    ///   E_c = E₀ (4/3 + β k S²)          ring,   β = 2 (D² + d² − (D² − d²)/ln(D/d))/(D − d)²
    ///   E'  = E_c/(1 + E_c/B)
    ///
    ///   E₀ Young's modulus, k shape coefficient, B bulk modulus of [`Moduli`],
    ///   S [`shape_factor`](Self::shape_factor), D and d outer and inner diameter
    ///
    /// # Range
    /// Bonded ends. Against finite elements with k = 1 (computed independently,
    /// incompressible): circle and strip within 7 % for S from 0.25 to 3, ring
    /// within 10 % for S from 0.5 to 2 with a bore from 0.1 to 0.7 of its
    /// diameter. The correction by B is 7 % high at S = 6 and 18 % at S = 25. A
    /// rectangle longer than five times its width is nearer to a strip.
    ///
    /// # Source
    /// Published: P. B. Lindley, Engineering Design with Natural Rubber, pp.
    /// 26-28; with k = 1 A. N. Gent and P. B. Lindley, Proc. IMechE 173 (1959)
    /// 111-122. Ring: derived, the pressure in a thin layer between two circles,
    /// Δp = −12 G e/t², and the strip for its wall; β falls from 2 to 4/3.
    #[must_use]
    pub fn compression_modulus(&self) -> f64 {
        let [plain, shaped] = self.footprint.coefficients();
        let pressed = self.moduli.shape * self.shape_factor().powi(2);
        let modulus = self.moduli.youngs * (plain + shaped * pressed);
        modulus / (1.0 + modulus / self.moduli.bulk)
    }

    /// Rates at the free position along u, v, w [N/m].
    ///
    /// # Equation
    ///   along w:  K = E' A/H
    ///   across:   K = (G A/H)/(1 + t²/(36 r²) + (H² − t²) G/(12 E_b r²)),   E_b = E₀ (1 + (2/3) k S²)
    ///
    ///   A area, H height of all rubber, t height of a layer, r radius of
    ///   gyration of the section along the shear, E' [`compression_modulus`](Self::compression_modulus)
    ///
    /// # Range
    /// Plates at both ends kept parallel, those between the layers free to tilt.
    /// One layer: within 5 % of finite elements up to a height equal to the
    /// diameter (computed independently). A stack under a load near that at which
    /// it leans over is softer.
    ///
    /// # Source
    /// One layer: R. S. Rivlin and D. W. Saunders 1949 (from memory), derived
    /// again as a beam with shear, both ends held square, E = 3 G. Stack: derived,
    /// layers in series between plates on which the moment turns from one sign to
    /// the other; E_b is the modulus in bending of a bonded disc, from the
    /// pressure in a thin layer that is tilted, and for other outlines a guess by S.
    #[must_use]
    pub fn rates(&self) -> Vec3 {
        let Moduli {
            youngs,
            shear,
            shape,
            ..
        } = self.moduli;
        let (area, height, layer) = (self.footprint.area(), self.height, self.layer());
        let in_bending = youngs * (1.0 + 2.0 / 3.0 * shape * self.shape_factor().powi(2));
        let tilting = (height * height - layer * layer) * shear / (12.0 * in_bending);
        let [u, v] = self.footprint.gyration_squares().map(|square| {
            shear * area / height / (1.0 + (layer * layer / 36.0 + tilting) / square)
        });
        Vec3::new(u, v, self.compression_modulus() * area / height)
    }
}
