"""What the package holds of each system: made when it is imported, and the same as if it were written in Python."""

import inspect
import pickle
import subprocess
import sys
from copy import deepcopy
from importlib import import_module
from typing import is_typeddict

import pytest

import axlewright
from axlewright import spring
from axlewright._model import Model
from axlewright._native import SYSTEMS
from axlewright.units import N, N_mm, kg, lbf, lbf_in, mm

MODULES = [import_module(f"axlewright.{system}") for system in SYSTEMS]
OBJECTS = [pytest.param(module, name, id=f"{module.__name__}.{name}") for module in MODULES for name in module.__all__]


@pytest.mark.parametrize(("module", "name"), OBJECTS)
def test_everything_is_found_by_its_name(module, name):
    made = getattr(module, name)
    assert (made.__module__, made.__name__, made.__qualname__) == (module.__name__, name, name)
    assert made.__doc__.strip() and pickle.loads(pickle.dumps(made)) is made is deepcopy(made)
    if is_typeddict(made):
        assert made.__annotations__
        return
    signature = inspect.signature(made)
    if isinstance(made, type) and issubclass(made, tuple):
        assert tuple(signature.parameters) == made._fields
        assert all(getattr(made, field).__doc__ for field in made._fields)
    else:
        assert all(of.kind is inspect.Parameter.KEYWORD_ONLY for of in signature.parameters.values())
    if not isinstance(made, type):
        assert signature.parameters["invalid"].default == "raise"


@pytest.mark.parametrize("model", [made for module in MODULES for made in vars(module).values() if isinstance(made, type) and issubclass(made, Model) and made is not Model])
def test_a_model_says_what_it_takes(model):
    arguments = inspect.signature(model).parameters
    fields = [name for name, of in vars(model).items() if isinstance(of, property)]
    assert sorted(arguments) == sorted(fields) and all(vars(model)[field].__doc__ for field in fields)
    assert {of.default for of in arguments.values()} <= {inspect.Parameter.empty, None}
    methods = [of for name, of in vars(model).items() if inspect.ismethoddescriptor(of) and not name.startswith("__")]
    assert methods and all(of.__doc__.strip() for of in methods)
    for method in methods:
        assert method.__qualname__ == f"{model.__name__}.{method.__name__}" and "self" in inspect.signature(method).parameters


def stop(**more):
    points = [{"compression": x * mm, "force": y * N} for x, y in ((0, 0), (10, 400), (20, 1500))]
    return spring.BumpStop(**{"points": points} | more)


def test_a_model_is_a_class():
    class Marked(spring.BumpStop):
        """A model with something of its own."""

        __slots__ = ()

        def twice(self):
            return 2 * self.at(compression=5 * mm).force

    made = stop()
    assert made.at(compression=5 * mm) == made.at(compression="5 mm") and type(made.at(compression=5 * mm)) is spring.Stopped
    assert Marked.from_text(made.to_json()).twice() == 2 * made.at(compression=5 * mm).force
    with pytest.raises(TypeError, match=r"^BumpStop\(\) missing 1 required keyword-only argument: 'points'$"):
        spring.BumpStop()
    with pytest.raises(TypeError, match=r"^BumpStop\(\) got an unexpected keyword argument 'curves'; it takes points$"):
        stop(curves=[])
    with pytest.raises(TypeError, match=r"unexpected keyword argument 'spring_rat'; did you mean 'spring_rate'\?$"):
        spring.wheel_rate(spring_rat=300 * lbf_in)
    with pytest.raises(TypeError, match=r"^BumpStop\.at\(\) missing 1 required keyword-only argument: 'compression'$"):
        made.at()
    with pytest.raises(TypeError, match="positional"):
        made.at(5 * mm)
    with pytest.raises(TypeError, match="descriptor 'at'"):
        spring.BumpStop.at(3, compression=5 * mm)
    empty = spring.BumpStop.__new__(spring.BumpStop)
    with pytest.raises(AttributeError, match="_handle"):
        empty.at(compression=5 * mm)


@pytest.mark.parametrize(
    ("module", "name", "near"),
    [
        (axlewright, "springs", "spring"),
        (axlewright, "Sheets", "Sheet"),
        (spring, "wheel_rat", "wheel_rate"),
        (axlewright.units, "lbf_inch", "lbf_in"),
        (axlewright.si.spring, "ride_rates", "ride_rate"),
    ],
)
def test_a_misspelt_name_is_answered(module, name, near):
    with pytest.raises(AttributeError, match=rf"^module '{module.__name__}' has no attribute '{name}'; did you mean '{near}'\?$"):
        getattr(module, name)
    assert not hasattr(module, "__wrapped__") and name not in dir(module) and near in dir(module)


def test_a_function_is_read_by_people():
    # From the docs of the core, and the signature in front of them.
    assert str(inspect.signature(spring.ride_rate)) == "(*, wheel_rate, tyre_rate, invalid='raise')"
    done = subprocess.run(
        [sys.executable, "-c", "from axlewright import spring; help(spring.ride_rate)"], capture_output=True, text=True, check=True
    )
    for words in ("ride_rate(*, wheel_rate, tyre_rate, invalid='raise')", "wheel_rate (linear stiffness)", "DomainError"):
        assert words in done.stdout, done.stdout


def test_a_system_is_loaded_when_it_is_asked_for():
    script = "import sys, axlewright; print([name for name in sys.modules if name.startswith('axlewright.') and '_' not in name])"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert not set(SYSTEMS) & {name.strip("' []").removeprefix("axlewright.") for name in done.stdout.split(",")}
    assert axlewright.mass.sprung_mass(scale_mass=1200 * kg, unsprung_mass=150 * kg) == 1050 * kg
    assert spring.static_deflection(load=900 * lbf, rate=225 * lbf_in) == 4 * axlewright.units.inch
    assert spring.ride_rate(wheel_rate=30 * N_mm, tyre_rate=200 * N_mm).unit == N_mm
