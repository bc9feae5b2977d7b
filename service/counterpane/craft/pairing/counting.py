"""Whether the counts of a body and of another part meet, and what makes them meet where they do not."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from counterpane.craft.counts import Progression
from counterpane.craft.pairing.facts import Facts, Place
from counterpane.craft.sizing.bands import change_at, corrections, even_correction
from counterpane.craft.sizing.classes import merged, nearest_of, shifted

Fit = Literal["fits", "some", "change", "no"]


@dataclass(frozen=True, slots=True)
class Join:
    """How a body and another part meet. Counts are those of the body.

    "fits": at every count that the body takes, or at the count asked for. "some": at some of them. "change": with
    another count, `counts`, or with `add` edge stitches more (or fewer) in the other part, both sides together. "no":
    not at all. `common` are the counts at which they meet, after `add` where that is needed at all counts.
    """

    fit: Fit
    common: tuple[Progression, ...] = ()
    counts: tuple[int, ...] = ()
    add: int | None = None
    why: str = ""


def meet(body: Facts, other: Facts, place: Place, beside: int, count: int | None = None) -> Join:
    """Say how a body and another part meet, at a count of the body or at all it takes.

    `beside` are the stitches on each side of the body over which the ends, cast-on and bind-off run too.
    """
    if body.stuck:
        return Join("no", why=f"the body cannot be worked with other parts: {body.stuck}")
    why = other.no_edge if place in ("sides", "selvedge") else other.stuck or _along_an_edge(other, place)
    if why:
        return Join("no", why=why)
    theirs = body.counts if place in ("sides", "selvedge") else [shifted(each, -2 * beside) for each in other.counts]
    return _at_all(body.counts, theirs) if count is None else _at(body.counts, theirs, count)


def _along_an_edge(other: Facts, place: Place) -> str:
    fixed = place == "ends" and all(not each.of for each in other.counts)
    return f"it is worked over {other.said}, along an edge and not across a piece" if fixed else ""


def _at_all(own: Sequence[Progression], theirs: Sequence[Progression]) -> Join:
    common = _common(own, theirs)
    if common:
        whole = all(any(merged(each, other) == each for other in common) for each in own)
        return Join("fits" if whole else "some", common)
    add = _change(own, theirs)
    if add is None:
        return Join("no", why="it takes no count that the body takes")
    return Join("change", _common(own, [shifted(each, add) for each in theirs]), add=add)


def _at(own: Sequence[Progression], theirs: Sequence[Progression], count: int) -> Join:
    common = _common(own, theirs)
    if any(each.admits(count) for each in common):
        return Join("fits", common)
    taken = any(each.admits(count) for each in own)
    adds = [change_at(each, count) for each in theirs if each.of] if taken else []
    counts = nearest_of(common or (() if taken else own), Fraction(count), 2)
    if not adds and not counts:
        return Join("no", why=f"it does not take {count} stitches")
    return Join("change", common, counts, min(adds, key=lambda add: (abs(add), -add), default=None))


def _common(own: Iterable[Progression], theirs: Sequence[Progression]) -> tuple[Progression, ...]:
    found = (merged(one, other) for one in own for other in theirs)
    return tuple(dict.fromkeys(each for each in found if each is not None))


def _change(own: Iterable[Progression], theirs: Sequence[Progression]) -> int | None:
    """Return the fewest edge stitches that let both share counts, an even number where that costs no more but one.

    None for parts of one single count, which are no band across a piece.
    """
    pairs = [(one, other) for one in own for other in theirs if one.of and other.of]
    even = [change for one, other in pairs if (change := even_correction(one, other)) is not None]
    some = [change for one, other in pairs for change in corrections(one, other)[:1]]
    return min([*even, *some], key=lambda change: (abs(change) + abs(change) % 2, abs(change), -change), default=None)
