//! Reads a model file, never more of it than any build needs.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use bedplate::diagnostic::did_you_mean;
use bedplate::model::file::LARGEST_FILE;

use super::{directory_of, is_stream, quoted, reason};
use crate::cli::failure::Failure;

/// Most neighbours of a missing file that are looked through for a near name.
const MOST_NEIGHBOURS: usize = 1_000;

/// What was read, and from where.
#[derive(Debug)]
pub(crate) struct Input {
    /// The file as the user named it.
    pub(crate) name: String,
    /// Where it is; `None` for standard input without a file behind it.
    pub(crate) path: Option<PathBuf>,
    /// At most one byte more than [`LARGEST_FILE`], which tells the reader that it is too large.
    pub(crate) bytes: Vec<u8>,
}

/// Reads a model file or standard input.
pub(crate) fn read(path: &Path) -> Result<Input, Failure> {
    if is_stream(path) {
        let bytes = bounded(io::stdin().lock()).map_err(|error| {
            Failure::plain(format!("cannot read standard input: {}", reason(&error)))
        })?;
        return Ok(Input {
            name: "<stdin>".to_owned(),
            path: file_behind_stdin(),
            bytes,
        });
    }
    let bytes = File::open(path)
        .and_then(bounded)
        .map_err(|error| refused(path, &error))?;
    Ok(Input {
        name: path.display().to_string(),
        path: Some(path.to_owned()),
        bytes,
    })
}

/// The file that the shell opened as standard input, which the output must not replace.
fn file_behind_stdin() -> Option<PathBuf> {
    let behind = Path::new("/dev/stdin").canonicalize().ok()?;
    behind.is_file().then_some(behind)
}

fn bounded(from: impl Read) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    from.take(LARGEST_FILE as u64 + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

fn refused(path: &Path, error: &io::Error) -> Failure {
    let name = quoted(path);
    match error.kind() {
        io::ErrorKind::NotFound => {
            let failure = Failure::plain(format!("there is no file {name}"));
            match near_name(path) {
                Some(near) => failure.help(format!("did you mean {}?", quoted(&near))),
                None => failure.help(format!(
                    "`bedplate new {}` writes one to start from",
                    path.display()
                )),
            }
        }
        _ if path.is_dir() => {
            Failure::plain(format!("{name} is a directory")).help("name the model file inside it")
        }
        io::ErrorKind::PermissionDenied => Failure::plain(format!("{name} may not be read"))
            .help("its owner can allow it, or copy it to a place of your own"),
        _ => Failure::plain(format!("cannot read {name}: {}", reason(error))),
    }
}

/// A file beside the missing one that may have been meant.
fn near_name(path: &Path) -> Option<PathBuf> {
    let written = path.file_name()?.to_str()?;
    let mut neighbours: Vec<String> = fs::read_dir(directory_of(path))
        .ok()?
        .take(MOST_NEIGHBOURS)
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| {
            Path::new(name)
                .extension()
                .is_some_and(|ending| ending == "toml")
        })
        .collect();
    neighbours.sort();
    let near = did_you_mean(written, neighbours.iter().map(String::as_str))?;
    Some(path.with_file_name(near))
}
