//! A walk through JSON that notices everything that does not fit, instead of only the first.
//!
//! Every reading gives a value. Where nothing fit, the value is a stand-in and a problem is noted,
//! and with a problem noted the whole file is refused, so that no stand-in is ever seen.

use serde_json::{Map, Value};
use solver::{Colour, LeadGrade};

use super::words::Word;
use super::{
    ColourWord, Entered, FileCause, FileProblem, LeadGradeWord, MOST_CHARACTERS, MOST_ENTRIES,
};

/// What was found on the way.
#[derive(Debug, Default)]
pub(super) struct Findings {
    /// What keeps the file from being opened.
    pub(super) problems: Vec<FileProblem>,
    /// What is worth knowing all the same.
    pub(super) notes: Vec<FileProblem>,
}

impl Findings {
    /// Notes what keeps the file from being opened.
    pub(super) fn refuse(&mut self, path: impl Into<String>, cause: FileCause) {
        let path = path.into();
        self.problems.push(FileProblem { path, cause });
    }

    /// Notes what is worth knowing.
    pub(super) fn note(&mut self, path: impl Into<String>, cause: FileCause) {
        let path = path.into();
        self.notes.push(FileProblem { path, cause });
    }
}

/// An object of the file while it is read.
pub(super) struct Object<'a> {
    /// Where it stands; empty for the outermost.
    path: String,
    /// What it holds; `None` when something else stood there, which is noted already.
    members: Option<&'a Map<String, Value>>,
    /// The fields that were asked for.
    known: Vec<&'static str>,
    findings: &'a mut Findings,
}

