//! The text of a link.

use super::{Kind, LONGEST, LinkError, VERSION};
use base64::Engine;
use base64::prelude::BASE64_URL_SAFE_NO_PAD;
use crc::{CRC_32_ISO_HDLC, Crc, NoTable};

/// Bytes before the compressed form.
const HEAD: usize = 6;

/// A compressed compact form with its kind, as it travels.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sealed {
    /// What kind of thing it is.
    pub kind: Kind,
    /// Its compact form, compressed by deflate.
    pub deflated: Vec<u8>,
}

impl Sealed {
    /// The text of the link: letters, figures, hyphens and low lines.
    ///
    /// # Errors
    /// [`LinkError::TooLong`].
    pub fn to_text(&self) -> Result<String, LinkError> {
        let kind = self.kind as u8;
        let checksum = checksum(VERSION, kind, &self.deflated).to_le_bytes();
        let bytes = [&[VERSION, kind], &checksum[..], &self.deflated].concat();
        let text = BASE64_URL_SAFE_NO_PAD.encode(bytes);
        if text.len() > LONGEST {
            return Err(LinkError::TooLong);
        }
        Ok(text)
    }

    /// Reads the text of a link.
    ///
    /// # Errors
    /// [`LinkError::Damaged`] for a text that is not as it was made, [`LinkError::Newer`] for one
    /// that is, but of a version or a kind that is not known here.
    pub fn from_text(text: &str) -> Result<Self, LinkError> {
        if text.len() > LONGEST {
            return Err(LinkError::Damaged);
        }
        let bytes = BASE64_URL_SAFE_NO_PAD.decode(text);
        let bytes = bytes.map_err(|_| LinkError::Damaged)?;
        let (head, deflated) = bytes
            .split_first_chunk::<HEAD>()
            .ok_or(LinkError::Damaged)?;
        let [version, kind, sum @ ..] = *head;
        if u32::from_le_bytes(sum) != checksum(version, kind, deflated) {
            return Err(LinkError::Damaged);
        }
        let kind = Kind::ALL
            .into_iter()
            .find(|known| version == VERSION && *known as u8 == kind)
            .ok_or(LinkError::Newer)?;
        Ok(Self {
            kind,
            deflated: deflated.to_vec(),
        })
    }
}

fn checksum(version: u8, kind: u8, deflated: &[u8]) -> u32 {
    // Without a table: links are short, and a table would be most of this in the page.
    const CRC: Crc<u32, NoTable> = Crc::<u32, NoTable>::new(&CRC_32_ISO_HDLC);
    let mut digest = CRC.digest();
    digest.update(&[version, kind]);
    digest.update(deflated);
    digest.finalize()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sealed() -> Sealed {
        Sealed {
            kind: Kind::Flight,
            deflated: (0..40).collect(),
        }
    }

    /// The text with bytes of the head changed and the checksum put right again.
    fn resealed(version: u8, kind: u8) -> String {
        let deflated = sealed().deflated;
        let sum = checksum(version, kind, &deflated).to_le_bytes();
        BASE64_URL_SAFE_NO_PAD.encode([&[version, kind], &sum[..], &deflated].concat())
    }

    #[test]
    fn what_is_sealed_is_read_again() {
        let text = sealed().to_text().unwrap();
        assert_eq!(Sealed::from_text(&text), Ok(sealed()));
        assert_eq!(resealed(1, 2), text);
    }

    #[test]
    fn a_version_or_a_kind_to_come_is_said_to_be_newer() {
        for text in [resealed(2, 2), resealed(255, 1), resealed(1, 5)] {
            assert_eq!(Sealed::from_text(&text), Err(LinkError::Newer));
        }
    }

    #[test]
    fn the_longest_is_made_and_read_and_one_longer_neither() {
        let mut sealed = sealed();
        sealed.deflated = vec![7; LONGEST / 4 * 3 - HEAD];
        let text = sealed.to_text().unwrap();
        assert_eq!(text.len(), LONGEST);
        assert_eq!(Sealed::from_text(&text), Ok(sealed.clone()));
        sealed.deflated.push(7);
        assert_eq!(sealed.to_text(), Err(LinkError::TooLong));
        let longer = text + "A";
        assert_eq!(Sealed::from_text(&longer), Err(LinkError::Damaged));
    }
}
