//! `check`: what is wrong with a file.

use app::project_file::MOST_BYTES;

use crate::program::{ask, run, told};
use crate::projects::broken;

#[test]
fn all_problems_are_told_at_once_with_their_paths() {
    let (code, text, _) = ask(&["check", "-"], &broken());
    assert_eq!(code, 1);
    let paths = [
        "slats[2].width_mm: Slat width must be ",
        "slats[2].thickness_mm: ",
        "rules.land_mm: ",
    ];
    for path in paths {
        assert!(
            text.lines().any(|line| line.starts_with(path)),
            "{path} in\n{text}"
        );
    }
    assert!(text.ends_with("\n3 problems\n"), "{text}");
}

#[test]
fn a_file_that_is_no_text_or_too_large_is_told() {
    let (code, text, _) = told(&run(&["check", "-"], b"{\"format\": \"\xff\"}"));
    assert_eq!(code, 1);
    assert!(
        text.starts_with("the file is not text in UTF-8 from byte 13 on"),
        "{text}"
    );
    let large = vec![b' '; MOST_BYTES + 10];
    let (code, text, _) = told(&run(&["check", "-"], &large));
    assert_eq!(code, 1);
    assert!(
        text.starts_with("the file has more than 5000000 bytes"),
        "{text}"
    );
    let deep = "[".repeat(MOST_BYTES);
    assert_eq!(told(&run(&["check", "-"], deep.as_bytes())).0, 1);
}
