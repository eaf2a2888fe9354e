//! The program run as a shell runs it, and what it printed.

use std::io::Write;
use std::process::{Command, Output, Stdio};

use app::project_file::write;
use boon::{Compiler, Schemas};
use serde_json::Value;
use solver::ProjectDraft;

/// Runs the program with a text on standard input.
pub(crate) fn run(arguments: &[&str], input: &[u8]) -> Output {
    let mut program = Command::new(env!("CARGO_BIN_EXE_slatwright"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A program that does not listen closes the pipe, which is its right.
    let _ = program.stdin.take().unwrap().write_all(input);
    program.wait_with_output().unwrap()
}

/// Asks about a project on standard input: the exit code, standard output, standard error.
pub(crate) fn ask(arguments: &[&str], project: &ProjectDraft) -> (i32, String, String) {
    told(&run(arguments, write(project).as_bytes()))
}

pub(crate) fn told(output: &Output) -> (i32, String, String) {
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    let code = output.status.code().unwrap();
    (code, text(&output.stdout), text(&output.stderr))
}

pub(crate) fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

/// The JSON that a command prints; of orders, after a short search.
pub(crate) fn json_of(command: &str, project: &ProjectDraft) -> Value {
    let mut arguments = vec![command, "-", "--format", "json"];
    if command == "orders" {
        arguments.extend(["--steps", "100"]);
    }
    let (_, text, _) = ask(&arguments, project);
    serde_json::from_str(&text).unwrap()
}

/// Holds a document against the schema that the program prints.
#[track_caller]
pub(crate) fn is_described(of: &[&str], document: &Value) -> bool {
    let mut arguments = vec!["schema"];
    arguments.extend(of);
    let (code, schema, _) = told(&run(&arguments, b""));
    assert_eq!(code, 0);
    let (mut schemas, mut compiler) = (Schemas::new(), Compiler::new());
    let schema = serde_json::from_str(&schema).unwrap();
    compiler.add_resource("printed.json", schema).unwrap();
    let index = compiler.compile("printed.json", &mut schemas).unwrap();
    schemas.validate(document, index).is_ok()
}
