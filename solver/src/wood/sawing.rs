//! How a slat lies in the log.

/// How the growth rings run in a slat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sawing {
    /// The rings run along the width: the width is tangential, the thickness radial.
    Flat,
    /// The rings run along the thickness: the width is radial, the thickness tangential.
    Quarter,
}

impl Sawing {
    /// Every way.
    pub const ALL: [Self; 2] = [Self::Flat, Self::Quarter];

    /// The words for it.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Flat => "Flat-sawn",
            Self::Quarter => "Quarter-sawn",
        }
    }
}
