//! The box cases of `reference/thermal/README.md`, built from their description and run on the engine's own cabin.

use crate::{Row, Table, reference_path};
use noonday_engine::air::humidity_ratio_from_relative_humidity;
use noonday_engine::cabin::{
    AirExchange, Boundary, Cabin, CabinDescription, Chain, Element, Extraction, Gains, Layer,
    Outside, Part, SunOnElements,
};
use noonday_engine::envelope::convection::OPEN_COUNTRY;
use noonday_engine::envelope::glazing::{GLASS_EMITTANCE, Glazing};
use noonday_engine::envelope::materials::{Material, STEEL};
use noonday_engine::solar::{Plane, SkyDome, SunPath};
use noonday_engine::weather::{FileWeather, sky_temperature_c};

const LENGTH_M: f64 = 4.30;
const WIDTH_M: f64 = 1.78;
const HEIGHT_M: f64 = 1.90;
const FLOOR_ABOVE_GROUND_M: f64 = 0.40;
const FURNISHING_CAPACITY_J_K: f64 = 240_000.0;
const FURNISHING_AREA_M2: f64 = 15.0;
const AIR_CHANGES_PER_H: f64 = 0.5;
const EMITTANCE: f64 = 0.9;
const INSIDE_SUN_ABSORPTANCE: f64 = 0.7;
const GROUND_REFLECTANCE: f64 = 0.2;
const INSULATION: Material = Material::new(0.035, 30.0, 1_200.0);
const PLYWOOD: Material = Material::new(0.12, 545.0, 1_210.0);
const STEP_S: f64 = 10.0;
const STEPS_PER_MINUTE: u32 = 6;
const SETTLING_DAYS: u32 = 5;
const COMPARED_DAYS: u32 = 3;

/// Modes of the reference.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Mode {
    Free,
    Ideal,
    Pull,
}

/// A case as its row in `summary.csv` describes it.
#[derive(Clone)]
pub struct BoxCase {
    /// Name of the case.
    pub name: String,
    site: String,
    insulation_m: f64,
    lined: bool,
    paint: f64,
    covered: bool,
    fan_m3_s: f64,
    nose_azimuth_deg: f64,
    people: bool,
    mode: Mode,
    dehumidify: Option<f64>,
    /// Conductivity of the insulation, leakage and heat capacity of the furniture over the reference's.
    scale: [f64; 3],
}

/// One minute of a run.
#[derive(Clone, Copy, Debug)]
pub struct Minute {
    /// Seconds at its end since the first compared midnight.
    pub end_s: f64,
    /// Cabin air, mean of the minute, °C.
    pub air_c: f64,
    /// Mean radiant temperature, °C.
    pub radiant_c: f64,
    /// Sensible heat taken out, W.
    pub sensible_w: f64,
    /// Latent heat taken out, W.
    pub latent_w: f64,
}

/// Every case of the reference.
#[must_use]
pub fn cases() -> Vec<BoxCase> {
    Table::read("thermal/summary.csv")
        .rows()
        .map(|row| BoxCase::read(&row))
        .collect()
}

impl BoxCase {
    fn read(row: &Row<'_>) -> Self {
        let dehumidify = row.text("dehumidify_rh");
        assert_eq!(
            row.number("coverage"),
            1.0,
            "partial cover is not in the set"
        );
        assert_eq!(row.text("slide_window"), "False", "nor is the slide window");
        Self {
            name: row.text("case").to_owned(),
            site: row.text("site").to_owned(),
            insulation_m: row.number("insulation_mm") / 1_000.0,
            lined: row.text("lining") == "yes",
            paint: row.number("paint_absorptance"),
            covered: row.text("glass_covered") == "True",
            fan_m3_s: row.number("fan_m3_h") / 3_600.0,
            nose_azimuth_deg: if row.text("nose") == "W" {
                270.0
            } else {
                180.0
            },
            people: row.text("people") == "True",
            mode: match row.text("mode") {
                "ideal" => Mode::Ideal,
                "pull" => Mode::Pull,
                _ => Mode::Free,
            },
            dehumidify: dehumidify
                .parse::<f64>()
                .ok()
                .map(|percent| percent / 100.0),
            scale: [1.0; 3],
        }
    }

