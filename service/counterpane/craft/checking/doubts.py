"""Words with two readings that change the count, settled by what is printed.

"rep from * 4 times" is five times in all unless only four fit; a bind-off leaves a stitch that the next number does not
count unless only counting it fits the printed count. One row at a time, in working order.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.counts import count, work
from counterpane.craft.rows.tree import BindOff, Group, IntoOne, Node, OpenRepeat, Row
from counterpane.craft.stitches import Vocabulary

Parts = tuple[Node, ...]


def settled(rows: Sequence[Row], start: int | None, vocabulary: Vocabulary) -> tuple[Row, ...]:
    """Return the rows with each doubtful one in the reading that fits; the first reading where none or both do."""
    if not any(_other(row.parts) for row in rows):
        return tuple(rows)
    out: list[Row] = []
    before = start
    for row in rows:
        chosen = _chosen(row, out, before, vocabulary) if row.readable else row
        out.append(chosen)
        before = work([chosen.parts], before, vocabulary)[0].after if before is not None and row.readable else None
    return tuple(out)


def _chosen(row: Row, earlier: Sequence[Row], before: int | None, vocabulary: Vocabulary) -> Row:
    """Return the row in the reading that what is printed decides for."""
    others = _other(row.parts)
    if not others or _fits(row, earlier, before, vocabulary):
        return row
    for parts in others:
        other = replace(row, parts=parts)
        if _fits(other, earlier, before, vocabulary):
            return other
    return row


def _fits(row: Row, earlier: Sequence[Row], before: int | None, vocabulary: Vocabulary) -> bool:
    """Tell whether a row can be worked at the count before it and leaves the count printed after it."""
    if before is not None:
        after = work([row.parts], before, vocabulary)[0].after
        return after is not None and row.stated in (None, after)
    chain = count([r.parts for r in (*earlier, row)], vocabulary)
    ends = {chain.ends[0]} if len(chain.starts) == 1 and chain.starts[0].of == 0 else None
    return bool(chain.starts) and (row.stated is None or ends is None or row.stated in ends)


def _other(parts: Sequence[Node]) -> tuple[Parts, ...]:
    """Return the other readings of a row: fewer times, the bind-off counted in, or both."""
    fewer, joined = _fewer(parts), _joined(parts)
    found = [reading for reading in (fewer, joined, _joined(fewer)) if reading != tuple(parts)]
    return tuple(dict.fromkeys(found))


def _fewer(parts: Sequence[Node]) -> Parts:
    return tuple(_one_fewer(node) for node in parts)


def _one_fewer(node: Node) -> Node:
    if isinstance(node, Group) and node.doubtful:
        return replace(node, parts=_fewer(node.parts), times=node.times - 1, doubtful=False)
    return replace(node, parts=_fewer(node.parts)) if isinstance(node, Group | OpenRepeat | IntoOne) else node


def _joined(parts: Sequence[Node]) -> Parts:
    return tuple(replace(n, joined=True) if isinstance(n, BindOff) and n.times is not None else n for n in parts)
