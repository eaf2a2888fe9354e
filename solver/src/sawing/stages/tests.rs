use super::columns::{Crosscut, Rip};
use super::crosscutting::{Crosscuts, crosscut};
use super::together::together;
use crate::sawing::{BlankOrder, Dimensions, PlankStock, SawingAim, SawingData, SawingDraft};

/// One kind of plank, 1000 long between the cuts, with sections of 300 and of 200.
fn shop() -> SawingData {
    let size = |length, width, thickness| Dimensions {
        length,
        width,
        thickness,
    };
    let blank = |length| BlankOrder {
        size: size(length, 50, 20),
        demand: 10,
        over_worth: 0,
        most_over: 0,
    };
    let draft = SawingDraft {
        planks: vec![PlankStock {
            size: size(1000, 100, 50),
            end_trim: 0,
            edge_trim: 0,
            price: 700,
            on_hand: None,
        }],
        blanks: vec![blank(300), blank(200)],
        crosscut_kerf: 0,
        rip_kerf: 0,
        offcuts: None,
        aim: SawingAim::Cost,
    };
    draft.check().expect("a sound shop")
}

#[test]
fn as_many_planks_as_the_sections_take_are_crosscut() {
    // Two of 300 and two of 200 fill a plank.
    let Crosscuts::Found(ways) = crosscut(&shop(), 0, &[6, 6], 3) else {
        panic!("three planks");
    };
    let cut = |strip: usize| -> u64 {
        let ways = ways.iter();
        ways.map(|(way, count)| way.sections[strip] * count).sum()
    };
    let planks: u64 = ways.iter().map(|(_, count)| count).sum();
    assert_eq!(planks, 3);
    assert!(cut(0) >= 6 && cut(1) >= 6);
}

#[test]
fn what_is_too_much_is_proved_so() {
    let Crosscuts::TooMany { parts } = crosscut(&shop(), 0, &[6, 7], 3) else {
        panic!("more than three planks");
    };
    let load = |sections: [f64; 2]| sections[0] * parts[0] + sections[1] * parts[1];
    assert!(load([6.0, 7.0]) > 3.0);
    // What fills a plank is no more than one.
    for full in [[3.0, 0.0], [2.0, 2.0], [1.0, 3.0], [0.0, 5.0]] {
        assert!(load(full) <= 1.0 + 1e-9);
    }
}

#[test]
fn all_sections_that_were_ripped_are_put_together() {
    let rip = |strip, blank, count| Rip {
        plank: 0,
        strip,
        blanks: vec![(blank, count)],
    };
    let planks = [
        (
            Crosscut {
                plank: 0,
                sections: vec![2, 2],
            },
            2,
        ),
        (
            Crosscut {
                plank: 0,
                sections: vec![0, 5],
            },
            1,
        ),
    ];
    // One section of 300 fewer than is cut: it is left on its plank.
    let ripped = vec![(rip(0, 0, 5), 3), (rip(1, 1, 5), 8), (rip(1, 1, 4), 1)];
    let cuts = together(&planks, &ripped);
    let made = |blank: usize| -> u64 {
        let cuts = cuts.iter();
        cuts.map(|(pattern, count)| pattern.made(2)[blank] * count)
            .sum()
    };
    assert_eq!((made(0), made(1)), (15, 44));
    assert_eq!(cuts.iter().map(|(_, count)| count).sum::<u64>(), 3);
}
