"""Units: `300 * lbf_in`, `[250, 300] * lbf_in`, `degF(70)`. Generated; do not edit."""

from typing import Final

from axlewright._native import UNITS as _UNITS, Unit

__all__ = [
    "one",
    "percent",
    "rad",
    "deg",
    "turn",
    "m",
    "mil",
    "mm",
    "cm",
    "km",
    "inch",
    "ft",
    "mile",
    "m2",
    "cm2",
    "mm2",
    "in2",
    "ft2",
    "m3",
    "L",
    "mL",
    "in3",
    "gal_us",
    "gal_imp",
    "qt_us",
    "kg",
    "g",
    "t",
    "lb",
    "oz",
    "ton_short",
    "ton_long",
    "s",
    "ms",
    "minute",
    "h",
    "Hz",
    "kHz",
    "cpm",
    "rad_s",
    "rpm",
    "deg_s",
    "m_s",
    "km_h",
    "mph",
    "ft_s",
    "in_s",
    "mm_s",
    "m_s2",
    "gn",
    "ft_s2",
    "N",
    "kN",
    "lbf",
    "kgf",
    "Nm",
    "ft_lbf",
    "in_lbf",
    "kgf_m",
    "J",
    "kJ",
    "kWh",
    "Btu",
    "W",
    "kW",
    "hp_mechanical",
    "hp_metric",
    "Btu_min",
    "N_per_m",
    "N_mm",
    "kN_m",
    "lbf_in",
    "lbf_ft",
    "N_cm",
    "kgf_mm",
    "kgf_cm",
    "Nm_rad",
    "Nm_deg",
    "ft_lbf_deg",
    "Ns_m",
    "Ns_mm",
    "lbf_s_in",
    "kg_m2",
    "lb_ft2",
    "rad_s2_m",
    "deg_gn",
    "rev_m",
    "rev_km",
    "rev_mile",
    "m3_cycle",
    "cm3_cycle",
    "in3_cycle",
    "per_m",
    "per_mm",
    "per_in",
    "kg_m3",
    "g_cm3",
    "lb_ft3",
    "lb_in3",
    "J_kgK",
    "kJ_kgK",
    "Btu_lbF",
    "Pa_s",
    "mPa_s",
    "cP",
    "lb_ft_s",
    "W_mK",
    "Btu_hftF",
    "Btu_in_hft2F",
    "Pa_absolute",
    "hPa_absolute",
    "kPa_absolute",
    "MPa_absolute",
    "bar_absolute",
    "psi_absolute",
    "atm_absolute",
    "inHg_absolute",
    "Pa_gauge",
    "kPa_gauge",
    "bar_gauge",
    "psi_gauge",
    "inHg_gauge",
    "Pa",
    "kPa",
    "MPa",
    "GPa",
    "bar",
    "psi",
    "ksi",
    "Mpsi",
    "K",
    "degC",
    "degF",
    "degR",
    "delta_K",
    "delta_degC",
    "delta_degF",
    "per_K",
    "ppm_K",
    "per_degF",
    "ppm_degF",
]

# Ratio
one: Final[Unit] = _UNITS["one"]
percent: Final[Unit] = _UNITS["percent"]

# Angle
rad: Final[Unit] = _UNITS["rad"]
deg: Final[Unit] = _UNITS["deg"]
turn: Final[Unit] = _UNITS["turn"]

# Length
m: Final[Unit] = _UNITS["m"]
mil: Final[Unit] = _UNITS["mil"]
mm: Final[Unit] = _UNITS["mm"]
cm: Final[Unit] = _UNITS["cm"]
km: Final[Unit] = _UNITS["km"]
inch: Final[Unit] = _UNITS["inch"]
ft: Final[Unit] = _UNITS["ft"]
mile: Final[Unit] = _UNITS["mile"]

# Area
m2: Final[Unit] = _UNITS["m2"]
cm2: Final[Unit] = _UNITS["cm2"]
mm2: Final[Unit] = _UNITS["mm2"]
in2: Final[Unit] = _UNITS["in2"]
ft2: Final[Unit] = _UNITS["ft2"]

