"""`counterpane class`: one sheet of counts for a class."""

from __future__ import annotations

import json

from cli.conftest import Type
from cli.test_regauge import REQUEST


def test_everybody_has_a_line(typed: Type) -> None:
    """With the name or letter that was given, else A, B and so on."""
    done = typed("class", "-", "--gauge", "22x30", "--gauge", "Ines=20x28", stdin=json.dumps(REQUEST))
    assert done.status == 0
    assert [line.split()[0] for line in done.out.splitlines() if " x " in line] == ["A", "Ines"]


def test_one_who_has_no_plan_ends_it_with_1(typed: Type) -> None:
    """And is named with the reason."""
    done = typed("class", "-", "--gauge", "22x30", "--gauge", "Ines=20x1", stdin=json.dumps(REQUEST))
    assert done.status == 1
    assert "Ines (20 x 1 over 10 cm) has no plan." in " ".join(done.out.split())


def test_more_than_ten_gauges_end_with_2(typed: Type) -> None:
    """One sheet holds ten."""
    gauges = [word for _ in range(11) for word in ("--gauge", "22x30")]
    assert typed("class", "-", *gauges, stdin=json.dumps(REQUEST)).status == 2
