//! What a title block tells, in a file: its shape, and from the draft on the page and back.

use serde::Serialize;
use solver::TitleBlock;

/// What the title block of a printed sheet tells; an empty text is left for the pen.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct TitleBlockFile {
    /// The legal owner.
    pub owner: String,
    /// The identification number.
    pub number: String,
    /// The title; where it is empty, the barrel and the slats stand there.
    pub title: String,
    /// Who made it.
    pub created_by: String,
    /// Who approved it.
    pub approved_by: String,
    /// The date of issue, as the works writes dates.
    pub date_of_issue: String,
}

pub(super) fn title_block_file(block: &TitleBlock) -> TitleBlockFile {
    TitleBlockFile {
        owner: block.owner.clone(),
        number: block.number.clone(),
        title: block.title.clone(),
        created_by: block.creator.clone(),
        approved_by: block.approver.clone(),
        date_of_issue: block.issued.clone(),
    }
}

pub(super) fn title_block_draft(file: &TitleBlockFile) -> TitleBlock {
    TitleBlock {
        owner: file.owner.clone(),
        number: file.number.clone(),
        title: file.title.clone(),
        creator: file.created_by.clone(),
        approver: file.approved_by.clone(),
        issued: file.date_of_issue.clone(),
    }
}