# Volume
m3: Final[Unit] = _UNITS["m3"]
L: Final[Unit] = _UNITS["L"]
mL: Final[Unit] = _UNITS["mL"]
in3: Final[Unit] = _UNITS["in3"]
gal_us: Final[Unit] = _UNITS["gal_us"]
gal_imp: Final[Unit] = _UNITS["gal_imp"]
qt_us: Final[Unit] = _UNITS["qt_us"]

# Mass
kg: Final[Unit] = _UNITS["kg"]
g: Final[Unit] = _UNITS["g"]
t: Final[Unit] = _UNITS["t"]
lb: Final[Unit] = _UNITS["lb"]
oz: Final[Unit] = _UNITS["oz"]
ton_short: Final[Unit] = _UNITS["ton_short"]
ton_long: Final[Unit] = _UNITS["ton_long"]

# Time
s: Final[Unit] = _UNITS["s"]
ms: Final[Unit] = _UNITS["ms"]
minute: Final[Unit] = _UNITS["minute"]
h: Final[Unit] = _UNITS["h"]

# Frequency
Hz: Final[Unit] = _UNITS["Hz"]
kHz: Final[Unit] = _UNITS["kHz"]
cpm: Final[Unit] = _UNITS["cpm"]

# Angular velocity
rad_s: Final[Unit] = _UNITS["rad_s"]
rpm: Final[Unit] = _UNITS["rpm"]
deg_s: Final[Unit] = _UNITS["deg_s"]

# Velocity
m_s: Final[Unit] = _UNITS["m_s"]
km_h: Final[Unit] = _UNITS["km_h"]
mph: Final[Unit] = _UNITS["mph"]
ft_s: Final[Unit] = _UNITS["ft_s"]
in_s: Final[Unit] = _UNITS["in_s"]
mm_s: Final[Unit] = _UNITS["mm_s"]

# Acceleration
m_s2: Final[Unit] = _UNITS["m_s2"]
gn: Final[Unit] = _UNITS["gn"]
ft_s2: Final[Unit] = _UNITS["ft_s2"]

# Force
N: Final[Unit] = _UNITS["N"]
kN: Final[Unit] = _UNITS["kN"]
lbf: Final[Unit] = _UNITS["lbf"]
kgf: Final[Unit] = _UNITS["kgf"]

# Torque
Nm: Final[Unit] = _UNITS["Nm"]
ft_lbf: Final[Unit] = _UNITS["ft_lbf"]
in_lbf: Final[Unit] = _UNITS["in_lbf"]
kgf_m: Final[Unit] = _UNITS["kgf_m"]

# Energy
J: Final[Unit] = _UNITS["J"]
kJ: Final[Unit] = _UNITS["kJ"]
kWh: Final[Unit] = _UNITS["kWh"]
Btu: Final[Unit] = _UNITS["Btu"]

# Power
W: Final[Unit] = _UNITS["W"]
kW: Final[Unit] = _UNITS["kW"]
hp_mechanical: Final[Unit] = _UNITS["hp_mechanical"]
hp_metric: Final[Unit] = _UNITS["hp_metric"]
Btu_min: Final[Unit] = _UNITS["Btu_min"]

# Linear stiffness
N_per_m: Final[Unit] = _UNITS["N_per_m"]
N_mm: Final[Unit] = _UNITS["N_mm"]
kN_m: Final[Unit] = _UNITS["kN_m"]
lbf_in: Final[Unit] = _UNITS["lbf_in"]
lbf_ft: Final[Unit] = _UNITS["lbf_ft"]
N_cm: Final[Unit] = _UNITS["N_cm"]
kgf_mm: Final[Unit] = _UNITS["kgf_mm"]
kgf_cm: Final[Unit] = _UNITS["kgf_cm"]

# Rotational stiffness
Nm_rad: Final[Unit] = _UNITS["Nm_rad"]
Nm_deg: Final[Unit] = _UNITS["Nm_deg"]
ft_lbf_deg: Final[Unit] = _UNITS["ft_lbf_deg"]

# Damping
Ns_m: Final[Unit] = _UNITS["Ns_m"]
Ns_mm: Final[Unit] = _UNITS["Ns_mm"]
lbf_s_in: Final[Unit] = _UNITS["lbf_s_in"]

# Moment of inertia
kg_m2: Final[Unit] = _UNITS["kg_m2"]
lb_ft2: Final[Unit] = _UNITS["lb_ft2"]

