//! Motion of an upright on a lower arm: closed form over the angle of that arm, with first and second derivatives.
//!
//! The lower arm turns its ball joint. On a double wishbone the upper ball joint lies where the circle of its arm meets the sphere about the
//! lower one; on a strut the steering axis goes to the top mount, and its length says where along the strut's axis, which is fixed in the
//! upright, the mount stands. The outer end of the tie rod lies where its circle about the steering axis meets the sphere about the inner
//! end. Only the angle for a wanted travel is iterated, on the wheel's height, with both derivatives (Halley's method). Source: vector
//! kinematics of rigid bodies.

use crate::base::numeric::hypot;
use crate::suspension::kinematics::solved::solved;
use crate::suspension::kinematics::vector::{Scalar, Vector, vector};
use crate::suspension::parts::{Arm, Carrier};

/// Number of clearances.
pub(super) const CLEARANCES: usize = 6;

/// Turn of the lower arm in a coarse step.
pub(super) const COARSE: f64 = 0.2;

/// A point, and its first and second derivative with the lower arm's angle.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::suspension) struct Motion<S = f64> {
    pub(in crate::suspension) at: Vector<S>,
    pub(super) rate: Vector<S>,
    pub(super) second: Vector<S>,
}

/// A rigid body: its frame, and the derivatives of the frame's origin and orientation with the lower arm's angle.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::suspension) struct Body<S = f64> {
    origin: Vector<S>,
    frame: [Vector<S>; 3],
    velocity: Vector<S>,
    acceleration: Vector<S>,
    pub(super) spin: Vector<S>,
    spin_rate: Vector<S>,
}

impl<S: Scalar> Body<S> {
    /// Coordinates of a direction in the body's frame.
    fn direction_here(&self, along: Vector<S>) -> Vector<S> {
        let [a, b, c] = self.frame;
        vector(along.dot(a), along.dot(b), along.dot(c))
    }
    /// Coordinates of a point in the body's frame.
    fn here(&self, point: Vector<S>) -> Vector<S> {
        self.direction_here(point - self.origin)
    }
    #[inline(always)]
    pub(super) fn direction(&self, here: Vector<S>) -> Vector<S> {
        let [a, b, c] = self.frame;
        a * here.x + b * here.y + c * here.z
    }
    /// First axis of the body's frame: that about which an arm turns, and along which a strut slides.
    pub(super) fn axis(&self) -> Vector<S> {
        self.frame[0]
    }
    /// Direction from the axis of an arm to its ball joint.
    pub(super) fn outward(&self) -> Vector<S> {
        self.frame[1]
    }
    /// Foot of the ball joint on the axis of an arm.
    pub(super) fn foot(&self) -> Vector<S> {
        self.origin
    }
    /// Rotation of an arm from rest, with both derivatives, positive in bump.
    pub(in crate::suspension) fn turned(&self, rest: &Body) -> [S; 3] {
        let sign = S::of(rest.bump());
        let ([axis, from, _], [_, to, _]) = (rest.frame.map(Vector::spread::<S>), self.frame);
        let turn = axis.dot(from.cross(to)).arctangent(from.dot(to));
        [turn, self.spin.dot(axis), self.spin_rate.dot(axis)].map(|on| on * sign)
    }
    #[inline(always)]
    pub(super) fn point(&self, here: Vector<S>) -> Motion<S> {
        self.carried(self.origin + self.direction(here))
    }
    /// Motion of the body's point that is in this place now.
    #[inline(always)]
    pub(super) fn carried(&self, at: Vector<S>) -> Motion<S> {
        let arm = at - self.origin;
        let turning = self.spin.cross(arm);
        Motion {
            at,
            rate: self.velocity + turning,
            second: self.acceleration + self.spin_rate.cross(arm) + self.spin.cross(turning),
        }
    }
}

