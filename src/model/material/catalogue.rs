//! The materials that a file may name: its own, then the listed ones.

use std::cell::RefCell;
use std::collections::HashSet;
use std::ops::Range;

use super::{Material, NotListed, own, table};
use crate::diagnostic::{Code, Diagnostic};
use crate::model::reader::{NamedItems, Names, Section, quoted};

/// The materials that a file may name.
pub(crate) struct Catalogue<'a> {
    own: Vec<Option<Material>>,
    places: Vec<(&'a str, Range<usize>)>,
    names: Names<'a>,
    used: RefCell<HashSet<usize>>,
}

impl<'a> Catalogue<'a> {
    /// Reads every `[material.NAME]` of the file.
    pub(crate) fn read(root: &Section<'a>) -> Self {
        let NamedItems { sections, names } = root.named_items("material", "material");
        let (mut own, mut places) = (Vec::new(), Vec::new());
        let mut used = HashSet::new();
        for (index, (name, place, section)) in sections.into_iter().enumerate() {
            if table::ROWS.iter().any(|row| row.name == name) {
                used.insert(index);
                root.note(
                    Diagnostic::error(
                        Code::DuplicateName,
                        format!("there is a listed material named {}", quoted(name)),
                        Some(place.clone()),
                    )
                    .label("second one")
                    .help(format!(
                        "give it a name of its own, such as `{name} as certified`"
                    )),
                );
            }
            own.push(section.and_then(|section| own::read(name, section)));
            places.push((name, place));
        }
        Self {
            names: names.followed_by(table::ROWS.iter().map(|row| row.name)),
            own,
            places,
            used: RefCell::new(used),
        }
    }

    /// The material that `material` of a section names, at a thickness \[m\].
    pub(crate) fn pick(&self, section: &Section<'_>, thickness: Option<f64>) -> Option<Material> {
        let place = section.reference("material", &self.names)?;
        if let Some(own) = self.own.get(place) {
            self.used.borrow_mut().insert(place);
            return own.clone();
        }
        let row = table::ROWS.get(place - self.own.len())?;
        match row.at(thickness?) {
            Ok(material) => Some(material),
            Err(NotListed::TooThick { up_to }) => {
                section.refuse(
                    "material",
                    Code::OutOfRange,
                    format!(
                        "{} is listed up to a thickness of {:.1} mm: {:.1} mm",
                        quoted(row.name),
                        up_to * 1e3,
                        thickness? * 1e3
                    ),
                    "check the thickness, or describe the material as `[material.NAME]` of your own",
                );
                None
            }
            Err(NotListed::Unknown) => None,
        }
    }

    /// Warns of materials of the file that nothing is made of.
    pub(crate) fn warn_of_unused(&self, root: &Section<'_>) {
        let used = self.used.borrow();
        for (index, (name, place)) in self.places.iter().enumerate() {
            if !used.contains(&index) {
                root.note(
                    Diagnostic::warning(
                        Code::Unused,
                        format!("nothing is made of the material {}", quoted(name)),
                        Some(place.clone()),
                    )
                    .label("not used")
                    .help(
                        "name it as `material` of a rail or of a part of a joint, or take it out",
                    ),
                );
            }
        }
    }
}
