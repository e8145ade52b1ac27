//! What a map shows, made from the field and the lags: lines, areas and their words.

use super::work::{Lags, World};
use crate::words::MapWords;
use compass::field::{CAUTION_BELOW, UNRELIABLE_BELOW};
use compass::unit::NANOTESLA;
use drawing::world_map::{self, Area, Look, Place, Weight, WorldMapView};
use earth::contours::{areas, deepest, lines};
use earth::grid::{FieldGrid, Grid, Quantity};
use earth::wmm::dip_pole;
use lessons::rule_map::{GOOD, less_rule, steady_lag};
use std::f64::consts::FRAC_PI_2;

/// What is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Show {
    /// Dip.
    Dip,
    /// Variation.
    Variation,
    /// Horizontal intensity.
    Horizontal,
    /// The lag of the closed form, less the rule.
    Steady,
    /// The lag of a simulated float, less the rule.
    Simulated,
}

impl Show {
    /// By the name that the address has for it.
    pub(crate) fn named(name: &str) -> Self {
        match name {
            "variation" => Self::Variation,
            "horizontal" => Self::Horizontal,
            "steady" => Self::Steady,
            "simulated" => Self::Simulated,
            _ => Self::Dip,
        }
    }

    /// Whether it is about the rule of thumb.
    pub(crate) fn is_of_rule(self) -> bool {
        matches!(self, Self::Steady | Self::Simulated)
    }
}

/// A line, with what it owns.
#[derive(Clone, Debug, PartialEq)]
struct Line {
    points: Vec<Place>,
    words: String,
    weight: Weight,
}

/// An area, with what it owns.
#[derive(Clone, Debug, PartialEq)]
struct Zone {
    outlines: Vec<Vec<Place>>,
    look: Look,
    words: &'static str,
    at: Vec<Place>,
}

/// Everything that a map shows but the land and what is pointed at.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Shown {
    lines: Vec<Line>,
    zones: Vec<Zone>,
    spots: Vec<(Place, &'static str)>,
}

/// The least depth at which an area bears its name, in steps of the mesh; chosen: half the height
/// of a word on a map 1000 wide.
const ROOM: u16 = 4;

impl Shown {
    /// The map of one quantity. That of a simulated float is empty until its lags are there.
    pub(crate) fn new(
        show: Show,
        world: &World,
        bank: f64,
        lags: Option<&Lags>,
        words: &MapWords,
    ) -> Self {
        let mut shown = Self::default();
        match show {
            Show::Dip => shown.dip(&world.field, words),
            Show::Variation => shown.variation(&world.field, words),
            Show::Horizontal => shown.horizontal(&world.field, words),
            Show::Steady | Show::Simulated => {
                if let Some(grid) = off_grid(show, &world.field, bank, lags) {
                    shown.rule(&grid, words);
                }
            }
        }
        shown.unsafe_zones(&world.field, words);
        let poles = [(true, words.north_pole), (false, words.south_pole)];
        shown.spots = (poles.iter())
            .filter_map(|&(north, name)| {
                let pole = dip_pole(world.date, north).ok()?;
                Some(((pole.latitude(), pole.longitude()), name))
            })
            .collect();
        shown
    }

    fn dip(&mut self, field: &FieldGrid, words: &MapWords) {
        let grid = field.of(Quantity::Dip);
        let steepness = grid.map(f64::abs);
        for level in [20.0_f64, 40.0, 60.0, 80.0] {
            self.zone(Look::Shade, areas(&steepness, level.to_radians()));
        }
        for level in (-80..=80).step_by(10) {
            let weight = match level {
                0 => Weight::Strong,
                ..0 => Weight::Below,
                _ => Weight::Plain,
            };
            let name = if level == 0 {
                words.dip_equator.to_owned()
            } else {
                (words.degrees)(f64::from(level))
            };
            self.level(&grid, f64::from(level).to_radians(), name, weight);
        }
    }

    fn variation(&mut self, field: &FieldGrid, words: &MapWords) {
        let grid = field.of(Quantity::Variation);
        let size = grid.map(f64::abs);
        for level in [10.0_f64, 20.0, 40.0, 90.0] {
            self.zone(Look::Shade, areas(&size, level.to_radians()));
        }
        for level in [
            -150, -120, -90, -60, -40, -30, -20, -15, -10, -5, 0, 5, 10, 15, 20, 30, 40, 60, 90,
            120, 150,
        ] {
            let weight = match level {
                0 => Weight::Strong,
                ..0 => Weight::Below,
                _ => Weight::Plain,
            };
            let name = (words.variation)(f64::from(level));
            self.level(&grid, f64::from(level).to_radians(), name, weight);
        }
    }