impl Body {
    /// Sign of an arm's turn in bump, about its axis; of the arm at rest.
    pub(super) fn bump(&self) -> f64 {
        1.0_f64.copysign(self.spin.dot(self.frame[0]))
    }
}

/// A hinge about an axis of the body: foot of a point on the axis, direction of the axis, distance from it.
#[derive(Debug, Clone, Copy)]
pub(in crate::suspension) struct Hinge<S = f64> {
    pub(in crate::suspension) foot: Vector<S>,
    pub(in crate::suspension) axis: Vector<S>,
    pub(in crate::suspension) radius: S,
    /// From the foot to the point at ride height.
    pub(in crate::suspension) outward: Vector<S>,
}

impl Hinge {
    pub(in crate::suspension) fn new(on_axis: Vector, axis: Vector, point: Vector) -> Hinge {
        let foot = on_axis + axis * (point - on_axis).dot(axis);
        let lever = point - foot;
        let radius = lever.norm();
        Hinge { foot, axis, radius, outward: lever * (1.0 / radius) }
    }
    fn of(arm: &Arm) -> Hinge {
        let (front, rear) = (arm.front_pivot.vector(), arm.rear_pivot.vector());
        Hinge::new(front, (rear - front).unit(), arm.ball_joint.vector())
    }
    /// One hinge in every lane.
    #[inline(always)]
    fn spread<S: Scalar>(&self) -> Hinge<S> {
        Hinge {
            foot: self.foot.spread(),
            axis: self.axis.spread(),
            radius: S::of(self.radius),
            outward: self.outward.spread(),
        }
    }
}

impl<S: Scalar> Hinge<S> {
    /// The arm with its point in this direction from the foot.
    #[inline(always)]
    fn body(&self, outward: Vector<S>, rate: S, second: S) -> Body<S> {
        Body {
            origin: self.foot,
            frame: [self.axis, outward, self.axis.cross(outward)],
            spin: self.axis * rate,
            spin_rate: self.axis * second,
            ..Body::default()
        }
    }
}

/// Direction from `centre` in which a point of the circle about `axis` with this radius lies `length` from `target`, on the side on
/// which `side` is positive or negative; not a number where the circle does not reach.
#[inline(always)]
pub(in crate::suspension) fn reach<S: Scalar>(
    centre: Vector<S>,
    axis: Vector<S>,
    radius: S,
    target: Vector<S>,
    length: S,
    side: f64,
) -> Vector<S> {
    let off = centre - target;
    let across = off - axis * off.dot(axis);
    let distance = across.norm();
    let cosine = (length * length - radius * radius - off.square()) / (S::of(2.0) * radius * distance);
    let sine = ((S::of(1.0) - cosine) * (S::of(1.0) + cosine)).sqrt();
    let along = across * (S::of(1.0) / distance);
    along * cosine + axis.cross(along) * (sine * S::of(1.0_f64.copysign(side)))
}

/// The side on which a direction lies as `reach` takes it.
pub(in crate::suspension) fn side(centre: Vector, axis: Vector, direction: Vector, target: Vector) -> f64 {
    axis.cross(centre - target).dot(direction)
}

/// End of a linkage's motion.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::suspension) enum End {
    UpperArm,
    Strut,
    TieRod,
    DropLink,
    LowerArm,
}

impl End {
    pub(super) const fn word(self) -> &'static str {
        match self {
            End::UpperArm => "upper arm",
            End::Strut => "strut",
            End::TieRod => "tie rod",
            End::DropLink => "drop link",
            End::LowerArm => "lower arm",
        }
    }
    /// Sentence about it.
    pub(super) const fn sentence(self) -> &'static str {
        match self {
            End::UpperArm => "the upper arm lines up with the upright",
            End::Strut => "the lower ball joint comes as near to the top mount as the strut's axis lets it",
            End::TieRod => "the tie rod lines up with its steering arm, or has turned over",
            End::DropLink => "the drop link lines up with the lever of the anti-roll bar",
            End::LowerArm => "the lower arm lifts the wheel no further",
        }
    }
}

