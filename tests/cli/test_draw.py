"""`counterpane draw`: a plan as a picture."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import pytest

from counterpane.cli import main

BLANKET = """[parts]
body = "waffle"
[gauge]
stitches = 22
rows = 30
over_cm = 10
[size]
width_cm = 70
length_cm = 90
"""


@pytest.fixture
def blanket(tmp_path: Path) -> str:
    """Return the path of a plan request."""
    path = tmp_path / "blanket.toml"
    path.write_text(BLANKET)
    return str(path)


def test_a_schematic_goes_to_a_file(blanket: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Whole, and the name of the file is told beside it."""
    out = tmp_path / "blanket.svg"
    assert main(["draw", blanket, "--view", "schematic", "--out", str(out)]) == 0
    assert ElementTree.parse(out).getroot().tag.endswith("svg")
    told = capsys.readouterr()
    assert (told.out, told.err) == ("", f"wrote {out}\n")


def test_a_view_that_there_is_not_names_those_there_are(blanket: str, capsys: pytest.CaptureFixture[str]) -> None:
    """Status 2, as for all that cannot be read."""
    assert main(["draw", blanket, "--view", "photograph"]) == 2
    assert "Views are chart, fabric, schematic." in capsys.readouterr().err


def test_a_plan_that_cannot_be_made_is_told_with_its_corrections(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Status 1, and nothing is drawn."""
    path = tmp_path / "mix.toml"
    path.write_text(
        BLANKET.replace('"waffle"', '"basket-weave"\nbottom = { component = "garter-rib-border", rows = 12 }')
    )
    assert main(["draw", str(path), "--view", "schematic"]) == 1
    assert "<svg" not in capsys.readouterr().out


def test_a_mirrored_schematic_is_refused_and_a_mirrored_chart_is_drawn(
    blanket: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A schematic has parts and measures alone."""
    assert main(["draw", blanket, "--view", "schematic", "--hand", "left"]) == 2
    assert main(["draw", blanket, "--view", "chart", "--hand", "left"]) == 0
    assert "left-handers who work mirrored" in capsys.readouterr().out
