"""The safety record of a plan as a person reads it."""

from __future__ import annotations

from collections.abc import Callable
from io import StringIO
from pathlib import Path
from typing import Any

import pytest
from rich.console import Console

from counterpane.cli.showing.safety import draw_safety, ranges

Typing = Callable[..., Any]
PLAN = """
[parts]
body = "garter"
[gauge]
stitches = 22
rows = 44
over_cm = 10
[size]
width_cm = 70
length_cm = 90
[for]
age_months = [0, 12]
use = "sleep"
markets = ["UK", "US"]
"""
LIST = """
name = "Ward 3"
dated = "2026-10-01"
source = "leaflet of the ward"
[[items]]
says = "No holes over 5 mm."
input = "hole_mm"
at_most = 5
[[items]]
says = "At least 60 cm wide."
input = "width_cm"
at_least = 60
"""
"""Invented."""


def test_a_record_reads_by_age_use_and_market_and_from_stop_to_note(typed: Typing, tmp_path: Path) -> None:
    """For whom it is read comes first, then what stops, warns and is noted, then what nobody assessed."""
    (tmp_path / "plan.toml").write_text(PLAN, encoding="utf-8")
    shown = typed("plan", str(tmp_path / "plan.toml")).out
    order = [
        "Read for: age, 0 to 3 months; use, sleep; markets, UK, US.",
        "Stop",
        "Warn",
        "Note",
        "Where sources differ",
    ]
    places = [shown.index(f"\n{words}\n") for words in order]
    assert places == sorted(places)
    assert shown.index("Not assessed: R06") > places[-1]
    assert "R06: layers" in shown


def test_nothing_in_a_record_clears_a_blanket(typed: Typing, tmp_path: Path) -> None:
    """No word of clearance and no tick, and what is not assessed is called no pass."""
    (tmp_path / "plan.toml").write_text(PLAN, encoding="utf-8")
    shown = typed("plan", str(tmp_path / "plan.toml")).out.casefold()
    record = shown[shown.index("\nsafety\n") + len("\nsafety\n") :]
    assert not [word for word in ("safe", "approved", "compliant", "✓", "✔", "all clear") if word in record]
    assert "never a pass" in record


def test_a_plan_is_held_against_a_list_in_a_file(typed: Typing, tmp_path: Path) -> None:
    """Each item of the ward's list comes with its verdict; what is not known is not assessed."""
    (tmp_path / "plan.toml").write_text(PLAN, encoding="utf-8")
    (tmp_path / "ward.toml").write_text(LIST, encoding="utf-8")
    shown = typed("plan", str(tmp_path / "plan.toml"), "--profile", str(tmp_path / "ward.toml")).out
    assert "Held against: Ward 3, 2026-10-01" in shown
    assert "not assessed: No holes over 5 mm. (hole_mm is not known)" in shown
    assert "agrees: At least 60 cm wide." in shown


def test_a_plan_is_held_against_a_list_that_ships(typed: Typing, tmp_path: Path) -> None:
    """The slug of a list is enough, also for the pattern."""
    (tmp_path / "plan.toml").write_text(PLAN, encoding="utf-8")
    for command in (["plan"], ["write", "--as", "text"]):
        shown = typed(*command, str(tmp_path / "plan.toml"), "--profile", "neonatal-unit-oxford-relayed").out
        assert "A neonatal unit in Oxford, as relayed, 2026-11-26" in shown


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (LIST.replace('dated = "2026-10-01"', ""), "dated"),
        (LIST.replace("at_most", "at_mots"), "at_mots"),
        (LIST.replace("2026-10-01", "2026-13-01"), "no day"),
    ],
)
def test_a_list_that_does_not_hold_is_refused(typed: Typing, tmp_path: Path, text: str, said: str) -> None:
    """A fault in a list names its place, and never ends in a traceback."""
    (tmp_path / "plan.toml").write_text(PLAN, encoding="utf-8")
    (tmp_path / "ward.toml").write_text(text, encoding="utf-8")
    ended = typed("plan", str(tmp_path / "plan.toml"), "--profile", str(tmp_path / "ward.toml"))
    assert ended.status == 2
    assert said in ended.err and "Traceback" not in ended.err


@pytest.mark.parametrize(
    ("named", "status", "said"), [("nobody", 2, "No list is called"), ("no.toml", 3, "no such file")]
)
def test_a_list_that_is_not_there_is_missed(typed: Typing, tmp_path: Path, named: str, status: int, said: str) -> None:
    """A slug that is not known is refused, a file that is not there is missing."""
    (tmp_path / "plan.toml").write_text(PLAN, encoding="utf-8")
    ended = typed("plan", str(tmp_path / "plan.toml"), "--profile", named)
    assert (ended.status, said in ended.err) == (status, True)


def drawn(**members: Any) -> str:
    """Return how a record reads of which only these members are told."""
    empty: dict[str, Any] = {name: [] for name in ("findings", "conflicts", "measured", "assessed", "not_applicable")}
    nobody = {"age_band": None, "use": None, "markets": None, "advice": None}
    rest = {"read_for": nobody, "profile": None, "estimates": {}, "not_assessed": [], "asked_for": {}}
    text = StringIO()
    draw_safety(Console(file=text, width=100), {**empty, **rest, **members})
    return text.getvalue()


def test_a_measurement_says_who_when_and_on_what() -> None:
    """What is not told is named, and one of another fabric counts for nothing."""
    told = {"what": "hole_mm", "value": 4.5, "by": "M. Tester", "on": "2026-11-20", "yarn": "cotton", "gauge": None}
    shown = drawn(measured=[{**told, "wash": None, "not_told": ["gauge", "wash"], "counts": False}])
    assert "hole_mm 4.5: M. Tester, 2026-11-20; cotton. Not told: gauge, wash." in shown
    assert "At another gauge" in shown


def test_an_unknown_child_is_said_to_be_unknown() -> None:
    """Nothing is taken for granted where nobody said for whom."""
    assert "age, not said; use, not said; markets, not said." in drawn()


def test_neighbours_are_drawn_together() -> None:
    """A run of references is told by its ends."""
    assert ranges(["R05", "R03", "R04", "R09"]) == ["R03–R05", "R09"]
