//! Isolators and the mounts in which they sit.

use std::collections::HashSet;

use super::read_all;
use crate::diagnostic::{Code, Diagnostic};
use crate::model::isolator::{self, Isolator};
use crate::model::mount::{self, Mount};
use crate::model::reader::{Items, NamedItems, Names, Section, quoted};

/// Isolators, and the mounts in which they sit.
pub(super) fn read_supports<'a>(
    root: &Section<'a>,
) -> (Vec<Option<Isolator>>, Vec<Option<Mount>>, Names<'a>) {
    let NamedItems { sections, names } = root.named_items("isolator", "isolator");
    let mut places = Vec::with_capacity(sections.len());
    let mut isolators = Vec::with_capacity(sections.len());
    for (name, place, section) in sections {
        places.push((name, place));
        isolators.push(section.and_then(|section| isolator::read(name, section)));
    }
    let Items {
        sections,
        names: mount_names,
    } = root.items("mount", "mount");
    let mounts = read_all(sections, |section| mount::read(section, &isolators, &names));
    // With a mount that could not be read nobody knows which isolators are used.
    let used: Option<HashSet<usize>> = mounts
        .iter()
        .map(|mount| mount.as_ref().map(|mount| mount.isolator))
        .collect();
    if let Some(used) = used.filter(|used| !used.is_empty()) {
        for (index, (name, place)) in places.into_iter().enumerate() {
            if !used.contains(&index) {
                root.note(
                    Diagnostic::warning(
                        Code::Unused,
                        format!("no mount uses the isolator {}", quoted(name)),
                        Some(place),
                    )
                    .label("not used")
                    .help("name it as `isolator` of a mount, or take it out"),
                );
            }
        }
    }
    (isolators, mounts, mount_names)
}
