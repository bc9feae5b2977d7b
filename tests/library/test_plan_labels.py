"""The finishing and the care of a planned piece, from the yarn of its request."""

from __future__ import annotations

from typing import Any

import pytest

from counterpane.craft.pattern import Pattern
from counterpane.library.patterns import recheck
from counterpane.library.planning import made, pattern_of
from counterpane.press.text import as_text
from counterpane.wiring import open_library

SERVICES = open_library()
REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 70, "length_cm": 90},
}


def written(yarn: Any, terms: str = "us") -> Pattern:
    """Return the pattern of a waffle blanket in this yarn."""
    content = {**REQUEST, "yarn": yarn, "terms": terms}
    plan = made(SERVICES, content)
    return pattern_of(plan, content, SERVICES.vocabulary, SERVICES.sources, SERVICES.facts)


def of(*names: str) -> list[dict[str, object]]:
    """Return fibres of equal shares."""
    return [{"name": name, "pct": 100 / len(names)} for name in names]


@pytest.mark.parametrize(
    ("names", "said", "unsaid"),
    [
        (("cotton",), "shortens when it is washed", "superwash"),
        (("merino",), "Whether the wool is superwash is not known", "acrylic"),
        (("acrylic", "cotton"), "No steam and no iron", "Steam, if"),
        (("bamboo",), "The fibres of the yarn are not known: no steam", "Pin it out"),
    ],
)
def test_the_finishing_is_that_of_the_fibres(names: tuple[str, ...], said: str, unsaid: str) -> None:
    """What is not known of a yarn is said, and nothing that could spoil it is advised."""
    text = " ".join(written({"fibres": of(*names)}).finishing)
    assert said in text and unsaid not in text


def test_a_piece_is_pinned_to_a_range_round_its_size() -> None:
    """Cotton: 70 cm wide at 22 stitches is 154 stitches, 70.0 to 71.4 cm; by hand."""
    text = " ".join(written({"fibres": of("cotton")}).finishing)
    assert "70.0 to 71.4 cm (27.6 to 28.1 in) wide" in text


def test_without_a_yarn_nothing_is_known() -> None:
    """No steam, no care."""
    pattern = written(None)
    assert any("not known: no steam" in step for step in pattern.finishing)
    assert pattern.care.startswith("Not known")


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("names", [("cotton",), ("merino", "silk"), ("acrylic",), ("alpaca", "viscose"), ("bamboo",)])
def test_a_pattern_with_its_finishing_reads_back_as_its_plan(names: tuple[str, ...], terms: str) -> None:
    """No word of the finishing is taken for a row."""
    pattern = written({"fibres": of(*names)}, terms)
    assert recheck(pattern, as_text(pattern), SERVICES.vocabulary) == ()
