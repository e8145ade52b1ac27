//! Readings to shapes to SVG: one drawing for every view.
