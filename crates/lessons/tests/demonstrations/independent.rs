//! The figures once more, from a flight's rows alone: other code than the one that measures them
//! for a demonstration, which flies, samples, unfolds and interpolates in its own way.

use compass::float_settings::LIQUID_SPIN_UP;
use compass::maths;
use flights::{Row, Scenario};
use lessons::demonstration::{Act, Beside, Compare, Demonstration, Figure, On, STRAY_IRON_NT};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Seconds between two rows.
pub(crate) const EVERY: f64 = 0.05;

/// Two routes to an angle may differ by this many degrees. Between two rows the reading bows by
/// a·t²/8; a card gathers way by less than 50° a second each second, and rows are 0.05 s apart:
/// 0.016°. Rows are rounded to 1e-6°.
pub(crate) const ANGLE_TOLERANCE: f64 = 0.02;

/// A moment of settling is found to the rows of both routes: 0.05 s and 0.02 s.
pub(crate) const TIME_TOLERANCE: f64 = 0.07;

/// A flight in rows.
pub(crate) struct Rows {
    rows: Vec<Row>,
    /// Headings and readings that go on past north, each by its own steps.
    heading: Vec<f64>,
    reading: Vec<f64>,
    latitude: f64,
    dip: f64,
    sets: Vec<f64>,
}

/// An angle in (−180, 180].
pub(crate) fn wrap(degrees: f64) -> f64 {
    let turned = degrees.rem_euclid(360.0);
    if turned > 180.0 {
        turned - 360.0
    } else {
        turned
    }
}

fn unfolded(rows: &[Row], of: impl Fn(&Row) -> f64) -> Vec<f64> {
    let mut sum = of(&rows[0]);
    let mut all = vec![sum];
    for two in rows.windows(2) {
        sum += wrap(of(&two[1]) - of(&two[0]));
        all.push(sum);
    }
    all
}

impl Rows {
    /// A demonstration's flight.
    pub(crate) fn of(demonstration: &Demonstration) -> Self {
        let file = serde_json::to_value(&demonstration.scenario).unwrap();
        let cues = demonstration.cues.iter();
        let sets = cues.filter(|cue| matches!(cue.act, Act::SetIndicator));
        Self::flown(&file, sets.map(|cue| cue.at_s).collect())
    }

    /// The same flight in the second situation, its file changed as one would by hand.
    fn beside(demonstration: &Demonstration, situation: Compare) -> Self {
        let mut file = serde_json::to_value(&demonstration.scenario).unwrap();
        let latitude = file["field"]["latitude_deg"].as_f64().unwrap();
        let dipole = |latitude: f64| {
            let latitude = latitude.to_radians();
            (
                30_000.0 * maths::cos(latitude),
                60_000.0 * maths::sin(latitude),
            )
        };
        match situation {
            Compare::Alone => {}
            Compare::OtherHemisphere => file["field"] = json!({"latitude_deg": -latitude}),
            Compare::LatitudeDeg(degrees) => file["field"] = json!({"latitude_deg": degrees}),
            Compare::NoVerticalField => {
                let (horizontal, _) = dipole(latitude);
                file["field"] = json!({"horizontal_nt": horizontal, "vertical_nt": 0.0});
            }
            Compare::NoSwirl => {
                file["float"]["liquid_spin_up_s"] = json!(LIQUID_SPIN_UP.most);
            }
            Compare::OtherIron if file.get("iron").is_some() => {
                file.as_object_mut().unwrap().remove("iron");
            }
            Compare::OtherIron => file["iron"] = json!({"hard_nt": STRAY_IRON_NT}),
        }
        Self::flown(&file, Vec::new())
    }

    fn flown(file: &Value, sets: Vec<f64>) -> Self {
        let rows = Scenario::from_json(&file.to_string()).unwrap();
        let rows: Vec<Row> = rows.rows(EVERY).unwrap().collect();
        let latitude = file["field"]["latitude_deg"].as_f64().unwrap_or(0.0);
        // The dipole: tan(dip) = 2 tan(latitude).
        let dip = maths::atan(2.0 * maths::tan(latitude.to_radians())).to_degrees();
        Self {
            heading: unfolded(&rows, |row| row.heading_deg),
            reading: unfolded(&rows, |row| row.reading_deg),
            rows,
            latitude,
            dip,
            sets,
        }
    }

