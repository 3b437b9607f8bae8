//! Solar panels: from irradiance in their plane to direct-current power at the bank.
//!
//! The power follows the irradiance and falls with the temperature of the cells. Reflection at low
//! sun, spectrum and the loss of efficiency in weak light are left out. Shade is taken as a share of
//! the irradiance; on cells in series it costs more than its share, which the stated shading loss
//! has to cover.
//!
//! Sources: Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641 (2014) for power and losses; Faiman,
//! Prog. Photovolt. 16 (2008) 307, and King, Boyson & Kratochvil, SAND2004-3535 (2004) for the
//! temperature of the cells.

use crate::validity::{OutOfRange, require_within};

/// Irradiance at the rating condition, W/m².
const IRRADIANCE_RATED_W_M2: f64 = 1_000.0;

/// Cell temperature at the rating condition, °C.
const CELL_TEMPERATURE_RATED_C: f64 = 25.0;

/// Constant and wind parts of Faiman's heat loss, W/(m² K) and W s/(m³ K) (Faiman 2008).
const FAIMAN_LOSS: (f64, f64) = (25.0, 6.84);

/// Exponents a, b for a glass and polymer module with an insulated back (SAND2004-3535, table 1).
const INSULATED_BACK: (f64, f64) = (-2.81, -0.0455);

/// Exponents a, b for a glass and glass module mounted close to a roof (SAND2004-3535, table 1).
const CLOSE_MOUNT: (f64, f64) = (-2.98, -0.0471);

/// Cell above back of module at the rating irradiance with a close mount, K (SAND2004-3535, table 1).
const CLOSE_MOUNT_CELL_RISE_K: f64 = 1.0;

/// How panels are mounted, which settles how hot their cells run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum PanelMounting {
    /// Raised, with air on both faces (Faiman).
    Ventilated,
    /// Close above the roof, with a narrow gap.
    CloseToRoof,
    /// Glued to the roof, with no air behind.
    GluedToRoof,
}

/// Losses as shares of the power, each 0…1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PanelLosses {
    /// Dirt on the glass.
    pub soiling: f64,
    /// Shade that is not reckoned otherwise.
    pub shading: f64,
    /// Snow.
    pub snow: f64,
    /// Modules that differ.
    pub mismatch: f64,
    /// Cables.
    pub wiring: f64,
    /// Connectors.
    pub connections: f64,
    /// Loss in the first hours of light.
    pub light_induced_degradation: f64,
    /// Modules below their nameplate.
    pub nameplate: f64,
    /// Ageing.
    pub age: f64,
    /// Time out of order.
    pub availability: f64,
}

impl PanelLosses {
    /// Defaults for a fixed installation (Dobos 2014, loss table).
    pub const FIXED_INSTALLATION: Self = Self {
        soiling: 0.02,
        shading: 0.03,
        snow: 0.0,
        mismatch: 0.02,
        wiring: 0.02,
        connections: 0.005,
        light_induced_degradation: 0.015,
        nameplate: 0.01,
        age: 0.0,
        availability: 0.03,
    };

    /// The same on a vehicle: shade is set by hand, and a panel out of order is seen and mended.
    pub const VEHICLE: Self = Self {
        shading: 0.0,
        availability: 0.0,
        ..Self::FIXED_INSTALLATION
    };

    /// All losses together, 0…1: 1 − Π (1 − Lᵢ) (Dobos 2014, loss equation).
    #[must_use]
    pub fn combined(&self) -> f64 {
        let kept: f64 = self.shares().iter().map(|loss| 1.0 - loss).product();
        1.0 - kept
    }

    fn shares(&self) -> [f64; 10] {
        [
            self.soiling,
            self.shading,
            self.snow,
            self.mismatch,
            self.wiring,
            self.connections,
            self.light_induced_degradation,
            self.nameplate,
            self.age,
            self.availability,
        ]
    }
}

/// What a group of panels is built from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PanelInput {
    /// Power at 1 000 W/m² and 25 °C cell temperature, W.
    pub rated_power_w: f64,
    /// Change of power with cell temperature, 1/K; −0.0040…−0.0030 is usual (from memory).
    pub temperature_coefficient_per_k: f64,
    /// How the panels are mounted.
    pub mounting: PanelMounting,
    /// Losses before the controller.
    pub losses: PanelLosses,
    /// Power at the bank over power into the charge controller, 0.5…1.
    pub controller_efficiency: f64,
}

/// A group of panels in one plane, with its charge controller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Panels {
    input: PanelInput,
    kept_fraction: f64,
}

impl Panels {
    /// Builds a group of panels.
    ///
    /// # Errors
    /// [`OutOfRange`] if the rated power is not within 0…20 000 W, the temperature coefficient not
    /// within −0.01…0 1/K, the efficiency not within 0.5…1 or a loss not within 0…1.
    pub fn new(input: PanelInput) -> Result<Self, OutOfRange> {
        require_within("rated_power_w", input.rated_power_w, 0.0, 20_000.0)?;
        require_within(
            "temperature_coefficient_per_k",
            input.temperature_coefficient_per_k,
            -0.01,
            0.0,
        )?;
        require_within(
            "controller_efficiency",
            input.controller_efficiency,
            0.5,
            1.0,
        )?;
        for loss in input.losses.shares() {
            require_within("losses", loss, 0.0, 1.0)?;
        }
        let kept_fraction = (1.0 - input.losses.combined()) * input.controller_efficiency;
        Ok(Self {
            input,
            kept_fraction,
        })
    }

