//! What the title block of a printed sheet tells beside what is computed.

/// The fields of a title block (ISO 7200) that a person fills in. Any text may stand in them; one that
/// is empty is left on paper as a box for the pen.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TitleBlock {
    /// The legal owner of the document.
    pub owner: String,
    /// Its identification number.
    pub number: String,
    /// Its title; where it is empty, the barrel and the slats stand there.
    pub title: String,
    /// Who made it.
    pub creator: String,
    /// Who approved it.
    pub approver: String,
    /// The date on which it was issued, as the works writes dates.
    pub issued: String,
}

/// A field of a title block.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum TitleField {
    /// The legal owner.
    Owner,
    /// The identification number.
    Number,
    /// The title.
    Title,
    /// Who made it.
    Creator,
    /// Who approved it.
    Approver,
    /// The date of issue.
    Issued,
}

impl TitleField {
    /// Every field, in the order in which they are filled in.
    pub const ALL: [Self; 6] = [
        Self::Owner,
        Self::Number,
        Self::Title,
        Self::Creator,
        Self::Approver,
        Self::Issued,
    ];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Owner => "Owner",
            Self::Number => "Number",
            Self::Title => "Title",
            Self::Creator => "Created by",
            Self::Approver => "Approved by",
            Self::Issued => "Date of issue",
        }
    }
}

impl TitleBlock {
    /// A title block of empty fields.
    #[must_use]
    pub const fn new() -> Self {
        Self {
            owner: String::new(),
            number: String::new(),
            title: String::new(),
            creator: String::new(),
            approver: String::new(),
            issued: String::new(),
        }
    }

    /// What stands in a field.
    ///
    /// ```
    /// use solver::{TitleBlock, TitleField};
    /// let mut block = TitleBlock::new();
    /// *block.at_mut(TitleField::Number) = "S-0117".to_owned();
    /// assert_eq!(block.at(TitleField::Number), "S-0117");
    /// assert_eq!(block.at(TitleField::Owner), "");
    /// ```
    #[must_use]
    pub fn at(&self, field: TitleField) -> &str {
        match field {
            TitleField::Owner => &self.owner,
            TitleField::Number => &self.number,
            TitleField::Title => &self.title,
            TitleField::Creator => &self.creator,
            TitleField::Approver => &self.approver,
            TitleField::Issued => &self.issued,
        }
    }

    /// The same, to be changed.
    pub fn at_mut(&mut self, field: TitleField) -> &mut String {
        match field {
            TitleField::Owner => &mut self.owner,
            TitleField::Number => &mut self.number,
            TitleField::Title => &mut self.title,
            TitleField::Creator => &mut self.creator,
            TitleField::Approver => &mut self.approver,
            TitleField::Issued => &mut self.issued,
        }
    }
}
