//! What `barrels` prints.

use schemars::JsonSchema;
use serde::Serialize;
use solver::{BarrelLine, LengthUnit, Verdict};

use super::{Named, VERSION};
use crate::barrels::Compared;

/// What `slatwright barrels` prints.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct BarrelsDocument {
    /// Tells this document from others.
    #[schemars(extend("const" = "slatwright-barrels"))]
    format: &'static str,
    /// The version of this document.
    #[schemars(extend("const" = VERSION))]
    version: u32,
    /// What the project is called.
    project: String,
    /// The barrels that are compared; the others are held against the first.
    barrels: Vec<Named>,
    /// What is compared, in millimetres, as it is shown.
    lines: Vec<LineOfBarrels>,
    /// Every barrel as the end of an address.
    addresses: Vec<Addressed>,
}

/// One line of the comparison.
#[derive(Debug, Serialize, JsonSchema)]
struct LineOfBarrels {
    /// What is compared.
    label: String,
    /// One cell for each barrel.
    cells: Vec<Cell>,
}

/// What a barrel has there.
#[derive(Debug, Serialize, JsonSchema)]
struct Cell {
    /// The value with its unit; a dash where it has no such thing.
    value: String,
    /// How much more or less it has than the first; `null` where no change is shown.
    change: Option<String>,
    /// Whether that is better; `null` where it cannot be said.
    better: Option<bool>,
}

/// A barrel as the end of an address.
#[derive(Debug, Serialize, JsonSchema)]
struct Addressed {
    /// The barrel.
    barrel: Named,
    /// What stands behind the address of the page, from the `#` on.
    fragment: String,
}

impl From<&Compared<'_>> for BarrelsDocument {
    fn from(compared: &Compared<'_>) -> Self {
        let (draft, table) = (compared.draft, &compared.table);
        let named = |at: usize| Named::of(&draft.barrels[at], |barrel| &barrel.name);
        let barrels = table.barrels.iter();
        let places = barrels.filter_map(|(id, _)| draft.barrel_place(*id));
        let addressed = compared.fragments.iter().map(|(at, fragment)| Addressed {
            barrel: named(*at),
            fragment: fragment.clone(),
        });
        Self {
            format: "slatwright-barrels",
            version: VERSION,
            project: draft.name.clone(),
            barrels: places.map(named).collect(),
            lines: table.lines.iter().map(LineOfBarrels::from).collect(),
            addresses: addressed.collect(),
        }
    }
}

impl From<&BarrelLine> for LineOfBarrels {
    fn from(line: &BarrelLine) -> Self {
        let unit = LengthUnit::Millimetre;
        let cells = (0..line.values.len()).map(|at| Cell {
            value: line.text(at, unit),
            change: line.change(at, unit),
            better: line
                .verdict(at, unit)
                .map(|verdict| verdict == Verdict::Better),
        });
        Self {
            label: line.title(),
            cells: cells.collect(),
        }
    }
}
