//! All load cases of a file: its own and the usual set.

use std::collections::HashSet;

use super::read_all;
use crate::model::load::{self, Context, Drive, LoadCase, LoadClass, LoadOrigin, usual};
use crate::model::reader::{Names, Other, Section};

/// All load cases, the one at rest first, and the places of those about which modes are wanted.
pub(super) fn read_loads(
    root: &Section<'_>,
    context: &Context<'_>,
) -> (Option<Vec<LoadCase>>, Option<Vec<usize>>) {
    let own = read_all(root.items("load", "load case").sections, |section| {
        load::read(section, context)
    });
    let options = root.section("loads");
    let usual = match &options {
        Some(options) if options.has("usual") => options.flag("usual"),
        _ => {
            root.assume(
                "loads.usual",
                "true: the usual set of load cases is added (common practice)",
            );
            Some(true)
        }
    };
    let sources_are_whole = !matches!(context.engine, Other::Broken)
        && !matches!(context.driveline, Other::Broken)
        && usual.is_some();
    let complete = own.iter().all(Option::is_some);
    let mut loads = vec![LoadCase::new(
        LoadCase::AT_REST,
        LoadClass::Service,
        LoadOrigin::AtRest,
    )];
    let own: Vec<LoadCase> = own.into_iter().flatten().collect();
    if usual == Some(true) {
        let taken: HashSet<&str> = own.iter().map(|case| case.name.as_str()).collect();
        let set = usual::cases(context.engine, context.driveline, context.vehicle);
        let drives = set.iter().any(|case| case.drive.is_some());
        if drives && matches!(context.vehicle, Other::Absent) {
            root.assume(
                "vehicle",
                "none is given, so the tyres do not limit the torque of the usual set",
            );
        }
        loads.extend(
            set.into_iter()
                .filter(|case| !taken.contains(case.name.as_str())),
        );
    }
    loads.extend(own);
    let wanted = options.and_then(|options| {
        let given = options.has("modes");
        let list = loads.iter().map(|load| load.name.as_str()).collect();
        let names = Names::new("load case", list, complete && sources_are_whole);
        let wanted = options.references("modes", &names);
        options.finish();
        given.then_some(wanted)
    });
    let modes_at = wanted.unwrap_or_else(|| Some(default_modes_at(&loads)));
    (complete.then_some(loads), modes_at)
}

/// At rest, and under the largest steady forward torque.
fn default_modes_at(loads: &[LoadCase]) -> Vec<usize> {
    let drives_forward = |load: &LoadCase| match load.drive {
        Some(Drive::Gear { throttle, .. }) => throttle > 0.0,
        Some(Drive::OutputTorque(torque)) => torque > 0.0,
        None => false,
    };
    let full = loads
        .iter()
        .position(|load| load.name == usual::FULL_TORQUE)
        .or_else(|| {
            loads
                .iter()
                .position(|load| drives_forward(load) && !load.is_service_state())
        });
    std::iter::once(0).chain(full).collect()
}
