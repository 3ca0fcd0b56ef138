//! Axes and centres that tell which loads turn what: torque roll axis, elastic axes, stiffness and compliance centre.
//!
//! Stiffness matrices are 6x6 about a reference point, translation first, symmetric.

use crate::numeric::{NumericError, inverse3, inverse6, solve3, symmetric_eigen3};
use crate::spatial::{Mat3, Mat6, Vec3, blocks, skew};

/// A line in space, with the pitch of a screw along it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ElasticAxis {
    /// Unit vector along the line, the way of the force.
    pub direction: Vec3,
    /// Point of the line nearest to the reference point, in the coordinates of that point \[m\].
    pub through: Vec3,
    /// Moment along the line per force \[m\]; zero when a force along the line turns nothing.
    pub pitch: f64,
}

/// Axis about which a free powertrain starts to turn under a torque about `crank`; unit vector, through the centre of gravity.
///
/// # Equation
///   a = J⁻¹ n / |J⁻¹ n|
///
///   J  `inertia`, about the centre of gravity   [kg m²]
///   n  `crank`, direction of the torque
///
/// # Source
/// Derived: Euler's equation at rest, J dω/dt = n T.
///
/// # Errors
/// [`NumericError`]; [`NumericError::Singular`] for a direction without length.
pub fn torque_roll_axis(inertia: &Mat3, crank: &Vec3) -> Result<Vec3, NumericError> {
    solve3(inertia, crank)?
        .try_normalize(0.0)
        .ok_or(NumericError::Singular)
}

/// Line along which a force moves the powertrain by pure translation, for the translation along `along`.
///
/// # Equation
///   F = Kt e,   M = Kc' e,   through p = c + F × M/|F|², along F, pitch F·M/|F|²
///
///   e       `along`, unit translation
///   Kt, Kc  blocks of `stiffness` about `reference` c   [N/m], [N/rad]
///
/// # Source
/// Derived: the wrench that holds the translation, reduced to its central axis.
///
/// # Errors
/// [`NumericError::Singular`] when nothing resists the translation.
pub fn elastic_axis(
    stiffness: &Mat6,
    reference: &Vec3,
    along: &Vec3,
) -> Result<ElasticAxis, NumericError> {
    crate::numeric::require_finite(stiffness.as_slice())?;
    let e = along.try_normalize(0.0).ok_or(NumericError::Singular)?;
    let F = stiffness.fixed_view::<3, 3>(0, 0) * e;
    let M = stiffness.fixed_view::<3, 3>(3, 0) * e;
    let direction = F.try_normalize(0.0).ok_or(NumericError::Singular)?;
    let squared = F.norm_squared();
    Ok(ElasticAxis {
        direction,
        through: reference + F.cross(&M) / squared,
        pitch: F.dot(&M) / squared,
    })
}

/// Elastic axes along the three principal directions of the translational stiffness, softest first.
///
/// # Errors
/// As [`elastic_axis`].
pub fn principal_elastic_axes(
    stiffness: &Mat6,
    reference: &Vec3,
) -> Result<[ElasticAxis; 3], NumericError> {
    let Kt = stiffness.fixed_view::<3, 3>(0, 0).into_owned();
    let directions = symmetric_eigen3(&Kt)?.vectors;
    let axis = |j: usize| elastic_axis(stiffness, reference, &directions.column(j).into_owned());
    Ok([axis(0)?, axis(1)?, axis(2)?])
}

/// Point about which the coupling block is symmetric: the stiffness-weighted mean of the elastic axes.
///
/// # Equation
///   (tr(Kt) I − Kt) p = −2 vex(Kc)
///
///   p  from `reference` to the centre   \[m\]
///
/// # Range
/// Equal to the elastic centre where that exists. Otherwise one convention
/// among several; the axes of [`elastic_axis`] then tell more.
///
/// # Source
/// Derived: moving the reference by p adds Kt \[p\] to the coupling block; its skew part is to vanish.
///
/// # Errors
/// [`NumericError::Singular`] when fewer than two directions are held.
pub fn stiffness_centre(stiffness: &Mat6, reference: &Vec3) -> Result<Vec3, NumericError> {
    Ok(reference + centre_offset(stiffness, -2.0)?)
}

