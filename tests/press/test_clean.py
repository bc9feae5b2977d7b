"""The pattern of every texture that ships, read back: no name on the page is taken for an instruction.

All textures in all ways are tried by `tests/benchmarks/every_pattern.py`, which takes a minute or two.
"""

from __future__ import annotations

from itertools import product

import pytest

from counterpane.craft.stitches import Terms
from counterpane.library import pages, planning
from counterpane.library.checks import check_text
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


WAYS = tuple(product(("one-piece", "sides-picked-up"), ("us", "uk")))
NOT_TOLD_IN_ITS_BOOK = {"muff-stitch": {"slip-manner-missing"}}
"""Notes that are true of a texture: its source does not say how the stitch is slipped."""


def found(library: Services, body: str, construction: str, terms: Terms) -> set[str]:
    """Return the rules that speak of the pattern of a texture at an invented gauge, read back as a stranger would."""
    request = {
        "construction": construction,
        "parts": {"body": body},
        "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
        "size": {"width_cm": 60, "length_cm": 40},
        "terms": terms,
    }
    text = pages.pattern(library, request, "text")["text"]
    return {each["rule"] for each in check_text(text, library.vocabulary, terms=terms)["findings"]}


@pytest.mark.parametrize(("place", "body"), tuple(enumerate(BODIES)))
def test_the_pattern_of_a_texture_checks_clean(library: Services, place: int, body: str) -> None:
    """Each in one construction and one trade's terms, in turn, with the abbreviations that it uses and no other."""
    construction, terms = WAYS[place % len(WAYS)]
    assert found(library, body, construction, terms) <= NOT_TOLD_IN_ITS_BOOK.get(body, set())


@pytest.mark.parametrize(("construction", "terms"), WAYS)
@pytest.mark.parametrize(
    "body", ["rope-cable", "cable-knitting", "viennoise", "old-shale", "linen-stitch", "stocking-stitch"]
)
def test_a_texture_of_each_kind_checks_clean_in_every_way(
    library: Services, body: str, construction: str, terms: Terms
) -> None:
    """Cables by name and spelt out, loops drawn long, lace, slipped stitches, plain knitting."""
    assert found(library, body, construction, terms) == set()


def test_rows_in_a_sampler_do_not_begin_a_line(library: Services) -> None:
    """Between moss borders of fifteen stitches its rows run over several lines, and none is read as a row."""
    sides = {"component": "seed-stitch-border", "stitches": 15}
    parts = {"body": "reverse-stocking-stitch", "sides": sides, "selvedge": "slipped-selvedge"}
    gauge = {"stitches": 16, "rows": 30, "over_cm": 10}
    request = {"parts": parts, "gauge": gauge, "size": {"named": "infant"}}
    pattern = planning.pattern_of(planning.made(library, request), request, library.known)
    assert not [each for each in recheck(pattern, as_text(pattern), library.vocabulary) if each.startswith("row")]
