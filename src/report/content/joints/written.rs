//! Keys of a joint as they stand in the model file, with which it reads as it was judged.

use crate::model::fastener::Lubrication;
use crate::model::joint::bolt::Threads;
use crate::model::joint::{Bolt, Filler, Fillet, Joint, Plate, Seat, Sleeve, Washer};
use crate::model::material::Surface;

/// Lines that are longer are written as one key a line: the usual width of a terminal, less one.
const WIDEST: usize = 79;

/// Lengths that differ by less are the same \[m\].
const SAME: f64 = 1e-9;

/// What a bolt is taken to be where the file says nothing, so that it need not be written; roughness in \[m\].
const USUAL_LUBRICATION: &str = "as delivered";
const USUAL_TIGHTENING: &str = "torque wrench";
const USUAL_ROUGHNESS: f64 = 25e-6;

/// A key with its value, both as they are written.
type Entry = (&'static str, String);

/// The keys `bolt`, `pattern`, `washer`, `sleeve` and `plate` of a joint, as lines of a model file.
///
/// What of the bolt is as it is taken without its key is left out.
#[must_use]
pub fn lines(joint: &Joint) -> Vec<String> {
    let mut lines = table("bolt", &bolt(&joint.bolt));
    lines.extend(pattern(&joint.pattern));
    if let Some(washer) = &joint.washer {
        lines.extend(table("washer", &self::washer(washer)));
    }
    if let Some(sleeve) = &joint.sleeve {
        lines.extend(table("sleeve", &self::sleeve(sleeve)));
    }
    if let Some(plate) = &joint.plate {
        lines.extend(table("plate", &self::plate(plate)));
    }
    lines
}

/// A table in one line, or as a line for each key where that would be too long.
fn table(name: &str, entries: &[Entry]) -> Vec<String> {
    let line = format!("{name} = {}", inline(entries));
    if line.chars().count() <= WIDEST {
        return vec![line];
    }
    let dotted = entries.iter();
    dotted
        .map(|(key, value)| format!("{name}.{key} = {value}"))
        .collect()
}

fn inline(entries: &[Entry]) -> String {
    let pairs: Vec<String> = entries
        .iter()
        .map(|(key, value)| format!("{key} = {value}"))
        .collect();
    format!("{{ {} }}", pairs.join(", "))
}

fn bolt(bolt: &Bolt) -> Vec<Entry> {
    let mut entries = vec![
        ("size", text(bolt.thread.name)),
        ("class", text(bolt.grade.name)),
    ];
    if bolt.lubrication.name != USUAL_LUBRICATION {
        entries.push(("friction", friction(&bolt.lubrication)));
    }
    if bolt.tightening.name != USUAL_TIGHTENING {
        entries.push(("tightened", text(bolt.tightening.name)));
    }
    if (bolt.hole - bolt.thread.hole).abs() > SAME {
        entries.push(("hole", millimetres(bolt.hole)));
    }
    if (bolt.roughness - USUAL_ROUGHNESS).abs() > SAME * SAME {
        entries.push((
            "roughness",
            text(&format!("{} um", scaled(bolt.roughness, 1e6))),
        ));
    }
    let threads = match bolt.threads {
        Threads::RolledBeforeHeatTreatment => None,
        Threads::RolledAfterHeatTreatment => Some("rolled after heat treatment"),
        Threads::Cut => Some("cut"),
    };
    entries.extend(threads.map(|words| ("threads", text(words))));
    entries.extend(coating(bolt.surface));
    entries
}

/// The name of a state, or both ends where the file has numbers.
fn friction(lubrication: &Lubrication) -> String {
    match Lubrication::find(lubrication.name) {
        Some(known) => text(known.name),
        None => format!(
            "[{}, {}]",
            lubrication.friction.low, lubrication.friction.high
        ),
    }
}

fn coating(surface: Surface) -> Option<Entry> {
    (surface != Surface::Bare).then(|| ("coating", text(surface.word())))
}

fn pattern(places: &[[f64; 2]]) -> Vec<String> {
    let places: Vec<String> = places
        .iter()
        .map(|[x, y]| text(&format!("{}, {} mm", scaled(*x, 1e3), scaled(*y, 1e3))))
        .collect();
    let line = format!("pattern = [{}]", places.join(", "));
    if line.chars().count() <= WIDEST {
        return vec![line];
    }
    let each = places.into_iter().map(|place| format!("  {place},"));
    std::iter::once("pattern = [".to_owned())
        .chain(each)
        .chain(std::iter::once("]".to_owned()))
        .collect()
}

fn washer(washer: &Washer) -> Vec<Entry> {
    vec![
        ("diameter", millimetres(washer.diameter)),
        ("thickness", millimetres(washer.thickness)),
    ]
}

fn sleeve(sleeve: &Sleeve) -> Vec<Entry> {
    let mut entries = vec![
        ("outer", millimetres(sleeve.outer)),
        ("inner", millimetres(sleeve.inner)),
        ("gap", millimetres(sleeve.gap)),
        ("material", text(&sleeve.material.name)),
    ];
    match sleeve.seat {
        Seat::Inside => entries.push(("seat", text("inside"))),
        Seat::Through => {
            entries.push(("seat", text("through")));
            if sleeve.hole > sleeve.outer + SAME {
                entries.push(("hole", millimetres(sleeve.hole)));
            }
        }
    }
    if let Some(shoulder) = &sleeve.shoulder {
        let keys = [
            ("diameter", millimetres(shoulder.diameter)),
            ("thickness", millimetres(shoulder.thickness)),
        ];
        entries.push(("shoulder", inline(&keys)));
    }
    if let Some(weld) = &sleeve.weld {
        entries.push(("weld", inline(&fillet(weld))));
    }
    entries
}

fn fillet(fillet: &Fillet) -> [Entry; 2] {
    let filler = match fillet.filler {
        Filler::Matching => "matching",
        Filler::Al5356 => "5356",
        Filler::Al4043A => "4043A",
    };
    [
        ("throat", millimetres(fillet.throat)),
        ("filler", text(filler)),
    ]
}

fn plate(plate: &Plate) -> Vec<Entry> {
    let mut entries = vec![
        ("thickness", millimetres(plate.thickness)),
        ("material", text(&plate.material.name)),
        ("length", millimetres(plate.length)),
        ("width", millimetres(plate.width)),
        ("both_sides", plate.both_sides.to_string()),
    ];
    if plate.saddle {
        entries.push(("saddle", true.to_string()));
    }
    entries.extend(coating(plate.surface));
    entries
}

fn millimetres(length: f64) -> String {
    text(&format!("{} mm", scaled(length, 1e3)))
}

/// A number of SI units in a smaller unit, as short as it reads back: what the scaling adds beyond nine decimals is dropped.
fn scaled(si: f64, times: f64) -> f64 {
    // Adding nothing takes the sign from a zero.
    (si * times * 1e9).round() / 1e9 + 0.0
}

/// A text in quotes; what does not show is written by its number.
fn text(plain: &str) -> String {
    let mut quoted = String::from("\"");
    for c in plain.chars() {
        match c {
            '"' | '\\' => quoted.extend(['\\', c]),
            _ if c.is_control() || !(c.is_alphanumeric() || c.is_ascii()) => {
                quoted.push_str(&format!("\\U{:08X}", u32::from(c)));
            }
            _ => quoted.push(c),
        }
    }
    quoted.push('"');
    quoted
}

#[cfg(test)]
mod tests {
    use super::{scaled, table, text};

    /// Derived: 1/16 in is 1.5875 mm; a third of a metre has no end, the rest is below a picometre.
    #[test]
    fn lengths_read_back_without_the_noise_of_scaling() {
        assert_eq!(scaled(1.0 / 16.0 * 25.4e-3, 1e3).to_string(), "1.5875");
        assert_eq!(scaled(1.0 / 3.0, 1e3).to_string(), "333.333333333");
        assert_eq!(scaled(-0.0, 1e3).to_string(), "0");
    }

    #[test]
    fn names_are_quoted_and_long_tables_have_a_line_for_each_key() {
        assert_eq!(
            text("a \"b\" \\ é\u{202e}"),
            "\"a \\\"b\\\" \\\\ é\\U0000202E\""
        );
        let short = [("a", "1".to_owned()), ("b", "2".to_owned())];
        assert_eq!(table("t", &short), ["t = { a = 1, b = 2 }"]);
        let long = [("a", "1".repeat(60)), ("b", "2".repeat(30))];
        let lines = [
            format!("t.a = {}", "1".repeat(60)),
            format!("t.b = {}", "2".repeat(30)),
        ];
        assert_eq!(table("t", &long), lines);
    }
}
