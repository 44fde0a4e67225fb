//! One branch of the closure is followed: positions near each other have answers near each other.

use super::super::linkage::{AxleLinkage, Pose};
use super::*;

/// Gap that remains between two positions, however near they are brought, in metres or radians; none if the axle moves from one to the other without a jump.
fn jump(linkage: &AxleLinkage, from: [f64; 2], to: [f64; 2]) -> Option<f64> {
    let at = |[heave, roll]: [f64; 2]| linkage.at(heave, roll);
    let apart =
        |a: &Pose, b: &Pose| (0..5).fold(0.0_f64, |most, place| most.max((a.at[place] - b.at[place]).abs()));
    let (mut from, mut to) = ((from, at(from)?), (to, at(to)?));
    let missed = (0..5).fold(0.0_f64, |most, place| {
        let along = |pose: &Pose| {
            (to.0[0] - from.0[0]) * pose.heave.rates[place] + (to.0[1] - from.0[1]) * pose.roll.rates[place]
        };
        most.max((to.1.at[place] - from.1.at[place] - 0.5 * (along(&from.1) + along(&to.1))).abs())
    });
    if missed < 5e-4 {
        return None;
    }
    for _ in 0..20 {
        let middle = [0, 1].map(|place| 0.5 * (from.0[place] + to.0[place]));
        let pose = at(middle)?;
        if apart(&from.1, &pose) > apart(&pose, &to.1) {
            to = (middle, pose);
        } else {
            from = (middle, pose);
        }
    }
    Some(apart(&from.1, &to.1)).filter(|gap| *gap > 1e-4)
}

/// Axles that jumped: heave in mm and roll in degrees near the jump, and by how much the points of `FOUR` are moved, in mm.
const JUMPED: [(f64, f64, [f64; 18]); 11] = [
    (
        70.0,
        1.5,
        [
            74.0, 128.0, -1.0, -106.0, -137.0, 150.0, -47.0, 142.0, 86.0, 132.0, -40.0, -75.0, -36.0, -52.0,
            -131.0, 94.0, -60.0, -26.0,
        ],
    ),
    (
        80.0,
        -1.5,
        [
            -147.0, 143.0, 1.0, -44.0, -42.0, 78.0, 115.0, 8.0, -64.0, 121.0, -135.0, -110.0, -17.0, 41.0,
            -87.0, -77.0, 132.0, 109.0,
        ],
    ),
    (
        0.0,
        0.0,
        [
            -62.0, -30.0, -61.0, 72.0, -86.0, -10.0, -141.0, -61.0, 95.0, 120.0, -130.0, -120.0, -75.0,
            -104.0, -111.0, -53.0, -33.0, -21.0,
        ],
    ),
    (
        100.0,
        -4.5,
        [
            19.0, 77.0, 106.0, -138.0, 106.0, 39.0, -127.0, 73.0, 83.0, 120.0, -99.0, -20.0, 77.0, -67.0,
            -100.0, 63.0, 150.0, 9.0,
        ],
    ),
    (
        140.0,
        -1.5,
        [
            39.0, -55.0, 34.0, 139.0, 52.0, 150.0, 103.0, -57.0, -139.0, -53.0, -110.0, -91.0, -10.0, -76.0,
            -96.0, 16.0, -22.0, 71.0,
        ],
    ),
    (
        20.0,
        -3.0,
        [
            -84.0, 116.0, 100.0, 124.0, 15.0, 113.0, 127.0, -97.0, -64.0, -18.0, -24.0, -145.0, 44.0, 34.0,
            -34.0, 10.0, 19.0, 122.0,
        ],
    ),
    (
        10.0,
        0.0,
        [
            22.0, -118.0, 76.0, -34.0, -101.0, 127.0, -129.0, -63.0, -131.0, -118.0, -23.0, -73.0, -7.0,
            -43.0, -6.0, -120.0, -53.0, 119.0,
        ],
    ),
    (
        70.0,
        -1.5,
        [
            145.0, 71.0, -58.0, -29.0, 147.0, 88.0, -49.0, -12.0, -26.0, 141.0, -75.0, -85.0, 66.0, -111.0,
            -133.0, -3.0, -61.0, -145.0,
        ],
    ),
    (
        -60.0,
        -3.0,
        [
            95.0, 38.0, 98.0, 10.0, -83.0, 113.0, -131.0, -63.0, 69.0, -22.0, 58.0, -128.0, -116.0, 45.0,
            -137.0, -140.0, 122.0, 143.0,
        ],
    ),
    (
        -20.0,
        -1.5,
        [
            -61.0, -107.0, -135.0, 111.0, -110.0, 150.0, -146.0, 142.0, 91.0, -6.0, 117.0, 2.0, 149.0, 45.0,
            -106.0, 80.0, 97.0, 50.0,
        ],
    ),
    (
        -70.0,
        -6.0,
        [
            38.0, 124.0, 149.0, -131.0, 31.0, 146.0, 106.0, 127.0, -64.0, 117.0, 142.0, -95.0, 87.0, 5.0,
            -109.0, 15.0, -138.0, -103.0,
        ],
    ),
];

