//! The page: places by question, one chain.
#![expect(unreachable_pub, reason = "the component macro makes its items public")]

mod accuracy_form;
mod answered;
mod barrel_place;
mod chart;
mod checks;
mod comparison;
mod conditions;
mod drawing_sheet;
mod drawn;
mod entry_row;
mod entry_table;
mod error_table;
mod expected_good;
mod file_menu;
mod good_count;
mod good_curve;
mod good_map;
mod groove_table;
mod integrals;
mod keyed;
mod layout_place;
mod live;
mod measured_slats;
mod number_field;
mod order_table;
mod path_field;
mod place;
mod problem_list;
mod purchase_list;
mod ranking_table;
mod search_form;
mod search_table;
mod slatwright;
mod sliding_gauge;
mod species_table;
mod stairs;
mod text_field;
mod threshold_table;
mod timber_place;
mod tolerance_place;
mod when;
mod wood_balance;

pub use place::Place;
pub use slatwright::Slatwright;
