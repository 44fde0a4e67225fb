//! The words of the trade.

use super::{Answers, Term};

const fn on(names: &'static [&'static str], paths: &'static [&'static str], says: &'static str) -> Term {
    Term { names, answers: Answers::Sheet(paths), says }
}

const fn beside(names: &'static [&'static str], paths: &'static [&'static str], says: &'static str) -> Term {
    Term { names, answers: Answers::Beside(paths), says }
}

/// Things of the trade that this library answers, system by system.
pub(super) const TERMS: &[Term] = &[
    // Use and air.
    on(
        &["altitude", "elevation", "height above sea level"],
        &["use.altitude"],
        "height of the place where the vehicle works",
    ),
    on(
        &["cruise speed", "cruising speed", "motorway speed", "highway speed"],
        &["use.cruise_speed"],
        "road speed that is held for hours",
    ),
    on(
        &["top speed", "maximum speed", "v max", "vmax", "peak speed"],
        &["use.peak_speed"],
        "road speed that is never exceeded",
    ),
    on(
        &["barometer", "barometric pressure", "qnh", "altimeter setting"],
        &["use.altimeter_setting", "use.station_pressure"],
        "air pressure from a weather report, or as measured there",
    ),
    on(
        &["density altitude"],
        &["use.density_altitude"],
        "height at which the standard atmosphere has the density of the air; it is computed",
    ),
    on(
        &["humidity", "vapour pressure", "moisture"],
        &["use.vapour_pressure"],
        "partial pressure of the water vapour in the air",
    ),
    on(
        &["ambient temperature", "air temperature", "outside temperature", "weather"],
        &["use.air_temperature", "use.coldest_air"],
        "air in which the vehicle works and stands",
    ),
    on(
        &["road", "road roughness", "road class", "road surface"],
        &["use.road"],
        "class of the road by ISO 8608: a to h",
    ),
    // Mass.
    on(
        &["corner weight", "scale reading", "scale", "weight", "wheel weight", "corner scale", "weighbridge"],
        &["scales"],
        "scale readings of the four wheels",
    ),
    on(
        &["cross weight", "wedge", "diagonal weight", "corner balance"],
        &["vehicle.diagonal", "vehicle.diagonal_share"],
        "right front plus left rear over all",
    ),
    on(
        &["weight distribution", "front share", "balance of weight"],
        &["vehicle.front_share", "vehicle.left_share"],
        "front and left readings over all; both are computed from the scales",
    ),
    on(
        &["centre of gravity", "center of gravity", "cg", "cog", "centre of mass", "cg height"],
        &["vehicle.centre_of_gravity_height", "vehicle.behind_front_axle"],
        "its height is written; its place follows from the scales",
    ),
    on(&["wheelbase", "wheel base"], &["vehicle.wheelbase"], "distance from front to rear axle"),
    on(
        &["track", "track width", "tread", "tread width"],
        &["axle.track"],
        "distance between the tyre centres of an axle",
    ),
    on(
        &["axle weight", "axle load", "axle mass"],
        &["axle.axle_mass", "axle.load"],
        "both wheels of the axle together, and whether the axle bears them",
    ),
    on(
        &["gross vehicle weight rating", "gvwr", "gvw", "gross weight", "permitted mass"],
        &["vehicle.mass_rating", "vehicle.load"],
        "highest mass that the maker or registration allows",
    ),
    on(
        &["gross axle weight rating", "gawr", "axle rating"],
        &["axle.mass_rating", "axle.load"],
        "highest load of the axle that its maker allows",
    ),
    on(
        &["payload", "load", "luggage", "cargo"],
        &["vehicle.mass_rating", "scales"],
        "weigh the vehicle laden as it will be; the rating over that load is the margin",
    ),
    on(
        &["unsprung mass", "unsprung weight"],
        &["axle.unsprung_mass"],
        "what moves with the wheels of the axle, both wheels together",
    ),
    on(
        &["sprung mass", "sprung weight", "body mass"],
        &["axle.sprung_mass", "vehicle.sprung_mass"],
        "scale reading less unsprung mass",
    ),
    beside(
        &["weight transfer", "load transfer", "lateral load transfer", "longitudinal load transfer"],
        &["mass.longitudinal_load_transfer", "mass.lateral_load_transfer"],
        "load that moves from wheel to wheel under acceleration",
    ),
    beside(
        &["parts list", "bill of materials", "mass budget"],
        &["mass.PartsList"],
        "mass, centre and inertia of a list of parts",
    ),
    // Kinds of suspension.
    on(
        &["live axle", "solid axle", "beam axle", "rigid axle", "stick axle", "straight axle"],
        &["axle.wheels", "axle.suspension"],
        "both wheels on one axle: `wheels = \"live_axle\"`",
    ),
    on(
        &["independent suspension", "irs", "ifs", "independent"],
        &["axle.wheels"],
        "each wheel moves by itself: `wheels = \"independent\"`",
    ),
    on(
        &["double wishbone", "double a-arm", "sla", "short long arm", "unequal length arms", "twin wishbone"],
        &["axle.suspension", "axle.upper_arm", "axle.lower_arm"],
        "`suspension = \"double_wishbone\"`, its points drawn",
    ),
    on(
        &["wishbone", "a-arm", "control arm", "suspension arm", "a arm"],
        &["axle.upper_arm", "axle.lower_arm"],
        "arm with two pivots on the body and a ball joint",
    ),
    on(
        &["lower control arm", "lca", "lower wishbone", "track control arm"],
        &["axle.lower_arm"],
        "lower arm of an independent suspension",
    ),
    on(
        &["upper control arm", "uca", "upper wishbone"],
        &["axle.upper_arm"],
        "upper arm of an independent suspension",
    ),
    on(
        &["strut", "macpherson strut", "strut suspension", "leg"],
        &["axle.leg", "axle.suspension"],
        "`suspension = \"strut\"`: the damper guides the wheel",
    ),
    on(
        &["top mount", "strut tower", "strut mount", "upper mount"],
        &["axle.leg.top_mount"],
        "top mount of the strut, on the body",
    ),
    on(
        &["upright", "knuckle", "hub carrier", "spindle carrier", "steering knuckle"],
        &["axle.upper_arm.ball_joint", "axle.lower_arm.ball_joint"],
        "drawn by its ball joints",
    ),
    on(
        &["ball joint", "kingpin joint"],
        &["axle.upper_arm.ball_joint", "axle.lower_arm.ball_joint", "axle.joint_limits"],
        "joint between arm and upright",
    ),
    on(
        &["rod end", "spherical bearing", "spherical joint", "uniball", "joint misalignment", "joint"],
        &["axle.joint_limits", "axle.joints"],
        "lean that each joint allows, and whether travel and lock stay within it",
    ),
    on(
        &["tie rod", "track rod", "toe link", "steering arm", "toe rod"],
        &["axle.tie_rod"],
        "rod from rack or body to the upright",
    ),
    on(
        &["steering rack", "rack", "rack travel"],
        &["axle.rack_travel"],
        "travel of the rack from its middle to a lock",
    ),
    on(
        &["lateral rod", "track bar", "panhard rod", "panhard bar", "transverse link"],
        &["axle.lateral_rod"],
        "rod that holds a live axle sideways",
    ),
    on(
        &["watt linkage", "watt's linkage", "watts link", "watt link"],
        &["axle.watt"],
        "bell crank and two rods that hold a live axle sideways",
    ),
    on(
        &["trailing arm", "trailing link", "lower link", "radius arm", "radius rod", "lower trailing arm"],
        &["axle.lower_links"],
        "lower links of a live axle",
    ),
    on(
        &["upper link", "third link", "torque arm link", "upper trailing arm", "triangulated link"],
        &["axle.upper_links"],
        "upper link of a live axle, a pair or a single one",
    ),
    on(
        &["four link", "4 link", "three link", "3 link", "multi link axle", "linked axle"],
        &["axle.suspension", "axle.lower_links", "axle.upper_links"],
        "`suspension = \"live_axle_on_links\"`",
    ),
    on(
        &["leaf spring", "leaf pack", "cart spring", "semi elliptic", "semi-elliptic spring", "leaf"],
        &["axle.leaf", "axle.suspension"],
        "`suspension = \"live_axle_on_leaf_springs\"`",
    ),
    on(
        &["shackle", "spring shackle"],
        &["axle.leaf.shackle_pivot", "axle.leaf.shackle_eye"],
        "link at the moving eye of a leaf spring",
    ),
    on(
        &["spring eye", "hanger", "spring hanger", "spring perch"],
        &["axle.leaf.fixed_eye", "axle.leaf.seat"],
        "fixed eye and seat of a leaf spring",
    ),
    on(
        &["bush", "bushing", "silentbloc", "rubber bush", "compliance"],
        &["axle.lower_links.body_bush", "axle.upper_links.body_bush", "axle.lateral_rod.body_bush"],
        "stiffness along a link of the bush in its end",
    ),
    on(
        &[
            "subframe point",
            "hard point",
            "pickup point",
            "suspension point",
            "mounting point",
            "suspension geometry",
        ],
        &["axle.upper_arm", "axle.lower_arm", "axle.lower_links", "axle.leaf"],
        "each point is a table with x forward, y left and z up, from one datum",
    ),
    // Alignment and geometry.
    on(&["camber"], &["axle.wheel.camber"], "positive with the top of the wheel outboard"),
    on(
        &["toe", "toe in", "toe out", "tracking"],
        &["axle.wheel.toe"],
        "toe of one wheel, positive with its front inboard",
    ),
    on(
        &["caster", "castor", "caster angle"],
        &["axle.caster"],
        "caster follows from the drawn arms: `upper_arm.ball_joint` and `lower_arm.ball_joint`, or the strut's `leg`",
    ),
    on(
        &["kingpin inclination", "kpi", "steering axis inclination", "sai", "kingpin angle"],
        &["axle.kingpin_inclination"],
        "follows from the drawn ball joints",
    ),
    on(
        &["scrub radius", "kingpin offset", "steering offset"],
        &["axle.scrub_radius"],
        "follows from the drawn ball joints and the wheel",
    ),
    on(
        &["trail", "mechanical trail", "caster trail"],
        &["axle.mechanical_trail"],
        "follows from the drawn ball joints and the wheel",
    ),
    on(
        &["bump steer", "toe change", "toe curve", "ride steer"],
        &["axle.bump_steer", "axle.bump_steer_band"],
        "change of toe over the travel",
    ),
    on(
        &["camber gain", "camber change", "camber curve"],
        &["axle.camber_change"],
        "change of camber along the travel",
    ),
    on(
        &["roll steer", "axle steer", "roll understeer"],
        &["axle.roll_steer", "axle.roll_steer_band"],
        "steer of an axle as the body leans",
    ),
    on(
        &["roll centre", "roll center", "roll centre height"],
        &["axle.roll_centre_height"],
        "above the ground; it follows from drawn points, too",
    ),
    on(
        &["anti-dive", "anti dive", "brake dive"],
        &["axle.anti_dive"],
        "share of the dive under braking that the linkage holds; it is computed from drawn points",
    ),
    on(
        &["anti-squat", "anti squat", "squat"],
        &["axle.anti_squat", "axle.squat"],
        "share of the squat under drive that the linkage of the rear holds",
    ),
    on(
        &["axle wrap", "wind up", "spring wrap", "wheel hop", "axle tramp"],
        &["axle.wind_up"],
        "turn of an axle's housing on its leaf springs under its drive torque",
    ),
    on(
        &["pinion angle", "driveshaft angle", "joint angle"],
        &["axle.pinion"],
        "turn of the pinion over the travel",
    ),
    on(
        &["bind", "binding", "suspension bind"],
        &["axle.bind"],
        "force of the links against each other over travel and with the axle crossed",
    ),
    on(
        &["articulation", "crossed axle", "axle travel", "ramp travel"],
        &["axle.bind", "axle.side_travel"],
        "one wheel up, the other down",
    ),
    on(
        &["steering lock", "toggle", "over-centre"],
        &["axle.toggle", "axle.toggle_angle"],
        "clearance of the tie rod from the line of its steering arm",
    ),
    // Springs.
    on(
        &["spring", "coil spring", "coil", "road spring"],
        &["axle.spring"],
        "rate, lengths and wire of the spring",
    ),
    on(
        &["coil-over", "coilover", "coil over shock"],
        &["axle.coil_over", "axle.damper.mounting"],
        "damper that stands in its spring: `mounting = \"coil_over\"`",
    ),
    on(
        &["spring rate", "stiffness", "spring constant"],
        &["axle.spring.rate"],
        "force over shortening, along the spring",
    ),
    on(
        &["free length", "free height", "unloaded length"],
        &["axle.spring.free_length"],
        "length of the unloaded spring",
    ),
    on(
        &["solid height", "block length", "block height", "bound height", "solid length"],
        &["axle.spring.solid_length"],
        "every coil touching",
    ),
    on(
        &["coil bind", "bind height", "spring bind"],
        &["axle.coil_bind"],
        "whether the damper stops before the coils bind",
    ),
    on(
        &["motion ratio", "installation ratio", "leverage ratio", "rocker ratio", "lever ratio"],
        &["axle.spring.motion_ratio", "axle.damper.motion_ratio"],
        "travel of the spring over travel of the wheel, not its inverse",
    ),
    on(&["wheel rate", "corner rate"], &["axle.wheel_rate"], "rate at the wheel, without the tyre"),
    on(
        &["ride rate", "ride stiffness"],
        &["axle.ride_rate"],
        "wheel rate and tyre in series; it is computed",
    ),
    on(
        &[
            "ride frequency",
            "natural frequency",
            "suspension frequency",
            "bounce frequency",
            "ride rate frequency",
        ],
        &["axle.natural_frequency", "axle.ride_frequency", "axle.frequency"],
        "frequency of the body on its springs",
    ),
    on(
        &["flat ride", "pitch", "frequency ratio"],
        &["vehicle.frequency_pair", "vehicle.flat_ride"],
        "rear frequency over front, and how soon both ends move together",
    ),
    on(
        &["preload", "spring preload", "captive spring", "loose spring"],
        &["axle.captive"],
        "whether the spring stays compressed at full droop",
    ),
    on(
        &["spring stress", "spring strength", "spring fatigue"],
        &["axle.spring_strength", "axle.spring.allowed_stress"],
        "shear of the wire or bending of leaves at the worst",
    ),
    on(&["spring buckling", "spring bow"], &["axle.buckling"], "whether the spring stays straight"),
    on(
        &["wire diameter", "wire", "bar diameter"],
        &["axle.spring.wire_diameter"],
        "diameter of the spring's wire",
    ),
    on(
        &["ride height", "trim height", "static height"],
        &["axle.spring.ride_length", "axle.droop_remaining"],
        "length of the spring at ride height, and travel from there to full droop; both are computed",
    ),
    beside(
        &["torsion bar", "torsion spring"],
        &["spring.torsion_bar_rate", "spring.torsion_bar_stress"],
        "rate and stress of a bar in torsion; a sheet takes its rate as the spring's",
    ),
    beside(&["air spring", "air bag", "air bellows"], &["spring.air_spring_rate"], "rate of an air spring"),
    beside(
        &["helper spring", "tender spring", "dual rate spring", "progressive spring", "stacked spring"],
        &["spring.Stack", "spring.series_rate"],
        "a stack of springs, until each closes",
    ),
    // Travel and dampers.
    on(
        &["damper", "shock", "shock absorber", "dampener"],
        &["axle.damper"],
        "rate, stroke and lengths of the damper",
    ),
    on(
        &["damping", "damping ratio", "critical damping", "zeta"],
        &["axle.damping", "axle.damping_ratio"],
        "damping of the body over the critical one",
    ),
    on(
        &["shock valving", "valving", "damper rate", "rebound", "compression damping"],
        &["axle.damper.rate"],
        "force over velocity, bump and rebound averaged",
    ),
    on(
        &["adjustable damper", "adjustable shock", "clicks"],
        &["axle.damper.rate_softest", "axle.damper.rate_firmest", "axle.damper_range"],
        "softest and firmest setting",
    ),
    on(
        &["gas pressure", "gas force", "gas shock", "gas damper"],
        &["axle.damper.gas_force"],
        "force with which the gas opens the damper",
    ),
    on(
        &["shock length", "open length", "extended length", "eye to eye"],
        &["axle.damper.open_length", "axle.damper.closed_length"],
        "length of the damper between its eyes",
    ),
    on(
        &["stroke", "damper stroke", "shock travel"],
        &["axle.damper.stroke"],
        "fully open less fully closed; the piston's is `engine.stroke`",
    ),
    on(
        &["bump stop", "jounce bumper", "bump rubber", "jounce stop"],
        &["axle.bump_stop_travel", "axle.bump_clearance", "axle.bump_stop_compression"],
        "where the stop is touched, and how far it gives",
    ),
    on(&["bump", "jounce", "compression travel", "bump travel"], &["axle.bump"], "remaining travel in bump"),
    on(&["droop", "rebound travel", "droop travel", "sag"], &["axle.droop"], "remaining travel in droop"),
    on(
        &["limit strap", "droop strap"],
        &["axle.hose_droop_clearance"],
        "what ends the droop before the damper; write the travel at which it is tight",
    ),
    on(
        &["brake hose", "hose clearance", "hose"],
        &["axle.hose_bump_clearance", "axle.hose_droop_clearance"],
        "travel of the wheel until a hose, cable or shaft is at its limit",
    ),
    on(
        &["wheel arch", "tyre clearance", "fender clearance", "wheel well"],
        &["axle.tyre_clearance"],
        "travel in bump until a tyre touches, at any lock",
    ),
    // Roll.
    on(
        &[
            "anti-roll bar",
            "sway bar",
            "stabiliser bar",
            "stabilizer bar",
            "roll bar",
            "arb",
            "anti-sway bar",
        ],
        &["axle.anti_roll_bar"],
        "bar between the wheels of an axle",
    ),
    on(
        &["drop link", "end link", "sway bar link"],
        &["axle.anti_roll_bar.link_eye"],
        "link from the bar's lever to the arm or axle",
    ),
    on(
        &["body roll", "roll", "roll gradient", "lean"],
        &["vehicle.roll", "vehicle.roll_gradient"],
        "lean of the body over lateral acceleration",
    ),
    on(
        &["roll stiffness", "roll rate"],
        &["axle.roll_stiffness"],
        "torque over lean of an axle; it is computed",
    ),
    on(
        &["handling balance", "understeer", "oversteer", "balance"],
        &["vehicle.balance"],
        "share of grip that the front loses more than the rear at the limit",
    ),
    on(
        &["rollover", "tipping", "tip", "static stability"],
        &["vehicle.tip"],
        "whether the vehicle slides before it tips",
    ),
    on(
        &["wheel lift", "lifting a wheel"],
        &["vehicle.wheel_lift"],
        "whether all wheels stay on the ground at the grip of the tyres",
    ),
    on(
        &["comfort", "ride comfort", "ride quality", "vibration"],
        &["axle.comfort", "wanted.ride_acceleration"],
        "weighted acceleration of the body on a road",
    ),
    on(
        &["road holding", "wheel hop on road", "contact"],
        &["axle.road_holding"],
        "variation of the tyre's load on a road",
    ),
    // Tyres.
    on(&["tyre", "tire", "rubber"], &["axle.tyre"], "marking, pressures, rate and radius of the tyre"),
    on(
        &["tyre size", "tire size", "tyre marking"],
        &["axle.tyre.size"],
        "marking on the tyre's wall, such as 235/70R16 106T",
    ),
    on(
        &["tyre pressure", "tire pressure", "inflation pressure"],
        &["axle.tyre.pressure", "axle.tyre.rated_pressure"],
        "cold, as driven, and at which the tyre carries its load",
    ),
    on(
        &["tyre rate", "tyre stiffness", "tire rate", "tire stiffness"],
        &["axle.tyre.rate"],
        "vertical rate of the tyre",
    ),
    on(
        &["load index", "tyre load", "tyre capacity", "ply rating", "load range"],
        &["axle.tyre.load_index", "axle.tyre_load"],
        "load that one tyre carries; a ply rating or load range is written as `load_capacity` from the maker's table",
    ),
    on(
        &["speed rating", "speed symbol", "speed index"],
        &["axle.tyre.rated_speed", "axle.tyre_speed"],
        "speed up to which the tyre carries its load",
    ),
    on(
        &["rolling radius", "rolling circumference", "revs per mile", "effective radius"],
        &["axle.tyre.effective_radius", "axle.tyre.rolling_turns"],
        "distance per turn over 2 pi",
    ),
    on(
        &["tyre diameter", "tire diameter", "overall diameter"],
        &["axle.tyre.free_diameter"],
        "inflated and not loaded",
    ),
    on(
        &["speedometer", "speedo", "speedo error"],
        &["speedometer", "speedometer.reading"],
        "whether it never reads too little",
    ),
    beside(
        &["wheel offset", "offset", "backspacing", "backspace", "et", "inset"],
        &["tyre.wheel_backspacing"],
        "offset and backspacing of a wheel",
    ),
    beside(
        &["bolt circle", "bolt pattern", "pcd", "stud pattern", "lug pattern"],
        &["tyre.bolt_circle_diameter"],
        "diameter of a bolt circle from neighbouring studs",
    ),
    // Engine.
    on(&["engine", "motor", "power unit"], &["engine"], "torque, speeds, bore and stroke, boost"),
    on(
        &["torque curve", "dyno curve", "dyno sheet", "power curve"],
        &["engine.curve"],
        "a list of engine speeds and torques",
    ),
    on(
        &["horsepower", "power", "bhp", "peak power"],
        &["engine.peak_power", "engine.peak_power_speed"],
        "at the crankshaft; write `mechanical hp` or `metric hp`",
    ),
    on(&["torque", "peak torque", "engine torque"], &["engine.peak_torque"], "peak torque at the crankshaft"),
    on(
        &["redline", "red line", "rev limit", "limiter", "maximum rpm"],
        &["engine.red_line", "driveline.red_line"],
        "highest engine speed that the maker allows",
    ),
    on(&["idle", "idle speed", "tickover"], &["engine.idle_speed"], "engine speed at idle, in gear"),
    on(&["bore", "cylinder bore"], &["engine.bore"], "diameter of a cylinder"),
    on(
        &["piston speed", "mean piston speed", "rod strength"],
        &["engine.pistons", "engine.piston_speed"],
        "mean speed of a piston at the red line",
    ),
    on(
        &["displacement", "capacity", "swept volume", "cubic inches"],
        &["engine.displacement"],
        "swept volume of all cylinders",
    ),
    on(
        &["boost", "turbo", "turbocharger", "supercharger", "blower"],
        &["engine.boost_pressure", "engine.compressor_efficiency"],
        "gauge reading at the outlet of the compressor",
    ),
    on(
        &["bmep", "mean effective pressure"],
        &["engine.mean_pressure"],
        "mean effective pressure at peak torque; it is computed",
    ),
    // Driveline.
    on(
        &["clutch", "clutch plate", "clutch capacity"],
        &["clutch", "clutch.holds"],
        "whether the clutch holds the engine",
    ),
    on(&["torque converter", "converter", "automatic", "stall speed"], &["converter"], "ratio at stall"),
    on(
        &["gearbox", "transmission", "trans", "gears", "manual transmission"],
        &["gearbox", "gearbox.strength"],
        "gear ratios and torque rating",
    ),
    on(
        &["gear ratio", "first gear", "top gear", "overdrive"],
        &["gearbox.ratios"],
        "list of ratios, first to top",
    ),
    on(&["reverse", "reverse gear"], &["gearbox.reverse_ratio"], "ratio of reverse gear"),
    on(
        &["transfer case", "transfer box", "low range", "reduction box"],
        &["transfer_case"],
        "ratio of the low range",
    ),
    on(
        &[
            "prop shaft",
            "propshaft",
            "propeller shaft",
            "driveshaft",
            "drive shaft",
            "cardan shaft",
            "tail shaft",
        ],
        &["propeller_shaft", "propeller_shaft.strength"],
        "shaft from the gearbox to the axle",
    ),
    on(
        &["differential", "diff", "lsd", "limited slip", "locker", "diff lock"],
        &["final_drive.differential"],
        "differential between the two half shafts",
    ),
    on(
        &[
            "final drive",
            "ring and pinion",
            "axle ratio",
            "diff ratio",
            "crown wheel and pinion",
            "rear end",
            "rear axle ratio",
        ],
        &["final_drive", "final_drive.ratio"],
        "ratio and rating of the driven axle",
    ),
    on(
        &["half shaft", "axle shaft", "halfshaft", "cv axle", "cv shaft", "stub axle"],
        &["half_shaft", "half_shaft.strength"],
        "shaft from the differential to a wheel",
    ),
    on(
        &["driven axle", "rear wheel drive", "front wheel drive", "rwd", "fwd", "drive"],
        &["driveline.driven"],
        "axle whose tyres set the road speed",
    ),
    on(
        &["cruise rpm", "engine speed at cruise", "cruising rpm", "highway rpm"],
        &["driveline.cruise", "driveline.cruise_engine_speed"],
        "engine speed at the cruise speed in top gear",
    ),
    on(
        &["crawl ratio", "crawl speed", "crawl"],
        &["driveline.crawl", "driveline.crawl_ratio"],
        "lowest ratio, and road speed at idle in it",
    ),
    on(
        &["grip", "traction", "friction coefficient", "mu"],
        &["grip"],
        "grip of the driven wheels, for what the shafts must bear",
    ),
    on(
        &["towing", "tow rating", "trailer", "hitch", "tongue weight", "nose weight", "hauling"],
        &["use.cruise_speed", "vehicle.mass_rating"],
        "the pull and stability of a trailer are not covered yet; weigh the vehicle with the trailer hitched, and heat and shafts are asked for that vehicle",
    ),
    // Cooling.
    on(
        &["coolant", "antifreeze", "anti-freeze", "glycol", "radiator fluid"],
        &["coolant", "coolant.liquid"],
        "water, or a mix with a glycol",
    ),
    on(
        &["radiator cap", "pressure cap", "cap", "rad cap", "expansion cap"],
        &["cap"],
        "rating of the cap and its readings on a tester",
    ),
    on(
        &["boiling", "boil over", "boilover", "overheating", "boiling point"],
        &["coolant.boiling"],
        "margin of the hottest coolant below boiling",
    ),
    on(
        &["freezing", "freeze point", "freeze protection", "frost"],
        &["coolant.freezing", "use.coldest_air"],
        "margin of the freezing point below the coldest air",
    ),
    on(
        &["coolant strength", "mix", "concentration", "fifty fifty", "refractometer"],
        &["coolant.volume_share", "coolant.concentrate"],
        "share of concentrate by volume",
    ),
    on(
        &["coolant temperature", "engine temperature", "gauge temperature", "thermostat"],
        &["coolant.hottest"],
        "temperature that the coolant reaches; a thermostat sets the lowest one and is not asked for",
    ),
    on(
        &["coolant capacity", "coolant volume", "fill volume"],
        &["coolant.volume"],
        "volume of the whole fill, cold",
    ),
    on(
        &["cap test", "cap tester", "pressure tester"],
        &["cap.opening_pressure", "cap.holding_pressure", "cap.gauge_error"],
        "readings of a tester on the cap",
    ),
    on(
        &["header tank", "expansion tank", "degas bottle", "surge tank", "overflow tank", "swirl pot"],
        &["header", "header.air"],
        "air above the coolant in a closed tank",
    ),
    on(
        &["water pump", "coolant pump", "pump inlet", "cavitation"],
        &["coolant.pump_inlet"],
        "boiling margin at the inlet of the pump",
    ),
    on(
        &["leak test", "pressure test", "leak down test", "pressure decay"],
        &["leak_test", "leak_test.tight"],
        "readings of a pressure decay test of the cooling system",
    ),
    on(
        &["hose collapse", "vacuum valve", "cap vacuum"],
        &["cap.vacuum", "cap.vacuum_opening"],
        "whether the vacuum valve opens before the hoses collapse",
    ),
    on(
        &["weakest part", "burst pressure", "heater core", "hose rating"],
        &["cap.weakest_component", "cap.weakest"],
        "pressure that the weakest part of the cooling system bears",
    ),
];
