//! Wording of how it is built in.

/// Heading of the whole.
pub const BUILDING: &str = "How to build it in";
/// Under it.
pub const BUILDING_NOTE: &str = "Planning figures from tables and from the scenario, not an inspection. Local codes, the makers’ instructions and whoever is licensed for the work come first.";
