//! DXF files read by a library for the format.

use super::{Office, awkward_names};
use dxf::Drawing;
use dxf::entities::{EntityType, Polyline};
use dxf::enums::AcadVersion;
use solver::{Segment, TrueSize};

fn read(file: &str) -> Drawing {
    Drawing::load(&mut file.as_bytes()).expect("it can be read")
}

fn polylines(drawing: &Drawing) -> Vec<(String, Polyline)> {
    let entities = drawing.entities();
    let found = entities.filter_map(|entity| match &entity.specific {
        EntityType::Polyline(polyline) => Some((entity.common.layer.clone(), polyline.clone())),
        _ => None,
    });
    found.collect()
}

/// The texts of a drawing in order.
fn texts(drawing: &Drawing) -> Vec<String> {
    let entities = drawing.entities();
    let found = entities.filter_map(|entity| match &entity.specific {
        EntityType::Text(text) => Some(text.value.clone()),
        _ => None,
    });
    found.collect()
}

/// Codes of UTF-16 read back, from the definition of the format.
fn decoded(text: &str) -> String {
    let mut units = Vec::new();
    let mut rest = text;
    while let Some(letter) = rest.chars().next() {
        if let Some(code) = rest.strip_prefix("\\U+") {
            units.push(u16::from_str_radix(&code[..4], 16).expect("four digits"));
            rest = &code[4..];
        } else {
            units.extend(letter.encode_utf16(&mut [0; 2]).iter());
            rest = &rest[letter.len_utf8()..];
        }
    }
    String::from_utf16(&units).expect("whole letters")
}

/// What stands behind group code 1 after the header: the values of the texts, as written.
fn values_of_texts(file: &str) -> Vec<&str> {
    let lines: Vec<&str> = file.lines().collect();
    let pairs = lines.chunks_exact(2).filter(|pair| pair[0] == "1");
    pairs.map(|pair| pair[1]).skip(1).collect()
}

#[test]
fn lines_and_arcs_of_a_knife_come_back() {
    let knife = Office::new().top_knife();
    let drawing = read(&TrueSize::of_knife(&knife, "Top").to_dxf());
    assert_eq!(drawing.header.version, AcadVersion::R12);
    let found = polylines(&drawing);
    let layers: Vec<&str> = found.iter().map(|(layer, _)| layer.as_str()).collect();
    assert_eq!(layers, ["EDGE", "DATUM", "DATUM"]);
    let vertices: Vec<_> = found[0].1.vertices().collect();
    assert_eq!(vertices.len(), knife.edge().len() + 1);
    for (pair, piece) in vertices.windows(2).zip(knife.edge()) {
        let (from, to) = (&pair[0].location, &pair[1].location);
        for (read, written) in [(from, piece.start()), (to, piece.end())] {
            assert!((read.x - written.x).abs() < 1e-6 && (read.y - written.y).abs() < 1e-6);
        }
        // A bulge b over a chord c stands for an arc of radius c·(1 + b²)/(4b), which rises
        // b·c/2 to the right of the chord where b is above 0.
        let bulge = pair[0].bulge;
        match piece {
            Segment::Line(_) => assert_eq!(bulge, 0.0),
            Segment::Arc(arc) => {
                let (x, y) = (to.x - from.x, to.y - from.y);
                let middle = (
                    f64::midpoint(from.x, to.x) + y * bulge / 2.0,
                    f64::midpoint(from.y, to.y) - x * bulge / 2.0,
                );
                let expected = arc.middle();
                let miss = (middle.0 - expected.x)
                    .abs()
                    .max((middle.1 - expected.y).abs());
                assert!(miss < 2e-6, "{miss} at {expected:?}");
            }
        }
    }
}

#[test]
fn the_outline_of_a_pencil_is_closed() {
    let office = Office::new();
    let layout = office.layout();
    let drawing = read(&TrueSize::of_outline(layout.bare(), "Office").to_dxf());
    let found = polylines(&drawing);
    assert_eq!(found[0].0, "OUTLINE");
    assert!(found[0].1.is_closed());
    assert_eq!(
        found[0].1.vertices().count(),
        layout.bare().segments().len()
    );
}

#[test]
fn any_name_comes_back_whole_and_ends_no_line() {
    let office = Office::new();
    for name in awkward_names() {
        let file = TrueSize::of_outline(office.layout().bare(), &name).to_dxf();
        assert!(file.is_ascii() && file.lines().all(|line| line.len() <= 255));
        let drawing = read(&file);
        assert_eq!(drawing.entities().count(), 4 + texts(&drawing).len() - 1);
        // The reader knows no letters beyond the basic plane; it counts the texts, and the codes
        // are read here.
        let told = decoded(&values_of_texts(&file).concat());
        let held: String = name
            .chars()
            .map(|letter| if letter.is_control() { ' ' } else { letter })
            .collect();
        assert!(told.starts_with(&held), "{told}");
    }
}
