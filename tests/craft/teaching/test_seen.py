"""What is seen, by two roads and in words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.fabric import ridges as traced_ridges
from counterpane.craft.pattern.ridges import ridges
from counterpane.craft.teaching.seen import after_row, columns, faces, shown
from counterpane.craft.teaching.timing import sessions
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


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Row 1 (RS): *k3, p3; rep from * to last 3 sts, k3.\nRow 2: *p3, k3; rep from * to last 3 sts, p3.", "each 3"),
        ("Row 1 (RS): k1, p3, k3, p2.\nRow 2: k2, p3, k3, p1.", "1 and 3"),
        ("Row 1 (RS): k3, p6.\nRow 2: k6, p3.", "3"),
    ],
)
def test_a_rib_tells_its_columns_when_four_rows_stand(text: str, told: str):
    """Two columns of three, one of one and one of three, one of three: from the right edge, in the words of a class."""
    sts = 9
    part = shown(section("body", "rib", text, first_row=1, rows=4, sts=sts), vocabulary())
    many = "1 column" if told == "3" else "2 columns"
    said = f"Knit stitches stand above one another from the first row of this part to its last in {many}, {told} wide."
    assert said in after_row(part, 4, "right")


def test_very_many_changes_of_face_are_told_in_all():
    """Sixty-three stitches by turns: nobody counts along a list of so many."""
    assert faces(("knit", "open", "purl") * 21) == "21 knit, 21 yarn over, 21 purl in all"


def test_no_steps_make_no_session():
    """There is nothing to divide."""
    assert sessions((), 90) == ()
