//! A barrel alone: as the end of an address, and as a small file. Both carry the same text with its
//! checksum, and neither needs a network to be read.
//!
//! ```text
//! address  #barrel=1.<text, base64url of RFC 4648>.<checksum>
//! file     {"format": "slatwright-barrel", "version": 1, "checksum": …, "barrel": {…}}
//! text     the members of the barrel that differ from those of a new one of its kind, as JSON
//! ```
//!
//! The checksum is FNV-1a of 64 bits over the text (G. Fowler, L. C. Noll, K.-P. Vo; offset basis
//! cbf29ce484222325, prime 100000001b3), in hexadecimal digits: it tells what was damaged on its way,
//! and keeps out nothing that was meant.

use super::draft::{barrel_draft, barrel_file};
use super::reader::{Findings, object};
use super::{FileCause, FileProblem, MOST_BYTES, ShapeWord, version_6};
use serde_json::{Map, Value, json};
use solver::{BarrelDraft, Entry, Id, Shape};

/// The word that tells a barrel from other JSON.
const FORMAT: &str = "slatwright-barrel";
/// The version that is written.
const NEWEST: u32 = 1;
/// How the end of an address begins that holds a barrel.
pub const BARREL_FRAGMENT: &str = "#barrel=";

/// The end of an address that holds a barrel.
///
/// ```
/// # use app::project_file::{barrel_fragment, read_barrel_fragment};
/// use solver::{BarrelDraft, Shape};
/// let barrel = BarrelDraft::new("Office", Shape::Round);
/// let fragment = barrel_fragment(&barrel);
/// assert!(fragment.starts_with("#barrel=1."));
/// assert_eq!(read_barrel_fragment(&fragment).unwrap(), barrel);
/// ```
#[must_use]
pub fn barrel_fragment(draft: &BarrelDraft) -> String {
    let text = Value::Object(members(draft)).to_string();
    let (payload, checksum) = (encoded(text.as_bytes()), checksum(&text));
    format!("{BARREL_FRAGMENT}{NEWEST}.{payload}.{checksum:016x}")
}

/// The barrel in the end of an address.
///
/// # Errors
/// It is of a newer version, or damaged, or what it holds is no barrel.
pub fn read_barrel_fragment(fragment: &str) -> Result<BarrelDraft, Vec<FileProblem>> {
    let mut parts = fragment
        .strip_prefix(BARREL_FRAGMENT)
        .unwrap_or_default()
        .split('.');
    known_version(parts.next().and_then(|version| version.parse().ok()))?;
    let (payload, told) = (parts.next().unwrap_or_default(), parts.next());
    let text = decoded(payload).and_then(|bytes| String::from_utf8(bytes).ok());
    let text = text.filter(|text| {
        fragment.len() <= MOST_BYTES && told == Some(format!("{:016x}", checksum(text)).as_str())
    });
    let barrel = text.and_then(|text| serde_json::from_str(&text).ok());
    barrel.map_or_else(|| refused(FileCause::Damaged), |barrel| read(&barrel))
}

/// The text of a file that holds a barrel alone.
///
/// ```
/// # use app::project_file::{read_barrel_file, write_barrel_file};
/// use solver::{BarrelDraft, Shape};
/// let barrel = BarrelDraft::new("Office", Shape::Round);
/// let text = write_barrel_file(&barrel);
/// assert_eq!(read_barrel_file(&text).unwrap().unwrap(), barrel);
/// assert!(read_barrel_file("{}").is_none());
/// ```
#[must_use]
pub fn write_barrel_file(draft: &BarrelDraft) -> String {
    let barrel = Value::Object(members(draft));
    let checksum = format!("{:016x}", checksum(&barrel.to_string()));
    let document = json!({
        "format": FORMAT,
        "version": NEWEST,
        "checksum": checksum,
        "barrel": barrel,
    });
    format!("{document:#}\n")
}

