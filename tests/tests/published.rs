//! Published values. The source stands beside each check, and each tolerance is the source's own
//! precision.
#![cfg(not(target_family = "wasm"))]

use checks::{Course, apart, field, fly_on, situation};
use compass::{
    deviation::{Coefficients, eight_points},
    field::{MagneticField, Zone},
    heading::MagneticHeading,
    maths,
    motion::coordinated_bank,
    simulation::STEP,
    steady,
    unit::{KNOT, NANOTESLA},
};

/// Figures given to two decimals are right to half of the last one; the other half of a
/// thousandth is for the figure's own rounding falling on that edge.
const TWO_DECIMALS: f64 = 0.0051;
/// The same for figures given to one decimal.
const ONE_DECIMAL: f64 = 0.0501;

fn turn_error(heading: f64, bank: f64, dip: f64) -> f64 {
    let heading = MagneticHeading::from_degrees(heading);
    steady::in_turn(heading, bank.to_radians(), dip.to_radians())
        .error_from(heading)
        .to_degrees()
}

fn acceleration_error(heading: f64, acceleration: f64, dip: f64) -> f64 {
    let heading = MagneticHeading::from_degrees(heading);
    steady::in_speed_change(heading, acceleration, dip.to_radians())
        .error_from(heading)
        .to_degrees()
}

/// The greatest of `error` over headings `from` to `to`, by hundredths of a degree, and where.
fn extreme(from: f64, to: f64, error: impl Fn(f64) -> f64) -> (f64, f64) {
    (0..=((to - from) * 100.0) as u32)
        .map(|i| from + f64::from(i) / 100.0)
        .map(|heading| (error(heading), heading))
        .fold((0.0, f64::NAN), |best, now| {
            if now.0.abs() > best.0.abs() {
                now
            } else {
                best
            }
        })
}

/// Source: E. Williams, *Compass Errors* (2001), eq. 2, worked out for dip 55° and right turns.
#[test]
fn error_in_a_turn_at_dip_55() {
    for (bank, at_north, greatest, at) in [
        (10.0, -13.93, -14.61, 17.9),
        (15.0, -20.29, -22.58, 27.1),
        (18.0, -23.81, -27.78, 32.8),
        (20.0, -26.03, -31.49, 36.8),
        (30.0, -35.53, -55.89, 60.4),
    ] {
        let error = turn_error(0.0, bank, 55.0);
        assert!((error - at_north).abs() < TWO_DECIMALS, "{bank}°: {error}");
        let (error, heading) = extreme(0.0, 90.0, |h| turn_error(h, bank, 55.0));
        assert!((error - greatest).abs() < TWO_DECIMALS, "{bank}°: {error}");
        // The search goes by hundredths, so its heading is out by one of them at most.
        assert!(
            (heading - at).abs() < ONE_DECIMAL + 0.01,
            "{bank}°: {heading}"
        );
    }
}

/// Source: E. Williams, *Compass Errors* (2001), eqs. 3 and 4, worked out for dip 55°.
#[test]
fn error_in_a_speed_change_at_dip_55() {
    for (g, on_east, greatest, at) in [
        (0.1, -8.09, 8.22, [100.2, 259.8]),
        (0.2, -15.65, 16.63, [110.3, 249.7]),
    ] {
        let error = acceleration_error(90.0, g, 55.0);
        assert!((error - on_east).abs() < TWO_DECIMALS, "{g} g: {error}");
        let halves = [(0.0, 180.0), (180.0, 360.0)];
        for ((from, to), at) in halves.into_iter().zip(at) {
            let (error, heading) = extreme(from, to, |h| acceleration_error(h, g, 55.0));
            assert!(
                (error.abs() - greatest).abs() < TWO_DECIMALS,
                "{g} g: {error}"
            );
            assert!(
                (heading - at).abs() < ONE_DECIMAL + 0.01,
                "{g} g: {heading}"
            );
        }
    }
}

/// Source: E. Williams, *Compass Errors* (2001), eq. 2 at the cardinal points: the tangent of the
/// error on N is −tan δ sin φ, on S the opposite, and on E and W there is none as long as the
/// card can still come round. Exact, so the tolerance is that of rounding.
#[test]
fn error_in_a_turn_on_the_cardinal_points() {
    for dip in [-68.0_f64, -40.0, 0.0, 25.0, 55.0, 66.0] {
        for bank in [-20.0_f64, -5.0, 10.0, 19.0] {
            let tangent = -maths::tan(dip.to_radians()) * maths::sin(bank.to_radians());
            let on_north = maths::atan(tangent).to_degrees();
            assert!((turn_error(0.0, bank, dip) - on_north).abs() < 1e-12);
            assert!((turn_error(180.0, bank, dip) + on_north).abs() < 1e-12);
            assert!(turn_error(90.0, bank, dip).abs() < 1e-12);
            assert!(turn_error(270.0, bank, dip).abs() < 1e-12);
        }
    }
}