    /// Power available at the bank, W.
    ///
    /// * `irradiance_w_m2` — sun in the plane of the panels, W/m², at least 0
    /// * `shaded_fraction` — share of that sun taken away by what stands on the roof, 0…1
    /// * `ambient_c` — outdoor dry bulb, °C
    /// * `wind_m_s` — wind over the roof, m/s, at least 0
    #[must_use]
    pub fn power_w(
        &self,
        irradiance_w_m2: f64,
        shaded_fraction: f64,
        ambient_c: f64,
        wind_m_s: f64,
    ) -> f64 {
        let lit_w_m2 = irradiance_w_m2 * (1.0 - shaded_fraction);
        let cell_c = cell_temperature_c(self.input.mounting, lit_w_m2, ambient_c, wind_m_s);
        self.kept_fraction * self.module_power_w(lit_w_m2, cell_c)
    }

    /// Power of the modules before losses and controller, W: P = P₀ G/1000 (1 + γ (T − 25 °C)).
    ///
    /// P₀ rated power, G irradiance, γ temperature coefficient, T cell temperature.
    ///
    /// * `irradiance_w_m2` — G, W/m², at least 0
    /// * `cell_temperature_c` — T, °C, −40…120
    ///
    /// Source: Dobos (2014), module model.
    #[must_use]
    pub fn module_power_w(&self, irradiance_w_m2: f64, cell_temperature_c: f64) -> f64 {
        let warmer_k = cell_temperature_c - CELL_TEMPERATURE_RATED_C;
        let temperature_factor = 1.0 + self.input.temperature_coefficient_per_k * warmer_k;
        self.input.rated_power_w * irradiance_w_m2 / IRRADIANCE_RATED_W_M2 * temperature_factor
    }
}

/// Temperature of the cells, °C.
///
/// Ventilated: T = T_a + G / (u₀ + u₁ v) (Faiman 2008). Otherwise the back of the module is at
/// T_m = T_a + G exp(a + b v) and the cells at T_m + ΔT G/1000 (SAND2004-3535, eq. 11 and 12).
///
/// * `irradiance_w_m2` — G in the plane of the panels, W/m², at least 0
/// * `ambient_c` — T_a outdoor dry bulb, °C
/// * `wind_m_s` — v, m/s, at least 0
#[must_use]
pub fn cell_temperature_c(
    mounting: PanelMounting,
    irradiance_w_m2: f64,
    ambient_c: f64,
    wind_m_s: f64,
) -> f64 {
    let module_rise_k = |(a, b): (f64, f64)| irradiance_w_m2 * libm::exp(a + b * wind_m_s);
    let rise_k = match mounting {
        PanelMounting::Ventilated => irradiance_w_m2 / (FAIMAN_LOSS.0 + FAIMAN_LOSS.1 * wind_m_s),
        PanelMounting::CloseToRoof => {
            let cell_rise_k = CLOSE_MOUNT_CELL_RISE_K * irradiance_w_m2 / IRRADIANCE_RATED_W_M2;
            module_rise_k(CLOSE_MOUNT) + cell_rise_k
        }
        PanelMounting::GluedToRoof => module_rise_k(INSULATED_BACK),
    };
    ambient_c + rise_k
}

#[cfg(test)]
mod tests {
    use super::*;

    fn panels() -> Panels {
        Panels::new(PanelInput {
            rated_power_w: 400.0,
            temperature_coefficient_per_k: -0.0035,
            mounting: PanelMounting::Ventilated,
            losses: PanelLosses::VEHICLE,
            controller_efficiency: 0.97,
        })
        .unwrap()
    }

    #[test]
    fn power_falls_with_cell_temperature() {
        // By hand: 400 · 0.8 · (1 − 0.0035 · 20) = 297.6 W.
        assert!((panels().module_power_w(800.0, 45.0) - 297.6).abs() < 1e-9);
    }

    #[test]
    fn losses_multiply() {
        let by_hand = 1.0 - 0.98 * 0.98 * 0.98 * 0.995 * 0.985 * 0.99;
        assert!((PanelLosses::VEHICLE.combined() - by_hand).abs() < 1e-12);
    }

    #[test]
    fn full_shade_gives_nothing_and_night_is_ambient() {
        assert_eq!(panels().power_w(900.0, 1.0, 30.0, 1.0), 0.0);
        for mounting in [
            PanelMounting::Ventilated,
            PanelMounting::CloseToRoof,
            PanelMounting::GluedToRoof,
        ] {
            assert_eq!(cell_temperature_c(mounting, 0.0, 18.0, 2.0), 18.0);
        }
    }
}
