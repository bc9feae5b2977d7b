"""`counterpane gauge`: swatches in, what they say out."""

from __future__ import annotations

import json
from typing import Any

from cli.conftest import Type
from counterpane.cli import output
from counterpane.library.plans import gauges
from counterpane.seeding.facts import facts_by_name

ASKED: dict[str, Any] = {
    "swatches": [{"in": "waffle", "stitches": 22, "rows": 30, "over_cm": 10}, {"stitches": 5, "rows": 7, "over_in": 1}],
    "size": {"width_cm": 60, "length_cm": 80},
}


def test_a_person_reads_gauge_tolerance_and_worst_case(typed: Type) -> None:
    """With what is not said, and that hands come on top."""
    said = " ".join(typed("gauge", "-", stdin=json.dumps(ASKED)).out.split())
    assert "22 stitches and 30 rows over 10 cm" in said
    assert "whether it was washed was not said" in said
    assert "width 60.00 1.05 58.73 to 61.30" in said
    assert "from memory" in said


def test_the_json_is_what_the_api_answers(typed: Type) -> None:
    """The same of the same swatches."""
    done = typed("gauge", "-", "--json", stdin=json.dumps(ASKED))
    assert json.loads(done.out) == json.loads(output.as_json(gauges.read(ASKED, facts_by_name())))


def test_what_is_no_swatch_ends_with_2_and_its_place(typed: Type) -> None:
    """Nothing goes to standard output."""
    done = typed("gauge", "-", stdin='{"swatches": [{"stitches": 0, "rows": 3, "over_cm": 1}]}')
    assert (done.status, done.out) == (2, "")
    assert "/swatches/0/stitches" in done.err
