//! One stored copy of the project: its text behind a line that proves it whole.

use std::fmt;

/// The number of a save: each one counts one up, so the higher number is the newer copy.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Generation(u64);

impl Generation {
    /// The generation with the given number.
    pub fn new(number: u64) -> Self {
        Self(number)
    }

    /// The number itself.
    pub fn number(self) -> u64 {
        self.0
    }

    /// The generation of the save after this one.
    ///
    /// Saturates; at a thousand saves a second that is half a billion years away.
    pub fn next(self) -> Self {
        Self(self.0.saturating_add(1))
    }
}

impl fmt::Display for Generation {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(formatter)
    }
}

/// The project's text as of one save.
///
/// Stored as one string: a header line, then the text, untouched.
///
/// ```text
/// project-record 1 <generation> <checksum, 16 hexadecimal digits>
/// <text>
/// ```
///
/// ```
/// # use app::store::{Generation, Record};
/// let record = Record { generation: Generation::new(7), text: "{}".to_owned() };
/// assert_eq!(Record::decode(&record.encode()), Ok(record));
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    /// Which save wrote it.
    pub generation: Generation,
    /// The project.
    pub text: String,
}

/// A stored copy that is not whole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Damage {
    /// The generation in its header, where that much is legible; not to be relied on.
    pub claimed: Option<Generation>,
}

const MARK: &str = "project-record 1 ";

impl Record {
    /// The string to store.
    pub fn encode(&self) -> String {
        let Self { generation, text } = self;
        let checksum = checksum(*generation, text);
        format!("{MARK}{generation} {checksum:016x}\n{text}")
    }

    /// Reads a stored string.
    ///
    /// # Errors
    /// [`Damage`] unless `stored` is exactly what [`Record::encode`] makes of the result, which
    /// includes a right checksum.
    pub fn decode(stored: &str) -> Result<Self, Damage> {
        let (header, text) = stored.split_once('\n').ok_or(Damage { claimed: None })?;
        let generation = claimed_generation(header).ok_or(Damage { claimed: None })?;
        let record = Self {
            generation,
            text: text.to_owned(),
        };
        if record.encode() == stored {
            Ok(record)
        } else {
            Err(Damage {
                claimed: Some(generation),
            })
        }
    }
}

fn claimed_generation(header: &str) -> Option<Generation> {
    let (number, _) = header.strip_prefix(MARK)?.split_once(' ')?;
    number.parse().ok().map(Generation)
}

/// 64-bit FNV-1a over the generation (eight bytes, low first) and then the text.
///
/// It is there to notice accidents, not forgery. Every step is a bijection of the state, so a
/// single changed byte always changes the result.
/// Source: Fowler, Noll, Vo, Eastlake, "The FNV Non-Cryptographic Hash Algorithm", section 2.
fn checksum(generation: Generation, text: &str) -> u64 {
    fnv1a(generation.0.to_le_bytes().into_iter().chain(text.bytes()))
}

fn fnv1a(bytes: impl Iterator<Item = u8>) -> u64 {
    const OFFSET_BASIS: u64 = 0xcbf2_9ce4_8422_2325;
    const PRIME: u64 = 0x0000_0100_0000_01b3;
    bytes.fold(OFFSET_BASIS, |state, byte| {
        (state ^ u64::from(byte)).wrapping_mul(PRIME)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn record(generation: u64, text: &str) -> Record {
        Record {
            generation: Generation(generation),
            text: text.to_owned(),
        }
    }

    fn round_trip(generation: u64, text: &str) {
        let record = record(generation, text);
        assert_eq!(Record::decode(&record.encode()), Ok(record));
    }

    #[test]
    fn an_empty_text_comes_back() {
        round_trip(1, "");
    }

    #[test]
    fn newlines_and_other_scripts_come_back() {
        round_trip(u64::MAX, "{\n\"name\": \"Bleistift – 鉛筆 ✏️\"}\r\n");
    }

    #[test]
    fn a_text_that_looks_like_a_header_comes_back() {
        round_trip(3, "project-record 1 9 0000000000000000\nx");
    }

    /// The test values printed in the algorithm's description.
    #[test]
    fn the_checksum_agrees_with_its_published_values() {
        assert_eq!(fnv1a("".bytes()), 0xcbf2_9ce4_8422_2325);
        assert_eq!(fnv1a("a".bytes()), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(fnv1a("foobar".bytes()), 0x8594_4171_f739_67e8);
    }

    /// Stored copies outlive this version of the page.
    #[test]
    fn the_stored_form_does_not_change() {
        assert_eq!(
            record(42, "{\"width\":70}").encode(),
            "project-record 1 42 b39f235659334d50\n{\"width\":70}"
        );
    }

    #[test]
    fn any_changed_byte_is_noticed() {
        let stored = record(12, "{\"slat\":{\"width\":70,\"thickness\":5}}").encode();
        for position in 0..stored.len() {
            for replacement in 0..128u8 {
                let mut bytes = stored.clone().into_bytes();
                if bytes[position] == replacement {
                    continue;
                }
                bytes[position] = replacement;
                let damaged = String::from_utf8(bytes).unwrap();
                assert!(Record::decode(&damaged).is_err(), "{damaged:?}");
            }
        }
    }

    #[test]
    fn any_lost_end_or_extra_byte_is_noticed() {
        let stored = record(12, "{\"slat\":70}").encode();
        for length in 0..stored.len() {
            assert!(Record::decode(&stored[..length]).is_err(), "{length}");
        }
        assert!(Record::decode(&format!("{stored} ")).is_err());
        assert!(Record::decode(&format!(" {stored}")).is_err());
    }

    #[test]
    fn a_damaged_text_still_tells_its_generation() {
        let stored = record(12, "abc").encode().replace("abc", "abd");
        assert_eq!(
            Record::decode(&stored),
            Err(Damage {
                claimed: Some(Generation(12))
            })
        );
    }

    #[test]
    fn odd_headers_are_refused_without_fuss() {
        for odd in [
            "",
            "\n",
            "project-record 1 \n",
            "project-record 1 -1 0\n",
            "project-record 1 99999999999999999999999 0\n",
            "project-record 2 1 cbf29ce484222325\n",
            "…\n…",
        ] {
            assert!(Record::decode(odd).is_err(), "{odd:?}");
        }
    }
}
