"""Roll: energies of springs, bars, tyres and weights over the angles; the stationary point in exact fractions."""

from fractions import Fraction

from scipy.optimize import brentq, fsolve

from . import GRAVITY, exact, route, second_difference


def sides(rate, half):
    """Energy of two springs at these distances from the middle, over an angle."""
    return lambda angle: sum(rate * (side * half * angle) ** 2 / 2 for side in (1, -1))


def two_springs(rate, base):
    return second_difference(sides(exact(rate), exact(base) / 2))


@route("suspension.independent_roll_stiffness")
def independent(wheel_rate, track):
    return two_springs(wheel_rate, track)


@route("suspension.live_axle_roll_stiffness")
def live_axle(spring_rate, spring_base):
    return two_springs(spring_rate, spring_base)


@route("suspension.tyre_roll_stiffness")
def tyres(tyre_rate, track):
    return two_springs(tyre_rate, track)


@route("suspension.bar_roll_stiffness")
def bar(bar_rate, bar_motion_ratio, track):
    return two_springs(bar_rate, exact(track) * exact(bar_motion_ratio))


@route("suspension.bar_rate_for_roll_stiffness")
def bar_rate(bar_stiffness, bar_motion_ratio, track):
    return exact(bar_stiffness) / two_springs(1.0, exact(track) * exact(bar_motion_ratio))


@route("suspension.roll_stiffness_over_tyres")
def over_tyres(suspension_stiffness, tyre_stiffness):
    return 1 / (1 / exact(suspension_stiffness) + 1 / exact(tyre_stiffness))


@route("suspension.roll_arm")
def roll_arm(sprung_height, behind_front_axle, wheelbase, front_roll_centre_height, rear_roll_centre_height):
    height, behind, base, front, rear = map(exact, (sprung_height, behind_front_axle, wheelbase, front_roll_centre_height, rear_roll_centre_height))
    return height - (front * (base - behind) + rear * behind) / base


@route("suspension.roll_gradient")
def roll_gradient(sprung_mass, roll_arm, front_roll_stiffness, rear_roll_stiffness):
    """Angle where the energy of springs, weight and inertia force is stationary, for a lateral acceleration of one."""
    mass, arm, stiffness = exact(sprung_mass), exact(roll_arm), exact(front_roll_stiffness) + exact(rear_roll_stiffness)
    # The energy is quadratic in the angle: slope at none over its second difference.
    energy = lambda angle: stiffness * angle**2 / 2 - mass * GRAVITY * arm * angle**2 / 2 - mass * arm * angle  # noqa: E731
    slope = (energy(Fraction(1)) - energy(Fraction(-1))) / 2
    return -slope / second_difference(energy)


@route("suspension.roll_stiffness_for_gradient")
def stiffness_for_gradient(sprung_mass, roll_arm, roll_gradient):
    mass, arm, angle = exact(sprung_mass), exact(roll_arm), exact(roll_gradient)
    return mass * arm * (1 + GRAVITY * angle) / angle


@route("suspension.axle_load_transfer")
def axle_load_transfer(unsprung_mass, unsprung_height, axle_sprung_mass, roll_centre_height, roll_stiffness, roll_angle, track, lateral_acceleration):
    unsprung, height, sprung, centre, stiffness, angle, track, sideways = map(exact, (unsprung_mass, unsprung_height, axle_sprung_mass, roll_centre_height, roll_stiffness, roll_angle, track, lateral_acceleration))

    def outer_load(moment):
        """From the sum of the forces and of the moments about the middle, less half of the weight."""
        weight = (unsprung + sprung) * GRAVITY
        return (weight + 2 * moment / track) / 2 - weight / 2

    parts = {"unsprung_transfer": unsprung * sideways * height, "geometric_transfer": sprung * sideways * centre, "elastic_transfer": stiffness * angle}
    return {name: outer_load(moment) for name, moment in parts.items()} | {"load_transfer": outer_load(sum(parts.values()))}


@route("suspension.front_transfer_share")
def front_transfer_share(front_load_transfer, rear_load_transfer):
    return exact(front_load_transfer) / (exact(front_load_transfer) + exact(rear_load_transfer))


def solved(matrix, right):
    """Gauss's elimination in exact fractions."""
    rows = [[*row, value] for row, value in zip(matrix, right)]
    for i in range(len(rows)):
        pivot = next(j for j in range(i, len(rows)) if rows[j][i])
        rows[i], rows[pivot] = rows[pivot], rows[i]
        rows[i] = [x / rows[i][i] for x in rows[i]]
        for j in range(len(rows)):
            if j != i:
                rows[j] = [a - rows[j][i] * b for a, b in zip(rows[j], rows[i])]
    return [row[-1] for row in rows]


