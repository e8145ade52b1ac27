//! Arrow keys that move a point over a map.

use web_sys::KeyboardEvent;

/// How far north and east an arrow key moves the point, degrees; none for any other key, and for
/// one that is the browser's. Chosen: 5, with Shift 1.
pub(crate) fn moved_by(event: &KeyboardEvent) -> Option<(f64, f64)> {
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return None;
    }
    let by = if event.shift_key() { 1.0 } else { 5.0 };
    match event.key().as_str() {
        "ArrowUp" => Some((by, 0.0)),
        "ArrowDown" => Some((-by, 0.0)),
        "ArrowRight" => Some((0.0, by)),
        "ArrowLeft" => Some((0.0, -by)),
        _ => None,
    }
}
