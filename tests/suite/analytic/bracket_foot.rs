//! What mount reactions do to the foot of a bracket: bending, prying, holes, edges, the weld of its upright.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use bedplate::model::Model;
use bedplate::spatial::Wrench;
use bedplate::study::evaluate::evaluate;
use bedplate::study::joint::JointResult;
use bedplate::study::joint::requirement::Requirement;

use crate::kit::{assert_close, four_mounts_and, model};

/// Weight on one of the four mounts \[N\].
const WEIGHT: f64 = 150.0 * 9.80665 / 4.0;

/// Tension resistance of M10 10.9 \[N\]: 0.9 · 1040 MPa · 57.9896 mm²/1.25.
const BOLT_BEARS: f64 = 43_422.6;

const MATERIALS: &str = "[material.mild]\nfamily = \"steel\"\nyield_strength = \"235 MPa\"\ntensile_strength = \"360 MPa\"\n\
    [material.light]\nfamily = \"aluminium\"\nyield_strength = \"200 MPa\"\ntensile_strength = \"250 MPa\"\n\
    [material.listed]\nfamily = \"aluminium\"\nyield_strength = \"200 MPa\"\ntensile_strength = \"250 MPa\"\n\
    heat_affected = { yield_strength = \"90 MPa\", tensile_strength = \"100 MPa\" }\n";

const M10: &str = "bolt = { size = \"M10\", class = \"10.9\", hole = \"11 mm\" }\n";

const FOUR: &str = "pattern = [\"40, 25 mm\", \"40, -25 mm\", \"-40, 25 mm\", \"-40, -25 mm\"]\n";

/// The mount stands 60 mm to the left of the joint and 80 mm above it.
const BESIDE: &str = "offset = \"0, 60, 80 mm\"\n";

const ABOVE: &str = "offset = \"0, 0, 80 mm\"\n";

/// A foot or plate of 120 x 80 mm.
fn sheet(what: &str, thickness: &str, material: &str) -> String {
    format!(
        "{what} = {{ thickness = \"{thickness}\", length = \"120 mm\", width = \"80 mm\", material = \"{material}\" }}\n"
    )
}

/// A joint to a thick part, at the first of four mounts.
fn on_part(lines: &str) -> (Model, JointResult) {
    let model = model(&four_mounts_and(&format!(
        "{MATERIALS}[[joint]]\nname = \"j\"\nmount = \"a\"\nto = {{ thickness = \"20 mm\", material = \"mild\" }}\n{lines}"
    )));
    let joint = evaluate(&model).unwrap().joints.remove(0);
    (model, joint)
}

fn required<'a>(joint: &'a JointResult, id: &str) -> &'a Requirement {
    let found = joint.requirements.iter().find(|one| one.id == id);
    found.unwrap_or_else(|| panic!("no requirement {id}"))
}

/// Place of the load case of this name.
fn place(model: &Model, load: &str) -> usize {
    let found = model.loads.iter().position(|case| case.name == load);
    found.unwrap()
}

/// Value of a requirement in one load case.
fn at(joint: &JointResult, id: &str, load: usize) -> f64 {
    let each = &required(joint, id).each;
    each.iter().find(|(place, _)| *place == load).unwrap().1
}

/// By hand: a head presses on 14.63 mm, a foot of 3 mm of 360 MPa is punched at 0.6 pi · 14.63 · 3 ·
/// 360/1.25 = 23 826 N. Without an upright the pull counts alone, a quarter of the weight at most
/// upwards; with one, what the bolt feels once a foot so thin as 1 mm hinges and pries.
#[test]
fn a_head_is_not_pulled_through_a_thin_foot() {
    let foot = sheet("bracket", "3 mm", "mild");
    let (_, plain) = on_part(&format!("{M10}{FOUR}{BESIDE}{foot}"));
    let foot = sheet("bracket", "1 mm", "mild");
    let (_, pried) = on_part(&format!(
        "{M10}{FOUR}{BESIDE}{foot}upright = {{ arm = \"25 mm\" }}\n"
    ));
    let [plain_head, pried_head] = [&plain, &pried].map(|joint| required(joint, "head-punching"));
    assert_close("limit", &[plain_head.limit], &[23_826.0], 1e-4, 0.0);
    let pull = plain
        .loads
        .iter()
        .map(|loaded| loaded.most_pulled())
        .fold(0.0, f64::max);
    assert_close("pull", &[plain_head.value], &[pull], 1e-12, 0.0);
    assert!(
        pried_head.value > 1.02 * plain_head.value,
        "{} {}",
        pried_head.value,
        plain_head.value
    );
}

