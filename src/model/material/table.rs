//! The listed materials.

use super::{Family, HeadPressure, HeatAffected, Material, NotListed};

/// One listed material.
pub(super) struct Row {
    pub(super) name: &'static str,
    family: Family,
    /// By rising thickness.
    strengths: &'static [Strength],
    /// Young's modulus \[GPa\].
    youngs: f64,
    /// Modulus after 1000 h under load \[GPa\].
    long_term: Option<f64>,
    poisson: f64,
    /// Density [kg/m³].
    density: f64,
    /// Thermal expansion [1e-6/K].
    expansion: f64,
    /// Pressure under a bolt head \[MPa\].
    head: Head,
    source: &'static str,
}

/// Strength up to a thickness.
struct Strength {
    /// Largest thickness \[mm\].
    up_to: f64,
    /// Yield and tensile strength \[MPa\].
    parent: (f64, f64),
    beside_weld: Weld,
}

/// Strength beside a weld.
enum Weld {
    AsParent,
    /// Yield and tensile strength \[MPa\].
    Weaker(f64, f64),
    NotKnown,
}

/// Pressures under a bolt head \[MPa\], of a bare wall and of a thick part; `None` where no list has one.
struct Head(Option<f64>, Option<f64>);

const ANY: f64 = f64::INFINITY;

impl Row {
    /// The material at a thickness \[m\].
    pub(super) fn at(&self, thickness: f64) -> Result<Material, NotListed> {
        // Half a micrometre is for the rounding of inches.
        let strength = self
            .strengths
            .iter()
            .find(|strength| thickness * 1e3 <= strength.up_to + 5e-4)
            .ok_or_else(|| NotListed::TooThick {
                up_to: self.strengths.last().map_or(0.0, |last| last.up_to * 1e-3),
            })?;
        let (yield_strength, tensile_strength) = (strength.parent.0 * 1e6, strength.parent.1 * 1e6);
        Ok(Material {
            name: self.name.to_owned(),
            family: self.family,
            yield_strength,
            tensile_strength,
            heat_affected: match strength.beside_weld {
                Weld::AsParent => HeatAffected::AsParent,
                Weld::Weaker(yields, breaks) => HeatAffected::Weaker {
                    yield_strength: yields * 1e6,
                    tensile_strength: breaks * 1e6,
                },
                Weld::NotKnown => HeatAffected::NotKnown,
            },
            youngs_modulus: self.youngs * 1e9,
            long_term_modulus: self.long_term.map(|modulus| modulus * 1e9),
            poissons_ratio: self.poisson,
            density: self.density,
            expansion: self.expansion * 1e-6,
            anodic_index: self.family.anodic_index(),
            head_pressure: self.head.pressure(yield_strength),
            source: self.source,
        })
    }
}

impl Head {
    fn pressure(&self, yield_strength: f64) -> HeadPressure {
        let listed = |value: Option<f64>| value.map(|mpa| mpa * 1e6);
        // The list of thick parts is no limit for a bare wall, nor is a wall's for more than itself.
        let bare = listed(self.0).unwrap_or(yield_strength);
        HeadPressure {
            bare,
            supported: listed(self.1).unwrap_or(bare),
            basis: match (self.0, self.1) {
                (Some(_), Some(_)) => {
                    "VDI 2230-1: list of 1986 for a bare wall, of 2003 for a thick part"
                }
                (None, Some(_)) => {
                    "yield strength for a bare wall, list of VDI 2230-1:2003 for a thick part"
                }
                _ => "yield strength, since no list has a pressure",
            },
        }
    }
}

/// As strong beside a weld as elsewhere.
const fn whole(up_to: f64, parent: (f64, f64)) -> Strength {
    Strength {
        up_to,
        parent,
        beside_weld: Weld::AsParent,
    }
}

const fn weaker(up_to: f64, parent: (f64, f64), weld: (f64, f64)) -> Strength {
    Strength {
        up_to,
        parent,
        beside_weld: Weld::Weaker(weld.0, weld.1),
    }
}

const fn not_known(up_to: f64, parent: (f64, f64)) -> Strength {
    Strength {
        up_to,
        parent,
        beside_weld: Weld::NotKnown,
    }
}

