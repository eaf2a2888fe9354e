//! The page and the worker of Slatwright: they ask, draw and remember; `solver` computes.

pub mod answer;
pub mod demo;
mod download;
mod offline;
mod preference;
pub mod project_file;
pub mod protocol;
pub mod spreadsheet;
pub mod store;
pub mod view;
pub mod workbench;
pub mod worker;
pub mod worker_link;
