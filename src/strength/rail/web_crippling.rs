//! Crippling of thin webs by the rules for cold-formed steel and for aluminium.

/// Where the load on a web lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// Near a cut end, pushed from one flange.
    EndOneFlange,
    /// Away from the ends, pushed from one flange.
    InteriorOneFlange,
    /// Near a cut end, squeezed.
    EndTwoFlange,
    /// Away from the ends, squeezed.
    InteriorTwoFlange,
}

/// One flat web of cold-formed steel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Web {
    /// Wall \[m\].
    pub thickness: f64,
    /// Inner corner radius \[m\].
    pub inner_radius: f64,
    /// Flat height between the corners \[m\].
    pub flat_height: f64,
}

/// Load at which one web cripples \[N\]; none outside the range.
///
/// # Equation
///   P = C t² f (1 − C_R √(R/t)) (1 + C_N √(N/t)) (1 − C_h √(h/t))
///
///   C, C_R, C_N, C_h   4, 0.14, 0.35, 0.02 end, one flange
///                      13, 0.23, 0.14, 0.01 interior, one flange
///                      7.5, 0.08, 0.12, 0.048 end, two flanges
///                      20, 0.10, 0.08, 0.031 interior, two flanges
///   N                  bearing length along the rail \[m\]
///
/// # Range
/// h/t up to 200, N/t up to 210, N/h up to 2. The table holds single webs of
/// channels fastened to their support and no closed tube: two webs of a tube is
/// an extension. Nominal: the source's φ depends on the case.
///
/// # Source
/// AISI S100, section G5, single web channels with stiffened flanges, fastened (from memory).
#[must_use]
pub fn cold_formed(
    web: &Web,
    place: Place,
    bearing_length: f64,
    yield_strength: f64,
) -> Option<f64> {
    let t = web.thickness;
    let (radius, bearing, height) = (
        web.inner_radius / t,
        bearing_length / t,
        web.flat_height / t,
    );
    if height > 200.0 || bearing > 210.0 || bearing > 2.0 * height {
        return None;
    }
    let (c, c_r, c_n, c_h) = match place {
        Place::EndOneFlange => (4.0, 0.14, 0.35, 0.02),
        Place::InteriorOneFlange => (13.0, 0.23, 0.14, 0.01),
        Place::EndTwoFlange => (7.5, 0.08, 0.12, 0.048),
        Place::InteriorTwoFlange => (20.0, 0.10, 0.08, 0.031),
    };
    let shape =
        (1.0 - c_r * radius.sqrt()) * (1.0 + c_n * bearing.sqrt()) * (1.0 - c_h * height.sqrt());
    Some(c * t * t * yield_strength * shape)
}

/// Load at which one web of aluminium buckles under a load on one flange \[N\].
///
/// # Equation
///   F = 0.57 t² √(k l f_o E/b_w) ≤ l t f_o,   k = 6 + 2 (b_w/a)²
///
///   l    loaded length of the web, spread through the flange  \[m\]
///   b_w  depth of the web between the flanges    \[m\]
///   a    distance of stiffeners along the rail, infinite for none  \[m\]
///   f_o  proof strength \[Pa\]
///
/// # Range
/// Load on one flange away from the ends. Characteristic: γ_M1, usually 1.10.
///
/// # Source
/// EN 1999-1-1:2007, 6.7.5 (from memory). The cap, yielding of the loaded length,
/// is derived. That standard has no tables of hollow-section joints.
#[must_use]
pub fn aluminium(
    thickness: f64,
    depth: f64,
    stiffeners: f64,
    loaded_length: f64,
    proof_strength: f64,
    youngs_modulus: f64,
) -> f64 {
    let k = 6.0 + 2.0 * (depth / stiffeners).powi(2);
    let slender = 0.57
        * thickness.powi(2)
        * (k * loaded_length * proof_strength * youngs_modulus / depth).sqrt();
    slender.min(loaded_length * thickness * proof_strength)
}