/// Everything that moves, at one angle of the lower arm.
#[derive(Debug, Clone, Copy, Default)]
pub(in crate::suspension) struct Pose<S = f64> {
    pub(in crate::suspension) lower_arm: Body<S>,
    /// The upper arm; for a strut, the vehicle's body, on which the top mount is.
    pub(super) upper_arm: Body<S>,
    pub(super) upright: Body<S>,
    pub(in crate::suspension) lower_ball: Vector<S>,
    pub(super) steering_axis: Vector<S>,
    /// From the inner to the outer end.
    pub(in crate::suspension) tie_rod: Vector<S>,
    pub(in crate::suspension) wheel: Motion<S>,
    /// The bar's turn from ride height, and its derivative.
    pub(super) bar: Option<(S, S)>,
    /// Not a number where the upper arm or the strut does not reach.
    guided: S,
    /// Positive as long as the tie rod reaches and is assembled as it is at ride height.
    steered: S,
}

impl<S> Pose<S> {
    pub(super) fn body(&self, carrier: Carrier) -> &Body<S> {
        match carrier {
            Carrier::LowerArm => &self.lower_arm,
            Carrier::UpperArm => &self.upper_arm,
            Carrier::Upright => &self.upright,
        }
    }
}

/// The bar's lever on its drop link.
#[derive(Debug, Clone, Copy)]
struct Lever {
    hinge: Hinge,
    carrier: Carrier,
    eye: Vector,
    length: f64,
    side: f64,
}

/// Upper guide of the upright: an arm, or a strut by a lower point of its axis.
#[derive(Debug, Clone, Copy)]
pub(super) enum Above<'a> {
    Arm(&'a Arm),
    Strut(Vector),
}

/// The upper guide, prepared.
#[derive(Debug, Clone, Copy)]
enum Guide {
    Arm {
        hinge: Hinge,
        side: f64,
        upright: f64,
        steering_height: f64,
        steering_arm: f64,
    },
    /// In the upright's frame, which has the strut's axis first, then the direction from the ball joint square to it: how far that is,
    /// and the end of the steering arm.
    Strut {
        offset: f64,
        end: Vector,
    },
}

/// The points of the linkage at ride height.
#[derive(Debug, Clone, Copy)]
pub(super) struct Drawn {
    pub(super) lower_ball: Vector,
    /// The upper ball joint; for a strut, the top mount.
    pub(super) upper_ball: Vector,
    pub(super) inner: Vector,
    pub(super) outer: Vector,
    pub(super) wheel: Vector,
}

/// A linkage, prepared: what does not change while it moves.
#[derive(Debug, Clone, Copy)]
pub(in crate::suspension) struct Linkage {
    lower: Hinge,
    guide: Guide,
    /// The top mount of a strut.
    top: Vector,
    steering_side: f64,
    inner: Vector,
    tie_rod: f64,
    /// From the inner to the outer end at ride height.
    rod: Vector,
    wheel: Vector,
    bar: Option<Lever>,
    /// At ride height, with the rack in its middle.
    pub(in crate::suspension) rest: Pose,
}

/// One part of what is degenerate at ride height.
pub(super) type Fault = (&'static str, &'static str);

/// Shorter than this a lever is none.
const LEAST_LEVER: f64 = 0.001;
/// Sine of the least angle between a link and the lever that it turns.
const LEAST_SINE: f64 = 0.001;

/// The body's own axes.
const BODY: [Vector; 3] = [vector(1.0, 0.0, 0.0), vector(0.0, 1.0, 0.0), vector(0.0, 0.0, 1.0)];

/// The axis of an arm.
fn hinge(key: &'static str, arm: &Arm) -> Result<Hinge, Fault> {
    let apart = arm.front_pivot.vector() - arm.rear_pivot.vector();
    if apart.norm() < LEAST_LEVER {
        return Err((key, "its pivots are nearer than 1 mm: it has no axis"));
    }
    let hinge = Hinge::of(arm);
    if hinge.radius < LEAST_LEVER {
        return Err((key, "its ball joint is nearer than 1 mm to its own axis: it carries nothing"));
    }
    Ok(hinge)
}

