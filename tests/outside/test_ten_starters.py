"""The ten starters of common practice and their worked figures. Common practice, no source; checked by hand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

import pytest

from counterpane.craft.component import Component, Measure, derive
from counterpane.craft.counts import Progression
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import TracedRow, trace

COUNTS = [
    ("garter-border", [Progression(1, 0, 1)]),
    ("seed-stitch-border", [Progression(2, 1, 3), Progression(2, 0, 2)]),
    ("seed-stitch", [Progression(2, 1, 3), Progression(2, 0, 2)]),
    ("moss-stitch", [Progression(2, 1, 3), Progression(2, 0, 2)]),
    ("basket-weave", [Progression(8, 4, 12)]),
    ("waffle", [Progression(3, 1, 4)]),
]


def worked(component: Component, stitches: int, vocabulary: Vocabulary) -> tuple[TracedRow, ...]:
    """Work one vertical repeat of a starter loop by loop."""
    version = derive(component, vocabulary).version_for(stitches)
    assert version is not None
    rows, sides = [row.parts for row in version.rows], [row.side for row in version.rows]
    return trace(rows, stitches, vocabulary, sides).rows


def faces(row: TracedRow) -> str:
    """Return the faces of a row of knit and purl as the right side shows them, right edge first."""
    keys = "".join(stitch.stitch for stitch in row.worked)
    return keys if row.side == "RS" else keys[::-1].translate(str.maketrans("kp", "pk"))


@pytest.mark.parametrize(("slug", "expected"), COUNTS)
def test_a_starter_takes_the_counts_of_its_rows(
    slug: str, expected: list[Progression], starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Multiple, remainder and least count of each version follow from its rows."""
    found = [version.starts for version in derive(starters[slug], vocabulary).versions]

    assert found == [(progression,) for progression in expected]


@pytest.mark.parametrize(
    ("slug", "least", "turn", "faces_row_1"),
    [("long-tail", 1, True, "bumps"), ("cable-cast-on", 2, False, "corded side")],
)
def test_a_cast_on_says_what_faces_row_1(
    slug: str, least: int, turn: bool, faces_row_1: str, starters: Mapping[str, Component]
) -> None:
    """After a long-tail cast-on one turns and the bumps face; after a cable cast-on one does not."""
    operation = starters[slug].operation

    assert operation is not None
    assert (operation.least, operation.turn, operation.faces_row_1) == (least, turn, faces_row_1)


def test_eighteen_rows_of_garter_are_nine_ridges_of_154(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """18 rows over 154 stitches are 2,772 stitches; every second row shows a ridge on the right side."""
    rows = worked(starters["garter-border"], 154, vocabulary) * 9

    assert sum(len(row.worked) for row in rows) == 2_772
    assert sum(faces(row) == "p" * 154 for row in rows) == 9


def test_basket_weave_shows_as_many_knit_as_purl_faces(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """At 20 stitches the twelve rows show 120 knit and 120 purl faces."""
    shown = Counter("".join(faces(row) for row in worked(starters["basket-weave"], 20, vocabulary)))

    assert shown == {"k": 120, "p": 120}


@pytest.mark.parametrize(
    ("slug", "stitches", "shift"), [("seed-stitch", 153, 1), ("seed-stitch", 154, 1), ("moss-stitch", 7, 2)]
)
def test_seed_shifts_every_row_and_moss_every_second_row(
    slug: str, stitches: int, shift: int, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """UK moss (US seed) changes places on every row, UK double moss (US moss) after two."""
    rows = [faces(row) for row in worked(starters[slug], stitches, vocabulary)]
    opposite = rows[0].translate(str.maketrans("kp", "pk"))

    assert all("kk" not in row and "pp" not in row for row in rows)
    assert rows == [rows[0]] * shift + [opposite] * shift


def test_a_moss_side_border_of_five_is_the_same_row_again(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Over 5 stitches every row is k1, p1, k1, p1, k1."""
    rows = worked(starters["seed-stitch-border"], 5, vocabulary)

    assert ["".join(stitch.stitch for stitch in row.worked) for row in rows] == ["kpkpk", "kpkpk"]


def test_the_chain_edge_makes_one_chain_for_two_rows_on_both_edges(
    starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """240 rows make 120 chains on either edge: the first stitch of each row is slipped, and no other."""
    rows = worked(starters["slipped-selvedge"], 20, vocabulary) * 120
    edges = Counter(row.side for row in rows if row.worked[0].stitch == "sl")

    assert len(rows) == 240
    assert edges == {"RS": 120, "WS": 120}
    assert all(stitch.stitch != "sl" for row in rows for stitch in row.worked[1:])


def test_bind_offs_leave_one_end_and_the_stretchy_one_takes_twice_the_yarn(starters: Mapping[str, Component]) -> None:
    """Of 154 stitches none is left; the stretchy bind-off takes about twice the yarn of the plain one."""
    plain, stretchy = starters["plain-bind-off"], starters["stretchy-bind-off"]

    assert [component.examples[0].after for component in (plain, stretchy)] == [(0,), (0,)]
    assert plain.safety.loose_yarn == stretchy.safety.loose_yarn == Measure("1", "end")
    assert plain.operation is not None
    assert stretchy.operation is not None
    assert (plain.operation.loops_per_stitch, stretchy.operation.loops_per_stitch) == ("1", "2")
