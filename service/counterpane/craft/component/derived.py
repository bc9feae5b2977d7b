"""What follows from the rows of a component: the counts at which they work, their sides, and how they stand."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import lcm

from counterpane.craft.component.balance import Layout, layout_of
from counterpane.craft.component.values import Component, Version
from counterpane.craft.counts import Chain, Progression, count
from counterpane.craft.rows.instructions import AgainStep, Instructions, StartStep, read_text
from counterpane.craft.rows.tree import Row, Side
from counterpane.craft.stitches import Vocabulary

KEPT = 256
"""Components whose derivation is kept at hand; house figure."""

MOST_JOINED = 10_000
"""Largest common multiple of versions that is looked at to say their counts in one; house figure that bounds time."""


@dataclass(frozen=True, slots=True)
class DerivedVersion:
    """One version read: its rows, the counts at which they all work, and what they do to the count.

    `starts` is empty where a row cannot be read or no count works; `chain.misfit` then says where. `last_side` follows
    from the first one by alternation where it is not stated. `layout` is None for one single count.
    """

    name: str
    text: Instructions
    chain: Chain
    first_side: Side
    last_side: Side
    layout: Layout | None

    @property
    def rows(self) -> tuple[Row, ...]:
        """The rows in working order."""
        return self.text.rows

    @property
    def row_repeat(self) -> int:
        """How many rows make one vertical repeat."""
        return len(self.rows)

    @property
    def starts(self) -> tuple[Progression, ...]:
        """The counts at which the rows can be worked once; none where a row cannot be read."""
        return self.chain.starts

    @property
    def drift(self) -> int | None:
        """Stitches more at the end than at the start, None where that depends on the count or is not known."""
        return self.chain.drift

    def admits(self, stitches: int) -> bool:
        """Say whether the rows can be worked over so many stitches."""
        return self.chain.admits(stitches)

    @property
    def repeats_part(self) -> bool:
        """Say whether a repeat line works some rows again, which are then no longer one repeat."""
        again = [step for step in self.text.steps if isinstance(step, AgainStep)]
        return any(len(step.rows) != len(self.rows) for step in again) or len(again) > 1

    @property
    def casts_on(self) -> bool:
        """Say whether the text states a cast-on, which a part of a blanket has no room for."""
        return self.text.cast_on is not None or any(isinstance(step, StartStep) for step in self.text.steps)


@dataclass(frozen=True, slots=True)
class Derived:
    """What follows from a component; a cast-on or bind-off has no versions and admits every count from `least`."""

    versions: tuple[DerivedVersion, ...]
    least: int | None = None

    def admits(self, stitches: int) -> bool:
        """Say whether the component can be worked over so many stitches, in any of its versions."""
        if self.least is not None:
            return stitches >= self.least
        return any(version.admits(stitches) for version in self.versions)

    def version_for(self, stitches: int) -> DerivedVersion | None:
        """Return the first version that works over so many stitches."""
        return next((version for version in self.versions if version.admits(stitches)), None)

    @property
    def rows(self) -> list[Row]:
        """The rows of all versions."""
        return [row for version in self.versions for row in version.rows]

    @property
    def starts(self) -> tuple[Progression, ...]:
        """The counts of all versions, in one progression where they make one."""
        if self.least is not None:
            return (Progression(1, 0, self.least),)
        return _joined(tuple(dict.fromkeys(start for version in self.versions for start in version.starts)))

    @property
    def said(self) -> str:
        """The counts in words: "a multiple of 6 stitches plus 3, at least 9"."""
        return " or ".join(map(say_counts, self.starts)) or "no number of stitches"


def say_counts(start: Progression) -> str:
    """Say a progression of counts as a knitter would: a multiple, an even or odd number, or one number."""
    if not start.of:
        return f"exactly {_stitches(start.least)}"
    least = f", at least {start.least}"
    if start.of == 1:
        return "any number of stitches" + (least if start.least > 1 else "")
    if start.of == 2:
        return f"an {'odd' if start.plus else 'even'} number of stitches{least}"
    plus = f" plus {start.plus}" if start.plus else ""
    return f"a multiple of {start.of} stitches{plus}{least}"


def _stitches(number: int) -> str:
    return f"{number} stitch{'' if number == 1 else 'es'}"


def _joined(starts: tuple[Progression, ...]) -> tuple[Progression, ...]:
    """Return several progressions as one where together they are one, else as they are.

    One period from the least count on shows each residue once, and what begins in it goes on for ever.
    """
    whole = lcm(*(start.of for start in starts)) if starts else 0
    if len(starts) < 2 or not 0 < whole <= MOST_JOINED:
        return starts
    least = min(start.least for start in starts)
    held = [n for n in range(least, least + whole) if any(start.admits(n) for start in starts)]
    tried = (Progression(of, least % of, least) for of in range(1, whole + 1) if whole % of == 0)
    return next(
        ((one,) for one in tried if held == list(range(least, least + whole, one.of)) and _holds(one, starts)), starts
    )


def _holds(one: Progression, starts: Iterable[Progression]) -> bool:
    """Say whether a progression holds all members of the others."""
    return all(start.of % one.of == 0 and one.admits(start.least) for start in starts)


@lru_cache(maxsize=KEPT)
def derive(component: Component, vocabulary: Vocabulary) -> Derived:
    """Derive what follows from the rows of a component, or from its operation."""
    if component.operation is not None:
        return Derived((), component.operation.least)
    return Derived(tuple(_derived(version, vocabulary) for version in component.versions))


def _derived(version: Version, vocabulary: Vocabulary) -> DerivedVersion:
    text = read_text(version.rows, vocabulary)
    rows = text.rows
    readable = bool(rows) and all(row.readable for row in rows)
    sides = sides_of(rows)
    chain = count([row.parts for row in rows], vocabulary, sides) if readable else Chain(())
    first, last = (sides[0], sides[-1]) if sides else ("RS", "RS")
    rs = [side != "WS" for side in sides]
    layout = layout_of(rows, rs, chain.starts[0], vocabulary) if len(chain.starts) == 1 else None
    return DerivedVersion(version.name, text, chain, first, last, layout)


def sides_of(rows: Sequence[Row]) -> tuple[Side, ...]:
    """Return the side of each row, by alternation where it is not stated; row 1 is a RS row where none is."""
    known = next(((place, row.side) for place, row in enumerate(rows) if row.side is not None), (0, "RS"))
    if known[1] == "round":
        return tuple("round" for _ in rows)
    even_is_rs = (known[1] == "RS") == (known[0] % 2 == 0)
    return tuple(row.side or ("RS" if (place % 2 == 0) == even_is_rs else "WS") for place, row in enumerate(rows))