/// The barrel in the text of a file; nothing where the text is something else.
///
/// # Errors
/// As of [`read_barrel_fragment`].
#[must_use]
pub fn read_barrel_file(text: &str) -> Option<Result<BarrelDraft, Vec<FileProblem>>> {
    if text.len() > MOST_BYTES {
        return None;
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let document: Value = serde_json::from_str(text).ok()?;
    let is_one = document.get("format").and_then(Value::as_str) == Some(FORMAT);
    is_one.then(|| {
        known_version(document.get("version").and_then(Value::as_u64))?;
        let barrel = document.get("barrel").unwrap_or(&Value::Null);
        let told = document.get("checksum").and_then(Value::as_str);
        if told == Some(format!("{:016x}", checksum(&barrel.to_string())).as_str()) {
            read(barrel)
        } else {
            refused(FileCause::Damaged)
        }
    })
}

fn known_version(version: Option<u64>) -> Result<(), Vec<FileProblem>> {
    match version {
        Some(1) => Ok(()),
        Some(found) if found > u64::from(NEWEST) => {
            let newest = NEWEST;
            refused(FileCause::NewerVersion { found, newest })
        }
        _ => refused(FileCause::Damaged),
    }
}

fn refused<T>(cause: FileCause) -> Result<T, Vec<FileProblem>> {
    let path = String::new();
    Err(vec![FileProblem { path, cause }])
}

/// The members of a barrel that differ from those of a new one of its kind; the kind is always there.
fn members(draft: &BarrelDraft) -> Map<String, Value> {
    let mut members = all_members(draft);
    let new = all_members(&BarrelDraft::new("", draft.shape));
    members.retain(|name, value| name == "shape" || new.get(name) != Some(value));
    members
}

fn all_members(draft: &BarrelDraft) -> Map<String, Value> {
    let (id, draft) = (Id(0), draft.clone());
    match serde_json::to_value(barrel_file(&Entry { id, draft })) {
        Ok(Value::Object(members)) => members,
        _ => Map::new(),
    }
}

/// The barrel of some members; the others are those of a new one of its kind.
fn read(barrel: &Value) -> Result<BarrelDraft, Vec<FileProblem>> {
    let is_of = |shape: &Shape| {
        let word = serde_json::to_value(ShapeWord::from(*shape)).ok();
        word.is_some() && word.as_ref() == barrel.get("shape")
    };
    let shape = Shape::ALL.into_iter().find(is_of);
    let mut members = all_members(&BarrelDraft::new("", shape.unwrap_or(Shape::Round)));
    if let Value::Object(given) = barrel {
        members.extend(given.clone());
    }
    if shape.is_none() {
        // The reader tells which kinds there are.
        let given = barrel.get("shape").cloned().unwrap_or(Value::Null);
        members.insert("shape".to_owned(), given);
    }
    let mut findings = Findings::default();
    let document = Value::Object(members);
    let file = object(
        "barrel".to_owned(),
        &document,
        &mut findings,
        version_6::barrel,
    );
    if findings.problems.is_empty() {
        Ok(barrel_draft(&file).draft)
    } else {
        Err(findings.problems)
    }
}

fn checksum(text: &str) -> u64 {
    let bytes = text.bytes();
    bytes.fold(0xcbf2_9ce4_8422_2325, |sum, byte| {
        (sum ^ u64::from(byte)).wrapping_mul(0x100_0000_01b3)
    })
}

/// The letters of base64url (RFC 4648, section 5), without padding.
const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

fn encoded(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() * 4 / 3 + 4);
    for group in bytes.chunks(3) {
        let byte = |k: usize| u32::from(group.get(k).copied().unwrap_or(0));
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for k in 0..=group.len() {
            let letter = bits >> (18 - 6 * k) & 63;
            text.push(char::from(LETTERS[letter as usize]));
        }
    }
    text
}

