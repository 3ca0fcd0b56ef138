//! One form for the many characters with which people and editors write the same unit.

use std::borrow::Cow;

/// The plain character for one of its look-alikes; every other character is returned as it is.
pub(super) fn plain(c: char) -> char {
    match c {
        '\u{2212}' | '\u{207b}' | '\u{2010}' | '\u{2011}' | '\u{2013}' => '-',
        '·' | '⋅' | '∙' | '•' | '‧' | '×' => '*',
        '\u{2044}' | '\u{2215}' => '/',
        '⁰' => '0',
        '¹' => '1',
        '²' => '2',
        '³' => '3',
        'º' | '˚' => '°',
        '″' | '”' | '“' => '"',
        'µ' | 'μ' => 'u',
        c if c.is_whitespace() => ' ',
        c => c,
    }
}

/// A unit in the form of the table: one space for a product, no space around `/`, powers as plain
/// digits. A hyphen is a product unless a digit follows (`min-1`).
pub(super) fn unit(text: &str) -> Cow<'_, str> {
    if text.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'/') {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len());
    let mut product = false;
    let mut chars = text.chars().map(plain).filter(|&c| c != '^').peekable();
    while let Some(c) = chars.next() {
        let minus = c == '-' && chars.peek().is_some_and(char::is_ascii_digit);
        if matches!(c, ' ' | '*') || (c == '-' && !minus) {
            product = true;
            continue;
        }
        if product && c != '/' && !out.is_empty() && !out.ends_with('/') {
            out.push(' ');
        }
        product = false;
        match c {
            '℃' => out.push_str("°C"),
            '℉' => out.push_str("°F"),
            c => out.push(c),
        }
    }
    Cow::Owned(out)
}

#[cfg(test)]
mod tests {
    use super::unit;

    #[test]
    fn every_way_to_write_a_product_becomes_one_space() {
        for text in [
            "N m",
            "N·m",
            "N⋅m",
            "N*m",
            "N-m",
            "N\u{a0}m",
            "N\u{202f} m",
            "N × m",
            "N‑m",
        ] {
            assert_eq!(unit(text), "N m", "{text}");
        }
    }

    #[test]
    fn powers_and_quotients_lose_their_decoration() {
        assert_eq!(unit("kg·m²"), "kg m2");
        assert_eq!(unit("kg m^2"), "kg m2");
        assert_eq!(unit("N / mm"), "N/mm");
        assert_eq!(unit("min⁻¹"), "min-1");
        assert_eq!(unit("min^-1"), "min-1");
        assert_eq!(unit("℃"), "°C");
        assert_eq!(unit("µm"), "um");
    }
}
