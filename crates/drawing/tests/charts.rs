//! Charts and map: what they look like for a set of situations, and that nothing breaks them.
#![cfg(not(target_family = "wasm"))]

use compass::heading::{CompassHeading, MagneticHeading};
use compass::maths;
use compass::steady::in_turn;
use drawing::error_chart::{self, ErrorAt, ErrorChartView, error_chart, sampled};
use drawing::shape::{Paint, Shape, Text};
use drawing::strip_chart::{self, Event, Sample, StripChartView, StripLayout, strip_chart};
use drawing::svg::Picture;
use drawing::theme::Theme;
use drawing::world_map::{self, Place, Weight, WorldMapView, world_map};
use kurbo::{BezPath, Size};
use proptest::num::f64::ANY;
use proptest::prelude::*;

/// A flight by formula: a turn from `start` at three degrees a second for `turning` seconds, the
/// card behind by a smooth error of `error` degrees.
fn flight(seconds: u32, start: f64, turning: f64, error: f64) -> Vec<Sample> {
    (0..=2 * seconds)
        .map(|half| {
            let time = f64::from(half) / 2.0;
            let turned = 3.0 * (time - 5.0).clamp(0.0, turning);
            let rate = if (5.0..5.0 + turning).contains(&time) {
                3.0
            } else {
                0.0
            };
            let swing = maths::sin((time / 12.0).min(3.0));
            let heading = start + turned;
            Sample {
                time,
                heading: MagneticHeading::from_degrees(heading),
                reading: CompassHeading::from_degrees(heading - error * swing * swing),
                rate_of_turn: f64::to_radians(rate),
                bank: f64::to_radians(5.0 * rate),
                airspeed: 50.0 + time / 10.0,
            }
        })
        .collect()
}

const WORDS: strip_chart::Words = strip_chart::Words {
    heading: "heading",
    compass: "compass",
    error: "error",
    lags: "lags",
    leads: "leads",
    bank: "bank",
    right: "right",
    left: "left",
    airspeed: "kt",
    stretch: "loop",
    empty: "nothing yet",
};

fn svg(size: Size, shapes: &[Shape]) -> String {
    let theme = Theme::day();
    Picture {
        size,
        shapes,
        theme: &theme,
        id: "chart",
        title: "title",
        description: "description",
        ground: true,
    }
    .to_svg()
}

#[test]
fn strips_of_a_turn_through_north() {
    let samples = flight(40, 320.0, 20.0, 22.0);
    let events = [
        Event {
            time: 5.0,
            words: "right turn",
        },
        Event {
            time: 19.0,
            words: "greatest lag",
        },
        Event {
            time: 25.0,
            words: "rolled out",
        },
    ];
    let view = StripChartView {
        samples: &samples,
        window: [0.0, 40.0],
        playhead: Some(18.0),
        cursor: Some(30.0),
        stretch: Some([5.0, 25.0]),
        events: &events,
        words: WORDS,
        ..StripChartView::default()
    };
    let size = Size::new(1180.0, 260.0);
    insta::assert_snapshot!("strip-north", svg(size, &strip_chart(&view, size)));
    let phone = Size::new(370.0, 220.0);
    insta::assert_snapshot!("strip-north-phone", svg(phone, &strip_chart(&view, phone)));
}

/// A stretch carries its word, whole or just begun, and none where it is out of sight; what moves
/// can be drawn apart from the strips.
#[test]
fn a_stretch_is_named_and_what_moves_stands_apart() {
    let samples = flight(40, 320.0, 20.0, 22.0);
    let size = Size::new(1180.0, 260.0);
    let still = StripChartView {
        samples: &samples,
        window: [0.0, 40.0],
        words: WORDS,
        ..StripChartView::default()
    };
    let named = |stretch: [f64; 2]| {
        let view = StripChartView {
            stretch: Some(stretch),
            ..still
        };
        let svg = svg(size, &strip_chart(&view, size));
        svg.matches(">loop<").count()
    };
    assert_eq!(named([5.0, 25.0]), 1);
    assert_eq!(named([5.0, 5.0]), 1);
    assert_eq!(named([30.0, 90.0]), 1);
    for nowhere in [[50.0, 60.0], [25.0, 5.0], [f64::NAN, 5.0]] {
        assert_eq!(named(nowhere), 0);
    }

    let moved = StripChartView {
        playhead: Some(18.0),
        cursor: Some(30.0),
        ..still
    };
    let layout = StripLayout::new(&still, size);
    let both = strip_chart(&still, size).len() + strip_chart::moving(&moved, &layout).len();
    assert_eq!(strip_chart(&moved, size).len(), both);
}

