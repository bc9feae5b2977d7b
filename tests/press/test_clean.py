"""The pattern of every texture that ships, read back: no name on the page is taken for an instruction.

All textures in all ways are tried by `tests/benchmarks/every_pattern.py`, which takes a minute or two.
"""

from __future__ import annotations

import re
from itertools import product

import pytest

from counterpane.craft.rows.say import WordsKind
from counterpane.craft.stitches import Terms
from counterpane.library.patterns import pages
from counterpane.library.patterns.patterns import recheck
from counterpane.library.plans import planning
from counterpane.library.services import Services
from counterpane.library.texts.checks import check_text
from counterpane.press.text import as_text
from counterpane.seeding import load_components
from counterpane.wiring import open_library

BODIES = tuple(component.slug for component in load_components() if component.kind == "body")


@pytest.fixture(scope="module")
def library() -> Services:
    """Return a library with the starters."""
    return open_library()


WAYS = tuple(product(("one-piece", "sides-picked-up"), ("us", "uk"), ("short", "full")))
NOT_TOLD_IN_ITS_BOOK = {"muff-stitch": {"slip-manner-missing"}}
"""Notes that are true of a texture: its source does not say how the stitch is slipped."""


def found(library: Services, body: str, construction: str, terms: Terms, words: WordsKind) -> set[str]:
    """Return the rules that speak of the pattern of a texture at an invented gauge, read back as a stranger would."""
    request = {
        "construction": construction,
        "parts": {"body": body},
        "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
        "size": {"width_cm": 60, "length_cm": 40},
        "terms": terms,
        "words": words,
    }
    text = pages.pattern(library, request, "text")["text"]
    return {each["rule"] for each in check_text(text, library.vocabulary, terms=terms)["findings"]}


@pytest.mark.parametrize(("place", "body"), tuple(enumerate(BODIES)))
def test_the_pattern_of_a_texture_checks_clean(library: Services, place: int, body: str) -> None:
    """Each in one construction, terms and words, in turn, with the abbreviations that it uses and no other."""
    construction, terms, words = WAYS[place % len(WAYS)]
    assert found(library, body, construction, terms, words) <= NOT_TOLD_IN_ITS_BOOK.get(body, set())


@pytest.mark.parametrize(("construction", "terms", "words"), WAYS)
@pytest.mark.parametrize(
    "body", ["rope-cable", "cable-knitting", "viennoise", "old-shale", "linen-stitch", "stocking-stitch"]
)
def test_a_texture_of_each_kind_checks_clean_in_every_way(
    library: Services, body: str, construction: str, terms: Terms, words: WordsKind
) -> None:
    """Cables by name and spelt out, loops drawn long, lace, slipped stitches, plain knitting."""
    assert found(library, body, construction, terms, words) == set()


def test_rows_in_a_sampler_do_not_begin_a_line(library: Services) -> None:
    """Between moss borders of fifteen stitches its rows run over several lines, and none is read as a row."""
    sides = {"component": "seed-stitch-border", "stitches": 15}
    parts = {"body": "reverse-stocking-stitch", "sides": sides, "selvedge": "slipped-selvedge"}
    gauge = {"stitches": 16, "rows": 30, "over_cm": 10}
    request = {"parts": parts, "gauge": gauge, "size": {"named": "infant"}}
    pattern = planning.pattern_of(planning.made(library, request), request, library.known)
    assert not [each for each in recheck(pattern, as_text(pattern), library.vocabulary) if each.startswith("row")]


@pytest.mark.parametrize("body", ["viennoise", "little-twists", "slipped-rib"])
def test_a_pattern_in_full_words_abbreviates_in_its_pictures_alone(library: Services, body: str) -> None:
    """Its list explains what the key of the chart and the schematic shorten, and signs; nothing else is short."""
    request = {
        "parts": {"body": body},
        "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
        "size": {"width_cm": 60, "length_cm": 40},
        "words": "full",
    }
    text = pages.pattern(library, request, "text")["text"]
    worked, pictures = text.split("\nChart\n---")
    listed = worked.split("\nAbbreviations\n")[1].split("\n\n\n")[0]
    short = re.compile(r"\b(?:sts?|RS|WS|rep|Rep|k\d|p\d|sl|yo|cn)\b")
    assert short.findall(worked.replace(listed, "").split("\nCautions\n")[0]) == []
    assert {name for name in short.findall(pictures.split("\nFinishing\n")[0])} <= set(re.split(r"[\s,]+", listed))
