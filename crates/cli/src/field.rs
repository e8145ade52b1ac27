//! `dipwise field`: the Earth's field at a place and a date.

use crate::failure::Failure;
use crate::options::{accept, date};
use crate::output::{self, Format};
use clap::Args;
use compass::field::Zone;
use compass::unit::NANOTESLA;
use earth::place::{ALTITUDE, LATITUDE, LONGITUDE};
use earth::{Place, PlaceField};
use flights::six_decimals;
use serde::Serialize;
use std::io::Write;

/// Print the Earth's field at a place and a date, by WMM2025.
#[derive(Args)]
pub(crate) struct Field {
    /// Latitude in degrees, north positive.
    #[arg(long, value_name = "DEGREES", allow_negative_numbers = true)]
    lat: f64,
    /// Longitude in degrees, east positive.
    #[arg(long, value_name = "DEGREES", allow_negative_numbers = true)]
    lon: f64,
    /// Year-month-day such as 2026-05-01, or a decimal year such as 2027.5.
    #[arg(long, value_name = "DATE")]
    date: String,
    /// Altitude above the WGS 84 ellipsoid in feet.
    #[arg(
        long,
        value_name = "FEET",
        default_value_t = 0.0,
        allow_negative_numbers = true
    )]
    altitude_ft: f64,
    /// How the field is written.
    #[arg(long, value_enum, default_value = "text")]
    format: Format,
}

#[derive(Serialize)]
struct Output {
    variation_deg: f64,
    dip_deg: f64,
    horizontal_nt: f64,
    north_nt: f64,
    east_nt: f64,
    down_nt: f64,
    total_nt: f64,
    variation_uncertainty_deg: f64,
    dip_uncertainty_deg: f64,
    horizontal_uncertainty_nt: f64,
    north_uncertainty_nt: f64,
    east_uncertainty_nt: f64,
    down_uncertainty_nt: f64,
    total_uncertainty_nt: f64,
    zone: &'static str,
}

impl Field {
    /// Computes and prints.
    pub(crate) fn run(self) -> Result<(), Failure> {
        let field = self.at()?;
        match self.format {
            Format::Json => output::json(&Output::of(&field)),
            Format::Text => text(&Output::of(&field)),
        }
    }

    fn at(&self) -> Result<PlaceField, Failure> {
        let place = Place::new(
            accept("--lat", LATITUDE, self.lat)?,
            accept("--lon", LONGITUDE, self.lon)?,
            accept("--altitude-ft", ALTITUDE, self.altitude_ft)?,
        )
        .map_err(|error| Failure::Input(error.to_string()))?;
        PlaceField::at(place, date(&self.date)?).map_err(|error| Failure::at("--date", error))
    }
}

impl Output {
    fn of(field: &PlaceField) -> Self {
        let degrees = |angle: f64| six_decimals(angle.to_degrees());
        let nanotesla = |intensity: f64| six_decimals(intensity / NANOTESLA);
        let sigma = field.uncertainty();
        Self {
            variation_deg: degrees(field.variation()),
            dip_deg: degrees(field.dip()),
            horizontal_nt: nanotesla(field.horizontal()),
            north_nt: nanotesla(field.north()),
            east_nt: nanotesla(field.east()),
            down_nt: nanotesla(field.down()),
            total_nt: nanotesla(field.total()),
            variation_uncertainty_deg: degrees(sigma.variation),
            dip_uncertainty_deg: degrees(sigma.dip),
            horizontal_uncertainty_nt: nanotesla(sigma.horizontal),
            north_uncertainty_nt: nanotesla(sigma.north),
            east_uncertainty_nt: nanotesla(sigma.east),
            down_uncertainty_nt: nanotesla(sigma.down),
            total_uncertainty_nt: nanotesla(sigma.total),
            zone: match field.zone() {
                Zone::Reliable => "reliable",
                Zone::Caution => "caution",
                Zone::Unreliable => "unreliable",
            },
        }
    }
}

fn text(o: &Output) -> Result<(), Failure> {
    let mut out = output::standard();
    let mut angle = |name: &str, value: f64, sigma: f64, positive: char, negative: char| {
        let side = if value < 0.0 { negative } else { positive };
        writeln!(
            out,
            "{name:<22}{:>9.2}° {side}     ± {sigma:.2}°",
            value.abs()
        )
    };
    angle(
        "variation",
        o.variation_deg,
        o.variation_uncertainty_deg,
        'E',
        'W',
    )?;
    angle("dip", o.dip_deg, o.dip_uncertainty_deg, '↓', '↑')?;
    for (name, value, sigma) in [
        (
            "horizontal intensity",
            o.horizontal_nt,
            o.horizontal_uncertainty_nt,
        ),
        ("north", o.north_nt, o.north_uncertainty_nt),
        ("east", o.east_nt, o.east_uncertainty_nt),
        ("down", o.down_nt, o.down_uncertainty_nt),
        ("total intensity", o.total_nt, o.total_uncertainty_nt),
    ] {
        writeln!(out, "{name:<22}{value:>9.1} nT    ± {sigma:.0} nT")?;
    }
    writeln!(
        out,
        "a compass here is {}",
        match o.zone {
            "reliable" => "steadied by the horizontal intensity",
            "caution" => "to be used with caution: the horizontal intensity is 6000 nT or less",
            _ => "unreliable: the horizontal intensity is 2000 nT or less",
        }
    )?;
    writeln!(
        out,
        "± is one standard deviation. For training, not for navigation."
    )?;
    Ok(out.flush()?)
}