    /// The same box with other insulation, leakage and furniture: conductivity, air change and heat capacity as multiples of the
    /// reference's.
    #[must_use]
    pub fn scaled(mut self, scale: [f64; 3]) -> Self {
        self.scale = scale;
        self
    }

    /// Whether the cabin floats freely all the time.
    #[must_use]
    pub fn is_free(&self) -> bool {
        self.mode == Mode::Free
    }

    /// Whether the cabin is pulled down in the afternoon of the second day.
    #[must_use]
    pub fn is_pull(&self) -> bool {
        self.mode == Mode::Pull
    }

    /// Name of the file with ten-minute means over the three days.
    #[must_use]
    pub fn ten_minute_file(&self) -> String {
        let suffix = if self.is_pull() { "_10min" } else { "" };
        format!("thermal/{}{suffix}.csv", self.name)
    }

    /// Runs the case; gives every minute of the compared days.
    ///
    /// # Panics
    /// If the weather cannot be read or the box cannot be built.
    #[must_use]
    #[expect(clippy::expect_used, reason = "a test helper fails the test")]
    pub fn run(&self) -> Vec<Minute> {
        let path = reference_path(&format!("thermal/weather_{}.epw", self.site));
        let text = std::fs::read_to_string(path).expect("a weather file");
        let weather = FileWeather::from_epw_text(&text).expect("a sound weather file");
        let days = SETTLING_DAYS + COMPARED_DAYS;
        let sun = SunPath::new(&weather.place(), weather.first_day(), days).expect("a sun path");
        let scene = Scene::new(self);
        let pressure_pa = weather.at(0.0, &sun).pressure_pa;
        let description = scene.description(pressure_pa);
        let mut cabin = Cabin::new(&description, &OPEN_COUNTRY, 25.0, 0.009).expect("a sound box");
        let mut minutes = Vec::new();
        let settling_s = f64::from(SETTLING_DAYS) * 86_400.0;
        for index in 0..days * 1_440 {
            let start_s = f64::from(index) * 60.0;
            let minute = self.minute(&mut cabin, &scene, &weather, &sun, start_s - settling_s);
            if start_s >= settling_s {
                minutes.push(minute);
            }
        }
        minutes
    }

    fn minute(
        &self,
        cabin: &mut Cabin,
        scene: &Scene,
        weather: &FileWeather,
        sun: &SunPath,
        start_s: f64,
    ) -> Minute {
        let settling_s = f64::from(SETTLING_DAYS) * 86_400.0;
        let outdoors = weather.at(start_s + settling_s + 30.0, sun);
        let dome = SkyDome::new(&outdoors.sun, &outdoors.irradiance);
        let boundary = Boundary {
            outdoor_c: outdoors.dry_bulb_c,
            outdoor_humidity_ratio: outdoors.humidity_ratio,
            sky_c: sky_temperature_c(outdoors.sky_longwave_w_m2),
            ground_c: outdoors.dry_bulb_c,
            shaded_ground_c: outdoors.dry_bulb_c,
            wind_speed_m_s: outdoors.wind_speed_10m_m_s,
            wind_from_deg: outdoors.wind_from_deg,
            road_speed_m_s: 0.0,
            air_exchange: AirExchange {
                leakage_m3_s: self.scale[1] * AIR_CHANGES_PER_H * LENGTH_M * WIDTH_M * HEIGHT_M
                    / 3_600.0,
                fan_m3_s: self.fan_m3_s,
                openings_m3_s: 0.0,
            },
            stirred_m3_s: 0.0,
            sun: &scene.sun(&dome),
        };
        cabin.set_conditions(&boundary, STEP_S);
        let gains = self.gains(start_s);
        let extraction = self.extraction(start_s, outdoors.pressure_pa);
        let (mut air_c, mut radiant_c, mut sensible_w, mut latent_w) = (0.0, 0.0, 0.0, 0.0);
        for _ in 0..STEPS_PER_MINUTE {
            let result = cabin.step(&gains, &extraction);
            air_c += cabin.air_c() / f64::from(STEPS_PER_MINUTE);
            radiant_c += cabin.radiant_c() / f64::from(STEPS_PER_MINUTE);
            sensible_w += result.extracted_w / f64::from(STEPS_PER_MINUTE);
            latent_w += result.coil_kg_s * 2.5e6 / f64::from(STEPS_PER_MINUTE);
        }
        cabin.close_interval();
        Minute {
            end_s: start_s + 60.0,
            air_c,
            radiant_c,
            sensible_w,
            latent_w,
        }
    }

