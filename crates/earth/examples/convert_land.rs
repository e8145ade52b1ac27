//! Makes `crates/earth/data/land-110m.bin`, whose layout `earth::land` describes, from the TopoJSON
//! file `land-110m.json` of the npm package world-atlas:
//! `cargo run -p earth --example convert_land -- land-110m.json land-110m.bin`.

use serde_json::Value;
use std::error::Error;

/// Quantised places in one degree, as `earth::land` has them.
const PER_DEGREE: f64 = 60.0;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args_os().skip(1);
    let (Some(from), Some(to)) = (arguments.next(), arguments.next()) else {
        return Err("give the TopoJSON file to read and the file to write".into());
    };
    let topology: Value = serde_json::from_slice(&std::fs::read(from)?)?;
    let arcs = arcs(&topology).ok_or("the topology has no quantised arcs")?;
    let outlines = outlines(&topology, &arcs).ok_or("the topology has no polygons of land")?;
    let mut bytes = Vec::new();
    let mut places = 0;
    for outline in &outlines {
        places += outline.len();
        put(&mut bytes, i32::try_from(outline.len())?);
        let mut before = [0, 0];
        for &place in outline {
            put(&mut bytes, place[0] - before[0]);
            put(&mut bytes, place[1] - before[1]);
            before = place;
        }
    }
    println!(
        "{} outlines, {places} places, {} bytes",
        outlines.len(),
        bytes.len()
    );
    std::fs::write(to, bytes)?;
    Ok(())
}

/// Seven bits to a byte from the lowest up, the eighth set on all bytes but the last; signs are
/// folded in (0, −1, 1, −2 … become 0, 1, 2, 3 …).
fn put(bytes: &mut Vec<u8>, number: i32) {
    let mut rest = ((number << 1) ^ (number >> 31)).cast_unsigned();
    while rest >= 0x80 {
        bytes.push(rest as u8 | 0x80);
        rest >>= 7;
    }
    bytes.push(rest as u8);
}

/// Longitude and latitude in degrees along each arc. TopoJSON stores the first place of an arc
/// and then the steps from place to place, all in quantised units.
fn arcs(topology: &Value) -> Option<Vec<Vec<[f64; 2]>>> {
    let pair = |value: &Value| Some([value.get(0)?.as_f64()?, value.get(1)?.as_f64()?]);
    let scale = pair(topology.get("transform")?.get("scale")?)?;
    let origin = pair(topology.get("transform")?.get("translate")?)?;
    let arc = |steps: &Value| {
        let mut at = [0.0, 0.0];
        steps
            .as_array()?
            .iter()
            .map(|step| {
                let step = pair(step)?;
                at = [at[0] + step[0], at[1] + step[1]];
                Some([at[0] * scale[0] + origin[0], at[1] * scale[1] + origin[1]])
            })
            .collect()
    };
    topology.get("arcs")?.as_array()?.iter().map(arc).collect()
}

/// Every ring of every polygon as quantised latitude and longitude, its first place not repeated
/// at its end.
fn outlines(topology: &Value, arcs: &[Vec<[f64; 2]>]) -> Option<Vec<Vec<[i32; 2]>>> {
    let land = topology.get("objects")?.get("land")?;
    let mut outlines = Vec::new();
    for geometry in land.get("geometries")?.as_array()? {
        for polygon in geometry.get("arcs")?.as_array()? {
            for ring in polygon.as_array()? {
                outlines.push(outline(ring, arcs)?);
            }
        }
    }
    Some(outlines)
}

/// A ring is a list of arcs joined end to end; a negative number stands for its bitwise
/// complement, the arc taken backward.
fn outline(ring: &Value, arcs: &[Vec<[f64; 2]>]) -> Option<Vec<[i32; 2]>> {
    let mut places = Vec::new();
    for index in ring.as_array()? {
        let index = index.as_i64()?;
        let arc = arcs.get(usize::try_from(index.max(!index)).ok()?)?;
        let quantised = |&[longitude, latitude]: &[f64; 2]| {
            [latitude, longitude].map(|degrees| (degrees * PER_DEGREE).round() as i32)
        };
        if index < 0 {
            places.extend(arc.iter().rev().map(quantised));
        } else {
            places.extend(arc.iter().map(quantised));
        }
    }
    places.dedup();
    if places.first() == places.last() {
        places.pop();
    }
    Some(places)
}
