"""Any text is answered: with findings, without an exception, and with work that grows as the text does."""

from __future__ import annotations

import sys
from collections.abc import Callable

import pytest

from counterpane.craft.rows.read import read_row
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

SIZE, LONG = 20_000, 4_000
UNKINDNESSES = [
    "k1, ", "*k1 ", "(", "zork ", "rep 2 times, ", "k1 to end ", "5 sts the ", "sl 1 wyif, ", "pass the ", "k ",
    "*k1; rep from * 2 times, ", "[k1] 999999999999 times, ", "ending last rep k1, ", "row 1: ", "rep row 1. ", "- ",
    "cast on 5. ", "and ", "1, ", "\x00", "“", "🧶 ",
]  # fmt: skip


def steps(call: Callable[[], object]) -> int:
    """Count the function calls of a piece of work, which do not depend on the machine."""
    count = 0

    def note(frame: object, event: str, argument: object) -> None:
        nonlocal count
        count += event == "call"

    sys.setprofile(note)
    try:
        call()
    finally:
        sys.setprofile(None)
    return count


@pytest.mark.parametrize("unkindness", UNKINDNESSES, ids=repr)
def test_work_grows_no_faster_than_the_text(unkindness: str, vocabulary: Vocabulary) -> None:
    """Twice the rows are at most about twice the calls, and so is twice the row, to be read by itself."""
    rows = [f"Row {n}: {n % 7 + 1} {unkindness * (LONG // len(unkindness))}" for n in range(1, 2 * SIZE // LONG + 1)]
    small, large = "\n".join(rows[: len(rows) // 2]), "\n".join(rows)
    check_text(small, vocabulary)
    once, twice = steps(lambda: check_text(small, vocabulary)), steps(lambda: check_text(large, vocabulary))
    assert twice <= 2.3 * once + 20_000
    row, longer = (unkindness * (size // len(unkindness)) for size in (SIZE, 2 * SIZE))
    once, twice = steps(lambda: read_row(row, vocabulary)), steps(lambda: read_row(longer, vocabulary))
    assert twice <= 2.3 * once + 20_000


@pytest.mark.parametrize("unkindness", UNKINDNESSES, ids=repr)
def test_many_lines_grow_no_faster_than_the_text(unkindness: str, vocabulary: Vocabulary) -> None:
    """The same holds where every word stands on a line of its own."""
    small, large = (f"Row 1: k1\n{f'{unkindness}{chr(10)}' * (size // 8)}" for size in (SIZE, 2 * SIZE))
    once, twice = steps(lambda: check_text(small, vocabulary)), steps(lambda: check_text(large, vocabulary))
    assert twice <= 2.3 * once + 20_000


@pytest.mark.parametrize(
    "row",
    [
        "Row {}: *K2, yo, k2tog, repeat from * 4 times, k2.\n",
        "Row {}: Knit 2, over, narrow, repeat 6 times.\n",
        "Row {}: k2, inc 1, m1, k3, sl 1, dec 1.\n",
        "{}th row.—K 2, n, * o, k 1, n; repeat from star 3 times more, k 2.\n",
        "Rows {0}-{0}: K2, *yo, k2tog; rep from * to last 2 sts, k1.\n",
        "Row {}: Size M only: K to end. All sizes: p2 (0, 3), k to end.\n",
    ],
)
@pytest.mark.parametrize("begin", ["", "Cast on 30 sts.\n", "Sizes: S (M, L)\nCast on 60 (80, 100) sts.\n"])
def test_rows_in_doubt_grow_no_faster_than_the_text(row: str, begin: str, vocabulary: Vocabulary) -> None:
    """No row is counted again with all the rows before it, whatever its words may mean."""
    small, large = (begin + "".join(row.format(n) for n in range(1, rows)) for rows in (120, 240))
    check_text(small, vocabulary)
    once, twice = steps(lambda: check_text(small, vocabulary)), steps(lambda: check_text(large, vocabulary))
    assert twice <= 2.3 * once + 20_000


def test_a_row_of_many_pages_is_named_and_the_others_are_read(vocabulary: Vocabulary) -> None:
    """Nobody works two thousand words as one row; the rows around it are read and counted as ever."""
    text = f"Cast on 7 sts.\nRow 1: Knit.\nRow 2: {'k1, p1, ' * 1000}k1.\nRow 3: K3, p5."
    answer = check_text(text, vocabulary)
    assert [(finding["rule"], finding["line"]) for finding in answer["findings"]] == [("row-too-long", 3)]
    assert [(row["label"], row["after"]) for row in answer["rows"]] == [("1", 7), ("2", None), ("3", None)]


@pytest.mark.parametrize("begin", ["", "Cast on 7 sts.\nRow 1: Knit.\n", "Knit 3 rows.\n"])
def test_a_long_row_without_a_label_is_named_as_well(begin: str, vocabulary: Vocabulary) -> None:
    """What reads as stitches is not passed over for its length."""
    findings = check_text(f"{begin}{'k1, p1, ' * 1200}k1.", vocabulary)["findings"]
    assert "row-too-long" in [finding["rule"] for finding in findings]
