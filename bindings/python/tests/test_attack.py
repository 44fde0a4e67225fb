"""A short attack on the Python surface, with a fixed seed: `cargo xtask attack` runs longer."""

import os
import subprocess
import sys

import attack


def test_a_short_attack_finds_nothing():
    """In a process of its own, which gets signals."""
    command = [sys.executable, attack.__file__, "2", "1", *([os.environ["AXW_LIBRARY"]] if os.environ.get("AXW_LIBRARY") else [])]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, ""), done
    name, calls, answered, refused, crashes, broken, *_ = done.stdout.split("\t")
    assert (name, crashes, broken) == ("python", "0", "0")
    assert int(answered) > 200 and int(refused) > 200 and int(calls) == int(answered) + int(refused)