/// Derived by hand, at rest: the right-hand bolts are pulled with −91.94 + 220.65 = 128.71 N (see
/// `joints_of_a_build`). Room of a bolt: 20 and 15 mm to the edges, 25 mm half way to the next, so
/// a strip of 30 mm, below 14.63 + 2 · 25. 6 F a/(w t²) = 6 · 128.71 · 25/(30 · 64) = 10.055 MPa,
/// with the reserve of 1.1 at rest, without it in a pothole.
#[test]
fn a_foot_bends_at_the_face_of_its_upright() {
    let foot = sheet("bracket", "8 mm", "mild");
    let (model, joint) = on_part(&format!(
        "{M10}{FOUR}{BESIDE}{foot}upright = {{ arm = \"25 mm\" }}\n"
    ));
    let bending = required(&joint, "foot-bending");
    assert_close("limit", &[bending.limit], &[235e6], 1e-12, 0.0);
    let rest = &joint.loads[0];
    let pull = 0.06 * WEIGHT * 0.025 / (4.0 * 0.025_f64.powi(2)) - WEIGHT / 4.0;
    assert_close("pull", &[pull, rest.most_pulled()], &[128.71; 2], 1e-4, 0.0);
    let found = at(&joint, "foot-bending", rest.load);
    assert_close("rest", &[found], &[1.1 * 10.0555e6], 1e-4, 0.0);
    let rare = place(&model, "pothole");
    let loaded = joint.loads.iter().find(|one| one.load == rare).unwrap();
    let stress = 6.0 * loaded.most_pulled() * 25e-3 / (30e-3 * 8e-3_f64.powi(2));
    let found = at(&joint, "foot-bending", rare);
    assert_close("pothole", &[found], &[stress], 1e-9, 0.0);
    assert!(bending.title.contains("foot"));
    // What the bracket is welded to bends in its place.
    let plate = foot.replace("bracket", "plate");
    let (_, welded) = on_part(&format!(
        "{M10}{FOUR}{BESIDE}{plate}upright = {{ arm = \"25 mm\" }}\n"
    ));
    let on_plate = required(&welded, "foot-bending");
    assert_close("plate", &[on_plate.value], &[bending.value], 1e-9, 0.0);
    assert!(on_plate.title.contains("plate"));
}

/// Derived by hand: b' = 25 − 5 = 20, a' = 15 + 5 = 20, ρ = 1, δ = 1 − 11/30 = 0.63333,
/// f = 0.9 · 360 = 324 MPa, t_c² = 4 · 43 422.6 · 20/(30 · 324) = 357.388 mm².
/// 8 mm: α = 3.62, so hinges of 155.52 N m carry 155.52 · 1.63333/0.020 = 12 700.8 N.
/// 14 mm: (t/t_c)² = 0.548424, α = 0.65005, 0.548424 · 1.411698 = 0.774209 of the bolt.
/// 20 mm: the bolt alone.
#[test]
fn a_thin_foot_pries_its_bolts() {
    let pull = |thickness: &str| {
        let foot = sheet("bracket", thickness, "mild");
        let (_, joint) = on_part(&format!(
            "{M10}{FOUR}{BESIDE}{foot}upright = {{ arm = \"25 mm\" }}\n"
        ));
        joint
    };
    let carries = ["8 mm", "14 mm", "20 mm"].map(|t| required(&pull(t), "prying").limit);
    assert_close(
        "carries",
        &carries,
        &[12_700.8, 0.774_209 * BOLT_BEARS, BOLT_BEARS],
        1e-5,
        0.0,
    );
    // 1 mm: M = 30 · 1 · 324/4 = 2.43 N m, Q = (128.71 · 20 − 2430)/20 = 7.21 N; no shear at rest.
    let thin = pull("1 mm");
    let rest = thin.loads[0].load;
    let [used, straight] = [&thin, &pull("8 mm")].map(|one| at(one, "bolt-strength", rest));
    assert_close(
        "bolt",
        &[used, straight],
        &[135.92 / BOLT_BEARS, 128.71 / BOLT_BEARS],
        1e-4,
        0.0,
    );
    let worst = required(&thin, "prying");
    let pulls = thin.loads.iter().map(|loaded| loaded.most_pulled());
    assert_close(
        "worst",
        &[worst.value],
        &[pulls.fold(0.0, f64::max)],
        1e-12,
        0.0,
    );
}

