//! The list of a cutting plan as CSV text.

use super::list::SawingList;
use super::names::SawingNames;
use crate::csv::{Table, decimal, money, text};
use crate::unit::LengthUnit;

impl SawingList {
    /// What to saw: a row for each kind of blank in each section of each pattern, in order of sawing.
    ///
    /// Lengths are those of one section and of the offcut at the end of one plank, to 0.001 mm or
    /// 0.0001 in. The last three numbers of blanks are for all planks of the pattern, for these
    /// planks and all before them, and for what is still wanted then.
    ///
    /// ```
    /// use solver::LengthUnit;
    /// use solver::sawing::{CutPattern, SawingDraft, SawingList, SawingNames, SawingPlan, Section};
    /// let data = SawingDraft::along(1_000_000, 3_500, &[(450_000, 90)]).check().unwrap();
    /// let sections = vec![(Section { blanks: vec![(0, 1)] }, 2)];
    /// let plan = SawingPlan { cuts: vec![(CutPattern { plank: 0, sections }, 40)], cost: 40 };
    /// let list = SawingList::of(&data, &plan).unwrap();
    /// let blanks = ["=office, long".to_owned()];
    /// let names = SawingNames { planks: &[], blanks: &blanks };
    /// let text = list.cuts_csv(&names, LengthUnit::Millimetre);
    /// let row = text.split("\r\n").nth(1).unwrap();
    /// assert_eq!(row, "1,Plank 1,40,40,450,2,\"'=office, long\",1,80,80,10,93");
    /// ```
    #[must_use]
    pub fn cuts_csv(&self, names: &SawingNames<'_>, unit: LengthUnit) -> String {
        let mut table = Table::headed(&[
            "Pattern".to_owned(),
            "Plank".to_owned(),
            "Planks".to_owned(),
            "Planks so far".to_owned(),
            format!("Section length ({})", unit.label()),
            "Sections in a plank".to_owned(),
            "Blank".to_owned(),
            "Blanks in a section".to_owned(),
            "Blanks by this pattern".to_owned(),
            "Blanks so far".to_owned(),
            "Blanks still to make".to_owned(),
            format!("Offcut of a plank ({})", unit.label()),
        ]);
        for (place, line) in self.cuts.iter().enumerate() {
            let start = [
                (place + 1).to_string(),
                text(&names.plank(line.laid.plank())),
                line.planks.to_string(),
                line.planks_so_far.to_string(),
            ];
            let offcut = length(line.laid.offcut(), unit);
            if line.laid.sections().is_empty() {
                let empty = vec![String::new(); 7];
                table.row(&[start.to_vec(), empty, vec![offcut.clone()]].concat());
            }
            for section in line.laid.sections() {
                for strip in section.strips() {
                    let blank = line.blanks.iter().find(|blank| blank.blank == strip.blank);
                    let counted =
                        blank.map_or([0; 3], |blank| [blank.made, blank.so_far, blank.to_make]);
                    let middle = vec![
                        length(section.length(), unit),
                        section.count().to_string(),
                        text(&names.blank(strip.blank)),
                        strip.pieces.to_string(),
                    ];
                    let end = counted.map(|count| count.to_string());
                    table.row(
                        &[start.to_vec(), middle, end.to_vec(), vec![offcut.clone()]].concat(),
                    );
                }
            }
        }
        table.done()
    }

    /// What the planks cost: a row for each kind, and one for the sum. Money is in the currency of
    /// the prices, to a hundredth.
    #[must_use]
    pub fn bill_csv(&self, names: &SawingNames<'_>) -> String {
        let mut table = Table::headed(
            &[
                "Plank",
                "Planks",
                "Price each (currency)",
                "Price (currency)",
            ]
            .map(str::to_owned),
        );
        for line in &self.bill {
            table.row(&[
                text(&names.plank(line.plank)),
                line.planks.to_string(),
                money(line.price),
                money(line.cost),
            ]);
        }
        let sum = "All planks".to_owned();
        table.row(&[
            sum,
            self.planks.to_string(),
            String::new(),
            money(self.cost),
        ]);
        table.done()
    }
}

/// Micrometres, 0 or more, in a unit, without zeros at the end.
fn length(micrometres: i64, unit: LengthUnit) -> String {
    let (number, decimals) = match unit {
        LengthUnit::Millimetre => (micrometres, 3),
        // A ten-thousandth of an inch is 2.54 µm; rounded to the nearest.
        LengthUnit::Inch => ((micrometres * 100 + 127) / 254, 4),
    };
    let text = decimal(number, decimals);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests;