    fn horizontal(&mut self, field: &FieldGrid, words: &MapWords) {
        let grid = field.of(Quantity::Horizontal);
        let weakness = grid.map(|it| -it);
        for level in [30e-6, 20e-6, 10e-6] {
            self.zone(Look::Shade, areas(&weakness, -level));
        }
        for thousands in [10, 15, 20, 25, 30, 35, 40] {
            let level = f64::from(thousands) * 1000.0 * NANOTESLA;
            self.level(
                &grid,
                level,
                (words.nanotesla)(1000 * thousands),
                Weight::Plain,
            );
        }
    }

    fn rule(&mut self, grid: &Grid, words: &MapWords) {
        let short = grid.map(|it| -it);
        for (grid, look, words) in [
            (&short, Look::Rising, words.over_leads),
            (grid, Look::Upright, words.under_leads),
        ] {
            let halves = [[0.0, FRAC_PI_2], [-FRAC_PI_2, 0.0]];
            let at = halves.iter();
            let at = at.filter_map(|half| deepest(grid, GOOD, *half, ROOM));
            self.zones.push(Zone {
                outlines: areas(grid, GOOD),
                look,
                words,
                at: at.collect(),
            });
        }
        let goodness = grid.map(|it| GOOD - it.abs());
        // Its word stands in the band about the magnetic equator, where most of it is.
        let best = deepest(&goodness, 0.0, [-1.0, 1.0], 2)
            .into_iter()
            .collect();
        self.zones.push(Zone {
            outlines: Vec::new(),
            look: Look::Shade,
            words: words.good,
            at: best,
        });
        for level in (-60..=60).step_by(10) {
            let weight = match level {
                0 => Weight::Strong,
                ..0 => Weight::Below,
                _ => Weight::Plain,
            };
            let name = (words.signed)(f64::from(level));
            self.level(grid, f64::from(level).to_radians(), name, weight);
        }
    }

    /// Where a compass is to be used with caution, or not at all.
    fn unsafe_zones(&mut self, field: &FieldGrid, words: &MapWords) {
        let grid = field.of(Quantity::Horizontal);
        let weakness = grid.map(|it| -it);
        for (look, below, name) in [
            (Look::Caution, CAUTION_BELOW, words.caution),
            (Look::Unreliable, UNRELIABLE_BELOW, words.unreliable),
        ] {
            self.zone(look, areas(&weakness, -below));
            let line = lines(&grid, below);
            self.lines.extend(line.into_iter().map(|line| Line {
                points: line.points().to_vec(),
                words: name.to_owned(),
                weight: Weight::Plain,
            }));
        }
    }

    fn zone(&mut self, look: Look, outlines: Vec<Vec<Place>>) {
        self.zones.push(Zone {
            outlines,
            look,
            words: "",
            at: Vec::new(),
        });
    }

    fn level(&mut self, grid: &Grid, level: f64, words: String, weight: Weight) {
        let found = lines(grid, level).into_iter().map(|line| Line {
            points: line.points().to_vec(),
            words: words.clone(),
            weight,
        });
        self.lines.extend(found);
    }

    /// How many lines there are.
    pub(crate) fn count(&self) -> usize {
        self.lines.len()
    }

    /// Hands the view of it to what draws it.
    pub(crate) fn viewed<T>(
        &self,
        land: &[Vec<Place>],
        projection: world_map::Projection,
        place: Option<Place>,
        draw: impl FnOnce(&WorldMapView) -> T,
    ) -> T {
        let lines: Vec<world_map::Line> = (self.lines.iter())
            .map(|line| world_map::Line {
                points: &line.points,
                words: &line.words,
                weight: line.weight,
            })
            .collect();
        let areas: Vec<Area> = (self.zones.iter())
            .map(|zone| Area {
                outlines: &zone.outlines,
                look: zone.look,
                words: zone.words,
                at: &zone.at,
            })
            .collect();
        draw(&WorldMapView {
            projection,
            areas: &areas,
            land,
            lines: &lines,
            spots: &self.spots,
            place,
            pointer: None,
        })
    }
}

/// The lag at north less the rule at every node, rad; not a number where there is none.
pub(crate) fn off_grid(
    show: Show,
    field: &FieldGrid,
    bank: f64,
    lags: Option<&Lags>,
) -> Option<Grid> {
    let grid = field.of(Quantity::Dip);
    let mesh = grid.mesh();
    let simulated = match show {
        Show::Simulated => Some(lags?),
        _ => None,
    };
    let nodes = field.nodes().iter().enumerate();
    let off = nodes.map(|(index, node)| {
        let latitude = mesh.latitude((index / mesh.columns()) as f64);
        let lag = match simulated {
            None => Some(steady_lag(node.dip, bank)),
            Some(lags) => node.field().and_then(|field| lags.table.lag(field)),
        };
        lag.map_or(f64::NAN, |lag| less_rule(lag, latitude))
    });
    Grid::from_values(mesh, off.collect())
}
