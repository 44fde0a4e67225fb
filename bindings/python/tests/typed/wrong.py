"""Calls that a type checker must flag, each on a line with the mark `# wrong`; no other line may be flagged."""

from axlewright import Q, Quantity, Sheet, cooling, mass, spring
from axlewright.kinds import Force, LinearStiffness
from axlewright.units import N, deg, degC, degF, inch, kg, kPa_absolute, lbf_in, mm, psi_gauge, rpm

rate = 300 * lbf_in
angle = 20 * deg

# Arguments of functions.
spring.ride_rate(wheel_rate=300, tyre_rate=rate)  # wrong: a bare number
spring.ride_rate(wheel_rate=300.0, tyre_rate=rate)  # wrong: a bare number
spring.ride_rate(wheel_rate=[300, 400], tyre_rate=rate)  # wrong: bare numbers in a list
spring.ride_rate(wheel_rate=300 * kg, tyre_rate=rate)  # wrong: another kind
spring.ride_rate(wheel_rate=[300 * kg], tyre_rate=rate)  # wrong: another kind in a list
spring.ride_rate(wheel_rate=None, tyre_rate=rate)  # wrong: nothing
spring.ride_rate(wheel_rate=lbf_in, tyre_rate=rate)  # wrong: a unit without a number
spring.ride_rate(wheel_rate={"value": 300, "unit": "lbf/in"}, tyre_rate=rate)  # wrong: a dict
spring.ride_rate(wheel_rate=rate)  # wrong: an argument is missing
spring.ride_rate(wheel_rate=rate, tire_rate=rate)  # wrong: no such keyword
spring.ride_rate(rate, rate)  # wrong: not by keyword
spring.ride_rate(wheel_rate=rate, tyre_rate=rate, invalid="none")  # wrong: no such choice
spring.wheel_rate(spring_rate=rate, motion_ratio=0.75, angle_from_measured_travel=20)  # wrong: an angle without a unit
spring.wheel_rate(spring_rate=rate, motion_ratio=20 * mm, angle_from_measured_travel=angle)  # wrong: a length for a ratio
spring.natural_frequency(tangent_rate=rate, sprung_mass=340 * N)  # wrong: a force for a mass
spring.no_such_function(rate=rate)  # wrong: no such function
cooling.boiling_margin  # wrong: no such function
frequency: Quantity[LinearStiffness] = spring.natural_frequency(tangent_rate=rate, sprung_mass=340 * kg)  # wrong: another kind
spring.ride_rate(wheel_rate=spring.natural_frequency(tangent_rate=rate, sprung_mass=3 * kg), tyre_rate=rate)  # wrong: a frequency

# Ratios as results.
factor = spring.wahl_factor(wire_diameter=12 * mm, mean_diameter=100 * mm)
spring.ride_rate(wheel_rate=factor, tyre_rate=rate)  # wrong: a ratio
factor.to("%")  # wrong: a plain number
factor_as_rate: Quantity[LinearStiffness] = factor  # wrong: a plain number
factor + rate  # wrong: a ratio and a rate
"factor " + factor  # wrong: a number and text
factor_of_one: float = factor  # wrong: an array where an argument is one
ends = mass.weight_distribution(
    left_front=612 * kg, right_front=598 * kg, left_rear=655 * kg, right_rear=667 * kg,
    wheelbase="3 m", front_track="1.5 m", rear_track="1.5 m",
)
ends.front_share.unit  # wrong: a plain number

# Arithmetic and units.
total = rate + 300 * kg  # wrong: unlike kinds
more = rate + 300  # wrong: a bare number
sum_of_points = degC(20) + degC(30)  # wrong: points on a scale
scaled = 2 * degC(20)  # wrong: a point on a scale
multiple = 70 * degF  # wrong: counts from a zero of its own
larger = rate < 3 * mm  # wrong: unlike kinds
converted = rate.to(mm)  # wrong: a unit of another kind
pressures = 1 * psi_gauge - 100 * kPa_absolute  # wrong: gauge and absolute
converted_too = Q(rate, mm)  # wrong: a unit of another kind
force: Quantity[Force] = 300 * lbf_in  # wrong: another kind
rate.si_units  # wrong: no such attribute
degC([80, 90]).sum()  # wrong: points on a scale

# Models, and the entries of their documents.
stop = spring.BumpStop(points=[{"compression": 0 * mm, "force": 0 * N}, {"compression": 9 * mm, "force": 9 * N}])
spring.BumpStop(points=[{"compression": 0 * mm, "force": 0 * kg}])  # wrong: another kind in an entry
spring.BumpStop(points=[{"compression": 0 * mm, "force": 0}])  # wrong: a bare number in an entry
spring.BumpStop(points=[{"compression": 0 * mm}])  # wrong: a key is missing
spring.BumpStop(points=[{"compresion": 0 * mm, "force": 0 * N}])  # wrong: no such key
spring.BumpStop()  # wrong: a field is missing
stop.replace(point=[])  # wrong: no such field
stop.at(compression=30)  # wrong: a bare number
stop.at(compression=[1 * mm, 2 * mm])  # wrong: one value is wanted
stop.at(compression=1 * mm).rate.to(inch)  # wrong: a unit of another kind
stop.at(compression=1 * mm).forse  # wrong: no such result
cooling.Coolant(liquid="ethylene_glycole", volume_share=0.5, concentrate=0.95, cap="15 psi gauge", altitude=0 * mm, hottest=degC(100))  # wrong: no such choice
cooling.Coolant(liquid="water", cap=15 * kPa_absolute, altitude=0 * mm, hottest=degC(100))  # wrong: absolute for gauge
cooling.Coolant(liquid="water", cap="15 psi gauge", altitude=0 * mm, hottest=100 * rpm)  # wrong: another kind

# The sheet.
sheet = Sheet({"engine.stroke": "95 mm"})
Sheet("engine.stroke = 95 mm")  # wrong: text
Sheet({"engine.stroke": object()})  # wrong: no value of a line
sheet.fit("front.spring.rate = 500 lbf/in")  # wrong: text
sheet.assess().compare(sheet)  # wrong: a sheet for an assessment
sheet["engine.stroke"] = "96 mm"  # wrong: a sheet never changes
sheet.asses()  # wrong: no such method
sheet.assess()["engine.pistons"].margins  # wrong: no such attribute
sheet.what_if({"engine.stroke": ["90 mm"]}, output=["engine.pistons.margin"])  # wrong: no such keyword
