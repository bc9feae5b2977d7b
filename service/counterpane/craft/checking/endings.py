"""The end that a repeat is printed without: "rep from * to end" where "to last 2 sts, k2" would come out.

Where a repeat is of plain stitches alone, its own beginning is the likeliest end ("*k2, p2" to "k2"): a rib then begins
and ends alike. Any repeat may end with knit or purl stitches.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import dropwhile, pairwise, takewhile

from counterpane.craft.checking.edits import Edit
from counterpane.craft.checking.rewriting import Change, Stretch, Word
from counterpane.craft.rows.repeats import REPEAT

# How unlikely a slip each is, beside the other edits of a row; house figures.
OF_REPEAT, PLAIN_END = 11, 15
MOST_OF_REPEAT, MOST_PLAIN = 11, 2
_PLAIN_STITCH = re.compile(r"([kp])(\d{1,2})")


def endings(row: Stretch) -> Iterator[Edit]:
    """Yield the edits that put an end behind a starred repeat "to end"."""
    starred = list(dropwhile(lambda word: word.kind != "star", row.words))
    body = list(takewhile(lambda word: word.norm not in REPEAT, starred))
    end = _to_end(starred[len(body) :])
    if end is None:
        return
    stitches = _plain_stitches(body[1:])
    for number in range(1, min(len(stitches), MOST_OF_REPEAT + 1)):
        yield _ending(end, number, ", ".join(_runs(stitches[:number])), OF_REPEAT)
    for number in range(1, MOST_PLAIN + 1):
        for stitch in "kp":
            yield _ending(end, number, f"{stitch}{number}", PLAIN_END + number - 1)


def _ending(end: Word, number: int, stitches: str, weight: int) -> Edit:
    last = "last st" if number == 1 else f"last {number} sts"
    return Edit((Change(end.begin, end.end, f"{last}, {stitches}"),), weight)


def _to_end(words: Sequence[Word]) -> Word | None:
    """Return the "end" that a repeat goes to; None where more of the row is said behind it."""
    for at, (before, word) in enumerate(pairwise(words), start=1):
        if (before.norm, word.norm) == ("to", "end"):
            return word if all(each.norm == "." for each in words[at + 1 : at + 2]) else None
    return None


def _plain_stitches(words: Sequence[Word]) -> str:
    """Return the stitches of a repeat one by one, "kkpp"; "" for one that has others."""
    out = ""
    for word in words:
        found = _PLAIN_STITCH.fullmatch(word.norm)
        if found is None and word.kind != "pause":
            return ""
        out += found[1] * int(found[2]) if found else ""
    return out


def _runs(stitches: str) -> Iterator[str]:
    """Yield "k2", "p1" of "kkp"."""
    for run in re.finditer(r"k+|p+", stitches):
        yield f"{run[0][0]}{len(run[0])}"
