//! What a bank makes of a step.

/// What kept a bank from delivering or accepting all that was asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BankLimit {
    /// The usable charge is spent.
    Empty,
    /// The discharge current is at its limit.
    DischargeCurrent,
    /// The terminal voltage would fall below the discharge limit.
    DischargeVoltage,
    /// The usable window is full.
    Full,
    /// The charge current is at its limit.
    ChargeCurrent,
    /// The charger holds its voltage and the current tapers.
    ChargeVoltage,
    /// The bank is too cold or too hot to be charged.
    ChargeTemperature,
}

/// What a bank did in a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BankStep {
    /// Current into the bank, A.
    pub current_a: f64,
    /// Mean terminal voltage, V.
    pub terminal_voltage_v: f64,
    /// Power into the bank at its terminals, W.
    pub power_w: f64,
    /// Terminal power less rise of stored energy, W.
    pub loss_w: f64,
    /// What kept the bank from following the demand, if anything did.
    pub limited_by: Option<BankLimit>,
}

/// What flowed in a step; [`BankStep`] without the loss, which is cheaper to reckon over many steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BankFlow {
    /// Current into the bank, A.
    pub current_a: f64,
    /// Mean terminal voltage, V.
    pub terminal_voltage_v: f64,
    /// Power into the bank at its terminals, W.
    pub power_w: f64,
    /// What kept the bank from following the demand, if anything did.
    pub limited_by: Option<BankLimit>,
}
