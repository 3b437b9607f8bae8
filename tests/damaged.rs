//! Damaged texts: what each reader usually gets, with pieces of it lost, doubled, exchanged or overwritten. The coverage-guided
//! search for what would break them is `make fuzz`; this is a short run of the same.

use noonday_engine::scenario::file::{Filed, to_file};
use noonday_engine::scenario::{Scenario, example, to_share_link};
use noonday_tests::readers;
use noonday_tests::scenarios::config;
use proptest::prelude::*;

const CASES: u32 = 1_500;

/// Most damages to one text.
const DAMAGES: usize = 6;

/// Longest piece that is lost or doubled, bytes.
const PIECE: usize = 40;

#[derive(Clone, Debug)]
enum Damage {
    Lost(prop::sample::Index, usize),
    Doubled(prop::sample::Index, prop::sample::Index, usize),
    Overwritten(prop::sample::Index, Vec<u8>),
    Ended(prop::sample::Index),
}

fn damages() -> impl Strategy<Value = Vec<Damage>> {
    let place = any::<prop::sample::Index>;
    let marks = prop::sample::select(b"0123456789.,-+eE:\"{}[]&=%\r\n\t /;\\\x00\xff".to_vec());
    prop::collection::vec(
        prop_oneof![
            (place(), 1..PIECE).prop_map(|(at, length)| Damage::Lost(at, length)),
            (place(), place(), 1..PIECE)
                .prop_map(|(from, to, length)| Damage::Doubled(from, to, length)),
            (place(), prop::collection::vec(marks, 1..6))
                .prop_map(|(at, bytes)| Damage::Overwritten(at, bytes)),
            place().prop_map(Damage::Ended),
        ],
        1..DAMAGES,
    )
}

fn damaged(text: &[u8], damages: &[Damage]) -> Vec<u8> {
    let mut bytes = text.to_vec();
    for damage in damages {
        let count = bytes.len();
        if count == 0 {
            break;
        }
        let piece = |at: usize, length: usize| at..(at + length).min(count);
        match damage {
            Damage::Lost(at, length) => {
                bytes.drain(piece(at.index(count), *length));
            }
            Damage::Doubled(from, to, length) => {
                let copy = bytes[piece(from.index(count), *length)].to_vec();
                let to = to.index(count);
                bytes.splice(to..to, copy);
            }
            Damage::Overwritten(at, with) => {
                let at = at.index(count);
                bytes.splice(piece(at, with.len()), with.iter().copied());
            }
            Damage::Ended(at) => bytes.truncate(at.index(count)),
        }
    }
    bytes
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

const LOG: &str = include_str!("browser/logged-day.csv");
const WEATHER: &str = include_str!("reference/thermal/weather_GOL.epw");
const LINKS: [&str; 2] = [
    include_str!("golden/links_v1.txt"),
    include_str!("golden/links_v2.txt"),
];

fn links() -> impl Strategy<Value = &'static str> {
    let all: Vec<&str> = LINKS
        .iter()
        .flat_map(|links| links.lines())
        .filter(|line| line.starts_with("v=1") || line.starts_with('2'))
        .collect();
    prop::sample::select(all)
}

fn scenario_file() -> String {
    let scenarios: Vec<Filed> = Scenario::new(example())
        .into_iter()
        .map(|scenario| Filed {
            saved: None,
            scenario,
        })
        .collect();
    to_file(&scenarios)
}

proptest! {
    #![proptest_config(config(CASES))]

    #[test]
    fn links_come_back(link in links(), damages in damages()) {
        readers::link(&text(&damaged(link.as_bytes(), &damages)));
        readers::packed(&damaged(link.as_bytes(), &damages));
    }

    #[test]
    fn files_come_back(damages in damages()) {
        readers::file(&text(&damaged(scenario_file().as_bytes(), &damages)));
    }

    #[test]
    fn logs_come_back(damages in damages()) {
        readers::log(&text(&damaged(LOG.as_bytes(), &damages)));
    }

    #[test]
    fn weather_comes_back(damages in damages()) {
        readers::weather(&text(&damaged(WEATHER.as_bytes(), &damages)));
    }
}

/// The damage has to leave something to read, or else nothing is tried.
#[test]
fn whole_texts_are_read() {
    assert!(noonday_engine::weather::FileWeather::from_epw_text(WEATHER).is_ok());
    assert!(noonday_engine::scenario::from_any_link(&to_share_link(&example())).is_ok());
    assert!(noonday_engine::scenario::file::from_file(&scenario_file()).is_ok());
    assert!(
        noonday_engine::advice::learning::read_log(
            LOG,
            &noonday_engine::advice::learning::Unsaid::USUAL
        )
        .is_ok()
    );
}
