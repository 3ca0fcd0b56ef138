//! A sleeve shorter than the rail is high.

/// Stiffness against closing of a rail with a plate on each face that stands on the side walls [N/m].
///
/// # Equation
///   k = (2 k_r + k_p)/2
///
///   k_r  squeeze stiffness of the rail alone   [N/m]
///   k_p  stiffness of one plate as a beam from side wall to side wall, see
///        [`Strip`](crate::strength::plate::strip::Strip); 0 where the plate is
///        narrower than the face  [N/m]
///
/// # Range
/// The same plate on both faces.
///
/// # Source
/// Derived: each face, of stiffness 2 k_r, beside its plate; both sides in series.
#[must_use]
pub fn closing_stiffness(squeeze: f64, plate: f64) -> f64 {
    (2.0 * squeeze + plate) / 2.0
}

/// Who carries the clamp force after tightening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tightened {
    /// Force in the walls and plates when the gap just closes \[N\].
    pub gap_force: f64,
    /// Force in the sleeve \[N\]; 0 while the gap is open.
    pub sleeve: f64,
    /// Force in the walls, and in the plates that stand on them \[N\].
    pub walls: f64,
    /// Whether the preload closes the gap.
    pub is_closed: bool,
}

/// Shares of sleeve and walls in the preload of a bolt.
///
/// # Equation
///   F_g = k_r g,   F_s = (F − F_g) k_s/(k_s + k_r),   walls F − F_s
///
///   g    rail higher than the sleeve by this, from 0  \[m\]
///   k_r  [`closing_stiffness`], k_s sleeve  [N/m]
///   F    preload \[N\]
///
/// # Range
/// Elastic: F_g below what makes walls or plates yield. Tightened by torque, a
/// gap costs no preload: it moves force from sleeve to walls. A gap that closes
/// later costs [`settlement_loss`]. A sleeve that is too long: [`proud`](super::proud).
///
/// # Source
/// Derived: walls alone until contact, then both side by side.
#[must_use]
pub fn tightened(preload: f64, gap: f64, closing: f64, sleeve_stiffness: f64) -> Tightened {
    let gap_force = closing * gap;
    let sleeve = (preload - gap_force).max(0.0) * sleeve_stiffness / (sleeve_stiffness + closing);
    Tightened {
        gap_force,
        sleeve,
        walls: preload - sleeve,
        is_closed: preload >= gap_force,
    }
}

/// Share of the smallest preload that closing a gap may take.
///
/// # Source
/// Common practice.
pub const GAP_SHARE: f64 = 0.05;

/// Largest gap that a sleeve may leave, and what limits it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct AllowedGap {
    /// By the share of the smallest preload \[m\].
    pub by_share: f64,
    /// By first yield of what closes it \[m\].
    pub by_yield: f64,
}

impl AllowedGap {
    /// The smaller of the two \[m\].
    #[must_use]
    pub fn smaller(&self) -> f64 {
        self.by_share.min(self.by_yield)
    }
}

/// Gap up to which the sleeve still carries and nothing yields.
///
/// # Equation
///   g ≤ 0.05 F_min/k_r,   g ≤ F_y/k_r
///
///   F_min  smallest preload \[N\]
///   F_y    load of both faces at first yield of face or plate \[N\]
///
/// # Range
/// With plates on the side walls the share is too strict: force there still
/// clamps, and yield is the limit. "0 to 0.1 mm short" is common practice.
///
/// # Source
/// Derived; the share is [`GAP_SHARE`].
#[must_use]
pub fn allowed_gap(smallest_preload: f64, first_yield: f64, closing: f64) -> AllowedGap {
    AllowedGap {
        by_share: GAP_SHARE * smallest_preload / closing,
        by_yield: first_yield / closing,
    }
}

/// Preload lost to settlement after tightening \[N\].
///
/// # Equation
///   ΔF = x/(δ_S + δ_P)
///
///   x          shortening of the stack                 \[m\]
///   δ_S, δ_P   resilience of bolt and clamped parts    [m/N]
///
/// # Source
/// Derived.
#[must_use]
pub fn settlement_loss(settlement: f64, bolt_resilience: f64, parts_resilience: f64) -> f64 {
    settlement / (bolt_resilience + parts_resilience)
}