/// Source: E. Williams, *Compass Errors* (2001): past a bank of 90° − dip the card never completes
/// a revolution in a steady turn. The change is sharp, so a tenth of a degree of bank on either
/// side of the limit must show it.
#[test]
fn past_ninety_less_dip_the_card_never_comes_round() {
    let turned = |bank: f64, dip: f64| -> f64 {
        let reading = |i: i32| {
            let heading = MagneticHeading::from_degrees(f64::from(i) / 100.0);
            steady::in_turn(heading, bank, dip)
        };
        (0..36_000)
            .map(|i| {
                let before = reading(i);
                compass::angle::half_turn(reading(i + 1).radians() - before.radians())
            })
            .sum::<f64>()
            .to_degrees()
    };
    for dip in [55.0_f64, 70.0, -65.0] {
        let dip = dip.to_radians();
        let limit = steady::bank_without_revolution(dip);
        let little = 0.1_f64.to_radians();
        assert!((turned(limit - little, dip) - 360.0).abs() < 1e-6);
        assert!(turned(limit + little, dip).abs() < 1e-6);
    }
}

/// Source: ω = g tan φ / V with standard gravity, worked out for standard rate, 3° a second.
#[test]
fn bank_for_standard_rate() {
    let standard_rate = 3.0_f64.to_radians();
    for (knots, bank) in [
        (90.0, 13.89),
        (100.0, 15.36),
        (120.0, 18.24),
        (140.0, 21.03),
        (150.0, 22.39),
    ] {
        let found = coordinated_bank(standard_rate, knots * KNOT).to_degrees();
        assert!((found - bank).abs() < TWO_DECIMALS, "{knots} kt: {found}");
    }
}

/// The same bank, flown: 360° take the two minutes that every training text gives. The heading is
/// integrated, so only rounding is left, far below a millionth of a degree.
#[test]
fn a_standard_rate_turn_takes_two_minutes() {
    let bank = coordinated_bank(3.0_f64.to_radians(), 100.0 * KNOT).to_degrees();
    let course = Course::on(120.0, 100.0).roll(4.0, bank).hold(200.0);
    let mut flight = course.start(situation(field(20_000.0, 40_000.0)));
    fly_on(&mut flight, 4.0);
    let before = flight.motion().heading.degrees();
    fly_on(&mut flight, 120.0);
    assert!(apart(flight.motion().heading.degrees(), before) < 1e-6);
}

/// Deviations on N, NE … NW by compass, east positive.
///
/// Source: NGA, *Handbook of Magnetic Compass Adjustment* (2004), §501 and fig. 501.
const HANDBOOK: [f64; 8] = [10.5, 20.0, 11.5, -1.2, -5.5, -8.0, -12.5, -6.8];

fn assert_coefficients(found: Coefficients, expected: [f64; 5], tolerance: f64) {
    let Coefficients { a, b, c, d, e } = found;
    for (found, expected) in [a, b, c, d, e].into_iter().zip(expected) {
        let found = found.to_degrees();
        assert!((found - expected).abs() < tolerance, "{found} {expected}");
    }
}

/// Source: NGA, *Handbook of Magnetic Compass Adjustment* (2004), §501: the means over the eight
/// points of fig. 501. Sums of figures with one decimal: exact but for rounding.
#[test]
fn handbook_coefficients_by_the_means_of_eight_points() {
    let found = Coefficients::from_eight_points(HANDBOOK.map(f64::to_radians));
    assert_coefficients(found, [1.0, 12.0, 8.0, 5.0, 1.5], 1e-12);
}

/// Source: the deviations of fig. 501 again, fitted by least squares elsewhere to two decimals;
/// the residuals, at most 0.07° there, show that the approximate form is enough.
#[test]
fn handbook_coefficients_by_least_squares() {
    let swing: Vec<_> = eight_points()
        .into_iter()
        .zip(HANDBOOK.map(f64::to_radians))
        .collect();
    let found = Coefficients::from_least_squares(&swing).expect("eight headings are enough");
    assert_coefficients(found, [1.0, 11.94, 7.96, 5.0, 1.5], TWO_DECIMALS);
    for (heading, deviation) in swing {
        let residual = (found.on(heading) - deviation).to_degrees();
        assert!(
            residual.abs() < 0.07 + TWO_DECIMALS,
            "{residual}° on {heading:?}"
        );
    }
}

