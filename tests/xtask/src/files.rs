//! Reading, writing and listing files, with failures that name the file.

use std::{
    fs,
    path::{Path, PathBuf},
};

use crate::failure::Failure;

pub(crate) fn read(file: &Path) -> Result<Vec<u8>, Failure> {
    fs::read(file).map_err(|error| about(file, &error))
}

pub(crate) fn read_text(file: &Path) -> Result<String, Failure> {
    fs::read_to_string(file).map_err(|error| about(file, &error))
}

pub(crate) fn write(file: &Path, content: impl AsRef<[u8]>) -> Result<(), Failure> {
    fs::write(file, content).map_err(|error| about(file, &error))
}

pub(crate) fn make_folder(folder: &Path) -> Result<(), Failure> {
    fs::create_dir_all(folder).map_err(|error| about(folder, &error))
}

/// The names of all files below a folder, relative to it, with `/` between parts, sorted.
pub(crate) fn names_below(folder: &Path) -> Result<Vec<String>, Failure> {
    let mut found = Vec::new();
    collect(folder, &mut found)?;
    let mut names: Vec<String> = found
        .iter()
        .map(|file| {
            file.strip_prefix(folder)
                .expect("the walk stays below the folder")
                .iter()
                .map(|part| part.to_string_lossy())
                .collect::<Vec<_>>()
                .join("/")
        })
        .collect();
    names.sort();
    Ok(names)
}

fn collect(folder: &Path, found: &mut Vec<PathBuf>) -> Result<(), Failure> {
    for entry in fs::read_dir(folder).map_err(|error| about(folder, &error))? {
        let path = entry.map_err(|error| about(folder, &error))?.path();
        if path.is_dir() {
            collect(&path, found)?;
        } else {
            found.push(path);
        }
    }
    Ok(())
}

fn about(path: &Path, error: &std::io::Error) -> Failure {
    Failure::new(format!("{}: {error}", path.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_relative_and_sorted() {
        let names = names_below(Path::new(env!("CARGO_MANIFEST_DIR"))).unwrap();
        assert!(names.contains(&"src/files.rs".to_string()));
        assert!(names.is_sorted());
    }

    #[test]
    fn a_missing_file_is_named() {
        let failure = read(Path::new("no/such/file")).unwrap_err();
        assert!(failure.to_string().contains("no/such/file"), "{failure}");
    }
}
