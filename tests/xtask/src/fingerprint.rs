//! A short name for a content: two builds with the same files have the same one.

/// 64-bit FNV-1a (Fowler, Noll, Vo). It tells builds apart; it does not guard against forgery.
pub(crate) struct Fingerprint(u64);

impl Fingerprint {
    pub(crate) fn new() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }

    /// Takes in one piece. Its length goes first, so that moving a byte from one piece to the
    /// next changes the result.
    pub(crate) fn add(&mut self, piece: &[u8]) {
        for byte in (piece.len() as u64).to_le_bytes().iter().chain(piece) {
            self.0 = (self.0 ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3);
        }
    }

    /// Sixteen hexadecimal digits.
    pub(crate) fn text(&self) -> String {
        format!("{:016x}", self.0)
    }
}

/// The fingerprint of one content.
pub(crate) fn of(content: &[u8]) -> String {
    let mut fingerprint = Fingerprint::new();
    fingerprint.add(content);
    fingerprint.text()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_byte_counts() {
        assert_eq!(of(b"slat"), of(b"slat"));
        assert_ne!(of(b"slat"), of(b"slau"));
        assert_ne!(of(b""), of(b"\0"));
    }

    #[test]
    fn the_border_between_pieces_counts() {
        let of_two = |first: &[u8], second: &[u8]| {
            let mut fingerprint = Fingerprint::new();
            fingerprint.add(first);
            fingerprint.add(second);
            fingerprint.text()
        };
        assert_ne!(of_two(b"ab", b"c"), of_two(b"a", b"bc"));
    }

    #[test]
    fn sixteen_digits() {
        assert_eq!(of(b"").len(), 16);
    }
}
