//! What leaves the office for the machine, against published values and independent readers.

mod drawn;
mod dxf_files;
mod knives;
mod marks;
mod materials;
mod svg_files;

use solver::{
    Barrel, Conditions, CutDraft, Head, HeadDraft, Knife, Layout, Rules, Seam, Setting, Setup,
    Shape, Slat, Typed, lay_out, set_up,
};
use tests::shop;

/// A head by its cutting diameter, mm, its hook angle, degrees, its knives and its speed, 1/min.
fn head(diameter: f64, hook: f64, knives: f64, speed: f64) -> Head {
    let mut draft = HeadDraft::new();
    draft.diameter = Typed::Number(diameter);
    draft.hook = Typed::Number(hook);
    draft.knives = Typed::Number(knives);
    draft.speed = Typed::Number(speed);
    draft.marked = Typed::Number(speed);
    draft.check().expect("the cases name heads that can turn")
}

/// A hexagonal pencil of 7 mm on slats of 74 × 5 mm, by the rules of a new draft.
struct Office {
    barrel: Barrel,
    slat: Slat,
    rules: Rules,
}

impl Office {
    fn new() -> Self {
        Self {
            barrel: shop::barrel(Shape::Hexagonal, 7.0, 0.5),
            slat: shop::slat(74.0, 5.0),
            rules: shop::rules(|_| ()),
        }
    }

    fn setup(&self) -> Setup<'_> {
        Setup {
            barrel: &self.barrel,
            turn: self.barrel.turn(Seam::ThroughCorners),
            top: &self.slat,
            bottom: &self.slat,
            rules: &self.rules,
        }
    }

    fn layout(&self) -> Layout {
        lay_out(&self.setup())
    }

    fn setting(&self) -> Setting {
        let heads = [head(125.0, 20.0, 2.0, 9_000.0); 3];
        let cut = CutDraft::new().check().expect("a new draft can be used");
        let conditions = Conditions { moisture: 8.0 };
        set_up(&self.setup(), &self.layout(), &heads, &cut, conditions)
            .expect("knives can be made for it")
    }

    fn top_knife(&self) -> Knife {
        self.setting().knives[2].clone()
    }
}

/// Names that a file could stumble over: markup, codes of the formats, other scripts, beyond the
/// basic plane, ends of lines, five hundred letters.
fn awkward_names() -> Vec<String> {
    let mut names: Vec<String> = [
        "Office",
        "A & B <script>alert('1')</script> \"C\" ]]>",
        "Büro № 2 – 鉛筆 ✏ قلم רצוע \u{1f58d}",
        "100 %% ^J \\U+0041 %%u \\P {x}",
        "one\ntwo\r\n  0\nLINE\n\u{0}\u{b}\u{85}\u{2028}",
    ]
    .map(str::to_owned)
    .to_vec();
    names.push("鉛筆\\%<&> ".chars().cycle().take(500).collect());
    names
}
