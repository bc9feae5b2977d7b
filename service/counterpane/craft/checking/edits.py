"""Small edits of a row that let the text go on: one number changed, one stitch left out, one stop moved.

Every edit offered has been worked: the whole text with the edited row has no place where a knitter is stuck and no
printed count that is not true.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import islice

from counterpane.craft.checking.examine import Examined, reexamine, trouble
from counterpane.craft.counts import count, work
from counterpane.craft.rows.say import say_line
from counterpane.craft.rows.tree import Group, Node, OpenRepeat, Row, Work

MOST_CANDIDATES = 400
MOST_OFFERED = 2
MOST_ROWS_TRIED = 300
MOST_NODES_TRIED = 3_000
_STEPS = (1, -1, 2, -2, 3, -3, 4, -4, 5, -5)
_ONE_FOR_ONE = frozenset({"k", "p", "patt", "k tbl", "p tbl"})

Parts = tuple[Node, ...]


def corrected_rows(examined: Examined, row: Row) -> tuple[Row, ...]:
    """Return up to two readings of the row that check clean, the smallest edit first; none where none is found."""
    nodes = sum(len(other.parts) for other in examined.rows)
    if len(examined.rows) > MOST_ROWS_TRIED or nodes > MOST_NODES_TRIED or row not in examined.rows:
        return ()
    index = examined.rows.index(row)
    candidates = (replace(row, parts=parts) for parts in _edits(row.parts))
    likely = (new for new in islice(candidates, MOST_CANDIDATES) if _fits(examined, index, new))
    return tuple(islice((new for new in likely if _clean(examined, row, new)), MOST_OFFERED))


def said(examined: Examined, row: Row) -> tuple[str, ...]:
    """Return the corrected rows in words, each with its label."""
    terms = examined.instructions.terms
    return tuple(say_line(new, examined.vocabulary, terms) for new in corrected_rows(examined, row))


def recounted(examined: Examined, row: Row, count: int) -> str:
    """Return the row in words with another printed count."""
    return say_line(replace(row, stated=count), examined.vocabulary, examined.instructions.terms)


def _fits(examined: Examined, index: int, row: Row) -> bool:
    """Tell cheaply whether the edited row can follow the rows before it."""
    followed = examined.followed[index] if index < len(examined.followed) else None
    if followed is not None and followed.before is not None:
        after = work([row.parts], followed.before, examined.vocabulary)[0].after
        return after is not None and row.stated in (None, after)
    return bool(count([r.parts for r in (*examined.rows[:index], row)], examined.vocabulary).starts)


def _clean(examined: Examined, row: Row, new: Row) -> bool:
    """Work the whole text with the edited row, wherever its line stands for several rows."""
    steps = tuple(
        replace(step, parts=new.parts) if isinstance(step, Row) and step.place == row.place else step
        for step in examined.instructions.steps
    )
    again = reexamine(examined.text, replace(examined.instructions, steps=steps), examined.vocabulary, examined.cast_on)
    repeats = all(repeated.fits_again and repeated.reached is not False for repeated in again.walk.repeated)
    return trouble(again) is None and not again.walk.wrong_counts and not again.chain.suspicious and repeats


def _edits(parts: Parts) -> Iterator[Parts]:
    """Yield the edits of a row, the smallest change of a number first."""
    for step in _STEPS:
        yield from _changed(parts, step)


def _changed(parts: Parts, step: int) -> Iterator[Parts]:
    """Yield the rows in which one number is changed by `step`; a stitch worked no times is left out."""
    for index in range(len(parts) - 1, -1, -1):
        for nodes in _node_changed(parts[index], step):
            whole = (*parts[:index], *nodes, *parts[index + 1 :])
            if whole:
                yield whole
        yield from _edge_changed(parts, index, step)


def _edge_changed(parts: Parts, index: int, step: int) -> Iterator[Parts]:
    """Yield the row in which a stop and the stitches kept for it change together: "to last 3 sts, k3"."""
    node, edge = parts[index], parts[index + 1] if index + 1 < len(parts) else None
    if not (isinstance(node, OpenRepeat) and node.stop and isinstance(edge, Work) and edge.stitch in _ONE_FOR_ONE):
        return
    if edge.times + step >= 1 and node.stop + step >= 0:
        kept = (replace(node, stop=node.stop + step), replace(edge, times=edge.times + step))
        yield (*parts[:index], *kept, *parts[index + 2 :])


def _node_changed(node: Node, step: int) -> Iterator[Sequence[Node]]:
    """Yield what may stand for one node when one number in it is changed by `step`."""
    match node:
        case Work() if node.stitch in _ONE_FOR_ONE or node.stitch == "yo":
            if node.times + step >= 1:
                yield (replace(node, times=node.times + step),)
            elif node.times == 1 and step == -1:
                yield ()
        case Group():
            if node.times + step >= 1:
                yield (replace(node, times=node.times + step, doubtful=False),)
            yield from ((replace(node, parts=parts),) for parts in _changed(node.parts, step))
        case OpenRepeat():
            if node.stop is not None and node.stop + step >= 0:
                yield (replace(node, stop=node.stop + step),)
            if not node.plain:
                yield from ((replace(node, parts=parts),) for parts in _changed(node.parts, step))
        case _:
            return
