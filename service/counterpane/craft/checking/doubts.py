"""Words with two readings that change the count, settled by what is printed.

"rep from * 4 times" is five times in all unless only four fit; a bind-off leaves a stitch that the next number does not
count unless only counting it fits the printed count; "inc" is the one increase that fits, and where both or none fit
the row cannot be counted. A handbook's row without a star that would leave most stitches is worked again and again
where that comes out. One row at a time, in working order.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from counterpane.craft.counts import count, work
from counterpane.craft.counts.wellformed import within
from counterpane.craft.rows.effects import total
from counterpane.craft.rows.tree import BindOff, Group, IntoOne, Marker, Node, OpenRepeat, Place, Row, Turn, Work
from counterpane.craft.stitches import Vocabulary

LEAST_WORKINGS = 4  # House figure: an edging never leaves three quarters of its stitches to be guessed.
_NO_LIST = (OpenRepeat, BindOff, Turn, Marker)
Parts = tuple[Node, ...]


def settled(rows: Sequence[Row], start: int | None, vocabulary: Vocabulary) -> tuple[Row, ...]:
    """Return the rows with each doubtful one in the reading that fits; the first reading where none or both do."""
    unsure = _unsure(vocabulary)
    if not any(row.old or _is_doubtful(row, unsure) for row in rows):
        return tuple(rows)
    out: list[Row] = []
    before = start
    for row in rows:
        chosen = _chosen(row, out, before, vocabulary) if row.readable else row
        out.append(chosen)
        known = before is not None and chosen.readable
        before = work([chosen.parts], before, vocabulary)[0].after if known and before is not None else None
    return tuple(out)


@lru_cache(maxsize=4)
def _unsure(vocabulary: Vocabulary) -> frozenset[str]:
    """Return the stitches whose meanings use or make different numbers of stitches."""
    return frozenset(key for key in vocabulary.stitches if _differs(key, vocabulary))


def _is_doubtful(row: Row, unsure: frozenset[str]) -> bool:
    """Tell whether a row may have another reading; quick, and never wrongly no."""
    for node in within(row.parts):
        if isinstance(node, Work):
            if node.stitch in unsure:
                return True
        elif isinstance(node, Group):
            if node.doubtful:
                return True
        elif isinstance(node, BindOff) and row.stated is not None:
            return True
    return False


def _chosen(row: Row, earlier: Sequence[Row], before: int | None, vocabulary: Vocabulary) -> Row:
    """Return the row in the reading that what is printed decides for."""
    if vague(row, vocabulary):
        readings = [replace(row, parts=parts) for parts in _meanings(row.parts, vocabulary)]
        fitting = [reading for reading in readings if _fits(reading, earlier, before, vocabulary)]
        return fitting[0] if len(fitting) == 1 else replace(row, readable=False)
    others = _other(row)
    if before is not None and row.old and _leaves_most(row, before, vocabulary):
        whole = replace(row, parts=(OpenRepeat(row.parts, 0, place=row.start),), whole=True)
        return whole if _fits(whole, earlier, before, vocabulary) else row
    if not others or _fits(row, earlier, before, vocabulary):
        return row
    for parts in others:
        other = replace(row, parts=parts)
        if _fits(other, earlier, before, vocabulary):
            return other
    return row


def _leaves_most(row: Row, before: int, vocabulary: Vocabulary) -> bool:
    """Tell whether a list without a repeat would leave most of the stitches, as no handbook means it to."""
    if not row.parts or any(isinstance(node, _NO_LIST) for node in within(row.parts)):
        return False
    return 0 < total(row.parts, vocabulary).uses * LEAST_WORKINGS <= before


def vague(row: Row, vocabulary: Vocabulary) -> frozenset[Place]:
    """Return the places of stitches whose meanings use or make different numbers of stitches."""
    unsure = _unsure(vocabulary)
    return frozenset(node.place for node in within(row.parts) if isinstance(node, Work) and node.stitch in unsure)


def _differs(stitch: str, vocabulary: Vocabulary) -> bool:
    meanings = [vocabulary[key] for key in vocabulary[stitch].ambiguous if key in vocabulary.stitches]
    return len({(stitch.uses, stitch.makes) for stitch in meanings}) > 1


def _meanings(parts: Sequence[Node], vocabulary: Vocabulary) -> tuple[Parts, ...]:
    """Return the rows in which every vague stitch has its first meaning, its second, and so on."""
    most = max(len(vocabulary[n.stitch].ambiguous) for n in within(tuple(parts)) if isinstance(n, Work))
    return tuple(tuple(_meant(node, choice, vocabulary) for node in parts) for choice in range(most))


def _meant(node: Node, choice: int, vocabulary: Vocabulary) -> Node:
    if isinstance(node, Work) and node.stitch in _unsure(vocabulary):
        meanings = vocabulary[node.stitch].ambiguous
        return replace(node, stitch=meanings[min(choice, len(meanings) - 1)])
    if isinstance(node, Group | OpenRepeat | IntoOne):
        return replace(node, parts=tuple(_meant(part, choice, vocabulary) for part in node.parts))
    return node


def _fits(row: Row, earlier: Sequence[Row], before: int | None, vocabulary: Vocabulary) -> bool:
    """Tell whether a row can be worked at the count before it and leaves the count printed after it."""
    if before is not None:
        after = work([row.parts], before, vocabulary)[0].after
        return after is not None and row.stated in (None, after)
    chain = count([r.parts for r in (*earlier, row)], vocabulary)
    ends = {chain.ends[0]} if len(chain.starts) == 1 and chain.starts[0].of == 0 else None
    return bool(chain.starts) and (row.stated is None or ends is None or row.stated in ends)


def _other(row: Row) -> tuple[Parts, ...]:
    """Return the other readings of a row: fewer times, and, where a count is printed, the bind-off counted in."""
    fewer = _fewer(row.parts)
    joined = () if row.stated is None else (_joined(row.parts), _joined(fewer))
    return tuple(dict.fromkeys(reading for reading in (fewer, *joined) if reading != row.parts))


def _fewer(parts: Sequence[Node]) -> Parts:
    return tuple(_one_fewer(node) for node in parts)


def _one_fewer(node: Node) -> Node:
    if isinstance(node, Group) and node.doubtful:
        return replace(node, parts=_fewer(node.parts), times=node.times - 1, doubtful=False)
    return replace(node, parts=_fewer(node.parts)) if isinstance(node, Group | OpenRepeat | IntoOne) else node


def undoubted(parts: Sequence[Node]) -> Parts:
    """Return the parts with every "n times" taken as it stands."""
    return tuple(_undoubted(node) for node in parts)


def _undoubted(node: Node) -> Node:
    if isinstance(node, Group):
        return replace(node, parts=undoubted(node.parts), doubtful=False)
    return replace(node, parts=undoubted(node.parts)) if isinstance(node, OpenRepeat | IntoOne) else node


def _joined(parts: Sequence[Node]) -> Parts:
    return tuple(replace(n, joined=True) if isinstance(n, BindOff) and n.times is not None else n for n in parts)
