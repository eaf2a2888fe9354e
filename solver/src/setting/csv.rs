//! What machines are set to, and the edges of knives, as CSV text.

use super::Setting;
use crate::csv::{Table, length, number};
use crate::quantity::Length;
use crate::tooling::HeadKind;
use crate::unit::LengthUnit;

impl Setting {
    /// What machines are set to: a row for each number, with what it is of and its unit. Lengths are
    /// written to 0.0001 of the unit.
    ///
    /// ```
    /// use solver::{BarrelDraft, Conditions, CutDraft, HeadDraft, LengthUnit, RulesDraft, Seam, Setup, Shape, SlatDraft, lay_out, set_up};
    /// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
    /// let slat = SlatDraft::new("74 × 5").check().unwrap();
    /// let rules = RulesDraft::new().check().unwrap();
    /// let setup = Setup { barrel: &barrel, turn: barrel.turn(Seam::ThroughCorners), top: &slat, bottom: &slat, rules: &rules };
    /// let heads = [HeadDraft::new().check().unwrap(); 3];
    /// let cut = CutDraft::new().check().unwrap();
    /// let setting = set_up(&setup, &lay_out(&setup), &heads, &cut, Conditions { moisture: 8.0 }).unwrap();
    /// let list = setting.csv(LengthUnit::Millimetre);
    /// assert!(list.starts_with("Setting,Of,Value,Unit\r\n"));
    /// assert!(list.contains("Thickness,Planed sandwich,6.84,mm\r\n"));
    /// assert!(list.contains("Feed,Groove head,18,m/min\r\n"));
    /// ```
    #[must_use]
    pub fn csv(&self, unit: LengthUnit) -> String {
        let header = ["Setting", "Of", "Value", "Unit"].map(str::to_owned);
        let mut list = List {
            table: Table::headed(&header),
            unit,
        };
        list.length("Pitch", "Grooves", self.pitch);
        list.length("Radius", "Grooves", self.groove_radius);
        for groove in &self.grooves {
            let of = format!("Groove {}", groove.number);
            list.length("Centre from the datum edge", &of, groove.centre);
        }
        for (of, slat) in [("Top slat", &self.top), ("Bottom slat", &self.bottom)] {
            list.length("Groove depth", of, slat.groove_depth);
            list.length("Floor", of, slat.floor);
            list.length("Width", of, slat.width);
            list.length("Least width", of, slat.least_width);
            list.length("Thickness", of, slat.thickness);
            list.length("Least thickness", of, slat.least_thickness);
            list.number("Moisture content", of, self.moisture, "%");
        }
        list.length("Thickness", "Glued sandwich", self.glued);
        list.length("Thickness", "Planed sandwich", self.planed);
        for height in &self.heights {
            let of = height.blade.label();
            list.length("Tip above the table", of, height.tip);
            list.length("Surface above the table", of, height.surface);
            list.length("Axis above the table", of, height.axis);
        }
        for (head, marks) in HeadKind::ALL.into_iter().zip(&self.marks) {
            if let Ok(marks) = marks {
                let of = head.label();
                list.number("Feed", of, marks.feed, "m/min");
                list.length("Mark pitch", of, marks.pitch);
                list.length("Wave height", of, marks.wave);
            }
        }
        list.table.done()
    }

    /// The joints of every knife: across from the datum edge, height square to the table and on the
    /// face, and the radius to the next joint, which is empty where a straight line leads there.
    #[must_use]
    pub fn knives_csv(&self, unit: LengthUnit) -> String {
        let names = [
            "Across",
            "Height",
            "Height on the face",
            "Radius on the face",
        ];
        let names = names.map(|name| format!("{name} ({})", unit.label()));
        let header = [
            ["Knife", "Joint"].map(str::to_owned).to_vec(),
            names.to_vec(),
        ];
        let mut table = Table::headed(&header.concat());
        for knife in &self.knives {
            for (place, point) in knife.points().into_iter().enumerate() {
                let radius = point.radius.map(|radius| length(radius, unit));
                table.row(&[
                    knife.blade().label().to_owned(),
                    (place + 1).to_string(),
                    length(point.across, unit),
                    length(point.height, unit),
                    length(point.on_face, unit),
                    radius.unwrap_or_default(),
                ]);
            }
        }
        table.done()
    }
}

/// The list in the making.
struct List {
    table: Table,
    unit: LengthUnit,
}

impl List {
    fn length(&mut self, what: &str, of: &str, value: Length) {
        let value = length(value, self.unit);
        self.row(what, of, value, self.unit.label());
    }

    fn number(&mut self, what: &str, of: &str, value: f64, unit: &str) {
        self.row(what, of, number(value), unit);
    }

    fn row(&mut self, what: &str, of: &str, value: String, unit: &str) {
        let [what, of, unit] = [what, of, unit].map(str::to_owned);
        self.table.row(&[what, of, value, unit]);
    }
}
