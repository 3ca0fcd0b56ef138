//! Materials, rails and joints of a file.

use std::collections::{HashMap, HashSet};

use crate::diagnostic::{Code, Diagnostic};
use crate::model::joint::{self, Context, Joint};
use crate::model::material::Catalogue;
use crate::model::mount::Mount;
use crate::model::rail::{self, Rail};
use crate::model::reader::{Items, NamedItems, Names, Section, quoted};

/// Rails and joints, as many as there are; `None` in place of those with problems.
pub(super) fn read_joints(
    root: &Section<'_>,
    mounts: &[Option<Mount>],
    mount_names: &Names<'_>,
) -> (Vec<Option<Rail>>, Vec<Option<Joint>>) {
    let materials = Catalogue::read(root);
    let NamedItems { sections, names } = root.named_items("rail", "rail");
    let mut places = Vec::with_capacity(sections.len());
    let mut rails = Vec::with_capacity(sections.len());
    for (name, place, section) in sections {
        places.push((name, place));
        rails.push(section.and_then(|section| rail::read(name, section, &materials)));
    }
    let Items { sections, .. } = root.items("joint", "joint");
    let context = Context {
        materials: &materials,
        rails: &rails,
        rail_names: &names,
        mounts,
        mount_names,
    };
    let mut joined: HashMap<usize, String> = HashMap::new();
    let mut joints = Vec::with_capacity(sections.len());
    for section in sections {
        let place = section.span_of("mount");
        let joint = joint::read(section, &context);
        if let Some(joint) = &joint {
            if let Some(first) = joined.get(&joint.mount) {
                let message = format!(
                    "joint {} holds a mount that is held already: by joint {}",
                    quoted(&joint.name),
                    quoted(first)
                );
                root.note(
                    Diagnostic::error(Code::Conflict, message, place)
                        .label("second one")
                        .help("one joint holds one mount; name another mount, or take one of the joints out"),
                );
            } else {
                joined.insert(joint.mount, joint.name.clone());
            }
        }
        joints.push(joint);
    }
    // With a joint that could not be read nobody knows what is used.
    if joints.iter().all(Option::is_some) && rails.iter().all(Option::is_some) {
        let used: HashSet<usize> = joints
            .iter()
            .flatten()
            .filter_map(|joint| Some(joint.base.rail()?.rail))
            .collect();
        for (index, (name, place)) in places.into_iter().enumerate() {
            if !used.contains(&index) {
                root.note(
                    Diagnostic::warning(
                        Code::Unused,
                        format!("no joint uses the rail {}", quoted(name)),
                        Some(place),
                    )
                    .label("not used")
                    .help("name it as `rail` of a joint, or take it out"),
                );
            }
        }
        materials.warn_of_unused(root);
    }
    (rails, joints)
}
