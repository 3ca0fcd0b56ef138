//! Whole demo builds, from the file to the results, against an independent calculation.
//!
//! *Cross-checked*: a second program that shares no line with this one, written
//! in Python with numpy 2 and scipy 1 from the published formulas and the physics
//! alone. It reads the model file itself, finds each position with a damped Newton
//! iteration on the balance of forces and moments (derivatives by differences,
//! mount splits by bracketing, curves by `scipy.interpolate.PchipInterpolator`),
//! and the frequencies with `scipy.linalg.eigh`. The numbers below are its output;
//! every other number of the five builds agreed to 1e-9 as well (2542 of them)
//! when they were compared.
//!
//! Not independent, because the second program was given them: the rates of a bush
//! along its axis and against tilting, the dynamic ratios and loss factors that are
//! usual for a rubber. Recognised from printed curves and rates instead of a source:
//! the law of a pulled block, the area in the bulk term of a bush.

use bedplate::model::file;
use bedplate::study::evaluate::evaluate;

use crate::kit::assert_close;

struct Case {
    file: &'static str,
    load: &'static str,
    /// Torque at the outputs and its cap [N m].
    torque: Option<[f64; 2]>,
    displacement_mm: [f64; 3],
    rotation_vector: [f64; 3],
    mounts: &'static [Mount],
}

struct Mount {
    /// Force and moment on the powertrain [N, N m], vehicle axes.
    force: [f64; 3],
    moment: [f64; 3],
    /// The isolator's own deflection [mm].
    deflection_mm: [f64; 3],
}

/// Of a mount that does not hold when it is turned.
const NONE: [f64; 3] = [0.0; 3];

