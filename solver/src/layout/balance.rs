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
    /// Slat length that is in no pencil.
    Ends,
}

impl WoodClass {
    /// Every class, in the order of the balance.
    pub const ALL: [Self; 7] = [
        Self::Pencils,
        Self::Grooves,
        Self::Corners,
        Self::Parting,
        Self::Edges,
        Self::Faces,
        Self::Ends,
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
            Self::Ends => "End trim",
        }
    }
}

/// Where the wood of one sandwich goes, counted on the nominal slat sizes, as bought.
///
/// The section is split without gap or overlap: the faces over the whole width of each slat
/// outside the height of the pencils; within that height the boxes of the pencils, the
/// parting between them and the edges outside them; within a box the outline, and within
/// the outline the groove.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WoodBalance {
    sections: [Area; 6],
    volumes: [Volume; 7],
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
        let boxes = extents.width() * count;
        let gaps = layout.parting() * (count - 1.0);
        let edges = (top.width() - boxes - gaps) * up + (bottom.width() - boxes - gaps) * down;
        let faces =
            top.width() * (top.thickness() - up) + bottom.width() * (bottom.thickness() - down);
        let sections = [
            (outline - groove) * count,
            groove * count,
            (extents.width() * extents.height() - outline) * count,
            gaps * extents.height(),
            edges,
            faces,
        ];
        let bought = top.volume() + bottom.volume();
        let length = barrel.length();
        let ends = top.width() * top.thickness() * (top.length() - length)
            + bottom.width() * bottom.thickness() * (bottom.length() - length);
        let mut volumes = [Volume::ZERO; 7];
        for (volume, section) in volumes.iter_mut().zip(sections) {
            *volume = section * length;
        }
        volumes[6] = ends;
        Self {
            sections,
            volumes,
            bought,
        }
    }

    /// Section of a class, mm²; the ends have none.
    #[must_use]
    pub fn section(&self, class: WoodClass) -> Option<Area> {
        self.sections.get(class as usize).copied()
    }

    /// Volume of a class in one sandwich.
    #[must_use]
    pub const fn volume(&self, class: WoodClass) -> Volume {
        self.volumes[class as usize]
    }

    /// Wood of the two slats as bought.
    #[must_use]
    pub const fn bought(&self) -> Volume {
        self.bought
    }

    /// Share of a class in the wood bought, 0 to 1.
    #[must_use]
    pub fn share(&self, class: WoodClass) -> f64 {
        self.volume(class) / self.bought
    }

    /// Finished wood over wood bought, 0 to 1.
    #[must_use]
    pub fn yielded(&self) -> f64 {
        self.share(WoodClass::Pencils)
    }
}