fn decoded(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() * 3 / 4);
    for group in text.as_bytes().chunks(4) {
        let mut bits = 0_u32;
        for k in 0..4 {
            let value = match group.get(k) {
                Some(letter) => LETTERS.iter().position(|other| other == letter)?,
                None => 0,
            };
            bits = bits << 6 | value as u32;
        }
        let whole = [(bits >> 16) as u8, (bits >> 8) as u8, bits as u8];
        // One letter alone holds no byte.
        let count = group.len().checked_sub(1).filter(|count| *count > 0)?;
        bytes.extend(&whole[..count]);
    }
    Some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use solver::Typed;

    /// RFC 4648, section 10, without the padding.
    #[test]
    fn bytes_become_the_letters_of_the_standard() {
        let rows = [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("fooba", "Zm9vYmE"),
            ("foobar", "Zm9vYmFy"),
        ];
        for (plain, letters) in rows {
            assert_eq!(encoded(plain.as_bytes()), letters);
            assert_eq!(decoded(letters).unwrap(), plain.as_bytes());
        }
        assert_eq!(encoded(&[0xfb, 0xff]), "-_8");
        assert_eq!(decoded("Z"), None);
        assert_eq!(decoded("Zm9+"), None);
    }

    /// The test vectors of the authors, *from memory*.
    #[test]
    fn the_checksum_is_the_published_one() {
        assert_eq!(checksum(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(checksum("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(checksum("foobar"), 0x8594_4171_f739_67e8);
    }

    fn told(result: Result<BarrelDraft, Vec<FileProblem>>) -> String {
        result.unwrap_err()[0].to_string()
    }

    #[test]
    fn a_plain_barrel_has_a_short_address() {
        let fragment = barrel_fragment(&BarrelDraft::new("Office", Shape::Hexagonal));
        assert!(fragment.len() < 100, "{fragment}");
        let kept: Vec<char> = fragment.chars().collect();
        assert!(
            kept.iter()
                .all(|letter| letter.is_ascii_alphanumeric() || "#=.-_".contains(*letter))
        );
    }

    #[test]
    fn what_is_newer_or_damaged_is_refused_in_words() {
        let newer = told(read_barrel_fragment("#barrel=2.abc.def"));
        assert!(newer.contains("newer Slatwright"), "{newer}");
        for damaged in [
            "#barrel=",
            "#barrel=1",
            "#barrel=1.e30",
            "#barrel=1.e30.0",
            "#barrel=x.y.z",
            "",
        ] {
            let damaged = told(read_barrel_fragment(damaged));
            assert!(damaged.contains("damaged"), "{damaged}");
        }
        let newer =
            told(read_barrel_file(r#"{"format": "slatwright-barrel", "version": 9}"#).unwrap());
        assert!(newer.contains("newer Slatwright"), "{newer}");
        let text = r#"{"shape": "heptagonal"}"#;
        let fragment = format!(
            "#barrel=1.{}.{:016x}",
            encoded(text.as_bytes()),
            checksum(text)
        );
        assert!(told(read_barrel_fragment(&fragment)).contains("heptagonal"));
        let text = "[]";
        let fragment = format!(
            "#barrel=1.{}.{:016x}",
            encoded(text.as_bytes()),
            checksum(text)
        );
        assert!(read_barrel_fragment(&fragment).is_err());
    }

    fn any_barrel() -> impl Strategy<Value = BarrelDraft> {
        let typed = || {
            prop_oneof![
                any::<f64>()
                    .prop_filter("a number that a file can hold", |n| n.is_finite())
                    .prop_map(Typed::Number),
                "\\PC{0,20}".prop_map(Typed::Text),
                (0.0_f64..20.0).prop_map(Typed::Number),
            ]
        };
        let shapes = prop::sample::select(Shape::ALL.to_vec());
        (
            shapes,
            "\\PC{0,40}",
            "[MLCAZ0-9 .-]{0,60}",
            [typed(), typed(), typed(), typed()],
        )
            .prop_map(|(shape, name, path, [size, coat, lead, up])| BarrelDraft {
                path,
                size,
                coat,
                lead_diameter: lead,
                axis_up: up,
                ..BarrelDraft::new(&name, shape)
            })
    }

    proptest! {
        #[test]
        fn any_barrel_comes_back_from_address_and_file(barrel in any_barrel()) {
            let addressed = read_barrel_fragment(&barrel_fragment(&barrel));
            prop_assert_eq!(addressed.as_ref(), Ok(&barrel));
            let filed = read_barrel_file(&write_barrel_file(&barrel)).unwrap();
            prop_assert_eq!(filed.as_ref(), Ok(&barrel));
        }

        /// One letter changed, dropped or added on the way is seen.
        #[test]
        fn what_is_changed_on_the_way_is_not_taken(barrel in any_barrel(), place in 10..400_usize, letter in "[A-Za-z0-9._-]", what in 0..3) {
            let fragment = barrel_fragment(&barrel);
            let mut letters: Vec<char> = fragment.chars().collect();
            let place = place % letters.len();
            prop_assume!(place > 9);
            match what {
                0 => letters[place] = letter.chars().next().unwrap(),
                1 => { letters.remove(place); }
                _ => letters.insert(place, letter.chars().next().unwrap()),
            }
            let changed: String = letters.into_iter().collect();
            // Letters that hold no bits of the last byte may differ, and what follows the checksum is not read.
            if let Ok(read) = read_barrel_fragment(&changed) {
                prop_assert_eq!(read, barrel);
            }
        }

        #[test]
        fn any_text_is_a_barrel_or_refused(text in "\\PC{0,200}") {
            let _ = read_barrel_fragment(&text);
            let _ = read_barrel_fragment(&format!("#barrel=1.{text}"));
            let _ = read_barrel_file(&text);
        }

        #[test]
        fn any_members_are_a_barrel_or_refused(name in "[a-z_]{1,12}", number in any::<i64>(), text in "\\PC{0,40}") {
            let barrel = json!({ "shape": text, name: number, "path": [number] });
            let text = barrel.to_string();
            let fragment = format!("#barrel=1.{}.{:016x}", encoded(text.as_bytes()), checksum(&text));
            prop_assert!(read_barrel_fragment(&fragment).is_err());
        }
    }
}
