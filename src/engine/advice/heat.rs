//! How hot it got by the heat index, for people and animals alike.
//!
//! The index is of the cabin's air and humidity; it was fitted for a walking adult in shade and light wind and says nothing of
//! an animal, a child or a sick person, who are in danger earlier. Source: National Weather Service, see
//! [`crate::comfort::heat_index`].

use super::judge::stands;
use crate::comfort::heat_index::{HeatIndexCategory, heat_index_c};
use crate::quantity::Bounded;
use crate::simulation::Series;
use serde::{Deserialize, Serialize};

/// The highest heat index of a span.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct HeatReading {
    /// Heat index, °C.
    pub heat_index_c: f64,
    /// Its published category.
    pub category: HeatIndexCategory,
    /// When, clock hours since midnight of the first day.
    pub at_h: f64,
}

/// Heat index of the cabin's air at a sample, °C.
pub(super) fn heat_index_at_c(series: &Series, index: usize) -> f64 {
    heat_index_c(
        series.cabin_c[index],
        series.relative_humidity[index].at_most(1.0),
    )
}

/// The highest heat index between two clock hours, h; minus infinity where no sample stands for any of them.
pub(super) fn worst_heat(series: &Series, span: (f64, f64)) -> HeatReading {
    let worst = (0..series.time_h.len())
        .filter_map(|index| {
            let (from_h, _) = stands(series, index, span)?;
            Some((heat_index_at_c(series, index), from_h))
        })
        .max_by(|one, other| one.0.total_cmp(&other.0));
    let (heat_index_c, at_h) = worst.unwrap_or((f64::NEG_INFINITY, span.0));
    HeatReading {
        heat_index_c,
        category: HeatIndexCategory::of(heat_index_c),
        at_h,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worst_sample_gives_index_category_and_time() {
        let series = Series {
            time_h: vec![12.0, 13.0, 14.0],
            cabin_c: vec![25.0, 32.2222, 30.0],
            relative_humidity: vec![0.5, 0.7, 0.5],
            ..Series::default()
        };
        let worst = worst_heat(&series, (12.0, 14.0));
        // National Weather Service: 90 °F and 70 % feel like 106 °F, 41.1 °C, a danger.
        assert!((worst.heat_index_c - 41.07).abs() < 0.02);
        assert_eq!(worst.category, HeatIndexCategory::Danger);
        assert_eq!(worst.at_h, 13.0);
        assert!(worst_heat(&series, (13.5, 14.0)).heat_index_c > 32.0);
    }
}
