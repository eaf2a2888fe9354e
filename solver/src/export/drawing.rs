//! A drawing as a standalone SVG, as large on paper as it says.

use super::number;
use super::xml::escaped;
use crate::drawing::{Dimension, Drawing, Edge, Grade, Style};
use crate::sawing::SawnClass;

/// Line widths 2 : 1 (ISO 128-2): 0.5 and 0.25 mm on paper, in pixels.
const LOOKS: &str = "path{fill:none;stroke:#000;stroke-width:.945}\
.thick{stroke-width:1.89}\
.wood{fill:#000;fill-opacity:.06;stroke:none}\
.solid{fill:#000;stroke:none}\
.wide{fill:#000;fill-opacity:.3;stroke:none}\
.dashed{stroke-dasharray:6 3}\
.dotted{stroke-dasharray:2 3}\
.centre{stroke-dasharray:12 3 3 3}\
text{font:13px sans-serif;fill:#000;text-anchor:middle;dominant-baseline:central}\
.start{text-anchor:start}.end{text-anchor:end}";

/// Hatching at 45°, narrow lines, both ways (ISO 128-3: parts that adjoin differ in direction).
const HATCHING: [(&str, &str); 3] = [
    ("rising", "rotate(45)"),
    ("falling", "rotate(-45)"),
    ("narrow", "rotate(45) scale(.6)"),
];

impl Drawing {
    /// The drawing as a standalone SVG under a title. Its size is given in millimetres of paper, of
    /// which one has [`PIXELS_PER_MILLIMETRE`](crate::PIXELS_PER_MILLIMETRE); the description of the
    /// drawing goes with it. Any text may stand in title and labels: it is escaped.
    ///
    /// ```
    /// use solver::{BarrelDraft, LengthUnit, Shape, Sheet, draw_barrel, Angle};
    /// let barrel = BarrelDraft::new("Office", Shape::Hexagonal).check().unwrap();
    /// let sheet = Sheet { width: 600.0, row: 28.0, text: 64.0, unit: LengthUnit::Millimetre };
    /// let svg = draw_barrel(&barrel, &sheet).to_svg("Office & school");
    /// assert!(svg.contains("width=\"158.750000mm\""));
    /// assert!(svg.contains("<title>Office &amp; school</title>"));
    /// ```
    #[must_use]
    pub fn to_svg(&self, title: &str) -> String {
        let mut svg = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{}mm\" height=\"{}mm\" viewBox=\"0 0 {} {}\">\n",
            number(self.paper_width().in_millimetres()),
            number(self.paper_height().in_millimetres()),
            number(self.width),
            number(self.height),
        );
        svg += &format!("<title>{}</title>\n", escaped(title));
        svg += &format!("<desc>{}</desc>\n", escaped(&self.description));
        svg += &format!("<style>{LOOKS}</style>\n<defs>");
        for (name, turn) in HATCHING {
            svg += &format!(
                "<pattern id=\"{name}\" width=\"5\" height=\"5\" patternUnits=\"userSpaceOnUse\" patternTransform=\"{turn}\"><path d=\"M0 0V5\"/></pattern>"
            );
        }
        svg += "</defs>\n";
        for shape in &self.shapes {
            svg += &match shape.style {
                Style::Filled(colour) => format!(
                    "<path style=\"fill:{};stroke:none\" d=\"{}\"/>\n",
                    colour.text(),
                    shape.path
                ),
                style => format!("<path {} d=\"{}\"/>\n", look(style), shape.path),
            };
        }
        for dimension in &self.dimensions {
            svg += &dimension_of(dimension);
        }
        for label in &self.labels {
            let text = escaped(&label.text);
            let (x, y) = (number(label.x), number(label.y));
            svg += &format!("<text x=\"{x}\" y=\"{y}\">{text}</text>\n");
        }
        svg + "</svg>\n"
    }
}

/// Lines, arrows and number of a dimension; the number stands near its line.
fn dimension_of(dimension: &Dimension) -> String {
    /// Half the height of a line of text, and the space beside a number, px.
    const HALF_LINE: f64 = 11.0;
    const BESIDE: f64 = 5.0;
    let area = dimension.area;
    let (middle, level) = (area.x + area.width / 2.0, area.y + area.height / 2.0);
    let (x, y, class) = match dimension.near {
        Edge::Top => (middle, area.y + HALF_LINE, ""),
        Edge::Bottom => (middle, area.y + area.height - HALF_LINE, ""),
        Edge::Left => (area.x + BESIDE, level, " class=\"start\""),
        Edge::Right => (area.x + area.width - BESIDE, level, " class=\"end\""),
    };
    format!(
        "<path d=\"{}\"/>\n<path class=\"solid\" d=\"{}\"/>\n<text x=\"{}\" y=\"{}\"{class}>{}{}</text>\n",
        dimension.lines,
        dimension.arrows,
        number(x),
        number(y),
        escaped(dimension.sign),
        escaped(&dimension.text)
    )
}

/// The look of a path, as attributes.
const fn look(style: Style) -> &'static str {
    match style {
        Style::Slat | Style::Plank | Style::Blank | Style::Groove | Style::ScaleBar => "",
        Style::Wood(_) => "class=\"wood\"",
        Style::TopHalf => "style=\"fill:url(#rising);stroke:none\"",
        Style::BottomHalf => "style=\"fill:url(#falling);stroke:none\"",
        Style::Pencil | Style::Graded(Grade::Sound) | Style::CuttingCircle | Style::Table => {
            "class=\"thick\""
        }
        Style::Compared(0) => "class=\"thick\"",
        Style::Compared(1) => "class=\"thick dashed\"",
        Style::Compared(2) => "class=\"thick dotted\"",
        Style::Compared(_) => "class=\"thick centre\"",
        Style::Clash | Style::Graded(_) | Style::OutOfReach => "class=\"thick dashed\"",
        Style::Coat | Style::Seam | Style::Detail | Style::Break => "",
        Style::Lead | Style::CentredLead => "class=\"solid\"",
        Style::StrayLead => "class=\"wide\"",
        Style::Centre => "class=\"centre\"",
        Style::Limit => "class=\"dashed\"",
        Style::SawnOff(SawnClass::RipKerfs | SawnClass::CrosscutKerfs) => "class=\"solid\"",
        Style::SawnOff(SawnClass::KeptOffcuts) => "",
        Style::BareWood => "style=\"fill:#e3c39b;stroke:none\"",
        Style::Imprint => "style=\"fill:#fff;stroke-dasharray:6 3\"",
        // Its colour is written with it.
        Style::Filled(_) => "class=\"solid\"",
        Style::SawnOff(_) => "style=\"fill:url(#narrow)\"",
    }
}
