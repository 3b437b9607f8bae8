//! The calculation behind Noonday: from a vehicle, a day, a cooler and a bank to an answer with its reasons.
//!
//! Everything here is a pure function of its input. There is no clock, no randomness, no file, no network and no browser, and
//! the transcendental functions are those of `libm`, so that one scenario gives the same bytes on every platform. Numbers are
//! SI with the unit in the name; heat into the cabin and current into the battery are positive.
//!
//! ```
//! use noonday_engine::advice::advise;
//! use noonday_engine::scenario::{Scenario, example};
//!
//! # fn main() -> Result<(), String> {
//! let mut document = example();
//! document.shell.roof_insulation_m = 0.06;
//! let scenario = Scenario::new(document).map_err(|errors| format!("{errors:?}"))?;
//! let advice = advise(&scenario).map_err(|error| format!("{error:?}"))?;
//! println!("{:?}, bank down to {:.0} %", advice.verdict.headline, 100.0 * advice.verdict.bank.lowest_state_of_charge);
//! # Ok(())
//! # }
//! ```
//!
//! # The flow
//!
//! ```text
//! ScenarioDocument --validate--> Scenario --make ready--> Prepared --run--> Results --judge--> Advice
//! ```
//!
//! A [`ScenarioDocument`](scenario::ScenarioDocument) is the consult as typed. [`Scenario::new`](scenario::Scenario::new) lets
//! it through or says everything that is wrong with it. [`Prepared`](simulation::Prepared) holds what does not depend on cooler
//! or bank, so that the run with the cooler and the run without it share it. [`Results`](simulation::Results) are samples, sums
//! and how well the balances closed; [`Advice`](advice::Advice) adds the verdict. Modules stand in one order and import only
//! downwards: [`quantity`], [`validity`], [`schedule`], [`air`], [`solar`], [`weather`], [`envelope`], [`cabin`], [`cooler`],
//! [`electrical`], [`comfort`], [`roof`], [`scenario`], [`simulation`], [`advice`]. Nothing below `scenario` knows that scenarios exist.
//!
//! The rest of this page walks through the model in the order in which heat and power take it. Each equation is written out,
//! with its source and range, at the function that computes it.
//!
//! # Weather
//!
//! Two sources give one thing, the [`Outdoors`](weather::Outdoors) at an instant of local standard time.
//!
//! - A [`HotDay`](weather::HotDay) is the forecast that everybody knows. The dry bulb is t = t_high − f(h)(t_high − t_low),
//!   with f the ASHRAE fractions of the daily range through a monotone cubic; dew point, cloud and wind are constant, and the
//!   dew point is never above the dry bulb. Pressure is that of the standard atmosphere, p = 101 325(1 − 2.25577·10⁻⁵ z)^5.2559
//!   ([`air::standard_atmosphere_pressure_pa`]).
//! - [`FileWeather`](weather::FileWeather) reads [EPW](weather::Epw) text. Temperatures belong to the stamp, irradiances to the
//!   middle of the interval before it.
//!
//! *Limits.* A [`Scenario`](scenario::Scenario) asks for hot days only, whose wind and cloud do not change during the day. A day of
//! a file is put into one as a forecast ([`take_file_day`](scenario::take_file_day)), with how far that is off its hours. A
//! [`Season`](simulation::Season) runs a scenario's equipment under the file's own hours, any number of days one after another.
//!
//! # Sun
//!
//! [`SunPath`](solar::SunPath) takes declination and hour angle of each midnight from the NREL solar position algorithm and
//! interpolates them by cubics; parallax, horizon and refraction are then exact. [`ClearSky`](solar::ClearSky) is Ineichen &
//! Perez 2002,
//!
//! ```text
//! G = cg1 E0 cos z exp(-cg2 m (fh1 + fh2 (TL - 1)))
//! ```
//!
//! with z the zenith of the sun, E0 its irradiance outside the atmosphere, m the airmass, TL the Linke turbidity and the rest
//! by altitude. [`Clouds`](solar::Clouds) that cover a share n take off 0.75 n^3.4 of it (Kasten & Czeplak 1980) and shift the
//! rest towards diffuse light (Erbs et al. 1982). [`SkyDome`](solar::SkyDome) puts beam, sky and ground-reflected light on a
//! [`Plane`](solar::Plane) after Perez et al. 1990. [`Shade`](weather::Shade) takes away a share of beam and of sky between two
//! hours.
//!
//! *Limits.* No horizon; no part of the vehicle shades another but things on the roof its panels, and panels do not shade the roof
//! beneath them. A level plane
//! stands for the roof and for every panel.
//!
//! # Sky
//!
//! The sky radiates L = min(1, ε F)σT⁴ ([`weather::sky_longwave_w_m2`]), with Berdahl & Martin's
//!
//! ```text
//! eps = 0.711 + 0.56 (td/100) + 0.73 (td/100)^2 + 0.013 cos(2 pi h/24) + 0.00012 (p/hPa - 1000)
//! ```
//!
//! ([`weather::clear_sky_emissivity_corrected`]), td the dew point in °C, and Walton's [`cloud_factor`](weather::cloud_factor)
//! F.
//!
//! # Ground
//!
//! [`GroundTemperatures`](weather::GroundTemperatures) follows two patches, in the open and under the vehicle. At the surface,
//! absorbed sun, longwave, convection and evaporation balance what a slab of two layers conducts down,
//!
//! ```text
//! (1 - s) ((1 - rho) a G + eps (L - sigma T^4)) + h (ta - t) = q
//! ```
//!
//! with t the surface, ta the air, G the sun, L the longwave from above, a the exposure to sun, ρ and ε reflectance and
//! emissivity, s the share that evaporates water and q what goes down, so that hot asphalt heats floor and walls and grass does
//! not ([`GroundSurface`](weather::GroundSurface)).
//!
//! *Limits.* Heat goes straight down; the ground does not feel the vehicle except as shade; the evaporating share s is
//! constant.
//!
//! # Shell
//!
//! [`Chain`](cabin::Chain) lays each part of the shell out as five nodes: steel skin, insulation in three slices, lining.
//! Cavities left empty are a chain of their own, in parallel by area. Steel ribs go into the conductivity of the insulation by
//! the zone method ([`RibbedWall`](envelope::bridging::RibbedWall)): a rib acts on a zone of width W = m + 2d, m its flange and
//! d the distance to it, at least 13 mm.
//!
//! Outside, wind and buoyancy combine as h = hn + R(√(hn² + (aV^b)²) − hn) ([`envelope::convection::outside_w_m2_k`]); hn is
//! Walton's buoyancy ([`natural_w_m2_k`](envelope::convection::natural_w_m2_k)), R a roughness and V the wind at the height of
//! the face ([`WindProfile`](envelope::convection::WindProfile)), to which driving adds its own. Longwave goes to sky, air and
//! ground by tilt. Inside, buoyancy and the air stirred by blower and fan are blended by the cube
//! ([`envelope::convection::inside_w_m2_k`]).
//!
//! [`Glazing`](envelope::glazing::Glazing) makes an equivalent pane of transmittance and solar heat gain coefficient
//! (LBNL-2804E), with its dependence on the angle of incidence. A cover is one more resistance and a share of the gain.
//!
//! Outdoor air enters by leaks, Q = A√(Cs ΔT + Cw U²) ([`leakage_flow_m3_s`](envelope::air_exchange::leakage_flow_m3_s)), by
//! opened windows ([`opening_flow_m3_s`](envelope::air_exchange::opening_flow_m3_s)) and by the fan.
//!
//! *Limits.* Conduction is one-dimensional; the zone method is an approximation of a two-dimensional problem; properties
//! ([`envelope::materials`]) are those of dry materials near 24 °C. The vehicle is a box of six faces, upright or level; the
//! nose is an outer wall, with no driver's cab before it.
//!
//! # Cabin
//!
//! [`Cabin`](cabin::Cabin) is the network. Each chain, furniture as well, obeys
//!
//! ```text
//! C_i dT_i/dt = G_(i-1) (T_(i-1) - T_i) + G_i (T_(i+1) - T_i)
//! ```
//!
//! (C heat capacity, G conductance to the next node, outermost node first) with sun, convection and longwave at its outer node
//! and, at its inner node, convection to the air, longwave to a mean-radiant star and the sun that came through glass. Air and
//! star close it:
//!
//! ```text
//! C_a dTa/dt = sum h A (T_4 - Ta) + m c (To - Ta) + gains - extraction
//!          0 = sum g (T_4 - Tstar) + radiant gains
//! ```
//!
//! Here T_4 are the inner nodes, h A and g their conductances to air and star, m c the heat that each kelvin of outdoor air
//! brings, To the outdoors.
//!
//! Coefficients are frozen for an interval of one to five minutes. Steps use the θ-method, (x⁺ − x)/Δt = f(x + θ(x⁺ − x)) with
//! θ = 0.55, which is stable at any step. Every flow is taken at that one state and booked on both of its ends, so the
//! [`Ledger`](cabin::Ledger) closes to rounding.
//!
//! *Limits.* One well-mixed air node: no hot air under the roof, no cold draught from the cooler, no difference between bed and
//! bench. Sun inside falls by fixed shares on floor, furniture and lining.
//!
//! # Air and moisture
//!
//! [`air`] holds the psychrometrics of ASHRAE Fundamentals ch. 1 at real pressure. Water in the cabin is one more node,
//!
//! ```text
//! M dW/dt = m (Wo - W) + gains - coil - sum k (W - Ws)
//! ```
//!
//! W its humidity ratio, Wo that outdoors, m the dry air exchanged; M is the air's mass times one plus what furniture holds
//! beside it, and the last sum runs over surfaces below the dew point, whose own saturated ratio is Ws. People and animals
//! ([`person_heat`](comfort::occupants::person_heat), [`dog_heat`](comfort::occupants::dog_heat)) shed more of the same heat as
//! vapour the warmer it is.
//!
//! *Limits.* Ideal gases. Furniture takes up and gives off moisture at once. What condenses on a surface is counted and does
//! not evaporate again.
//!
//! # Cooler
//!
//! [`Coil`](cooler::coil::Coil) turns a [`CoolerRating`](cooler::rating::CoolerRating) into heat and electric input away from
//! its rating point,
//!
//! ```text
//! Q = Q_rated s f(wet bulb, condenser air) f(flow),    P = (P_rated / Q_rated) Q e(wet bulb, condenser air) e(flow) / gain(s)
//! ```
//!
//! with the published curves f and e of small units ([`cooler::curves`]), s the speed and gain(s) the better efficiency at part
//! speed. Sensible and latent heat part by apparatus dew point and bypass factor ([`Bypass`](cooler::bypass::Bypass)).
//! [`Thermostat`](cooler::control::Thermostat) decides on the speed with its band and its least times on and off,
//! [`StartUpLag`](cooler::start_up::StartUpLag) lets capacity lag behind the input,
//! [`LowVoltageCutOut`](cooler::protection::LowVoltageCutOut) stops the unit on a weak bank, and
//! [`DataPlate`](cooler::data_plate::DataPlate) judges whether a plate's capacity and current can both be true.
//!
//! *Limits.* The curves are of window units, not of vehicle units; outside their fitted range they are extrapolated and [said
//! to be](simulation::Results::curves_extrapolated). The condenser's air is the weather's plus a stated rise.
//!
//! # Power
//!
//! [`Bank`](electrical::Bank) is an open-circuit voltage U behind a resistance R. The current I into it solves V I = P with V =
//! U + I(R + ηU′Δt/2), U′ the rise of U with charge and η the share of the charge that is stored, so a sagging bank draws more.
//! Windows of charge, limits of current and voltage, taper, cold, age and Peukert's law bound it, and what bound the current
//! has a [name](electrical::BankLimit). [`Panels`](electrical::Panels) give P = P₀ G/1000 (1 + γ(T − 25 °C)) less losses; an
//! [`Inverter`](electrical::Inverter) loses an idle part and a quadratic of its load; the cable leaves V = (U + √(U² − 4PR))/2
//! to a cooler that draws P.
//!
//! *Limits.* One block of cells: no imbalance, no hysteresis, no self-discharge. Panels lie flat and glued to the roof. Driving
//! gives a constant current, shore a constant power.
//!
//! # Roof
//!
//! [`roof`] holds a plan of the roof: [`findings`](roof::findings) names overlaps, missing clearances and openings that meet ribs,
//! [`arrange`](roof::arrange) places panels, [`shaded_share`](roof::shaded_share) cuts the shadows of unit, fan and hatches, each
//! h/tan β long, out of a panel, and [`roof_load`](roof::roof_load) gives weight, wind ½ρV²cA and inertia. Where a scenario says
//! so, its run takes power and shade of the panels from there ([`panel_yield`](simulation::panel_yield)).
//!
//! *Limits.* Level roof and panels, upright boxes; a shadow counts by its area, though cells in series lose more.
//!
//! # Run
//!
//! [`Prepared::run`](simulation::Prepared::run) works surroundings out every ten minutes and reads between them by straight
//! lines. It passes through the day before the run with the cooler off, to give shell and goods their history, then moves
//! thermostat, bank and network in steps of [`STEP_S`](simulation::STEP_S). Network coefficients and coil are worked out anew
//! every five minutes, every minute while the cabin changes fast, and at once when the compressor starts, stops or has changed
//! its speed by a tenth. A step is cut where the thermostat switches. [`Series`](simulation::Series) holds a sample every five
//! minutes, [`HeatPath`](simulation::HeatPath) names the ways of heat, [`Balance`](simulation::Balance) says how well heat,
//! water and electricity closed.
//!
//! *Limits.* A cooler that overloaded its inverter stays off for the rest of the run. The surge of a start is not resolved in
//! time; its current is worked out beside the run.
//!
//! # Verdict
//!
//! [`judge`](advice::judge) holds the run against each window of the need, by felt temperature t_o = ½(t_air + t_radiant)
//! ([`operative_temperature_c`](comfort::operative_temperature_c) in still air) and by relative humidity. For a missed window
//! it gives how far, how long and the [`Cause`](advice::Cause); for the bank its lowest charge, how many hours it lasts if days
//! like the last follow, and beside it the plain division of ampere-hours by amperes. [`levers`](advice::levers) tries single
//! changes and ranks them; [`cost`](advice::cost) adds up the scenario's own prices.
//!
//! Around the verdict stand the decisions: [`alternatives`](advice::alternatives) to a cooler, [`size`](advice::size) for the
//! smallest one and its bank, [`measures`](advice::measures) and the best [`packages`](advice::packages) of them for each budget,
//! [`Sampler`](advice::sampling::Sampler) for how sure it is, [`failures`](advice::failure::failures) for how long a cabin stays
//! cool once something breaks, and [`plain_division`](advice::plain_division) for what "amp-hours over amps" leaves out.
//!
//! What it takes to build it in needs no run: [`circuits`](advice::circuits::circuits) finds the
//! [thinnest conductor](electrical::circuit::thinnest) with its fuse for each circuit, by ΔV = 2 L I r and the allowable currents of
//! 33 CFR 183.425; [`feeds`](advice::voltages::feeds) sets 12, 24 and 48 V side by side,
//! [`bank_limits`](advice::bank_limits::bank_limits) says what trips first, [`job`](advice::job::job) lists parts, price and work.
//!
//! *Limits.* The engine returns enums and numbers; wording is the page's. The verdict itself judges one described day, or a few,
//! as certain, by felt temperature and humidity; the [heat index](comfort::heat_index) stands beside it, and
//! [mean vote](comfort::mean_vote) and [standard effective temperature](comfort::standard_temperature) are computed and
//! checked, and nothing rests on them yet. None of it can promise that an animal or a child stays safe in a parked vehicle.

pub mod advice;
pub mod air;
pub mod cabin;
pub mod comfort;
pub mod cooler;
pub mod electrical;
pub mod envelope;
pub mod quantity;
pub mod roof;
pub mod scenario;
pub mod schedule;
pub mod simulation;
pub mod solar;
pub mod validity;
pub mod weather;
