//! The door: arguments in, exit status out.

fn main() -> std::process::ExitCode {
    flatwork::run(std::env::args_os())
}
