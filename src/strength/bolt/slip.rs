//! Force along the joint face that friction takes.

use crate::model::fastener::Band;

/// Force along the face that a bolt holds by friction \[N\].
///
/// # Equation
///   FQ = q μ FK
///
///   q   faces that must slip for the part to move; 1 unless it is gripped on both sides
///   μ   friction of the faces; the low end of its band
///   FK  least clamp force left                           \[N\]
///
/// # Source
/// Coulomb; VDI 2230-1:2003, from memory.
#[must_use]
pub fn resistance(faces: f64, friction: f64, clamp: f64) -> f64 {
    faces * friction * clamp
}

/// Slip resistance of a bolt tightened to 70 % of its tensile strength \[N\].
///
/// # Equation
///   Fs = ks n μ Fp/γM3,   Fp = 0.7 fub As
///
///   ks        form of the hole, 1 for a normal clearance
///   n, μ      faces, friction of the slip class
///   fub, As   tensile strength and stress area of the bolt   \[Pa\], \[m²\]
///   γM3       1.25 where slip means failure, 1.10 in service
///
/// # Range
/// Classes 8.8 and 10.9 with controlled tightening.
///
/// # Source
/// EN 1993-1-8, 3.9, from memory.
#[must_use]
pub fn structural_resistance(
    hole_factor: f64,
    faces: f64,
    friction: f64,
    tensile: f64,
    stress_area: f64,
    safety: f64,
) -> f64 {
    hole_factor * faces * friction * structural_preload(tensile, stress_area) / safety
}

/// Preload of a bolt in a slip-resistant joint of a structure \[N\].
///
/// # Equation
///   Fp = 0.7 fub As
///
/// # Source
/// EN 1993-1-8, 3.6.1, from memory.
#[must_use]
pub fn structural_preload(tensile: f64, stress_area: f64) -> f64 {
    0.7 * tensile * stress_area
}

/// Nominal slip resistance of a bolt by the American rule \[N\].
///
/// # Equation
///   R = μ Du hf Tb ns
///
///   μ   mean slip coefficient; class A 0.30, in older editions 0.35
///   Du  1.13, mean over least preload
///   hf  fillers, 1 without; in older editions the form of the hole
///   Tb  least preload                                    \[N\]
///   ns  faces
///
/// # Source
/// AISC 360-10, J3.8, from memory.
#[must_use]
pub fn american_resistance(
    friction: f64,
    preload_ratio: f64,
    filler: f64,
    preload: f64,
    faces: f64,
) -> f64 {
    friction * preload_ratio * filler * preload * faces
}

/// Friction of the slip classes A to D of prepared steel faces.
///
/// # Source
/// EN 1090-2, from memory.
pub const SLIP_CLASSES: [(char, f64); 4] = [('A', 0.50), ('B', 0.40), ('C', 0.30), ('D', 0.20)];

/// Friction between faces as found in a workshop.
///
/// # Source
/// Common practice. No value is known for paint or powder coat: 0.10 stands until a test shows more.
pub const FACES: [(&str, Band); 6] = [
    (
        "steel, machined and degreased",
        Band {
            low: 0.12,
            high: 0.18,
        },
    ),
    (
        "steel, untreated",
        Band {
            low: 0.15,
            high: 0.25,
        },
    ),
    (
        "steel, blasted",
        Band {
            low: 0.45,
            high: 0.55,
        },
    ),
    (
        "aluminium, degreased",
        Band {
            low: 0.08,
            high: 0.15,
        },
    ),
    (
        "aluminium, untreated",
        Band {
            low: 0.12,
            high: 0.20,
        },
    ),
    (
        "painted",
        Band {
            low: 0.10,
            high: 0.10,
        },
    ),
];