/// A strut: from the ball joint to the top mount, along its axis up to the mount, from the ball joint to the end of the steering arm.
fn strut(mount: Vector, along: Vector, end: Vector) -> Result<Guide, Fault> {
    if along.norm() < LEAST_LEVER {
        return Err(("leg", "its lower end is nearer than 1 mm to the top mount: it has no axis"));
    }
    let axis = along.unit();
    let slid = mount.dot(axis);
    if slid < 0.1 * mount.norm() {
        return Err(("leg", "its axis leans more than 84 deg from the line of ball joint and top mount"));
    }
    let across = mount - axis * slid;
    // Any direction square to the axis does where that goes through the ball joint.
    let across = if across == Vector::default() { axis.cross(BODY[0]) } else { across.unit() };
    let across = (across - axis * across.dot(axis)).unit();
    let square = axis.cross(across);
    Ok(Guide::Strut {
        offset: mount.dot(across),
        end: vector(end.dot(axis), end.dot(across), end.dot(square)),
    })
}

/// Distance of the top mount along the strut's axis from the foot of the ball joint; not a number if there is none.
fn slid<S: Scalar>(length: S, offset: S) -> S {
    let square = (length - offset) * (length + offset);
    S::each([square], |[square]| if square > 0.0 { square.sqrt() } else { f64::NAN })
}

impl Linkage {
    /// The linkage of these arms and points, unless it is degenerate at ride height.
    pub(super) fn new(lower_arm: &Arm, above: &Above<'_>, drawn: &Drawn) -> Result<Linkage, Fault> {
        let mut lower = hinge("lower_arm", lower_arm)?;
        let (upper_key, ball_key) = match above {
            Above::Arm(_) => ("upper_arm", "upper_arm.ball_joint"),
            Above::Strut(_) => ("leg", "leg.top_mount"),
        };
        let along = drawn.upper_ball - drawn.lower_ball;
        let upright = along.norm();
        if upright < LEAST_LEVER || along.z < 0.1 * upright {
            return Err((ball_key, "it must stand above the ball joint of the lower arm, within 84 deg"));
        }
        let axis = along * (1.0 / upright);
        let end = drawn.outer - drawn.lower_ball;
        let steering_height = end.dot(axis);
        let lever = end - axis * steering_height;
        let steering_arm = lever.norm();
        if steering_arm < LEAST_LEVER {
            return Err(("tie_rod.outer", "it is nearer than 1 mm to the steering axis: it steers nothing"));
        }
        let rod = drawn.outer - drawn.inner;
        let tie_rod = rod.norm();
        if tie_rod < LEAST_LEVER {
            return Err(("tie_rod", "it is shorter than 1 mm"));
        }
        if axis.cross(lever).dot(rod).abs() < LEAST_SINE * steering_arm * tie_rod {
            return Err(("tie_rod", "it lines up with its steering arm at ride height and locks"));
        }
        let guide = match above {
            Above::Arm(arm) => {
                let hinge = hinge("upper_arm", arm)?;
                if hinge.axis.cross(hinge.outward).dot(axis).abs() < LEAST_SINE {
                    return Err(("upper_arm", "it lines up with the upright at ride height and locks"));
                }
                let side = side(hinge.foot, hinge.axis, hinge.outward, drawn.lower_ball);
                Guide::Arm { hinge, side, upright, steering_height, steering_arm }
            }
            Above::Strut(low) => strut(along, drawn.upper_ball - *low, end)?,
        };
        let foot = drawn.lower_ball + axis * steering_height;
        let mut linkage = Linkage {
            lower,
            guide,
            top: drawn.upper_ball,
            steering_side: side(foot, axis, lever, drawn.inner),
            inner: drawn.inner,
            tie_rod,
            rod,
            wheel: Vector::default(),
            bar: None,
            rest: Pose::default(),
        };
        let locked = |end: End| (upper_key, end.sentence());
        linkage.rest = linkage.pose(0.0, 0.0).map_err(locked)?;
        linkage.wheel = linkage.rest.upright.here(drawn.wheel);
        let lift = linkage.rest.upright.point(linkage.wheel).rate.z;
        if lift.abs() < LEAST_SINE * lower.radius {
            return Err(("lower_arm", "it does not lift the wheel at ride height"));
        }
        if lift < 0.0 {
            // Turned the other way, so that the wheel rises with the angle.
            lower.axis = -lower.axis;
            linkage.lower = lower;
        }
        linkage.rest = linkage.pose(0.0, 0.0).map_err(locked)?;
        Ok(linkage)
    }

