//! The project as a file: save a copy, open one, begin anew; its tables as files.

use super::Place;
use super::entry_row::focus_first;
use crate::project_file;
use crate::workbench::{Memory, Table, Workbench};
use crate::{demo, download};
use leptos::html::Input;
use leptos::prelude::*;
use leptos::task::spawn_local;
use solver::{BarrelDraft, Entry};
use wasm_bindgen_futures::JsFuture;

/// Opening and saving of files; shared by the buttons and the keyboard.
#[derive(Clone, Copy)]
pub(crate) struct Files {
    bench: Workbench,
    memory: Memory,
    /// Why the last file was not opened.
    pub(crate) refusal: RwSignal<Option<Refusal>>,
    picker: NodeRef<Input>,
}

/// A file that was not opened.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Refusal {
    file: String,
    problems: Vec<String>,
}

impl Files {
    /// Files of a workbench.
    pub(crate) fn new(bench: Workbench, memory: Memory) -> Self {
        Self {
            bench,
            memory,
            refusal: RwSignal::new(None),
            picker: NodeRef::new(),
        }
    }

    /// Saves a copy of the project as a file.
    pub(crate) fn save_copy(&self) {
        let project = self.bench.project();
        let text = project_file::write(&project.read_untracked());
        let name = format!(
            "{}.slatwright.json",
            file_name(&project.read_untracked().name)
        );
        match download::text(&name, &text) {
            Ok(()) => self
                .bench
                .tell(&format!("A copy goes to your downloads as {name}.")),
            Err(reason) => self
                .bench
                .tell(&format!("The copy could not be saved: {reason}")),
        }
    }

    /// Lets the user pick a file to open.
    pub(crate) fn pick(&self) {
        if let Some(picker) = self.picker.get_untracked() {
            picker.click();
        }
    }

    /// Opens the file that is dropped on the page, but for one that a table has taken.
    pub(crate) fn drop(&self, event: &web_sys::DragEvent) {
        let dropped = event.data_transfer().and_then(|data| data.files());
        let file = dropped.and_then(|files| files.get(0));
        if let Some(file) = file.filter(|_| !event.default_prevented()) {
            event.prevent_default();
            self.open(&file);
        }
    }

    /// Opens a file; the present project stays as it is unless the file can be read.
    pub(crate) fn open(&self, file: &web_sys::File) {
        let files = *self;
        let take = move |name: String, text: String| match project_file::read_barrel_file(&text) {
            Some(barrel) => files.add_barrel(name, barrel),
            None => files.take_project(name, &text),
        };
        self.read(file, Box::new(take));
    }

    /// Adds a barrel that came alone to the project, which keeps all it has; or says why not.
    pub(crate) fn add_barrel(
        &self,
        from: String,
        barrel: Result<BarrelDraft, Vec<project_file::FileProblem>>,
    ) {
        let bench = self.bench;
        match barrel {
            Ok(draft) => {
                self.refusal.set(None);
                let name = draft.name.clone();
                bench.change(|project| {
                    let id = project.free_id();
                    project.barrels.push(Entry { id, draft });
                    project.layout.barrel = id;
                });
                if bench.place.get_untracked() != Place::Barrel {
                    bench.place.set(Place::Barrel);
                }
                // A list that is full has been told of.
                if bench.notice.read_untracked().is_none() {
                    bench.tell(&format!(
                        "“{name}” has been added to the barrels. Undo takes it out again."
                    ));
                }
            }
            Err(problems) => self.refuse(from, problems.iter().map(ToString::to_string).collect()),
        }
    }

    /// Puts the project of a file on the bench; the present one stays unless it can be read.
    fn take_project(&self, name: String, text: &str) {
        let files = *self;
        match project_file::read(text) {
            Ok(opened) => {
                files.refusal.set(None);
                files.bench.replace(opened.draft);
                files.memory.save_now();
                let notes = opened.notes.len();
                let noted = if notes > 0 {
                    format!(" {notes} entries in it were passed over.")
                } else {
                    String::new()
                };
                files.bench.tell(&format!(
                    "Opened {name}.{noted} Undo brings the last project back."
                ));
            }
            Err(problems) => files.refuse(name, problems.iter().map(ToString::to_string).collect()),
        }
    }

