//! The program as a user runs it: exit codes, what goes to which stream, and files.

mod commands;
mod files;
mod hostile;
mod isolator;
mod joint;
mod streams;

use std::fs;
use std::path::Path;
use std::process::Output;

use assert_cmd::Command;
use tempfile::TempDir;

/// Holds everywhere; some of its checks are close, none fails.
const GOOD: &str = "models/forestry-pickup.toml";

/// Two of its checks fail.
const FAILING: &str = "models/hillclimb-single-seater.toml";

/// The program, run in a directory of its own.
struct Run {
    directory: TempDir,
}

impl Run {
    fn new() -> Self {
        Self {
            directory: TempDir::new().unwrap(),
        }
    }

    fn path(&self, name: &str) -> std::path::PathBuf {
        self.directory.path().join(name)
    }

    fn write(&self, name: &str, bytes: impl AsRef<[u8]>) {
        fs::write(self.path(name), bytes).unwrap();
    }

    /// Names of all files, sorted.
    fn files(&self) -> Vec<String> {
        let mut names: Vec<String> = fs::read_dir(self.directory.path())
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    }

    fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_bedplate"));
        command
            .args(arguments)
            .current_dir(self.directory.path())
            .env_remove("NO_COLOR")
            .env("TERM", "xterm");
        command
    }

    fn run(&self, arguments: &[&str]) -> Answer {
        Answer::of(self.command(arguments).output().unwrap())
    }

    fn run_with_stdin(&self, arguments: &[&str], stdin: impl Into<Vec<u8>>) -> Answer {
        Answer::of(self.command(arguments).write_stdin(stdin).output().unwrap())
    }
}

/// What came of a run.
#[derive(Debug)]
struct Answer {
    /// `None` when a signal ended it.
    code: Option<i32>,
    out: String,
    err: String,
}

impl Answer {
    fn of(output: Output) -> Self {
        Self {
            code: output.status.code(),
            out: String::from_utf8(output.stdout).unwrap(),
            err: String::from_utf8(output.stderr).unwrap(),
        }
    }

    #[track_caller]
    fn ends_with(self, code: i32) -> Self {
        assert_eq!(self.code, Some(code), "{self:#?}");
        self
    }

    /// Could not run: nothing on standard output, these words on standard error.
    #[track_caller]
    fn refuses(self, words: &[&str]) -> Self {
        let answer = self.ends_with(2);
        assert_eq!(answer.out, "", "{answer:#?}");
        for word in words {
            assert!(answer.err.contains(word), "no `{word}` in {answer:#?}");
        }
        answer
    }

    #[track_caller]
    fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.out).unwrap()
    }
}

/// Full path of a file of the project.
fn project(path: &str) -> String {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join(path)
        .to_str()
        .unwrap()
        .to_owned()
}