impl Row {
    const fn of(
        family: Family,
        name: &'static str,
        strengths: &'static [Strength],
        source: &'static str,
    ) -> Self {
        Self {
            name,
            family,
            strengths,
            youngs: 210.0,
            long_term: None,
            poisson: 0.30,
            density: 7850.0,
            expansion: 12.0,
            head: Head(None, None),
            source,
        }
    }

    const fn stainless(name: &'static str, strengths: &'static [Strength]) -> Self {
        Self::of(Family::Stainless, name, strengths, EN_10088).with(200.0, 7900.0, 16.0)
    }

    const fn aluminium(name: &'static str, strengths: &'static [Strength]) -> Self {
        Self {
            poisson: 0.33,
            ..Self::of(Family::Aluminium, name, strengths, EN_1999).with(70.0, 2700.0, 23.0)
        }
    }

    const fn polymer(name: &'static str, strengths: &'static [Strength]) -> Self {
        Self {
            poisson: 0.40,
            ..Self::of(Family::Polymer, name, strengths, POLYMERS)
        }
    }

    /// Young's modulus \[GPa\], density [kg/m³], thermal expansion [1e-6/K].
    const fn with(self, youngs: f64, density: f64, expansion: f64) -> Self {
        Self {
            youngs,
            density,
            expansion,
            ..self
        }
    }

    const fn head(self, bare: Option<f64>, supported: Option<f64>) -> Self {
        Self {
            head: Head(bare, supported),
            ..self
        }
    }
}

const EN_10025: &str = "EN 10025-2 and EN 10219-1, constants of EN 1993-1-1 (from memory)";
const EN_10346: &str =
    "EN 10346, low end of each band; constants usual for steel sheet (from memory)";
const EN_10088: &str = "EN 10088-2, constants of EN 10088-1 (from memory)";
const EN_1999: &str = "EN 1999-1-1:2007 table 3.2b, constants of its clause 3.2.5";
const EN_1999_FROM_MEMORY: &str =
    "EN 1999-1-1:2007 table 3.2b, constants of its clause 3.2.5 (from memory)";
const MMPDS: &str = "MMPDS, low-alloy steel tube, normalised (from memory)";
const SHIGLEY: &str = "R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 8th ed. (2008), table A-20; constants from handbooks (from memory)";
const EN_1561: &str = "EN 1561, annex A, low end of each band (from memory)";
const EN_1563: &str = "EN 1563, annex (from memory)";
const POLYMERS: &str = "common practice: low end of what is usual, strength in short compression";

