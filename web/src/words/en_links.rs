//! English, for links, QR codes and frames.

use super::{Button, LinkWords};
use crate::link::Fault;
use crate::share::Subject;
use lessons::link::LinkError;

/// The words for passing on what the page shows.
pub(super) const LINKS: LinkWords = LinkWords {
    share: Button {
        label: "Share",
        name: "Share a link, a QR code or a frame",
    },
    what: "What to share",
    subject: |subject| match subject {
        Subject::Demonstration => "This demonstration",
        Subject::Flight => "This flight",
        Subject::Situation => "This situation",
    },
    making: "Making the link…",
    link: "Link",
    length: |characters, carries| {
        let more = if carries {
            " It holds everything it opens."
        } else {
            ""
        };
        format!("{characters} characters.{more}")
    },
    frame: "Frame for a course page",
    frame_hint: "Paste it into the page’s HTML. Nothing is stored in the browser.",
    copy: "Copy",
    copied: "Copied.",
    copy_by_hand: "Selected: copy it by Ctrl+C.",
    qr_code: "QR code of the link below",
    large: "Large",
    no_qr_code: |characters, most| {
        format!(
            "No QR code: it holds {most} characters, and the link has {characters}. \
             Pass on the link, or the file."
        )
    },
    save_file: "Save as a file",
    close: "Close",
    fault: |fault| match fault {
        Fault::Link(LinkError::Damaged) => {
            "This link was cut short or changed on its way; ask for it again.".to_owned()
        }
        Fault::Link(LinkError::Newer) => {
            "This link was made by a newer version of Dipwise; load the page again to get it."
                .to_owned()
        }
        Fault::Link(LinkError::Refused(error)) => {
            format!("This link carries something that cannot be opened. {error}.")
        }
        Fault::Link(LinkError::TooLong) => {
            "This is too long for a link; pass it on as a file.".to_owned()
        }
        Fault::Unable => {
            "Links need a network once, or a newer browser; go online and try again.".to_owned()
        }
        Fault::NoStart => "This flight began in the middle of a script, so no link can hold it. \
             Share the situation instead."
            .to_owned(),
    },
    put_away: "Dismiss",
    open_in_full: "Open in full",
};
