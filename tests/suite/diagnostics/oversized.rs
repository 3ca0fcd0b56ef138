//! Files as large as are read, or nested as deep, that nobody means well: answered in time.

use bedplate::model::file::LARGEST_FILE;

use super::GOOD;
use super::hostile::survive;

/// As many repetitions as a file may hold.
fn filled(start: &str, unit: impl Fn(usize) -> String, end: &str) -> String {
    let mut text = start.to_owned();
    for i in 0.. {
        let next = unit(i);
        if text.len() + next.len() + end.len() > LARGEST_FILE {
            break;
        }
        text += &next;
    }
    text + end
}

/// As many joints as a file may hold, each with a key of as many entries as it may hold.
fn joints(start: &str, entry: &str, open: &str, close: &str) -> String {
    let list = entry.repeat(50);
    let bolt = "bolt = { size = \"M6\", class = \"8.8\" }";
    filled(
        start,
        |_| {
            format!(
                "[[joint]]\nsize = true\nrail = \"main\"\nthrough = \"width\"\n{bolt}\n{open}{list}{close}\n"
            )
        },
        "",
    )
}

#[test]
fn the_largest_hostile_files_are_answered_in_time() {
    let same = |text: &'static str| move |_| text.to_owned();
    let after_good = format!("{GOOD}\n");
    let names: String = (0..400)
        .map(|i| format!("[[point]]\nname = \"p{i}\"\nat = \"1, 2, 3 mm\"\n"))
        .collect();
    let points = format!("{GOOD}\n{names}");
    for (what, text) in [
        ("mounts", filled(&after_good, same("[[mount]]\n"), "")),
        (
            "loads",
            filled(&after_good, |i| format!("[[load]]\nname = \"l{i}\"\n"), ""),
        ),
        (
            "isolators",
            filled(
                &after_good,
                |i| format!("[isolator.z{i}]\nkind = \"rates\"\n"),
                "",
            ),
        ),
        (
            "rails",
            filled(
                &after_good,
                |i| format!("[rail.z{i}]\nsection = \"oval\"\n"),
                "",
            ),
        ),
        (
            "sizes of bolts",
            joints(&after_good, "\"M9\", ", "choose = { sizes = [", "] }"),
        ),
        (
            "known sizes of bolts",
            joints(
                &after_good,
                "\"3/4-16 UNF\",",
                "choose = { sizes = [",
                "] }",
            ),
        ),
        (
            "patterns",
            joints(&after_good, "\"0, 0 mm\",", "pattern = [", "]"),
        ),
        ("keys", filled("", |i| format!("k{i} = 1\n"), GOOD)),
        ("one key", filled("", same("k = 1\n"), GOOD)),
        (
            "sections",
            filled(&after_good, same("[engine]\nidle = 1\n"), ""),
        ),
        ("equal signs", filled("", same("=\n"), "")),
        ("quotes", filled("", same("\"\n"), "")),
        ("brackets", filled("", same("["), "")),
        ("lists", filled("a = ", same("["), "")),
        ("tables", filled("a = ", same("{a="), "")),
        ("points of a key", filled("a", same(".a"), " = 1")),
        ("points of a header", filled("[a", same(".a"), "]")),
        ("comment", filled("#", same("#"), "")),
        ("title", filled("title = \"", same("x"), "\"")),
        (
            "title of marks",
            filled("title = \"", same("\u{301}"), "\""),
        ),
        ("word", filled("[datum]\nfitted = \"", same("x"), "\"")),
        (
            "name",
            filled(
                &format!("{after_good}[[point]]\nname = \""),
                same("x"),
                "\"",
            ),
        ),
        (
            "reference",
            filled(
                &format!("{points}[[load]]\nname = \"l\"\ngear = \""),
                same("x"),
                "\"",
            ),
        ),
        (
            "long names",
            format!(
                "{}[[load]]\nname = \"l\"\napply = [{{ point = \"{}\" }}]\n",
                (0..5)
                    .map(|i| format!("[[point]]\nname = \"{}{i}\"\n", "ab".repeat(10_000)))
                    .collect::<String>(),
                "ba".repeat(10_000)
            ),
        ),
        (
            "references",
            filled(
                &format!("{points}[[load]]\nname = \"l\"\napply = ["),
                same("{point=\"zq\"},"),
                "]",
            ),
        ),
        (
            "names",
            filled(
                &format!("{points}[[load]]\nname = \"l\"\nwithout = {{ parts = ["),
                same("\"zq\","),
                "] }",
            ),
        ),
        (
            "gears",
            filled("[driveline]\ngears = {", |i| format!("\"{i}\"=1,"), "}"),
        ),
        ("digits", filled("[[part]]\nmass = \"", same("0"), "1 kg\"")),
        (
            "decimals",
            filled("[[part]]\nmass = \"1.", same("3"), " kg\""),
        ),
        ("bare digits", filled("[[part]]\nmass = ", same("1"), "")),
        ("commas", filled("[[part]]\nat = \"", same(","), "\"")),
        (
            "numbers",
            filled("[[part]]\nat = \"", same("1, "), "1 mm\""),
        ),
        ("unit", filled("[[part]]\nmass = \"2 ", same("k"), "\"")),
        (
            "units",
            filled("[[part]]\nmass = \"2 ", same("kg 1 "), "\""),
        ),
        (
            "minus signs",
            filled("[[part]]\nmass = \"", same("-"), "\""),
        ),
        (
            "fractions",
            filled("[[part]]\nmass = \"1", same("/1"), " kg\""),
        ),
    ] {
        assert!(!survive(text.as_bytes()), "{what}");
    }
}

#[test]
fn deep_nesting_is_refused_and_not_followed() {
    for (open, close) in [("[", "]"), ("{ a = ", " }")] {
        let text = format!("a = {}1{}", open.repeat(10_000), close.repeat(10_000));
        assert!(!survive(text.as_bytes()));
    }
    assert!(!survive(format!("{}a = 1", "a.".repeat(10_000)).as_bytes()));
    assert!(!survive(format!("[{}a]", "a.".repeat(10_000)).as_bytes()));
}