/// The same point from the compliance: where a force causes rotation only through a symmetric block.
///
/// # Equation
///   (tr(Cr) I − Cr) p = + 2 vex(Cc),   C = K⁻¹ = \[\[Ct, Cc\], \[Cc', Cr\]\]
///
/// # Source
/// Derived as for [`stiffness_centre`].
///
/// # Errors
/// [`NumericError::Singular`] when a motion is not held.
pub fn compliance_centre(stiffness: &Mat6, reference: &Vec3) -> Result<Vec3, NumericError> {
    let C = inverse6(stiffness)?;
    // Rotation block first, so that both centres read the same corner.
    let swapped = blocks(
        &C.fixed_view::<3, 3>(3, 3).into_owned(),
        &C.fixed_view::<3, 3>(0, 3).into_owned(),
        &C.fixed_view::<3, 3>(3, 0).into_owned(),
        &C.fixed_view::<3, 3>(0, 0).into_owned(),
    );
    Ok(reference + centre_offset(&swapped, 2.0)?)
}

fn centre_offset(matrix: &Mat6, factor: f64) -> Result<Vec3, NumericError> {
    let direct = matrix.fixed_view::<3, 3>(0, 0).into_owned();
    let coupling = matrix.fixed_view::<3, 3>(0, 3).into_owned();
    let vex = Vec3::new(
        coupling[(2, 1)] - coupling[(1, 2)],
        coupling[(0, 2)] - coupling[(2, 0)],
        coupling[(1, 0)] - coupling[(0, 1)],
    ) * 0.5;
    solve3(
        &(Mat3::identity() * direct.trace() - direct),
        &(vex * factor),
    )
}

/// Point about which translation and rotation do not couple at all, if there is one within `tolerance` \[m\].
///
/// The coupling left about the stiffness centre must be below `tolerance`
/// times the largest translational stiffness.
///
/// # Errors
/// As [`stiffness_centre`].
pub fn elastic_centre(
    stiffness: &Mat6,
    reference: &Vec3,
    tolerance: f64,
) -> Result<Option<Vec3>, NumericError> {
    let centre = stiffness_centre(stiffness, reference)?;
    let there = about(stiffness, &(centre - reference));
    let left = there.fixed_view::<3, 3>(0, 3).amax();
    let scale = stiffness.fixed_view::<3, 3>(0, 0).amax();
    Ok((left <= tolerance * scale).then_some(centre))
}

/// The same stiffness about a point `p` \[m\] away from its reference point.
///
/// # Equation
///   K_p = T' K T,   T = \[\[I, \[p\]\], \[0, I\]\]
///
/// # Source
/// Derived: a motion stated at p moves the old reference by dc + \[p\] dth.
#[must_use]
pub fn about(stiffness: &Mat6, p: &Vec3) -> Mat6 {
    let T = blocks(
        &Mat3::identity(),
        &skew(p),
        &Mat3::zeros(),
        &Mat3::identity(),
    );
    T.transpose() * stiffness * T
}

/// Acceleration at `p` per force at `q` of the free powertrain [1/kg], both as arms from the centre of gravity \[m\].
///
/// # Equation
///   Y = I/m − \[p\] J⁻¹ \[q\]
///
/// # Source
/// Derived: dω/dt = J⁻¹ (q × F), acceleration F/m + dω/dt × p.
///
/// # Errors
/// [`NumericError`].
pub fn point_mobility(mass: f64, inertia: &Mat3, p: &Vec3, q: &Vec3) -> Result<Mat3, NumericError> {
    Ok(Mat3::identity() / mass - skew(p) * inverse3(inertia)? * skew(q))
}

/// How strongly two coordinates of a stiffness couple: `|K_ij| / √(K_ii K_jj)`, 0 to 1.
///
/// `None` when a place is above 5 or a coordinate is not held.
#[must_use]
pub fn coupling(stiffness: &Mat6, i: usize, j: usize) -> Option<f64> {
    let both = stiffness.get((i, i))? * stiffness.get((j, j))?;
    let figure = stiffness.get((i, j))?.abs() / both.sqrt();
    figure.is_finite().then_some(figure)
}

/// Distance of a point from a line \[m\]; `direction` must be a unit vector.
#[must_use]
pub fn distance_to_line(point: &Vec3, through: &Vec3, direction: &Vec3) -> f64 {
    (point - through).cross(direction).norm()
}

/// Shortest distance between two lines \[m\], each a point and a unit vector.
///
/// # Equation
///   |(p₂ − p₁)·(e₁ × e₂)| / |e₁ × e₂|;   for parallel lines the distance of a point of one from the other
///
/// # Source
/// Derived: the common perpendicular.
#[must_use]
pub fn distance_of_lines(first: (&Vec3, &Vec3), second: (&Vec3, &Vec3)) -> f64 {
    let ((p1, e1), (p2, e2)) = (first, second);
    e1.cross(e2).try_normalize(1e-9).map_or_else(
        || distance_to_line(p2, p1, e1),
        |square| (p2 - p1).dot(&square).abs(),
    )
}
