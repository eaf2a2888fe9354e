//! A place in a text, with the few steps the reader takes from it.

/// A place in a text. Copy it to look ahead.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cursor<'a> {
    rest: &'a str,
}

impl<'a> Cursor<'a> {
    /// The beginning of `text`.
    pub(super) fn new(text: &'a str) -> Self {
        Self { rest: text }
    }

    /// What has not been read.
    pub(super) fn rest(self) -> &'a str {
        self.rest
    }

    /// The next character.
    pub(super) fn peek(self) -> Option<char> {
        self.rest.chars().next()
    }

    /// Takes the next character if it is `wanted`.
    pub(super) fn take(&mut self, wanted: impl FnOnce(char) -> bool) -> Option<char> {
        let next = self.peek().filter(|&next| wanted(next))?;
        self.rest = &self.rest[next.len_utf8()..];
        Some(next)
    }

    /// Takes characters as long as they are `wanted`.
    pub(super) fn take_while(&mut self, wanted: impl Fn(char) -> bool) -> &'a str {
        let end = self
            .rest
            .find(|next| !wanted(next))
            .unwrap_or(self.rest.len());
        let (taken, rest) = self.rest.split_at(end);
        self.rest = rest;
        taken
    }

    /// Takes digits; there may be none.
    pub(super) fn take_digits(&mut self) -> &'a str {
        self.take_while(|next| next.is_ascii_digit())
    }

    /// Takes spaces of any sort; tells whether there were some.
    pub(super) fn skip_spaces(&mut self) -> bool {
        !self.take_while(char::is_whitespace).is_empty()
    }
}
