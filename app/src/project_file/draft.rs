//! From the draft on the page to the file, and back.

use std::sync::Arc;

use solver::{
    AccuracyDraft, BarrelDraft, BlankDraft, ConditionsDraft, CutterSetDraft, Entry, ErrorDraft, Id,
    LayoutDraft, OrderDraft, PlankDraft, ProjectDraft, RulesDraft, SawShopDraft, SearchDraft,
    SlatDraft, SpeciesDraft, Term,
};

use super::finish::{finish_draft, finish_file};
use super::machines::{cut_draft, cut_file, heads_draft, heads_file, run_draft, run_file};
use super::supply::{supply_draft, supply_file};
use super::title_block::{title_block_draft, title_block_file};
use super::{
    AccuracyFile, BarrelFile, BlankFile, ConditionsFile, CutterSetFile, ErrorFile, LayoutFile,
    OrderFile, PlankFile, ProjectFile, RulesFile, SawShopFile, SearchFile, SlatFile, SpeciesFile,
};

impl From<&ProjectDraft> for ProjectFile {
    fn from(draft: &ProjectDraft) -> Self {
        Self {
            name: draft.name.clone(),
            barrels: draft.barrels.iter().map(barrel_file).collect(),
            slats: draft.slats.iter().map(slat_file).collect(),
            species: draft.species.iter().map(species_file).collect(),
            conditions: conditions_file(&draft.conditions),
            cutter_sets: draft.cutter_sets.iter().map(cutter_set_file).collect(),
            rules: rules_file(&draft.rules),
            accuracies: draft.accuracies.iter().map(accuracy_file).collect(),
            layout: layout_file(&draft.layout),
            search: search_file(&draft.search),
            orders: draft.orders.iter().map(order_file).collect(),
            saw_shop: saw_shop_file(&draft.saw_shop),
            heads: heads_file(&draft.heads),
            cut: cut_file(&draft.cut),
            run: run_file(&draft.run),
            supply: supply_file(&draft.supply),
            title_block: title_block_file(&draft.title_block),
            set_aside: (draft.set_aside.as_deref()).map(|aside| Box::new(Self::from(aside))),
        }
    }
}

impl ProjectFile {
    /// The draft that this file keeps.
    #[must_use]
    pub fn to_draft(&self) -> ProjectDraft {
        ProjectDraft {
            name: self.name.clone(),
            barrels: self.barrels.iter().map(barrel_draft).collect(),
            slats: self.slats.iter().map(slat_draft).collect(),
            species: self.species.iter().map(species_draft).collect(),
            conditions: conditions_draft(&self.conditions),
            cutter_sets: self.cutter_sets.iter().map(cutter_set_draft).collect(),
            rules: rules_draft(&self.rules),
            accuracies: self.accuracies.iter().map(accuracy_draft).collect(),
            layout: layout_draft(&self.layout),
            search: search_draft(&self.search),
            orders: self.orders.iter().map(order_draft).collect(),
            saw_shop: saw_shop_draft(&self.saw_shop),
            heads: heads_draft(&self.heads),
            cut: cut_draft(&self.cut),
            run: run_draft(&self.run),
            supply: supply_draft(&self.supply),
            title_block: title_block_draft(&self.title_block),
            set_aside: (self.set_aside.as_deref()).map(|aside| Arc::new(aside.to_draft())),
        }
    }
}

pub(super) fn barrel_file(Entry { id, draft }: &Entry<BarrelDraft>) -> BarrelFile {
    BarrelFile {
        id: id.0,
        name: draft.name.clone(),
        shape: draft.shape.into(),
        size_mm: (&draft.size).into(),
        sides: (&draft.sides).into(),
        height_mm: (&draft.height).into(),
        face_radius_mm: (&draft.face_radius).into(),
        corner_radius_mm: (&draft.corner_radius).into(),
        path: draft.path.clone(),
        axis_across_mm: (&draft.axis_across).into(),
        axis_up_mm: (&draft.axis_up).into(),
        coat_mm: (&draft.coat).into(),
        length_mm: (&draft.length).into(),
        lead_diameter_mm: (&draft.lead_diameter).into(),
        finish: finish_file(&draft.finish),
    }
}

pub(super) fn barrel_draft(file: &BarrelFile) -> Entry<BarrelDraft> {
    Entry {
        id: Id(file.id),
        draft: BarrelDraft {
            name: file.name.clone(),
            shape: file.shape.into(),
            size: (&file.size_mm).into(),
            sides: (&file.sides).into(),
            height: (&file.height_mm).into(),
            face_radius: (&file.face_radius_mm).into(),
            corner_radius: (&file.corner_radius_mm).into(),
            path: file.path.clone(),
            axis_across: (&file.axis_across_mm).into(),
            axis_up: (&file.axis_up_mm).into(),
            coat: (&file.coat_mm).into(),
            length: (&file.length_mm).into(),
            lead_diameter: (&file.lead_diameter_mm).into(),
            finish: finish_draft(&file.finish),
        },
    }
}

