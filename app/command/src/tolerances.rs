//! How many pencils of the layout come out good: the answer of `tolerances`.

mod text;

use app::project_file::Opened;
use solver::tolerance::{
    Choices, Estimate, Prospect, Shares, Tally, Trial, Varied, choices, gross_price, worth_of_more,
};
use solver::{
    Accuracy, Field, Layout, LayoutParts, Length, LengthUnit, Place, Problem, ProjectDraft, Worth,
    lay_out,
};

use crate::answer::Answer;
use crate::dice::Dice;
use crate::document::{self, TolerancesDocument};
use crate::ending::Ending;
use crate::findings::Findings;

/// A layout made with the errors of a line, with the project it was made of.
pub(crate) struct Thrown<'a> {
    /// The project.
    pub(crate) draft: &'a ProjectDraft,
    /// The place of the barrel in the project.
    pub(crate) barrel: usize,
    /// The place of the stock above the glue plane.
    pub(crate) top: usize,
    /// The place of the stock below the glue plane.
    pub(crate) bottom: usize,
    /// The place of the line of machines.
    pub(crate) line: usize,
    /// The layout.
    pub(crate) layout: Layout,
    /// The dice.
    pub(crate) dice: Dice,
    /// What came of it; none where a check of the layout fails.
    pub(crate) made: Option<Made>,
}

/// What came of the dice.
pub(crate) struct Made {
    /// Sandwiches counted.
    pub(crate) tally: Tally,
    /// Price of the slats of a gross of good pencils, in hundredths of the currency.
    pub(crate) gross_price: Option<f64>,
    /// What integrals tell.
    pub(crate) prospect: Prospect,
    /// Each error.
    pub(crate) errors: Vec<ErrorMade>,
    /// Sandwiches that each error was halved in, and that were made in each choice.
    pub(crate) compared: u64,
    /// With fewer and more pencils side by side.
    pub(crate) by_count: Choices,
    /// Closer and wider.
    pub(crate) by_pitch: Choices,
}

/// What one error does.
pub(crate) struct ErrorMade {
    /// Its standard deviation.
    pub(crate) deviation: Length,
    /// Its shares in what varies.
    pub(crate) shares: Shares,
    /// Good pencils of a sandwich that halving it gains.
    pub(crate) gain: Estimate,
    /// What that saves in slats.
    pub(crate) worth: Option<Worth>,
}

/// Makes the layout of a project with the errors of its line, over and over.
///
/// # Errors
/// Everything that stands in the way of the layout, what is wrong with the accuracy of its line
/// and with the gross of a year.
pub(crate) fn throw(opened: &Opened, dice: Dice) -> Result<Thrown<'_>, Findings> {
    let draft = &opened.draft;
    let (parts, accuracy) = (draft.check_layout(), draft.check_accuracy());
    let year_gross = draft.search.year_gross.read(Field::YearGross);
    let year_gross = year_gross.map_err(|problem| {
        let place = Place::Search;
        vec![Problem { place, problem }]
    });
    let barrel = draft.barrel_place(draft.layout.barrel);
    let [top, bottom] = [draft.layout.top, draft.layout.bottom].map(|id| draft.slat_place(id));
    let line = draft.accuracy_place(draft.layout.accuracy);
    match (parts, accuracy, year_gross, (barrel, top, bottom, line)) {
        (
            Ok(parts),
            Ok(accuracy),
            Ok(year_gross),
            (Some(barrel), Some(top), Some(bottom), Some(line)),
        ) => {
            let layout = lay_out(&parts.setup());
            Ok(Thrown {
                draft,
                barrel,
                top,
                bottom,
                line,
                dice,
                made: (layout.fits())
                    .then(|| Made::new(&parts, &layout, &accuracy, year_gross, dice)),
                layout,
            })
        }
        (parts, accuracy, year_gross, _) => {
            let mut problems = parts.err().unwrap_or_default();
            problems.extend(accuracy.err().unwrap_or_default());
            problems.extend(year_gross.err().unwrap_or_default());
            Err(Findings::with(opened, problems))
        }
    }
}

impl Made {
    fn new(
        parts: &LayoutParts,
        layout: &Layout,
        accuracy: &Accuracy,
        year_gross: f64,
        dice: Dice,
    ) -> Self {
        let setup = parts.setup();
        let trial = Trial::new(&setup, layout, accuracy);
        let tally = dice.throw(&trial);
        let good = tally.good().mean;
        let blocks = || 0..Dice::compared(tally.sandwiches());
        let mut compared = 0;
        let halvings = trial.halvings(dice.seed, blocks(), &mut |made| {
            compared = made;
            true
        });
        let choices =
            |varied| choices(&setup, accuracy, varied, dice.seed, blocks(), &mut |_| true);
        let error = |(shares, (term, gain)): (Shares, (_, Estimate))| ErrorMade {
            deviation: accuracy.deviation(term),
            shares,
            gain,
            worth: worth_of_more(&setup, layout, good, gain.mean, year_gross),
        };
        Self {
            gross_price: gross_price(&setup, layout, good),
            prospect: trial.prospect(),
            errors: trial
                .shares()
                .into_iter()
                .zip(halvings)
                .map(error)
                .collect(),
            compared,
            by_count: choices(Varied::Count),
            by_pitch: choices(Varied::Pitch),
            tally,
        }
    }
}

impl Answer for Thrown<'_> {
    fn text(&self, unit: LengthUnit) -> String {
        text::of(self, unit)
    }

    fn json(&self) -> String {
        document::write(&TolerancesDocument::from(self))
    }

    fn ending(&self) -> Ending {
        match self.made {
            Some(_) => Ending::Fine,
            None => Ending::NothingFits,
        }
    }
}
