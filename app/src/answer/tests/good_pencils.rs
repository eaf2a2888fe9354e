//! What is expected on average, held against the dice.

use solver::{Id, ProjectDraft, Typed};

use super::{JOB, refused};
use crate::answer::answer;
use crate::demo;
use crate::project_file;
use crate::protocol::{Expected, Reply, Request, UnitWord};

fn ask(project: &ProjectDraft) -> Reply {
    let project = project_file::write(project);
    let (job, unit) = (JOB, UnitWord::Millimetre);
    answer(Request::Expect { job, project, unit }, &mut |_| ())
}

#[track_caller]
fn expected(project: &ProjectDraft) -> Expected {
    match ask(project) {
        Reply::Expected { job: JOB, expected } => expected,
        other => panic!("{other:?}"),
    }
}

#[test]
fn what_is_expected_is_what_the_dice_find() {
    let mut tight = demo::project();
    tight.slats[0].draft.width = Typed::Number(72.3);
    tight.rules.edge = Typed::Number(0.0);
    for project in [demo::project(), tight] {
        let thrown = answer(
            Request::Throw {
                job: JOB,
                project: project_file::write(&project),
                unit: UnitWord::Millimetre,
                seed: 3,
                first: 0,
                blocks: 60,
            },
            &mut |_| (),
        );
        let Reply::Thrown { thrown, .. } = thrown else {
            panic!("{thrown:?}");
        };
        let dice = thrown.tally().unwrap().good();
        let found = expected(&project);
        assert_eq!(found.pencils, 10);
        let miss = (found.good.unwrap() - dice.mean).abs();
        assert!(miss < 4.0 * dice.error + 1e-4, "{found:?} by dice {dice:?}");
    }
}

#[test]
fn nothing_is_expected_where_a_check_fails_or_no_line_is_there() {
    let mut thick = demo::project();
    thick.slats[0].draft.thickness = Typed::Number(2.0);
    assert_eq!(expected(&thick).good, None);
    let mut nowhere = demo::project();
    nowhere.layout.accuracy = Id(99);
    assert!(refused(ask(&nowhere))[0].contains("line of machines"));
}