#[test]
fn strips_of_a_full_circle_with_the_compass_hidden() {
    let samples = flight(140, 200.0, 120.0, -15.0);
    let view = StripChartView {
        samples: &samples,
        window: [0.0, 140.0],
        show_compass: false,
        words: WORDS,
        ..StripChartView::default()
    };
    let size = Size::new(800.0, 220.0);
    insta::assert_snapshot!("strip-circle-hidden", svg(size, &strip_chart(&view, size)));
}

#[test]
fn strips_before_the_flight() {
    let view = StripChartView {
        words: WORDS,
        ..StripChartView::default()
    };
    let size = Size::new(800.0, 220.0);
    insta::assert_snapshot!("strip-empty", svg(size, &strip_chart(&view, size)));
}

#[test]
fn three_lines_of_error() {
    let every_tenth = |points: Vec<ErrorAt>| points.into_iter().step_by(10).collect::<Vec<_>>();
    let (bank, dip) = (15_f64.to_radians(), 55_f64.to_radians());
    let closed = every_tenth(sampled(|h| in_turn(h, bank, dip).error_from(h)));
    let rule = every_tenth(sampled(|h| {
        let from_north = h
            .right_of(MagneticHeading::from_degrees(0.0))
            .abs()
            .to_degrees();
        -30_f64.to_radians() * (1.0 - from_north / 90.0)
    }));
    let samples = flight(40, 320.0, 20.0, 22.0);
    let float: Vec<ErrorAt> = samples
        .iter()
        .map(|s| ErrorAt {
            heading: s.heading,
            error: s.error(),
        })
        .collect();
    let view = ErrorChartView {
        closed_form: error_chart::Line {
            points: &closed,
            words: "closed form",
        },
        rule: error_chart::Line {
            points: &rule,
            words: "rule of thumb",
        },
        float: error_chart::Line {
            points: &float,
            words: "float",
        },
        now: Some(float[30]),
        cursor: Some(MagneticHeading::from_degrees(135.0)),
        words: error_chart::Words {
            above: "leads",
            below: "lags",
            lag_above: false,
            cardinals: ["N", "E", "S", "W"],
            empty: "nothing yet",
        },
    };
    let size = Size::new(800.0, 320.0);
    insta::assert_snapshot!("error", svg(size, &error_chart(&view, size)));
}

#[test]
fn a_map_with_land_lines_and_a_place() {
    let degrees = |pairs: &[(f64, f64)]| -> Vec<Place> {
        pairs
            .iter()
            .map(|(lat, lon)| (lat.to_radians(), lon.to_radians()))
            .collect()
    };
    // One land crosses the antimeridian and so stands at both edges.
    let land = [
        degrees(&[(60.0, -100.0), (50.0, -60.0), (10.0, -90.0), (60.0, -100.0)]),
        degrees(&[(70.0, 150.0), (60.0, 200.0), (40.0, 160.0), (70.0, 150.0)]),
    ];
    let wave = |middle: f64| -> Vec<Place> {
        (-18..=18_i32)
            .map(|i| {
                let longitude = f64::from(10 * i).to_radians();
                let latitude = middle.to_radians() + 0.1 * maths::sin(longitude);
                (latitude, longitude)
            })
            .collect()
    };
    let [north, equator, south] = [40.0, 0.0, -40.0].map(wave);
    let lines = [
        world_map::Line {
            points: &north,
            words: "60°",
            weight: Weight::Plain,
        },
        world_map::Line {
            points: &equator,
            words: "0°",
            weight: Weight::Strong,
        },
        world_map::Line {
            points: &south,
            words: "−60°",
            weight: Weight::Below,
        },
    ];
    let view = WorldMapView {
        land: &land,
        lines: &lines,
        place: Some((0.9, -0.01)),
        pointer: Some((-0.6, 2.6)),
        ..WorldMapView::default()
    };
    let size = Size::new(1000.0, 500.0);
    insta::assert_snapshot!("map", svg(size, &world_map(&view, size)));
    let small = Size::new(360.0, 180.0);
    insta::assert_snapshot!("map-small", svg(small, &world_map(&view, small)));
}

