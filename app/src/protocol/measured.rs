//! Slats of a delivery as they were measured, and what they say of the lot.

use serde::{Deserialize, Serialize};
use solver::measured::MeasuredSize;
use solver::{HistogramChart, Label, Sheet};

/// The sheet that a chart is drawn for, px.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct SheetSizes {
    /// Its width.
    pub width: f64,
    /// The height of a row of dimensions.
    pub row: f64,
    /// Room for the text of one dimension.
    pub text: f64,
}

impl From<Sheet> for SheetSizes {
    fn from(sheet: Sheet) -> Self {
        let Sheet {
            width, row, text, ..
        } = sheet;
        Self { width, row, text }
    }
}

/// What a list of measurements says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeasuredList {
    /// Why nothing was read, or each cell that was left out and what is wrong with it.
    pub problems: Vec<String>,
    /// Each size that was measured.
    pub lots: Vec<MeasuredLot>,
}

/// What the measurements of one size say of the lot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct MeasuredLot {
    /// What was measured.
    pub size: SizeWord,
    /// The mean.
    pub mean_mm: f64,
    /// The standard deviation; none where the measurements do not tell it.
    pub deviation_mm: Option<f64>,
    /// What is told of them, a line each.
    pub facts: Vec<Fact>,
    /// The measurements in classes.
    pub chart: LotChart,
}

/// A size of a slat.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum SizeWord {
    /// The width.
    Width,
    /// The thickness.
    Thickness,
}

/// A line of what is told.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Fact {
    /// What it is.
    pub name: String,
    /// What it comes to.
    pub value: String,
}

/// A histogram that is ready to be shown: its sizes in px, SVG path data, and its words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct LotChart {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// Level lines.
    pub grid: String,
    /// Bars.
    pub bars: String,
    /// What a normal lot would give.
    pub curve: String,
    /// The axes.
    pub axes: String,
    /// The nominal size and the limits.
    pub poles: Vec<String>,
    /// Short texts.
    pub labels: Vec<ChartLabel>,
    /// The chart in words.
    pub description: String,
}

/// A short text, centred on its place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ChartLabel {
    /// Centre, px.
    pub x: f64,
    /// Middle of the line, px.
    pub y: f64,
    /// The text.
    pub text: String,
}

impl From<MeasuredSize> for SizeWord {
    fn from(size: MeasuredSize) -> Self {
        match size {
            MeasuredSize::Width => Self::Width,
            MeasuredSize::Thickness => Self::Thickness,
        }
    }
}

impl From<SizeWord> for MeasuredSize {
    fn from(word: SizeWord) -> Self {
        match word {
            SizeWord::Width => Self::Width,
            SizeWord::Thickness => Self::Thickness,
        }
    }
}

impl From<HistogramChart> for LotChart {
    fn from(chart: HistogramChart) -> Self {
        let mut labels = chart.labels;
        let mut poles = Vec::new();
        for limit in chart.limits {
            poles.push(limit.line);
            labels.extend(limit.label);
        }
        Self {
            width: chart.width,
            height: chart.height,
            grid: chart.grid,
            bars: chart.bars,
            curve: chart.curve,
            axes: chart.axes,
            poles,
            labels: labels.into_iter().map(ChartLabel::from).collect(),
            description: chart.description,
        }
    }
}

impl From<Label> for ChartLabel {
    fn from(Label { x, y, text }: Label) -> Self {
        Self { x, y, text }
    }
}

impl From<ChartLabel> for Label {
    fn from(ChartLabel { x, y, text }: ChartLabel) -> Self {
        Self { x, y, text }
    }
}
