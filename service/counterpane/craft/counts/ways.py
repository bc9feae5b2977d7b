"""The ways to work a row whose two open repeats do not say where they stop."""

from __future__ import annotations

from collections.abc import Sequence
from math import gcd

from counterpane.craft.counts.effects import total
from counterpane.craft.counts.wellformed import is_open
from counterpane.craft.rows.tree import Node, OpenRepeat
from counterpane.craft.stitches import Vocabulary

# Nobody reads more ways than this; house bound.
MOST_WAYS = 20


def ways(parts: Sequence[Node], before: int, vocabulary: Vocabulary) -> tuple[tuple[int, int], ...]:
    """Return how often the first and the second repeat can be worked at a count, in the order of the first.

    At most `MOST_WAYS` are given. ValueError for a row that does not hold exactly two open repeats at its top.
    """
    repeats = [node for node in parts if isinstance(node, OpenRepeat)]
    if len(repeats) != 2 or any(is_open(node) and node not in repeats for node in parts):
        raise ValueError("the row does not hold two open repeats")
    closed: list[Node] = [node for node in parts if not isinstance(node, OpenRepeat)]
    closed += [part for repeat in repeats for part in repeat.last or ()]
    first, second = (total(repeat.parts, vocabulary).uses for repeat in repeats)
    room = before - total(closed, vocabulary).uses
    least = [0 if repeat.plain or repeat.last is not None else 1 for repeat in repeats]
    return _solutions(first, second, room, least[0], least[1])


def _solutions(first: int, second: int, room: int, least: int, least_second: int) -> tuple[tuple[int, int], ...]:
    common = gcd(first, second)
    if not first or not second or room % common:
        return ()
    step = second // common
    start = room // common * pow(first // common, -1, step) % step
    start += -(-(least - start) // step) * step
    last = min((room - second * least_second) // first, start + step * (MOST_WAYS - 1))
    return tuple((times, (room - first * times) // second) for times in range(start, last + 1, step))
