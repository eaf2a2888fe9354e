//! Heads, cut and run from the draft on the page to the file, and back.

use solver::{CutDraft, HeadDraft, RunDraft};

use super::{CutFile, HeadFile, HeadsFile, RunFile, YieldsFile};

pub(super) fn heads_file([groove, top, bottom]: &[HeadDraft; 3]) -> HeadsFile {
    HeadsFile {
        groove: head_file(groove),
        top: head_file(top),
        bottom: head_file(bottom),
    }
}

pub(super) fn heads_draft(file: &HeadsFile) -> [HeadDraft; 3] {
    [&file.groove, &file.top, &file.bottom].map(head_draft)
}

fn head_file(draft: &HeadDraft) -> HeadFile {
    HeadFile {
        cutting_diameter_mm: (&draft.diameter).into(),
        hook_degrees: (&draft.hook).into(),
        cutting_knives: (&draft.knives).into(),
        speed_per_minute: (&draft.speed).into(),
        marked_speed_per_minute: (&draft.marked).into(),
    }
}

fn head_draft(file: &HeadFile) -> HeadDraft {
    HeadDraft {
        diameter: (&file.cutting_diameter_mm).into(),
        hook: (&file.hook_degrees).into(),
        knives: (&file.cutting_knives).into(),
        speed: (&file.speed_per_minute).into(),
        marked: (&file.marked_speed_per_minute).into(),
    }
}

pub(super) fn cut_file(draft: &CutDraft) -> CutFile {
    CutFile {
        feed_metres_per_minute: (&draft.feed).into(),
        overcut_mm: (&draft.overcut).into(),
        overcut_draft_degrees: (&draft.draft).into(),
    }
}

pub(super) fn cut_draft(file: &CutFile) -> CutDraft {
    CutDraft {
        feed: (&file.feed_metres_per_minute).into(),
        overcut: (&file.overcut_mm).into(),
        draft: (&file.overcut_draft_degrees).into(),
    }
}

pub(super) fn run_file(draft: &RunDraft) -> RunFile {
    let [grooving, gluing, shaping, coating, finishing] = draft.yields.each_ref().map(Into::into);
    RunFile {
        gross: (&draft.gross).into(),
        lead_grade: draft.grade.into(),
        lead_tolerance_mm: (&draft.lead_tolerance).into(),
        lead_grams_per_cm3: (&draft.lead_density).into(),
        lead_breakage_percent: (&draft.lead_breakage).into(),
        glue_grams_per_m2: (&draft.glue_spread).into(),
        clamp_megapascals: (&draft.clamp_pressure).into(),
        press_hours: (&draft.press_hours).into(),
        press_load: (&draft.press_load).into(),
        coat_solids_percent: (&draft.coat_solids).into(),
        coat_passes: (&draft.coat_passes).into(),
        specific_gravity: (&draft.specific_gravity).into(),
        volumetric_percent: (&draft.volumetric_shrinkage).into(),
        yields_percent: YieldsFile {
            grooving,
            gluing,
            shaping,
            coating,
            finishing,
        },
    }
}

pub(super) fn run_draft(file: &RunFile) -> RunDraft {
    let yields = &file.yields_percent;
    let yields = [
        &yields.grooving,
        &yields.gluing,
        &yields.shaping,
        &yields.coating,
        &yields.finishing,
    ];
    RunDraft {
        gross: (&file.gross).into(),
        grade: file.lead_grade.into(),
        lead_tolerance: (&file.lead_tolerance_mm).into(),
        lead_density: (&file.lead_grams_per_cm3).into(),
        lead_breakage: (&file.lead_breakage_percent).into(),
        glue_spread: (&file.glue_grams_per_m2).into(),
        clamp_pressure: (&file.clamp_megapascals).into(),
        press_hours: (&file.press_hours).into(),
        press_load: (&file.press_load).into(),
        coat_solids: (&file.coat_solids_percent).into(),
        coat_passes: (&file.coat_passes).into(),
        specific_gravity: (&file.specific_gravity).into(),
        volumetric_shrinkage: (&file.volumetric_percent).into(),
        yields: yields.map(Into::into),
    }
}
