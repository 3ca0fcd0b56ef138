//! The colours of the figures, and how they turn on a dark page.
//!
//! A drawing holds the light value of each colour; [`DARK_CSS`] replaces it on
//! a dark page, so that one drawing serves both. The accents keep the hues of
//! the colour-blind safe set of M. Okabe and K. Ito, Color Universal Design
//! (2008, from memory), darkened or lightened until a line has a contrast of at
//! least 3:1 and text of at least 4.5:1. No figure tells two things apart by
//! colour alone.

use plotters::style::RGBColor;

/// Two hex digits of `#RRGGBB` from byte `at` on.
const fn channel(hex: &str, at: usize) -> u8 {
    const fn digit(byte: u8) -> u8 {
        match byte {
            b'0'..=b'9' => byte - b'0',
            _ => byte - b'A' + 10,
        }
    }
    let bytes = hex.as_bytes();
    digit(bytes[at]) * 16 + digit(bytes[at + 1])
}

macro_rules! palette {
    ($($(#[$doc:meta])* $name:ident $light:literal $dark:literal)*) => {
        $(
            $(#[$doc])*
            pub(super) const $name: RGBColor =
                RGBColor(channel($light, 1), channel($light, 3), channel($light, 5));
        )*

        /// Style rules for the page that turn every figure for a dark page.
        ///
        /// They apply to `svg` elements of class `fig` where the reader prefers
        /// dark pages, and expect a page background near `#16191D` there and
        /// near white elsewhere. Paper stays light.
        pub const DARK_CSS: &str = concat!(
            "@media screen and (prefers-color-scheme: dark) {\n",
            $(
                "svg.fig [fill=\"", $light, "\"] { fill: ", $dark, "; }\n",
                "svg.fig [stroke=\"", $light, "\"] { stroke: ", $dark, "; }\n",
            )*
            "}\n"
        );

        /// Every colour as name, light value, dark value.
        #[cfg(test)]
        const ALL: &[(&str, &str, &str)] = &[$((stringify!($name), $light, $dark)),*];
    };
}

palette! {
    /// Text and main lines.
    INK "#1B1F24" "#E8EAED"
    /// Second text and thin outlines.
    MUTED "#565D66" "#A6ADB6"
    /// Grid lines, which may stay faint.
    GRID "#D3D7DC" "#3A4048"
    /// Ground of a label that stands on lines.
    PAPER "#FBFAF7" "#16191D"
    /// Blue.
    ACCENT_1 "#0067A0" "#5CB8EE"
    /// Vermilion.
    ACCENT_2 "#B84A00" "#F08A4B"
    /// Green.
    ACCENT_3 "#007A59" "#3CC79E"
    /// Purple.
    ACCENT_4 "#9C3F7C" "#DE93C0"
    /// Amber.
    ACCENT_5 "#866000" "#E0AF3C"
    /// Slate.
    ACCENT_6 "#4C5A8C" "#9FB0E6"
}

/// The accents in the order in which they are given out.
pub(super) const ACCENTS: [RGBColor; 6] =
    [ACCENT_1, ACCENT_2, ACCENT_3, ACCENT_4, ACCENT_5, ACCENT_6];

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance.
    ///
    /// Source: W3C, Web Content Accessibility Guidelines 2.1 (2018), definition of relative luminance.
    fn luminance(hex: &str) -> f64 {
        let part = |at| {
            let c = f64::from(channel(hex, at)) / 255.0;
            if c <= 0.03928 {
                c / 12.92
            } else {
                ((c + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * part(1) + 0.7152 * part(3) + 0.0722 * part(5)
    }

    fn contrast(a: &str, b: &str) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    /// The published extremes: black on white is 21:1 (same source).
    #[test]
    fn contrast_of_black_on_white_is_21() {
        assert!((contrast("#000000", "#FFFFFF") - 21.0).abs() < 1e-9);
    }

    #[test]
    fn all_colours_that_carry_text_can_be_read_on_light_and_dark_pages() {
        for (name, light, dark) in ALL {
            if ["GRID", "PAPER"].contains(name) {
                continue;
            }
            for ground in ["#FFFFFF", "#FBFAF7", "#F1EEE6"] {
                let ratio = contrast(light, ground);
                assert!(ratio >= 4.5, "{name} {light} on {ground}: {ratio}");
            }
            for ground in ["#16191D", "#20242A"] {
                let ratio = contrast(dark, ground);
                assert!(ratio >= 4.5, "{name} {dark} on {ground}: {ratio}");
            }
        }
    }

    #[test]
    fn light_values_are_distinct_so_that_each_can_be_turned_alone() {
        for (i, a) in ALL.iter().enumerate() {
            for b in &ALL[i + 1..] {
                assert_ne!(a.1, b.1);
            }
        }
    }

    #[test]
    fn hex_values_become_the_colours_of_the_drawing() {
        assert_eq!(INK, RGBColor(0x1B, 0x1F, 0x24));
        assert!(DARK_CSS.contains("svg.fig [fill=\"#1B1F24\"] { fill: #E8EAED; }"));
    }
}
