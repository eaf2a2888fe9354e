//! The files a service worker keeps, so that the page starts without a network.

use crate::failure::Failure;

/// The file that is never kept: the browser itself fetches the service worker anew.
pub(crate) const SERVICE_WORKER: &str = "sw.js";

/// The file that is kept under the address of its folder.
pub(crate) const PAGE: &str = "index.html";

const FILES: &str = "\"__FILES__\"";
const BUILD: &str = "__BUILD__";

/// Which of the built files are kept, by name, in the same order.
pub(crate) fn kept(names: &[String]) -> Vec<&str> {
    names
        .iter()
        .map(String::as_str)
        .filter(|name| *name != SERVICE_WORKER)
        .collect()
}

/// Writes the list of addresses and the build id into the text of the service worker.
///
/// Names must be plain (letters, digits, `.`, `_`, `-`, `/`), so that name and address are the
/// same text.
pub(crate) fn fill(worker: &str, kept: &[&str], build: &str) -> Result<String, Failure> {
    if let Some(name) = kept.iter().find(|name| !is_plain(name)) {
        return Err(
            Failure::new(format!("the file {name:?} cannot be an address as it is"))
                .hint("Name it with letters, digits, '.', '_' and '-' only."),
        );
    }
    if worker.matches(FILES).count() != 1 || worker.matches(BUILD).count() != 1 {
        return Err(Failure::new(format!(
            "{SERVICE_WORKER} does not hold its two places to fill exactly once"
        )));
    }
    let list: String = kept
        .iter()
        .map(|name| if *name == PAGE { "./" } else { *name })
        .map(|address| format!("\n  \"{address}\","))
        .collect();
    Ok(worker
        .replace(FILES, &format!("{list}\n"))
        .replace(BUILD, build))
}

fn is_plain(name: &str) -> bool {
    name.bytes()
        .all(|byte| byte.is_ascii_alphanumeric() || b"._-/".contains(&byte))
}

#[cfg(test)]
mod tests {
    use super::*;

    const WORKER: &str = include_str!("../../../public/sw.js");

    fn names(list: &[&str]) -> Vec<String> {
        list.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn the_service_worker_does_not_keep_itself() {
        assert_eq!(
            kept(&names(&["app.js", "index.html", "sw.js"])),
            ["app.js", "index.html"]
        );
    }

    #[test]
    fn the_list_and_the_build_are_filled_in() {
        let text = fill(
            "[\"__FILES__\"] \"__BUILD__\"",
            &["app.js", "index.html"],
            "0f",
        )
        .unwrap();
        assert_eq!(text, "[\n  \"app.js\",\n  \"./\",\n] \"0f\"");
    }

    #[test]
    fn our_service_worker_has_both_places() {
        let text = fill(WORKER, &["index.html"], "0123").unwrap();
        assert!(text.contains("const BUILD = \"0123\";"), "{text}");
        assert!(text.contains("\n  \"./\",\n"), "{text}");
    }

    #[test]
    fn a_service_worker_without_places_is_refused() {
        assert!(fill("const BUILD = 1;", &[], "0").is_err());
    }

    #[test]
    fn a_name_that_needs_escaping_is_refused() {
        assert!(fill(WORKER, &["two words.svg"], "0").is_err());
        assert!(fill(WORKER, &["a\"b.svg"], "0").is_err());
    }
}