class Vehicle:
    def __init__(self, d, bars=None):
        self.mass, self.height, behind, base = d["sprung_mass"], d["sprung_height"], d["behind_front_axle"], d["wheelbase"]
        self.axles = []
        for index, (name, share) in enumerate((("front", (base - behind) / base), ("rear", behind / base))):
            axle = dict(d[name], share=share)
            springs = sides(axle["spring_rate"], axle.get("spring_base", axle["track"]) / 2)
            rate = axle["bar_rate"] if bars is None else Fraction(bars[index])
            ends = sides(rate, axle["bar_motion_ratio"] * axle["track"] / 2)
            axle["bar"] = second_difference(ends)
            axle["suspension"] = second_difference(springs) + axle["bar"]
            axle["tyres"] = second_difference(sides(axle["tyre_rate"], axle["track"] / 2))
            self.axles.append(axle)

    def energy(self, q, sideways):
        """Angles of the body and of both axles. The body turns on the line between the roll centres, which lean with the axles."""
        total = Fraction(0)
        arm = self.height - sum(axle["share"] * axle["roll_centre_height"] for axle in self.axles)
        place = arm * q[0]  # how far the body's centre of gravity stands aside
        fall = arm * q[0] ** 2 / 2
        for axle, angle in zip(self.axles, q[1:]):
            total += axle["suspension"] * (q[0] - angle) ** 2 / 2 + axle["tyres"] * angle**2 / 2
            place += axle["share"] * axle["roll_centre_height"] * angle
            fall += axle["share"] * axle["roll_centre_height"] * angle**2 / 2
            unsprung = axle["unsprung_mass"], axle["unsprung_height"]
            total -= unsprung[0] * unsprung[1] * (sideways * angle + GRAVITY * angle**2 / 2)
        return total - self.mass * (sideways * place + GRAVITY * fall)

    def turned(self, sideways):
        zero = [Fraction(0)] * 3
        unit = lambda *which: [Fraction(which.count(i)) for i in range(3)]  # noqa: E731
        at = lambda q: self.energy(q, sideways)  # noqa: E731
        e0 = at(zero)
        minus = lambda q: [-x for x in q]  # noqa: E731
        slope = [(at(unit(i)) - at(minus(unit(i)))) / 2 for i in range(3)]
        second = [[at(unit(i, j)) - at(unit(i)) - at(unit(j)) + e0 if i != j else at(unit(i)) + at(minus(unit(i))) - 2 * e0 for j in range(3)] for i in range(3)]
        return solved(second, [-x for x in slope])

    def in_turn(self, sideways):
        body, *leans = self.turned(sideways)
        out, transfers = {"roll_angle": body}, []
        for name, axle, angle in zip(("front", "rear"), self.axles, leans):
            track, on = axle["track"], self.mass * axle["share"]
            pushed = sideways + GRAVITY * angle
            parts = [axle["unsprung_mass"] * axle["unsprung_height"] * pushed, on * axle["roll_centre_height"] * pushed, axle["suspension"] * (body - angle)]
            out |= {f"{name}_{part}_transfer": moment / track for part, moment in zip(("unsprung", "geometric", "elastic"), parts)}
            # By the tyres: their rate times how much the outer one is pressed more.
            transfers.append(axle["tyres"] * angle / track)
            out[f"{name}_load_transfer"] = transfers[-1]
            out[f"{name}_inner_load"] = (on + axle["unsprung_mass"]) * GRAVITY / 2 - transfers[-1]
        return out | {"front_share": transfers[0] / sum(transfers)}


@route("suspension.RollBalance.balance")
def balance(d):
    vehicle = Vehicle(d)
    turn = vehicle.in_turn(Fraction(1))
    loads = [vehicle.mass * axle["share"] + axle["unsprung_mass"] for axle in vehicle.axles]
    weight = loads[0] / sum(loads)
    found = {"roll_gradient": turn["roll_angle"], "front_suspension_stiffness": vehicle.axles[0]["suspension"], "rear_suspension_stiffness": vehicle.axles[1]["suspension"], "front_share": turn["front_share"]}
    return found | {"front_weight_share": weight, "share_over_weight": turn["front_share"] - weight}


@route("suspension.RollBalance.in_turn")
def in_turn(d, lateral_acceleration):
    return Vehicle(d).in_turn(exact(lateral_acceleration))


def result(d, bars, name):
    turn = Vehicle(d, bars).in_turn(Fraction(1))
    return float(turn["roll_angle" if name == "roll_gradient" else name])


@route("suspension.RollBalance.bars_for")
def bars_for(d, roll_gradient, front_share):
    wrong = lambda bars: [result(d, bars * 1e5, "roll_gradient") / roll_gradient - 1, result(d, bars * 1e5, "front_share") / front_share - 1]  # noqa: E731
    found = fsolve(wrong, [0.5, 0.5], xtol=1e-14) * 1e5
    stiffness = [float(axle["bar"]) for axle in Vehicle(d, found).axles]
    return {"front_bar_rate": found[0], "rear_bar_rate": found[1], "front_bar_stiffness": stiffness[0], "rear_bar_stiffness": stiffness[1]}


def one_bar(d, index, name, wanted):
    bars = [d[axle]["bar_rate"] for axle in ("front", "rear")]

    def gap(rate):
        bars[index] = rate
        return result(d, bars, name) - wanted

    return brentq(gap, 0.0, 1e6, xtol=1e-8)


for which, axle in enumerate(("front", "rear")):

    @route(f"suspension.RollBalance.{axle}_bar_for_gradient")
    def bar_for_gradient(d, roll_gradient, which=which):
        return one_bar(d, which, "roll_gradient", roll_gradient)

    @route(f"suspension.RollBalance.{axle}_bar_for_share")
    def bar_for_share(d, front_share, which=which):
        return one_bar(d, which, "front_share", front_share)
