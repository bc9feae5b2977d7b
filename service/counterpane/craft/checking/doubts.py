"""Words with two readings that change the count, settled by what is printed.

"rep from * 4 times" is five times in all unless only four fit; a bind-off leaves a stitch that the next number does not
count unless only counting it fits the printed count; "inc" is the one increase that fits, and where both or none fit
the row cannot be counted. A handbook's row without a star that would leave most stitches is worked again and again
where that comes out. One row at a time, in working order.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import islice

from counterpane.craft.counts import Maps, work
from counterpane.craft.counts.chain import gone_on, is_listed
from counterpane.craft.counts.needle import Needle
from counterpane.craft.counts.wellformed import within
from counterpane.craft.rows.effects import total
from counterpane.craft.rows.tree import BindOff, Group, IntoOne, Marker, Node, OpenRepeat, Place, Row, Turn, Work
from counterpane.craft.stitches import Vocabulary

LEAST_WORKINGS = 4  # House figure: an edging never leaves three quarters of its stitches to be guessed.
_NO_LIST = (OpenRepeat, BindOff, Turn, Marker)
Parts = tuple[Node, ...]


class _Begun:
    """What is on the needle before a row: a known count, else what the rows before leave of any count."""

    def __init__(self, known: int | None, maps: Maps) -> None:
        self.known = known
        self._maps = maps
        self._unknown: Needle | None = Needle.any_count()
        self._worked: list[Sequence[Node]] = []  # Not yet from an unknown count, which is seldom asked for.

    def work(self, row: Row) -> None:
        """Work a row; behind one that cannot be read, any count may be on the needle."""
        if row.readable:
            self.known = self._after(row)
            self._worked.append(row.parts)
        else:
            self.known, self._unknown, self._worked = None, Needle.any_count(), []

    def _after(self, row: Row) -> int | None:
        """Return what a row leaves of the known count."""
        if self.known is None:
            return None
        return work([row.parts], self.known, self._maps.vocabulary, maps=self._maps, told=False)[0].after

    @property
    def holds(self) -> int | Needle | None:
        """The known count, else the needle of an unknown one; None where no count passes the rows."""
        if self.known is not None:
            return self.known
        self._unknown, self._worked = gone_on(self._unknown, self._worked, self._maps), []
        return self._unknown

    def fits(self, row: Row) -> bool:
        """Tell whether a row can be worked and leaves the count printed after it."""
        holds = self.holds
        if isinstance(holds, int):
            return (after := self._after(row)) is not None and row.stated in (None, after)
        needle = gone_on(holds, [row.parts], self._maps)
        if needle is None or not is_listed(needle):
            return False
        return row.stated is None or needle.low != needle.high or row.stated == needle.all.at(needle.low)


def settled(rows: Sequence[Row], start: int | None, choice: Choice) -> tuple[Row, ...]:
    """Return the rows with each doubtful one in the reading that fits; the first reading where none or both do."""
    unsure = _unsure(choice.maps.vocabulary)
    unlike = {(id(row.parts), row.stated is None, row.old): row for row in rows}
    if not any(row.old or _is_doubtful(row, unsure) for row in unlike.values()):
        return tuple(rows)
    out: list[Row] = []
    begun = _Begun(start, choice.maps)
    for row in rows:
        out.append(choice.of(row, begun) if row.readable else row)
        begun.work(out[-1])
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


class Choice:
    """Which reading what is printed decides for, found once for rows that are alike and begin with the same."""

    def __init__(self, maps: Maps) -> None:
        self.maps, self._vocabulary = maps, maps.vocabulary
        self._found: dict[tuple[int, int | None, bool, int | Needle | None], tuple[int | None]] = {}

    def of(self, row: Row, begun: _Begun) -> Row:
        """Return a row in the reading that fits, else as it stands; one of many meanings only where one alone does."""
        like = self.maps.first_like(row.parts)
        key = (id(like), row.stated, row.old, begun.holds)
        found = None if like is None else self._found.get(key)
        if found is None:
            found = self._found[key] = (self._find(row, begun),)
        if found[0] is not None:
            return next(islice(_readings(row, begun.known, self._vocabulary), found[0], None))
        return replace(row, readable=False) if _is_vague(row, self._vocabulary) else row

    def _find(self, row: Row, begun: _Begun) -> int | None:
        """Return which of its readings a row is to be in; None where none is, or where two meanings fit."""
        readings = enumerate(_readings(row, begun.known, self._vocabulary))
        fitting = (at for at, reading in readings if begun.fits(reading))
        first = next(fitting, None)
        several = first is not None and _is_vague(row, self._vocabulary) and next(fitting, None) is not None
        return None if several else first


def _readings(row: Row, known: int | None, vocabulary: Vocabulary) -> Iterator[Row]:
    """Yield the readings of a row, that to be preferred first; none of one that says one thing alone."""
    if _is_vague(row, vocabulary):
        for parts in _meanings(row.parts, vocabulary):
            yield replace(row, parts=parts)
    elif known is not None and row.old and _leaves_most(row, known, vocabulary):
        yield replace(row, parts=(OpenRepeat(row.parts, 0, place=row.start),), whole=True)
    elif others := _other(row):
        yield row
        for parts in others:
            yield replace(row, parts=parts)


def _leaves_most(row: Row, before: int, vocabulary: Vocabulary) -> bool:
    """Tell whether a list without a repeat would leave most of the stitches, as no handbook means it to."""
    if not row.parts or any(isinstance(node, _NO_LIST) for node in within(row.parts)):
        return False
    return 0 < total(row.parts, vocabulary).uses * LEAST_WORKINGS <= before


def vague(row: Row, vocabulary: Vocabulary) -> frozenset[Place]:
    """Return the places of stitches whose meanings use or make different numbers of stitches."""
    return frozenset(node.place for node in _vague(row, vocabulary))


def _is_vague(row: Row, vocabulary: Vocabulary) -> bool:
    return next(_vague(row, vocabulary), None) is not None


def _vague(row: Row, vocabulary: Vocabulary) -> Iterator[Work]:
    unsure = _unsure(vocabulary)
    return (node for node in within(row.parts) if isinstance(node, Work) and node.stitch in unsure)


def _differs(stitch: str, vocabulary: Vocabulary) -> bool:
    meanings = [vocabulary[key] for key in vocabulary[stitch].ambiguous if key in vocabulary.stitches]
    return len({(stitch.uses, stitch.makes) for stitch in meanings}) > 1


def _meanings(parts: Sequence[Node], vocabulary: Vocabulary) -> Iterator[Parts]:
    """Yield the rows in which every vague stitch has its first meaning, its second, and so on."""
    most = max(len(vocabulary[n.stitch].ambiguous) for n in within(tuple(parts)) if isinstance(n, Work))
    for choice in range(most):
        yield tuple([_meant(node, choice, vocabulary) for node in parts])


def _meant(node: Node, choice: int, vocabulary: Vocabulary) -> Node:
    if isinstance(node, Work) and node.stitch in _unsure(vocabulary):
        meanings = vocabulary[node.stitch].ambiguous
        return replace(node, stitch=meanings[min(choice, len(meanings) - 1)])
    if isinstance(node, Group | OpenRepeat | IntoOne):
        return replace(node, parts=tuple(_meant(part, choice, vocabulary) for part in node.parts))
    return node


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
