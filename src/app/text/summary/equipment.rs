//! Cooler, fan, bank, charging, loads and prices in a line each.

use super::{chosen, counted, hours, sentence};
use crate::text::Voice;
use noonday_engine::scenario::{
    CellChemistry, CompressorControl, CoolerSupply, Dimension, FanUse, Load, ScenarioDocument,
};

pub(super) fn cooler(document: &ScenarioDocument, voice: &Voice) -> String {
    let cooler = &document.cooler;
    if !cooler.installed {
        return "None.".to_owned();
    }
    let control = match cooler.control {
        CompressorControl::OnOff => "on or off",
        CompressorControl::TwoLevel => "two levels",
        CompressorControl::Variable => "variable",
    };
    let supply = match cooler.supply {
        CoolerSupply::DirectCurrent => "direct current",
        CoolerSupply::MainsThroughInverter => "through an inverter",
    };
    format!(
        "{} for {}, {control}, {supply}; set to {}, may run {}.",
        voice
            .units
            .quantity(Dimension::HeatFlow, cooler.capacity_rated_w),
        voice.units.watts(cooler.electric_power_rated_w),
        voice
            .units
            .quantity(Dimension::Temperature, cooler.set_point_c),
        hours(cooler.run_from_hour, cooler.run_until_hour, voice)
    )
}

pub(super) fn ventilation(document: &ScenarioDocument, voice: &Voice) -> String {
    let air = &document.ventilation;
    let mut phrases = Vec::new();
    if air.fan_use != FanUse::Off && air.fan_flow_m3_s > 0.0 {
        let only = match air.fan_use {
            FanUse::WhenOutdoorsCooler => ", while it is cooler outdoors",
            FanUse::InHours | FanUse::Off => "",
        };
        phrases.push(format!(
            "fan {} {}{only}",
            voice.units.quantity(Dimension::AirFlow, air.fan_flow_m3_s),
            hours(air.fan_from_hour, air.fan_until_hour, voice)
        ));
    }
    if air.opening_area_m2 > 0.0 {
        phrases.push(format!(
            "windows open {}",
            hours(air.opening_from_hour, air.opening_until_hour, voice)
        ));
    }
    sentence(&phrases, "No fan, windows shut.")
}

pub(super) fn battery(document: &ScenarioDocument, voice: &Voice) -> String {
    let battery = &document.battery;
    let cells = match battery.chemistry {
        CellChemistry::LithiumIronPhosphate => "lithium iron phosphate",
        CellChemistry::AbsorbentGlassMat => "glass-mat lead-acid",
        CellChemistry::FloodedLead => "flooded lead-acid",
    };
    format!(
        "{} at {}, {cells}; {} full at the start, used down to {}.",
        voice.units.quantity(Dimension::Charge, battery.capacity_ah),
        chosen("battery.system_voltage", document),
        voice.units.percent(battery.start_state_of_charge),
        voice.units.percent(battery.least_state_of_charge),
    )
}

pub(super) fn charging(document: &ScenarioDocument, voice: &Voice) -> String {
    let charging = &document.charging;
    let mut phrases = Vec::new();
    let panels_w = document.panel_power_w();
    if panels_w > 0.0 {
        let whence = if document.roof.panels_from_plan {
            ", from the roof plan"
        } else {
            ""
        };
        phrases.push(format!("{} of panels{whence}", voice.units.watts(panels_w)));
    }
    if charging.drives {
        phrases.push(format!(
            "driving {}",
            hours(charging.drive_from_hour, charging.drive_until_hour, voice)
        ));
    }
    if charging.shore_power_w > 0.0 {
        phrases.push(format!(
            "{} from shore {}",
            voice.units.watts(charging.shore_power_w),
            hours(charging.shore_from_hour, charging.shore_until_hour, voice)
        ));
    }
    sentence(&phrases, "None.")
}

pub(super) fn loads(document: &ScenarioDocument, voice: &Voice) -> String {
    let loads = &document.loads;
    let named: [(&str, &Load); 4] = [
        ("refrigerator", &loads.fridge),
        ("lights", &loads.lights),
        ("electronics", &loads.electronics),
        ("anything else", &loads.other),
    ];
    let phrases: Vec<String> = named
        .iter()
        .filter(|(_, load)| load.power_w > 0.0)
        .map(|(name, load)| {
            format!(
                "{name} {} {}",
                voice.units.watts(load.power_w),
                hours(load.from_hour, load.until_hour, voice)
            )
        })
        .collect();
    sentence(&phrases, "None.")
}

pub(super) fn cabling(document: &ScenarioDocument, voice: &Voice) -> String {
    let wired = &document.installation;
    let length = |value_m| voice.units.quantity(Dimension::Length, value_m);
    format!(
        "{} to the cooler, {} from the panels, {} from the starter battery; {}.",
        length(wired.cooler.length_m),
        length(wired.panels.length_m),
        length(wired.dc_dc.length_m),
        counted(wired.parallel_packs, "pack", "packs in parallel", voice),
    )
}

pub(super) fn roof(document: &ScenarioDocument, voice: &Voice) -> String {
    let roof = &document.roof;
    let tape = |value_m| voice.units.quantity(Dimension::TapeLength, value_m);
    let panels = match roof.panel.count as usize {
        0 => "no panels".to_owned(),
        1 => format!("a panel of {}", voice.units.watts(roof.panel.rated_power_w)),
        count => format!(
            "{count} panels of {}",
            voice.units.watts(roof.panel.rated_power_w)
        ),
    };
    format!(
        "{} by {} to use, {panels} on the plan; carries {} under way, {} at rest.",
        tape(roof.length_m),
        tape(roof.width_m),
        voice
            .units
            .quantity(Dimension::Mass, roof.limit_under_way_kg),
        voice.units.quantity(Dimension::Mass, roof.limit_at_rest_kg),
    )
}

pub(super) fn prices(document: &ScenarioDocument, voice: &Voice) -> String {
    let prices = &document.prices;
    format!(
        "In {}: cooler {}, bank {} for each Wh, {} h of work at {}, tax {}.",
        prices.currency,
        voice.units.number(prices.cooler, 0),
        voice.units.number(prices.bank_per_wh, 3),
        voice.units.number(prices.labour_h, 1),
        voice.units.number(prices.labour_per_h, 2),
        voice.units.percent(prices.tax_share),
    )
}

pub(super) fn readings(document: &ScenarioDocument, voice: &Voice) -> String {
    let readings = &document.readings;
    if !readings.taken {
        return "None yet.".to_owned();
    }
    let temperature = |value_c| voice.units.temperature(value_c, 1);
    let volts = |value_v| voice.units.quantity(Dimension::Voltage, value_v);
    format!(
        "{} in, {} out, {} outdoors; {} at {} of the bank’s {}.",
        temperature(readings.return_c),
        temperature(readings.supply_c),
        temperature(readings.outdoor_c),
        voice.units.quantity(Dimension::Current, readings.current_a),
        volts(readings.unit_voltage_v),
        volts(readings.bank_voltage_v),
    )
}