/// All listed materials.
pub(super) const ROWS: &[Row] = &[
    Row::of(
        Family::Steel,
        "S235",
        &[whole(16.0, (235.0, 360.0)), whole(40.0, (225.0, 360.0))],
        EN_10025,
    )
    .head(Some(260.0), Some(490.0)),
    Row::of(
        Family::Steel,
        "S355",
        &[whole(16.0, (355.0, 470.0)), whole(40.0, (345.0, 470.0))],
        EN_10025,
    )
    .head(None, Some(760.0)),
    Row::of(
        Family::Steel,
        "1018 hot rolled",
        &[whole(ANY, (220.0, 400.0))],
        SHIGLEY,
    )
    .with(205.0, 7870.0, 11.5),
    // A weld takes the cold work out, which leaves the hot-rolled bar.
    Row::of(
        Family::Steel,
        "1018 cold drawn",
        &[weaker(ANY, (370.0, 440.0), (220.0, 400.0))],
        SHIGLEY,
    )
    .with(205.0, 7870.0, 11.5),
    // 0.188 in is where the thicker wall begins.
    Row::of(
        Family::Steel,
        "4130 normalised",
        &[
            not_known(4.7752, (517.0, 655.0)),
            not_known(ANY, (483.0, 621.0)),
        ],
        MMPDS,
    )
    .with(200.0, 7830.0, 11.3),
    Row::of(
        Family::Steel,
        "DP600",
        &[not_known(6.0, (330.0, 590.0))],
        EN_10346,
    )
    .with(205.0, 7850.0, 12.0),
    Row::of(
        Family::Steel,
        "DP780",
        &[not_known(6.0, (440.0, 780.0))],
        EN_10346,
    )
    .with(205.0, 7850.0, 12.0),
    Row::of(
        Family::Steel,
        "DP980",
        &[not_known(6.0, (590.0, 980.0))],
        EN_10346,
    )
    .with(205.0, 7850.0, 12.0),
    // The list has 1.4303, which is of the same strength class as 304.
    Row::stainless("304", &[whole(12.0, (210.0, 520.0))]).head(Some(210.0), Some(630.0)),
    Row::stainless("304 cold rolled", &[whole(6.0, (230.0, 540.0))]).head(Some(210.0), Some(630.0)),
    Row::stainless("304L", &[whole(12.0, (200.0, 520.0))]),
    Row::stainless("304L cold rolled", &[whole(6.0, (220.0, 520.0))]),
    Row::stainless("316", &[whole(12.0, (220.0, 530.0))])
        .with(200.0, 8000.0, 16.0)
        .head(Some(210.0), Some(460.0)),
    Row::stainless("316 cold rolled", &[whole(6.0, (240.0, 530.0))])
        .with(200.0, 8000.0, 16.0)
        .head(Some(210.0), Some(460.0)),
    Row::stainless("316L", &[whole(12.0, (220.0, 530.0))]).with(200.0, 8000.0, 16.0),
    Row::stainless("316L cold rolled", &[whole(6.0, (240.0, 530.0))]).with(200.0, 8000.0, 16.0),
    // As extruded or annealed (O, H111, F, H112).
    Row::aluminium("5083-O", &[whole(ANY, (110.0, 270.0))]).head(None, Some(230.0)),
    // Drawn tube (H12, H22, H32).
    Row::aluminium("5083-H12", &[weaker(10.0, (200.0, 280.0), (135.0, 270.0))])
        .head(None, Some(230.0)),
    Row::aluminium(
        "6005A-T6 open",
        &[weaker(5.0, (225.0, 270.0), (115.0, 165.0))],
    ),
    Row::aluminium(
        "6005A-T6 hollow",
        &[weaker(5.0, (215.0, 255.0), (115.0, 165.0))],
    ),
    Row::aluminium("6060-T5", &[weaker(5.0, (120.0, 160.0), (50.0, 80.0))]),
    Row::aluminium("6060-T6", &[weaker(15.0, (140.0, 170.0), (60.0, 100.0))]),
    Row::aluminium(
        "6060-T66",
        &[
            weaker(3.0, (160.0, 215.0), (65.0, 110.0)),
            weaker(25.0, (150.0, 195.0), (65.0, 110.0)),
        ],
    ),
    Row::aluminium("6061-T4", &[weaker(25.0, (110.0, 180.0), (95.0, 150.0))]),
    Row::aluminium("6061-T6", &[weaker(20.0, (240.0, 260.0), (115.0, 175.0))]),
    Row::aluminium("6063-T6", &[weaker(25.0, (160.0, 195.0), (65.0, 110.0))]),
    Row::aluminium("6063-T66", &[weaker(10.0, (200.0, 245.0), (75.0, 130.0))]),
    Row {
        source: EN_1999_FROM_MEMORY,
        ..Row::aluminium(
            "6082-T6",
            &[
                weaker(5.0, (250.0, 290.0), (125.0, 185.0)),
                weaker(15.0, (260.0, 310.0), (125.0, 185.0)),
            ],
        )
        .head(None, Some(260.0))
    },
    Row {
        poisson: 0.26,
        ..Row::of(
            Family::CastIron,
            "EN-GJL-250",
            &[not_known(ANY, (165.0, 250.0))],
            EN_1561,
        )
        .with(103.0, 7200.0, 11.7)
        .head(Some(800.0), Some(900.0))
    },
    Row {
        poisson: 0.275,
        ..Row::of(
            Family::CastIron,
            "EN-GJS-400-15",
            &[not_known(30.0, (250.0, 400.0))],
            EN_1563,
        )
        .with(169.0, 7100.0, 12.5)
    },
    // Moist, as it is after some months in air; its modulus after 1000 h is an order of magnitude.
    Row {
        long_term: Some(0.6),
        ..Row::polymer("PA66", &[not_known(ANY, (60.0, 60.0))]).with(1.5, 1140.0, 80.0)
    },
    Row::polymer("POM", &[not_known(ANY, (90.0, 90.0))]).with(2.8, 1410.0, 110.0),
    Row::polymer("PEEK", &[not_known(ANY, (118.0, 118.0))]).with(3.6, 1300.0, 47.0),
    // Flatwise, across its sheets of cloth.
    Row::polymer("glass-epoxy laminate", &[not_known(ANY, (400.0, 400.0))]).with(7.0, 1850.0, 60.0),
];
