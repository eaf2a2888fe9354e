//! The grades of lead, as a file writes them.

use serde::{Serialize, Serializer};
use solver::LeadGrade;

/// A grade of lead, kept as the trade writes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LeadGradeWord(LeadGrade);

impl LeadGradeWord {
    /// Every word with what it stands for, soft to hard.
    pub(super) fn words() -> Vec<(&'static str, Self)> {
        let word = |grade: LeadGrade| (grade.label(), Self(grade));
        LeadGrade::all().map(word).collect()
    }
}

impl From<LeadGrade> for LeadGradeWord {
    fn from(grade: LeadGrade) -> Self {
        Self(grade)
    }
}

impl From<LeadGradeWord> for LeadGrade {
    fn from(word: LeadGradeWord) -> Self {
        word.0
    }
}

impl Serialize for LeadGradeWord {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.0.label())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Files that are saved hold these words, so they must stay.
    #[test]
    fn the_words_of_a_file_stay() {
        let words: Vec<&str> = (LeadGradeWord::words().iter())
            .map(|(word, _)| *word)
            .collect();
        let expected = "9B 8B 7B 6B 5B 4B 3B 2B B HB F H 2H 3H 4H 5H 6H 7H 8H 9H Coloured";
        assert_eq!(words.join(" "), expected);
    }
}