    fn gains(&self, start_s: f64) -> Gains {
        if !self.people {
            return Gains::default();
        }
        let hour = start_s.rem_euclid(86_400.0) / 3_600.0;
        let people = if (7.0..22.0).contains(&hour) {
            0.0
        } else {
            2.0
        };
        Gains {
            convective_w: people * 70.0 * 0.7 + 30.0,
            radiant_w: people * 70.0 * 0.3 + 30.0,
            moisture_kg_s: people * 45.0 / 2.5e6,
        }
    }

    fn extraction(&self, start_s: f64, pressure_pa: f64) -> Extraction {
        let cooling = |sensible_w, least_c| Extraction {
            sensible_w,
            least_c,
            ..Extraction::NONE
        };
        match self.mode {
            Mode::Free => Extraction::NONE,
            Mode::Pull if in_pull(start_s) => cooling(2_600.0, 20.0),
            Mode::Pull => Extraction::NONE,
            Mode::Ideal => {
                let mut extraction = cooling(1e6, 24.0);
                if let Some(humidity) = self.dehumidify {
                    extraction.moisture_kg_s = 1.0;
                    extraction.least_humidity_ratio =
                        humidity_ratio_from_relative_humidity(24.0, humidity, pressure_pa);
                }
                extraction
            }
        }
    }
}

/// Whether an instant lies in the afternoon of the second compared day, 14:00 to 17:00.
#[must_use]
pub fn in_pull(start_s: f64) -> bool {
    (86_400.0 + 14.0 * 3_600.0..86_400.0 + 17.0 * 3_600.0).contains(&start_s)
}

/// The box with its planes and panes.
struct Scene {
    elements: Vec<Element>,
    planes: Vec<Plane>,
    paint: f64,
    pane: Glazing,
    kept_sun: f64,
}

impl Scene {
    #[expect(clippy::expect_used, reason = "a test helper fails the test")]
    fn new(case: &BoxCase) -> Self {
        let (u, gain) = if case.covered {
            (2.0, 0.15)
        } else {
            (5.8, 0.82)
        };
        let pane = Glazing::new(u, gain).expect("a sound pane");
        let nose_deg = case.nose_azimuth_deg;
        let plan_m2 = LENGTH_M * WIDTH_M;
        let side_m2 = LENGTH_M * HEIGHT_M;
        let end_m2 = WIDTH_M * HEIGHT_M;
        let faces = [
            (Part::Roof, plan_m2, 0.0, 1.0, 0.0),
            (Part::Left, side_m2, 0.5, 0.0, nose_deg - 90.0),
            (Part::Right, side_m2, 0.5, 0.0, nose_deg + 90.0),
            (Part::Nose, end_m2, 1.2, 0.0, nose_deg),
            (Part::Rear, end_m2, 0.0, 0.0, nose_deg + 180.0),
            (Part::Floor, plan_m2, 0.0, -1.0, 0.0),
        ];
        let mut elements = Vec::new();
        for (part, area_m2, glass_m2, up, azimuth_deg) in faces {
            let mut add = |part: Part, area_m2: f64, chain: Chain, emittance: f64| {
                elements.push(element(part, area_m2, chain, emittance, up, azimuth_deg));
            };
            add(part, area_m2 - glass_m2, opaque(case, part), EMITTANCE);
            if glass_m2 > 0.0 {
                let chain = Chain::pane(pane.resistance_m2_k_w, 0.003);
                add(Part::Glass, glass_m2, chain, GLASS_EMITTANCE);
            }
        }
        let absorptance = if case.lined {
            INSIDE_SUN_ABSORPTANCE
        } else {
            case.paint
        };
        Self::with_shares(case, elements, pane, absorptance)
    }

