//! What part of the work a formula belongs to.

/// What part of the work a formula belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// Air through the furnace and the ducts.
    Air,
    /// Gas to the burner.
    Gas,
    /// The flame and what it leaves.
    Combustion,
    /// Air to the flame: rooms and openings.
    CombustionAir,
    /// Flue gas to the outside.
    Venting,
    /// Electricity.
    Electrical,
    /// Water out of the flue gas.
    Condensate,
}

impl Group {
    /// Every group, in the order of a list.
    pub const ALL: [Self; 7] = [
        Self::Air,
        Self::Gas,
        Self::Combustion,
        Self::CombustionAir,
        Self::Venting,
        Self::Electrical,
        Self::Condensate,
    ];

    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::Air => "air",
            Self::Gas => "gas",
            Self::Combustion => "combustion",
            Self::CombustionAir => "combustion air",
            Self::Venting => "venting",
            Self::Electrical => "electrical",
            Self::Condensate => "condensate",
        }
    }

    /// What can hurt in this work, and whose word governs; `None` where nothing does.
    pub fn caution(self) -> Option<&'static str> {
        match self {
            Self::Air | Self::Condensate => None,
            Self::Gas => Some(
                "Gas burns and explodes. Gas work is for those licensed for it; the rating plate, the maker's instructions \
                 and local codes govern, whatever is computed here.",
            ),
            Self::Combustion => Some(
                "Flue gas can kill. Watch a CO alarm while you test; the maker's instructions and local codes govern, \
                 whatever is computed here.",
            ),
            Self::CombustionAir | Self::Venting => Some(
                "A fire short of air, or a vent that does not draw, fills a house with carbon monoxide. The maker's \
                 instructions and local codes govern, whatever is computed here.",
            ),
            Self::Electrical => Some(
                "Line voltage and charged capacitors can kill. Live work is for those qualified for it; the maker's \
                 instructions and local codes govern, whatever is computed here.",
            ),
        }
    }
}