pub(super) fn slat_file(Entry { id, draft }: &Entry<SlatDraft>) -> SlatFile {
    SlatFile {
        id: id.0,
        name: draft.name.clone(),
        length_mm: (&draft.length).into(),
        width_mm: (&draft.width).into(),
        thickness_mm: (&draft.thickness).into(),
        width_tolerance_mm: (&draft.width_tolerance).into(),
        thickness_tolerance_mm: (&draft.thickness_tolerance).into(),
        species: draft.species.map(|id| id.0),
        moisture_percent: (&draft.moisture).into(),
        sawing: draft.sawing.into(),
        pack_slats: (&draft.pack_slats).into(),
        pack_price: (&draft.pack_price).into(),
        on_hand_slats: (&draft.on_hand).into(),
        pack_limit: (&draft.pack_limit).into(),
    }
}

fn slat_draft(file: &SlatFile) -> Entry<SlatDraft> {
    Entry {
        id: Id(file.id),
        draft: SlatDraft {
            name: file.name.clone(),
            length: (&file.length_mm).into(),
            width: (&file.width_mm).into(),
            thickness: (&file.thickness_mm).into(),
            width_tolerance: (&file.width_tolerance_mm).into(),
            thickness_tolerance: (&file.thickness_tolerance_mm).into(),
            species: file.species.map(Id),
            moisture: (&file.moisture_percent).into(),
            sawing: file.sawing.into(),
            pack_slats: (&file.pack_slats).into(),
            pack_price: (&file.pack_price).into(),
            on_hand: (&file.on_hand_slats).into(),
            pack_limit: (&file.pack_limit).into(),
        },
    }
}

fn species_file(Entry { id, draft }: &Entry<SpeciesDraft>) -> SpeciesFile {
    SpeciesFile {
        id: id.0,
        name: draft.name.clone(),
        radial_percent: (&draft.radial).into(),
        tangential_percent: (&draft.tangential).into(),
        fibre_saturation_percent: (&draft.fibre_saturation).into(),
    }
}

fn species_draft(file: &SpeciesFile) -> Entry<SpeciesDraft> {
    Entry {
        id: Id(file.id),
        draft: SpeciesDraft {
            name: file.name.clone(),
            radial: (&file.radial_percent).into(),
            tangential: (&file.tangential_percent).into(),
            fibre_saturation: (&file.fibre_saturation_percent).into(),
        },
    }
}

pub(super) fn conditions_file(draft: &ConditionsDraft) -> ConditionsFile {
    ConditionsFile {
        source: draft.source.into(),
        moisture_percent: (&draft.moisture).into(),
        temperature_celsius: (&draft.temperature).into(),
        humidity_percent: (&draft.humidity).into(),
    }
}

fn conditions_draft(file: &ConditionsFile) -> ConditionsDraft {
    ConditionsDraft {
        source: file.source.into(),
        moisture: (&file.moisture_percent).into(),
        temperature: (&file.temperature_celsius).into(),
        humidity: (&file.humidity_percent).into(),
    }
}

fn cutter_set_file(Entry { id, draft }: &Entry<CutterSetDraft>) -> CutterSetFile {
    CutterSetFile {
        id: id.0,
        name: draft.name.clone(),
        pitch_mm: (&draft.pitch).into(),
        most: (&draft.most).into(),
        barrel: draft.barrel.map(|id| id.0),
        price: (&draft.price).into(),
    }
}

fn cutter_set_draft(file: &CutterSetFile) -> Entry<CutterSetDraft> {
    Entry {
        id: Id(file.id),
        draft: CutterSetDraft {
            name: file.name.clone(),
            pitch: (&file.pitch_mm).into(),
            most: (&file.most).into(),
            barrel: file.barrel.map(Id),
            price: (&file.price).into(),
        },
    }
}