const CASES: &[Case] = &[
    Case {
        file: "forestry-pickup",
        load: "launch",
        torque: Some([1_335.785_584_36, 834.865_990_22]),
        displacement_mm: [-2.497_409_8, 0.771_511_9, -3.155_088_7],
        rotation_vector: [0.026_696_970, 0.001_061_457, 0.005_704_249],
        mounts: &[
            Mount {
                force: [709.361_66, -325.150_58, -1_026.186_36],
                moment: NONE,
                deflection_mm: [-4.299_162, 6.150_319, 1.502_447],
            },
            Mount {
                force: [133.514_86, 523.279_75, 3_205.570_27],
                moment: NONE,
                deflection_mm: [-0.809_181, 10.267_069, -6.773_558],
            },
            Mount {
                force: [186.821_73, -198.129_16, 762.611_09],
                moment: NONE,
                deflection_mm: [-2.704_510, 3.148_245, -2.348_067],
            },
        ],
    },
    Case {
        file: "forestry-pickup",
        load: "rebound",
        torque: None,
        displacement_mm: [-0.090_366_3, 0.003_269_7, 1.641_812_2],
        rotation_vector: [0.000_112_372, -0.000_775_184, 0.000_023_855],
        mounts: &[
            Mount {
                force: [4.499_05, 236.804_67, -587.857_58],
                moment: NONE,
                deflection_mm: [-0.027_267, 1.064_210, 1.432_557],
            },
            Mount {
                force: [2.080_12, -235.958_04, -570.039_54],
                moment: NONE,
                deflection_mm: [-0.012_607, -0.995_156, 1.397_693],
            },
            Mount {
                force: [-6.579_18, -0.846_63, -313.100_38],
                moment: NONE,
                deflection_mm: [0.095_243, 0.013_453, 1.042_996],
            },
        ],
    },
    Case {
        file: "delivery-van-electric",
        load: "full torque in reverse",
        torque: Some([-2_886.720_000_00, 6_032.144_830_88]),
        displacement_mm: [0.344_364_5, 0.017_516_9, -1.264_785_1],
        rotation_vector: [-0.000_780_557, 0.020_323_409, -0.000_040_788],
        mounts: &[
            Mount {
                force: [-126.211_30, -0.872_79, 3_904.695_56],
                moment: [0.109_377_5, -1.381_340_1, 0.005_122_6],
                deflection_mm: [0.139_271, 4.308_735, 0.004_117],
            },
            Mount {
                force: [-110.560_16, -0.907_77, 3_534.310_36],
                moment: [0.109_377_5, -1.381_340_1, 0.005_122_6],
                deflection_mm: [0.122_000, 3.900_024, 0.004_282],
            },
            Mount {
                force: [236.771_46, 1.780_57, -6_330.854_47],
                moment: [0.284_448_1, -2.542_361_1, 0.001_768_7],
                deflection_mm: [-0.577_491, -3.860_277, -0.006_140],
            },
        ],
    },
    Case {
        file: "delivery-van-electric",
        load: "at rest",
        torque: None,
        displacement_mm: [0.000_000_0, 0.000_000_0, 0.000_000_0],
        rotation_vector: [0.000_000_000, 0.000_000_000, 0.000_000_000],
        mounts: &[
            Mount {
                force: [-3.303_67, -0.028_68, 386.499_45],
                moment: [0.002_506_5, -0.032_133_7, 0.000_124_8],
                deflection_mm: [0.003_646, 0.426_493, 0.000_135],
            },
            Mount {
                force: [-2.878_03, -0.028_66, 378.013_34],
                moment: [0.002_506_5, -0.032_133_7, 0.000_124_8],
                deflection_mm: [0.003_176, 0.417_128, 0.000_135],
            },
            Mount {
                force: [6.181_70, 0.057_33, 343.638_67],
                moment: [0.006_520_7, -0.059_142_0, 0.000_080_3],
                deflection_mm: [-0.015_077, 0.209_536, -0.000_198],
            },
        ],
    },
    Case {
        file: "hillclimb-single-seater",
        load: "upper left mount out",
        torque: None,
        displacement_mm: [-0.724_610_8, 0.161_127_0, -2.875_758_5],
        rotation_vector: [-0.002_796_008, 0.003_024_933, 0.000_427_981],
        mounts: &[
            Mount {
                force: [28.051_19, -90.746_59, 349.530_31],
                moment: NONE,
                deflection_mm: [-2.912_753, -0.756_222, -0.070_294],
            },
            Mount {
                force: [-72.079_27, 45.480_84, 607.487_70],
                moment: NONE,
                deflection_mm: [-3.154_924, -0.379_007, -1.193_359],
            },
            Mount {
                force: [44.028_08, 45.265_75, 317.846_49],
                moment: NONE,
                deflection_mm: [-2.132_366, -0.377_215, -0.488_459],
            },
        ],
    },
    Case {
        file: "hillclimb-single-seater-solid",
        load: "launch",
        torque: Some([2_355.209_090_91, 1_308.449_494_95]),
        displacement_mm: [-0.068_629_8, -0.000_383_0, -0.260_257_6],
        rotation_vector: [-0.000_005_584, -0.002_068_720, 0.000_004_308],
        mounts: &[
            Mount {
                force: [1_967.346_17, -8.059_25, -1_388.752_04],
                moment: NONE,
                deflection_mm: [0.001_962, -0.000_011, -0.000_666],
            },
            Mount {
                force: [1_957.680_69, -8.059_31, -1_401.246_06],
                moment: NONE,
                deflection_mm: [0.001_979, -0.000_011, -0.000_663],
            },
            Mount {
                force: [-1_384.402_84, 8.059_30, 2_038.181_74],
                moment: NONE,
                deflection_mm: [-0.000_653, -0.000_011, -0.000_819],
            },
            Mount {
                force: [-1_393.245_98, 8.059_25, 2_026.680_86],
                moment: NONE,
                deflection_mm: [-0.000_633, -0.000_011, -0.000_818],
            },
        ],
    },
    Case {
        file: "coastal-hatchback",
        load: "at rest",
        torque: None,
        displacement_mm: [-0.065_229_3, 0.349_610_4, -3.941_231_5],
        rotation_vector: [0.003_154_698, 0.000_397_833, -0.000_034_687],
        mounts: &[
            Mount {
                force: [3.882_21, 16.995_83, 775.642_06],
                moment: NONE,
                deflection_mm: [-0.019_411, -0.113_306, -5.039_830],
            },
            Mount {
                force: [8.436_69, -16.906_28, 665.006_20],
                moment: [-0.246_352_0, -0.018_238_5, 0.003_631_9],
                deflection_mm: [-0.022_585, 2.373_579, 0.146_846],
            },
            Mount {
                force: [-12.318_90, -0.089_55, 0.929_29],
                moment: NONE,
                deflection_mm: [0.000_000, 0.000_000, 0.055_140],
            },
        ],
    },
    Case {
        file: "coastal-hatchback",
        load: "launch",
        torque: Some([2_316.638_417_39, 1_544.425_611_59]),
        displacement_mm: [-5.367_724_0, 0.429_603_0, -2.533_086_5],
        rotation_vector: [0.005_972_518, -0.048_085_814, 0.001_363_939],
        mounts: &[
            Mount {
                force: [2_298.275_18, 59.915_52, 511.598_02],
                moment: NONE,
                deflection_mm: [-11.491_376, -0.399_437, -3.324_171],
            },
            Mount {
                force: [3_189.601_21, -0.462_80, 375.377_11],
                moment: [-0.464_449_5, 2.204_409_2, -0.146_630_1],
                deflection_mm: [-8.538_385, 1.339_818, 0.004_020],
            },
            Mount {
                force: [-5_487.876_39, -59.452_73, 554.602_42],
                moment: NONE,
                deflection_mm: [0.000_000, 0.000_000, 9.378_425],
            },
        ],
    },
    Case {
        file: "coastal-hatchback",
        load: "full torque in reverse",
        torque: Some([-2_255.573_600_00, 2_316.443_817_12]),
        displacement_mm: [5.326_517_8, -0.068_935_4, -4.103_907_8],
        rotation_vector: [-0.000_658_456, 0.051_293_085, -0.001_312_698],
        mounts: &[
            Mount {
                force: [-2_381.842_34, 2.983_28, 858.188_40],
                moment: NONE,
                deflection_mm: [11.909_212, -0.019_889, -5.576_185],
            },
            Mount {
                force: [-3_239.609_85, -1.347_95, 773.208_13],
                moment: [0.053_376_7, -2.351_311_6, 0.136_117_9],
                deflection_mm: [8.672_255, 2.759_780, 0.011_708],
            },
            Mount {
                force: [5_621.452_19, -1.635_33, -189.818_99],
                moment: NONE,
                deflection_mm: [0.000_000, 0.000_000, -9.495_850],
            },
        ],
    },
    Case {
        file: "coastal-hatchback",
        load: "diagonal kerb",
        torque: None,
        displacement_mm: [0.934_448_5, -2.587_123_2, -8.575_682_6],
        rotation_vector: [0.001_736_529, 0.001_676_298, 0.001_003_236],
        mounts: &[
            Mount {
                force: [-303.229_19, 409.677_94, 2_232.368_74],
                moment: NONE,
                deflection_mm: [1.516_146, -2.731_186, -10.383_374],
            },
            Mount {
                force: [-204.477_19, 308.486_99, 2_070.928_77],
                moment: [-0.135_655_7, -0.076_820_4, -0.104_410_8],
                deflection_mm: [0.547_374, 7.391_682, -2.679_488],
            },
            Mount {
                force: [-213.082_39, 2.623_84, 21.435_13],
                moment: NONE,
                deflection_mm: [0.000_000, 0.000_000, 0.955_913],
            },
        ],
    },
];

