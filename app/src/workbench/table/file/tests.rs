use super::problems::{MOST_PROBLEMS, letters};
use super::*;
use crate::demo;
use crate::project_file::MOST_ENTRIES;
use crate::spreadsheet;
use proptest::prelude::*;
use solver::Typed;

const MM: LengthUnit = LengthUnit::Millimetre;

#[track_caller]
fn take(table: Table, text: &str) -> (ProjectDraft, Replaced) {
    table.replaced(&demo::project(), text, MM).unwrap()
}

#[track_caller]
fn refused(table: Table, text: &str) -> Vec<String> {
    let problems = table.replaced(&demo::project(), text, MM).unwrap_err();
    let plain = |words: String| words.replace('\u{202f}', " ");
    problems.into_iter().map(plain).collect()
}

#[test]
fn a_table_that_was_written_is_read_back_equal() {
    for table in Table::ALL {
        for unit in [MM, LengthUnit::Inch] {
            let project = demo::project();
            let text = spreadsheet::write_csv(&table.cells(&project, unit));
            let (back, replaced) = take(table, &text);
            assert_eq!(back, project, "{table:?} in {unit:?}");
            assert_eq!((replaced.added, replaced.gone), (0, 0));
        }
    }
}

#[test]
fn columns_are_found_by_their_names_in_any_order() {
    let text = "Thickness (in);Supplier;Name;plank LENGTH, mm;Planks to be had\r\n\
                2;Hill yard;Brook cedar, 3 m (invented);3 050,5;\r\n\
                75,5 mm;;Ash;2.000 m;12\r\n";
    let (project, replaced) = take(Table::Planks, text);
    let planks = &project.saw_shop.planks;
    assert_eq!((replaced.rows, replaced.added, replaced.gone), (2, 1, 2));
    assert_eq!(replaced.unknown, ["Supplier"]);
    let before = &demo::project().saw_shop.planks[0];
    assert_eq!(planks[0].id, before.id);
    assert_eq!(planks[0].draft.thickness, Typed::Number(50.8));
    assert_eq!(planks[0].draft.length, Typed::Number(3050.5));
    assert_eq!(
        planks[0].draft.price, before.draft.price,
        "not told, so as it was"
    );
    assert_eq!(planks[0].draft.on_hand, Typed::empty());
    assert_eq!(planks[1].draft.name, "Ash");
    assert_eq!(planks[1].draft.thickness, Typed::Number(75.5));
    assert_eq!(planks[1].draft.length, Typed::Number(2000.0));
    assert!(planks.iter().all(|plank| plank.draft.check().is_ok()));
    assert_eq!(
        replaced.notice("yard.csv"),
        "2 rows from yard.csv: 1 new, 2 gone. Undo brings back what stood there. Not known here, and passed over: Supplier."
    );
}

#[test]
fn without_a_heading_columns_go_by_their_places() {
    let (project, replaced) = take(Table::Planks, "Oak,2400,150,50,15,5,\"12,50\",8\n\n");
    let plank = &project.saw_shop.planks[0].draft;
    assert_eq!((replaced.rows, replaced.added, replaced.gone), (1, 1, 3));
    assert_eq!(plank.price, Typed::Number(12.5));
    assert_eq!(plank.on_hand, Typed::Number(8.0));
}

#[test]
fn without_names_rows_go_by_their_places() {
    let (project, replaced) = take(Table::Planks, "Plank price\n1\n2\n3\n4\n");
    assert_eq!((replaced.added, replaced.gone), (1, 0));
    let planks = &project.saw_shop.planks;
    let before = &demo::project().saw_shop.planks;
    assert_eq!(planks[2].draft.name, before[2].draft.name);
    assert_eq!(planks[2].draft.price, Typed::Number(3.0));
}

#[test]
fn a_comma_before_three_digits_is_decimal_where_another_is() {
    let width = |text: &str| {
        let table = Table::Planks.replaced(&demo::project(), text, MM);
        table.map(|(project, _)| project.saw_shop.planks[0].draft.thickness.clone())
    };
    let told = width("Name;Plank thickness;Plank price\nA;79,375;18,4\n");
    assert_eq!(told, Ok(Typed::Number(79.375)));
    let told = width("Name;Plank thickness;Plank price\nA;79,375;18\n");
    let problems = told.unwrap_err();
    assert!(
        problems[0].starts_with("Row 2, column B: Plank thickness could be"),
        "{problems:?}"
    );
}

