//! How long a whole build takes, and the parts of it. One core; the pickup of `models/`.
//!
//! Run with `cargo bench`.

use bedplate::model::{Model, file};
use bedplate::study::evaluate::evaluate;

const PICKUP: &[u8] = include_bytes!("../models/forestry-pickup.toml");

fn main() {
    divan::main();
}

fn pickup() -> Option<Model> {
    file::read(PICKUP).ok().map(|checked| checked.model)
}

/// The model file to a checked model.
#[divan::bench]
fn read_pickup() -> bool {
    file::read(divan::black_box(PICKUP)).is_ok()
}

/// Everything but the reading: 12 load cases with 3 mounts, modes at two positions, checks.
#[divan::bench]
fn evaluate_pickup_12_cases_3_mounts(bencher: divan::Bencher<'_, '_>) {
    let model = pickup();
    bencher.bench(|| {
        model
            .as_ref()
            .map(|model| evaluate(divan::black_box(model)).is_ok())
    });
}
