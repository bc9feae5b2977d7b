"""The pattern of every texture that ships, read back: no name on the page is taken for an instruction.

What the list of abbreviations holds is not looked at here.
"""

from __future__ import annotations

import pytest

from counterpane.library import planning
from counterpane.library.patterns import recheck
from counterpane.library.services import Services
from counterpane.press.text import as_text
from counterpane.seeding import load_components
from counterpane.wiring import open_library

BODIES = tuple(component.slug for component in load_components() if component.kind == "body")


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


@pytest.mark.parametrize("body", BODIES)
def test_the_pattern_of_a_texture_checks_clean(library: Services, body: str) -> None:
    """Between garter borders and a slipped selvedge, at an invented gauge."""
    request = {"parts": {"body": body}, "gauge": {"stitches": 22, "rows": 30, "over_cm": 10}, "size": {"named": "pram"}}
    pattern = planning.pattern_of(planning.made(library, request), request, library.known)
    found = recheck(pattern, as_text(pattern), library.vocabulary)
    assert [each for each in found if ": abbreviation-" not in each] == []


def test_rows_in_a_sampler_do_not_begin_a_line(library: Services) -> None:
    """Between moss borders of fifteen stitches its rows run over several lines, and none is read as a row."""
    sides = {"component": "seed-stitch-border", "stitches": 15}
    parts = {"body": "reverse-stocking-stitch", "sides": sides, "selvedge": "slipped-selvedge"}
    gauge = {"stitches": 16, "rows": 30, "over_cm": 10}
    request = {"parts": parts, "gauge": gauge, "size": {"named": "infant"}}
    pattern = planning.pattern_of(planning.made(library, request), request, library.known)
    assert not [each for each in recheck(pattern, as_text(pattern), library.vocabulary) if each.startswith("row")]