    /// The linkage with a bar: the eye of its link and what carries it, the end of its lever, a point of its axis.
    pub(super) fn with_bar(
        mut self,
        eye: Vector,
        carrier: Carrier,
        end: Vector,
        pivot: Vector,
    ) -> Result<Linkage, Fault> {
        let hinge = Hinge::new(pivot, vector(0.0, 1.0, 0.0), end);
        if hinge.radius < LEAST_LEVER {
            return Err((
                "anti_roll_bar.lever_end",
                "it is nearer than 1 mm to the bar's axis: it has no lever",
            ));
        }
        let (link, turning) = (eye - end, hinge.axis.cross(hinge.outward));
        let length = link.norm();
        if length < LEAST_LEVER {
            return Err(("anti_roll_bar", "its drop link is shorter than 1 mm"));
        }
        if link.dot(turning).abs() < LEAST_SINE * length {
            return Err(("anti_roll_bar", "its drop link lines up with the lever at ride height and locks"));
        }
        self.bar = Some(Lever {
            hinge,
            carrier,
            eye: self.rest.body(carrier).here(eye),
            length,
            side: side(hinge.foot, hinge.axis, hinge.outward, eye),
        });
        self.rest = self.pose(0.0, 0.0).map_err(|end| ("anti_roll_bar", end.sentence()))?;
        Ok(self)
    }

    /// Place of the upper joint: the ball joint of the upper arm, or the top mount.
    pub(super) fn upper_joint(&self, pose: &Pose) -> Vector {
        match &self.guide {
            Guide::Arm { hinge, .. } => hinge.foot + pose.upper_arm.outward() * hinge.radius,
            Guide::Strut { .. } => self.top,
        }
    }

    /// Inner joint of the tie rod with the rack this far to the left.
    pub(super) fn rack_end(&self, rack: f64) -> Vector {
        self.inner + vector(0.0, rack, 0.0)
    }

    /// Coordinates of a point at ride height in the frame of what carries it.
    pub(super) fn here(&self, carrier: Carrier, point: Vector) -> Vector {
        self.rest.body(carrier).here(point)
    }
    /// A direction, likewise.
    pub(super) fn direction_here(&self, carrier: Carrier, along: Vector) -> Vector {
        self.rest.body(carrier).direction_here(along)
    }

    /// The direction in the upright along which the pin of its upper joint stands.
    pub(super) fn upper_pin(&self, pose: &Pose) -> Vector {
        match self.guide {
            Guide::Arm { .. } => pose.steering_axis,
            Guide::Strut { .. } => pose.upright.frame[0],
        }
    }

    /// Everything at an angle of the lower arm from ride height, with the rack this far to the left.
    pub(super) fn pose(&self, angle: f64, rack: f64) -> Result<Pose, End> {
        let pose = self.pose_of(angle, rack);
        self.end(&pose).map_or(Ok(pose), Err)
    }

    /// Everything at an angle, or at several at once; not a number if a part does not reach.
    pub(super) fn pose_of<S: Scalar>(&self, angle: S, rack: S) -> Pose<S> {
        self.barred(self.links(angle, rack))
    }

