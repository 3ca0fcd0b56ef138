//! Preload lost because rough faces flatten after tightening.

/// Roughness Rz of the faces that are clamped.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Roughness {
    /// Below 10 µm: ground, fine turned.
    Fine,
    /// 10 to 40 µm: turned, milled, drawn or rolled.
    Medium,
    /// 40 to 160 µm: sawn, flame cut.
    Coarse,
}

/// How the joint is loaded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Loading {
    /// Along the bolt only.
    Axial,
    /// Along the joint face too.
    Shear,
}

/// Flattening of a joint after tightening \[m\].
///
/// # Equation
///   f = threads + heads · head face + inner · inner face
///
///   heads  faces under head and nut; 2 for a through bolt, 1 for a screw
///   inner  faces that meet inside the stack; plate, rail and sleeve of a bolt through a rail make four
///
/// # Range
/// Bare metal. Paint or powder coat in the stack is to be stripped, or its thickness counted as
/// lost on top (common practice).
///
/// # Source
/// VDI 2230-1:2003, table 5, from memory.
#[must_use]
pub fn flattening(roughness: Roughness, loading: Loading, heads: usize, inner: usize) -> f64 {
    let (head, between) = match (roughness, loading) {
        (Roughness::Fine, Loading::Axial) => (2.5, 1.5),
        (Roughness::Fine, Loading::Shear) => (3.0, 2.0),
        (Roughness::Medium, Loading::Axial) => (3.0, 2.0),
        (Roughness::Medium, Loading::Shear) => (4.5, 2.5),
        (Roughness::Coarse, Loading::Axial) => (4.0, 3.0),
        (Roughness::Coarse, Loading::Shear) => (6.5, 3.5),
    };
    let threads = 3.0;
    (threads + head * heads as f64 + between * inner as f64) * 1e-6
}

/// Preload lost when the joint settles \[N\].
///
/// # Equation
///   F = f/(δS + δP)
///
///   f       settlement after tightening                \[m\]
///   δS, δP  resilience of the bolt, the clamped parts  [m/N]
///
/// # Source
/// VDI 2230-1:2003, from memory.
#[must_use]
pub fn loss(settlement: f64, bolt: f64, clamped: f64) -> f64 {
    settlement / (bolt + clamped)
}
