//! Where output goes. A target is opened before the work and filled after it.

use std::fs::{self, File, Permissions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::{directory_of, is_stream, quoted, reason};
use crate::cli::console::Console;
use crate::cli::failure::Failure;

/// What to do when the file is there already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Existing {
    Replace,
    Keep,
}

/// An opened place for output. Dropped unfilled, it leaves nothing behind.
pub(crate) struct Target {
    /// As the user named it.
    name: PathBuf,
    destination: Destination,
}

enum Destination {
    Stream,
    /// A device or a pipe: written in place, since it must not be replaced by a file.
    Direct(File),
    /// A file beside the final one, renamed when it is complete.
    Beside {
        file: NamedTempFile,
        target: PathBuf,
        existing: Existing,
    },
}

impl Target {
    /// Opens a target, so that what cannot be written is known before the work begins.
    pub(crate) fn open(
        path: &Path,
        input: Option<&Path>,
        existing: Existing,
    ) -> Result<Self, Failure> {
        let name = path.to_owned();
        if is_stream(path) {
            let destination = Destination::Stream;
            return Ok(Self { name, destination });
        }
        // Through a link the file behind it is written, and the link stays.
        let target = path.canonicalize().unwrap_or_else(|_| name.clone());
        let found = fs::metadata(&target).ok();
        if let Some(found) = &found {
            refuse_existing(path, &target, input, existing, found)?;
            if !found.is_file() {
                let file = File::options().write(true).open(&target);
                let file = file.map_err(|error| refused(path, &error))?;
                let destination = Destination::Direct(file);
                return Ok(Self { name, destination });
            }
        }
        let file = beside(&target, found.map(|found| found.permissions()))
            .map_err(|error| refused(path, &error))?;
        let destination = Destination::Beside {
            file,
            target,
            existing,
        };
        Ok(Self { name, destination })
    }

    /// Writes everything; whether it went into a file that can be named to the user.
    pub(crate) fn fill(self, console: &Console, bytes: &[u8]) -> Result<bool, Failure> {
        let refused = |error: io::Error| refused(&self.name, &error);
        match self.destination {
            Destination::Stream => console.print_bytes(bytes).map(|()| false),
            Destination::Direct(mut file) => {
                match file.write_all(bytes).and_then(|()| file.flush()) {
                    Err(error) if error.kind() == io::ErrorKind::BrokenPipe => {
                        Err(Failure::ClosedPipe)
                    }
                    written => written.map(|()| false).map_err(refused),
                }
            }
            Destination::Beside {
                mut file,
                target,
                existing,
            } => {
                file.write_all(bytes).map_err(refused)?;
                let renamed = match existing {
                    Existing::Replace => file.persist(&target),
                    Existing::Keep => file.persist_noclobber(&target),
                };
                renamed
                    .map(|_| true)
                    .map_err(|failed| refused(failed.error))
            }
        }
    }
}

fn refuse_existing(
    path: &Path,
    target: &Path,
    input: Option<&Path>,
    existing: Existing,
    found: &fs::Metadata,
) -> Result<(), Failure> {
    let name = quoted(path);
    if found.is_dir() {
        return Err(Failure::plain(format!("{name} is a directory"))
            .help("give the output a file name inside it"));
    }
    if input.and_then(|input| input.canonicalize().ok()).as_deref() == Some(target) {
        return Err(
            Failure::plain(format!("the output would replace the model {name}"))
                .help("give the output another name"),
        );
    }
    if existing == Existing::Keep {
        return Err(already_there(path));
    }
    if found.permissions().readonly() {
        return Err(Failure::plain(format!("{name} is write-protected"))
            .help("allow writing it, or give the output another name"));
    }
    Ok(())
}

fn already_there(path: &Path) -> Failure {
    Failure::plain(format!("{} is there already", quoted(path)))
        .help("choose another name, or replace it with `--force`")
}

fn beside(target: &Path, permissions: Option<Permissions>) -> io::Result<NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(".bedplate-");
    if let Some(usual) = usual_permissions() {
        builder.permissions(usual);
    }
    let file = builder.tempfile_in(directory_of(target))?;
    if let Some(permissions) = permissions {
        // A file that is replaced keeps its own.
        file.as_file().set_permissions(permissions)?;
    }
    Ok(file)
}

/// Those of any new file; the system takes away what the user's mask forbids.
#[cfg(unix)]
fn usual_permissions() -> Option<Permissions> {
    use std::os::unix::fs::PermissionsExt;
    Some(Permissions::from_mode(0o666))
}

#[cfg(not(unix))]
fn usual_permissions() -> Option<Permissions> {
    None
}

fn refused(path: &Path, error: &io::Error) -> Failure {
    let name = quoted(path);
    match error.kind() {
        io::ErrorKind::NotFound if !directory_of(path).is_dir() => {
            Failure::plain(format!("the directory of {name} does not exist"))
                .help("create it first, or write somewhere else")
        }
        io::ErrorKind::PermissionDenied => Failure::plain(format!("{name} may not be written"))
            .help("write to a directory of your own"),
        io::ErrorKind::AlreadyExists => already_there(path),
        _ => Failure::plain(format!("cannot write {name}: {}", reason(error))),
    }
}