    /// Clearances from the dead centres, in numbers that change smoothly towards them: squares of the sines between upper arm (or strut) and
    /// steering axis, tie rod and steering arm, drop link and lever; cosine of the tie rod's turn; lift of the wheel over the turn of the lower
    /// arm; and how slowly the upright turns. Not a number beyond a dead centre.
    pub(super) fn clearances<S: Scalar>(&self, pose: &Pose<S>, rack: S) -> [S; CLEARANCES] {
        /// Turn of the upright in a coarse step beyond which that is too coarse.
        const MOST_TURN: f64 = 0.6;
        let (axis, one, none) = (pose.steering_axis, S::of(1.0), S::default());
        let guided = axis.dot(match self.guide {
            Guide::Arm { .. } => pose.upper_arm.frame[2],
            Guide::Strut { .. } => pose.upright.frame[0],
        });
        let end = self.inner.spread() + vector(none, rack, none) + pose.tie_rod - pose.lower_ball;
        let turning = axis.cross(end);
        let (pull, over) = (pose.tie_rod.dot(turning), S::of(1.0 / (self.tie_rod * self.tie_rod)));
        let linked = self.bar.zip(pose.bar).map_or(one, |(bar, (turned, _))| {
            let hinge = bar.hinge.spread::<S>();
            let (across, (sine, cosine)) = (hinge.axis.cross(hinge.outward), turned.sine_cosine());
            let outward = hinge.outward * cosine + across * sine;
            let eye = pose.body(bar.carrier).point(bar.eye.spread()).at;
            let link = eye - hinge.foot - outward * hinge.radius;
            link.dot(across * cosine - hinge.outward * sine) * S::of(1.0 / bar.length)
        });
        let turn = S::of(COARSE / MOST_TURN);
        [
            guided * guided,
            pull * pull * over / turning.square(),
            pose.steered * over,
            pose.wheel.rate.z * S::of(1.0 / self.lower.radius),
            one - pose.upright.spin.square() * turn * turn,
            linked * linked,
        ]
    }

    /// The link that does not reach.
    fn end(&self, pose: &Pose) -> Option<End> {
        if pose.guided.is_nan() {
            return Some(match self.guide {
                Guide::Arm { .. } => End::UpperArm,
                Guide::Strut { .. } => End::Strut,
            });
        }
        if pose.steered.is_nan() || pose.steered <= 0.0 {
            return Some(End::TieRod);
        }
        pose.bar.is_some_and(|(turned, _)| turned.is_nan()).then_some(End::DropLink)
    }