#[test]
fn a_blank_takes_its_stock_before_its_sizes() {
    let text = "Length,Becomes,Name,Blanks wanted\n\
                190,as typed,\"For Wide, 78\",10\n\
                191,\"Thick, 74\",Other,20\n";
    let (project, _) = take(Table::Blanks, text);
    let blanks = &project.saw_shop.blanks;
    assert_eq!(blanks[0].draft.slat, None);
    assert_eq!(blanks[0].draft.length, Typed::Number(190.0));
    // The width followed from the slat, and stays as it was.
    assert!(matches!(blanks[0].draft.width, Typed::Number(width) if width > 78.0));
    assert!(blanks[1].draft.slat.is_some());
    assert_eq!(project.saw_shop.blanks.len(), 2);
    assert!(project.check().is_ok());
}

#[test]
fn everything_wrong_is_told_at_once_with_row_and_column() {
    let text = "Name;Plank length;Plank width, cm;Plank length\nA;long;10;1\n";
    assert_eq!(
        refused(Table::Planks, text),
        [
            "Row 1, column C: “Plank width, cm” has a unit in which no lengths are read here: give them in mm or in",
            "Row 1, column D: “Plank length” stands there twice: leave one of the columns out",
        ]
    );
    let text = "Plank length;Plank price;Name\nlong;-1;A\n\n2000;;B;80\n";
    let problems = refused(Table::Planks, text);
    let begins = [
        "Row 2, column A: Plank length must be a number",
        "Row 2, column B: Plank price must be between 0 and",
        "Row 4, column B: Plank price",
        "Row 4, column D: “80” stands behind the last column",
    ];
    assert_eq!(problems.len(), begins.len(), "{problems:#?}");
    for (problem, begin) in problems.iter().zip(begins) {
        assert!(problem.starts_with(begin), "{problem}");
    }
    let problems = refused(Table::Slats, "Name,Species,Sawn\nA,Ebony,across\n");
    assert_eq!(
        problems,
        [
            "Row 2, column B: Species: “Ebony” is not known here",
            "Row 2, column C: Sawn: “across” is not known here",
        ]
    );
}

#[test]
fn what_is_no_table_is_told() {
    assert_eq!(refused(Table::Planks, ""), ["It has no row to take in"]);
    assert_eq!(
        refused(Table::Planks, "Name,Plank length\n,\n"),
        ["It has no row to take in"]
    );
    let problems = refused(Table::Planks, "Gr\u{fffd}n,2000\n");
    assert_eq!(
        problems,
        ["It is no text in UTF-8: save it as CSV in UTF-8"]
    );
    let problems = refused(Table::Planks, &"A\n".repeat(MOST_ENTRIES + 1));
    assert_eq!(
        problems,
        ["It has 2001 rows, and at most 2000 can be taken in"]
    );
    let problems = refused(Table::Planks, &"A,x\n".repeat(100));
    assert_eq!(problems.len(), MOST_PROBLEMS + 1);
}

#[test]
fn an_order_book_goes_by_the_names_of_pencils_and_periods() {
    let text = "pencil;gross;due in period;Pencils on hand\n\
                jumbo, ROUND;12,5;Week 3;144\nWriter, hexagonal;1;2;0\n";
    let (project, replaced) = take(Table::Orders, text);
    assert_eq!((replaced.rows, replaced.added, replaced.gone), (2, 0, 2));
    let [first, second] = [&project.orders[0], &project.orders[1]];
    assert_eq!((first.barrel, &first.gross), (Id(4), &Typed::Number(12.5)));
    assert_eq!(
        (&first.due, &first.on_hand),
        (&Typed::Number(3.0), &Typed::Number(144.0))
    );
    assert_eq!((second.barrel, &second.due), (Id(1), &Typed::Number(2.0)));
    let problems = refused(Table::Orders, "Quill,many,0\nWriter, hexagonal,1,9\n");
    assert_eq!(
        problems[0],
        "Row 1, column A: Pencil: “Quill” is not known here"
    );
    assert!(problems[1].starts_with("Row 1, column B: Ordered must be a number"));
    assert!(problems[2].starts_with("Row 1, column C: Due in period must be between 1 and 60"));
}