/// Frequencies at rest [Hz] from the same second program.
const AT_REST: [(&str, [f64; 6]); 4] = [
    (
        "delivery-van-electric",
        [
            14.654_358_9,
            24.760_696_8,
            28.139_312_1,
            34.737_292_1,
            43.289_579_2,
            53.253_264_5,
        ],
    ),
    (
        "forestry-pickup",
        [
            6.466_588_1,
            6.666_887_9,
            8.249_622_1,
            9.482_150_5,
            11.675_570_9,
            12.669_461_1,
        ],
    ),
    (
        "hillclimb-single-seater",
        [
            10.520_509_7,
            12.158_333_6,
            18.076_450_5,
            18.868_644_9,
            20.899_009_5,
            22.874_194_4,
        ],
    ),
    (
        "hillclimb-single-seater-solid",
        [
            52.027_926_7,
            53.104_635_2,
            59.142_393_9,
            76.764_686_2,
            81.087_714_4,
            109.343_117_4,
        ],
    ),
];

fn text(name: &str) -> Vec<u8> {
    std::fs::read(format!("{}/models/{name}.toml", env!("CARGO_MANIFEST_DIR"))).unwrap()
}

#[test]
fn positions_reactions_and_deflections_agree_with_a_second_program() {
    for case in CASES {
        let model = file::read(&text(case.file)).unwrap().model;
        let evaluation = evaluate(&model).unwrap();
        let place = model
            .loads
            .iter()
            .position(|load| load.name == case.load)
            .unwrap();
        let result = &evaluation.loads[place];
        let found = result.outcome.as_ref().unwrap();
        let build = (case.file, case.load);
        let torque = result
            .torque
            .map(|torque| [torque.delivered, torque.grip_cap.unwrap()]);
        assert_eq!(torque.is_some(), case.torque.is_some());
        if let (Some(torque), Some(expected)) = (torque, case.torque) {
            assert_close(build, &torque, &expected, 1e-10, 0.0);
        }
        let moved = found.displacement * 1e3;
        assert_close(build, moved.as_slice(), &case.displacement_mm, 0.0, 1e-7);
        let turn = found.rotation.scaled_axis();
        assert_close(build, turn.as_slice(), &case.rotation_vector, 0.0, 1e-9);
        assert_eq!(found.mounts.len(), case.mounts.len());
        for (mount, expected) in found.mounts.iter().zip(case.mounts) {
            let held = mount.force_on_powertrain;
            assert_close(build, held.as_slice(), &expected.force, 0.0, 1e-5);
            let moment = mount.moment_on_powertrain;
            assert_close(build, moment.as_slice(), &expected.moment, 0.0, 1e-7);
            let x = mount.isolator_deflection * 1e3;
            assert_close(build, x.as_slice(), &expected.deflection_mm, 0.0, 1e-6);
        }
    }
}

