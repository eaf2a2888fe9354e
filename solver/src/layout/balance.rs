//! Where the wood of a sandwich goes; the parts add up to the whole.

use super::{Layout, Setup};
use crate::quantity::{Area, Volume};

/// A class of wood in the balance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WoodClass {
    /// Wood of the finished pencils.
    Pencils,
    /// Chips of the grooves.
    Grooves,
    /// Chips inside the box of a pencil, outside its outline.
    Corners,
    /// Chips between the boxes of neighbours.
    Parting,
    /// Strips outside the outer pencils.
    Edges,
    /// Planed off the outer faces.
    Faces,
    /// Chips of the saw between pencils of one slat length.
    Kerf,
    /// Slat length that is in no pencil and no kerf.
    Ends,
    /// Slats thrown out for each sandwich that is glued.
    RejectedSlats,
    /// Wood of the finished pencils that are thrown out.
    RejectedPencils,
}

impl WoodClass {
    /// Every class, in the order of the balance.
    pub const ALL: [Self; 10] = [
        Self::Pencils,
        Self::Grooves,
        Self::Corners,
        Self::Parting,
        Self::Edges,
        Self::Faces,
        Self::Kerf,
        Self::Ends,
        Self::RejectedSlats,
        Self::RejectedPencils,
    ];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Pencils => "Pencils",
            Self::Grooves => "Groove chips",
            Self::Corners => "Corner chips",
            Self::Parting => "Parting chips",
            Self::Edges => "Edge strips",
            Self::Faces => "Face planing",
            Self::Kerf => "Saw kerf",
            Self::Ends => "End trim",
            Self::RejectedSlats => "Rejected slats",
            Self::RejectedPencils => "Rejected pencils",
        }
    }
}

/// Where the wood of one sandwich goes, counted on the nominal slat sizes at the groove head.
///
/// The section is split without gap or overlap: the faces over the whole width of each slat
/// outside the height of the pencils; within that height the boxes of the pencils, the
/// parting between them and the edges outside them; within a box the outline, and within
/// the outline the groove. Along the grain the pencils, the kerfs between them and the ends
/// make up the slat.
///
/// Over a run, with a share q of slats and a share r of pencils thrown out, each glued sandwich
/// of wood V stands for V/(1 − q) of wood bought: V·q/(1 − q) of it was thrown out as slats, and
/// of the finished pencils the share r.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WoodBalance {
    sections: [Area; 6],
    volumes: [Volume; 10],
    bought: Volume,
}

impl WoodBalance {
    pub(super) fn new(setup: &Setup<'_>, layout: &Layout) -> Self {
        let Setup {
            barrel,
            top,
            bottom,
            rules,
            ..
        } = *setup;
        let (extents, count) = (layout.extents, f64::from(layout.across()));
        let (outline, groove) = (layout.bare.area(), layout.groove_shape.section());
        let (up, down) = (
            extents.up + rules.axis_height,
            extents.down - rules.axis_height,
        );
        let (top_width, top_thickness) = (top.grooved_width(), top.grooved_thickness());
        let (bottom_width, bottom_thickness) = (bottom.grooved_width(), bottom.grooved_thickness());
        let boxes = extents.width() * count;
        let gaps = layout.parting() * (count - 1.0);
        let edges = (top_width - boxes - gaps) * up + (bottom_width - boxes - gaps) * down;
        let faces = top_width * (top_thickness - up) + bottom_width * (bottom_thickness - down);
        let sections = [
            (outline - groove) * count,
            groove * count,
            (extents.width() * extents.height() - outline) * count,
            gaps * extents.height(),
            edges,
            faces,
        ];
        let (top_section, bottom_section) =
            (top_width * top_thickness, bottom_width * bottom_thickness);
        let glued = top_section * top.length() + bottom_section * bottom.length();
        let lengths = f64::from(layout.lengths);
        let kerfs = rules.saw_kerf * (lengths - 1.0);
        let used = barrel.length() * lengths + kerfs;
        let rejected_slats = glued * (rules.slat_rejects / (1.0 - rules.slat_rejects));
        let mut volumes = [Volume::ZERO; 10];
        for (volume, section) in volumes.iter_mut().zip(sections) {
            *volume = section * barrel.length() * lengths;
        }
        let finished = volumes[WoodClass::Pencils as usize];
        let rejected_pencils = finished * rules.pencil_rejects;
        for (class, volume) in [
            (WoodClass::Pencils, finished - rejected_pencils),
            (WoodClass::Kerf, (top_section + bottom_section) * kerfs),
            (
                WoodClass::Ends,
                top_section * (top.length() - used) + bottom_section * (bottom.length() - used),
            ),
            (WoodClass::RejectedSlats, rejected_slats),
            (WoodClass::RejectedPencils, rejected_pencils),
        ] {
            volumes[class as usize] = volume;
        }
        Self {
            sections,
            volumes,
            bought: glued + rejected_slats,
        }
    }

    /// Section of a class, mm²; kerf, ends and what is thrown out have none. That of the pencils
    /// is that of all of them, good or not.
    #[must_use]
    pub fn section(&self, class: WoodClass) -> Option<Area> {
        self.sections.get(class as usize).copied()
    }

    /// Volume of a class for one sandwich.
    #[must_use]
    pub const fn volume(&self, class: WoodClass) -> Volume {
        self.volumes[class as usize]
    }

    /// Wood bought for one sandwich: that of its two slats, and of those thrown out for them, at
    /// the moisture content of grooving.
    #[must_use]
    pub const fn bought(&self) -> Volume {
        self.bought
    }

    /// Share of a class in the wood bought, 0 to 1.
    #[must_use]
    pub fn share(&self, class: WoodClass) -> f64 {
        self.volume(class) / self.bought
    }

    /// Wood of good pencils over wood bought, 0 to 1.
    #[must_use]
    pub fn yielded(&self) -> f64 {
        self.share(WoodClass::Pencils)
    }
}