/// Published: the hanger of `published/tamboli_prying.rs` at six sevenths of its size, so that its
/// bolt of 7/8 in becomes one of 3/4 in: 23.7 kip a bolt become 23.7 · 36/49. Its flange rules, so
/// neither the bolt nor the edge, here half a pitch away, changes what it carries.
#[test]
fn the_published_hanger_carries_the_same_as_a_foot() {
    let inches = |size: f64| format!("{} in", size * 6.0 / 7.0);
    let place = |x: f64, y: f64| format!("\"{}, {}\"", x * 6.0 / 7.0, inches(y));
    let pattern = [
        place(1.5, 2.25),
        place(1.5, -2.25),
        place(-1.5, 2.25),
        place(-1.5, -2.25),
    ];
    let (_, joint) = on_part(&format!(
        "bolt = {{ size = \"3/4-10 UNC\", class = \"grade 5\", hole = \"{}\" }}\npattern = [{}]\n{BESIDE}\
         bracket = {{ thickness = \"{}\", length = \"{}\", width = \"{}\", material = \"hanger\" }}\n\
         upright = {{ arm = \"{}\" }}\n\
         [material.hanger]\nfamily = \"steel\"\nyield_strength = \"50 ksi\"\ntensile_strength = \"65 ksi\"\n",
        inches(0.9375),
        pattern.join(", "),
        inches(0.715),
        inches(6.0),
        inches(7.5),
        inches((4.5 - 0.430) / 2.0),
    ));
    let kip = 4_448.222;
    let found = required(&joint, "prying").limit / kip;
    assert_close("T", &[found], &[23.7 * 36.0 / 49.0], 6e-3, 0.0);
}

/// Derived: a bolt no farther out than half its diameter is held by the upright itself, so nothing
/// pries; bolts that are pushed neither bend nor pry. 4 mm: a strip of 14.63 + 8 = 22.63 mm,
/// 6 · 128.71 · 4/22.63 = 136.50 MPa at 1 mm.
#[test]
fn a_bolt_at_the_upright_and_one_that_is_pushed_are_not_pried() {
    let on = |arm: &str, offset: &str| {
        let foot = sheet("bracket", "1 mm", "mild");
        let upright = format!("upright = {{ arm = \"{arm}\" }}\n");
        on_part(&format!("{M10}{FOUR}{offset}{foot}{upright}")).1
    };
    let near = on("4 mm", BESIDE);
    let rest = near.loads[0].load;
    let bears = required(&near, "prying").limit;
    assert_close("carries", &[bears], &[BOLT_BEARS], 1e-5, 0.0);
    assert_close(
        "bolt, bending",
        &[
            at(&near, "bolt-strength", rest),
            at(&near, "foot-bending", rest),
        ],
        &[128.71 / BOLT_BEARS, 1.1 * 136.50e6],
        1e-4,
        0.0,
    );
    // Half of its diameter exactly, where the hinge has no arm at all.
    let touching = at(&on("5 mm", BESIDE), "bolt-strength", rest);
    assert_close("touching", &[touching], &[128.71 / BOLT_BEARS], 1e-4, 0.0);
    let pushed = on("25 mm", "");
    for id in ["foot-bending", "prying", "bolt-strength"] {
        assert_close(id, &[at(&pushed, id, rest)], &[0.0], 0.0, 1e-9);
    }
    for arm in ["0.1 mm", "5 mm", "5.0001 mm", "400 mm"] {
        for offset in ["", BESIDE] {
            for one in on(arm, offset).requirements {
                assert!(one.value.is_finite() && one.limit.is_finite(), "{one:?}");
                assert!(one.value >= 0.0 && one.limit >= 0.0, "{one:?}");
            }
        }
    }
}

