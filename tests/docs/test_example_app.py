"""The program of README.md that asks for recipes does what is said of it, and so does its test."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from counterpane.lending import Lent

README = (Path(__file__).resolve().parents[2] / "README.md").read_text("utf-8")
PROGRAM, ITS_TEST = re.findall(r"^```python\n(.*?)^```", README, re.M | re.S)


def test_the_program_prints_a_line_for_each_recipe(counterpane_library: Lent, tmp_path: Path) -> None:
    """Each has its counts, and the licence of its words."""
    place = tmp_path / "evening.py"
    place.write_text(PROGRAM, "utf-8")
    typed = [sys.executable, str(place), counterpane_library.address, "24", "34"]
    done = subprocess.run(typed, capture_output=True, text=True, timeout=120, check=False)
    assert (done.returncode, done.stderr) == (0, "")
    lines = done.stdout.splitlines()
    assert [line.partition(":")[0] for line in lines] == [card.name for card in counterpane_library.client.recipes()]
    assert all("cast on " in line and "CC0-1.0" in line for line in lines)


def test_the_program_is_as_short_as_is_said(tmp_path: Path) -> None:
    """Fifty lines at most."""
    assert len(PROGRAM.splitlines()) <= 50


def test_its_own_test_runs_with_the_fixture(counterpane_library: Lent) -> None:
    """The block is a test that passes as it stands."""
    names: dict[str, object] = {"__name__": "evening"}
    exec(PROGRAM, names)
    exec(ITS_TEST, names)
    check = names["test_every_recipe_has_a_line"]
    assert callable(check)
    check(counterpane_library)


def test_what_is_added_is_gone_with_the_library(counterpane_library: Lent) -> None:
    """A token that may write comes with it, and nothing of an earlier test is there."""
    text = "(multiple of 4 sts plus 1)\nRow 1 (RS): *K3, p1; rep from * to last st, k1.\nRow 2: Purl.\n"
    said = {"kind": "body", "name": "Lent", "licence": "CC0-1.0", "author": "anna", "source": "common-practice"}
    kept = counterpane_library.client.adopt(text, **said)
    assert kept.slug == "lent"