fn moved(shifts: &[f64]) -> LiveAxle {
    four(shifted(FOUR, &shifts.iter().map(|shift| shift * 1e-3).collect::<Vec<_>>()))
}

/// The widest gap among positions and their next ones, and how many of them are reached: in heave and roll, steps either way from a place, so many in all and so large.
fn widest(model: &LiveAxle, about: [f64; 2], steps: [(i32, f64); 2]) -> (f64, usize) {
    let ready = model.prepare().unwrap();
    let (mut most, mut reached) = (0.0_f64, 0);
    let [(heaves, heave_step), (rolls, roll_step)] = steps;
    for heave in -heaves..=heaves {
        for roll in -rolls..=rolls {
            let at = [about[0] + f64::from(heave) * heave_step, about[1] + f64::from(roll) * roll_step];
            reached += usize::from(ready.linkage.at(at[0], at[1]).is_some());
            for to in [[at[0] + heave_step, at[1]], [at[0], at[1] + roll_step]] {
                most = most.max(jump(&ready.linkage, at, to).unwrap_or(0.0));
            }
        }
    }
    (most, reached)
}

/// Eleven of 687 axles whose points were moved by up to 150 mm jumped to another place of least strain, by up to 1.7 rad in pitch.
#[test]
fn an_axle_stays_on_the_branch_of_ride_height() {
    for (place, (heave, roll, shifts)) in JUMPED.iter().enumerate() {
        let about = [heave * 1e-3, roll.to_radians()];
        let (gap, _) = widest(&moved(shifts), about, [(2, 0.01), (1, f64::to_radians(1.5))]);
        assert!(gap == 0.0, "axle {place}: {gap} near {heave} mm and {roll} deg");
    }
    // Two more, of another axle: these jumped at a single position in the middle of good ones.
    let [height, forward] = [0.345, 2.65];
    for (at, points) in [
        (
            [0.003, -1.5],
            [
                [-2.039, 0.488, 0.209],
                [-2.773, 0.34, 0.404],
                [-2.156, 0.494, 0.4],
                [-2.583, 0.26, 0.38],
                [-2.827, 0.485, 0.407],
                [-2.76, -0.523, 0.393],
            ],
        ),
        (
            [-0.074, -3.5],
            [
                [-2.238, 0.433, 0.378],
                [-2.552, 0.532, 0.381],
                [-2.123, 0.487, 0.419],
                [-2.8, 0.294, 0.416],
                [-2.897, 0.352, 0.396],
                [-2.834, -0.564, 0.442],
            ],
        ),
    ] {
        let mut model = four(points.map(|[x, y, z]| [x + forward, y, z]));
        model.wheel.centre = point([0.0, 0.76, height]);
        let about = [at[0], f64::to_radians(at[1])];
        let (gap, reached) = widest(&model, about, [(3, 0.001), (1, f64::to_radians(0.25))]);
        assert!(gap == 0.0 && reached == 21, "{gap} {reached}");
    }
}

/// A position that small steps reach in two places is refused, and the refusal says so.
#[test]
fn two_places_of_an_axle_are_refused_as_two() {
    let model = moved(&JUMPED[9].2);
    let mut said = (0..30).filter_map(|step| {
        let roll = rad(f64::to_radians(-0.02 * f64::from(step)));
        model.at(metres(-0.02), roll).err().map(|error| error.to_string())
    });
    let two = said.find(|said| said.contains("leads to two places")).unwrap();
    assert!(
        two.starts_with("heave = -20 mm") && two.contains("roll = ") && two.contains("pinion angle"),
        "{two}"
    );
    // Heave alone and roll alone have one way each.
    assert!(model.at(metres(-0.02), rad(0.0)).is_ok() && model.at(metres(0.0), rad(-0.02)).is_ok());
}

/// Ordinary axles are reached everywhere and never jump, in bends of 100 mm and 6 deg.
#[test]
fn ordinary_axles_are_reached_everywhere() {
    for which in 0..6 {
        for shifts in [&[] as &[f64], &[0.02, -0.01, 0.015, 0.01, 0.0, -0.02]] {
            let (gap, reached) =
                widest(&several(shifts, which), [0.0; 2], [(4, 0.025), (2, f64::to_radians(3.0))]);
            assert!(gap == 0.0 && reached == 45, "{which}: {gap} {reached}");
        }
    }
}