    /// Puts the rows of a CSV file in place of those of a table, which stay unless all can be read.
    pub(crate) fn open_table(&self, table: Table, file: &web_sys::File) {
        let files = *self;
        let take = move |name: String, text: String| {
            let bench = files.bench;
            let unit = bench.unit.get_untracked();
            let replaced = table.replaced(&bench.project().read_untracked(), &text, unit);
            match replaced {
                Ok((changed, replaced)) => {
                    files.refusal.set(None);
                    bench.change(|project| *project = changed);
                    bench.tell(&replaced.notice(&name));
                }
                Err(problems) => files.refuse(name, problems),
            }
        };
        self.read(file, Box::new(take));
    }

    /// Reads the text of a file; one that cannot be read is refused.
    fn read(&self, file: &web_sys::File, take: Box<dyn FnOnce(String, String)>) {
        let (files, file) = (*self, file.clone());
        spawn_local(async move {
            let name = file.name();
            if file.size() > project_file::MOST_BYTES as f64 {
                let words = "The file is too large; choose one of at most 5 MB";
                files.refuse(name, vec![words.to_owned()]);
                return;
            }
            let text = JsFuture::from(file.text()).await.ok();
            match text.and_then(|text| text.as_string()) {
                Some(text) => take(name, text),
                None => {
                    let words = "The file could not be read; try to open it again";
                    files.refuse(name, vec![words.to_owned()]);
                }
            }
        });
    }

    /// Says why a file was not opened, and leads there: it may have been opened far below.
    fn refuse(&self, file: String, problems: Vec<String>) {
        self.refusal.set(Some(Refusal { file, problems }));
        focus_first(vec![REFUSAL_CLOSE.to_owned()]);
    }
}

/// The name of the button that closes what is said of a refused file.
const REFUSAL_CLOSE: &str = "refusal-close";

/// The file that was picked, which can be picked again then.
pub(crate) fn picked(picker: NodeRef<Input>) -> Option<web_sys::File> {
    let picker = picker.get_untracked()?;
    let file = picker.files().and_then(|files| files.get(0));
    picker.set_value("");
    file
}

/// The buttons for files.
#[component]
pub(crate) fn FileMenu() -> impl IntoView {
    let files = expect_context::<Files>();
    let bench = files.bench;
    let on_pick = move |_| {
        if let Some(file) = picked(files.picker) {
            files.open(&file);
        }
    };
    view! {
        <div class="file-menu" role="group" aria-label="Project file">
            <button type="button" on:click=move |_| files.save_copy()>"Save a copy"</button>
            <button type="button" on:click=move |_| files.pick()>"Open"</button>
            <button type="button" on:click=move |_| {
                bench.replace(demo::blank());
                bench.tell("A new project. Undo brings the last one back.");
            }>"New"</button>
            <button type="button" on:click=move |_| {
                bench.replace(demo::project());
                bench.tell("The invented example. Undo brings your project back.");
            }>"Example"</button>
            <input
                type="file"
                class="unseen"
                tabindex="-1"
                aria-label="Project file to open"
                accept=".json,application/json"
                node_ref=files.picker
                on:change=on_pick
            />
        </div>
    }
}

/// Why the last file was not opened.
#[component]
pub(crate) fn RefusedFile() -> impl IntoView {
    let files = expect_context::<Files>();
    move || {
        files.refusal.get().map(|refusal| {
            view! {
                <section class="banner failed" role="alert">
                    <p>{format!("{} was not opened; your project is as it was.", refusal.file)}</p>
                    <ul>{refusal.problems.into_iter().map(|problem| view! { <li>{problem}</li> }).collect_view()}</ul>
                    <button type="button" id=REFUSAL_CLOSE on:click=move |_| files.refusal.set(None)>"Close"</button>
                </section>
            }
        })
    }
}

/// A name that every file system takes.
pub(crate) fn file_name(name: &str) -> String {
    let plain: String = name
        .chars()
        .map(|letter| {
            if letter.is_alphanumeric() {
                letter
            } else {
                '-'
            }
        })
        .take(60)
        .collect();
    let trimmed = plain
        .split('-')
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join("-");
    if trimmed.is_empty() {
        "project".to_owned()
    } else {
        trimmed.to_lowercase()
    }
}

#[cfg(test)]
mod tests {
    use super::file_name;

    #[test]
    fn names_become_file_names() {
        assert_eq!(
            file_name("Alder Brook works (invented)"),
            "alder-brook-works-invented"
        );
        assert_eq!(file_name("../../etc"), "etc");
        assert_eq!(file_name(" "), "project");
        assert_eq!(file_name("Tužkárna"), "tužkárna");
    }
}