#[test]
fn an_order_book_of_many_lines_is_gathered() {
    let lines = "\"Writer, hexagonal\",2,1\n\"Jumbo, round\",0.5,3\n".repeat(5_000);
    let (project, replaced) = take(Table::Orders, &lines);
    let of = |at: usize| (project.orders[at].barrel, project.orders[at].gross.clone());
    assert_eq!(of(0), (Id(1), Typed::Number(10_000.0)));
    assert_eq!(of(1), (Id(4), Typed::Number(2_500.0)));
    assert_eq!(project.orders.len(), 2);
    assert_eq!(
        replaced.notice("book.csv"),
        "10000 rows from book.csv, gathered by pencil and period into 2 lines. Undo brings back what stood there."
    );
    // Lines that cannot be read are told, and nothing is gathered.
    let problems = refused(Table::Orders, &"Quill,2,1\n".repeat(10_000));
    assert_eq!(problems.len(), MOST_PROBLEMS + 1);
}

#[test]
fn offers_are_read_with_their_prices() {
    let text = "Supplier,Slat stock,Slats per pack,From packs,Price per pack,From packs 2,Price per pack 2,A price is for,Certified\n\
                Hill yard,\"Wide, 78\",500,1,120,10,\"110,50\",further packs,yes\n\
                Hill yard,\"Thin, 70\",400,1,90,,,,\n";
    let problems = refused(Table::Offers, &text.replace("yes", "perhaps"));
    assert_eq!(
        problems,
        ["Row 2, column I: Certified: “perhaps” is not known here"]
    );
    let (project, replaced) = take(Table::Offers, text);
    let offers = &project.supply.offers;
    assert_eq!((replaced.rows, replaced.gone), (2, 4));
    assert_eq!(
        (offers[0].draft.slat, offers[0].draft.tiers.len()),
        (Id(12), 2)
    );
    assert_eq!(offers[0].draft.tiers[1].pack_price, Typed::Number(110.5));
    assert!(offers[0].draft.is_certified && !offers[1].draft.is_certified);
    let before = &demo::project().supply.offers[1].draft.tiers[1..];
    assert!(
        before.len() == 1 && offers[1].draft.tiers.len() == 1,
        "{:?}",
        offers[1]
    );
}

#[test]
fn columns_have_the_letters_of_a_spreadsheet() {
    for (column, name) in [(0, "A"), (25, "Z"), (26, "AA"), (701, "ZZ"), (702, "AAA")] {
        assert_eq!(letters(column), name);
    }
}

#[test]
fn a_layout_whose_stock_has_gone_takes_another() {
    let text = "Name,Slat width,Slat thickness\nNew,80,6\n";
    let (project, replaced) = take(Table::Slats, text);
    assert_eq!((replaced.added, replaced.gone), (1, 5));
    assert_eq!(project.layout.top, project.slats[0].id);
    assert_eq!(project.layout.bottom, project.slats[0].id);
}

proptest! {
    #[test]
    fn any_table_is_read_back_equal(
        rows in prop::collection::vec(("[a-c,;\"'=é -]{0,5}", 100_000_u32..900_000, 0_u32..5), 1..8), inch: bool,
    ) {
        let mut project = demo::project();
        project.saw_shop.planks.truncate(1);
        let first = project.saw_shop.planks[0].clone();
        project.saw_shop.planks = rows.into_iter().zip(500..).map(|((name, length, price), id)| {
            let mut plank = first.clone();
            plank.id = Id(id);
            plank.draft.name = name;
            plank.draft.length = Typed::Number(f64::from(length) / 1000.0 + 200.0);
            plank.draft.price = Typed::Number(f64::from(price) / 4.0);
            plank
        }).collect();
        let unit = if inch { LengthUnit::Inch } else { MM };
        let text = spreadsheet::write_csv(&Table::Planks.cells(&project, unit));
        let (back, _) = Table::Planks.replaced(&project, &text, MM).unwrap();
        prop_assert_eq!(back, project);
    }

    #[test]
    fn any_text_is_taken_or_told(text in "[0-9a,.;\"\t\n NamePlnkth]{0,60}", table in 0_usize..9) {
        let table = Table::ALL[table];
        match table.replaced(&demo::project(), &text, MM) {
            Ok((project, replaced)) => prop_assert_eq!(table.rows(&project).len(), replaced.rows),
            Err(problems) => prop_assert!(!problems.is_empty()),
        }
    }
}
