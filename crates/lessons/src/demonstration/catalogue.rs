//! The demonstrations that come with the project.

use super::Demonstration;
use super::DemonstrationError;

/// The files in the order in which they are taught, each with its name.
pub const FILES: &[(&str, &str)] = &[];

/// A demonstration of the catalogue by its name, read and checked; none for a name that is none.
///
/// # Errors
/// A file of the catalogue that cannot be played; none is known.
pub fn find(name: &str) -> Option<Result<Demonstration, DemonstrationError>> {
    let (_, text) = FILES.iter().find(|(known, _)| *known == name)?;
    Some(Demonstration::from_json(text))
}
