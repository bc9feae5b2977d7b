"""What a schema refuses is said with its place, and with the nearest name where one was misspelt."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane_schema.faults import faults_of
from counterpane_schema.plan import PlanRequest

REQUEST: dict[str, Any] = {
    "parts": {"body": "garter"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 70, "length_cm": 90},
}


def test_a_request_that_fits_has_no_faults():
    """Nothing is said where nothing is wrong."""
    assert faults_of(PlanRequest(), REQUEST) == ()


@pytest.mark.parametrize(
    ("change", "pointer", "hint"),
    [
        ({"guage": 1}, "/guage", "Probably meant: gauge."),
        ({"size": {"witdh_cm": 1, "length_cm": 90}}, "/size/witdh_cm", "Probably meant: width_cm."),
        ({"gauge": [{"stiches": 22, "rows": 30, "over_cm": 10}]}, "/gauge/0/stiches", "Probably meant: stitches."),
        ({"parts": {"body": {"component": "garter", "colour": 1}}}, "/parts/body/colour", "Known here: component"),
        ({"size": {"width": 60, "length_cm": 90}}, "/size/width", "Probably meant: width_cm or width_in."),
        ({"size~/": 1}, "/size~0~1", "Probably meant: size."),
    ],
)
def test_a_member_that_is_not_known_is_set_beside_the_nearest_that_is(change: dict[str, Any], pointer: str, hint: str):
    """The names that may stand at that very place are the ones compared."""
    found = {fault.pointer: fault for fault in faults_of(PlanRequest(), REQUEST | change)}
    assert found[pointer].hint.startswith(hint)
