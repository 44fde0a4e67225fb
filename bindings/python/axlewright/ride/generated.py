"""Ride: a wheel and its share of the body on a road, the body on both axles, and on four wheels. Generated; do not edit."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Literal, NamedTuple

from axlewright._model import Model
from axlewright._native import functions as _functions

if TYPE_CHECKING:
    from collections.abc import Mapping

    from axlewright import Quantity, Table
    from axlewright._types import Invalid, QuantityLike, Ratio, RatioLike

__all__ = ["BodyModes", "FlatRide", "FullCar", "HalfCar", "NonlinearQuarterCar", "OnRoad", "QuarterCar", "QuarterModes", "RoadSurface", "VehicleOnRoad", "damping_for_least_body_acceleration", "damping_for_least_tyre_load", "dynamic_index", "flat_ride_cycles", "flat_ride_rear_frequency", "road_displacement_density", "transmissibility", "wk_weighting"]

_damping_for_least_body_acceleration = _functions["ride.damping_for_least_body_acceleration"]
_damping_for_least_tyre_load = _functions["ride.damping_for_least_tyre_load"]
_dynamic_index = _functions["ride.dynamic_index"]
_flat_ride_cycles = _functions["ride.flat_ride_cycles"]
_flat_ride_rear_frequency = _functions["ride.flat_ride_rear_frequency"]
_road_displacement_density = _functions["ride.road_displacement_density"]
_transmissibility = _functions["ride.transmissibility"]
_wk_weighting = _functions["ride.wk_weighting"]
_full_car_modes = _functions["ride.FullCar.modes"]
_full_car_frequency_response = _functions["ride.FullCar.frequency_response"]
_full_car_roll_response = _functions["ride.FullCar.roll_response"]
_full_car_on_road = _functions["ride.FullCar.on_road"]
_full_car_step = _functions["ride.FullCar.step"]
_full_car_ramp = _functions["ride.FullCar.ramp"]
_full_car_half_sine = _functions["ride.FullCar.half_sine"]
_full_car_profile = _functions["ride.FullCar.profile"]
_half_car_modes = _functions["ride.HalfCar.modes"]
_half_car_bounce_and_pitch = _functions["ride.HalfCar.bounce_and_pitch"]
_half_car_flat_ride = _functions["ride.HalfCar.flat_ride"]
_half_car_frequency_response = _functions["ride.HalfCar.frequency_response"]
_half_car_on_road = _functions["ride.HalfCar.on_road"]
_half_car_step = _functions["ride.HalfCar.step"]
_half_car_ramp = _functions["ride.HalfCar.ramp"]
_half_car_half_sine = _functions["ride.HalfCar.half_sine"]
_half_car_profile = _functions["ride.HalfCar.profile"]
_nonlinear_quarter_car_step = _functions["ride.NonlinearQuarterCar.step"]
_nonlinear_quarter_car_ramp = _functions["ride.NonlinearQuarterCar.ramp"]
_nonlinear_quarter_car_half_sine = _functions["ride.NonlinearQuarterCar.half_sine"]
_nonlinear_quarter_car_profile = _functions["ride.NonlinearQuarterCar.profile"]
_quarter_car_modes = _functions["ride.QuarterCar.modes"]
_quarter_car_frequency_response = _functions["ride.QuarterCar.frequency_response"]
_quarter_car_on_road = _functions["ride.QuarterCar.on_road"]
_quarter_car_step = _functions["ride.QuarterCar.step"]
_quarter_car_ramp = _functions["ride.QuarterCar.ramp"]
_quarter_car_half_sine = _functions["ride.QuarterCar.half_sine"]
_quarter_car_profile = _functions["ride.QuarterCar.profile"]
_road_surface_roughness = _functions["ride.RoadSurface.roughness"]


class VehicleOnRoad(NamedTuple):
    """Results of `on_road`."""

    body_acceleration: Quantity
    """Of the body at its centre of mass, upwards."""
    seat_acceleration: Quantity
    """Of the body at the seat, upwards."""
    weighted_acceleration: Quantity
    """At the seat, weighted with Wk."""
    comfort: str
    """Words for that acceleration, joined by `to` where two overlap."""
    front_suspension_travel: Quantity
    """Of a front wheel against the body."""
    rear_suspension_travel: Quantity
    """Of a rear wheel."""
    front_tyre_load_variation: Quantity
    """Of one front tyre, about the static load."""
    rear_tyre_load_variation: Quantity
    """Of one rear tyre."""
    front_tyre_load_share: Ratio
    """That over the static load; near a third the wheels begin to leave the road, as the threefold
    comes now and then.
    """
    rear_tyre_load_share: Ratio
    """The same of the rear."""


class BodyModes(NamedTuple):
    """Results of `bounce_and_pitch`."""

    bounce_frequency: Quantity
    """Of the mode whose centre lies farther away."""
    bounce_centre: Quantity
    """In front of the centre of mass, negative behind it; infinite where the body only bounces."""
    pitch_frequency: Quantity
    """Of the mode whose centre lies nearer."""
    pitch_centre: Quantity
    """In front of the centre of mass, negative behind it."""
    dynamic_index: Ratio
    """Square of the radius of gyration over the product of the distances."""


class FlatRide(NamedTuple):
    """Results of `flat_ride`."""

    front_frequency: Quantity
    """Of the body's share on the front axle."""
    rear_frequency: Quantity
    """Of the body's share on the rear axle; where it is no greater than that of the front the ride is
    never flat, and refused.
    """
    frequency_ratio: Ratio
    """Rear over front."""
    cycles: Ratio
    """Of the front since it met the bump, until both ends move together; about one to one and a half
    is a flat ride.
    """


class QuarterModes(NamedTuple):
    """Results of `modes`."""

    body_undamped_frequency: Quantity
    """Lower natural frequency without damping."""
    hop_undamped_frequency: Quantity
    """Higher natural frequency without damping: wheel hop."""
    body_frequency: Quantity
    """Natural frequency of the lower mode with damping, the modulus of its roots."""
    body_damping_ratio: Ratio
    """Of the lower mode; above 1 it does not swing."""
    hop_frequency: Quantity
    """Natural frequency of the higher mode with damping."""
    hop_damping_ratio: Ratio
    """Of the higher mode."""


class OnRoad(NamedTuple):
    """Results of `on_road`."""

    body_acceleration: Quantity
    """Of the body."""
    weighted_acceleration: Quantity
    """Of the body, weighted with Wk."""
    comfort: str
    """Words for that acceleration on a seat, joined by `to` where two overlap."""
    suspension_travel: Quantity
    """Of the wheel against the body."""
    tyre_load_variation: Quantity
    """Of the tyre's load about its static one; without bound for ever shorter waves where the tyre has
    damping.
    """
    tyre_load_share: Ratio
    """That over the static load; near a third the wheel begins to leave the road, as the threefold
    comes now and then.
    """


