//! Which mark is which mount, in as many lines as the names need.

use super::canvas::{Canvas, LETTER, Lettering, Spot, WIDTH};
use super::label::width;
use super::mark::mount_mark;
use super::palette::INK;

/// The key of a figure that tells mounts apart by their marks.
pub(super) struct Key {
    entries: Vec<(Spot, usize, String)>,
    /// Height that it takes at the top of the sheet.
    pub(super) height: f64,
}

impl Key {
    /// Mounts by their place in the model, with their names.
    pub(super) fn of(mounts: impl IntoIterator<Item = (usize, String)>) -> Self {
        let (mut x, mut y) = (8.0, LETTER * 0.8);
        let entries = mounts
            .into_iter()
            .map(|(mount, name)| {
                let wide = width(&name, LETTER) + 34.0;
                if x + wide > WIDTH && x > 8.0 {
                    x = 8.0;
                    y += LETTER * 1.4;
                }
                let at = (x, y);
                x += wide;
                (at, mount, name)
            })
            .collect();
        Self {
            entries,
            height: y + LETTER * 0.8,
        }
    }

    pub(super) fn draw(&self, canvas: &mut Canvas<'_>) {
        for (at, mount, name) in &self.entries {
            mount_mark(canvas, *at, 5.0, *mount);
            let how = Lettering::plain().color(INK);
            canvas.text((at.0 + 12.0, at.1), name, how);
        }
    }
}