#[test]
fn a_globe_with_areas_and_a_spot() {
    let degrees = |pairs: &[(f64, f64)]| -> Vec<Place> {
        pairs
            .iter()
            .map(|(lat, lon)| (lat.to_radians(), lon.to_radians()))
            .collect()
    };
    let land = [degrees(&[(60.0, -40.0), (50.0, 20.0), (5.0, 10.0)])];
    let south = [degrees(&[
        (-90.0, -180.0),
        (-30.0, -180.0),
        (-30.0, -60.0),
        (-30.0, 60.0),
        (-30.0, 180.0),
        (-90.0, 180.0),
    ])];
    let equator: Vec<Place> = (-18..=18_i32)
        .map(|i| (0.0, f64::from(10 * i).to_radians()))
        .collect();
    let at = degrees(&[(-50.0, 0.0)]);
    let view = WorldMapView {
        projection: world_map::Projection::Globe((0.3, 0.1)),
        land: &land,
        areas: &[world_map::Area {
            outlines: &south,
            look: world_map::Look::Upright,
            words: "under-leads",
            at: &at,
        }],
        lines: &[world_map::Line {
            points: &equator,
            words: "0°",
            weight: Weight::Strong,
        }],
        spots: &[(degrees(&[(80.0, 0.0)])[0], "dip pole")],
        place: Some((0.9, -0.01)),
        ..WorldMapView::default()
    };
    let size = Size::new(500.0, 400.0);
    insta::assert_snapshot!("globe", svg(size, &world_map(&view, size)));
}

/// Calls `path` with every path and `text` with every text, however deep in groups.
fn walk(shapes: &[Shape], path: &mut impl FnMut(&BezPath, f64), text: &mut impl FnMut(&Text)) {
    for shape in shapes {
        match shape {
            Shape::Fill { path: p, paint } => {
                assert!(matches!(paint, Paint::Flat(_)));
                path(p, 0.0);
            }
            Shape::Stroke { path: p, pen } => path(p, pen.width),
            Shape::Text(t) => text(t),
            Shape::Group(group) => {
                if let Some(clip) = &group.clip {
                    path(clip, 0.0);
                }
                walk(&group.shapes, path, text);
            }
        }
    }
}

fn assert_sound(shapes: &[Shape]) {
    walk(
        shapes,
        &mut |path, width| assert!(path.is_finite() && width >= 0.0 && width.is_finite()),
        &mut |text| assert!(text.place.is_finite() && text.size > 0.0 && text.size.is_finite()),
    );
}

#[test]
fn ten_minutes_at_ten_a_second_are_drawn_with_two_points_a_column() {
    let rough: Vec<Sample> = (0..=6000_u32)
        .map(|tenth| {
            let time = f64::from(tenth) / 10.0;
            let shaken = f64::from(tenth * 7919 % 101) / 10.0;
            Sample {
                time,
                heading: MagneticHeading::from_degrees(90.0 + shaken),
                reading: CompassHeading::from_degrees(80.0 - shaken),
                rate_of_turn: 0.05,
                bank: shaken / 50.0,
                airspeed: 50.0 + shaken,
            }
        })
        .collect();
    let view = StripChartView {
        samples: &rough,
        window: [0.0, 600.0],
        words: WORDS,
        ..StripChartView::default()
    };
    for width in [1180.0, 370.0] {
        let size = Size::new(width, 220.0);
        let columns = StripLayout::new(&view, size).heading.area.width();
        let mut longest = 0;
        let shapes = strip_chart(&view, size);
        walk(
            &shapes,
            &mut |path, _| longest = longest.max(path.elements().len()),
            &mut |_| {},
        );
        // Two at each end, and two corners at zero where the line encloses an area.
        assert!(
            longest as f64 <= 2.0 * columns + 8.0,
            "{longest} in {columns}"
        );
        assert!(longest as f64 > columns, "the air is rough");
    }
}

#[test]
fn one_sample_or_none_and_no_room_at_all_are_drawn_without_complaint() {
    let one = flight(0, 10.0, 0.0, 5.0);
    assert_eq!(one.len(), 1);
    for samples in [&one[..], &[]] {
        for (width, height) in [
            (0.0, 0.0),
            (8.0, 8.0),
            (-5.0, 200.0),
            (300.0, 9.0),
            (f64::NAN, 1.0),
        ] {
            let size = Size::new(width, height);
            let view = StripChartView {
                samples,
                words: WORDS,
                ..StripChartView::default()
            };
            let point = one.iter().map(|s| ErrorAt {
                heading: s.heading,
                error: s.error(),
            });
            let points: Vec<ErrorAt> = point.take(samples.len()).collect();
            let float = error_chart::Line {
                points: &points,
                words: "float",
            };
            let errors = ErrorChartView {
                float,
                ..ErrorChartView::default()
            };
            let strips = strip_chart(&view, size);
            let shows_nothing = !(width >= 8.0 && height >= 8.0);
            assert_eq!(strips.is_empty(), shows_nothing);
            assert_sound(&strips);
            assert_sound(&error_chart(&errors, size));
            assert_sound(&world_map(&WorldMapView::default(), size));
        }
    }
}