    /// Sun inside by area and absorptance over opaque faces and furniture; a cavity keeps what does not find the glass again.
    fn with_shares(
        case: &BoxCase,
        mut elements: Vec<Element>,
        pane: Glazing,
        absorptance: f64,
    ) -> Self {
        let weight = |element: &Element| match element.part {
            Part::Glass => 0.0,
            Part::Floor => INSIDE_SUN_ABSORPTANCE * element.area_m2,
            _ => absorptance * element.area_m2,
        };
        let furnishing = INSIDE_SUN_ABSORPTANCE * FURNISHING_AREA_M2;
        let sum: f64 = elements.iter().map(weight).sum::<f64>() + furnishing;
        let glass: f64 = elements
            .iter()
            .filter(|element| element.part == Part::Glass)
            .map(|element| element.area_m2)
            .sum();
        let lost = glass * pane.transmittance_diffuse;
        for element in &mut elements {
            element.inside_sun_share = weight(element) / sum;
        }
        elements.push(Element::furnishing(
            case.scale[2] * FURNISHING_CAPACITY_J_K,
            FURNISHING_AREA_M2,
            furnishing / sum,
        ));
        let planes = elements
            .iter()
            .map(|element| {
                let tilt_deg = libm::acos(element.facing_up_cosine).to_degrees();
                Plane::new(tilt_deg, element.azimuth_deg.rem_euclid(360.0))
            })
            .collect();
        Self {
            elements,
            planes,
            paint: case.paint,
            pane,
            kept_sun: sum / (sum + lost),
        }
    }

    fn description(&self, pressure_pa: f64) -> CabinDescription {
        CabinDescription {
            elements: self.elements.clone(),
            air_volume_m3: LENGTH_M * WIDTH_M * HEIGHT_M,
            pressure_pa,
            furnishing_moisture_factor: 0.0,
        }
    }

    fn sun(&self, dome: &SkyDome) -> SunOnElements {
        let mut sun = SunOnElements::NONE;
        for (lane, (element, plane)) in self.elements.iter().zip(&self.planes).enumerate() {
            if matches!(element.part, Part::Floor | Part::Furnishing) {
                continue;
            }
            let falling = dome.on_plane(plane, GROUND_REFLECTANCE);
            let diffuse_w_m2 = falling.sky_diffuse_w_m2 + falling.ground_w_m2;
            if element.part != Part::Glass {
                sun.absorbed_outside_w[lane] = self.paint * element.area_m2 * falling.total_w_m2();
                continue;
            }
            let beam = self.pane.beam(falling.incidence_cosine);
            let absorbed_w_m2 =
                beam.absorbed * falling.beam_w_m2 + self.pane.absorptance_diffuse * diffuse_w_m2;
            let transmitted_w_m2 = beam.transmitted * falling.beam_w_m2
                + self.pane.transmittance_diffuse * diffuse_w_m2;
            sun.absorbed_outside_w[lane] = 0.5 * element.area_m2 * absorbed_w_m2;
            sun.absorbed_inside_w[lane] = 0.5 * element.area_m2 * absorbed_w_m2;
            sun.transmitted_w += self.kept_sun * element.area_m2 * transmitted_w_m2;
        }
        sun
    }
}

fn element(
    part: Part,
    area_m2: f64,
    chain: Chain,
    emittance: f64,
    up: f64,
    azimuth_deg: f64,
) -> Element {
    let middle_m = FLOOR_ABOVE_GROUND_M + 0.5 * HEIGHT_M * (1.0 + up);
    Element {
        part,
        area_m2,
        chain,
        facing_up_cosine: up,
        azimuth_deg: azimuth_deg.rem_euclid(360.0),
        height_m: middle_m,
        outside: if part == Part::Floor {
            Outside::Underside
        } else {
            Outside::Open
        },
        outside_emittance: emittance,
        inside_emittance: emittance,
        inside_sun_share: 0.0,
    }
}

fn opaque(case: &BoxCase, part: Part) -> Chain {
    let layer = |material, thickness_m| Layer {
        material,
        thickness_m,
    };
    let skin = layer(STEEL, 0.001);
    let conductivity = case.scale[0] * INSULATION.conductivity_w_m_k;
    let insulation = INSULATION.with_conductivity(conductivity);
    if part == Part::Floor {
        return Chain::lined(skin, layer(insulation, 0.020), layer(PLYWOOD, 0.012));
    }
    if !case.lined {
        return Chain::sheet(skin);
    }
    Chain::lined(
        skin,
        layer(insulation, case.insulation_m),
        layer(PLYWOOD, 0.006),
    )
}