/// Reads an object, and notes its fields that were not asked for.
pub(super) fn object<T>(
    path: String,
    value: &Value,
    findings: &mut Findings,
    read: impl FnOnce(&mut Object<'_>) -> T,
) -> T {
    let members = value.as_object();
    if members.is_none() {
        findings.refuse(&path, other_kind(value, "an object in braces"));
    }
    enter(path, members, findings, read)
}

fn enter<T>(
    path: String,
    members: Option<&Map<String, Value>>,
    findings: &mut Findings,
    read: impl FnOnce(&mut Object<'_>) -> T,
) -> T {
    let mut object = Object {
        path,
        members,
        known: Vec::new(),
        findings,
    };
    let result = read(&mut object);
    object.note_the_unknown();
    result
}

impl<'a> Object<'a> {
    /// A number, or the text in its place.
    pub(super) fn entered(&mut self, name: &'static str) -> Entered {
        let expected = "a number or a text";
        match self.member(name, expected) {
            Some(Value::Number(number)) => match number.as_f64() {
                Some(number) => Entered::Number(number),
                None => Entered::Text(number.to_string()),
            },
            Some(Value::String(text)) => Entered::Text(self.kept(name, text, MOST_CHARACTERS)),
            other => {
                self.refuse_kind(name, other, expected);
                Entered::Text(String::new())
            }
        }
    }

    /// A text.
    pub(super) fn text(&mut self, name: &'static str) -> String {
        self.long_text(name, MOST_CHARACTERS)
    }

    /// A text that may be longer than others.
    pub(super) fn long_text(&mut self, name: &'static str, most: usize) -> String {
        let expected = "a text in quotes";
        match self.member(name, expected) {
            Some(Value::String(text)) => self.kept(name, text, most),
            other => {
                self.refuse_kind(name, other, expected);
                String::new()
            }
        }
    }

    /// A lasting name: a whole number from 0 to 4294967295.
    pub(super) fn id(&mut self, name: &'static str) -> u32 {
        let expected = "a whole number from 0 to 4294967295";
        let value = self.member(name, expected);
        value.and_then(whole_number).unwrap_or_else(|| {
            self.refuse_kind(name, value, expected);
            0
        })
    }

    /// A lasting name, or `null` for none.
    pub(super) fn optional_id(&mut self, name: &'static str) -> Option<u32> {
        let expected = "a whole number from 0 to 4294967295, or null";
        match self.member(name, expected) {
            Some(Value::Null) => None,
            value => value.and_then(whole_number).or_else(|| {
                self.refuse_kind(name, value, expected);
                None
            }),
        }
    }

    /// True or false.
    pub(super) fn truth(&mut self, name: &'static str) -> bool {
        let expected = "true or false";
        match self.member(name, expected) {
            Some(Value::Bool(truth)) => *truth,
            other => {
                self.refuse_kind(name, other, expected);
                false
            }
        }
    }

    /// One of a few words.
    pub(super) fn word<W: Word>(&mut self, name: &'static str) -> W {
        self.one_of(name, W::WORDS, W::WORDS[0].1)
    }

    /// A grade of lead.
    pub(super) fn lead_grade(&mut self, name: &'static str) -> LeadGradeWord {
        self.one_of(name, &LeadGradeWord::words(), LeadGrade::HB.into())
    }

    /// A colour, as style sheets write it.
    pub(super) fn colour(&mut self, name: &'static str) -> ColourWord {
        let expected = "a colour in quotes, like \"#1f5f6b\"";
        let value = self.member(name, expected);
        let colour = value.and_then(Value::as_str).and_then(Colour::read);
        ColourWord(colour.unwrap_or_else(|| {
            self.refuse_kind(name, value, expected);
            Colour::new(0, 0, 0)
        }))
    }

    /// One of these words; where none of them stands there, the value that stands in.
    fn one_of<W: Copy>(
        &mut self,
        name: &'static str,
        words: &[(&'static str, W)],
        stand_in: W,
    ) -> W {
        let expected = "a word in quotes";
        match self.member(name, expected) {
            Some(Value::String(text)) => {
                let found = words.iter().find(|(word, _)| word == text);
                found.map_or_else(
                    || {
                        let words: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
                        let cause = FileCause::UnknownWord {
                            found: beginning(text),
                            expected: words.join(", "),
                        };
                        self.findings.refuse(self.path_of(name), cause);
                        stand_in
                    },
                    |(_, choice)| *choice,
                )
            }
            other => {
                self.refuse_kind(name, other, expected);
                stand_in
            }
        }
    }

    /// An object inside this one.
    pub(super) fn object<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&mut Object<'_>) -> T,
    ) -> T {
        let path = self.path_of(name);
        match self.member(name, "an object in braces") {
            Some(value) => object(path, value, self.findings, read),
            None => enter(path, None, self.findings, read),
        }
    }

    /// An object inside this one, or nothing where the field is not there.
    pub(super) fn optional_object<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&mut Object<'_>) -> T,
    ) -> Option<T> {
        self.known.push(name);
        let value = self.members?.get(name)?;
        Some(object(self.path_of(name), value, self.findings, read))
    }

    /// A list of objects.
    pub(super) fn list<T>(
        &mut self,
        name: &'static str,
        read: impl Fn(&mut Object<'_>) -> T,
    ) -> Vec<T> {
        let expected = "a list in brackets";
        let path = self.path_of(name);
        match self.member(name, expected) {
            Some(Value::Array(members)) if members.len() > MOST_ENTRIES => {
                let cause = FileCause::TooMany {
                    found: members.len(),
                    most: MOST_ENTRIES,
                };
                self.findings.refuse(path, cause);
                Vec::new()
            }
            Some(Value::Array(members)) => members
                .iter()
                .enumerate()
                .map(|(place, value)| {
                    object(format!("{path}[{place}]"), value, self.findings, &read)
                })
                .collect(),
            other => {
                self.refuse_kind(name, other, expected);
                Vec::new()
            }
        }
    }

    /// Leaves a field to others.
    pub(super) fn pass_over(&mut self, name: &'static str) {
        self.known.push(name);
    }

    /// What stands in a field; that nothing does is noted.
    fn member(&mut self, name: &'static str, expected: &'static str) -> Option<&'a Value> {
        self.known.push(name);
        let value = self.members?.get(name);
        if value.is_none() {
            self.findings
                .refuse(self.path_of(name), FileCause::Missing { expected });
        }
        value
    }

    /// The text, unless it is too long.
    fn kept(&mut self, name: &str, text: &str, most: usize) -> String {
        let found = text.chars().count();
        if found > most {
            self.findings
                .refuse(self.path_of(name), FileCause::TooLong { found, most });
        }
        text.to_owned()
    }

    /// Notes that something of another kind stands there; that nothing does is noted already.
    fn refuse_kind(&mut self, name: &str, value: Option<&Value>, expected: &'static str) {
        if let Some(value) = value {
            self.findings
                .refuse(self.path_of(name), other_kind(value, expected));
        }
    }

    fn path_of(&self, name: &str) -> String {
        if self.path.is_empty() {
            name.to_owned()
        } else {
            format!("{}.{name}", self.path)
        }
    }

    fn note_the_unknown(&mut self) {
        /// More names than this are only counted.
        const MOST_NAMES: usize = 5;
        let unknown: Vec<&String> = self
            .members
            .into_iter()
            .flat_map(Map::keys)
            .filter(|name| !self.known.contains(&name.as_str()))
            .collect();
        if unknown.is_empty() {
            return;
        }
        let named: Vec<String> = unknown
            .iter()
            .take(MOST_NAMES)
            .map(|name| beginning(name))
            .collect();
        let mut names = named.join(", ");
        if unknown.len() > MOST_NAMES {
            names += &format!(" and {} more", unknown.len() - MOST_NAMES);
        }
        self.findings
            .note(self.path.clone(), FileCause::UnknownFields { names });
    }
}

/// The whole number from 0 to 4294967295 that stands there.
fn whole_number(value: &Value) -> Option<u32> {
    let number = value.as_f64()?;
    let is_one = number.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(&number);
    is_one.then_some(number as u32)
}

fn other_kind(value: &Value, expected: &'static str) -> FileCause {
    let found = described(value);
    FileCause::OtherKind { found, expected }
}

/// What stands there, short enough for a message.
pub(super) fn described(value: &Value) -> String {
    match value {
        Value::Null => "nothing (null)".to_owned(),
        Value::Bool(truth) => truth.to_string(),
        Value::Number(number) => number.to_string(),
        Value::String(text) => format!("the text \"{}\"", beginning(text)),
        Value::Array(_) => "a list".to_owned(),
        Value::Object(_) => "an object".to_owned(),
    }
}

/// The first characters of a text, enough to find it again.
fn beginning(text: &str) -> String {
    const LONGEST: usize = 40;
    match text.char_indices().nth(LONGEST) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}
