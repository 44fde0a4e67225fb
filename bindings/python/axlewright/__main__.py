"""The command `axlewright`, also `python -m axlewright`: `new`, `assess`, `keys`, `compare`, `what-if`, `choose`, `sensitivity`, `chances`, `schema`.

Exit codes of `assess`: 0 no finding is tight or short, and every safety finding that applies meets, 1 the worst is tight (or a safety finding is not known), 2 one is short; 64 the command
is wrong, 65 the document is, 66 there is no such file, or it cannot be read; 70 this program failed, 74 its output cannot be written; 130 interrupted, 141 nobody
reads the output. A failure is one line on the standard error, or a list of faults. `choose` ends with 2 if no combination meets the requirements; the other commands end with 0.
"""

from __future__ import annotations

import contextlib
import os
import sys

from axlewright._command import FAILED, INTERRUPTED, NO_OUTPUT, NO_READER, NoOutput, complain, main, program, say
from axlewright._native import _short


def run() -> int:
    """The command, with care for what may go wrong around it: no failure of its own looks like a finding."""
    try:
        try:
            code = main()
        except SystemExit as ended:  # of the parser, which has written its help or its complaint
            code = ended.code if isinstance(ended.code, int) else 0
            if code == 0:
                say("")
        return code
    except BrokenPipeError:
        code, said = NO_READER, ""
    except KeyboardInterrupt:
        code, said = INTERRUPTED, ""
    except NoOutput:
        code, said = NO_OUTPUT, "the standard output is closed"
    except UnicodeEncodeError as error:
        character = f"U+{ord(error.object[error.start]):04X}"
        code, said = NO_OUTPUT, f"the standard output takes no {character} in the encoding {error.encoding}; set PYTHONIOENCODING=utf-8"
    except OSError as error:
        code, said = NO_OUTPUT, f"the standard output: {error.strerror or error}"
    except MemoryError:
        code, said = FAILED, "there is not enough memory"
    except Exception as error:
        code, said = FAILED, f"a failure of this program, please report it: {type(error).__name__}: {_short(str(error))}"
    if said:
        complain(f"{program()}: {said}")
    _give_up_output()
    return code


def _give_up_output() -> None:
    """Python would write what is left once more at its end, and complain."""
    if sys.stdout is not None:
        with contextlib.suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


if __name__ == "__main__":
    sys.exit(run())
