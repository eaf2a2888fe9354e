//! The drawings of a setting as files: section, gauge and heads on paper, outline and knives at true size.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use solver::{
    Blade, Layout, LengthUnit, Paper, PaperProblem, PaperSize, Setting, Setup, TrueSize,
    draw_gauge, draw_head, draw_to_scale,
};

use crate::layout::Laid;
use crate::names;

/// A file that was asked for, and what came of it.
pub(crate) struct Written {
    /// Where it lies.
    pub(crate) file: PathBuf,
    /// Whether it was written, or why not.
    pub(crate) outcome: Result<(), Unwritten>,
}

/// Why a file was not written.
pub(crate) enum Unwritten {
    /// The drawing does not go on the paper either way round.
    Paper(PaperProblem),
    /// The file, or the folder it goes into, cannot be written.
    Unwritable(io::Error),
}

impl Unwritten {
    /// What is wrong, with lengths in a unit.
    pub(crate) fn message(&self, unit: LengthUnit) -> String {
        match self {
            Self::Paper(problem) => problem.message(unit),
            Self::Unwritable(error) => format!("It cannot be written: {error}"),
        }
    }
}

/// What is drawn.
pub(super) struct Sheets<'a> {
    pub(super) setup: Setup<'a>,
    pub(super) layout: &'a Layout,
    /// The setting with its knives, where they can be made.
    pub(super) setting: Option<&'a Setting>,
    /// The paper that section and gauge go on, whichever way round they fit.
    pub(super) size: PaperSize,
    /// The unit of the lengths on them.
    pub(super) unit: LengthUnit,
    /// What the layout is called.
    pub(super) name: String,
}

/// The project and the barrel, as a title of drawings.
pub(super) fn title(laid: &Laid<'_>) -> String {
    let barrel = names::barrel(laid.draft, laid.barrel);
    match laid.draft.name.trim() {
        "" => barrel,
        project => format!("{project}: {barrel}"),
    }
}

impl Sheets<'_> {
    /// Writes the files into folders, which are made where they are not there yet: as SVG the section to
    /// scale, the gauge, the heads, the outline and the knives; as DXF the outline and the knives.
    pub(super) fn write(&self, svg: Option<&Path>, dxf: Option<&Path>) -> Vec<Written> {
        let mut files = Vec::new();
        let true_size = self.true_size();
        if let Some(folder) = svg {
            let section = self.on_paper(|paper| {
                let drawn = draw_to_scale(&self.setup, self.layout, paper, self.unit)?;
                Ok(drawn
                    .drawing
                    .to_svg(&format!("{}, {}", self.name, drawn.scale.label())))
            });
            let gauge = self.on_paper(|paper| {
                let drawn = draw_gauge(&self.setup, self.layout, paper, self.unit)?;
                Ok(drawn.to_svg(&self.name))
            });
            files.push(put(folder, "section.svg", section));
            files.push(put(folder, "gauge.svg", gauge));
            for blade in Blade::ALL {
                let head = (self.setting).and_then(|setting| draw_head(setting, blade, self.unit));
                if let Some(head) = head {
                    let file = format!("head-{}.svg", short_name(blade));
                    files.push(put(folder, &file, Ok(head.to_svg(&self.name))));
                }
            }
            for (name, curves) in &true_size {
                files.push(put(folder, &format!("{name}.svg"), Ok(curves.to_svg())));
            }
        }
        if let Some(folder) = dxf {
            for (name, curves) in &true_size {
                files.push(put(folder, &format!("{name}.dxf"), Ok(curves.to_dxf())));
            }
        }
        files
    }

    /// Outline and knives, each with the name of its file.
    fn true_size(&self) -> Vec<(String, TrueSize)> {
        let outline = TrueSize::of_outline(self.layout.bare(), &self.name);
        let knives = self.setting.map_or(&[][..], |setting| &setting.knives);
        let knives = knives.iter().map(|knife| {
            let name = format!("knife-{}", short_name(knife.blade()));
            (name, TrueSize::of_knife(knife, &self.name))
        });
        std::iter::once(("outline".to_owned(), outline))
            .chain(knives)
            .collect()
    }

    /// A drawing on upright paper, or on paper that lies where it is too wide for that.
    fn on_paper<T>(
        &self,
        draw: impl Fn(Paper) -> Result<T, PaperProblem>,
    ) -> Result<T, PaperProblem> {
        let paper = |landscape| Paper {
            size: self.size,
            landscape,
        };
        draw(paper(false)).or_else(|_| draw(paper(true)))
    }
}

const fn short_name(blade: Blade) -> &'static str {
    match blade {
        Blade::TopGrooves => "grooves-top",
        Blade::BottomGrooves => "grooves-bottom",
        Blade::Top => "top",
        Blade::Bottom => "bottom",
    }
}

/// Writes a text that could be drawn into a file of a folder.
pub(crate) fn put(folder: &Path, name: &str, drawn: Result<String, PaperProblem>) -> Written {
    let file = folder.join(name);
    let outcome = drawn.map_err(Unwritten::Paper).and_then(|text| {
        fs::create_dir_all(folder)
            .and_then(|()| fs::write(&file, text))
            .map_err(Unwritten::Unwritable)
    });
    Written { file, outcome }
}
