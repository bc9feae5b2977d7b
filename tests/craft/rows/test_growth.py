"""Any text is answered: with findings, without an exception, and with work that grows as the text does."""

from __future__ import annotations

import sys
from collections.abc import Callable

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

SIZE = 20_000
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
    """Twice the text is at most about twice the calls."""
    small, large = (f"Row 1: {unkindness * (size // len(unkindness))}" for size in (SIZE, 2 * SIZE))
    check_text(small, vocabulary)
    once, twice = steps(lambda: check_text(small, vocabulary)), steps(lambda: check_text(large, vocabulary))
    assert twice <= 2.3 * once + 20_000


@pytest.mark.parametrize("unkindness", UNKINDNESSES, ids=repr)
def test_many_lines_grow_no_faster_than_the_text(unkindness: str, vocabulary: Vocabulary) -> None:
    """The same holds where every word stands on a line of its own."""
    small, large = (f"Row 1: k1\n{f'{unkindness}{chr(10)}' * (size // 8)}" for size in (SIZE, 2 * SIZE))
    once, twice = steps(lambda: check_text(small, vocabulary)), steps(lambda: check_text(large, vocabulary))
    assert twice <= 2.3 * once + 20_000
