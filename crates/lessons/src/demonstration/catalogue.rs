//! The demonstrations that come with the project.

use super::Demonstration;
use super::DemonstrationError;

/// A demonstration's name and its file's text.
macro_rules! file {
    ($name:literal) => {
        (
            $name,
            include_str!(concat!("../../demonstrations/", $name, ".json")),
        )
    };
}

/// The files in the order in which they are taught, each with its name. The names in the same
/// order stand in `demonstrations/order.json` too, for a build that does not compile this.
pub const FILES: &[(&str, &str)] = &[
    file!("steady-flight"),
    file!("equator-turn"),
    file!("north-from-west"),
    file!("north-from-east"),
    file!("south-from-east"),
    file!("south-from-west"),
    file!("part-way-north"),
    file!("part-way-south"),
    file!("off-north-right"),
    file!("off-north-left"),
    file!("off-south-right"),
    file!("full-circle-right"),
    file!("full-circle-left"),
    file!("speed-east"),
    file!("speed-west"),
    file!("speed-north"),
    file!("speed-south"),
    file!("climb-descent"),
    file!("middle-latitudes"),
    file!("high-latitude"),
    file!("near-pole"),
    file!("southern-onto-north"),
    file!("southern-onto-south"),
    file!("southern-off-south"),
    file!("southern-speed"),
    file!("steep-bank"),
    file!("swirl"),
    file!("rough-air"),
    file!("indicator-in-turn"),
    file!("iron"),
];

/// A demonstration of the catalogue by its name, read and checked; none for a name that is none.
///
/// # Errors
/// A file of the catalogue that cannot be played; none is known.
pub fn find(name: &str) -> Option<Result<Demonstration, DemonstrationError>> {
    let (_, text) = FILES.iter().find(|(known, _)| *known == name)?;
    Some(Demonstration::from_json(text))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_order_for_a_build_is_the_same_and_each_file_bears_its_name() {
        let order: Vec<String> =
            serde_json::from_str(include_str!("../../demonstrations/order.json")).unwrap();
        let names: Vec<&str> = FILES.iter().map(|(name, _)| *name).collect();
        assert_eq!(order, names);
        for name in names {
            assert_eq!(find(name).unwrap().unwrap().name, name);
        }
    }
}
