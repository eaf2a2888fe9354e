//! SVG files read by a reader of XML and a reader of path data.

use super::{Office, awkward_names};
use roxmltree::{Document, Node};
use solver::{LengthUnit, Segment, Sheet, TrueSize, draw_sandwich};
use svgtypes::{PathParser, PathSegment};

/// The only element of a name.
fn element<'a>(document: &'a Document<'a>, name: &str) -> Node<'a, 'a> {
    let mut found = document
        .descendants()
        .filter(|node| node.has_tag_name(name));
    let element = found.next().expect("it is there");
    assert!(found.next().is_none(), "there are several of {name}");
    element
}

/// What a name comes to in XML, which cannot hold every letter.
fn held(name: &str) -> String {
    let lost = |letter: char| letter < ' ' && !"\t\n\r".contains(letter);
    name.chars()
        .map(|letter| if lost(letter) { '\u{fffd}' } else { letter })
        .collect()
}

#[test]
fn any_name_comes_back_whole() {
    let office = Office::new();
    let sheet = Sheet {
        width: 800.0,
        row: 28.0,
        text: 64.0,
        unit: LengthUnit::Millimetre,
    };
    let drawing = draw_sandwich(&office.setup(), &office.layout(), &sheet);
    for name in awkward_names() {
        for svg in [
            TrueSize::of_outline(office.layout().bare(), &name).to_svg(),
            TrueSize::of_knife(&office.top_knife(), &name).to_svg(),
            drawing.to_svg(&name),
        ] {
            let document = Document::parse(&svg).expect("it is well formed");
            assert_eq!(element(&document, "title").text(), Some(&*held(&name)));
            let scripts = document
                .descendants()
                .filter(|node| node.has_tag_name("script"));
            assert_eq!(scripts.count(), 0);
        }
    }
}

#[test]
fn the_edge_of_a_knife_is_in_the_file_at_true_size() {
    let knife = Office::new().top_knife();
    let svg = TrueSize::of_knife(&knife, "Top").to_svg();
    let document = Document::parse(&svg).expect("it is well formed");
    let root = document.root_element();
    let view: Vec<f64> = root
        .attribute("viewBox")
        .expect("it has one")
        .split(' ')
        .map(|number| number.parse().expect("it is a number"))
        .collect();
    // One unit is one millimetre.
    for (size, name) in [(view[2], "width"), (view[3], "height")] {
        let told = root.attribute(name).expect("it has one");
        assert_eq!(told, format!("{size:.6}mm"));
    }
    let mut edges = document
        .descendants()
        .filter(|node| node.attribute("class") == Some("edge"));
    let path = edges
        .next()
        .and_then(|edge| edge.attribute("d"))
        .expect("it is drawn");
    let mut at = (0.0, 0.0);
    let mut pieces = knife.edge().iter();
    for segment in PathParser::from(path) {
        let piece = match segment.expect("it can be read") {
            PathSegment::MoveTo { x, y, .. } => {
                at = (x, -y);
                continue;
            }
            PathSegment::LineTo { x, y, .. } => {
                let piece = pieces.next().expect("as many pieces");
                assert!(matches!(piece, Segment::Line(_)));
                at = (x, -y);
                piece
            }
            PathSegment::EllipticalArc {
                rx,
                ry,
                sweep,
                large_arc,
                x,
                y,
                ..
            } => {
                let piece = pieces.next().expect("as many pieces");
                let Segment::Arc(arc) = piece else {
                    panic!("{piece:?} is no arc")
                };
                assert!(!large_arc && rx == ry);
                assert!((arc.radius.abs() - rx).abs() < 1e-6);
                // With y up, the sweep flag turns clockwise.
                assert_eq!(sweep, arc.is_hollow());
                at = (x, -y);
                piece
            }
            other => panic!("{other:?}"),
        };
        let end = piece.end();
        assert!((end.x - at.0).abs() < 1e-6 && (end.y - at.1).abs() < 1e-6);
    }
    assert!(pieces.next().is_none());
    assert!(at.0 > 70.0);
}
