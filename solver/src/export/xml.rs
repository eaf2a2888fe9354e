//! Text in XML.

/// A text as the content of an element: what XML would read as markup is escaped, and what XML 1.0
/// cannot hold at all becomes the sign for a letter that is lost (W3C, XML 1.0, sections 2.2 and 2.4).
///
/// ```
/// assert_eq!(solver::escaped_xml("A & <b>\u{0}"), "A &amp; &lt;b&gt;\u{fffd}");
/// ```
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            '\'' => escaped.push_str("&apos;"),
            // A reader would turn it into a line feed.
            '\r' => escaped.push_str("&#13;"),
            '\t' | '\n' => escaped.push(letter),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {
                escaped.push(char::REPLACEMENT_CHARACTER)
            }
            _ => escaped.push(letter),
        }
    }
    escaped
}
