//! All steps at once, where no browser compresses.

use super::{Carried, LONGEST_COMPACT, LinkError, Sealed};
use miniz_oxide::deflate::compress_to_vec;
use miniz_oxide::inflate::decompress_to_vec_with_limit;

/// The best there is: links are short.
const LEVEL: u8 = 10;

impl Carried {
    /// The text of a link that carries it.
    ///
    /// # Errors
    /// [`LinkError::TooLong`].
    pub fn to_link(&self) -> Result<String, LinkError> {
        let sealed = Sealed {
            kind: self.kind(),
            deflated: compress_to_vec(&self.to_compact()?, LEVEL),
        };
        sealed.to_text()
    }

    /// What the text of a link carries, ready to be played or flown.
    ///
    /// # Errors
    /// Every [`LinkError`] but [`LinkError::TooLong`]: whatever the text is, one of them.
    pub fn from_link(text: &str) -> Result<Self, LinkError> {
        let sealed = Sealed::from_text(text)?;
        let compact = decompress_to_vec_with_limit(&sealed.deflated, LONGEST_COMPACT);
        let compact = compact.map_err(|_| LinkError::Damaged)?;
        Self::from_compact(sealed.kind, &compact)
    }
}