    /// The position without the bar; not a number if a link does not reach.
    #[inline(always)]
    fn links<S: Scalar>(&self, angle: S, rack: S) -> Pose<S> {
        solved();
        let (one, none) = (S::of(1.0), S::default());
        let lower = self.lower.spread::<S>();
        let (sine, cosine) = angle.sine_cosine();
        let outward = lower.outward * cosine + lower.axis.cross(lower.outward) * sine;
        let lever = outward * lower.radius;
        let turning = lower.axis.cross(lever);
        let ball = Motion { at: lower.foot + lever, rate: turning, second: lower.axis.cross(turning) };

        // The steering axis, and the steering arm against it.
        let (up, between, length, height, radius, guided) = match &self.guide {
            Guide::Arm { hinge, side, upright, steering_height, steering_arm } => {
                let (hinge, upright) = (hinge.spread::<S>(), S::of(*upright));
                let up = reach(hinge.foot, hinge.axis, hinge.radius, ball.at, upright, *side);
                let between = hinge.foot + up * hinge.radius - ball.at;
                (up, between, upright, S::of(*steering_height), S::of(*steering_arm), up.x)
            }
            Guide::Strut { offset, end } => {
                let (offset, end) = (S::of(*offset), end.spread::<S>());
                let between = self.top.spread() - ball.at;
                let length = between.norm();
                let slid = slid(length, offset);
                let up = vector(slid, offset, none) * (one / length);
                let height = end.dot(up);
                (up, between, length, height, (end - up * height).norm(), slid)
            }
        };
        let axis = between * (one / length);
        let inner = self.inner.spread() + vector(none, rack, none);
        let foot = ball.at + axis * height;
        let arm = reach(foot, axis, radius, inner, S::of(self.tie_rod), self.steering_side);
        let end = axis * height + arm * radius;
        let rod = ball.at + end - inner;

        // The upright at the upper end of the steering axis, relative to the ball joint: its velocity, and its acceleration but for
        // the upright's spin across what slides.
        let (frame, upper_arm, velocity, free, slide) = match &self.guide {
            Guide::Arm { hinge, .. } => {
                let hinge = hinge.spread::<S>();
                // The distance of the ball joints does not change: its first and second derivative are zero.
                let turning = hinge.axis.cross(up) * hinge.radius;
                let drive = between.dot(turning);
                let rate = between.dot(ball.rate) / drive;
                let velocity = turning * rate - ball.rate;
                let centripetal = hinge.axis.cross(turning) * (rate * rate) - ball.second;
                let second = -(between.dot(centripetal) + velocity.square()) / drive;
                let free = turning * second + centripetal;
                let frame = [axis, arm, axis.cross(arm)];
                (frame, hinge.body(up, rate, second), velocity, free, Vector::default())
            }
            Guide::Strut { offset, end } => {
                let (offset, end) = (S::of(*offset), end.spread::<S>());
                // The upright's frame from that of steering axis and steering arm, as the upright sees it.
                let here = (end - up * height) * (one / radius);
                let (square, here_square) = (axis.cross(arm), up.cross(here));
                let of = |up: S, here: S, on: S| axis * up + arm * here + square * on;
                let frame = [
                    of(up.x, here.x, here_square.x),
                    of(up.y, here.y, here_square.y),
                    of(up.z, here.z, here_square.z),
                ];
                // The mount stands still and slides along the axis: a right-angled triangle with the offset for one side.
                let (strut, slid) = (frame[0], slid(length, offset));
                let rate = -between.dot(ball.rate) / slid;
                let second = (ball.rate.square() - between.dot(ball.second) - rate * rate) / slid;
                let still = Body { frame: BODY.map(Vector::spread), ..Body::default() };
                let velocity = -ball.rate - strut * rate;
                (frame, still, velocity, -ball.second - strut * second, strut * (S::of(-2.0) * rate))
            }
        };
        // The turn of the steering axis, then that about it, which keeps the tie rod's length.
        let steer = rod.dot(axis.cross(end));
        let tilt = axis.cross(velocity) * (one / length);
        let spin = tilt - axis * (rod.dot(ball.rate + tilt.cross(end)) / steer);
        let acceleration = free + spin.cross(slide);
        let end_velocity = ball.rate + spin.cross(end);
        let tilt_rate = axis.cross(acceleration - spin.cross(velocity)) * (one / length);
        let end_second = ball.second + tilt_rate.cross(end) + spin.cross(spin.cross(end));
        let spin_rate = tilt_rate - axis * ((rod.dot(end_second) + end_velocity.square()) / steer);
        let upright =
            Body { origin: ball.at, frame, velocity: ball.rate, acceleration: ball.second, spin, spin_rate };

        Pose {
            lower_arm: lower.body(outward, one, none),
            upper_arm,
            upright,
            lower_ball: ball.at,
            steering_axis: axis,
            tie_rod: rod,
            wheel: upright.point(self.wheel.spread()),
            bar: None,
            guided,
            steered: rod.dot(self.rod.spread()),
        }
    }

