//! What must hold of every roof, tried on random ones: arranging, findings, free area and shadows.

use noonday_engine::roof::{
    Caster, Finding, Item, ItemKind, PANEL_GAP_M, Plan, Rectangle, arrange, findings, free_area_m2,
    shaded_share,
};
use noonday_tests::scenarios::config;
use proptest::prelude::*;

fn place(most_length_m: f64, most_width_m: f64) -> impl Strategy<Value = Rectangle> {
    let measures = (0.0..4.0, 0.0..2.0, 0.1..most_length_m, 0.1..most_width_m);
    measures.prop_map(|(from_front_m, from_left_m, length_m, width_m)| Rectangle {
        from_front_m,
        from_left_m,
        length_m,
        width_m,
    })
}

/// A roof with up to four things on it that are no panels, wherever they may be.
fn plans() -> impl Strategy<Value = Plan> {
    let things = prop::collection::vec((place(1.2, 1.0), 0.0..0.3), 0..=4);
    (1.0..5.0, 0.8..2.2, things).prop_map(|(length_m, width_m, things)| {
        let kinds = [
            ItemKind::Unit,
            ItemKind::Fan,
            ItemKind::Hatch(0),
            ItemKind::Hatch(1),
        ];
        let items = kinds.into_iter().zip(things);
        Plan {
            length_m,
            width_m,
            rib_spacing_m: 0.6,
            items: items
                .map(|(kind, (place, clearance_m))| Item {
                    kind,
                    place,
                    height_m: 0.25,
                    clearance_m,
                    opening: None,
                })
                .collect(),
        }
    })
}

fn with_panels(mut plan: Plan, places: &[Rectangle]) -> Plan {
    let panels = places.iter().enumerate().map(|(index, place)| Item {
        kind: ItemKind::Panel(index),
        place: *place,
        height_m: 0.0,
        clearance_m: PANEL_GAP_M,
        opening: None,
    });
    plan.items.extend(panels);
    plan
}

fn is_of_a_panel(finding: &Finding) -> bool {
    let panel = |kind: &ItemKind| matches!(kind, ItemKind::Panel(_));
    match finding {
        Finding::BeyondRoof { item, .. } | Finding::CutsRib { item, .. } => panel(item),
        Finding::Overlap { one, other, .. } | Finding::TooClose { one, other, .. } => {
            panel(one) || panel(other)
        }
    }
}

/// Area of panels that lie in shadow, by throwing a fine grid of points at it: light from the sun passes over a point where it does
/// not meet a box.
fn shaded_by_points(panel: &Rectangle, casters: &[Caster], sun: [f64; 3]) -> f64 {
    const SIDE: usize = 160;
    let mut shaded = 0;
    for index in 0..SIDE * SIDE {
        let along = ((index / SIDE) as f64 + 0.5) / SIDE as f64;
        let across = ((index % SIDE) as f64 + 0.5) / SIDE as f64;
        let x = panel.from_front_m + along * panel.length_m;
        let y = panel.from_left_m + across * panel.width_m;
        if casters.iter().any(|caster| ray_meets(caster, x, y, sun)) {
            shaded += 1;
        }
    }
    f64::from(shaded) / (SIDE * SIDE) as f64
}

/// Whether a ray from a point of the roof towards the sun enters a box, by the intervals of height in which it is over each side.
fn ray_meets(caster: &Caster, x: f64, y: f64, [right, ahead, up]: [f64; 3]) -> bool {
    let place = &caster.place;
    let span = |at: f64, slope: f64, from: f64, until: f64| {
        if slope.abs() < 1e-12 {
            return if (from..=until).contains(&at) {
                (0.0, f64::MAX)
            } else {
                (1.0, 0.0)
            };
        }
        let (one, other) = ((from - at) / slope, (until - at) / slope);
        (one.min(other), one.max(other))
    };
    let along = span(x, -ahead / up, place.from_front_m, place.rear_m());
    let across = span(y, right / up, place.from_left_m, place.right_m());
    let from = along.0.max(across.0).max(0.0);
    let until = along.1.min(across.1).min(caster.height_m);
    from <= until
}

proptest! {
    #![proptest_config(config(300))]

    #[test]
    fn arranged_panels_have_nothing_wrong_with_them(
        plan in plans(), count in 0_usize..=8, length_m in 0.3..1.8, width_m in 0.3..1.2,
    ) {
        let arranged = arrange(&plan, count, length_m, width_m);
        prop_assert!(arranged.places.len() <= count);
        let found = findings(&with_panels(plan, &arranged.places));
        let wrong: Vec<&Finding> = found.iter().filter(|finding| is_of_a_panel(finding)).collect();
        prop_assert!(wrong.is_empty(), "{:?}", wrong);
    }

    #[test]
    fn what_is_wrong_does_not_depend_on_the_order(plan in plans(), panels in prop::collection::vec(place(1.5, 1.0), 0..8)) {
        let plan = with_panels(plan, &panels);
        let mut turned = plan.clone();
        turned.items.reverse();
        prop_assert_eq!(findings(&plan), findings(&turned));
    }

    #[test]
    fn more_panels_never_leave_more_free_area(plan in plans(), panels in prop::collection::vec(place(1.5, 1.0), 1..8)) {
        let mut before_m2 = free_area_m2(&plan);
        prop_assert!(before_m2 <= plan.length_m * plan.width_m + 1e-9);
        for count in 1..=panels.len() {
            let now_m2 = free_area_m2(&with_panels(plan.clone(), &panels[..count]));
            prop_assert!(now_m2 >= -1e-9 && now_m2 <= before_m2 + 1e-9);
            before_m2 = now_m2;
        }
    }

    /// The exact share against rays cast from a grid of 160 × 160 points: an edge that passes between points is placed to half
    /// their distance, and the outlines of four shadows are no longer than twelve sides of the panel.
    #[test]
    fn shadows_cover_what_rays_say(
        plan in plans(), panel in place(1.5, 1.0), turn_deg in 0.0..360.0_f64, height_deg in 8.0..90.0_f64,
    ) {
        let casters: Vec<Caster> = plan
            .items
            .iter()
            .map(|item| Caster { place: item.place, height_m: item.height_m })
            .collect();
        let (sine, cosine) = libm::sincos(turn_deg.to_radians());
        let (up, level) = libm::sincos(height_deg.to_radians());
        let sun = [level * sine, level * cosine, up];
        let exact = shaded_share(&panel, &casters, sun);
        let by_points = shaded_by_points(&panel, &casters, sun);
        prop_assert!((exact - by_points).abs() < 12.0 * 0.5 / 160.0, "{exact} and {by_points}");
    }
}
