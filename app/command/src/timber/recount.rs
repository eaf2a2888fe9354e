//! A plan that was printed, counted once more.

use app::project_file::Opened;
use solver::LengthUnit;
use solver::sawing::{SawingFault, verify};

use crate::answer::Answer;
use crate::document::{self, RecountDocument, SawnPart};
use crate::ending::Ending;
use crate::findings::Findings;

/// What a recount says of a plan and of its proof.
pub(crate) struct Recounted {
    /// How the plan fails, if it does.
    pub(crate) fault: Option<SawingFault>,
    /// Blanks that the plan leaves missing, of all kinds.
    pub(crate) missing: u64,
    /// What the plan comes to, as it says.
    pub(crate) amount: i64,
    /// No plan comes to less, by the proof; none where it does not hold or there is none.
    pub(crate) bound: Option<i64>,
    /// No plan leaves fewer blanks missing, by the certificate of that; none where there is none.
    pub(crate) least_missing: Option<i64>,
}

/// Counts a plan once more against the saw shop of a project, in whole numbers, and prices every plank
/// of its proof anew.
///
/// # Errors
/// Everything that is wrong with the saw shop.
pub(crate) fn recount(opened: &Opened, part: &SawnPart) -> Result<Recounted, Findings> {
    let data = opened.draft.check_sawing();
    let data = data.map_err(|problems| Findings::with(opened, problems))?;
    let plan = part.plan();
    let fault = verify(&data, &plan).err();
    Ok(Recounted {
        missing: if fault.is_none() {
            plan.short(&data).iter().sum()
        } else {
            0
        },
        fault,
        amount: plan.cost,
        bound: part.proof().and_then(|proof| proof.bound(&data)),
        least_missing: part
            .certificate_of_missing()
            .and_then(|certificate| certificate.missing(&data)),
    })
}

impl Recounted {
    fn is_sound(&self) -> bool {
        self.fault.is_none() && (self.bound.is_some() || self.least_missing.is_some())
    }

    /// What the recount says, in a word.
    pub(crate) fn is_best(&self) -> bool {
        self.fault.is_none() && self.missing == 0 && self.bound == Some(self.amount)
    }
}

impl Answer for Recounted {
    fn text(&self, _: LengthUnit) -> String {
        let plan = match &self.fault {
            Some(fault) => format!("The plan does not add up: {fault}"),
            None if self.missing > 0 => {
                format!("The plan adds up; blanks missing: {}", self.missing)
            }
            None => "The plan adds up and makes all blanks".to_owned(),
        };
        let proof = match (self.bound, self.least_missing) {
            (_, Some(least)) => {
                format!("The certificate holds: no plan leaves fewer than {least} missing")
            }
            (Some(bound), None) if bound == self.amount => {
                format!("The proof holds: no plan comes to less than {bound}, as this one does")
            }
            (Some(bound), None) => format!(
                "The proof holds: no plan comes to less than {bound}; this one comes to {}",
                self.amount
            ),
            (None, None) => "The proof does not hold".to_owned(),
        };
        format!("{plan}\n{proof}\n")
    }

    fn json(&self) -> String {
        document::write(&RecountDocument::from(self))
    }

    fn ending(&self) -> Ending {
        if self.is_sound() {
            Ending::Fine
        } else {
            Ending::Problems
        }
    }
}
