"""The worked boundary tests of the project's safety notes, part 11(a), through the answer that everybody gets.

Hole 4.9 silent, 5.0 and 6.9 warn, 7.0 stop; cord 220 warn, 220.1 stop; loop 380 silent, 380.1 stop; float 10 silent, 25
warn, 25.1 stop; pull 89.9 N stop, 90 N warn for a button of 7 mm; decoration 7.0 % fine, 7.1 % stop. The limits behind
them: CEN/TR 13387:2004 by way of ANEC, 2012; EN 71-1:2005+A8:2009 cl. 5.4 and 8.4, second-hand; a retailer's standard
for nursery goods, second-hand; 16 CFR 1501.4; Regulation (EU) 1007/2011 Art. 7.
"""

from typing import Any

import pytest

from counterpane.library.safety.safety import assess

COTTON = {"name": "cotton", "pct": 100}


def button(pull: float) -> list[dict[str, Any]]:
    """Return a button of 7 mm that held so many newtons."""
    return [{"kind": "button", "largest_mm": 7, "pull_n": pull}]


WORKED: list[tuple[dict[str, Any], dict[str, str]]] = [
    ({"age_band": "3-12m", "hole_mm": 4.9}, {}),
    ({"age_band": "3-12m", "hole_mm": 5.0}, {"R11": "warn"}),
    ({"age_band": "3-12m", "hole_mm": 6.9}, {"R11": "warn"}),
    ({"age_band": "3-12m", "hole_mm": 7.0}, {"R12": "stop"}),
    ({"age_band": "12-24m", "cord_free_mm": 220}, {"R21": "warn"}),
    ({"age_band": "12-24m", "cord_free_mm": 220.1}, {"R20": "stop"}),
    ({"age_band": "12-24m", "loop_perimeter_mm": 380}, {}),
    ({"age_band": "12-24m", "loop_perimeter_mm": 380.1}, {"R19": "stop"}),
    ({"age_band": "12-24m", "float_mm": 10}, {}),
    ({"age_band": "12-24m", "float_mm": 25}, {"R15": "warn"}),
    ({"age_band": "12-24m", "float_mm": 25.1}, {"R15": "stop"}),
    ({"age_band": "12-24m", "attachments": button(89.9)}, {"R26": "stop"}),
    ({"age_band": "12-24m", "attachments": button(90)}, {"R27": "warn"}),
    ({"age_band": "36m+", "fibres": [COTTON], "decoration_pct": 7.0}, {}),
    ({"age_band": "36m+", "fibres": [COTTON], "decoration_pct": 7.1}, {"R38": "stop"}),
]
PRINTED_ALWAYS = {"R01", "R02", "R36", "R43", "R44", "R46"}


@pytest.mark.parametrize(("inputs", "said"), WORKED, ids=str)
def test_a_worked_boundary(inputs: dict[str, Any], said: dict[str, str]) -> None:
    """On each side of each limit exactly what the notes say is said, beside what is always printed."""
    spoken = {each["reference"]: each["severity"] for each in assess(inputs)["findings"]}
    assert {name: severity for name, severity in spoken.items() if name not in PRINTED_ALWAYS} == said


def test_half_a_loop_opens_as_the_notes_reckon() -> None:
    """R45 of the same table: about 5.4 mm at 12 stitches to 10 cm and 8.2 mm at 8."""
    for gauge, opening in ((12, "5.4 mm"), (8, "8.2 mm")):
        findings = assess({"age_band": "12-24m", "gauge_sts_10cm": gauge})["findings"]
        assert opening in next(each["message"] for each in findings if each["reference"] == "R45")


@pytest.mark.parametrize(("width", "cot"), [(79.9, "60 cm"), (89.9, "70 cm"), (90.9, "71 cm")])
def test_the_widths_of_the_notes_for_tucking_in(width: float, cot: str) -> None:
    """R09 of the same table: 80 cm for a cot of 60, 90 for one of 70, 91 for a crib of 71."""
    mattress = {"mattress_width_cm": int(cot.removesuffix(" cm"))}
    asked = {"age_band": "12-24m", "use": "sleep", "width_cm": width}
    told = [each["message"] for each in assess(asked)["findings"] if each["reference"] == "R09"]
    assert any(cot in message for message in told)
    assert "R09" in assess({**asked, **mattress, "width_cm": width + 0.1})["assessed"]
    assert "R09" not in assess({**asked, **mattress})["assessed"]
