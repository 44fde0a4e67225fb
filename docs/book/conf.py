"""The book's settings. `cargo xtask docs` writes the sources and calls Sphinx; nothing here or in the pages needs a network."""

import os
import shutil
import sys
from functools import partialmethod
from importlib.metadata import version as installed
from importlib.resources import files
from pathlib import Path

import sphinxcontrib.katex as katex
from nbclient import NotebookClient

project, author = "Axlewright", "the Axlewright contributors"
version = release = installed("axlewright")
extensions = ["myst_nb", "sphinxcontrib.katex"]
exclude_patterns = ["repository"]
templates_path = ["templates"]
myst_enable_extensions = ["dollarmath", "colon_fence"]
suppress_warnings = ["mystnb.unknown_mime_type"]

# Examples are run with the wheel; one that fails ends the build.
nb_execution_mode = "force"
nb_execution_raise_on_error = True
nb_execution_show_tb = True
nb_execution_timeout = -1
nb_merge_streams = True
nb_ipywidgets_js = {}
os.environ.setdefault("PYDEVD_DISABLE_FILE_VALIDATION", "1")
# A busy machine is no error: a kernel may take as long as it needs to start and to print.
NotebookClient.__init__ = partialmethod(NotebookClient.__init__, startup_timeout=86_400, iopub_timeout=86_400)

# KaTeX comes with the extension. Its output is MathML, which needs no style sheet; where there is a Node, formulas are set now and one
# that is wrong ends the build, otherwise the reader's browser does it with the copy in the book.
katex_prerender = shutil.which(katex.NODEJS_BINARY) is not None
if katex_prerender:
    sys.path.insert(0, str(Path(__file__).parent))
    extensions.append("formulas")
katex_css_path = "katex-math.css"
katex_options = "output: 'mathml', strict: 'error'"
katex.KATEX_DEFAULT_OPTIONS.update(output="mathml", throwOnError=True, strict="error")

html_theme = "furo"
html_title = f"Axlewright {release}"
html_static_path = [
    str(Path(__file__).with_name("book.css")),
    str(files("ziamath") / "fonts/STIXTwoMath-Regular.ttf"),
]
html_css_files = ["book.css"]
html_copy_source = html_show_sourcelink = html_show_sphinx = False