    /// The pose with the bar's turn from ride height and its derivative, where there is a bar.
    #[inline(always)]
    fn barred<S: Scalar>(&self, pose: Pose<S>) -> Pose<S> {
        let Some(bar) = &self.bar else { return pose };
        let hinge = bar.hinge.spread::<S>();
        let eye = pose.body(bar.carrier).point(bar.eye.spread());
        let outward = reach(hinge.foot, hinge.axis, hinge.radius, eye.at, S::of(bar.length), bar.side);
        let link = eye.at - hinge.foot - outward * hinge.radius;
        let turning = hinge.axis.cross(outward) * hinge.radius;
        let turned = hinge.axis.dot(hinge.outward.cross(outward)).arctangent(hinge.outward.dot(outward));
        Pose { bar: Some((turned, link.dot(eye.rate) / link.dot(turning))), ..pose }
    }

    /// Angle between the tie rod and the line through steering axis and rod's outer end: nothing at the dead centre.
    #[cfg(feature = "sheet")]
    pub(super) fn toggle_angle(&self, pose: &Pose, rack: f64) -> f64 {
        let axis = pose.steering_axis;
        let end = self.inner + vector(0.0, rack, 0.0) + pose.tie_rod - pose.lower_ball;
        let turning = axis.cross(end).unit();
        (turning.dot(pose.tie_rod) / self.tie_rod).abs().min(1.0).asin()
    }

    /// Radius of the bar's lever.
    pub(super) fn bar_lever(&self) -> Option<f64> {
        self.bar.map(|bar| bar.hinge.radius)
    }

    /// The ends of the drop link: on what carries it, and on the bar's lever.
    pub(super) fn drop_link(&self, pose: &Pose) -> Option<(Vector, Vector)> {
        let (lever, (turned, _)) = (self.bar?, pose.bar?);
        let hinge = &lever.hinge;
        let (sine, cosine) = turned.sin_cos();
        let outward = hinge.outward * cosine + hinge.axis.cross(hinge.outward) * sine;
        Some((pose.body(lever.carrier).point(lever.eye).at, hinge.foot + outward * hinge.radius))
    }

    /// The linkage with its wheel this far up, the angle of its lower arm, and whether it is there: one, where it was got quickly from ride
    /// height. A part may have passed its dead centre on the way.
    #[inline(always)]
    pub(super) fn near<S: Scalar>(&self, travel: S, rack: S) -> (Pose<S>, S, S) {
        let rest = &self.rest.wheel;
        let target = S::of(rest.at.z) + travel;
        // From the circle on which it rises at ride height: `z = z' sin(angle) + z'' (1 - cos(angle))`.
        let radius = hypot(rest.rate.z, rest.second.z);
        let turn = |rise: S| S::each([rise], |[rise]| (rise / radius).clamp(-1.0, 1.0)).arcsine();
        let mut angle = turn(travel - S::of(rest.second.z)) + turn(S::of(rest.second.z));
        let mut poses = 1;
        loop {
            let pose = self.links(angle, rack);
            let Motion { at, rate, second } = pose.wheel;
            // Nothing where it is near enough, not a number where it is not got quickly: what is there stays while another is not.
            let step = S::each([travel, at.z - target, rate.z, second.z], |[travel, off, slope, bend]| {
                let close = 1e-13 + 1e-15 * (rest.at.z.abs() + travel.abs());
                let step = 2.0 * off * slope / (2.0 * slope * slope - off * bend);
                if slope <= 0.0 || slope.is_nan() {
                    f64::NAN
                } else if off.abs() <= close {
                    0.0
                } else if step.abs() > 0.5 {
                    f64::NAN
                } else {
                    step
                }
            });
            if poses == 8 || step.all(|step| step == 0.0 || step.is_nan()) {
                let pose = self.barred(pose);
                let (turned, _) = pose.bar.unwrap_or_default();
                let there = S::each([step, pose.steered, turned], |[step, steered, turned]| {
                    if step == 0.0 && steered > 0.0 && !turned.is_nan() { 1.0 } else { 0.0 }
                });
                return (pose, angle, there);
            }
            angle = angle - step;
            poses += 1;
        }
    }
}
