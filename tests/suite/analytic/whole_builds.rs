//! Whole demo builds, from the file to the results, against an independent calculation.
//!
//! *Cross-checked*: a second program that shares no line with this one, written
//! in Python with numpy 2 and scipy 1 from the physics alone. It reads the model
//! file itself, finds each position with a damped Newton iteration on the
//! balance of forces and moments (derivatives by central differences, mount
//! splits by bracketing), and the frequencies with `scipy.linalg.eigh`. The
//! numbers below are its output; every other number of the four builds agreed
//! to 1e-9 as well (1592 of them) when they were compared.

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
    /// Force on the powertrain [N] and the isolator's own deflection [mm].
    mounts: &'static [([f64; 3], [f64; 3])],
}

const CASES: &[Case] = &[
    Case {
        file: "forestry-pickup",
        load: "pothole",
        torque: None,
        displacement_mm: [8.216_201_8, -0.163_106_5, -14.528_849_5],
        rotation_vector: [-0.000_875_358, 0.007_502_268, -0.000_521_778],
        mounts: &[
            (
                [-991.371_53, -2_843.799_75, 6_132.603_02],
                [7.625_935, -9.618_524, -12.560_548],
            ),
            (
                [-949.931_47, 2_843.385_59, 5_938.735_63],
                [7.307_165, 8.754_323, -12.524_883],
            ),
            (
                [-1_000.692_00, 0.414_15, 2_638.636_35],
                [6.254_325, -0.004_872, -8.795_455],
            ),
        ],
    },
    Case {
        file: "forestry-pickup",
        load: "launch",
        torque: Some([1_335.785_584_36, 834.865_990_22]),
        displacement_mm: [-2.405_038_0, 0.860_206_8, -3.210_974_7],
        rotation_vector: [0.027_874_299, 0.000_698_784, 0.007_354_292],
        mounts: &[
            (
                [609.853_31, -335.094_62, -1_045.281_67],
                [-4.691_179, 6.771_041, 1.525_142],
            ),
            (
                [22.923_99, 536.191_62, 3_187.147_13],
                [-0.176_338, 10.893_651, -6.756_147],
            ),
            (
                [396.920_95, -201.097_01, 800.129_55],
                [-2.480_756, 2.365_847, -2.667_098],
            ),
        ],
    },
    Case {
        file: "delivery-van-electric",
        load: "full torque in reverse",
        torque: Some([-2_886.72, 6_032.144_830_88]),
        displacement_mm: [0.415_638_8, 0.021_834_9, -1.987_816_7],
        rotation_vector: [-0.001_000_815, 0.023_125_540, -0.000_055_272],
        mounts: &[
            (
                [-128.444_73, -1.034_06, 3_911.679_23],
                [0.183_492, 0.003_977, -5.588_113],
            ),
            (
                [-111.990_00, -1.104_33, 3_538.871_94],
                [0.159_986, 0.004_247, -5.055_531],
            ),
            (
                [240.434_73, 2.138_39, -6_342.399_72],
                [-0.632_723, -0.007_128, 3.964_000],
            ),
        ],
    },
    Case {
        file: "delivery-van-electric",
        load: "at rest",
        torque: None,
        displacement_mm: [0.0; 3],
        rotation_vector: [0.0; 3],
        mounts: &[
            (
                [-4.652_65, -0.026_35, 386.546_31],
                [0.006_647, 0.000_101, -0.552_209],
            ),
            (
                [-4.093_26, -0.026_31, 378.014_94],
                [0.005_848, 0.000_101, -0.540_021],
            ),
            (
                [8.745_91, 0.052_66, 343.590_20],
                [-0.023_016, -0.000_176, -0.214_744],
            ),
        ],
    },
    Case {
        file: "hillclimb-single-seater",
        load: "upper left mount out",
        torque: None,
        displacement_mm: [-0.740_736_2, 0.158_086_7, -2.852_951_2],
        rotation_vector: [-0.002_763_676, 0.003_082_734, 0.000_462_452],
        mounts: &[
            (
                [28.236_30, -90.832_92, 349.718_56],
                [-2.914_321, -0.756_941, -0.067_229],
            ),
            (
                [-72.147_21, 45.522_00, 607.425_51],
                [-3.154_158, -0.379_350, -1.144_120],
            ),
            (
                [43.910_91, 45.310_92, 317.720_43],
                [-2.130_933, -0.377_591, -0.460_982],
            ),
        ],
    },
    Case {
        file: "hillclimb-single-seater",
        load: "launch",
        torque: Some([2_355.209_090_91, 1_308.449_494_95]),
        displacement_mm: [-0.434_520_4, -0.009_998_6, -0.582_427_2],
        rotation_vector: [-0.000_202_561, -0.031_782_218, 0.000_110_800],
        mounts: &[
            (
                [2_399.652_81, -6.688_20, -943.652_45],
                [7.863_770, -0.055_735, -5.713_459],
            ),
            (
                [2_378.992_91, -6.689_76, -955.591_34],
                [7.963_261, -0.055_748, -5.664_269],
            ),
            (
                [-1_815.715_09, 6.689_70, 1_595.518_90],
                [1.297_518, -0.055_747, -5.743_111],
            ),
            (
                [-1_815.552_59, 6.688_27, 1_578.589_38],
                [1.396_319, -0.055_736, -5.714_335],
            ),
        ],
    },
];

/// Frequencies at rest [Hz] from the same second program.
const AT_REST: [(&str, [f64; 6]); 4] = [
    (
        "delivery-van-electric",
        [
            15.696_826_1,
            22.693_056_5,
            25.900_223_5,
            31.869_331_6,
            40.468_558_0,
            49.885_251_6,
        ],
    ),
    (
        "forestry-pickup",
        [
            6.533_602_9,
            7.296_032_7,
            7.923_431_3,
            9.537_341_4,
            11.708_654_1,
            12.710_860_7,
        ],
    ),
    (
        "hillclimb-single-seater",
        [
            10.534_462_5,
            12.193_873_0,
            18.400_727_9,
            19.195_126_5,
            21.119_792_8,
            23.132_108_4,
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
        let torque = result
            .torque
            .map(|torque| [torque.delivered, torque.grip_cap.unwrap()]);
        assert_eq!(torque.is_some(), case.torque.is_some());
        if let (Some(torque), Some(expected)) = (torque, case.torque) {
            assert_close(case.load, &torque, &expected, 1e-10, 0.0);
        }
        let displacement = found.displacement * 1e3;
        assert_close(
            case.load,
            displacement.as_slice(),
            &case.displacement_mm,
            0.0,
            1e-7,
        );
        let rotation = found.rotation.scaled_axis();
        assert_close(
            case.load,
            rotation.as_slice(),
            &case.rotation_vector,
            0.0,
            1e-9,
        );
        assert_eq!(found.mounts.len(), case.mounts.len());
        for (mount, (force, deflection)) in found.mounts.iter().zip(case.mounts) {
            let held = mount.force_on_powertrain;
            assert_close(case.load, held.as_slice(), force, 0.0, 1e-5);
            let x = mount.isolator_deflection * 1e3;
            assert_close(case.load, x.as_slice(), deflection, 0.0, 1e-6);
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
