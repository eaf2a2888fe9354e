//! What stands on the page, as files: a table as its cells, a drawing as it looks.
//!
//! Nothing is reckoned here: a file tells what the page tells, to the same digit.

use crate::spreadsheet;
use js_sys::Reflect;
use leptos::prelude::{document, window};
use solver::{PIXELS_PER_MILLIMETRE, escaped_xml, figure};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CssStyleDeclaration, Element, Node};

/// Something on the page that can be saved.
pub(crate) struct Shown {
    /// What it is called; told apart from the others.
    pub(crate) name: String,
    /// The end of the name of its file.
    pub(crate) end: &'static str,
    called: String,
    element: Element,
}

impl Shown {
    /// Every table and every drawing that stands on the page now, in its order.
    pub(crate) fn all() -> Vec<Self> {
        let mut all: Vec<Self> = Vec::new();
        let found = document().query_selector_all("main table, main svg[viewBox]:not(.unseen)");
        let Ok(found) = found else {
            return all;
        };
        for at in 0..found.length() {
            let element = found
                .item(at)
                .and_then(|node| node.dyn_into::<Element>().ok());
            // What is folded up or left out has no size.
            let seen = element.filter(|element| element.get_bounding_client_rect().width() > 0.0);
            let Some(element) = seen else {
                continue;
            };
            let end = match element.tag_name().as_str() {
                "svg" => "svg",
                _ => "csv",
            };
            let called = name_of(&element);
            let alike = all
                .iter()
                .filter(|other| other.end == end && other.called == called);
            let name = match alike.count() {
                0 => called.clone(),
                before => format!("{called}, {}", before + 1),
            };
            all.push(Self {
                name,
                called,
                end,
                element,
            });
        }
        all
    }

    /// The text of its file.
    pub(crate) fn text(&self) -> String {
        if self.end == "svg" {
            drawing(&self.element, &self.name)
        } else {
            spreadsheet::write_csv(&cells(&self.element))
        }
    }
}

/// What a part of the page is called: by the label of its group, by its own title, or by the heading of
/// its section; with what it is a part of, and with the unit that the heading tells.
fn name_of(element: &Element) -> String {
    let text = |found: Option<Element>| found.and_then(|found| found.text_content());
    let closest = |what: &str| element.closest(what).ok().flatten();
    let part = closest("section.result, section.board, section");
    let heading = part
        .as_ref()
        .and_then(|part| part.query_selector("h2, h3").ok().flatten());
    let heading = text(heading).unwrap_or_default();
    let label = closest(".scroll[aria-label], .sheet[aria-label]");
    let label = label.and_then(|label| label.get_attribute("aria-label"));
    let title = || text(element.query_selector(":scope > title").ok().flatten());
    let owner = || {
        part.as_ref()
            .and_then(|part| part.get_attribute("aria-label"))
    };
    let own = label.or_else(title).filter(|own| !own.is_empty());
    let unit = ["mm", "in"]
        .into_iter()
        .find(|unit| heading.ends_with(&format!(", {unit}")));
    let article =
        closest("article[aria-label]").and_then(|whole| whole.get_attribute("aria-label"));
    let mut name = match own {
        Some(own) => {
            let own = own.trim_end_matches(", drawn").to_owned();
            let whole = article.filter(|whole| !own.starts_with(whole));
            let own = whole.map_or_else(|| own.clone(), |whole| format!("{whole}, {own}"));
            unit.map_or_else(|| own.clone(), |unit| format!("{own}, {unit}"))
        }
        None if heading.is_empty() => article.or_else(owner).unwrap_or_default(),
        None => heading,
    };
    if name.is_empty() {
        "Shown".clone_into(&mut name);
    }
    let words: Vec<&str> = name.split_whitespace().take(16).collect();
    words.join(" ")
}

/// The cells of a table, row by row; buttons of a row are none.
fn cells(table: &Element) -> Vec<Vec<String>> {
    let rows = children(table).into_iter().flat_map(|part| children(&part));
    let rows = rows.filter(|row| !row.has_attribute("hidden"));
    let rows = rows.map(|row| {
        let cells = children(&row).into_iter();
        let cells = cells.filter(|cell| !cell.class_list().contains("tools"));
        cells.map(|cell| plain(&said(&cell))).collect()
    });
    rows.filter(|row: &Vec<String>| !row.is_empty()).collect()
}

