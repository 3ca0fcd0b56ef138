//! The programs of `examples/` run and find the answers they assert.

#[path = "../../examples/roll_of_a_level_build.rs"]
mod roll_of_a_level_build;
#[path = "../../examples/softer_rear_mount.rs"]
mod softer_rear_mount;

#[test]
fn every_example_is_here_and_finds_its_answer() {
    let runs = [
        ("roll_of_a_level_build.rs", roll_of_a_level_build::main()),
        ("softer_rear_mount.rs", softer_rear_mount::main()),
    ];
    let mut files: Vec<String> =
        std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/examples"))
            .unwrap()
            .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
            .collect();
    files.sort();
    assert_eq!(files, runs.each_ref().map(|(file, _)| *file));
    for (file, run) in runs {
        assert!(run.is_ok(), "{file}: {run:?}");
    }
}
