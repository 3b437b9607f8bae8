//! Place and day.

use super::{Wording, say};

pub(super) fn wording(key: &str) -> Option<Wording> {
    place(key).or_else(|| day(key))
}

fn place(key: &str) -> Option<Wording> {
    Some(match key {
        "place.latitude_deg" => say(
            "Latitude",
            "It sets how high the sun stands and how long the day is. North is positive, south negative.",
            "between the polar circles, where every day has a sunrise",
        ),
        "place.longitude_deg" => say(
            "Longitude",
            "With the clock it sets when noon is. East is positive, west negative.",
            "once round the earth",
        ),
        "place.altitude_m" => say(
            "Altitude",
            "Thin air lets more sun through and carries less heat, and a cooler moves less air by weight.",
            "where roads go",
        ),
        "place.utc_offset_h" => say(
            "Clock ahead of UTC",
            "Standard time of the place, without summer time: −6 for the middle of North America, +1 for central Europe.",
            "the world's time zones",
        ),
        "place.summer_time" => say(
            "The clock shows summer time",
            "In summer time the sun is highest an hour later by the clock, and so is the heat.",
            "",
        ),
        "place.terrain" => say(
            "The land around is",
            "Buildings and trees slow the wind that carries the sun's heat off the skin.",
            "",
        ),
        "place.ground" => say(
            "It stands on",
            "Sunlit asphalt grows far hotter than grass and heats floor and walls from below.",
            "",
        ),
        _ => return None,
    })
}

fn day(key: &str) -> Option<Wording> {
    Some(match key {
        "day.date" => say(
            "First day",
            "The date sets the path of the sun. Choose a day near the hottest that the set-up must survive.",
            "",
        ),
        "day.start_hour" => say(
            "The run begins at",
            "Morning is a good start: the cabin is near outdoor temperature and what went before matters least.",
            "the hours of one day",
        ),
        "day.days" => say(
            "Days to run",
            "Several days show whether the bank recovers or runs down a little further every day.",
            "a week at most",
        ),
        "day.high_c" => say(
            "Highest temperature",
            "The day's high as forecasts give it, in shade. The cabin in the sun has to be cooled against far more.",
            "days on which cooling is asked for",
        ),
        "day.low_c" => say(
            "Lowest temperature",
            "A cool night empties the heat out of furniture and walls for nothing; a warm one does not.",
            "and at least 0.5 °C (1 °F) below the high",
        ),
        "day.humidity_given" => say(
            "Water in the air is given as",
            "Forecasts give either; the dew point is the better measure, for it stays much the same from morning to evening.",
            "",
        ),
        "day.relative_humidity_at_high" => say(
            "Humidity in the warmest hour",
            "The humidity when the day is at its highest temperature, in the afternoon. The same air has a far higher humidity in the cool morning: take the afternoon's, not the day's mean.",
            "as far as the dew point that it gives stays between desert air and the most humid coasts",
        ),
        "day.dew_point_c" => say(
            "Dew point",
            "It says how much water is in the air. Above about 18 °C (65 °F) it feels muggy, and the cooler spends much of its work on water.",
            "from desert air to the most humid coasts",
        ),
        "day.cloud_fraction" => say(
            "Cloud",
            "Cloud takes away sun from roof and panels alike, and keeps the night warm.",
            "from clear to overcast",
        ),
        "day.wind_speed_m_s" => say(
            "Wind",
            "As forecast, over open country. Wind cools a sunlit skin and drives air through leaks.",
            "from calm to a gale",
        ),
        "day.wind_from_deg" => say(
            "Wind from",
            "Clockwise from north: 90° is from the east, 180° from the south. A leak to windward lets in more.",
            "once round the compass",
        ),
        "day.linke_turbidity" => say(
            "Haze (Linke turbidity)",
            "How much haze and water vapour dim the clear sun: about 2 in mountain air, 3 to 4 in summer, more in cities.",
            "from the clearest air to thick haze",
        ),
        "day.warming_per_day_k" => say(
            "Warming from day to day",
            "A heat wave builds up: each day is that much warmer than the one before.",
            "faster changes do not last",
        ),
        "day.shade_beam_share" => say(
            "Shade from the sun itself",
            "The share of direct sun that trees, buildings or an awning take away. Nothing else costs so little and does so much.",
            "from none to full shade",
        ),
        "day.shade_sky_share" => say(
            "Shade from the sky",
            "The share of the bright sky that is hidden; under trees it is less than the shade from the sun.",
            "from none to a closed roof",
        ),
        "day.shade_from_hour" => say(
            "Shade from",
            "The hours when the shade falls on the vehicle. The same hour twice means all day.",
            "",
        ),
        "day.shade_until_hour" => say(
            "Shade until",
            "The hours when the shade falls on the vehicle. The same hour twice means all day.",
            "",
        ),
        _ => return None,
    })
}
