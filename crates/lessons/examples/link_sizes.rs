//! How long links are, in characters: `cargo run -p lessons --example link_sizes`.

use lessons::demonstration::catalogue::FILES;
use lessons::demonstration::{Demonstration, DemonstrationError};
use lessons::link::{Carried, compact};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    println!("{:>6} {:>8} {:>6}", "JSON", "compact", "link");
    for (name, text) in FILES {
        let demonstration = Demonstration::from_json(text)?;
        print(name, Carried::Demonstration(Box::new(demonstration)))?;
    }
    for minutes in [1, 10, 60] {
        let name = format!("a flight of {minutes} min, a command every 2 s");
        print(&name, Carried::Flight(flight(30 * minutes)?))?;
    }
    Ok(())
}

/// A flight with that many commands, two seconds apart.
fn flight(commands: u32) -> Result<flights::ScenarioFile, DemonstrationError> {
    let control = |index: u32| {
        // Some to-and-fro without a pattern that would compress.
        let some = index.wrapping_mul(2_654_435_761) >> 20;
        format!(
            r#"{{"time_s": {}, "bank_deg": {}, "airspeed_kt": {}, "pitch_deg": 0, "rudder": 0}}"#,
            2.0 * f64::from(index) + f64::from(some % 200) / 200.0,
            some % 7 * 5,
            100 + some % 3 * 5,
        )
    };
    let controls: Vec<String> = (0..commands).map(control).collect();
    let json = format!(
        r#"{{"field": {{"latitude_deg": 52}}, "start": {{"heading_deg": 350, "speed_kt": 100}},
            "controls": [{}], "duration_s": {}}}"#,
        controls.join(", "),
        2 * commands,
    );
    Ok(flights::read_json(&json)?)
}

fn print(name: &str, carried: Carried) -> Result<(), Box<dyn std::error::Error>> {
    let json = carried.to_json()?;
    let link = carried.to_link().map(|it| it.len().to_string());
    let link = link.unwrap_or_else(|error| error.to_string());
    let compact = compact::write(&json).unwrap_or_default().len();
    println!("{:>6} {compact:>8} {link:>6}  {name}", json.len());
    Ok(())
}