pub(super) fn rules_file(draft: &RulesDraft) -> RulesFile {
    RulesFile {
        spacing: draft.spacing.into(),
        pitch_mm: (&draft.pitch).into(),
        cutter_set: draft.cutter_set.map(|id| id.0),
        most: (&draft.most).into(),
        clearance_mm: (&draft.clearance).into(),
        axis_height_mm: (&draft.axis_height).into(),
        land_mm: (&draft.land).into(),
        edge_mm: (&draft.edge).into(),
        planing_mm: (&draft.planing).into(),
        floor_mm: (&draft.floor).into(),
        wall_mm: (&draft.wall).into(),
        eccentricity_mm: (&draft.eccentricity).into(),
        bond_mm: (&draft.bond).into(),
        relief_degrees: (&draft.relief).into(),
        end_trim_mm: (&draft.end_trim).into(),
        saw_kerf_mm: (&draft.saw_kerf).into(),
        slat_rejects_percent: (&draft.slat_rejects).into(),
        pencil_rejects_percent: (&draft.pencil_rejects).into(),
    }
}

fn rules_draft(file: &RulesFile) -> RulesDraft {
    RulesDraft {
        spacing: file.spacing.into(),
        pitch: (&file.pitch_mm).into(),
        cutter_set: file.cutter_set.map(Id),
        most: (&file.most).into(),
        clearance: (&file.clearance_mm).into(),
        axis_height: (&file.axis_height_mm).into(),
        land: (&file.land_mm).into(),
        edge: (&file.edge_mm).into(),
        planing: (&file.planing_mm).into(),
        floor: (&file.floor_mm).into(),
        wall: (&file.wall_mm).into(),
        eccentricity: (&file.eccentricity_mm).into(),
        bond: (&file.bond_mm).into(),
        relief: (&file.relief_degrees).into(),
        end_trim: (&file.end_trim_mm).into(),
        saw_kerf: (&file.saw_kerf_mm).into(),
        slat_rejects: (&file.slat_rejects_percent).into(),
        pencil_rejects: (&file.pencil_rejects_percent).into(),
    }
}

pub(super) fn accuracy_file(Entry { id, draft }: &Entry<AccuracyDraft>) -> AccuracyFile {
    let error = |term| {
        let ErrorDraft { size, reading } = draft.error(term);
        ErrorFile {
            size_mm: size.into(),
            reading: (*reading).into(),
        }
    };
    AccuracyFile {
        id: id.0,
        name: draft.name.clone(),
        groove_position: error(Term::GroovePosition),
        shaping_position: error(Term::ShapingPosition),
        lead_diameter: error(Term::LeadDiameter),
        groove_head: error(Term::GrooveHead),
        groove_depth: error(Term::GrooveDepth),
        slat_width: error(Term::SlatWidth),
        bottom_thickness: error(Term::BottomThickness),
        glue_shift: error(Term::GlueShift),
        shaping_across: error(Term::ShapingAcross),
        shaping_up: error(Term::ShapingUp),
        sigmas: (&draft.sigmas).into(),
        width_offset_mm: (&draft.width_offset).into(),
        thickness_offset_mm: (&draft.thickness_offset).into(),
    }
}

fn accuracy_draft(file: &AccuracyFile) -> Entry<AccuracyDraft> {
    let error = |error: &ErrorFile| ErrorDraft {
        size: (&error.size_mm).into(),
        reading: error.reading.into(),
    };
    Entry {
        id: Id(file.id),
        draft: AccuracyDraft {
            name: file.name.clone(),
            groove_position: error(&file.groove_position),
            shaping_position: error(&file.shaping_position),
            lead_diameter: error(&file.lead_diameter),
            groove_head: error(&file.groove_head),
            groove_depth: error(&file.groove_depth),
            slat_width: error(&file.slat_width),
            bottom_thickness: error(&file.bottom_thickness),
            glue_shift: error(&file.glue_shift),
            shaping_across: error(&file.shaping_across),
            shaping_up: error(&file.shaping_up),
            sigmas: (&file.sigmas).into(),
            width_offset: (&file.width_offset_mm).into(),
            thickness_offset: (&file.thickness_offset_mm).into(),
        },
    }
}

fn layout_file(draft: &LayoutDraft) -> LayoutFile {
    LayoutFile {
        barrel: draft.barrel.0,
        top: draft.top.0,
        bottom: draft.bottom.0,
        way: draft.way.into(),
        turn_degrees: (&draft.turn).into(),
        accuracy: draft.accuracy.0,
    }
}

fn layout_draft(file: &LayoutFile) -> LayoutDraft {
    LayoutDraft {
        barrel: Id(file.barrel),
        top: Id(file.top),
        bottom: Id(file.bottom),
        way: file.way.into(),
        turn: (&file.turn_degrees).into(),
        accuracy: Id(file.accuracy),
    }
}

pub(super) fn search_file(draft: &SearchDraft) -> SearchFile {
    SearchFile {
        turns: draft.turns.into(),
        axis: draft.axis.into(),
        pairs: draft.pairs.into(),
        new_set_price: (&draft.new_set_price).into(),
        year_gross: (&draft.year_gross).into(),
    }
}

