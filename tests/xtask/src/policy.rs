//! The content policy of the page: what a browser may load and run for it.
//!
//! The policy is written out in three places, each of which must stand alone: in the page (any
//! static host), and in the headers of `Trunk.toml`, which `cargo xtask serve` and the server of
//! the browser tests send. The tests here hold them together.

use crate::failure::Failure;

/// Everything comes from the page's own host; nothing inline is run; images may also be drawn
/// in the page. `'wasm-unsafe-eval'` allows WebAssembly and nothing else.
pub(crate) const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; \
    style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; \
    worker-src 'self'; manifest-src 'self'; object-src 'none'; base-uri 'none'; \
    form-action 'none'";

/// Refuses a page that does not state the policy, or that holds something the policy forbids.
pub(crate) fn check(page: &str) -> Result<(), Failure> {
    let stated = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\"");
    if !page.contains(&stated) {
        return Err(Failure::new("the page does not state the content policy"));
    }
    match inline(page) {
        Some(piece) => Err(Failure::new(format!(
            "the page holds what its content policy forbids: {piece}"
        ))),
        None => Ok(()),
    }
}

/// The first tag of a page that a browser would refuse under the policy.
fn inline(page: &str) -> Option<&str> {
    page.match_indices('<')
        .map(|(start, _)| {
            let tag = &page[start..];
            &tag[..tag.find('>').map_or(tag.len(), |end| end + 1)]
        })
        .find(|tag| {
            let tag = tag.to_ascii_lowercase();
            let attributes: Vec<&str> = tag
                .split_whitespace()
                .filter_map(|word| Some(word.split_once('=')?.0))
                .collect();
            (tag.starts_with("<script") && !attributes.contains(&"src"))
                || tag.starts_with("<style")
                || tag.starts_with("<base")
                || attributes.contains(&"style")
                || attributes.iter().any(|name| name.starts_with("on"))
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = include_str!("../../../app/index.html");
    const TRUNK: &str = include_str!("../../../Trunk.toml");

    #[test]
    fn the_page_states_the_policy_and_keeps_it() {
        assert_eq!(check(PAGE), Ok(()));
    }

    #[test]
    fn the_headers_add_only_the_frame_ban() {
        // A page cannot state this one by itself.
        let header = format!("\"{POLICY}; frame-ancestors 'none'\"");
        assert!(TRUNK.contains(&header), "{header}");
    }

    #[test]
    fn a_page_without_the_policy_is_refused() {
        assert!(check("<head></head>").is_err());
    }

    #[test]
    fn inline_pieces_are_found() {
        assert_eq!(inline("<p><script>let x;</script>"), Some("<script>"));
        assert_eq!(inline("<style>p {}</style>"), Some("<style>"));
        assert_eq!(inline("<p style=\"x\">"), Some("<p style=\"x\">"));
        assert_eq!(inline("<p onclick=\"x\">"), Some("<p onclick=\"x\">"));
        assert_eq!(inline("<base href=\"/\">"), Some("<base href=\"/\">"));
        assert_eq!(
            inline("<script type=\"module\" src=\"./boot.js\"></script>"),
            None
        );
    }
}
