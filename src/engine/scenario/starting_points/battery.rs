//! Banks by chemistry, voltage and capacity. Limits of charge and current are as makers commonly state for such blocks, resistance
//! with the connections: common practice, no source.

use super::{Library, Start, start};
use crate::scenario::document::StartingPoint as P;
use crate::scenario::field::Basis::CommonPractice;

pub(super) const KEY: &str = "starting.battery";

pub(super) const LIBRARY: Library = Library {
    key: KEY,
    sets: &[
        "battery.chemistry",
        "battery.system_voltage",
        "battery.capacity_ah",
        "battery.least_state_of_charge",
        "battery.most_state_of_charge",
        "battery.resistance_ohm_per_12_v",
        "battery.coulombic_efficiency",
        "battery.highest_discharge_a",
        "battery.highest_charge_a",
        "battery.peukert_exponent",
    ],
    points: &POINTS,
};

// Chemistry, voltage, capacity; least and most charge; resistance, charge got back; highest discharge and charge; Peukert.
const POINTS: [Start; 11] = [
    start(
        P::Lithium12V100,
        CommonPractice,
        "lithium_iron_phosphate v12 100  0.1 1  0.008 0.995  100 50  1.1",
    ),
    start(
        P::Lithium12V200,
        CommonPractice,
        "lithium_iron_phosphate v12 200  0.1 1  0.005 0.995  150 100  1.1",
    ),
    start(
        P::Lithium12V400,
        CommonPractice,
        "lithium_iron_phosphate v12 400  0.1 1  0.003 0.995  200 150  1.1",
    ),
    start(
        P::Lithium12V600,
        CommonPractice,
        "lithium_iron_phosphate v12 600  0.1 1  0.002 0.995  300 200  1.1",
    ),
    start(
        P::Lithium24V200,
        CommonPractice,
        "lithium_iron_phosphate v24 200  0.1 1  0.005 0.995  150 100  1.1",
    ),
    start(
        P::Lithium24V400,
        CommonPractice,
        "lithium_iron_phosphate v24 400  0.1 1  0.003 0.995  200 150  1.1",
    ),
    start(
        P::Lithium48V100,
        CommonPractice,
        "lithium_iron_phosphate v48 100  0.1 1  0.008 0.995  100 50  1.1",
    ),
    start(
        P::Lithium48V200,
        CommonPractice,
        "lithium_iron_phosphate v48 200  0.1 1  0.005 0.995  150 100  1.1",
    ),
    start(
        P::GlassMat12V200,
        CommonPractice,
        "absorbent_glass_mat v12 200  0.5 1  0.005 0.9  150 50  1.15",
    ),
    start(
        P::GlassMat24V200,
        CommonPractice,
        "absorbent_glass_mat v24 200  0.5 1  0.005 0.9  150 50  1.15",
    ),
    start(
        P::Flooded12V220,
        CommonPractice,
        "flooded_lead v12 220  0.5 1  0.006 0.85  100 30  1.25",
    ),
];
