//! Heads over the table: heights and circles lie where the scales say.

use crate::drawing::{Drawing, PIXELS_PER_MILLIMETRE, Size, Style, draw_head};
use crate::{
    BarrelDraft, Blade, Conditions, CutDraft, HeadDraft, HeadKind, Length, LengthUnit, RulesDraft,
    Seam, Setting, Setup, Shape, SlatDraft, Typed, lay_out, set_up,
};

fn setting(diameter: f64, thickness: f64) -> Setting {
    let barrel = BarrelDraft::new("", Shape::Hexagonal).check().unwrap();
    let mut slat = SlatDraft::new("");
    slat.thickness = Typed::Number(thickness);
    let slat = slat.check().unwrap();
    let rules = RulesDraft::new().check().unwrap();
    let setup = Setup {
        barrel: &barrel,
        turn: barrel.turn(Seam::ThroughCorners),
        top: &slat,
        bottom: &slat,
        rules: &rules,
    };
    let mut head = HeadDraft::new();
    head.diameter = Typed::Number(diameter);
    let heads = [head.check().unwrap(); 3];
    let cut = CutDraft::new().check().unwrap();
    let conditions = Conditions { moisture: 8.0 };
    set_up(&setup, &lay_out(&setup), &heads, &cut, conditions).unwrap()
}

/// The numbers of a path, in its order.
fn numbers(path: &str) -> Vec<f64> {
    let parts = path.split(|letter: char| letter.is_ascii_alphabetic() || letter == ' ');
    parts.filter_map(|part| part.parse().ok()).collect()
}

fn paths(drawing: &Drawing, style: Style) -> Vec<Vec<f64>> {
    let shapes = drawing.shapes.iter().filter(|shape| shape.style == style);
    shapes.map(|shape| numbers(&shape.path)).collect()
}

/// Pixels of a millimetre in a view, by the end of its label: 1:5, 5:1.
fn scale(drawing: &Drawing, label: usize) -> f64 {
    let text = &drawing.labels[label].text;
    let scale = text.rsplit(' ').next().unwrap();
    let (paper, real) = scale.split_once(':').unwrap();
    paper.parse::<f64>().unwrap() / real.parse::<f64>().unwrap() * PIXELS_PER_MILLIMETRE
}

#[test]
fn circle_table_and_wood_lie_as_far_apart_as_the_heights_say() {
    let setting = setting(125.0, 5.0);
    for height in &setting.heights {
        let drawing = draw_head(&setting, height.blade, LengthUnit::Millimetre).unwrap();
        let whole = scale(&drawing, 1);
        // A circle begins at its right end, level with its axis: M x y A r r …
        let circle = &paths(&drawing, Style::CuttingCircle)[0];
        let (axis, radius) = (circle[1], circle[2]);
        // The wood begins at its lower left corner, on the table.
        let table = paths(&drawing, Style::Slat)[0][1];
        let near = |found: f64, millimetres: f64| (found - millimetres * whole).abs() < 0.02;
        assert!(near(radius, 62.5), "{radius}");
        assert!(near(table - axis, height.axis.in_millimetres()), "{axis}");
        let tip = if height.axis >= height.tip {
            axis + radius
        } else {
            axis - radius
        };
        assert!(near(table - tip, height.tip.in_millimetres()), "{tip}");
        // In the enlarged view the wood is as thick as its scale says.
        let wood = &paths(&drawing, Style::Slat)[1];
        let enlarged = scale(&drawing, 2);
        let thickness = match height.blade {
            Blade::TopGrooves | Blade::BottomGrooves => 5.0,
            Blade::Top | Blade::Bottom => 10.0,
        };
        assert!((wood[1] - wood[5] - thickness * enlarged).abs() < 0.02);
    }
}

#[test]
fn a_usual_head_tells_axis_tip_and_depth_and_the_groove_head_its_slat() {
    let setting = setting(125.0, 5.0);
    for unit in [LengthUnit::Millimetre, LengthUnit::Inch] {
        for blade in Blade::ALL {
            let drawing = draw_head(&setting, blade, unit).unwrap();
            let told: Vec<Size> = drawing.dimensions.iter().map(|told| told.size).collect();
            for size in [Size::HeadAxis, Size::KnifeTip, Size::CutDepth] {
                assert!(told.contains(&size), "{blade:?}: {told:?}");
            }
            if blade.head() == HeadKind::Groove {
                assert!(told.contains(&Size::WoodOnTable), "{blade:?}: {told:?}");
            }
            for (at, one) in drawing.dimensions.iter().enumerate() {
                let area = one.area;
                assert!(
                    area.x >= 0.0 && area.x + area.width <= drawing.width,
                    "{area:?}"
                );
                assert!(
                    area.y >= 0.0 && area.y + area.height <= drawing.height,
                    "{area:?}"
                );
                for other in &drawing.dimensions[at + 1..] {
                    assert!(!area.overlaps(&other.area), "{blade:?}");
                }
            }
            assert!(drawing.paper_width() <= Length::millimetres(95.0 + 1e-9));
        }
    }
}

#[test]
fn heads_of_every_size_are_drawn_within_their_sheet() {
    for diameter in [20.0, 40.0, 90.0, 250.0, 500.0] {
        for thickness in [4.0, 6.8, 9.2] {
            let setting = setting(diameter, thickness);
            for blade in Blade::ALL {
                let drawing = draw_head(&setting, blade, LengthUnit::Inch).unwrap();
                assert!(drawing.paper_height() < Length::millimetres(75.0));
                assert!(!format!("{drawing:?}").contains("NaN"));
                assert!(drawing.description.starts_with(blade.label()));
            }
        }
    }
}
