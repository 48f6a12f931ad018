//! What a material stands, and what it may lie beside.
//!
//! Rows named here are those of `tests/reference/water_and_materials.csv`, which names the source of
//! each.

use super::{Chemical, Material, Metal};

impl Material {
    /// Specific heat, J/kg/K. A figure for a whole implement: the steel shank of a bit is not told
    /// apart.
    #[must_use]
    pub const fn specific_heat(self) -> u32 {
        match self {
            Self::Steel420 => 480, // m-420-cp
            Self::Steel304 => 500, // m-304-cp; m-zro-cp (other handbooks 400 to 450)
            Self::Ceramic => 500,
            Self::Plated | Self::Carbon => 490, // from memory: plain steel is 460 to 490
            Self::Aluminium => 900,             // from memory
            Self::Carbide => 292,               // m-wc-cp, the highest of those that disagree
            Self::Diamond => 480,               // assumption: nearly all of the bit is steel
            Self::Glass => 840,                 // from memory
            Self::Silicone => 1_300,            // m-sil-cp, from memory
            Self::Polypropylene => 1_700,       // m-pp-cp (others 1920)
            Self::Fibre => 1_600,               // m-paper-cp
        }
    }

    /// Which metal lies on its outside; `None` where there is none to corrode.
    #[must_use]
    pub const fn metal(self) -> Option<Metal> {
        match self {
            Self::Steel420 | Self::Steel304 => Some(Metal::Stainless),
            Self::Plated => Some(Metal::Plated),
            Self::Carbon => Some(Metal::Carbon),
            Self::Aluminium => Some(Metal::Aluminium),
            Self::Carbide => Some(Metal::Carbide),
            Self::Diamond => Some(Metal::Diamond),
            Self::Ceramic | Self::Glass | Self::Silicone | Self::Polypropylene | Self::Fibre => {
                None
            }
        }
    }

    /// May the two lie in one pouch? What has no metal lies with anything.
    #[must_use]
    pub fn may_touch(self, other: Self) -> bool {
        match (self.metal(), other.metal()) {
            (Some(one), Some(other)) => one.may_touch(other),
            _ => true,
        }
    }

    /// What must not be put on it, or must be rinsed off at once.
    ///
    /// Stainless steel: rows corr-chem (iodine, chlorides, bleach, strong acid) and corr-ph (high or
    /// low pH). Carbide: row m-wc-co (acid, chloride). Everything else is from memory.
    #[must_use]
    pub const fn harmed_by(self) -> &'static [Chemical] {
        use Chemical::{Acid, Alkali, Hypochlorite, Iodine, MetalChlorides, Peroxide};
        match self {
            Self::Steel420 | Self::Steel304 => {
                &[Hypochlorite, Iodine, MetalChlorides, Acid, Alkali]
            }
            Self::Plated | Self::Carbon => {
                &[Hypochlorite, Iodine, MetalChlorides, Acid, Alkali, Peroxide]
            }
            Self::Aluminium => &[Hypochlorite, Iodine, MetalChlorides, Acid, Alkali],
            Self::Carbide | Self::Diamond => &[Hypochlorite, MetalChlorides, Acid],
            Self::Ceramic => &[],
            Self::Glass => &[Alkali],
            Self::Silicone => &[Acid, Alkali],
            Self::Polypropylene => &[Hypochlorite],
            Self::Fibre => &[Hypochlorite, Acid, Alkali, Peroxide],
        }
    }

    /// Highest temperature that the bare material stands, °C: what is proposed for a new implement,
    /// whose maker may say less. 300 means that no steam or hot air of a salon harms it. (From
    /// memory; polypropylene: row m-pp-cp says it softens before 160.)
    #[must_use]
    pub const fn most_c(self) -> u32 {
        match self {
            Self::Steel420 | Self::Steel304 | Self::Carbon | Self::Carbide | Self::Ceramic => 300,
            Self::Diamond | Self::Plated | Self::Aluminium | Self::Glass | Self::Silicone => 200,
            Self::Polypropylene => 134,
            Self::Fibre => 160,
        }
    }
}

impl Metal {
    /// May the two lie in one pouch? Only the same metal: where different ones touch, both are
    /// damaged (row corr-dissimilar: carbon steel, plated, aluminium and stainless apart). Carbide
    /// and diamond bits apart, and away from other metals: common practice, no source.
    #[must_use]
    pub fn may_touch(self, other: Self) -> bool {
        self == other
    }
}

impl Chemical {
    /// Does it burn? Then rinse and dry fully before steam, the ultrasonic bath or dry heat: what is
    /// left of it can catch fire. (Common practice, no source.)
    #[must_use]
    pub const fn burns(self) -> bool {
        matches!(self, Self::Acetone | Self::Alcohol)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TABLE: &str = include_str!("../../tests/reference/water_and_materials.csv");

    fn row(id: &str) -> &'static str {
        TABLE.lines().find(|line| line.split(',').next() == Some(id)).unwrap()
    }

    /// Rows of the reference table, whose source stands in their last columns.
    #[test]
    fn specific_heats_are_those_of_the_table() {
        for (material, id) in [
            (Material::Steel420, "m-420-cp"),
            (Material::Steel304, "m-304-cp"),
            (Material::Carbide, "m-wc-cp"),
            (Material::Ceramic, "m-zro-cp"),
            (Material::Silicone, "m-sil-cp"),
            (Material::Polypropylene, "m-pp-cp"),
            (Material::Fibre, "m-paper-cp"),
        ] {
            let cells: Vec<&str> = row(id).split(',').collect();
            assert_eq!((cells[3], cells[5]), ("specific heat", "J/kg/K"), "{id}");
            assert_eq!(cells[4], material.specific_heat().to_string(), "{id}");
        }
    }

    /// Words of rows corr-chem, corr-ph and corr-dissimilar.
    #[test]
    fn what_harms_stainless_and_what_lies_apart_is_in_the_table() {
        let words = |id: &str, words: &[&str]| words.iter().all(|word| row(id).contains(word));
        assert!(words("corr-chem", &["hypochlorite", "iodine", "ferric chloride", "aqua regia"]));
        assert!(words("corr-ph", &["high or low pH erodes"]));
        for chemical in [
            Chemical::Hypochlorite,
            Chemical::Iodine,
            Chemical::MetalChlorides,
            Chemical::Acid,
            Chemical::Alkali,
        ] {
            assert!(Material::Steel420.harmed_by().contains(&chemical), "{chemical:?}");
        }
        let apart = [Material::Carbon, Material::Plated, Material::Aluminium, Material::Steel304];
        assert!(words(
            "corr-dissimilar",
            &["carbon steel", "plated", "aluminium", "stainless apart"]
        ));
        for one in apart {
            for other in apart {
                assert_eq!(one.may_touch(other), one == other, "{one:?} {other:?}");
            }
        }
        assert!(Material::Steel420.may_touch(Material::Steel304));
        assert!(!Material::Carbide.may_touch(Material::Diamond));
        assert!(Material::Silicone.may_touch(Material::Carbide));
    }
}
