//! How long a whole build takes, and the parts of it. One core; the pickup of `models/`.
//!
//! Run with `cargo bench`.

use bedplate::model::{Model, file};
use bedplate::report::html;
use bedplate::rigid::equilibrium::solve_equilibrium;
use bedplate::rigid::loading::Loading;
use bedplate::rigid::modes::solve_modes;
use bedplate::rigid::mount_response::HeldMount;
use bedplate::rigid::supported::Supported;
use bedplate::study::evaluate::evaluate;

const PICKUP: &[u8] = include_bytes!("../models/forestry-pickup.toml");

const EVERY_KIND: &[u8] = include_bytes!("every_kind.toml");

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

/// Everything but the reading: 13 load cases with 3 mounts, modes at two positions, checks.
#[divan::bench]
fn evaluate_pickup_13_cases_3_mounts(bencher: divan::Bencher<'_, '_>) {
    let model = pickup();
    bencher.bench(|| {
        model
            .as_ref()
            .map(|model| evaluate(divan::black_box(model)).is_ok())
    });
}

/// The same without its joints.
#[divan::bench]
fn evaluate_pickup_without_joints(bencher: divan::Bencher<'_, '_>) {
    let mut model = pickup();
    if let Some(model) = &mut model {
        model.joints.clear();
    }
    bencher.bench(|| {
        model
            .as_ref()
            .map(|model| evaluate(divan::black_box(model)).is_ok())
    });
}

/// The same with three joints, one of which asks for sizes out of 468 combinations.
#[divan::bench]
fn evaluate_pickup_and_size_a_joint(bencher: divan::Bencher<'_, '_>) {
    let mut model = pickup();
    if let Some(joint) = model.as_mut().and_then(|model| model.joints.first_mut()) {
        joint.ask_for_sizes();
    }
    bencher.bench(|| {
        model
            .as_ref()
            .map(|model| evaluate(divan::black_box(model)).is_ok())
    });
}

/// One held load on eight mounts, an isolator of every kind: limit 50 µs.
#[divan::bench]
fn load_case_8_mounts_of_every_kind(bencher: divan::Bencher<'_, '_>) {
    let model = file::read(EVERY_KIND).ok().map(|checked| checked.model);
    let body = model.as_ref().and_then(whole_body);
    let rest = body.as_ref().and_then(|body| {
        let weight = Loading::weight(body.mass().mass());
        solve_equilibrium(body, &weight, None).ok()
    });
    bencher.bench(|| {
        let (body, rest) = (body.as_ref()?, rest.as_ref()?);
        let mut loading = Loading::weight(body.mass().mass());
        loading.moment.x = divan::black_box(900.0);
        loading.at_centre.x = -1500.0;
        Some(solve_equilibrium(body, &loading, Some(rest)).is_ok())
    });
}

/// The page with its figures and every table.
#[divan::bench]
fn page_of_pickup(bencher: divan::Bencher<'_, '_>) {
    let done = pickup().and_then(|model| {
        let evaluation = evaluate(&model).ok()?;
        Some((model, evaluation))
    });
    bencher.bench(|| {
        done.as_ref()
            .map(|(model, evaluation)| html::document(divan::black_box(model), evaluation).len())
    });
}

/// From the weight on unloaded rubber to the rest position.
#[divan::bench]
fn rest_position_3_mounts(bencher: divan::Bencher<'_, '_>) {
    let model = pickup();
    let body = model.as_ref().and_then(whole_body);
    bencher.bench(|| {
        body.as_ref().map(|body| {
            let weight = Loading::weight(body.mass().mass());
            solve_equilibrium(divan::black_box(body), &weight, None).is_ok()
        })
    });
}

/// Six modes, shares and damping about a known position.
#[divan::bench]
fn modes_3_mounts(bencher: divan::Bencher<'_, '_>) {
    let model = pickup();
    let done = model.as_ref().and_then(whole_body).and_then(|body| {
        let weight = Loading::weight(body.mass().mass());
        let rest = solve_equilibrium(&body, &weight, None).ok()?;
        Some((body, rest))
    });
    bencher.bench(|| {
        done.as_ref()
            .map(|(body, rest)| solve_modes(divan::black_box(body), rest).is_ok())
    });
}

fn whole_body(model: &Model) -> Option<Supported<'_>> {
    let held = model
        .mounts
        .iter()
        .map(|mount| HeldMount::fitted_free(mount, &model.isolators[mount.isolator]))
        .collect();
    Supported::new(model.mass, held).ok()
}
