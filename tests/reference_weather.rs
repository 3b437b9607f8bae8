//! Weather against published correlations and against the weather that an independent building
//! program made of the same file.

use noonday_engine::weather::{
    clear_sky_emissivity, cloud_factor, sky_longwave_w_m2, sky_temperature_c,
};
use noonday_tests::{Table, Worst};

/// Source: the table's own evaluation of Berdahl & Martin 1984 without diurnal and pressure terms, and of the
/// cloud factor of Walton 1983. Tolerance: half of the last digit printed, of the dew point too (0.0005 K is 4e-6).
#[test]
fn sky_agrees_with_the_published_correlations() {
    let table = Table::read("sky_temperature.csv");
    let (mut emissivities, mut factors, mut temperatures) =
        (Worst::default(), Worst::default(), Worst::default());
    for row in table.rows() {
        let dry_bulb_c = row.number("T_C");
        let label = format!("{dry_bulb_c} °C, dew point {} °C", row.number("Td_C"));
        let emissivity = clear_sky_emissivity(row.number("Td_C"));
        emissivities.note(emissivity - row.number("eps_BM84"), &label);
        let factor = cloud_factor(row.number("cloud_frac"));
        factors.note(
            factor - row.number("eps_CA_cloud") / row.number("eps_ClarkAllen"),
            &label,
        );
        let clear = sky_temperature_c(sky_longwave_w_m2(emissivity, 1.0, dry_bulb_c));
        temperatures.note(clear - row.number("Tsky_BM84"), &label);
        let cloudy_w_m2 = sky_longwave_w_m2(row.number("eps_ClarkAllen"), factor, dry_bulb_c);
        temperatures.note(
            (cloudy_w_m2 - row.number("IR_CA_cloud_W_m2")) / 10.0,
            &label,
        );
    }
    emissivities.assert_within(1e-5, "sky emissivity");
    factors.assert_within(2e-5, "cloud factor");
    temperatures.assert_within(1e-3, "sky temperature, K, and longwave, 10 W/m²");
}