/// Derived by hand: two holes of 11 mm in 80 mm leave 464 mm², 0.9 · 464 · 360/1.25 = 120 268.8 N;
/// two in 120 mm leave 784 mm², 203 212.8 N. Braking pulls along with the weight, a bend across.
#[test]
fn holes_weaken_the_foot_along_and_across() {
    let used = |pattern: &str, size: &str, load: &str| {
        let (model, joint) = on_part(&format!(
            "{M10}{pattern}bracket = {{ thickness = \"8 mm\", {size}, material = \"mild\" }}\n"
        ));
        let place = place(&model, load);
        let section = required(&joint, "net-section").clone();
        (WEIGHT / at(&joint, "net-section", place), section)
    };
    let size = "length = \"120 mm\", width = \"80 mm\"";
    let (along, section) = used(FOUR, size, "braking");
    let (across, _) = used(FOUR, size, "left bend");
    assert_close(
        "bears",
        &[along, across],
        &[120_268.8, 203_212.8],
        1e-3,
        0.0,
    );
    assert!(section.title.contains("foot") && section.title.contains("along"));
    assert!(section.title.ends_with(": 2"), "{}", section.title);
    // Holes count as one row up to half a hole, 5.5 mm, out of line.
    let two = |x: &str| format!("pattern = [\"40, 25 mm\", \"{x}, -25 mm\"]\n");
    let (row, _) = used(&two("35"), size, "braking");
    let (single, section) = used(&two("34"), size, "braking");
    assert_close(
        "rows",
        &[row, single],
        &[120_268.8, 69.0 * 8.0 * 259.2],
        1e-3,
        0.0,
    );
    assert!(section.title.ends_with(": 1"), "{}", section.title);
    // One hole in 200 mm leaves 391 910 N, but 1600 mm² yield at 376 000 N.
    let (gross, _) = used("", "length = \"200 mm\", width = \"200 mm\"", "braking");
    assert_close("gross", &[gross], &[376_000.0], 1e-3, 0.0);
}

/// Derived by hand: foot of 100 x 70 mm, edges at 10 mm: k₁ = 2.8 · 10/11 − 1.7 = 0.845455,
/// α = 10/33, so 0.256198 · 360 · 10 · 8/1.25 = 5902.8 N. A plate of 120 x 80 mm has 15 mm.
#[test]
fn the_edges_of_the_foot_are_those_of_the_file() {
    let foot = "bracket = { thickness = \"8 mm\", length = \"100 mm\", width = \"70 mm\", material = \"mild\" }\n";
    let plate = sheet("plate", "8 mm", "mild");
    let (_, joint) = on_part(&format!("{M10}{FOUR}{foot}{plate}"));
    let edge = required(&joint, "edge-distance");
    assert_close(
        "edge",
        &[edge.value, edge.limit],
        &[10e-3, 13.2e-3],
        1e-9,
        0.0,
    );
    assert!(edge.title.contains("foot") && !edge.holds());
    let bearing = required(&joint, "bearing");
    assert_close("bearing", &[bearing.limit], &[5902.8], 1e-5, 0.0);
    assert!(bearing.title.contains("foot"));
    // The plate is the narrower one below a wider foot.
    let wide = foot.replace("100 mm", "150 mm").replace("70 mm", "90 mm");
    let (_, joint) = on_part(&format!("{M10}{FOUR}{wide}{plate}"));
    let edge = required(&joint, "edge-distance");
    assert_close("edge", &[edge.value], &[15e-3], 1e-9, 0.0);
    assert!(edge.title.contains("plate"));
}

/// Stress of a weld group at this height above the joint face, the largest of its corners.
///
/// `size` is length, ∫x², ∫y² [m, m³], `reach` its half sizes \[m\].
fn by_hand(wrench: &Wrench, height: f64, size: [f64; 3], reach: [f64; 2]) -> f64 {
    let (force, moment) = (wrench.force, wrench.moment);
    let [length, about_y, about_x] = size;
    let (mx, my) = (moment.x + height * force.y, moment.y - height * force.x);
    let twist = moment.z / (about_x + about_y);
    let corners = [[1.0, 1.0], [-1.0, 1.0], [-1.0, -1.0], [1.0, -1.0]];
    let stress = corners.map(|[i, j]| {
        let (x, y) = (i * reach[0], j * reach[1]);
        let pulled = force.z / length + mx * y / about_x - my * x / about_y;
        let sheared = [force.x / length - twist * y, force.y / length + twist * x];
        pulled.hypot(sheared[0].hypot(sheared[1])) / 3e-3
    });
    stress.into_iter().fold(0.0, f64::max)
}

