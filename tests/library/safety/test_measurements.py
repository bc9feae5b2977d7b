"""Who measured what, when, on which yarn, gauge and wash."""

from typing import Any

import pytest

from counterpane.library.safety.safety import assess
from counterpane.library.values import BadInput

GAUGE = {"stitches": 22, "rows": 30}
HOLE: dict[str, Any] = {"what": "hole_mm", "value": 6.9, "by": "M. Tester", "on": "2026-11-20"}
TOLD: dict[str, Any] = {**HOLE, "yarn": "cotton, 435 tex", "gauge": GAUGE, "wash": "machine at 60 °C, twice"}


def spoken(**inputs: Any) -> list[str]:
    """Return the references that speak for a baby of half a year, beside what is always printed."""
    findings = assess({"age_band": "3-12m", **inputs})["findings"]
    return [each["reference"] for each in findings if each["reference"] in ("R11", "R12", "R22")]


def test_a_measurement_is_the_value_of_its_input() -> None:
    """The rules look at it as at a value that was entered."""
    assert spoken(measured=[HOLE]) == spoken(hole_mm=6.9) == ["R11"]


def test_the_stricter_of_several_values_counts() -> None:
    """The largest opening counts, whoever found it; of a cord the thinnest place."""
    assert spoken(hole_mm=4, measured=[HOLE, {**HOLE, "value": 7}]) == ["R12"]
    assert spoken(measured=[HOLE], hole_mm=8) == ["R12"]
    thin = {"what": "cord_thick_mm", "value": 1.4, "by": "M. Tester", "on": "2026-11-20"}
    assert spoken(cord_thick_mm=3, measured=[thin]) == ["R22"]


def test_the_record_repeats_who_measured_what_and_what_is_not_told() -> None:
    """Yarn, gauge and wash are part of the record, and so is their lack."""
    (bare,) = assess({"measured": [HOLE]})["measured"]
    (whole,) = assess({"measured": [TOLD]})["measured"]
    assert bare["not_told"] == ["yarn", "gauge", "wash"]
    assert (whole["by"], whole["on"], whole["yarn"], whole["wash"]) == (
        TOLD["by"],
        TOLD["on"],
        TOLD["yarn"],
        TOLD["wash"],
    )
    assert whole["gauge"] == "22 stitches and 30 rows to 10 cm" and whole["not_told"] == []


def test_an_answer_without_measurements_has_the_agreed_members_alone() -> None:
    """The members beyond the agreed ones come only where they are asked for."""
    assert set(assess({"hole_mm": 4})) == {"findings", "assessed", "not_assessed", "not_applicable"}


@pytest.mark.parametrize(
    ("change", "pointer"),
    [
        ({"by": None}, "/measured/0/by"),
        ({"on": None}, "/measured/0/on"),
        ({"value": None}, "/measured/0/value"),
        ({"what": None}, "/measured/0/what"),
        ({"what": "hole"}, "/measured/0/what"),
        ({"on": "yesterday"}, "/measured/0/on"),
        ({"on": "2026-13-01"}, "/measured/0/on"),
        ({"value": -1}, "/measured/0/value"),
        ({"gauge": {"stitches": 22}}, "/measured/0/gauge"),
        ({"gauge": {"stitches": 0, "rows": 30}}, "/measured/0/gauge/stitches"),
        ({"needle": 4}, "/measured/0/needle"),
    ],
)
def test_a_measurement_that_does_not_tell_is_refused_at_its_place(change: dict[str, Any], pointer: str) -> None:
    """What, how much, who and when must be told."""
    with pytest.raises(BadInput) as refused:
        assess({"measured": [{**HOLE, **change}]})
    assert refused.value.pointer == pointer
    assert refused.value.hint
