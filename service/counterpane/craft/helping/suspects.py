"""Where a count went wrong: each slip that leads to the count that was found, worked on through the rows since."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from counterpane.craft.counts import work
from counterpane.craft.counts.writing_out import write_out
from counterpane.craft.helping import Slip, Suspect, WorkedRow
from counterpane.craft.helping.slips import ANYWHERE, slips_of
from counterpane.craft.stitches import Vocabulary

LOOKED_AT = 60
"""Rows before the one that was counted in which slips are looked for; house."""

MOST = 8
"""Suspects that are told; house."""


def suspects(rows: Sequence[WorkedRow], have: int, vocabulary: Vocabulary, *, since_cast_on: bool) -> list[Suspect]:
    """Return the slips that leave `have` stitches after the last of the rows, the likeliest first.

    `rows` are those since the last sure count, `since_cast_on` whether that is the cast-on itself. First come slips
    after which all rows come out as written, the nearest row first, and those that a stitch of the row invites before
    those that may happen anywhere. A slip that would leave another count is none.
    """
    off = have - rows[-1].after
    if not off:
        return []
    unseen = [at for at in range(len(rows)) if _shows_in(rows, at, have, vocabulary) is None]
    invited = [each for at in reversed(unseen) for each in _invited(rows[at], off, vocabulary)]
    seen = [] if invited else list(_that_showed(rows, have, off, vocabulary))
    return [*invited, *seen, *_cast_on(rows, have, vocabulary, since_cast_on), *_anywhere(rows, unseen, off)][:MOST]


def _invited(row: WorkedRow, off: int, vocabulary: Vocabulary) -> Iterator[Suspect]:
    written = write_out(row.row.parts, row.before, vocabulary, row.row.side)
    repeats = set(written.times)
    found = [
        (slip, off // slip.each)
        for slip in slips_of(written.parts or (), vocabulary)
        if off % slip.each == 0 and 0 < off // slip.each <= slip.most
    ]
    # Once, or once in every repeat, is likelier than any other number of times.
    for slip, times in sorted(found, key=lambda each: each[1] not in (1, *repeats)):
        yield Suspect(slip, times, (row.number, row.number))


def _that_showed(rows: Sequence[WorkedRow], have: int, off: int, vocabulary: Vocabulary) -> Iterator[Suspect]:
    """Give slips after which a later row does not come out as written; whoever made them worked round it there."""
    for at in reversed(range(len(rows))):
        shows = _shows_in(rows, at, have, vocabulary)
        if shows:
            for each in _invited(rows[at], off, vocabulary):
                yield Suspect(each.slip, each.times, each.rows, shows)


def _cast_on(rows: Sequence[WorkedRow], have: int, vocabulary: Vocabulary, since_cast_on: bool) -> Iterator[Suspect]:
    off = have - rows[-1].after
    if since_cast_on and rows[0].before + off > 0 and _ends(rows, rows[0].before + off, vocabulary) == (have, None):
        yield Suspect(Slip("cast-on-miscounted", off, 1), 1, (0, 0))


def _anywhere(rows: Sequence[WorkedRow], unseen: Sequence[int], off: int) -> Iterator[Suspect]:
    """Give the slips that may happen to any stitch, once for all rows in which they go unseen."""
    if not unseen:
        return
    first = next(at for at in range(len(rows)) if all(each in unseen for each in range(at, len(rows))))
    for slip in ANYWHERE:
        times = off // slip.each
        if off % slip.each == 0 and 0 < times <= slip.most:
            yield Suspect(slip, times, (rows[first].number, rows[-1].number))


def _shows_in(rows: Sequence[WorkedRow], at: int, have: int, vocabulary: Vocabulary) -> int | None:
    """Return the row in which a slip in one of the rows shows, None where none does; 0 for one to another count."""
    off = have - rows[-1].after
    after, shows = _ends(rows[at + 1 :], rows[at].after + off, vocabulary)
    return shows if shows is not None else None if after == have else 0


def _ends(rows: Sequence[WorkedRow], stitches: int, vocabulary: Vocabulary) -> tuple[int | None, int | None]:
    """Work rows on from a count: what they leave, or the number of the first that cannot be worked as written."""
    if stitches < 1:
        return None, rows[0].number if rows else 0
    steps = work([row.row.parts for row in rows], stitches, vocabulary, [row.row.side for row in rows], told=False)
    for row, step in zip(rows, steps, strict=False):
        if step.after is None:
            return None, row.number
    return (steps[-1].after if steps else stitches), None
