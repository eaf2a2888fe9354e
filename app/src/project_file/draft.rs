//! From the draft on the page to the file, and back.

use solver::{
    BarrelDraft, Entry, Id, LayoutDraft, OrderDraft, ProjectDraft, RulesDraft, SlatDraft,
};

use super::{BarrelFile, LayoutFile, OrderFile, ProjectFile, RulesFile, SlatFile};

impl From<&ProjectDraft> for ProjectFile {
    fn from(draft: &ProjectDraft) -> Self {
        Self {
            name: draft.name.clone(),
            barrels: draft.barrels.iter().map(barrel_file).collect(),
            slats: draft.slats.iter().map(slat_file).collect(),
            rules: rules_file(&draft.rules),
            layout: layout_file(&draft.layout),
            orders: draft.orders.iter().map(order_file).collect(),
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
            rules: rules_draft(&self.rules),
            layout: layout_draft(&self.layout),
            orders: self.orders.iter().map(order_draft).collect(),
        }
    }
}

fn barrel_file(Entry { id, draft }: &Entry<BarrelDraft>) -> BarrelFile {
    BarrelFile {
        id: id.0,
        name: draft.name.clone(),
        shape: draft.shape.into(),
        size_mm: (&draft.size).into(),
        corner_radius_mm: (&draft.corner_radius).into(),
        coat_mm: (&draft.coat).into(),
        length_mm: (&draft.length).into(),
        lead_diameter_mm: (&draft.lead_diameter).into(),
    }
}

fn barrel_draft(file: &BarrelFile) -> Entry<BarrelDraft> {
    Entry {
        id: Id(file.id),
        draft: BarrelDraft {
            name: file.name.clone(),
            shape: file.shape.into(),
            size: (&file.size_mm).into(),
            corner_radius: (&file.corner_radius_mm).into(),
            coat: (&file.coat_mm).into(),
            length: (&file.length_mm).into(),
            lead_diameter: (&file.lead_diameter_mm).into(),
        },
    }
}

fn slat_file(Entry { id, draft }: &Entry<SlatDraft>) -> SlatFile {
    SlatFile {
        id: id.0,
        name: draft.name.clone(),
        length_mm: (&draft.length).into(),
        width_mm: (&draft.width).into(),
        thickness_mm: (&draft.thickness).into(),
        width_tolerance_mm: (&draft.width_tolerance).into(),
        thickness_tolerance_mm: (&draft.thickness_tolerance).into(),
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
            pack_slats: (&file.pack_slats).into(),
            pack_price: (&file.pack_price).into(),
            on_hand: (&file.on_hand_slats).into(),
            pack_limit: (&file.pack_limit).into(),
        },
    }
}

fn rules_file(draft: &RulesDraft) -> RulesFile {
    RulesFile {
        spacing: draft.spacing.into(),
        pitch_mm: (&draft.pitch).into(),
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
    }
}

fn rules_draft(file: &RulesFile) -> RulesDraft {
    RulesDraft {
        spacing: file.spacing.into(),
        pitch: (&file.pitch_mm).into(),
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
    }
}

fn layout_file(draft: &LayoutDraft) -> LayoutFile {
    LayoutFile {
        barrel: draft.barrel.0,
        top: draft.top.0,
        bottom: draft.bottom.0,
        way: draft.way.into(),
        turn_degrees: (&draft.turn).into(),
    }
}

fn layout_draft(file: &LayoutFile) -> LayoutDraft {
    LayoutDraft {
        barrel: Id(file.barrel),
        top: Id(file.top),
        bottom: Id(file.bottom),
        way: file.way.into(),
        turn: (&file.turn_degrees).into(),
    }
}

fn order_file(draft: &OrderDraft) -> OrderFile {
    OrderFile {
        barrel: draft.barrel.0,
        gross: (&draft.gross).into(),
    }
}

fn order_draft(file: &OrderFile) -> OrderDraft {
    OrderDraft {
        barrel: Id(file.barrel),
        gross: (&file.gross).into(),
    }
}
