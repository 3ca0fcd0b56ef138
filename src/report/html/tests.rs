//! The page is whole, well formed and escapes what the file says.

use super::*;
use crate::report::fixture;

/// Elements that HTML leaves open.
const VOID: [&str; 6] = ["meta", "br", "hr", "img", "link", "input"];

fn page() -> String {
    let (model, evaluation) = fixture::build();
    document(&model, &evaluation)
}

/// Names of the tags in order, with a slash before those that close; text inside `style` is skipped.
fn tags(page: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut rest = page;
    while let Some(at) = rest.find('<') {
        let after = &rest[at + 1..];
        let end = after.find('>').expect("a tag ends");
        let tag = &after[..end];
        rest = &after[end + 1..];
        if tag.starts_with('!') || tag.ends_with('/') {
            continue;
        }
        let name: String = tag
            .chars()
            .take_while(|c| !c.is_whitespace())
            .collect::<String>()
            .to_lowercase();
        if name == "style" {
            rest = &rest[rest.find("</style>").expect("the style ends")..];
        }
        found.push(name);
    }
    found
}

#[test]
fn every_element_is_closed_in_order() {
    let mut open: Vec<String> = Vec::new();
    for tag in tags(&page()) {
        match tag.strip_prefix('/') {
            Some(name) => assert_eq!(open.pop().as_deref(), Some(name), "still open: {open:?}"),
            None if VOID.contains(&tag.as_str()) => {}
            None => open.push(tag),
        }
    }
    assert!(open.is_empty(), "{open:?}");
}

#[test]
fn the_page_needs_nothing_from_outside() {
    let page = page().replace("http://www.w3.org/2000/svg", "");
    for address in [
        "http://", "https://", "src=", "url(", "@import", "<link", "<script",
    ] {
        assert!(!page.contains(address), "{address}");
    }
}

#[test]
fn names_of_the_file_stay_text() {
    let page = page();
    assert!(page.contains("&lt;script&gt;alert("));
    assert!(page.contains("Forestry pickup &amp; &lt;winch&gt;"));
    assert!(!page.contains("<winch>"));
}

#[test]
fn every_link_of_the_page_has_its_place_and_every_place_is_one() {
    let page = page();
    let ids: Vec<&str> = page
        .split(" id=\"")
        .skip(1)
        .filter_map(|rest| rest.split('"').next())
        .collect();
    let mut unique = ids.clone();
    unique.sort_unstable();
    unique.dedup();
    assert_eq!(unique.len(), ids.len(), "{ids:?}");
    let links: Vec<&str> = page
        .split("href=\"#")
        .skip(1)
        .filter_map(|rest| rest.split('"').next())
        .collect();
    assert!(links.len() > 12);
    for link in links {
        assert!(ids.contains(&link), "{link}");
    }
}

#[test]
fn the_page_leads_with_what_fails_and_says_why_a_case_is_missing() {
    let (model, evaluation) = fixture::build();
    let page = document(&model, &evaluation);
    let verdicts = page.find("id=\"verdicts\"").unwrap();
    assert!(verdicts < page.find("id=\"build\"").unwrap());
    assert!(page.contains("a rate 30 % higher along w"));
    assert!(page.contains("13.0 mm, give or take 0.4 mm"));
    assert!(page.contains("No loaded position:"));
    for caution in cautions::ALL {
        assert!(page.contains(caution.about), "{}", caution.about);
    }
}

#[test]
fn what_is_not_finite_is_never_written() {
    let (model, mut evaluation) = fixture::build();
    fixture::spoil_numbers(&mut evaluation);
    let page = document(&model, &evaluation);
    let (_, body) = page.split_once("</style>").unwrap();
    let words: Vec<&str> = body.split(|c: char| !c.is_alphanumeric()).collect();
    for word in ["NaN", "inf"] {
        assert!(!words.contains(&word), "{word}");
    }
    assert!(words.contains(&"unknown"));
}

#[test]
fn a_table_of_many_rows_is_folded_with_its_title_and_count() {
    use crate::report::content::table::{Group, Row, Table};
    let in_groups = |rows: usize, groups: usize| {
        let group = |_| {
            let rows = (0..rows / groups).map(|n| Row::new(n.to_string(), Vec::new()));
            Group::plain(rows.collect())
        };
        let data = Table {
            id: "many",
            about: "What there is.".to_owned(),
            item: "thing",
            columns: Vec::new(),
            groups: (0..groups).map(group).collect(),
            note: None,
        };
        table::table(&data, 0).into_string()
    };
    // Through load cases beyond 15 rows, without them beyond 40.
    assert!(!in_groups(15, 3).contains("<details"));
    assert!(!in_groups(40, 1).contains("<details"));
    assert!(in_groups(41, 1).contains("<details"));
    let folded = in_groups(16, 4);
    let (summary, rest) = folded.split_once("</summary>").unwrap();
    assert!(
        summary.contains("What there is.") && summary.contains("16 rows"),
        "{summary}"
    );
    assert!(rest.contains("aria-labelledby=\"many-table\""), "{rest}");
    assert!(PAGE_CSS.contains("details::details-content { content-visibility: visible"));
}
