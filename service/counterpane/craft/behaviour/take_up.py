"""Take-up: how many stitches fewer or more an end border wants than the body beside it, and the row that changes them.

The border then keeps its own count and the body its own; the change is spread evenly between the side borders.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.behaviour.places import Place
from counterpane.craft.behaviour.widths import Ratios
from counterpane.craft.constructions.joining import CannotJoin, Nodes, run_together
from counterpane.craft.constructions.obstacles import Stuck
from counterpane.craft.constructions.textures import textures_of
from counterpane.craft.counts import work
from counterpane.craft.measures import half_up
from counterpane.craft.rows.tree import Group, Node, Side, Work
from counterpane.craft.sizing.takeup import gaps_of_decreases, gaps_of_increases, row_of_changes

MOST_CHANGES = 400
"""Changes in a row beyond which it is not written out; house figure that bounds its length."""

LONGEST = 3
"""Changes in what is written once; house figure, so that a bracket can be followed at a glance."""

CHANGES = {("k", True): "m1", ("k", False): "k2tog", ("p", True): "m1p", ("p", False): "p2tog"}
"""The increase and the decrease that go with a plain row."""


@dataclass(frozen=True, slots=True)
class ChangingRow:
    """The row that changes the count, in the place of a row of the plan.

    `section` and `row` say which one, counted within its section; `before` and `after` are its own counts.
    """

    section: str
    row: int
    side: Side
    parts: Nodes
    before: int
    after: int


@dataclass(frozen=True, slots=True)
class TakeUp:
    """What evens out the width of an end border beside the body.

    `stitches` are those by which the border has fewer than the plan gives it, below 0 for more, all that may be meant;
    `chosen` is the number nearest the likely one at which the border's own rows work; None where none is near, and
    where it is open which of the two wants more.
    """

    stitches: Figure
    chosen: int | None
    row: ChangingRow | None


def take_up(place: Place, found: Ratios) -> TakeUp | None:
    """Return the take-up of an end border against the band of the body beside it; None where a width is not known."""
    width, inner = found.width, place.inner
    if width is None or width.low is None or width.high is None or width.low <= 0:
        return None
    fewer = Figure(inner - inner / width.low, inner - inner / width.high, "stitches", width.basis, width.source)
    likely = int(half_up(inner - inner / found.likely_width))
    if likely == 0 or Fraction(1) in width:
        return TakeUp(fewer, None, None)
    chosen = _admitted(place, likely)
    return TakeUp(fewer, chosen, None if chosen is None else _row(place, chosen))


def _admitted(place: Place, likely: int) -> int | None:
    """Return the change nearest the likely one at which the border's rows work, never none or one the other way."""
    plan, border = place.plan, place.border
    try:
        textures = () if border is None else textures_of(border.component, place.vocabulary, "")
    except Stuck:
        return None
    over = plan.counts.cast_on - 2 * plan.counts.selvedge if plan.request.corner == "ends" else place.inner
    for many in _nearest(abs(likely)):
        fewer = many if likely > 0 else -many
        if over > fewer and any(texture.admits(over - fewer) for texture in textures):
            return fewer
    return None


def _nearest(number: int) -> Iterator[int]:
    """Give the numbers from 1 to less than twice as many, those nearest the number first, not without end."""
    for away in range(min(number, MOST_CHANGES)):
        yield number - away
        if away:
            yield number + away


def _row(place: Place, fewer: int) -> ChangingRow | None:
    """Return the changing row: of the two rows at the seam one that is plain, the border's first; None without one."""
    if abs(fewer) > MOST_CHANGES:
        return None
    planned = place.plan.counts.cast_on
    before, after = (planned - fewer, planned) if place.end == "bottom" else (planned, planned - fewer)
    for section, row, at in place.rows():
        try:
            begin, inner, finish = place.cut(row, section.before)
            changed = _changed(place, inner, after - before)
        except (CannotJoin, ValueError):
            continue
        parts = run_together((*begin, *changed, *finish))
        if work([parts], before, place.vocabulary)[0].after == after:
            return ChangingRow(section.name, at, row.side or "RS", parts, before, after)
    return None


def _changed(place: Place, inner: Nodes, more: int) -> Nodes:
    """Return what lies between the side borders with so many stitches more; ValueError unless it is plain and fits."""
    keys = {node.stitch if isinstance(node, Work) and not node.manner else "" for node in inner}
    key = keys.pop() if len(keys) == 1 else ""
    if key not in ("k", "p"):
        raise ValueError("the row is not plain")
    before = place.inner - more if place.end == "bottom" else place.inner
    plain = gaps_of_increases(before, more) if more > 0 else gaps_of_decreases(before, -more)
    return folded(plain, CHANGES[key, more > 0], key)


def folded(plain: Sequence[int], change: str, key: str) -> Nodes:
    """Return the row of these gaps with what comes again and again written once: "(k8, m1, k9, m1) 3 times"."""
    pairs = [row_of_changes((gap, 0), change, key) for gap in plain[:-1]]
    done: list[Node] = []
    at = 0
    while at < len(pairs):
        long, times = max(((long, _times(pairs, at, long)) for long in range(1, LONGEST + 1)), key=_worth)
        once = [node for pair in pairs[at : at + long] for node in pair]
        done += once if times == 1 else [Group(tuple(once), times)]
        at += long * times
    return (*done, *row_of_changes((plain[-1],), change, key))


def _times(pairs: Sequence[Nodes], at: int, long: int) -> int:
    """Return how often the next so many pairs come one after another, at least once."""
    once, times = pairs[at : at + long], 1
    while len(once) == long and pairs[at + long * times : at + long * (times + 1)] == once:
        times += 1
    return times


def _worth(found: tuple[int, int]) -> tuple[int, int]:
    """Order repeats by the pairs that they cover when they come again, the shorter of two first."""
    long, times = found
    return (long * times if times > 1 else 1 if long == 1 else 0), -long
