"""What is seen, by two roads and in words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.fabric import ridges as traced_ridges
from counterpane.craft.pattern.ridges import ridges
from counterpane.craft.teaching.seen import columns, faces, shown
from craft.pattern.plans import section, vocabulary
from craft.teaching.samples import GARTER

LOOKS = st.lists(st.sampled_from(("knit", "purl", "open", "slipped")), min_size=1, max_size=40)


@given(st.integers(1, 30), st.booleans())
def test_ridges_of_garter_traced_are_those_in_closed_form(rows: int, begins_on_ws: bool):
    """Row by row from the loops, and by halving the rows."""
    part = section("bottom", "garter-border", GARTER, first_row=2 if begins_on_ws else 1, rows=rows, sts=5)
    seen = shown(part, vocabulary())
    assert traced_ridges(seen.inside(rows))[0] == ridges(rows, part.first_row_side)


@given(LOOKS)
def test_the_faces_told_are_all_the_stitches(course: list[str]):
    """With what repeats in brackets multiplied out again."""
    told = faces(tuple(course))  # type: ignore[arg-type]
    counted = 0
    for piece in told.replace("[", "\n[").split("\n"):
        inside, _, rest = piece.partition("]") if piece.startswith("[") else ("", "", piece)
        words = rest.split(",", 1) if inside else [rest]
        if inside:
            counted += sum(_numbers(inside.removeprefix("["))) * int(words.pop(0).split()[0])
        counted += sum(_numbers(words[0])) if words else 0
    assert counted == len(course)


def _numbers(text: str) -> list[int]:
    return [int(part.split()[0]) for part in text.split(",") if part.strip()]


@pytest.mark.parametrize(
    ("runs", "told"),
    [
        ("k" * 6 + "pkk" * 5 + "p" + "k" * 6, "6 knit, [1 purl, 2 knit] 5 times, 1 purl, 6 knit"),
        ("kpkpkp", "[1 knit, 1 purl] 3 times"),
        ("kkk", "3 knit"),
    ],
)
def test_a_repeat_stands_in_brackets(runs: str, told: str):
    """As rows written out for a count are printed."""
    assert faces(tuple("knit" if each == "k" else "purl" for each in runs)) == told


def test_columns_are_knit_from_the_first_row_to_the_last():
    """Three by three rib over nine stitches: two columns of three."""
    course = ("knit",) * 3 + ("purl",) * 3 + ("knit",) * 3
    assert columns((course, course)) == (3, 3)
    assert columns((course, course[1:])) == ()