    fn between(&self, time: f64, of: impl Fn(usize) -> f64) -> f64 {
        let place = time / EVERY;
        let before = (place as usize).min(self.rows.len() - 2);
        let share = (place - before as f64).min(1.0);
        of(before) * (1.0 - share) + of(before + 1) * share
    }

    /// The heading, going on past north.
    pub(crate) fn heading(&self, time: f64) -> f64 {
        self.between(time, |index| self.heading[index])
    }

    fn reading(&self, time: f64) -> f64 {
        self.between(time, |index| self.reading[index])
    }

    /// Reading less heading.
    pub(crate) fn error(&self, time: f64) -> f64 {
        wrap(self.reading(time) - self.heading(time))
    }

    fn within(&self, [from, to]: [f64; 2]) -> impl Iterator<Item = usize> + '_ {
        let inside = move |row: &Row| row.time_s > from - 1e-9 && row.time_s < to + 1e-9;
        let rows = self.rows.iter().enumerate();
        rows.filter_map(move |(index, row)| inside(row).then_some(index))
    }

    fn most(&self, stretch: [f64; 2], of: impl Fn(usize) -> f64) -> f64 {
        self.within(stretch).map(of).fold(f64::MIN, f64::max)
    }

    /// 1 to the right, −1 to the left: of the last turn before a time, or of the first after.
    fn side(&self, time: f64) -> f64 {
        let turns = |row: &&Row| row.rate_of_turn_deg_s.abs() > 0.5;
        let mut before = self.rows.iter().filter(|row| row.time_s < time + EVERY);
        let turn = before.rfind(turns);
        let turn = turn.or_else(|| self.rows.iter().find(|row| turns(row)));
        turn.map_or(1.0, |row| row.rate_of_turn_deg_s.signum())
    }

    /// When something first passes a heading.
    fn passes(&self, of: &[f64], on: On) -> Option<f64> {
        let off = |index: usize| wrap(of[index] - on.heading_deg);
        let mut steps = (0..of.len() - 1).filter(|index| self.rows[*index].time_s >= on.after_s);
        let step = steps.find(|&index| {
            off(index).abs() < 30.0 && off(index).signum() != off(index + 1).signum()
        })?;
        let (one, next) = (off(step).abs(), off(step + 1).abs());
        Some(self.rows[step].time_s + EVERY * one / (one + next))
    }

    /// The rule's lag: the latitude on north, as much a lead on south, in proportion between.
    fn rule(&self, heading: f64) -> f64 {
        self.latitude * (90.0 - wrap(heading).abs()) / 90.0
    }

    fn bank(&self, time: f64) -> f64 {
        self.between(time, |index| self.rows[index].bank_deg)
    }

    fn indicator_error(&self, time: f64) -> f64 {
        // 15.04° an hour, by the sine of the latitude, falling in the northern hemisphere.
        let drift = -15.04 / 3600.0 * maths::sin(self.latitude.to_radians());
        match self.sets.iter().rfind(|set| **set <= time) {
            Some(set) => self.error(*set) + drift * (time - set),
            None => drift * time,
        }
    }

    /// A figure's number; none for words and for what never happens.
    fn number(&self, figure: &Figure) -> Option<f64> {
        let nose = |on: On| self.passes(&self.heading, on);
        let lag = |index: usize| {
            let rate = self.rows[index].rate_of_turn_deg_s;
            if rate.abs() < 0.5 {
                0.0
            } else {
                -rate.signum() * self.rows[index].error_deg
            }
        };
        let error = |index: usize| self.rows[index].error_deg;
        let north = |index: usize| {
            let row = &self.rows[index];
            wrap(row.heading_deg).abs() - wrap(row.reading_deg).abs()
        };
        let travel =
            |of: &dyn Fn(f64) -> f64, [from, to]: [f64; 2]| self.side(to) * (of(to) - of(from));
        Some(match *figure {
            Figure::LagOn(on) => {
                let time = nose(on)?;
                -self.side(time) * self.error(time)
            }
            Figure::RuleOn(on) => {
                nose(on)?;
                self.rule(on.heading_deg)
            }
            Figure::RollOutOn(on) => {
                let time = nose(on)?;
                let before = self.rule(on.heading_deg) + self.bank(time).abs() / 2.0;
                (on.heading_deg - self.side(time) * before).rem_euclid(360.0)
            }
            Figure::ClosedFormOn(on) => {
                let time = nose(on)?;
                let (heading, bank) = (on.heading_deg.to_radians(), self.bank(time).to_radians());
                // E. Williams, Compass Errors (2001), eq. 2.
                let pull = maths::tan(self.dip.to_radians()) * maths::sin(bank);
                let across = maths::sin(heading) * maths::cos(bank) - pull;
                let reading = maths::atan2(across, maths::cos(heading)).to_degrees();
                -self.side(time) * wrap(reading - on.heading_deg)
            }
            Figure::LagAt(time) => -self.side(time) * self.error(time),
            Figure::GreatestLag(stretch) => self.most(stretch, lag),
            Figure::GreatestLead(stretch) => -self.most(stretch, |index| -lag(index)),
            Figure::ErrorAt(time) => self.error(time),
            Figure::GreatestError(stretch) => self.most(stretch, |index| error(index).abs()),
            Figure::AverageError(stretch) => {
                let errors: Vec<f64> = self.within(stretch).map(error).collect();
                errors.iter().sum::<f64>() / errors.len() as f64
            }
            Figure::Swing(stretch) => {
                self.most(stretch, error) + self.most(stretch, |index| -error(index))
            }
            Figure::TowardNorth(stretch) => {
                let (to, away) = (self.most(stretch, north), self.most(stretch, |i| -north(i)));
                if to > away { to } else { -away }
            }
            Figure::FirstWay([from, to]) => {
                let (side, start) = (self.side(to), self.reading(from));
                self.most([from, to], |index| side * (start - self.reading[index]))
                    .max(0.0)
            }
            Figure::ShortOf(on) => {
                let time = self.passes(&self.reading, on)?;
                self.side(time) * wrap(on.heading_deg - self.heading(time))
            }
            Figure::ReadingTravel(stretch) | Figure::Round(stretch) => {
                travel(&|time| self.reading(time), stretch)
            }
            Figure::HeadingTravel(stretch) => travel(&|time| self.heading(time), stretch),
            Figure::SettlesAfter(from) => {
                let rest = self.rows[self.rows.len() - 1].error_deg;
                let away = |row: &&Row| (row.error_deg - rest).abs() > 2.0;
                self.rows.iter().rfind(away)?.time_s - from
            }
            Figure::HeadingAt(time) => self.heading(time).rem_euclid(360.0),
            Figure::ReadingAt(time) => self.reading(time).rem_euclid(360.0),
            Figure::BankAt(time) => self.bank(time).abs(),
            Figure::RateOfTurnAt(time) => self
                .between(time, |index| self.rows[index].rate_of_turn_deg_s)
                .abs(),
            Figure::SpeedAt(time) => self.between(time, |index| self.rows[index].airspeed_kt),
            Figure::IndicatorErrorAt(time) => self.indicator_error(time),
            Figure::Latitude => self.latitude,
            Figure::Dip => self.dip.abs(),
            Figure::BankWithoutRevolution => 90.0 - self.dip.abs(),
            // Of its own flight's rows.
            Figure::Aid(_) | Figure::Beside(_) => return None,
        })
    }
}

/// All numbers of a demonstration's figures.
pub(crate) fn numbers(demonstration: &Demonstration) -> BTreeMap<String, Option<f64>> {
    let rows = Rows::of(demonstration);
    let mut others: Vec<(Compare, Rows)> = Vec::new();
    let figures = demonstration.figures.iter();
    let numbers = figures.map(|(key, figure)| {
        let number = match figure {
            Figure::Beside(Beside { situation, measure }) => {
                if others.iter().all(|(known, _)| known != situation) {
                    others.push((*situation, Rows::beside(demonstration, *situation)));
                }
                let other = others.iter().find(|(known, _)| known == situation);
                other.unwrap().1.number(measure)
            }
            figure => rows.number(figure),
        };
        (key.clone(), number)
    });
    numbers.collect()
}

/// The figure itself, or the one that is measured in the second situation.
pub(crate) fn here(figure: &Figure) -> &Figure {
    match figure {
        Figure::Beside(beside) => &beside.measure,
        figure => figure,
    }
}
