"""Sets every formula of the book in one run of Node: no server, no port, no waiting.

The extension `sphinxcontrib.katex` would ask a server of its own for each formula. Here all pages are read first, one process sets
all formulas with the extension's copy of KaTeX, and the extension then finds each result in a table.
"""

import json
import subprocess
from collections.abc import Iterable
from pathlib import Path

import sphinxcontrib.katex as katex
from docutils import nodes
from sphinx.application import Sphinx
from sphinx.environment import BuildEnvironment
from sphinx.util import logging

#: A formula as LaTeX, and whether it stands on a line of its own.
Formula = tuple[str, bool]
SCRIPT = Path(__file__).with_name("formulas.js")
KATEX = Path(katex.__file__).with_name("katex.min.js")


def set_all(formulas: Iterable[Formula]) -> dict[Formula, dict[str, str]]:
    """For each formula its `html`, or the `error` that KaTeX found in it."""
    wanted = sorted(set(formulas))
    request = {"katex": str(KATEX), "options": katex.KATEX_DEFAULT_OPTIONS, "formulas": wanted}
    done = subprocess.run(
        [katex.NODEJS_BINARY, SCRIPT], input=json.dumps(request), stdout=subprocess.PIPE, encoding="utf-8", check=True
    )
    return dict(zip(wanted, json.loads(done.stdout), strict=True))


def _formulas_of_the_book(app: Sphinx, env: BuildEnvironment) -> list[str]:
    found: dict[Formula, list[nodes.Node]] = {}
    for page in sorted(env.found_docs):
        for node in env.get_doctree(page).findall(lambda node: isinstance(node, nodes.math | nodes.math_block)):
            found.setdefault((node.astext(), isinstance(node, nodes.math_block)), []).append(node)
    done = set_all(found)
    for formula, result in done.items():
        for node in found[formula] if "error" in result else []:
            logging.getLogger(__name__).warning("%s: %s", formula[0], result["error"], location=node)

    def render(latex: str, options: dict[str, bool] | None = None) -> str:
        return done[latex, bool(options and options.get("displayMode"))].get("html", "")

    katex.render_latex = render
    return []


def setup(app: Sphinx) -> dict[str, bool]:
    app.connect("env-updated", _formulas_of_the_book)
    return {"parallel_read_safe": True}