#[test]
fn frequencies_at_rest_agree_with_a_second_program() {
    for (name, expected) in AT_REST {
        let model = file::read(&text(name)).unwrap().model;
        let evaluation = evaluate(&model).unwrap();
        let found: Vec<f64> = evaluation.modes[0]
            .solution
            .modes
            .iter()
            .map(|mode| mode.frequency_hz)
            .collect();
        assert_close(name, &found, &expected, 1e-8, 0.0);
    }
}

/// Frequencies at rest [Hz] of the build with a fluid, without any loss, from the same second
/// program: it seeks where the mounts' rates at a frequency let the powertrain swing at that
/// frequency, det(K(ω) − ω² M) = 0, and knows no coordinate of the fluid.
#[test]
fn a_build_with_a_fluid_swings_where_its_rates_at_that_frequency_say() {
    let text = text("coastal-hatchback");
    let mut model = file::read(&text).unwrap().model;
    for isolator in &mut model.isolators {
        isolator.dynamics.loss_factor = 0.0;
    }
    let found: Vec<f64> = evaluate(&model).unwrap().modes[0]
        .solution
        .modes
        .iter()
        .map(|mode| mode.frequency_hz)
        .collect();
    let expected = [
        7.097_611_8,
        8.070_807_8,
        11.130_983_0,
        12.681_451_6,
        14.804_837_1,
        20.967_626_8,
        21.866_524_9,
    ];
    assert_close("frequencies", &found, &expected, 1e-7, 0.0);
}
