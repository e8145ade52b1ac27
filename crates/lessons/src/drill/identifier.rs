//! Names that are the same for the same thing and for nothing else, as course platforms ask.

use uuid::Uuid;

/// Where they come from; chosen at random.
const NAMESPACE: Uuid = Uuid::from_u128(0x1684_f1ef_c6e3_496b_a825_f1e4_0523_74ad);

/// A name of its own for a text (RFC 9562, 5.5).
pub(super) fn of_text(text: &str) -> String {
    Uuid::new_v5(&NAMESPACE, text.as_bytes()).to_string()
}