fn search_draft(file: &SearchFile) -> SearchDraft {
    SearchDraft {
        turns: file.turns.into(),
        axis: file.axis.into(),
        pairs: file.pairs.into(),
        new_set_price: (&file.new_set_price).into(),
        year_gross: (&file.year_gross).into(),
    }
}

pub(super) fn order_file(draft: &OrderDraft) -> OrderFile {
    OrderFile {
        barrel: draft.barrel.0,
        gross: (&draft.gross).into(),
        due_period: (&draft.due).into(),
        on_hand_pencils: (&draft.on_hand).into(),
    }
}

fn order_draft(file: &OrderFile) -> OrderDraft {
    OrderDraft {
        barrel: Id(file.barrel),
        gross: (&file.gross).into(),
        due: (&file.due_period).into(),
        on_hand: (&file.on_hand_pencils).into(),
    }
}

pub(super) fn saw_shop_file(draft: &SawShopDraft) -> SawShopFile {
    SawShopFile {
        planks: draft.planks.iter().map(plank_file).collect(),
        blanks: draft.blanks.iter().map(blank_file).collect(),
        crosscut_kerf_mm: (&draft.crosscut_kerf).into(),
        rip_kerf_mm: (&draft.rip_kerf).into(),
        moisture_percent: (&draft.moisture).into(),
        shortest_offcut_mm: (&draft.shortest_offcut).into(),
        offcut_price_per_metre: (&draft.offcut_price).into(),
        aim: draft.aim.into(),
    }
}

fn saw_shop_draft(file: &SawShopFile) -> SawShopDraft {
    SawShopDraft {
        planks: file.planks.iter().map(plank_draft).collect(),
        blanks: file.blanks.iter().map(blank_draft).collect(),
        crosscut_kerf: (&file.crosscut_kerf_mm).into(),
        rip_kerf: (&file.rip_kerf_mm).into(),
        moisture: (&file.moisture_percent).into(),
        shortest_offcut: (&file.shortest_offcut_mm).into(),
        offcut_price: (&file.offcut_price_per_metre).into(),
        aim: file.aim.into(),
    }
}

fn plank_file(Entry { id, draft }: &Entry<PlankDraft>) -> PlankFile {
    PlankFile {
        id: id.0,
        name: draft.name.clone(),
        length_mm: (&draft.length).into(),
        width_mm: (&draft.width).into(),
        thickness_mm: (&draft.thickness).into(),
        price: (&draft.price).into(),
        on_hand: (&draft.on_hand).into(),
        end_trim_mm: (&draft.end_trim).into(),
        edge_trim_mm: (&draft.edge_trim).into(),
    }
}

fn plank_draft(file: &PlankFile) -> Entry<PlankDraft> {
    Entry {
        id: Id(file.id),
        draft: PlankDraft {
            name: file.name.clone(),
            length: (&file.length_mm).into(),
            width: (&file.width_mm).into(),
            thickness: (&file.thickness_mm).into(),
            price: (&file.price).into(),
            on_hand: (&file.on_hand).into(),
            end_trim: (&file.end_trim_mm).into(),
            edge_trim: (&file.edge_trim_mm).into(),
        },
    }
}

fn blank_file(Entry { id, draft }: &Entry<BlankDraft>) -> BlankFile {
    BlankFile {
        id: id.0,
        name: draft.name.clone(),
        slat: draft.slat.map(|id| id.0),
        length_mm: (&draft.length).into(),
        width_mm: (&draft.width).into(),
        thickness_mm: (&draft.thickness).into(),
        length_dressing_mm: (&draft.length_dressing).into(),
        width_dressing_mm: (&draft.width_dressing).into(),
        thickness_dressing_mm: (&draft.thickness_dressing).into(),
        wanted: (&draft.demand).into(),
        over_worth: (&draft.over_worth).into(),
        most_over: (&draft.most_over).into(),
    }
}

fn blank_draft(file: &BlankFile) -> Entry<BlankDraft> {
    Entry {
        id: Id(file.id),
        draft: BlankDraft {
            name: file.name.clone(),
            slat: file.slat.map(Id),
            length: (&file.length_mm).into(),
            width: (&file.width_mm).into(),
            thickness: (&file.thickness_mm).into(),
            length_dressing: (&file.length_dressing_mm).into(),
            width_dressing: (&file.width_dressing_mm).into(),
            thickness_dressing: (&file.thickness_dressing_mm).into(),
            demand: (&file.wanted).into(),
            over_worth: (&file.over_worth).into(),
            most_over: (&file.most_over).into(),
        },
    }
}
