//! Drawings at true size, measured in their paths.

use super::Office;
use solver::{
    Drawing, Length, LengthUnit, PIXELS_PER_MILLIMETRE, Paper, PaperProblem, PaperSize, Style,
    draw_gauge, draw_knife, draw_to_scale,
};
use svgtypes::{PathParser, PathSegment};

const SHEETS: [Paper; 4] = [
    Paper {
        size: PaperSize::A4,
        landscape: false,
    },
    Paper {
        size: PaperSize::A4,
        landscape: true,
    },
    Paper {
        size: PaperSize::Letter,
        landscape: false,
    },
    Paper {
        size: PaperSize::Letter,
        landscape: true,
    },
];

/// Where the strokes of a style begin, mm of paper across.
fn starts(drawing: &Drawing, style: Style) -> Vec<f64> {
    let shapes = drawing.shapes.iter().filter(|shape| shape.style == style);
    let moves = shapes.flat_map(|shape| {
        let segments = PathParser::from(shape.path.as_str());
        segments.filter_map(|segment| match segment.expect("it can be read") {
            PathSegment::MoveTo { x, .. } => Some(x / PIXELS_PER_MILLIMETRE),
            _ => None,
        })
    });
    moves.collect()
}

/// Hundredths of a pixel are written: 0.0026 mm.
const WRITTEN: f64 = 0.005;

#[test]
fn centres_and_control_bar_of_a_gauge_lie_at_true_size() {
    let office = Office::new();
    let layout = office.layout();
    for (unit, length) in [(LengthUnit::Millimetre, 100.0), (LengthUnit::Inch, 101.6)] {
        let gauge = draw_gauge(&office.setup(), &layout, SHEETS[0], unit).expect("it fits");
        let datum = starts(&gauge, Style::Slat)[0];
        let centres = starts(&gauge, Style::Centre);
        assert_eq!(centres.len(), layout.grooves().len());
        for (x, groove) in centres.iter().zip(layout.grooves()) {
            assert!((x - datum - groove.centre.in_millimetres()).abs() < WRITTEN);
        }
        let bar = starts(&gauge, Style::ScaleBar);
        let ends = bar.iter().fold((f64::MAX, f64::MIN), |(least, most), x| {
            (least.min(*x), most.max(*x))
        });
        assert!((ends.1 - ends.0 - length).abs() < WRITTEN, "{ends:?}");
    }
}

#[test]
fn the_section_is_as_large_as_its_scale_says() {
    let office = Office::new();
    let layout = office.layout();
    for paper in SHEETS {
        let drawn = draw_to_scale(&office.setup(), &layout, paper, LengthUnit::Millimetre)
            .expect("it fits");
        // ISO 5455 has 1:1, 2:1, 5:1; five times 74 mm is more than any of these sheets.
        assert_eq!(drawn.scale.label(), "2:1");
        assert!(drawn.drawing.paper_width() <= paper.printable_width());
        let centres = starts(&drawn.drawing, Style::Centre);
        let pitch = (centres[1] - centres[0]) / drawn.scale.factor();
        assert!((pitch - layout.pitch().in_millimetres()).abs() < WRITTEN);
        assert!(
            drawn
                .drawing
                .labels
                .iter()
                .any(|label| label.text == "Scale 2:1")
        );
    }
}

#[test]
fn a_gauge_longer_than_the_paper_is_told() {
    let mut office = Office::new();
    office.slat = tests::shop::slat(195.0, 5.0);
    let layout = office.layout();
    let on = |paper| draw_gauge(&office.setup(), &layout, paper, LengthUnit::Millimetre);
    let Err(PaperProblem::TooWide { needed, printable }) = on(SHEETS[0]) else {
        panic!("199 mm do not fit 190")
    };
    assert_eq!(
        (needed, printable),
        (Length::millimetres(199.0), Length::millimetres(190.0))
    );
    assert!(on(SHEETS[1]).is_ok());
}

#[test]
fn a_knife_is_as_wide_on_paper_as_its_scale_says() {
    let office = Office::new();
    for knife in office.setting().knives {
        let drawn = draw_knife(&knife, SHEETS[0], LengthUnit::Inch).expect("it fits");
        let margins = 6.0;
        let width = drawn.drawing.paper_width().in_millimetres() - margins;
        assert!(
            (width - 74.0 * drawn.scale.factor()).abs() < WRITTEN,
            "{width}"
        );
        assert_eq!(drawn.drawing.labels.len(), 2);
    }
}
