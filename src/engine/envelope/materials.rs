//! Conductivity, density and specific heat of the shell's materials, dry, at about 24 °C.
//!
//! Sources by material: ASHRAE Handbook of Fundamentals 2005 ch. 25 table 4 and ch. 30; CIBSE Guide A tables 3.36, 3.37;
//! EN ISO 10456. Values marked *from memory* were not checked against the printed table.

/// A homogeneous material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Thermal conductivity, W/(m K).
    pub conductivity_w_m_k: f64,
    /// Density, kg/m³.
    pub density_kg_m3: f64,
    /// Specific heat, J/(kg K).
    pub specific_heat_j_kg_k: f64,
}

impl Material {
    /// A material of the given conductivity (W/(m K)), density (kg/m³) and specific heat (J/(kg K)), all above zero.
    #[must_use]
    pub const fn new(
        conductivity_w_m_k: f64,
        density_kg_m3: f64,
        specific_heat_j_kg_k: f64,
    ) -> Self {
        Self {
            conductivity_w_m_k,
            density_kg_m3,
            specific_heat_j_kg_k,
        }
    }

    /// The same material with another conductivity, W/(m K).
    #[must_use]
    pub const fn with_conductivity(self, conductivity_w_m_k: f64) -> Self {
        Self {
            conductivity_w_m_k,
            ..self
        }
    }
}

/// Mild steel sheet: CIBSE Guide A table 3.36 (45, 7800, 480); density 7850 as in EN ISO 10456.
pub const STEEL: Material = Material::new(45.0, 7_850.0, 480.0);

/// Plywood: ASHRAE Fundamentals 2005 ch. 25 (0.12, 540, 1210).
pub const PLYWOOD: Material = Material::new(0.12, 540.0, 1_210.0);

/// Soda-lime glass: CIBSE Guide A table 3.36 (1.05, 2500, 840).
pub const GLASS: Material = Material::new(1.05, 2_500.0, 840.0);

/// Sheep wool batt, from memory (EN ISO 10456 type declared values 0.035 to 0.045).
pub const SHEEP_WOOL: Material = Material::new(0.038, 20.0, 1_700.0);

/// Mineral wool, bonded: ASHRAE Fundamentals 2005 ch. 25 (0.036); density of a light batt.
pub const MINERAL_WOOL: Material = Material::new(0.036, 32.0, 960.0);

/// Closed-cell elastomeric foam, from memory (declared 0.033 to 0.038).
pub const ELASTOMERIC_FOAM: Material = Material::new(0.036, 55.0, 1_500.0);

/// Extruded polystyrene: ASHRAE Fundamentals 2005 ch. 25 (0.029, 29, 1210).
pub const EXTRUDED_POLYSTYRENE: Material = Material::new(0.029, 29.0, 1_210.0);

/// Polyisocyanurate or polyurethane board, unfaced: ASHRAE Fundamentals 2005 ch. 25 (0.0245, 24, 1590).
pub const POLYURETHANE_BOARD: Material = Material::new(0.0245, 24.0, 1_590.0);

/// Closed-cell sprayed polyurethane, aged, from memory (0.023 to 0.028).
pub const SPRAY_FOAM: Material = Material::new(0.025, 32.0, 1_470.0);

/// Expanded cork board, from memory (EN 13170: 0.040).
pub const CORK: Material = Material::new(0.040, 120.0, 1_560.0);

/// Reflective bubble foil laid without an air gap: its core alone, 0.18 to 0.23 m² K/W at 8 to 10 mm (laboratory values).
pub const BUBBLE_FOIL: Material = Material::new(0.045, 30.0, 1_300.0);

/// What a stated conductivity is taken to weigh: a light insulation, common practice, no source.
pub const LIGHT_INSULATION: Material = Material::new(0.035, 30.0, 1_400.0);

/// Thermal resistance of an unventilated vertical or roof cavity, m² K/W: ASHRAE Fundamentals 2005 ch. 30, wall air space.
pub const CAVITY_RESISTANCE_M2_K_W: f64 = 0.15;
