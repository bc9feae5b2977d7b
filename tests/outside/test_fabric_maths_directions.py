"""Direction vectors I: rows seen from the other side, mirrored, worked in the round, and the fabric they leave.

Source: fabric mathematics vectors I, worked independently: examples computed by a script of its own, from the rules
that a row seen from the other side is reversed with its faces swapped, and a mirrored one reversed with its leans
swapped. They run as text, as a person would type them. Text between slashes is one row each.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

import pytest

from counterpane.craft.counts import (
    Progression,
    count,
    work,
)
from counterpane.craft.fabric import from_rs, ridges
from counterpane.craft.measures import Gauge
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.rounds import as_rounds
from counterpane.craft.rows.say import say_row
from counterpane.craft.rows.tree import Node
from counterpane.craft.rows.turning import mirror, rs_view
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace

SIXES = "*k3, p3; rep from * to last 3 sts, k3"


def rows_of(text: str, vocabulary: Vocabulary) -> list[Sequence[Node]]:
    """Read the rows between the slashes."""
    return [read_row(row, vocabulary).parts for row in text.split(" / ")]


def keys(text: str, vocabulary: Vocabulary) -> list[str]:
    """Return the key of every stitch of a row without repeats."""
    return [node.stitch for node in read_row(text, vocabulary).parts for _ in range(node.times)]  # type: ignore[union-attr]


def test_i01_a_ws_row_is_seen_reversed_with_its_faces_swapped(vocabulary: Vocabulary) -> None:
    """I01: k1, p2, k3 on the wrong side shows p3, k2, p1 on the right side."""
    turned = rs_view(read_row("k1, p2, k3", vocabulary).parts, vocabulary)
    assert list("pppkkp") == keys(say_row(turned, vocabulary), vocabulary)


def test_i02_turning_twice_gives_the_row_back(vocabulary: Vocabulary) -> None:
    """I02: turned twice, a lace row is itself."""
    row = read_row("k1, ssk, yo, k2tog, p1", vocabulary).parts
    assert row == rs_view(rs_view(row, vocabulary), vocabulary)


def test_i03_a_decrease_is_turned_to_the_one_that_shows_the_same(vocabulary: Vocabulary) -> None:
    """I03: k1, ssk, yo, k2 from the other side is p2, yo, ssp, p1."""
    turned = rs_view(read_row("k1, ssk, yo, k2", vocabulary).parts, vocabulary)
    assert keys(say_row(turned, vocabulary), vocabulary) == ["p", "p", "yo", "ssp", "p"]


def test_i04_a_mirror_swaps_leans_and_keeps_faces(vocabulary: Vocabulary) -> None:
    """I04: the mirror of k1, k2tog, yo, k2 is k2, yo, ssk, k1."""
    mirrored = mirror(read_row("k1, k2tog, yo, k2", vocabulary).parts, vocabulary)
    assert keys(say_row(mirrored, vocabulary), vocabulary) == ["k", "k", "yo", "ssk", "k"]


def test_i05_a_repeat_is_turned_with_its_number_left_open(vocabulary: Vocabulary) -> None:
    """I05: k1, (p2, k1), k2 turns to p2, (p1, k2), p1: the repeat starts 2 stitches from the right edge."""
    row = read_row("k1, *p2, k1; rep from * to last 2 sts, k2", vocabulary).parts
    assert read_row("p2, *p1, k2; rep from * to last st, p1", vocabulary).parts == rs_view(row, vocabulary)


def test_i06_in_the_round_the_edge_is_dropped(vocabulary: Vocabulary) -> None:
    """I06: a texture over 6n+3 with an edge of 3 is a multiple of 6 in the round, 24 for one."""
    front, back = rows_of(f"{SIXES} / *p3, k3; rep from * to last 3 sts, p3", vocabulary)
    rounds = as_rounds([(tuple(front), "RS"), (tuple(back), "WS")], vocabulary)
    starts = count(rounds, vocabulary, ["round", "round"]).starts
    assert (Progression(6, 0, 6),) == starts
    assert starts[0].admits(24)


def test_i07_a_round_that_does_not_close_is_refused(vocabulary: Vocabulary) -> None:
    """I07: 25 stitches do not close a round with a repeat of 6."""
    (round_one,) = as_rounds([(read_row(SIXES, vocabulary).parts, "RS")], vocabulary)
    misfit = work([round_one], 25, vocabulary)[0].misfit
    assert misfit is not None
    assert misfit.slug == "repeat-does-not-fit"


@pytest.mark.parametrize(("rows", "seen"), [(16, (8, 8)), (15, (7, 8))])
def test_i08_i09_garter_ridges_alternate_between_the_sides(
    rows: int, seen: tuple[int, int], vocabulary: Vocabulary
) -> None:
    """I08, I09: with row 1 on the right side, odd rows make ridges on the wrong side."""
    traced = trace([read_row("knit", vocabulary).parts] * rows, 4, vocabulary)
    assert seen == ridges(from_rs(traced, vocabulary))


def test_i10_a_slipped_edge_is_one_chain_for_two_rows(vocabulary: Vocabulary) -> None:
    """I10: 240 rows leave 120 chains at an edge, and 2 rows at 22/30 are as long as 22/15 stitches are wide."""
    edge = trace([read_row("sl 1 pwise wyif, k to end", vocabulary).parts] * 240, 6, vocabulary)
    chains = [row for row in edge.rows if row.side == "RS" and row.worked[0].stitch == "sl"]
    assert len(chains) == 120
    gauge = Gauge(Fraction(22), Fraction(30))
    assert Fraction(22, 15) == gauge.length(240 // len(chains)) * gauge.per_cm


def test_i11_stocking_stitch_is_knit_all_over_from_the_rs(vocabulary: Vocabulary) -> None:
    """I11: a knit row and a purl row both show knit faces on the right side."""
    traced = trace(rows_of("knit / purl", vocabulary), 4, vocabulary)
    assert from_rs(traced, vocabulary) == (("knit",) * 4,) * 2


@pytest.mark.parametrize(
    ("rs_row", "first"), [("*k1, p1; rep from * to end", "k"), ("*k1, p1; rep from * to last st, k1", "p")]
)
def test_i12_i13_the_ws_row_of_a_rib_begins_by_the_parity_of_the_count(
    rs_row: str, first: str, vocabulary: Vocabulary
) -> None:
    """I12, I13: over an even count the wrong side of a 1x1 rib begins with a knit stitch, over an odd one with purl."""
    ws_row = rs_view(read_row(rs_row, vocabulary).parts, vocabulary)
    traced = trace([ws_row], 8 if first == "k" else 9, vocabulary)
    assert first == traced.rows[0].worked[0].stitch


def test_i14_one_row_over_an_odd_count_makes_seed_stitch(vocabulary: Vocabulary) -> None:
    """I14: k1, *p1, k1 on every row alternates in both directions as seen from the right side."""
    traced = trace(rows_of(" / ".join(["k1, *p1, k1; rep from * to end"] * 2), vocabulary), 3, vocabulary)
    below, above = from_rs(traced, vocabulary)
    assert (below, above) == (("knit", "purl", "knit"), ("purl", "knit", "purl"))
    assert all(one != other for one, other in pairwise(below))