prop_compose! {
    fn any_sample()(
        time in prop_oneof![4 => 0.0..100.0, 1 => ANY],
        heading in prop_oneof![4 => 0.0..7.0, 1 => ANY],
        reading in prop_oneof![4 => 0.0..7.0, 1 => ANY],
        rate_of_turn in prop_oneof![4 => -0.2..0.2, 1 => ANY],
        bank in prop_oneof![4 => -1.0..1.0, 1 => ANY],
        airspeed in prop_oneof![4 => 30.0..90.0, 1 => ANY],
    ) -> Sample {
        Sample {
            time,
            heading: MagneticHeading::from_radians(heading),
            reading: CompassHeading::from_radians(reading),
            rate_of_turn,
            bank,
            airspeed,
        }
    }
}

fn any_length() -> impl Strategy<Value = f64> {
    prop_oneof![4 => 8.0..2000.0, 1 => ANY]
}

proptest! {
    #![proptest_config(ProptestConfig {
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn no_flight_breaks_the_strips(
        samples in prop::collection::vec(any_sample(), 0..60),
        sorted in any::<bool>(),
        from in prop_oneof![4 => -10.0..50.0, 1 => ANY],
        to in prop_oneof![4 => 20.0..120.0, 1 => ANY],
        times in [ANY, ANY, ANY, ANY],
        size in (any_length(), any_length()),
    ) {
        let mut samples = samples;
        if sorted {
            samples.sort_by(|a, b| a.time.total_cmp(&b.time));
        }
        let events = [
            Event { time: 1.0, words: "one" },
            Event { time: 30.0, words: "another, longer" },
            Event { time: times[3], words: "any" },
        ];
        let view = StripChartView {
            samples: &samples,
            window: [from, to],
            playhead: Some(times[0]),
            cursor: samples.first().map(|sample| sample.time),
            stretch: Some([times[1], times[2]]),
            events: &events,
            words: WORDS,
            ..StripChartView::default()
        };
        let size = Size::new(size.0, size.1);
        assert_sound(&strip_chart(&view, size));
        assert_sound(&strip_chart::moving(&view, &StripLayout::new(&view, size)));
        strip_chart::describe(&view);
        let text = strip_chart::to_csv(&samples);
        prop_assert!(text.lines().all(|line| line.split(',').count() == 7));
    }

    #[test]
    fn no_errors_break_the_error_chart(
        points in prop::collection::vec(
            (prop_oneof![4 => 0.0..7.0, 1 => ANY], prop_oneof![4 => -3.0..3.0, 1 => ANY]),
            0..60,
        ),
        cursor in ANY,
        size in (any_length(), any_length()),
    ) {
        let points: Vec<ErrorAt> = points
            .into_iter()
            .map(|(heading, error)| ErrorAt { heading: MagneticHeading::from_radians(heading), error })
            .collect();
        let line = |words| error_chart::Line { points: &points, words };
        let view = ErrorChartView {
            closed_form: line("one"),
            rule: line("another, longer"),
            float: line("float"),
            now: points.first().copied(),
            cursor: Some(MagneticHeading::from_radians(cursor)),
            ..ErrorChartView::default()
        };
        assert_sound(&error_chart(&view, Size::new(size.0, size.1)));
        error_chart::describe(&view);
        error_chart::to_csv(&view);
    }

    #[test]
    fn no_places_break_the_map(
        places in prop::collection::vec(
            (prop_oneof![4 => -2.0..2.0, 1 => ANY], prop_oneof![4 => -4.0..8.0, 1 => ANY]),
            0..60,
        ),
        size in (any_length(), any_length()),
    ) {
        let land = [places.clone()];
        let lines = [
            world_map::Line { points: &places, words: "60°", weight: Weight::Plain },
            world_map::Line { points: &places, words: "0°", weight: Weight::Strong },
        ];
        let view = WorldMapView {
            land: &land,
            lines: &lines,
            place: places.first().copied(),
            pointer: places.last().copied(),
            ..WorldMapView::default()
        };
        assert_sound(&world_map(&view, Size::new(size.0, size.1)));
        world_map::describe(&view);
    }
}