/// Source: US Army, TM 1-1500-204-23-4, fig. 4-22: N +8, E −4, S −4, W +8 give corrections of 6
/// for N–S and 6 for E–W. There a deviation is compass − heading, opposite to ours, so the signs
/// turn over on the way in; the manual gives the corrections' sizes. Whole degrees: exact.
#[test]
fn army_manual_swing_corrections() {
    let army = [(0, 8.0_f64), (90, -4.0), (180, -4.0), (270, 8.0)];
    let [north, east, south, west] = army.map(|(_, deviation)| -deviation.to_radians());
    // Only the cardinal points are swung; B and C need no others.
    let found = Coefficients::from_eight_points([north, 0.0, east, 0.0, south, 0.0, west, 0.0]);
    assert!((found.c.to_degrees().abs() - 6.0).abs() < 1e-12);
    assert!((found.b.to_degrees().abs() - 6.0).abs() < 1e-12);
    // Taking away what the two adjusters take away leaves the same deviation on N as on S, and
    // the same on E as on W.
    assert!(((north - found.c) - (south + found.c)).abs() < 1e-12);
    assert!(((east - found.b) - (west + found.b)).abs() < 1e-12);
}

/// Source: the closed form at 30° N, 95° W, where the dip is about 58.5°: lag on N of 22.9° at 15°
/// of bank and 26.8° at 18°. The dip's half unit of the last place moves the lag by 0.03°, so one
/// decimal is what these figures can hold.
#[test]
fn lag_at_thirty_north_is_not_the_latitude() {
    for (bank, lag) in [(15.0, 22.9), (18.0, 26.8)] {
        let found = -turn_error(0.0, bank, 58.5);
        assert!((found - lag).abs() < ONE_DECIMAL, "{bank}°: {found}");
    }
}

/// Source: tan(dip) = 2 tan(latitude) and sin 30° = ½ in eq. 2 of E. Williams: the lag on N is the
/// latitude exactly when the dip obeys the dipole and the bank is 30°. Rounding only.
#[test]
fn lag_is_the_latitude_for_a_dipole_at_thirty_degrees_of_bank() {
    for latitude in [10.0_f64, 30.0, 45.0, 60.0, 75.0] {
        let dip = maths::atan(2.0 * maths::tan(latitude.to_radians())).to_degrees();
        assert!((-turn_error(0.0, 30.0, dip) - latitude).abs() < 1e-10);
        assert!((-turn_error(0.0, 15.0, dip) - latitude).abs() > 1.0);
    }
}

/// Source: MIL-PRF-89500B: unreliable at or below 2000 nT, caution at or below 6000 nT. Limits in
/// whole nanotesla, so one more of them is outside.
#[test]
fn zones_by_horizontal_intensity() {
    for (horizontal, zone) in [
        (0.0, Zone::Unreliable),
        (2000.0, Zone::Unreliable),
        (2001.0, Zone::Caution),
        (6000.0, Zone::Caution),
        (6001.0, Zone::Reliable),
        (20_000.0, Zone::Reliable),
    ] {
        let field = MagneticField::new(horizontal * NANOTESLA, 50_000.0 * NANOTESLA, 0.0);
        assert_eq!(field.map(MagneticField::zone), Ok(zone), "{horizontal} nT");
    }
}

/// Source: the definition of the float's parameters: the reference vertical intensity alone tilts
/// an unbalanced card by the stated angle, and the undamped card swings with the stated period.
/// The tilt is a point of rest, found to rounding; the period is that of a swing of 1°, which
/// lengthens it by amplitude²/16, two hundred-thousandths, and is timed by interpolation between
/// steps.
#[test]
fn the_standard_float_is_what_its_settings_say() {
    let mut at = situation(field(20_000.0, 40_000.0));
    let course = Course::on(0.0, 100.0);
    let tilt = course.start(at).reading().tilt.to_degrees();
    // With a horizontal field too, the magnets' pull toward it rights the card a little:
    // tan(tilt) = Z / (Z_ref / tan 3° + H).
    let righted = 40_000.0 / (40_000.0 / maths::tan(3_f64.to_radians()) + 20_000.0);
    assert!((tilt - maths::atan(righted).to_degrees()).abs() < 1e-9);

    at.field = field(20_000.0, 0.0);
    at.float.yaw_damping_ratio = 0.0;
    at.float.tilt_damping_ratio = 0.0;
    let mut flight = course.start(at);
    let mut float = flight.state().float;
    let turned = glam::DQuat::from_rotation_z(1_f64.to_radians());
    float.attitude =
        compass::frame::Rotation::from_quaternion(float.attitude.quaternion.mul_quat(turned));
    flight.disturb(float);
    let mut crossings = Vec::new();
    let mut before = checks::error(&flight);
    while crossings.len() < 9 {
        fly_on(&mut flight, STEP);
        let now = checks::error(&flight);
        if before * now < 0.0 {
            crossings.push(flight.time() - STEP * now / (now - before));
        }
        before = now;
    }
    let period = (crossings[8] - crossings[0]) / 4.0;
    assert!((period - 6.0).abs() < 6.0 * 3e-5, "{period} s");
}
