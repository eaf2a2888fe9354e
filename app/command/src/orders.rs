//! What to run, to buy and to saw to fill the order book: the answer of `orders`.

mod text;

use std::fs;
use std::io;
use std::path::PathBuf;

use app::project_file::Opened;
use solver::order_plan::OrderPlanFault;
use solver::{Id, LengthUnit, OrderAnswer, OrderEnd, OrderJob};

use crate::answer::Answer;
use crate::arguments::AskedOrders;
use crate::document::{self, OrdersDocument};
use crate::ending::Ending;
use crate::findings::Findings;

/// The order plan of a project.
pub(crate) struct Planned<'a> {
    /// What the project is called.
    pub(crate) project: &'a str,
    /// The lasting names of the offers, in their order.
    pub(crate) offers: Vec<Id>,
    /// What was planned.
    pub(crate) job: OrderJob,
    /// What was found, or that the plan did not stand its recount.
    pub(crate) answer: Result<OrderAnswer, OrderPlanFault>,
    /// The file of the purchase list that was asked for, and why it could not be written.
    pub(crate) list: Option<(PathBuf, Option<io::Error>)>,
}

/// Plans the order book, and writes the purchase list where one is asked for.
///
/// # Errors
/// Everything that stands in the way.
pub(crate) fn plan<'a>(opened: &'a Opened, with: &AskedOrders) -> Result<Planned<'a>, Findings> {
    let draft = &opened.draft;
    let job = (draft.check_order_plan()).map_err(|problems| Findings::with(opened, problems))?;
    let answer = job.answer(&with.limits(), &mut |_| true);
    let reckoning = (answer.as_ref().ok()).and_then(|answer| answer.reckoning.as_ref());
    let list = with.csv.as_ref().zip(reckoning).map(|(file, reckoning)| {
        let written = fs::write(file, reckoning.purchase_csv());
        (file.clone(), written.err())
    });
    Ok(Planned {
        project: &draft.name,
        offers: draft.supply.offers.iter().map(|entry| entry.id).collect(),
        job,
        answer,
        list,
    })
}

impl Answer for Planned<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        text::write(self, unit)
    }

    fn json(&self) -> String {
        document::write(&OrdersDocument::from(self))
    }

    fn ending(&self) -> Ending {
        if let Some((_, Some(_))) = self.list {
            return Ending::Unread;
        }
        match &self.answer {
            Ok(answer) => match answer.end {
                OrderEnd::Proved | OrderEnd::WithinGap => Ending::Fine,
                OrderEnd::NoPlan | OrderEnd::NoneFound => Ending::NothingFits,
            },
            Err(_) => Ending::Problems,
        }
    }
}