/// What a cell says: what is typed or chosen in its field, or else its text.
fn said(cell: &Element) -> String {
    let found = |what: &str| cell.query_selector(what).ok().flatten();
    let typed = || {
        let field = JsValue::from(found("input, textarea")?);
        Reflect::get(&field, &"value".into()).ok()?.as_string()
    };
    let chosen = || found("option:checked")?.text_content();
    let text = chosen().or_else(typed).or_else(|| cell.text_content());
    text.unwrap_or_default()
}

/// A number as a spreadsheet reads it; any other text as it is.
fn plain(text: &str) -> String {
    let text = text.trim();
    if text == figure::NO_FIGURE {
        return String::new();
    }
    let bare = text
        .replace(figure::THIN_SPACE, "")
        .replace(figure::MINUS, "-");
    if bare.parse::<f64>().is_ok() {
        bare
    } else {
        text.replace(figure::THIN_SPACE, " ")
    }
}

fn children(element: &Element) -> Vec<Element> {
    std::iter::successors(element.first_element_child(), |child| {
        child.next_element_sibling()
    })
    .collect()
}

/// A drawing as a standalone SVG with the colours and lines that it has on the page, as large as there.
fn drawing(svg: &Element, name: &str) -> String {
    let view_box = svg.get_attribute("viewBox").unwrap_or_default();
    let sides: Vec<f64> = view_box
        .split(' ')
        .filter_map(|side| side.parse().ok())
        .collect();
    let [.., width, height] = sides[..] else {
        return String::new();
    };
    let [wide, high] = [width, height].map(|side| figure::exact(side / PIXELS_PER_MILLIMETRE));
    let paper = style(svg).and_then(|_| {
        let sheet = svg.closest(".sheet, body").ok().flatten()?;
        style(&sheet)?.get_property_value("background-color").ok()
    });
    let mut text = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{wide}mm\" height=\"{high}mm\" viewBox=\"{view_box}\" font-family=\"sans-serif\">\n<title>{}</title>\n<rect width=\"{width}\" height=\"{height}\" fill=\"{}\"/>\n",
        escaped_xml(name),
        escaped_xml(&paper.unwrap_or_default())
    );
    for child in children(svg) {
        write(&child, &mut text);
    }
    text + "</svg>\n"
}

/// Attributes that tell the shape of an element.
const SHAPE: [&str; 17] = [
    "id",
    "d",
    "x",
    "y",
    "x1",
    "x2",
    "y1",
    "y2",
    "cx",
    "cy",
    "r",
    "width",
    "height",
    "transform",
    "patternUnits",
    "patternTransform",
    "viewBox",
];

/// Properties that tell its look.
const LOOK: [&str; 12] = [
    "fill",
    "fill-opacity",
    "stroke",
    "stroke-width",
    "stroke-dasharray",
    "stroke-linecap",
    "opacity",
    "font-size",
    "font-weight",
    "text-anchor",
    "dominant-baseline",
    "visibility",
];

/// Writes an element and all in it, but for titles and for what is there for the hand.
fn write(element: &Element, text: &mut String) {
    let tag = element.tag_name();
    let classes = element.class_list();
    let left_out = ["title", "desc"].contains(&tag.as_str()) || classes.contains("gauge");
    if left_out {
        return;
    }
    *text += &format!("<{tag}");
    for name in SHAPE {
        if let Some(value) = element.get_attribute(name) {
            *text += &format!(" {name}=\"{}\"", escaped_xml(&value));
        }
    }
    if let Some(style) = style(element) {
        let look = LOOK.iter().filter_map(|name| {
            let value = style.get_property_value(name).ok()?;
            (!value.is_empty()).then(|| format!(" {name}=\"{}\"", escaped_xml(&value)))
        });
        text.extend(look);
    }
    *text += ">";
    let nodes = std::iter::successors(element.first_child(), Node::next_sibling);
    for node in nodes {
        match node.dyn_into::<Element>() {
            Ok(child) => write(&child, text),
            Err(node) if node.node_type() == Node::TEXT_NODE => {
                *text += &escaped_xml(&node.node_value().unwrap_or_default());
            }
            Err(_) => {}
        }
    }
    *text += &format!("</{tag}>\n");
}

fn style(element: &Element) -> Option<CssStyleDeclaration> {
    window().get_computed_style(element).ok().flatten()
}
