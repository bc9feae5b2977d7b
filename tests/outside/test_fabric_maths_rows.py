"""Row vectors A against the reader and both roads.

Source: fabric mathematics vectors A, worked independently: examples computed by a script of its own, from the
equations of row maps (a repeat of b stitches divides what the rest leaves; terms add; chains by congruences). They run
as text, as a person would type them. Text between slashes is one row each.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import pytest

from counterpane.craft.counts import (
    Chain,
    Progression,
    can_repeat,
    count,
    cuts,
    judge,
    passes_from,
    passes_until,
    ways,
    work,
)
from counterpane.craft.fabric import on_double_yarn_over
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.tree import Node
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from counterpane.library.texts.checks import check_text

RIB_OF_FOUR = "k1, ssk, *k2, p2; rep from * to last 3 sts, k2tog, k1"
FAGGOT = "k1, *yo, k2tog; rep from * to last st, k1 / purl"
SIXES = "*k3, p3; rep from * to last 3 sts, k3"

MULTIPLES = {
    "A01": ("k2, *p3, k2; rep from * to end", (5, 2, 7), 0),
    "A02": (SIXES, (6, 3, 9), 0),
    "A03": ("knit", (1, 0, 1), 0),
    "A04": ("k to last 3 sts, sl3", (1, 0, 3), 0),
    "A05": (FAGGOT, (2, 0, 4), 0),
    "A06": (
        "k1, *yo, k1; rep from * to last st, k1 / purl / k1, *k2tog; rep from * to last st, k1 / purl",
        (1, 0, 3),
        0,
    ),
    "A07": (
        "*k2, (yo, k1) 3 times; rep from * to last 2 sts, k2 / purl"
        " / *k2, (k2tog) 3 times; rep from * to last 2 sts, k2",
        (5, 2, 7),
        0,
    ),
    "A08": (
        "*(k1, yo, k1) in next st, p1; rep from * to end / *k1, p3; rep from * to end / *k3, p1; rep from * to end"
        " / *k3tog, p1; rep from * to end",
        (2, 0, 2),
        0,
    ),
    "A09": ("*k4, p2; rep from * to last 4 sts, k4 / *p1, k1; rep from * to end", (6, 4, 10), 0),
    "A10": ("*k4, p3; rep from * to last 4 sts, k4 / *p1, k1; rep from * to end", (14, 4, 18), 0),
    "A13": ("k1, yo, k to last st, yo, k1 / purl", (1, 0, 2), 2),
    "A14": (RIB_OF_FOUR, (4, 2, 10), -2),
    "A17": ("bind off 3, k to end / bind off 3, p to end", (1, 0, 7), -6),
    "A18": ("*k1, p1; rep from * 4 times more, k to end", (1, 0, 10), 0),
    "A19": ("*k2, p2; rep from * to last 10 sts, *k3, p2; rep from * to end", (4, 2, 14), 0),
    "A39": ("*k1, (p1, (k1, p1) 2 times) 3 times; rep from * to last 2 sts, k2", (16, 2, 18), 0),
    "A44": ("*k13; rep from * to end / *k11; rep from * to end", (143, 0, 143), 0),
}
RATIOS = {
    "A12": ("*yo, k1; rep from * to end / *k3, p1; rep from * to last 2 sts, k2", (2, 1, 3), Fraction(2)),
    "A45": ("*kfb; rep from * to end", (1, 0, 1), Fraction(2)),
    "A46": (" / ".join(["*k1, kfb; rep from * to end"] * 3), (8, 0, 8), Fraction(27, 8)),
}
REFUSED = {
    "A11": ("*k3, p1; rep from * to end / *k5, p1; rep from * to last st, k1", "rows-do-not-join"),
    "A16": ("k24 / *k3, p2; rep from * to end", "rows-do-not-join"),
    "A20": ("*k2, p2; rep from * to last 11 sts, *k3, p2; rep from * to end", "repeat-does-not-fit"),
    "A21": ("*k2, p2; rep from *, *k3, p2; rep from *", "two-open-repeats"),
    "A23": ("k2, *k2tog, yo; rep from * to end, k2", "row-runs-short"),
    "A24": ("*yo; rep from * to last 2 sts, k2", "repeat-uses-nothing"),
    "A25": ("(k2tog, k1) in next st", "group-uses-several"),
    "A26": ("k2, p2; rep from * to end", "repeat-without-start"),
    "A27": ("k2, *p2, k2", "repeat-without-end"),
    "A28": ("(k1, p1) 3 times, (k2", "bracket-not-closed"),
    "A31": ("*k3; rep from * to last 5 sts, k4", "row-leaves-stitches"),
    "A38": ("(k to last 3 sts) 2 times", "repeat-inside-repeat"),
}


def rows_of(text: str, vocabulary: Vocabulary) -> list[Sequence[Node]]:
    """Read the rows between the slashes."""
    return [read_row(row, vocabulary).parts for row in text.split(" / ")]


def chain_of(text: str, vocabulary: Vocabulary) -> Chain:
    """Derive the counts of the rows between the slashes."""
    return count(rows_of(text, vocabulary), vocabulary)


def simulated(rows: Sequence[Sequence[Node]], vocabulary: Vocabulary, before: int) -> int | None:
    """Return the stitches after the last row as the simulation leaves them."""
    return trace(rows, before, vocabulary).steps[-1].after


@pytest.mark.parametrize("vector", MULTIPLES)
def test_a_multiple_follows_from_the_rows(vector: str, vocabulary: Vocabulary) -> None:
    """The rows give the multiple, the least count and the drift that were worked out for them."""
    text, (of, plus, least), drift = MULTIPLES[vector]
    chain = chain_of(text, vocabulary)
    assert (Progression(of, plus, least),) == chain.starts
    assert drift == chain.drift


@pytest.mark.parametrize("vector", MULTIPLES)
def test_the_simulation_works_the_same_counts(vector: str, vocabulary: Vocabulary) -> None:
    """From no stitch to two repeats above the least, exactly the counts of the multiple come out, with the drift."""
    text, (of, plus, least), drift = MULTIPLES[vector]
    rows = rows_of(text, vocabulary)
    for before in range(1, min(least + 2 * of, 160)):
        works = before >= least and before % of == plus % of
        assert (before + drift if works else None) == simulated(rows, vocabulary, before)


@pytest.mark.parametrize("vector", RATIOS)
def test_a_pass_that_grows_by_a_ratio_says_so(vector: str, vocabulary: Vocabulary) -> None:
    """Where the gain depends on the count, the ratio is told instead of a drift."""
    text, (of, plus, least), ratio = RATIOS[vector]
    chain = chain_of(text, vocabulary)
    assert (Progression(of, plus, least),) == chain.starts
    assert (None, ratio) == (chain.drift, chain.ratio)
    assert least * ratio == simulated(rows_of(text, vocabulary), vocabulary, least)


@pytest.mark.parametrize("vector", REFUSED)
def test_rows_that_no_count_allows_are_refused_by_their_fault(vector: str, vocabulary: Vocabulary) -> None:
    """The checker answers with the one error that the rows were made for, and no multiple."""
    text, slug = REFUSED[vector]
    labelled = "\n".join(f"Row {number}: {row}." for number, row in enumerate(text.split(" / "), start=1))
    answer = check_text(labelled, vocabulary)
    assert [slug] == [finding["rule"] for finding in answer["findings"] if finding["severity"] == "error"]
    assert (answer["multiple"], answer["fixed"]) == (None, None)


def test_a15_a_fixed_row_fixes_the_whole(vocabulary: Vocabulary) -> None:
    """A15: 24 knit stitches under a repeat of 4 leave the one count 24."""
    chain = chain_of("k24 / *k2, p2; rep from * to end", vocabulary)
    assert (Progression.only(24),) == chain.starts
    assert chain.drift == 0


def test_a22_two_open_repeats_have_three_ways_over_49(vocabulary: Vocabulary) -> None:
    """A22: 4r + 5q = 49 has the solutions (1, 9), (6, 5) and (11, 1)."""
    row = read_row("*k2, p2; rep from *, *k3, p2; rep from *", vocabulary).parts
    assert ways(row, 49, vocabulary) == ((1, 9), (6, 5), (11, 1))


def test_a29_a_misfit_tells_the_nearest_counts(vocabulary: Vocabulary) -> None:
    """A29: 6n+3 over 20 stitches does not fit; 15 and 21 do."""
    misfit = work(rows_of(SIXES, vocabulary), 20, vocabulary)[0].misfit
    assert misfit is not None
    assert (misfit.slug, misfit.below, misfit.above) == ("repeat-does-not-fit", 15, 21)


def test_a30_a_count_below_the_least_runs_short(vocabulary: Vocabulary) -> None:
    """A30: the same row over 8 runs short; it takes 9 at least."""
    misfit = work(rows_of(SIXES, vocabulary), 8, vocabulary)[0].misfit
    assert misfit is not None
    assert (misfit.slug, misfit.needs) == ("row-runs-short", 9)


def test_a32_a_thousand_million_stitches_cost_no_more(vocabulary: Vocabulary) -> None:
    """A32: the faggot of A05 over 10^9 + 2 stitches leaves as many."""
    assert work(rows_of(FAGGOT, vocabulary), 10**9 + 2, vocabulary)[-1].after == 1_000_000_002


def test_a33_a_loss_out_of_step_allows_one_pass(vocabulary: Vocabulary) -> None:
    """A33: 4n+2 from 10 on, losing 2 a pass, can be worked once from 50."""
    chain = chain_of(RIB_OF_FOUR, vocabulary)
    assert passes_from(chain, 50) == 1
    assert not can_repeat(chain)


def test_a34_a_loss_in_step_ends_at_the_least_count(vocabulary: Vocabulary) -> None:
    """A34: 4n+2 from 10 on, losing 4 a pass, can be worked 11 times from 50."""
    chain = chain_of("k3tog, *k2, p2; rep from * to last 3 sts, k3tog", vocabulary)
    assert ((Progression(4, 2, 10),), -4) == (chain.starts, chain.drift)
    assert passes_from(chain, 50) == 11


def test_a35_growth_goes_on_for_ever(vocabulary: Vocabulary) -> None:
    """A35: any count from 2 on, gaining 2 a pass, can be worked without end."""
    chain = chain_of("k1, yo, k to last st, yo, k1 / purl", vocabulary)
    assert passes_from(chain, 2) is None
    assert can_repeat(chain)


def test_a36_a_repeat_may_stop_between_its_stitches_only(vocabulary: Vocabulary) -> None:
    """A36: k2, k2tog, yo, k1 may be cut after 0, 1, 2 or 4 stitches; 3 would split the k2tog."""
    assert cuts(read_row("k2, k2tog, yo, k1", vocabulary).parts, vocabulary) == (0, 1, 2, 4)


def test_a37_stitches_are_counted_between_markers(vocabulary: Vocabulary) -> None:
    """A37: two segments of 20 grow by 2 in each of 10 rows, to 1, 40, 1, 40, 1 and 83 in all."""
    set_up = "k1, pm, k20, pm, k1, pm, k20, pm, k1"
    grow = "k1, sl m, m1, k to marker, m1, sl m, k1, sl m, m1, k to marker, m1, sl m, k1"
    rows = rows_of(" / ".join([set_up, *[grow] * 10]), vocabulary)
    for last in (work(rows, 43, vocabulary)[-1], trace(rows, 43, vocabulary).steps[-1]):
        assert (last.segments, last.after) == ((1, 40, 1, 40, 1), 83)


@pytest.mark.parametrize(
    ("stated", "verdict"),
    [((6, 3), "right"), ((6, 9), "right"), ((12, 3), "wasteful"), ((6, 2), "wrong"), ((3, 0), "wrong")],
)
def test_a40_a_stated_multiple_is_judged_by_the_derived_one(
    stated: tuple[int, int], verdict: str, vocabulary: Vocabulary
) -> None:
    """A40: what is promised must lie inside what works; a larger multiple is true and wasteful."""
    assert verdict == judge(*stated, chain_of(SIXES, vocabulary).starts[0])


@pytest.mark.parametrize(("start", "passes"), [(41, 19), (42, None)])
def test_a41_until_three_remain(start: int, passes: int | None, vocabulary: Vocabulary) -> None:
    """A41: losing 2 a pass, 41 stitches reach 3 after 19 passes; 42 never do."""
    assert passes == passes_until(chain_of("k1, ssk, k to end / k1, k2tog, k to end", vocabulary), start, 3)


@pytest.mark.parametrize(("first", "on_it"), [(1, True), (2, False)])
def test_a42_only_loops_tell_what_lies_over_a_double_yarn_over(first: int, on_it: bool, vocabulary: Vocabulary) -> None:
    """A42: over k2tog, yo, yo, ssk the loops 2 and 3 are the double yarn-over, 3 and 4 are not; the counts agree."""
    rows = rows_of(f"*k2tog, yo, yo, ssk; rep from * to end / k{first}, p1, k1, k to end", vocabulary)
    traced = trace(rows, 8, vocabulary)
    assert [step.after for step in traced.steps] == [8, 8]
    pair = [worked.takes[0] for worked in traced.rows[1].worked[first : first + 2]]
    assert on_it == on_double_yarn_over(pair, vocabulary)


def test_a43_a_repeat_that_never_nests_is_suspicious(vocabulary: Vocabulary) -> None:
    """A43: how often each repeat is worked per step of the multiple; suspicious if none is worked once."""
    rib, misprint = (chain_of(MULTIPLES[vector][0], vocabulary) for vector in ("A09", "A10"))
    odd = chain_of("*k13; rep from * to end / *k11; rep from * to end", vocabulary)
    assert [rib.weights, misprint.weights, odd.weights] == [(1, 3), (2, 7), (11, 13)]
    assert [rib.suspicious, misprint.suspicious, odd.suspicious] == [False, True, True]
