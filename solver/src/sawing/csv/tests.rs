use super::super::data::{BlankOrder, Dimensions, PlankStock, SawingAim, SawingDraft};
use super::super::pattern::{CutPattern, Section};
use super::super::plan::SawingPlan;
use super::*;
use proptest::prelude::*;

fn list() -> SawingList {
    let size = |length, width, thickness| Dimensions {
        length,
        width,
        thickness,
    };
    let blank = |length, thickness, demand| BlankOrder {
        size: size(length, 27_000, thickness),
        demand,
        over_worth: 0,
        most_over: 0,
    };
    let plank = |length, price| PlankStock {
        size: size(length, 100_000, 30_000),
        end_trim: 0,
        edge_trim: 0,
        price,
        on_hand: None,
    };
    let data = SawingDraft {
        planks: vec![plank(1_000_000, 1_205), plank(2_000_000, 250_000)],
        blanks: vec![
            blank(185_000, 5_500, 100),
            blank(185_000, 7_000, 3),
            blank(92_250, 6_000, 10),
        ],
        crosscut_kerf: 4_000,
        rip_kerf: 2_000,
        offcuts: None,
        aim: SawingAim::Planks,
    }
    .check()
    .unwrap();
    let section = |blanks: &[(usize, u64)]| Section {
        blanks: blanks.to_vec(),
    };
    let mixed = CutPattern {
        plank: 0,
        sections: vec![(section(&[(2, 12)]), 1), (section(&[(0, 9), (1, 2)]), 4)],
    };
    let none = CutPattern {
        plank: 1,
        sections: Vec::new(),
    };
    SawingList::of(
        &data,
        &SawingPlan {
            cuts: vec![(none, 1), (mixed, 2)],
            cost: 0,
        },
    )
    .unwrap()
}

/// The rows of CSV text: a plain reader of RFC 4180, section 2.
fn rows(text: &str) -> Vec<Vec<String>> {
    let (mut rows, mut row, mut cell) = (Vec::new(), Vec::new(), String::new());
    let mut signs = text.chars().peekable();
    let mut quoted = false;
    while let Some(sign) = signs.next() {
        match sign {
            '"' if quoted && signs.peek() == Some(&'"') => cell.extend(signs.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => row.push(std::mem::take(&mut cell)),
            '\r' if !quoted => {
                assert_eq!(signs.next(), Some('\n'), "a row ends with CR LF");
                row.push(std::mem::take(&mut cell));
                rows.push(std::mem::take(&mut row));
            }
            '\n' if !quoted => panic!("a line feed alone"),
            sign => cell.push(sign),
        }
    }
    assert!(
        !quoted && row.is_empty() && cell.is_empty(),
        "the last row is ended"
    );
    rows
}

// By hand: four sections of 185 and one of 92.25 with five cuts of 4 leave 147.75 of 1000; two
// planks give 2·4·9 = 72 of 100, 2·4·2 = 16 of 3, 2·12 = 24 of 10.
#[test]
fn what_to_saw_in_rows() {
    let names = SawingNames {
        planks: &[],
        blanks: &["Office".to_owned(), "Thick \"9\"".to_owned()],
    };
    let text = list().cuts_csv(&names, LengthUnit::Millimetre);
    let expected = [
        "Pattern,Plank,Planks,Planks so far,Section length (mm),Sections in a plank,Blank,Blanks in a section,Blanks by this pattern,Blanks so far,Blanks still to make,Offcut of a plank (mm)",
        "1,Plank 1,2,2,185,4,\"Thick \"\"9\"\"\",2,16,16,0,147.75",
        "1,Plank 1,2,2,185,4,Office,9,72,72,28,147.75",
        "1,Plank 1,2,2,92.25,1,Blank 3,12,24,24,0,147.75",
        "2,Plank 2,1,3,,,,,,,,2000",
        "",
    ];
    assert_eq!(text.split("\r\n").collect::<Vec<_>>(), expected);
}

// 92.25/25.4 = 3.63189, 147.75/25.4 = 5.81693, 185/25.4 = 7.28346.
#[test]
fn inches_have_four_decimals_at_most() {
    let names = SawingNames {
        planks: &[],
        blanks: &[],
    };
    let rows = rows(&list().cuts_csv(&names, LengthUnit::Inch));
    assert_eq!(rows[0][4], "Section length (in)");
    assert_eq!(
        [&rows[1][4], &rows[3][4], &rows[3][11]],
        ["7.2835", "3.6319", "5.8169"]
    );
    assert_eq!(length(25_400, LengthUnit::Inch), "1");
    assert_eq!(length(0, LengthUnit::Inch), "0");
}

#[test]
fn what_the_planks_cost_in_rows() {
    let names = SawingNames {
        planks: &["Lime, 1 m".to_owned()],
        blanks: &[],
    };
    let expected = "Plank,Planks,Price each (currency),Price (currency)\r\n\
                    \"Lime, 1 m\",2,12.05,24.10\r\nPlank 2,1,2500.00,2500.00\r\nAll planks,3,,2524.10\r\n";
    assert_eq!(list().bill_csv(&names), expected);
}

#[test]
fn numbers_are_written_to_the_last_digit() {
    assert_eq!(length(1, LengthUnit::Millimetre), "0.001");
    assert_eq!(length(30_000_000, LengthUnit::Millimetre), "30000");
    assert_eq!(
        (money(0), money(5), money(100)),
        ("0.00".to_owned(), "0.05".to_owned(), "1.00".to_owned())
    );
}

proptest! {
    /// Read back by a plain reader, every row has all cells, names are the same but for the
    /// apostrophe, and none runs.
    #[test]
    fn any_name_comes_back_and_none_runs(plank in any_name(), blank in any_name()) {
        let (planks, blanks) = ([plank], [blank]);
        let names = SawingNames { planks: &planks, blanks: &blanks };
        let (cuts, bill) = (list().cuts_csv(&names, LengthUnit::Millimetre), list().bill_csv(&names));
        for (table, places) in [(rows(&cuts), [(1, 1), (2, 6)]), (rows(&bill), [(1, 0), (1, 0)])] {
            prop_assert!(table.iter().all(|row| row.len() == table[0].len()));
            for cell in table.iter().flatten() {
                prop_assert!(!cell.trim_start().starts_with(['=', '+', '-', '@']), "{:?}", cell);
            }
            for (row, column) in places {
                let name = if column == 6 { names.blank(0) } else { names.plank(0) };
                let cell = &table[row][column];
                prop_assert!(*cell == name || *cell == format!("'{name}"), "{cell:?}");
            }
        }
    }
}

fn any_name() -> impl Strategy<Value = String> {
    prop_oneof!["[=+@,;\"\r\n\t a-]{0,6}", any::<String>()]
}
