"""How a texture stands between its edges: repeat, balancing and edge stitches, balance, closing rows."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from counterpane.craft.component import Balance, Component, derive
from counterpane.craft.counts import Progression
from counterpane.craft.stitches import Vocabulary
from craft.textures import RIB, body


def layout(rows: str, vocabulary: Vocabulary) -> tuple[int, int, tuple[int, int]]:
    """Return the repeat, the balancing and the edge stitches of a texture."""
    found = derive(body(rows), vocabulary).versions[0].layout
    assert found is not None
    return found.repeat, found.balancing, found.edges


@pytest.mark.parametrize(
    ("rows", "expected"),
    [
        ("Row 1 (RS): k4, *p4, k4; rep from * to end.\nRow 2: p4, *k4, p4; rep from * to end.", (8, 4, (0, 0))),
        ("Row 1 (RS): k2, *p2, k2; rep from * to end.\nRow 2: k2, p to last 2 sts, k2.", (4, 2, (2, 2))),
        ("Row 1 (RS): k2, *p3, k3; rep from * to last 5 sts, p3, k2.\n"
         "Row 2: k2, *k3, p3; rep from * to last 5 sts, k5.",
         (6, 3, (2, 2))),
        ("Row 1 (RS): k2, *yo, k2tog; rep from * to last st, k1.\nRow 2: k1, p to last 2 sts, k2.", (2, 0, (2, 1))),
        ("Row 1 (RS): knit.\nRow 2: k1, p to end.", (1, 0, (0, 1))),
    ],
)  # fmt: skip
def test_repeat_balancing_and_edge_stitches_are_told_apart(
    rows: str, expected: tuple[int, int, tuple[int, int]], vocabulary: Vocabulary
) -> None:
    """An edge stitch breaks the repeat of the columns beside it; a balancing stitch goes on with it."""
    assert layout(rows, vocabulary) == expected


@pytest.mark.parametrize(
    ("rows", "balance", "said"),
    [
        ("Row 1 (RS): k1, *p1, k1; rep from * to end.\nRow 2: p1, *k1, p1; rep from * to end.", Balance(0),
         "it ends at the left as it begins at the right"),
        (RIB, Balance(1, "left"), "one stray stitch at the left"),
        ("Row 1 (RS): k1, p1, *k4, p1; rep from * to end.\nRow 2: *k1, p4; rep from * to last 2 sts, k1, p1.",
         Balance(1, "right"), "one stray stitch at the right"),
        ("Row 1 (RS): *k2, p2; rep from * to end.\nRow 2: *k1, p2, k1; rep from * to end.", Balance(None),
         "the texture is not its own mirror image, so that its two edges cannot match"),
    ],
)  # fmt: skip
def test_imbalance_is_said_in_stray_stitches(rows: str, balance: Balance, said: str, vocabulary: Vocabulary) -> None:
    """A texture that ends at the left otherwise than it begins at the right names the stitches that are too many."""
    found = derive(body(rows), vocabulary).versions[0].layout

    assert found is not None
    assert found.balance is not None
    assert (found.balance, found.balance.said) == (balance, said)


def test_a_body_of_one_less_may_balance_where_one_more_does_not(vocabulary: Vocabulary) -> None:
    """Purl columns in 5n + 1 stitches balance, and the same columns in 5n + 2 leave a stray (common practice)."""
    texts = ("Row 1 (RS): p1, *k4, p1; rep from * to end.", "Row 1 (RS): *p1, k4; rep from * to last 2 sts, p1, k1.")
    found = [derive(body(text), vocabulary).versions[0].layout for text in texts]

    assert [each and each.balance for each in found] == [Balance(0), Balance(1, "left")]


@pytest.mark.parametrize(
    ("slug", "more"), [("basket-weave", 6), ("waffle", 3), ("stocking-stitch", 0), ("rope-cable", None)]
)
def test_closing_rows_let_the_top_end_as_the_bottom_begins(
    slug: str, more: int | None, starters: Mapping[str, Component], vocabulary: Vocabulary
) -> None:
    """Basket weave wants rows 1 to 6 again for a balanced top (common practice, no source)."""
    found = derive(starters[slug], vocabulary).versions[0].layout

    assert found is not None
    assert found.closing_rows == more


@pytest.mark.parametrize(
    "rows",
    [
        "Row 1: *k500, p500; rep from * to end.",
        "Row 1: *k1, yo 3000 times, k1; rep from * to end.",
        "Row 1: *sl 1 to cn and hold in front, k1, k1 from cn; rep from * to end.",
    ],
)
def test_rows_that_are_no_short_plain_sequence_have_no_layout(rows: str, vocabulary: Vocabulary) -> None:
    """Long rows, and stitches that wait on a cable needle, are counted and not laid out."""
    version = derive(body(rows), vocabulary).versions[0]

    assert version.starts
    assert version.layout is None


def test_stitches_made_in_one_and_an_altered_last_repeat_are_laid_out(vocabulary: Vocabulary) -> None:
    """Rows that change the count within themselves have a repeat and edges, and no columns to balance."""
    clusters = "Row 3: k1, *(k1, yo, k1) into next st, p3tog; rep from * to last st, k1."
    altered = "Row 2 (WS): k1, *p3tog, (k1, yo, k1) into next st; rep from * to last st, k1."
    found = derive(body(f"Row 1: knit.\n{altered}\n{clusters}"), vocabulary).versions[0].layout

    assert found is not None
    assert (found.repeat, found.balancing, found.edges, found.balance) == (4, 0, (1, 1), None)


def test_a_last_repeat_of_its_own_is_worked_out(vocabulary: Vocabulary) -> None:
    """Purl columns whose last repeat has three knit stitches leave one too many at the right."""
    row = "*k4, p1; rep from *, ending last rep k3"
    found = derive(body(f"Row 1 (RS): {row}."), vocabulary).versions[0].layout

    assert found is not None
    assert (found.repeat, found.balance) == (5, Balance(1, "right"))


def test_rows_too_wide_to_look_at_have_counts_and_no_layout(vocabulary: Vocabulary) -> None:
    """A repeat of a million stitches is counted, and its columns are not laid out."""
    derived = derive(body("Row 1: *k500000, p500000; rep from * to end."), vocabulary)

    assert derived.starts == (Progression(1_000_000, 0, 1_000_000),)
    assert derived.versions[0].layout is None
