//! Prints the trace of the solver on this machine.

#![expect(clippy::print_stdout, reason = "its output is what it is for")]

fn main() {
    print!("{}", tests::trace());
}