def damping_for_least_body_acceleration(
    *,
    sprung_mass: QuantityLike,
    unsprung_mass: QuantityLike,
    wheel_rate: QuantityLike,
    tyre_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Damping at the wheel with which the body of a quarter car is shaken least on a random road.

    Formula
        `c = k sqrt((m_s + m_u) / k_t)`

    Parameters
        sprung_mass (mass): `m_s`, of the body on the wheel
        unsprung_mass (mass): `m_u`, that moves with the wheel
        wheel_rate (linear stiffness): `k`, of the suspension at the wheel
        tyre_rate (linear stiffness): `k_t`, vertical rate of the tyre

    Returns
        (damping [N·s/m]) The damping at the wheel: less than what holds the wheel best.

    Valid for (SI)
        - `0.001 <= sprung_mass <= 1000000`
        - `0.001 <= unsprung_mass <= 1000000`
        - `1 <= wheel_rate <= 1000000000`
        - `1 <= tyre_rate <= 1000000000`

        A linear quarter car without damping in the tyre, on a road of waviness 2 and all
        wavelengths; any roughness and speed.

    Source
        Least of the closed form `pi^2 G n_0^2 v (k_t c + k^2 (m_s + m_u) / c) / m_s^2` of the mean
        square, residues of a system of fourth order (from memory; agrees with a Lyapunov solution)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _damping_for_least_body_acceleration(sprung_mass, unsprung_mass, wheel_rate, tyre_rate, invalid)  # type: ignore[no-any-return]


def damping_for_least_tyre_load(
    *,
    sprung_mass: QuantityLike,
    unsprung_mass: QuantityLike,
    wheel_rate: QuantityLike,
    tyre_rate: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Damping at the wheel with which the load of the tyre varies least on a random road.

    Formula
        `c = sqrt(k^2 M / k_t - 2 m_s m_u k / M + k_t m_s^2 m_u / M^2)`, `M = m_s + m_u`

    Parameters
        sprung_mass (mass): `m_s`, of the body on the wheel
        unsprung_mass (mass): `m_u`, that moves with the wheel
        wheel_rate (linear stiffness): `k`, of the suspension at the wheel
        tyre_rate (linear stiffness): `k_t`, vertical rate of the tyre

    Returns
        (damping [N·s/m]) The damping at the wheel: what holds the wheel best.

    Valid for (SI)
        - `0.001 <= sprung_mass <= 1000000`
        - `0.001 <= unsprung_mass <= 1000000`
        - `1 <= wheel_rate <= 1000000000`
        - `1 <= tyre_rate <= 1000000000`

        A linear quarter car without damping in the tyre, on a road of waviness 2 and all
        wavelengths; any roughness and speed.

    Source
        Least of the closed form of the mean square, residues of a system of fourth order (from
        memory; agrees with a Lyapunov solution)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _damping_for_least_tyre_load(sprung_mass, unsprung_mass, wheel_rate, tyre_rate, invalid)  # type: ignore[no-any-return]


def dynamic_index(
    *,
    pitch_inertia: QuantityLike,
    sprung_mass: QuantityLike,
    front_distance: QuantityLike,
    rear_distance: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Dynamic index of a body in pitch: 1 where each axle is a centre about which it swings.

    Formula
        `i = I / (m_s a b)`

    Parameters
        pitch_inertia (moment of inertia): `I`, of the sprung mass about the lateral axis through
            its centre
        sprung_mass (mass): `m_s`, of the whole vehicle
        front_distance (length): `a`, from the centre of the sprung mass to the front axle
        rear_distance (length): `b`, to the rear axle

    Returns
        (ratio [-]) The square of the radius of gyration over the product of the distances.

    Valid for (SI)
        - `0.001 <= pitch_inertia <= 1000000000`
        - `0.001 <= sprung_mass <= 4000000`
        - `0.001 <= front_distance <= 100`
        - `0.001 <= rear_distance <= 100`

    Source
        Gillespie, Fundamentals of Vehicle Dynamics, chapter 5, bounce and pitch (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _dynamic_index(pitch_inertia, sprung_mass, front_distance, rear_distance, invalid)


def flat_ride_cycles(
    *,
    front_frequency: QuantityLike,
    rear_frequency: QuantityLike,
    wheelbase: QuantityLike,
    speed: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Cycles of the front after a bump until front and rear move together, and the body no longer
    pitches.

    Formula
        `n = f_f f_r t / (f_r - f_f)` with `t = L / v`

    Parameters
        front_frequency (frequency): `f_f`, of the body on the front axle
        rear_frequency (frequency): `f_r`, of the body on the rear axle, greater than that of the
            front
        wheelbase (length): `L`, front to rear axle
        speed (velocity): `v`, of the vehicle

    Returns
        (ratio [-]) Cycles of the front since it met the bump; about one to one and a half is a flat
        ride, far more never feels like one.

    Valid for (SI)
        - `0.001 <= front_frequency <= 1000`
        - `0.001 <= rear_frequency <= 1000`
        - `rear_frequency > front_frequency`
        - `0.01 <= wheelbase <= 100`
        - `0.01 <= speed <= 200`

        Two ends that swing apart from each other, dynamic index near 1, and no damping.

    Source
        Common practice after Olley: the rear swings faster and catches up (Gillespie, Fundamentals
        of Vehicle Dynamics, chapter 5; Milliken, Chassis Design; from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _flat_ride_cycles(front_frequency, rear_frequency, wheelbase, speed, invalid)


def flat_ride_rear_frequency(
    *,
    front_frequency: QuantityLike,
    wheelbase: QuantityLike,
    speed: QuantityLike,
    cycles: RatioLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Rear frequency with which the body no longer pitches after so many cycles of the front.

    Formula
        `f_r = n f_f / (n - f_f t)` with `t = L / v`

    Parameters
        front_frequency (frequency): `f_f`, of the body on the front axle
        wheelbase (length): `L`, front to rear axle
        speed (velocity): `v`, of the vehicle
        cycles (ratio): `n`, of the front since it met the bump, until both ends move together

    Returns
        (frequency [Hz]) Frequency of the body on the rear axle, greater than that of the front.

    Valid for (SI)
        - `0.001 <= front_frequency <= 1000`
        - `0.01 <= wheelbase <= 100`
        - `0.01 <= speed <= 200`
        - `0.01 <= cycles <= 1000`

        Two ends that swing apart from each other, dynamic index near 1, and no damping. The front
        makes `f_f t` cycles before the rear meets the bump; `n` must be more.

    Source
        Common practice after Olley: the rear swings faster and catches up (Gillespie, Fundamentals
        of Vehicle Dynamics, chapter 5; Milliken, Chassis Design; from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _flat_ride_rear_frequency(front_frequency, wheelbase, speed, cycles, invalid)  # type: ignore[no-any-return]


def road_displacement_density(
    *,
    roughness: QuantityLike,
    wavelength: QuantityLike,
    invalid: Invalid = "raise",
) -> Quantity:
    """Spectral density of a road's height at a wavelength, from its roughness.

    Formula
        `G_d = G (n_0 / n)^2` with `n = 1 / lambda` and `n_0 = 0.1 cycles/m`

    Parameters
        roughness (road roughness): `G`, one-sided density at 0.1 cycles a metre
        wavelength (length): `lambda`, length of one cycle along the road

    Returns
        (road roughness [m³/cycle]) The one-sided density of height over spatial frequency.

    Valid for (SI)
        - `0 <= roughness <= 1`
        - `0.000001 <= wavelength <= 1000000`

        Waviness 2, which ISO 8608 takes for its classes, and waves of about 0.35 m to 91 m, for
        which it gives them.

    Source
        ISO 8608:2016, fitted displacement density with exponent 2 (from memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _road_displacement_density(roughness, wavelength, invalid)  # type: ignore[no-any-return]


def transmissibility(
    *,
    frequency_ratio: RatioLike,
    damping_ratio: RatioLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """How much of the motion of its foot a mass on spring and damper makes.

    Formula
        `T = sqrt((1 + (2 zeta r)^2) / ((1 - r^2)^2 + (2 zeta r)^2))`

    Parameters
        frequency_ratio (ratio): `r`, of the motion over the undamped natural frequency
        damping_ratio (ratio): `zeta`, of the mass on its spring

    Returns
        (ratio [-]) Amplitude of the mass over that of the foot: 1 at the square root of 2, whatever
        the damping; more below, less above.

    Valid for (SI)
        - `0 <= frequency_ratio <= 1000000`
        - `0.000001 <= damping_ratio <= 1000`

    Source
        Den Hartog, Mechanical Vibrations, steady vibration of a mass whose support moves (from
        memory)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _transmissibility(frequency_ratio, damping_ratio, invalid)


def wk_weighting(
    *,
    frequency: QuantityLike,
    invalid: Invalid = "raise",
) -> Ratio:
    """Magnitude of the frequency weighting Wk: how much of a vertical vibration of a seat at this
    frequency is felt.

    Formula
        `W_k = |H_h H_l H_t H_s|` at `p = 2 pi i f`, with band limits `H_h = 1 / (1 + sqrt(2) w_1 /
        p + (w_1 / p)^2)` and `H_l = 1 / (1 + sqrt(2) p / w_2 + (p / w_2)^2)`, transition `H_t = (1
        + p / w_3) / (1 + p / (Q_4 w_4) + (p / w_4)^2)` and step `H_s = (1 + p / (Q_5 w_5) + (p /
        w_5)^2) / (1 + p / (Q_6 w_6) + (p / w_6)^2) (w_5 / w_6)^2`; `w = 2 pi f` of 0.4, 100, 12.5,
        12.5, 2.37 and 3.35 Hz; `Q_4 = 0.63`, `Q_5 = Q_6 = 0.91`

    Parameters
        frequency (frequency): `f`, of the vibration

    Returns
        (ratio [-]) Share of the acceleration that counts: nearly all at 4 to 8 Hz, little far from
        there.

    Valid for (SI)
        - `0 <= frequency <= 1000000000000`

        Whole-body vibration along the spine of a person who sits or stands.

    Source
        ISO 8041-1:2017 and ISO 2631-1:1997, weighting Wk: transfer function and parameters (from
        memory; the one-third-octave factors of ISO 2631-1 table 3 agree to 0.001)

    A value outside the range raises `DomainError`, which says where in an array; with
    `invalid="nan"` it gives NaN.
    """
    return _wk_weighting(frequency, invalid)


class FullCar(Model):
    """A body that bounces, pitches and rolls on four wheels: seven freedoms, linear.

    Formula
        Height of the body at the place `x` in front of its centre and `y` to the left of it: `z - x
        u + y p`, with the pitch `u` positive where the front goes down and the roll `p` positive
        where the left goes up (ISO 8855). `m_s z'' = sum of F`, `I_y u'' = -sum of x F`, `I_x p'' =
        sum of y F` with `F = k (z_u - z_xy) + c (z_u' - z_xy')` of each wheel and `k_b (x_1 - x_2)
        / 2` of the bar against the travel `x_2` of the other; `m_u z_u'' = k_t (z_r - z_u) + c_t
        (z_r' - z_u') - F`; the rear meets the road later by `(a + b) / v`

    Fields
        sprung_mass (mass): `m_s`, of the whole body
        pitch_inertia (moment of inertia): `I_y`, of the sprung mass about the lateral axis through
            its centre
        roll_inertia (moment of inertia): `I_x`, of the sprung mass about the longitudinal axis
            through its centre
        front_distance (length): `a`, from the centre of the sprung mass to the front axle
        rear_distance (length): `b`, to the rear axle
        front_track (length): between the tyre centres
        rear_track (length): between the tyre centres
        front (table): one front wheel: `unsprung_mass` (`m_u`), `wheel_rate` (`k`, tyre and bar
            left aside), `wheel_damping` (`c`, rate of the damper times the square of its motion
            ratio), `tyre_rate` (`k_t`), `tyre_damping` (`c_t`, nothing where it is missing)
        rear (table): one rear wheel, likewise
        front_bar_rate (linear stiffness, optional): `k_b`, of the anti-roll bar at the wheel: force
            at either wheel over its travel when the other travels as far the other way, the rate of
            the bar times the square of its motion ratio in roll; left out where there is none
        rear_bar_rate (linear stiffness, optional): of the rear bar, likewise
        seat_forward (length, optional): `x`, of the seat in front of the centre of the sprung mass,
            negative behind it; at the centre where it is missing
        seat_left (length, optional): `y`, of the seat to the left of it, negative to the right; in
            the middle where it is missing

    Valid for
        Small motions: no stop is touched, the tyres stay on the ground, and pull where they would
        leave it. Left and right are alike, and the wheels of an axle are not tied to each other but
        by the bar: a live axle is near that where its springs stand at the track and its inertia in
        roll is that of its mass at the wheels. The body rolls about its centre: no lateral forces,
        no roll centres. Tyres touch the road in one point. Roads in the time domain as for
        `ride.QuarterCar`.

    Source
        Newton's and Euler's laws; checked against SciPy

    Caution
        A tyre whose load varies holds the road less; a ride that is measured on a seat decides, not
        this. Local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "ride.FullCar"
    _kinds = {"sprung_mass": "Mass", "pitch_inertia": "MomentOfInertia", "roll_inertia": "MomentOfInertia", "front_distance": "Length", "rear_distance": "Length", "front_track": "Length", "rear_track": "Length", "front_bar_rate": "LinearStiffness", "rear_bar_rate": "LinearStiffness", "seat_forward": "Length", "seat_left": "Length"}

    def __init__(
        self,
        *,
        sprung_mass: QuantityLike,
        pitch_inertia: QuantityLike,
        roll_inertia: QuantityLike,
        front_distance: QuantityLike,
        rear_distance: QuantityLike,
        front_track: QuantityLike,
        rear_track: QuantityLike,
        front: Mapping[str, Any],
        rear: Mapping[str, Any],
        front_bar_rate: QuantityLike | None = None,
        rear_bar_rate: QuantityLike | None = None,
        seat_forward: QuantityLike | None = None,
        seat_left: QuantityLike | None = None,
    ) -> None:
        self._build(
            sprung_mass=sprung_mass,
            pitch_inertia=pitch_inertia,
            roll_inertia=roll_inertia,
            front_distance=front_distance,
            rear_distance=rear_distance,
            front_track=front_track,
            rear_track=rear_track,
            front=front,
            rear=rear,
            front_bar_rate=front_bar_rate,
            rear_bar_rate=rear_bar_rate,
            seat_forward=seat_forward,
            seat_left=seat_left,
        )

    @property
    def sprung_mass(self) -> Quantity:
        """`m_s`, of the whole body."""
        return self._read("sprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def pitch_inertia(self) -> Quantity:
        """`I_y`, of the sprung mass about the lateral axis through its centre."""
        return self._read("pitch_inertia", "MomentOfInertia")  # type: ignore[no-any-return]

    @property
    def roll_inertia(self) -> Quantity:
        """`I_x`, of the sprung mass about the longitudinal axis through its centre."""
        return self._read("roll_inertia", "MomentOfInertia")  # type: ignore[no-any-return]

    @property
    def front_distance(self) -> Quantity:
        """`a`, from the centre of the sprung mass to the front axle."""
        return self._read("front_distance", "Length")  # type: ignore[no-any-return]

    @property
    def rear_distance(self) -> Quantity:
        """`b`, to the rear axle."""
        return self._read("rear_distance", "Length")  # type: ignore[no-any-return]

    @property
    def front_track(self) -> Quantity:
        """Between the tyre centres."""
        return self._read("front_track", "Length")  # type: ignore[no-any-return]

    @property
    def rear_track(self) -> Quantity:
        """Between the tyre centres."""
        return self._read("rear_track", "Length")  # type: ignore[no-any-return]

    @property
    def front(self) -> dict[str, Any]:
        """One front wheel: `unsprung_mass` (`m_u`), `wheel_rate` (`k`, tyre and bar left aside),
        `wheel_damping` (`c`, rate of the damper times the square of its motion ratio), `tyre_rate`
        (`k_t`), `tyre_damping` (`c_t`, nothing where it is missing).
        """
        return self._read("front")  # type: ignore[no-any-return]

    @property
    def rear(self) -> dict[str, Any]:
        """One rear wheel, likewise."""
        return self._read("rear")  # type: ignore[no-any-return]

    @property
    def front_bar_rate(self) -> Quantity | None:
        """`k_b`, of the anti-roll bar at the wheel: force at either wheel over its travel when the other
        travels as far the other way, the rate of the bar times the square of its motion ratio in roll;
        left out where there is none.
        """
        return self._read("front_bar_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def rear_bar_rate(self) -> Quantity | None:
        """Of the rear bar, likewise."""
        return self._read("rear_bar_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def seat_forward(self) -> Quantity | None:
        """`x`, of the seat in front of the centre of the sprung mass, negative behind it; at the centre
        where it is missing.
        """
        return self._read("seat_forward", "Length")  # type: ignore[no-any-return]

    @property
    def seat_left(self) -> Quantity | None:
        """`y`, of the seat to the left of it, negative to the right; in the middle where it is missing."""
        return self._read("seat_left", "Length")  # type: ignore[no-any-return]

    def modes(self) -> Table:
        """The natural modes, the slowest first.

        Formula
            Eigenvalues of the state matrix: a pair has `w = sqrt(s_1 s_2)`, `zeta = -(s_1 + s_2) / (2
            w)`; shares of the kinetic energy `m_i |q_i|^2` of its eigenvector

        Returns
            (table) One row a mode: `mode` (of what it has most: `bounce`, `pitch`, `roll`, `front
            wheels`, `rear wheels`), `frequency` (natural, the modulus of its roots), `damping_ratio`,
            and the shares of the kinetic energy `bounce_share`, `pitch_share`, `roll_share`,
            `front_share`, `rear_share`. A mode that is damped above 1 does not swing; two of them are
            refused.
        """
        return _full_car_modes(self._handle)  # type: ignore[no-any-return]

    def frequency_response(self, *, amplitude: QuantityLike, speed: QuantityLike, frequency: QuantityLike) -> Table:
        """Amplitudes on waves of one frequency, the same under left and right, the rear wheels later: the
        body bounces and pitches.

        Parameters
            amplitude (length): of the road's height, half of what lies between crest and trough, up to
                10 m
            speed (velocity): of the vehicle, from which the delay of the rear follows
            frequency (frequency), several: at which the wheels meet the waves, speed over wavelength,
                each up to 1 kHz

        Returns
            (table) One row a frequency: `frequency`, `body_displacement` (of the centre of mass),
            `pitch`, `roll`, `seat_acceleration`; of each wheel the travel and the variation of the
            tyre's load, as `front_left_suspension_travel` and `front_left_tyre_load_variation`.
        """
        return _full_car_frequency_response(self._handle, amplitude, speed, frequency)  # type: ignore[no-any-return]

    def roll_response(self, *, amplitude: QuantityLike, speed: QuantityLike, frequency: QuantityLike) -> Table:
        """Amplitudes on waves of one frequency that are crests under the left wheels where they are
        troughs under the right ones: the body rolls.

        Parameters
            amplitude (length): of the road's height under either side, up to 10 m
            speed (velocity): of the vehicle, from which the delay of the rear follows
            frequency (frequency), several: at which the wheels meet the waves, speed over wavelength,
                each up to 1 kHz

        Returns
            (table) One row a frequency, as of the frequency response.
        """
        return _full_car_roll_response(self._handle, amplitude, speed, frequency)  # type: ignore[no-any-return]

    def on_road(self, *, roughness: QuantityLike, speed: QuantityLike, shortest_wave: QuantityLike, longest_wave: QuantityLike) -> VehicleOnRoad:
        """Root mean squares on a random road, and how it feels at the seat.

        Formula
            `x^2 = integral of |H(f)|^2 G_d(f / v) / v df` with the rear axle later by `(a + b) / v`,
            for the weighted acceleration `|H W_k|^2`; what left and right have in common is `x K_1(x)`
            with `x = 2 pi n t`, `t` the mean of both tracks

        Parameters
            roughness (road roughness): `G`, one-sided density of the road's height at 0.1 cycles a
                metre
            speed (velocity): `v`, of the vehicle
            shortest_wave (length): that the road has and the tyre does not bridge; ISO 8608 gives its
                classes down to 0.35 m
            longest_wave (length): that the road has; ISO 8608 gives its classes up to 91 m

        Returns
            body_acceleration (acceleration [m/s²]): of the body at its centre of mass, upwards
            seat_acceleration (acceleration [m/s²]): of the body at the seat, upwards
            weighted_acceleration (acceleration [m/s²]): at the seat, weighted with Wk
            comfort (text): words for that acceleration, joined by `to` where two overlap
            front_suspension_travel (length [m]): of a front wheel against the body
            rear_suspension_travel (length [m]): of a rear wheel
            front_tyre_load_variation (force [N]): of one front tyre, about the static load
            rear_tyre_load_variation (force [N]): of one rear tyre
            front_tyre_load_share (ratio [-]): that over the static load; near a third the wheels begin
                to leave the road, as the threefold comes now and then
            rear_tyre_load_share (ratio [-]): the same of the rear

        Valid for (SI)
            - `0 <= roughness <= 1`
            - `0.01 <= speed <= 200`
            - `0.01 <= shortest_wave <= 1000`
            - `0.1 <= longest_wave <= 100000`
            - `longest_wave > shortest_wave`

            A road of waviness 2 that is as rough in every direction: long waves are the same under left
            and right, short ones are not. Front and rear follow in the same tracks.

        Source
            ISO 8608:2016 (road), ISO 8041-1:2017 (Wk), ISO 2631-1:1997 C.2.3 (words), all from memory;
            Dodds and Robson, J. Sound and Vibration 31 (1973) 175-183 (coherence of the tracks, from
            memory); quadrature checked against Lyapunov solutions of SciPy
        """
        return VehicleOnRoad(*_full_car_on_road(self._handle, roughness, speed, shortest_wave, longest_wave))

    def step(self, *, left_height: QuantityLike, right_height: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion after a step of the road under one or both sides, which the rear wheels meet later.

        Parameters
            left_height (length): of the step under the left wheels, negative where it goes down,
                nothing where there is none
            right_height (length): under the right wheels
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the step under the front wheels
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0: `time`, `body_displacement` (of the centre of mass),
            `pitch` (positive where the front goes down), `roll` (positive where the left goes up),
            `seat_acceleration`; of each wheel road height, travel in bump and variation of the tyre's
            load, as `front_left_road_height`, `front_left_suspension_travel`,
            `front_left_tyre_load_variation`; exact at every row.
        """
        return _full_car_step(self._handle, left_height, right_height, speed, duration, time_step)  # type: ignore[no-any-return]

    def ramp(self, *, left_height: QuantityLike, right_height: QuantityLike, length: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion up a ramp that ends on a plain, under one or both sides, such as a bevelled kerb.

        Parameters
            left_height (length): of the plain under the left wheels, negative where the ramp goes down,
                nothing where there is none
            right_height (length): under the right wheels
            length (length): of the ramp along the road
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the foot of the ramp under the front wheels
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0, as after a step; exact at every row.
        """
        return _full_car_ramp(self._handle, left_height, right_height, length, speed, duration, time_step)  # type: ignore[no-any-return]

    def half_sine(self, *, left_height: QuantityLike, right_height: QuantityLike, length: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion over a bump that is half a sine, under one or both sides.

        Parameters
            left_height (length): of the bump under the left wheels, negative for a hole, nothing where
                there is none
            right_height (length): under the right wheels
            length (length): of the bump along the road, half a wave
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the beginning of the bump under the front wheels
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0, as after a step; exact at every row.
        """
        return _full_car_half_sine(self._handle, left_height, right_height, length, speed, duration, time_step)  # type: ignore[no-any-return]

    def profile(self, *, speed: QuantityLike, time_step: QuantityLike, distance: QuantityLike, left_height: QuantityLike, right_height: QuantityLike) -> Table:
        """The motion over measured profiles of both tracks, straight from point to point.

        Parameters
            speed (velocity): of the vehicle
            time_step (time): from row to row
            distance (length), several: along the road, at least two in increasing order
            left_height (length), several: of the road under the left wheels at each distance;
                everything rests on the first one before, the rear wheels until they come to it
            right_height (length), several: under the right wheels

        Returns
            (table) One row a time step while the front wheels go from the first distance to the last,
            as after a step; exact at every row for the road as it is joined.
        """
        return _full_car_profile(self._handle, speed, time_step, distance, left_height, right_height)  # type: ignore[no-any-return]


class HalfCar(Model):
    """A body that bounces and pitches on both axles, whose wheels meet the same road one after the
    other: four freedoms, linear.

    Formula
        Height of the body at the place `x` in front of its centre: `z - x u`, with the pitch `u`
        positive where the front goes down. `m_s z'' = sum of F`, `I u'' = -a F_f + b F_r` with `F =
        k (z_u - z_x) + c (z_u' - z_x')` of both wheels of an axle; `m_u z_u'' = k_t (z_r - z_u) +
        c_t (z_r' - z_u') - F`; the rear meets the road later by `(a + b) / v`

    Fields
        sprung_mass (mass): `m_s`, of the whole body
        pitch_inertia (moment of inertia): `I`, of the sprung mass about the lateral axis through
            its centre
        front_distance (length): `a`, from the centre of the sprung mass to the front axle
        rear_distance (length): `b`, to the rear axle
        front (table): one front wheel: `unsprung_mass` (`m_u`), `wheel_rate` (`k`, tyre left
            aside), `wheel_damping` (`c`, rate of the damper times the square of its motion ratio),
            `tyre_rate` (`k_t`), `tyre_damping` (`c_t`, nothing where it is missing)
        rear (table): one rear wheel, likewise
        seat_forward (length, optional): `x`, of the seat in front of the centre of the sprung mass,
            negative behind it; at the centre where it is missing

    Valid for
        Small motions: no stop is touched, the tyres stay on the ground, and pull where they would
        leave it. Both tracks are one. Tyres touch the road in one point. Roads in the time domain
        as for `ride.QuarterCar`.

    Source
        Newton's law; Gillespie, Fundamentals of Vehicle Dynamics, chapter 5 (from memory); checked
        against SciPy

    Caution
        A tyre whose load varies holds the road less; a ride that is measured on a seat decides, not
        this. Local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "ride.HalfCar"
    _kinds = {"sprung_mass": "Mass", "pitch_inertia": "MomentOfInertia", "front_distance": "Length", "rear_distance": "Length", "seat_forward": "Length"}

    def __init__(
        self,
        *,
        sprung_mass: QuantityLike,
        pitch_inertia: QuantityLike,
        front_distance: QuantityLike,
        rear_distance: QuantityLike,
        front: Mapping[str, Any],
        rear: Mapping[str, Any],
        seat_forward: QuantityLike | None = None,
    ) -> None:
        self._build(
            sprung_mass=sprung_mass,
            pitch_inertia=pitch_inertia,
            front_distance=front_distance,
            rear_distance=rear_distance,
            front=front,
            rear=rear,
            seat_forward=seat_forward,
        )

    @property
    def sprung_mass(self) -> Quantity:
        """`m_s`, of the whole body."""
        return self._read("sprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def pitch_inertia(self) -> Quantity:
        """`I`, of the sprung mass about the lateral axis through its centre."""
        return self._read("pitch_inertia", "MomentOfInertia")  # type: ignore[no-any-return]

    @property
    def front_distance(self) -> Quantity:
        """`a`, from the centre of the sprung mass to the front axle."""
        return self._read("front_distance", "Length")  # type: ignore[no-any-return]

    @property
    def rear_distance(self) -> Quantity:
        """`b`, to the rear axle."""
        return self._read("rear_distance", "Length")  # type: ignore[no-any-return]

    @property
    def front(self) -> dict[str, Any]:
        """One front wheel: `unsprung_mass` (`m_u`), `wheel_rate` (`k`, tyre left aside), `wheel_damping`
        (`c`, rate of the damper times the square of its motion ratio), `tyre_rate` (`k_t`),
        `tyre_damping` (`c_t`, nothing where it is missing).
        """
        return self._read("front")  # type: ignore[no-any-return]

    @property
    def rear(self) -> dict[str, Any]:
        """One rear wheel, likewise."""
        return self._read("rear")  # type: ignore[no-any-return]

    @property
    def seat_forward(self) -> Quantity | None:
        """`x`, of the seat in front of the centre of the sprung mass, negative behind it; at the centre
        where it is missing.
        """
        return self._read("seat_forward", "Length")  # type: ignore[no-any-return]

    def modes(self) -> Table:
        """The natural modes, the slowest first.

        Formula
            Eigenvalues of the state matrix: a pair has `w = sqrt(s_1 s_2)`, `zeta = -(s_1 + s_2) / (2
            w)`; shares of the kinetic energy `m_i |q_i|^2` of its eigenvector

        Returns
            (table) One row a mode: `mode` (of what it has most: `bounce`, `pitch`, `front wheels`,
            `rear wheels`), `frequency` (natural, the modulus of its roots), `damping_ratio`, and the
            shares of the kinetic energy `bounce_share`, `pitch_share`, `front_share`, `rear_share`. A
            mode that is damped above 1 does not swing; two of them are refused.
        """
        return _half_car_modes(self._handle)  # type: ignore[no-any-return]

    def bounce_and_pitch(self) -> BodyModes:
        """Frequencies of bounce and pitch, and the points about which the body swings: without damping, on
        wheels that follow the road.

        Formula
            With the ride rates `k_f` and `k_r` of both wheels of an axle, tyres in series, `A = (k_f +
            k_r) / m_s`, `B = (k_r b - k_f a) / m_s`, `C = (k_f a^2 + k_r b^2) / I`, `j^2 = I / m_s`:
            `w^2 = (A + C) / 2 +- sqrt(((A - C) / 2)^2 + B^2 / j^2)`; centre `x = B / (w^2 - A)` in
            front of the centre of mass, and `x_1 x_2 = -j^2`

        Returns
            bounce_frequency (frequency [Hz]): of the mode whose centre lies farther away
            bounce_centre (length [m]): in front of the centre of mass, negative behind it; infinite
                where the body only bounces
            pitch_frequency (frequency [Hz]): of the mode whose centre lies nearer
            pitch_centre (length [m]): in front of the centre of mass, negative behind it
            dynamic_index (ratio [-]): square of the radius of gyration over the product of the
                distances
        """
        return BodyModes(*_half_car_bounce_and_pitch(self._handle))

    def flat_ride(self, *, speed: QuantityLike) -> FlatRide:
        """Whether the rear catches up with the front after a bump.

        Formula
            `f_f = sqrt(k_f / m_f) / (2 pi)` with `m_f = m_s b / (a + b)` on both wheels, tyres in
            series, the rear likewise; cycles `n = f_f f_r t / (f_r - f_f)` with `t = (a + b) / v`

        Parameters
            speed (velocity): `v`, of the vehicle

        Returns
            front_frequency (frequency [Hz]): of the body's share on the front axle
            rear_frequency (frequency [Hz]): of the body's share on the rear axle; where it is no
                greater than that of the front the ride is never flat, and refused
            frequency_ratio (ratio [-]): rear over front
            cycles (ratio [-]): of the front since it met the bump, until both ends move together; about
                one to one and a half is a flat ride

        Source
            Common practice after Olley (Gillespie, Fundamentals of Vehicle Dynamics, chapter 5;
            Milliken, Chassis Design; from memory)
        """
        return FlatRide(*_half_car_flat_ride(self._handle, speed))

    def frequency_response(self, *, amplitude: QuantityLike, speed: QuantityLike, frequency: QuantityLike) -> Table:
        """Amplitudes on waves of one frequency under all wheels, the rear ones later.

        Parameters
            amplitude (length): of the road's height, half of what lies between crest and trough, up to
                10 m
            speed (velocity): of the vehicle, from which the delay of the rear follows
            frequency (frequency), several: at which the wheels meet the waves, speed over wavelength,
                each up to 1 kHz

        Returns
            (table) One row a frequency: `frequency`, `body_displacement` (of the centre of mass),
            `pitch`, `seat_acceleration`; `front_suspension_travel` and `front_tyre_load_variation`
            (both wheels of the axle), `rear_suspension_travel` and `rear_tyre_load_variation`.
        """
        return _half_car_frequency_response(self._handle, amplitude, speed, frequency)  # type: ignore[no-any-return]

    def on_road(self, *, roughness: QuantityLike, speed: QuantityLike, shortest_wave: QuantityLike, longest_wave: QuantityLike) -> VehicleOnRoad:
        """Root mean squares on a random road, and how it feels at the seat.

        Formula
            `x^2 = integral of |H(f)|^2 G_d(f / v) / v df` with the rear axle later by `(a + b) / v`,
            for the weighted acceleration `|H W_k|^2`

        Parameters
            roughness (road roughness): `G`, one-sided density of the road's height at 0.1 cycles a
                metre
            speed (velocity): `v`, of the vehicle
            shortest_wave (length): that the road has and the tyre does not bridge; ISO 8608 gives its
                classes down to 0.35 m
            longest_wave (length): that the road has; ISO 8608 gives its classes up to 91 m

        Returns
            body_acceleration (acceleration [m/s²]): of the body at its centre of mass, upwards
            seat_acceleration (acceleration [m/s²]): of the body at the seat, upwards
            weighted_acceleration (acceleration [m/s²]): at the seat, weighted with Wk
            comfort (text): words for that acceleration, joined by `to` where two overlap
            front_suspension_travel (length [m]): of a front wheel against the body
            rear_suspension_travel (length [m]): of a rear wheel
            front_tyre_load_variation (force [N]): of both front tyres together, about the static load
            rear_tyre_load_variation (force [N]): of both rear tyres together
            front_tyre_load_share (ratio [-]): that over the static load; near a third the wheels begin
                to leave the road, as the threefold comes now and then
            rear_tyre_load_share (ratio [-]): the same of the rear

        Valid for (SI)
            - `0 <= roughness <= 1`
            - `0.01 <= speed <= 200`
            - `0.01 <= shortest_wave <= 1000`
            - `0.1 <= longest_wave <= 100000`
            - `longest_wave > shortest_wave`

            A road of waviness 2, the same under left and right.

        Source
            ISO 8608:2016 (road), ISO 8041-1:2017 (Wk), ISO 2631-1:1997 C.2.3 (words), all from memory;
            quadrature checked against Lyapunov solutions of SciPy
        """
        return VehicleOnRoad(*_half_car_on_road(self._handle, roughness, speed, shortest_wave, longest_wave))

    def step(self, *, height: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion after a step of the road, which the rear wheels meet later.

        Parameters
            height (length): of the step, negative where it goes down
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the step under the front wheels
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0: `time`, `body_displacement` (of the centre of mass),
            `pitch` (positive where the front goes down), `seat_acceleration`; of one axle
            `front_road_height`, `front_suspension_travel` and `front_tyre_load_variation` (both
            wheels), of the other `rear_road_height`, `rear_suspension_travel`,
            `rear_tyre_load_variation`; exact at every row.
        """
        return _half_car_step(self._handle, height, speed, duration, time_step)  # type: ignore[no-any-return]

    def ramp(self, *, height: QuantityLike, length: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion up a ramp that ends on a plain, such as a bevelled kerb.

        Parameters
            height (length): of the plain, negative where the ramp goes down
            length (length): of the ramp along the road
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the foot of the ramp under the front wheels
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0, as after a step; exact at every row.
        """
        return _half_car_ramp(self._handle, height, length, speed, duration, time_step)  # type: ignore[no-any-return]

    def half_sine(self, *, height: QuantityLike, length: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion over a bump that is half a sine.

        Parameters
            height (length): of the bump, negative for a hole
            length (length): of the bump along the road, half a wave
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the beginning of the bump under the front wheels
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0, as after a step; exact at every row.
        """
        return _half_car_half_sine(self._handle, height, length, speed, duration, time_step)  # type: ignore[no-any-return]

    def profile(self, *, speed: QuantityLike, time_step: QuantityLike, distance: QuantityLike, height: QuantityLike) -> Table:
        """The motion over a measured profile, straight from point to point.

        Parameters
            speed (velocity): of the vehicle
            time_step (time): from row to row
            distance (length), several: along the road, at least two in increasing order
            height (length), several: of the road at each distance; everything rests on the first one
                before, the rear wheels until they come to it

        Returns
            (table) One row a time step while the front wheels go from the first distance to the last,
            as after a step; exact at every row for the road as it is joined.
        """
        return _half_car_profile(self._handle, speed, time_step, distance, height)  # type: ignore[no-any-return]


class NonlinearQuarterCar(Model):
    """A wheel with its share of the body on a road, with a damper that is not the same in bump and
    rebound, a bump stop, and a tyre that can leave the ground.

    Formula
        `m_s z_s'' = k x + r F_d(r x') + r_b F_b(r_b (x - b))` with the travel `x = z_u - z_s`; `m_u
        z_u'' = max(k_t (z_r - z_u), -W) - m_s z_s''` with the static load `W = (m_s + m_u) g`;
        `F_d` and `F_b` monotone cubics through the points, the gas force taken off

    Fields
        sprung_mass (mass): `m_s`, of the body on this wheel
        unsprung_mass (mass): `m_u`, that moves with the wheel
        wheel_rate (linear stiffness): `k`, of the suspension at the wheel, tyre and bump stop left
            aside
        tyre_rate (linear stiffness): `k_t`, vertical rate of the tyre at its pressure and load
        damper (table): `F_d`, of the damper itself, a `spring.DamperCurve`
        damper_motion_ratio (ratio): `r`, shortening of the damper over travel of the wheel
        bump_stop (table, optional): with `bump_left` (`b`, travel of the wheel until it is
            touched), `motion_ratio` (`r_b`, compression over travel of the wheel) and `stop`
            (`F_b`, a `spring.BumpStop`); leave it out where there is none

    Valid for
        A linear spring that is never loose and never coil-bound, a damper that is never fully open,
        motion ratios that do not change along the travel, no friction, and a tyre without damping
        that touches the road in one point. Velocities and compressions within the points: beyond
        them nothing is known, and the answer is refused with the time. Each step of the integration
        is off by 1 nm or 1 nm/s at the most, as it estimates itself.

    Source
        Newton's law for both masses; integrated by the pair of Dormand and Prince (1980) of the
        library `differential-equations`; checked against SciPy's `solve_ivp` at a tighter tolerance

    Caution
        A wheel off the ground neither steers nor brakes, and a stop that is met hard loads its
        mounts far beyond the static force. Local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "ride.NonlinearQuarterCar"
    _kinds = {"sprung_mass": "Mass", "unsprung_mass": "Mass", "wheel_rate": "LinearStiffness", "tyre_rate": "LinearStiffness", "damper_motion_ratio": "Ratio"}

    def __init__(
        self,
        *,
        sprung_mass: QuantityLike,
        unsprung_mass: QuantityLike,
        wheel_rate: QuantityLike,
        tyre_rate: QuantityLike,
        damper: Mapping[str, Any],
        damper_motion_ratio: RatioLike,
        bump_stop: Mapping[str, Any] | None = None,
    ) -> None:
        self._build(
            sprung_mass=sprung_mass,
            unsprung_mass=unsprung_mass,
            wheel_rate=wheel_rate,
            tyre_rate=tyre_rate,
            damper=damper,
            damper_motion_ratio=damper_motion_ratio,
            bump_stop=bump_stop,
        )

    @property
    def sprung_mass(self) -> Quantity:
        """`m_s`, of the body on this wheel."""
        return self._read("sprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def unsprung_mass(self) -> Quantity:
        """`m_u`, that moves with the wheel."""
        return self._read("unsprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def wheel_rate(self) -> Quantity:
        """`k`, of the suspension at the wheel, tyre and bump stop left aside."""
        return self._read("wheel_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def tyre_rate(self) -> Quantity:
        """`k_t`, vertical rate of the tyre at its pressure and load."""
        return self._read("tyre_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def damper(self) -> dict[str, Any]:
        """`F_d`, of the damper itself, a `spring.DamperCurve`."""
        return self._read("damper")  # type: ignore[no-any-return]

    @property
    def damper_motion_ratio(self) -> Ratio:
        """`r`, shortening of the damper over travel of the wheel."""
        return self._read("damper_motion_ratio", "Ratio")

    @property
    def bump_stop(self) -> dict[str, Any] | None:
        """With `bump_left` (`b`, travel of the wheel until it is touched), `motion_ratio` (`r_b`,
        compression over travel of the wheel) and `stop` (`F_b`, a `spring.BumpStop`); leave it out
        where there is none.
        """
        return self._read("bump_stop")  # type: ignore[no-any-return]

    def step(self, *, height: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion after a step of the road.

        Parameters
            height (length): of the step, negative where it goes down
            duration (time): that is looked at
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0: `time`, `road_height`, `body_displacement`,
            `wheel_displacement`, `suspension_travel`, `body_acceleration`, `tyre_load_variation`,
            `bump_stop_force`.
        """
        return _nonlinear_quarter_car_step(self._handle, height, duration, time_step)  # type: ignore[no-any-return]

    def ramp(self, *, height: QuantityLike, length: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion up a ramp that ends on a plain, such as a bevelled kerb.

        Parameters
            height (length): of the plain, negative where the ramp goes down
            length (length): of the ramp along the road
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the foot of the ramp
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0, as after a step.
        """
        return _nonlinear_quarter_car_ramp(self._handle, height, length, speed, duration, time_step)  # type: ignore[no-any-return]

    def half_sine(self, *, height: QuantityLike, length: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion over a bump that is half a sine.

        Parameters
            height (length): of the bump, negative for a hole
            length (length): of the bump along the road, half a wave
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the beginning of the bump
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0, as after a step.
        """
        return _nonlinear_quarter_car_half_sine(self._handle, height, length, speed, duration, time_step)  # type: ignore[no-any-return]

    def profile(self, *, speed: QuantityLike, time_step: QuantityLike, distance: QuantityLike, height: QuantityLike) -> Table:
        """The motion over a measured profile, straight from point to point.

        Parameters
            speed (velocity): of the vehicle
            time_step (time): from row to row
            distance (length), several: along the road, at least two in increasing order
            height (length), several: of the road at each distance; everything rests on the first one
                before

        Returns
            (table) One row a time step from the first distance to the last, as after a step.
        """
        return _nonlinear_quarter_car_profile(self._handle, speed, time_step, distance, height)  # type: ignore[no-any-return]


class QuarterCar(Model):
    """A wheel with its share of the body on a road: two masses, linear.

    Formula
        `m_s z_s'' = k (z_u - z_s) + c (z_u' - z_s')`; `m_u z_u'' = k_t (z_r - z_u) + c_t (z_r' -
        z_u') - m_s z_s''`

    Fields
        sprung_mass (mass): `m_s`, of the body on this wheel
        unsprung_mass (mass): `m_u`, that moves with the wheel
        wheel_rate (linear stiffness): `k`, of the suspension at the wheel, tyre left aside
        wheel_damping (damping): `c`, of the damper at the wheel: its rate times the square of its
            motion ratio
        tyre_rate (linear stiffness): `k_t`, vertical rate of the tyre at its pressure and load
        tyre_damping (damping, optional): `c_t`, of the tyre; nothing where it is missing

    Valid for
        Small motions: no stop is touched, the tyre stays on the ground, and it pulls where it would
        leave it. A damper that is the same in bump and rebound. The tyre touches the road in one
        point: it does not bridge waves shorter than its contact patch. Roads in the time domain:
        heights within 10 m (1 km in a profile), lengths of 1 mm to 10 km, speeds of 10 mm/s to 200
        m/s, up to 100000 s in steps of 1 µs to 100 s, a million rows at the most.

    Source
        Newton's law for both masses; Gillespie, Fundamentals of Vehicle Dynamics, chapter 5 (from
        memory); checked against SciPy and python-control

    Caution
        A tyre whose load varies holds the road less; a ride that is measured on a seat decides, not
        this. Local codes and licensed practice come first.
    """

    __slots__ = ()
    _name = "ride.QuarterCar"
    _kinds = {"sprung_mass": "Mass", "unsprung_mass": "Mass", "wheel_rate": "LinearStiffness", "wheel_damping": "Damping", "tyre_rate": "LinearStiffness", "tyre_damping": "Damping"}

    def __init__(
        self,
        *,
        sprung_mass: QuantityLike,
        unsprung_mass: QuantityLike,
        wheel_rate: QuantityLike,
        wheel_damping: QuantityLike,
        tyre_rate: QuantityLike,
        tyre_damping: QuantityLike | None = None,
    ) -> None:
        self._build(
            sprung_mass=sprung_mass,
            unsprung_mass=unsprung_mass,
            wheel_rate=wheel_rate,
            wheel_damping=wheel_damping,
            tyre_rate=tyre_rate,
            tyre_damping=tyre_damping,
        )

    @property
    def sprung_mass(self) -> Quantity:
        """`m_s`, of the body on this wheel."""
        return self._read("sprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def unsprung_mass(self) -> Quantity:
        """`m_u`, that moves with the wheel."""
        return self._read("unsprung_mass", "Mass")  # type: ignore[no-any-return]

    @property
    def wheel_rate(self) -> Quantity:
        """`k`, of the suspension at the wheel, tyre left aside."""
        return self._read("wheel_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def wheel_damping(self) -> Quantity:
        """`c`, of the damper at the wheel: its rate times the square of its motion ratio."""
        return self._read("wheel_damping", "Damping")  # type: ignore[no-any-return]

    @property
    def tyre_rate(self) -> Quantity:
        """`k_t`, vertical rate of the tyre at its pressure and load."""
        return self._read("tyre_rate", "LinearStiffness")  # type: ignore[no-any-return]

    @property
    def tyre_damping(self) -> Quantity | None:
        """`c_t`, of the tyre; nothing where it is missing."""
        return self._read("tyre_damping", "Damping")  # type: ignore[no-any-return]

    def modes(self) -> QuarterModes:
        """Natural frequencies and damping ratios.

        Formula
            Roots of `m_s m_u s^4 + (c (m_s + m_u) + c_t m_s) s^3 + (k (m_s + m_u) + k_t m_s + c c_t)
            s^2 + (c k_t + c_t k) s + k k_t`: a pair has `w = sqrt(s_1 s_2)`, `zeta = -(s_1 + s_2) / (2
            w)`

        Returns
            body_undamped_frequency (frequency [Hz]): lower natural frequency without damping
            hop_undamped_frequency (frequency [Hz]): higher natural frequency without damping: wheel hop
            body_frequency (frequency [Hz]): natural frequency of the lower mode with damping, the
                modulus of its roots
            body_damping_ratio (ratio [-]): of the lower mode; above 1 it does not swing
            hop_frequency (frequency [Hz]): natural frequency of the higher mode with damping
            hop_damping_ratio (ratio [-]): of the higher mode
        """
        return QuarterModes(*_quarter_car_modes(self._handle))

    def frequency_response(self, *, amplitude: QuantityLike, frequency: QuantityLike) -> Table:
        """Amplitudes on a road that is a sine, over frequencies.

        Formula
            With `s = 2 pi i f` and `D` the polynomial of the modes: `z_s / z_r = (c s + k) (c_t s +
            k_t) / D`, travel `m_s s^2 (c_t s + k_t) / D`, tyre load `(c_t s + k_t) s^2 (m_s m_u s^2 +
            (m_s + m_u) (c s + k)) / D`

        Parameters
            amplitude (length): of the road's height, half of what lies between crest and trough, up to
                10 m
            frequency (frequency), several: at which the wheel meets the waves, speed over wavelength,
                each up to 1 MHz

        Returns
            (table) One row a frequency: `frequency`, `transmissibility` (body over road),
            `body_acceleration`, `suspension_travel`, `tyre_load_variation`.
        """
        return _quarter_car_frequency_response(self._handle, amplitude, frequency)  # type: ignore[no-any-return]

    def on_road(self, *, roughness: QuantityLike, speed: QuantityLike, shortest_wave: QuantityLike, longest_wave: QuantityLike) -> OnRoad:
        """Root mean squares on a random road, and how it feels.

        Formula
            `x^2 = integral of |H(f)|^2 G_d(f / v) / v df`, for the weighted acceleration `|H W_k|^2`,
            between the frequencies `v / lambda` of both waves

        Parameters
            roughness (road roughness): `G`, one-sided density of the road's height at 0.1 cycles a
                metre
            speed (velocity): `v`, of the vehicle
            shortest_wave (length): that the road has and the tyre does not bridge; ISO 8608 gives its
                classes down to 0.35 m
            longest_wave (length): that the road has; ISO 8608 gives its classes up to 91 m

        Returns
            body_acceleration (acceleration [m/s²]): of the body
            weighted_acceleration (acceleration [m/s²]): of the body, weighted with Wk
            comfort (text): words for that acceleration on a seat, joined by `to` where two overlap
            suspension_travel (length [m]): of the wheel against the body
            tyre_load_variation (force [N]): of the tyre's load about its static one; without bound for
                ever shorter waves where the tyre has damping
            tyre_load_share (ratio [-]): that over the static load; near a third the wheel begins to
                leave the road, as the threefold comes now and then

        Valid for (SI)
            - `0 <= roughness <= 1`
            - `0.01 <= speed <= 200`
            - `0.000000001 <= shortest_wave <= 1000000000`
            - `0.001 <= longest_wave <= 1000000000`
            - `longest_wave > shortest_wave`

            A road of waviness 2. The words are meant for the vibration on a seat; the floor over the
            wheel stands in for it.

        Source
            ISO 8608:2016 (road), ISO 8041-1:2017 (Wk), ISO 2631-1:1997 C.2.3 (words), all from memory;
            quadrature checked against Lyapunov solutions of SciPy
        """
        return OnRoad(*_quarter_car_on_road(self._handle, roughness, speed, shortest_wave, longest_wave))

    def step(self, *, height: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion after a step of the road.

        Parameters
            height (length): of the step, negative where it goes down
            duration (time): that is looked at
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0: `time`, `road_height`, `body_displacement`,
            `wheel_displacement`, `suspension_travel`, `body_acceleration`, `tyre_load_variation`; exact
            at every row.
        """
        return _quarter_car_step(self._handle, height, duration, time_step)  # type: ignore[no-any-return]

    def ramp(self, *, height: QuantityLike, length: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion up a ramp that ends on a plain, such as a bevelled kerb.

        Parameters
            height (length): of the plain, negative where the ramp goes down
            length (length): of the ramp along the road
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the foot of the ramp
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0, as after a step; exact at every row.
        """
        return _quarter_car_ramp(self._handle, height, length, speed, duration, time_step)  # type: ignore[no-any-return]

    def half_sine(self, *, height: QuantityLike, length: QuantityLike, speed: QuantityLike, duration: QuantityLike, time_step: QuantityLike) -> Table:
        """The motion over a bump that is half a sine.

        Parameters
            height (length): of the bump, negative for a hole
            length (length): of the bump along the road, half a wave
            speed (velocity): of the vehicle
            duration (time): that is looked at, from the beginning of the bump
            time_step (time): from row to row

        Returns
            (table) One row a time step from 0, as after a step; exact at every row.
        """
        return _quarter_car_half_sine(self._handle, height, length, speed, duration, time_step)  # type: ignore[no-any-return]

    def profile(self, *, speed: QuantityLike, time_step: QuantityLike, distance: QuantityLike, height: QuantityLike) -> Table:
        """The motion over a measured profile, straight from point to point.

        Parameters
            speed (velocity): of the vehicle
            time_step (time): from row to row
            distance (length), several: along the road, at least two in increasing order
            height (length), several: of the road at each distance; everything rests on the first one
                before

        Returns
            (table) One row a time step from the first distance to the last, as after a step; exact at
            every row for the road as it is joined.
        """
        return _quarter_car_profile(self._handle, speed, time_step, distance, height)  # type: ignore[no-any-return]


class RoadSurface(Model):
    """A road of a class of ISO 8608.

    Formula
        `G = 16e-6 m^3 * 4^i`, the geometric mean of the class, with `i = 0` for `a` to 7 for `h`

    Fields
        road_class (choice): `a` to `h`: `a` as smooth as a new motorway, `c` a worn country road,
            `e` and beyond tracks

    Valid for
        Roads in the sense of ISO 8608; what the classes look like is common practice, no source.

    Source
        ISO 8608:2016, annex C, table of classes by displacement density at 0.1 cycles/m (from
        memory)
    """

    __slots__ = ()
    _name = "ride.RoadSurface"
    _kinds = {}

    def __init__(
        self,
        *,
        road_class: Literal["a", "b", "c", "d", "e", "f", "g", "h"],
    ) -> None:
        self._build(
            road_class=road_class,
        )

    @property
    def road_class(self) -> Literal["a", "b", "c", "d", "e", "f", "g", "h"]:
        """`a` to `h`: `a` as smooth as a new motorway, `c` a worn country road, `e` and beyond tracks."""
        return self._read("road_class")  # type: ignore[no-any-return]

    def roughness(self) -> Quantity:
        """Roughness of the class: the geometric mean of its limits.

        Returns
            (road roughness [m³/cycle]) One-sided density of the height at 0.1 cycles a metre; a road of
            the class lies between half and twice that.
        """
        return _road_surface_roughness(self._handle)  # type: ignore[no-any-return]
