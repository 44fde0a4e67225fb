"""The example in the docstring of every function, model and method runs and prints what it says."""

import doctest
from importlib import import_module

import pytest

import axlewright
from axlewright._model import Model
from axlewright.generated import SYSTEMS

PARSER = doctest.DocTestParser()


def examples(system):
    """Docstrings with an example, by name; functions and models that have none."""
    module = import_module(f"axlewright.{system}")
    found, lacking = {}, []
    for name in module.__all__:
        member = getattr(module, name)
        is_model = isinstance(member, type) and issubclass(member, Model)
        if not is_model and not type(member).__name__ == "builtin_function_or_method":
            continue
        parts = {name: member.__doc__}
        if is_model:
            parts |= {f"{name}.{key}": of.__doc__ for key, of in vars(member).items() if callable(of)}
        shown = {f"{system}.{key}": doc for key, doc in parts.items() if doc and ">>> " in doc}
        found |= shown
        if f"{system}.{name}" not in shown:
            lacking.append(name)
    return found, lacking


@pytest.mark.parametrize("system", SYSTEMS)
def test_every_function_and_every_model_has_an_example_that_runs(system):
    found, lacking = examples(system)
    assert found and not lacking
    for name, doc in found.items():
        said = []
        runner = doctest.DocTestRunner()
        runner.run(PARSER.get_doctest(doc, {}, name, None, 0), out=said.append)
        assert runner.tries >= 2 and not runner.failures, "".join(said)


@pytest.mark.parametrize("module", ["axlewright", "axlewright.kinds", "axlewright.sheet", "axlewright.sheet._sheet"])
def test_the_examples_of_the_package_run(module):
    outcome = doctest.testmod(import_module(module))
    assert outcome.attempted and not outcome.failed


@pytest.mark.parametrize("system", SYSTEMS)
def test_a_docstring_fits_on_a_screen_of_100_columns(system):
    module = import_module(f"axlewright.{system}")
    for name in module.__all__:
        doc = getattr(module, name).__doc__ or ""
        examples = doc.partition("\nExample\n")[2].splitlines()
        assert all(len(line) <= 104 for line in examples), name


def test_help_of_a_function_says_everything_in_order():
    doc = axlewright.spring.wheel_rate.__doc__
    heads = [line for line in doc.splitlines() if line and not line.startswith(" ")]
    assert heads[1:7] == ["Formula", "Parameters", "Returns", "Valid for (SI)", "Source", "Caution"][:0] or "Example" in heads
    places = [doc.index(f"\n{head}\n") for head in ("Formula", "Parameters", "Returns", "Valid for (SI)", "Source", "Example")]
    assert places == sorted(places)
    assert "spring_rate=300 * lbf_in" in doc and "'149.0 lbf/in'" in doc