/// Derived: an upright stands 8 mm above the joint face on a foot of 8 mm, on it on a plate that the
/// bracket is welded to, and 8 mm above the lower face of that plate.
/// Around 60 x 40 mm: 200 mm, ∫x² = 2 · 60³/12 + 80 · 30² = 108 000, ∫y² = 58 666.7 mm³;
/// runs of 60 mm at ±20 mm: 120 mm, 36 000 and 48 000 mm³;
/// around 120 x 80 mm: 400 mm, 864 000 and 469 333 mm³. 360/(√3 · 0.8 · 1.25) = 207.85 MPa.
#[test]
fn the_weld_of_an_upright_takes_the_moment_at_its_own_height() {
    let upright = |run: &str| {
        format!(
            "upright = {{ arm = \"25 mm\", length = \"60 mm\", width = \"40 mm\", weld = {{ throat = \"3 mm\", {run} }} }}\n"
        )
    };
    let around = [0.2, 108_000e-9, 58_666.667e-9];
    let runs = [0.12, 36_000e-9, 48_000e-9];
    let of_plate = [0.4, 864_000e-9, 469_333.333e-9];
    let (small, large) = ([0.03, 0.02], [0.06, 0.04]);
    let weld = "weld = { throat = \"3 mm\", around = true }\n";
    for (what, run, id, height, size, reach) in [
        (
            "bracket",
            "around = true",
            "upright-weld",
            0.008,
            around,
            small,
        ),
        (
            "bracket",
            "length = \"120 mm\"",
            "upright-weld",
            0.008,
            runs,
            small,
        ),
        ("plate", "around = true", "upright-weld", 0.0, around, small),
        ("plate", "around = true", "weld", -0.008, of_plate, large),
    ] {
        let sheet = sheet(what, "8 mm", "mild");
        let weld = if id == "weld" { weld } else { "" };
        let (model, joint) = on_part(&format!("{M10}{FOUR}{ABOVE}{sheet}{weld}{}", upright(run)));
        for load in ["braking", "left bend", "pothole"] {
            let load = place(&model, load);
            let loaded = joint.loads.iter().find(|one| one.load == load).unwrap();
            let expected = by_hand(&loaded.wrench, height, size, reach);
            let found = at(&joint, id, load);
            assert_close((what, run, id), &[found], &[expected], 1e-6, 0.0);
        }
        let limit = required(&joint, id).limit;
        assert_close("limit", &[limit], &[207.846e6], 1e-5, 0.0);
    }
}

/// Derived by hand: beside a weld the metal bears 90 and 100 MPa. The leg, √2 throats long, sheared:
/// √2 · 100/(√3 · 1.25) = 65.320 MPa, below the filler's 73.9. Hinges of 30 · 64 · 90/4 = 43.2 N m
/// carry 43.2 · 1.63333/0.020 = 3528 N; one piece with its upright, 200 MPa, 7840 N.
#[test]
fn heat_of_the_weld_weakens_the_foot() {
    let weld = ", length = \"60 mm\", width = \"40 mm\", weld = { throat = \"3 mm\", around = true, filler = \"5356\" }";
    let joint = |material: &str, weld: &str| {
        let foot = sheet("bracket", "8 mm", material);
        on_part(&format!(
            "{M10}{FOUR}{BESIDE}{foot}upright = {{ arm = \"25 mm\"{weld} }}\n"
        ))
        .1
    };
    let welded = joint("listed", weld);
    let limits = ["foot-bending", "prying", "upright-weld"].map(|id| required(&welded, id).limit);
    assert_close("welded", &limits, &[90e6, 3528.0, 65.320e6], 1e-5, 0.0);
    let one_piece = joint("listed", "");
    let limits = ["foot-bending", "prying"].map(|id| required(&one_piece, id).limit);
    assert_close("one piece", &limits, &[200e6, 7840.0], 1e-5, 0.0);
    assert!(
        !one_piece
            .requirements
            .iter()
            .any(|one| one.id == "upright-weld")
    );
    // Where no list says what the heat leaves, it is told.
    let told = |joint: &JointResult| {
        let open = joint
            .unjudged
            .iter()
            .find(|open| open.id == "weld-softening");
        open.map(|open| open.title.clone())
    };
    assert!(told(&joint("light", weld)).unwrap().contains("upright"));
    assert_eq!(told(&joint("light", "")), None);
    assert_eq!(told(&welded), None);
}

/// Derived: without an upright nothing tells how far the bolts stand from what bends the foot.
#[test]
fn a_foot_without_its_upright_is_not_judged() {
    let of = |what: &str, more: &str| {
        let sheet = sheet(what, "8 mm", "mild");
        on_part(&format!("{M10}{FOUR}{sheet}{more}")).1
    };
    let open = |joint: &JointResult| {
        joint
            .unjudged
            .iter()
            .find(|open| open.id == "foot")
            .cloned()
    };
    for what in ["bracket", "plate"] {
        let unknown = of(what, "");
        assert!(
            open(&unknown)
                .unwrap()
                .cure
                .contains("upright = { arm = \"25 mm\" }")
        );
        assert!(!unknown.requirements.iter().any(|one| one.id == "prying"));
        let known = of(what, "upright = { arm = \"25 mm\" }\n");
        assert_eq!(open(&known), None);
    }
    assert!(open(&of("plate", "")).unwrap().title.contains("plate"));
}