# Roll gradient
rad_s2_m: Final[Unit] = _UNITS["rad_s2_m"]
deg_gn: Final[Unit] = _UNITS["deg_gn"]

# Turns per distance
rev_m: Final[Unit] = _UNITS["rev_m"]
rev_km: Final[Unit] = _UNITS["rev_km"]
rev_mile: Final[Unit] = _UNITS["rev_mile"]

# Road roughness
m3_cycle: Final[Unit] = _UNITS["m3_cycle"]
cm3_cycle: Final[Unit] = _UNITS["cm3_cycle"]
in3_cycle: Final[Unit] = _UNITS["in3_cycle"]

# Ratio per length
per_m: Final[Unit] = _UNITS["per_m"]
per_mm: Final[Unit] = _UNITS["per_mm"]
per_in: Final[Unit] = _UNITS["per_in"]

# Density
kg_m3: Final[Unit] = _UNITS["kg_m3"]
g_cm3: Final[Unit] = _UNITS["g_cm3"]
lb_ft3: Final[Unit] = _UNITS["lb_ft3"]
lb_in3: Final[Unit] = _UNITS["lb_in3"]

# Specific heat
J_kgK: Final[Unit] = _UNITS["J_kgK"]
kJ_kgK: Final[Unit] = _UNITS["kJ_kgK"]
Btu_lbF: Final[Unit] = _UNITS["Btu_lbF"]

# Dynamic viscosity
Pa_s: Final[Unit] = _UNITS["Pa_s"]
mPa_s: Final[Unit] = _UNITS["mPa_s"]
cP: Final[Unit] = _UNITS["cP"]
lb_ft_s: Final[Unit] = _UNITS["lb_ft_s"]

# Thermal conductivity
W_mK: Final[Unit] = _UNITS["W_mK"]
Btu_hftF: Final[Unit] = _UNITS["Btu_hftF"]
Btu_in_hft2F: Final[Unit] = _UNITS["Btu_in_hft2F"]

# Absolute pressure
Pa_absolute: Final[Unit] = _UNITS["Pa_absolute"]
hPa_absolute: Final[Unit] = _UNITS["hPa_absolute"]
kPa_absolute: Final[Unit] = _UNITS["kPa_absolute"]
MPa_absolute: Final[Unit] = _UNITS["MPa_absolute"]
bar_absolute: Final[Unit] = _UNITS["bar_absolute"]
psi_absolute: Final[Unit] = _UNITS["psi_absolute"]
atm_absolute: Final[Unit] = _UNITS["atm_absolute"]
inHg_absolute: Final[Unit] = _UNITS["inHg_absolute"]

# Gauge pressure
Pa_gauge: Final[Unit] = _UNITS["Pa_gauge"]
kPa_gauge: Final[Unit] = _UNITS["kPa_gauge"]
bar_gauge: Final[Unit] = _UNITS["bar_gauge"]
psi_gauge: Final[Unit] = _UNITS["psi_gauge"]
inHg_gauge: Final[Unit] = _UNITS["inHg_gauge"]

# Stress or pressure difference
Pa: Final[Unit] = _UNITS["Pa"]
kPa: Final[Unit] = _UNITS["kPa"]
MPa: Final[Unit] = _UNITS["MPa"]
GPa: Final[Unit] = _UNITS["GPa"]
bar: Final[Unit] = _UNITS["bar"]
psi: Final[Unit] = _UNITS["psi"]
ksi: Final[Unit] = _UNITS["ksi"]
Mpsi: Final[Unit] = _UNITS["Mpsi"]

# Temperature
K: Final[Unit] = _UNITS["K"]
degC: Final[Unit] = _UNITS["degC"]
degF: Final[Unit] = _UNITS["degF"]
degR: Final[Unit] = _UNITS["degR"]

# Temperature difference
delta_K: Final[Unit] = _UNITS["delta_K"]
delta_degC: Final[Unit] = _UNITS["delta_degC"]
delta_degF: Final[Unit] = _UNITS["delta_degF"]

# Thermal expansion coefficient
per_K: Final[Unit] = _UNITS["per_K"]
ppm_K: Final[Unit] = _UNITS["ppm_K"]
per_degF: Final[Unit] = _UNITS["per_degF"]
ppm_degF: Final[Unit] = _UNITS["ppm_degF"]
