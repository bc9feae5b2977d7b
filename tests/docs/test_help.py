"""The examples in the help of each command can be typed as they stand."""

from __future__ import annotations

import re
import shlex
import shutil
import subprocess
from pathlib import Path

import pytest

from counterpane.cli.parser import COMMANDS, MORE, build
from docs.console import TOP, files

EXAMPLES = [
    line
    for text in (MORE, *(command.EXAMPLES for command in COMMANDS))
    for line in re.findall(r"^  \$ (.*)$", text, re.M)
]
READ_ONLY = ("counterpane serve ", "counterpane pull ")
ROWS = "Cast on 20 sts.\nRow 1 (RS): K2, *p3, k3; rep from * to end.\nRow 2: *P3, k3; rep from * to last 2 sts, p2.\n"
YARNS = """
markets = ["UK"]
[[yarns]]
name = "body"
grams = 320
fibre = [{ fibre = "merino", percent = 75 }, { fibre = "nylon", percent = 25 }]
[[yarns]]
name = "edge"
grams = 46
fibre = [{ fibre = "cotton", percent = 100 }]
"""
PIECE = 'age_months = [4, 12]\nuse = "pram"\nmarkets = ["UK"]\nhole_mm = 4.5\n'
YARN = "\n[yarn]\nball_g = 50\nball_m = 115\n"
RIDGE = """slug = "ridge"
kind = "body"
name = "Six rib"
summary = "2 rows over a multiple of 6 stitches plus 3, at least 9."
reversible = "yes"

[[versions]]
name = "a multiple of 6 plus 3"
rows = '''
Row 1 (RS): *k3, p3; rep from * to last 3 sts, k3.
Row 2 (WS): *p3, k3; rep from * to last 3 sts, p3.
'''

[[examples]]
stitches = 9
after = [9, 9]

[[examples]]
stitches = 141
after = [141, 141]

[safety]
loose_yarn = "not known"
floats = "none"
openings = "none"
ties = "not known"
fibre = "not known"

[provenance]
source = "common-practice"
licence = "CC0-1.0"
author = "anna"
"""
SWATCHES = '[[swatches]]\nin = "waffle"\nstitches = 22\nrows = 30\nover_cm = 10\n'


@pytest.fixture(scope="module")
def bench(desk: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with the files that the examples name."""
    place = tmp_path_factory.mktemp("bench")
    shutil.copytree(desk / "season", place / "season")
    (place / "rows.txt").write_text(ROWS, "utf-8")
    (place / "yarns.toml").write_text(YARNS, "utf-8")
    (place / "piece.toml").write_text(PIECE, "utf-8")
    (place / "swatches.toml").write_text(SWATCHES, "utf-8")
    (place / "ridge.toml").write_text(RIDGE, "utf-8")
    (place / "parts").mkdir()
    (place / "parts" / "other.toml").write_text(RIDGE.replace('"ridge"', '"other-ridge"'), "utf-8")
    shown = files((TOP / "README.md").read_text("utf-8"))
    for name in ("knit.toml", "ward.toml"):
        (place / name).write_text(shown[name], "utf-8")
    mended = shown["blanket.toml"].replace("stitches = 6 }", "stitches = 7 }")
    (place / "blanket.toml").write_text(mended + YARN, "utf-8")
    return place


@pytest.mark.parametrize("line", [line for line in EXAMPLES if not line.startswith(READ_ONLY)])
def test_an_example_of_the_help_does_its_work(line: str, bench: Path, environment: dict[str, str]):
    """It ends with 0, or with 1 where rows are worked from a count that does not suit them."""
    done = subprocess.run(
        ["bash", "-c", line], cwd=bench, env=environment, capture_output=True, text=True, timeout=120, check=False
    )
    assert done.returncode == (1 if "--cast-on 29" in line else 0), done.stderr
    assert done.stdout or " --out " in line


@pytest.mark.parametrize("line", [line for line in EXAMPLES if line.startswith(READ_ONLY)])
def test_an_example_that_would_not_end_or_needs_a_peer_is_read_as_meant(line: str):
    """What serves until it is interrupted, or asks another library, is only read here; other tests do it for real."""
    assert build().parse_args(shlex.split(line)[1:]).run.__module__.endswith(line.split()[1])


def test_every_command_has_examples():
    """A command without an example is hard to learn."""
    assert all("$ counterpane" in command.EXAMPLES for command in COMMANDS)
