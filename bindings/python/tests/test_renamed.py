"""Names that were renamed still answer in this version, with a warning that says the new one."""

import pytest

from axlewright import cooling, engine, mass, si, spring, suspension, tyre
from axlewright._native import SYSTEMS, _former, _system
from axlewright.units import N_mm, degC, inch, kPa_absolute, kg, lbf, lbf_in, mm, psi

MODULES = {"cooling": cooling, "engine": engine, "mass": mass, "spring": spring, "suspension": suspension, "tyre": tyre}


def warned(new):
    return pytest.warns(DeprecationWarning, match=rf"is called {new} now")


RENAMED = [(system, old, new) for system in SYSTEMS for old, new in _former(system)]


@pytest.mark.parametrize(("system", "old", "new"), RENAMED)
def test_an_old_name_of_a_member_answers_and_warns(system, old, new):
    module = MODULES[system]
    with warned(new) as caught:
        assert getattr(module, old) is getattr(module, new)
    assert [warning.filename for warning in caught] == [__file__]
    assert old not in module.__all__ and old not in dir(module)


def test_old_names_are_there_for_every_kind_of_member():
    assert {("cooling", "LeakDown"), ("mass", "raised_axle_height"), ("cooling", "LeakDownFindings")} <= {(system, old) for system, old, _ in RENAMED}
    with warned("PressureDecay"):
        from axlewright.cooling import LeakDown
    assert LeakDown is cooling.PressureDecay
    with pytest.raises(AttributeError, match="has no attribute 'leak_up'"):
        cooling.leak_up  # noqa: B018


def test_an_old_ufunc_answers_and_warns():
    with warned("compressor_outlet_temperature"):
        assert si.engine.charge_temperature is si.engine.compressor_outlet_temperature
    with pytest.raises(AttributeError):
        si.cooling.LeakDown  # noqa: B018


def test_an_old_argument_is_taken_and_warns():
    with warned("rate") as caught:
        assert spring.static_deflection(load=900 * lbf, tangent_rate=225 * lbf_in) == 4 * inch
    assert [warning.filename for warning in caught] == [__file__]
    readings = {"level_mass": 1223 * kg, "total_mass": 2400 * kg, "wheelbase": 2650 * mm, "lift": 600 * mm, "loaded_radius": 342 * mm}
    rates = {"lower_axle_tyre_rate": 560 * N_mm, "raised_axle_tyre_rate": 560 * N_mm}
    new = mass.centre_of_gravity_height_by_tilt_over_tyres(tilted_mass=1289 * kg, **readings, **rates)
    with pytest.warns(DeprecationWarning) as caught:
        old = mass.centre_of_gravity_height_by_tilt_over_tyres(raised_mass=1289 * kg, **readings, lower_tyre_rate=560 * N_mm, raised_tyre_rate=560 * N_mm)
    assert old == new and len(caught) == 3


@pytest.mark.filterwarnings("ignore::DeprecationWarning")
@pytest.mark.parametrize("both", [{"rate": 1 * lbf_in, "tangent_rate": 1 * lbf_in}, {"tangent_rate": 1 * lbf_in, "rate": 1 * lbf_in}])
def test_an_argument_is_not_taken_under_both_names(both):
    with pytest.raises(TypeError, match="under its old name, too"):
        spring.static_deflection(load=900 * lbf, **both)


@pytest.mark.parametrize("system", sorted(MODULES))
def test_an_old_field_of_a_result_answers_and_warns(system):
    results, _, _, _ = _system(system)
    for name, _, fields, former in results:
        made = getattr(MODULES[system], name)(*range(len(fields)))
        for old, new in former:
            with warned(new) as caught:
                assert getattr(made, old) == getattr(made, new)
            assert [warning.filename for warning in caught] == [__file__]
        with pytest.raises(AttributeError, match="no attribute 'never'"):
            made.never  # noqa: B018
    assert any(former for *_, former in results) == (system != "engine")


def test_an_old_column_answers_and_warns():
    decay = cooling.PressureDecay(
        trapped="gas", gauge_pressure="15 psi gauge", later_gauge_pressure="13.5 psi gauge", temperature="77 °F", later_temperature="59 °F",
        station_pressure=101.3 * kPa_absolute, gauge_error=0.5 * psi, allowed_loss=1 * psi,
    )  # fmt: skip
    table = decay.table(later_temperature=degC([15, 20]))
    with warned("largest_loss"):
        assert (table["greatest_loss"] == table["largest_loss"]).all()
    with pytest.raises(KeyError, match="no column 'greatest'"):
        table["greatest"]
