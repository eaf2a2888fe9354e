//! `search`: the best layouts.

use app::demo;
use solver::Id;

use crate::program::{ask, json_of};
use crate::projects::wide_search;

#[test]
fn a_search_finds_at_least_the_layout_of_the_demo() {
    let (code, text, _) = ask(&["search", "-"], &demo::project());
    assert_eq!(code, 0, "{text}");
    for goal in solver::Goal::ALL {
        assert!(text.contains(goal.label()), "{text}");
    }
    let answer = json_of("search", &demo::project());
    let pencils = answer["best"]["pencils"][0]["pencils"].as_u64().unwrap();
    assert!(pencils >= 10, "{pencils}");
}

#[test]
fn a_search_that_would_take_hours_is_refused() {
    let mut project = wide_search();
    let stock = project.slats[0].clone();
    for id in 1_000..2_000 {
        let mut stock = stock.clone();
        stock.id = Id(id);
        project.slats.push(stock);
    }
    let (code, _, complaint) = ask(&["search", "-"], &project);
    assert_eq!(code, 1);
    assert!(complaint.contains("search.pairs: "), "{complaint}");
}
