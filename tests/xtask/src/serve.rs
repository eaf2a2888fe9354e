//! `cargo xtask serve`: the page on this machine.

use std::{
    io::{Read, Write},
    net::{Ipv4Addr, TcpListener, TcpStream},
    process::Child,
    thread,
    time::Duration,
};

use crate::{build, failure::Failure, steps::Steps};

const FIRST_PORT: u16 = 8080;

/// The port asked for, if any, from the words after `serve`.
pub(crate) fn port_option(words: &[&str]) -> Result<Option<u16>, Failure> {
    let text = match words {
        [] => return Ok(None),
        ["--port", text] => text,
        [word] if word.starts_with("--port=") => &word["--port=".len()..],
        _ => {
            return Err(Failure::new(format!(
                "serve does not know: {}",
                words.join(" ")
            )));
        }
    };
    match text.parse() {
        Ok(port) if port > 0 => Ok(Some(port)),
        _ => Err(Failure::new(format!(
            "the port must be a number between 1 and 65535, not {text:?}"
        ))),
    }
}

/// Builds the page, serves it, and builds it anew after each change of a file.
pub(crate) fn serve(asked: Option<u16>) -> Result<(), Failure> {
    choose_port(asked)?; // a taken port shows before the wait
    let mut steps = Steps::new();
    build::page(&mut steps)?;

    let port = choose_port(asked)?;
    steps.announce(&format!("serve dist/ on port {port}"));
    let mut trunk = build::trunk(&format!("serve --release --port {port}"))?
        .spawn()
        .map_err(|error| Failure::new(format!("trunk did not start: {error}")))?;
    wait_for_answer(&mut trunk, port)?;
    steps.announce(&format!(
        "Slatwright is at  http://127.0.0.1:{port}/  (Ctrl+C ends it)"
    ));
    let status = trunk.wait().map_err(|error| lost(&error))?;
    Err(Failure::new(format!("trunk ended with {status}")))
}

/// The port asked for, or the first free one.
fn choose_port(asked: Option<u16>) -> Result<u16, Failure> {
    match asked {
        Some(port) if is_free(port) => Ok(port),
        Some(port) => Err(Failure::new(format!("port {port} is taken"))
            .hint("Leave --port out to get the next free one.")),
        None => (FIRST_PORT..=u16::MAX)
            .find(|port| is_free(*port))
            .ok_or_else(|| Failure::new(format!("no free port from {FIRST_PORT} on"))),
    }
}

fn is_free(port: u16) -> bool {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port)).is_ok()
}

/// Waits until the page answers, or until trunk gives up.
fn wait_for_answer(trunk: &mut Child, port: u16) -> Result<(), Failure> {
    loop {
        match trunk.try_wait() {
            Ok(None) if answers(port) => return Ok(()),
            Ok(None) => thread::sleep(Duration::from_millis(200)),
            Ok(Some(status)) => {
                return Err(Failure::new(format!(
                    "the build failed: trunk ended with {status}"
                )));
            }
            Err(error) => return Err(lost(&error)),
        }
    }
}

fn lost(error: &std::io::Error) -> Failure {
    Failure::new(format!("trunk was lost: {error}"))
}

/// Whether our page comes from this port.
fn answers(port: u16) -> bool {
    let ask = || -> std::io::Result<bool> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port))?;
        stream.set_read_timeout(Some(Duration::from_secs(2)))?;
        let question =
            format!("GET / HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nConnection: close\r\n\r\n");
        stream.write_all(question.as_bytes())?;
        let mut answer = String::new();
        stream.read_to_string(&mut answer)?;
        Ok(answer.starts_with("HTTP/1.1 200 ") && answer.contains("<title>Slatwright</title>"))
    };
    ask().unwrap_or(false)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ports_are_read() {
        assert_eq!(port_option(&[]), Ok(None));
        assert_eq!(port_option(&["--port", "8123"]), Ok(Some(8123)));
        assert_eq!(port_option(&["--port=8123"]), Ok(Some(8123)));
    }

    #[test]
    fn other_words_are_refused() {
        for words in [
            &["--port"][..],
            &["--port", "x"],
            &["--port", "0"],
            &["--port", "65536"],
            &["8123"],
        ] {
            assert!(port_option(words).is_err(), "{words:?}");
        }
    }

    #[test]
    fn a_listening_port_is_not_free() {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
        assert!(!is_free(listener.local_addr().unwrap().port()));
    }

    #[test]
    fn only_our_page_is_an_answer() {
        for (reply, expected) in [
            ("HTTP/1.1 200 OK\r\n\r\n<title>Slatwright</title>", true),
            ("HTTP/1.1 200 OK\r\n\r\n<title>Another</title>", false),
            ("HTTP/1.1 404 Not Found\r\n\r\n", false),
            ("", false),
        ] {
            let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
            let port = listener.local_addr().unwrap().port();
            let server = thread::spawn(move || {
                let (mut stream, _) = listener.accept().unwrap();
                let mut question = [0; 256];
                let _ = stream.read(&mut question).unwrap();
                stream.write_all(reply.as_bytes()).unwrap();
            });
            assert_eq!(answers(port), expected, "{reply:?}");
            server.join().unwrap();
        }
    }
}
