"""The loops of a section for each yarn: running sums over one repeat, from which any number of rows follows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from counterpane.craft.constructions import Section
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.choosing import yarn_of
from counterpane.craft.yarn.spreads import NOTHING, Spread
from counterpane.craft.yarn.tally import RowTally, Stitches, loops_of, not_known, tally_rows
from counterpane.craft.yarn.values import Yarn

MOST_ROWS = 20_000
"""Rows after which texture and stripes must begin again together; house figure that bounds time."""


class StripesRunApart(ValueError):
    """Texture and stripes begin again together only after very many rows."""


@dataclass(frozen=True, slots=True)
class SectionLoops:
    """The loops of a section by yarn, of any number of its rows; yarns are told by their place.

    `sums[n]` are the loops of the first n rows of a period, after which texture and stripes begin again together.
    `unknown` are the stitches of which no yarn is known.
    """

    rows: int
    sums: tuple[Mapping[int, Spread], ...]
    unknown: Mapping[int, tuple[str, ...]]

    @property
    def period(self) -> int:
        """The rows after which texture and stripes begin again together, or all rows where they are fewer."""
        return len(self.sums) - 1

    @property
    def places(self) -> tuple[int, ...]:
        """The yarns that work any of it."""
        return tuple(sorted(self.sums[-1]))

    def works(self, place: int, row: int) -> bool:
        """Tell whether a yarn works any stitch of a row, counted from 0."""
        before, after = self.sums[row % self.period], self.sums[row % self.period + 1]
        return before.get(place) is not after.get(place)

    def loops(self, place: int, rows: int | None = None) -> Spread:
        """Return the loops of a yarn in the first rows, all if None; more than it has go on in the same repeat."""
        whole, rest = divmod(self.rows if rows is None else rows, self.period)
        return self.sums[-1].get(place, NOTHING).times(whole) + self.sums[rest].get(place, NOTHING)

    def likely(self, place: int, rows: int) -> Fraction:
        """Return the likely loops of a yarn in the first rows: one number where three are not needed."""
        whole, rest = divmod(rows, self.period)
        return self.sums[-1].get(place, NOTHING).likely * whole + self.sums[rest].get(place, NOTHING).likely


def section_loops(section: Section, yarns: Sequence[Yarn], vocabulary: Vocabulary) -> SectionLoops:
    """Return the loops of a section; StripesRunApart where its stripes and its texture do not come together."""
    tallies = tally_rows((row.parts for row in section.cycle), section.before, vocabulary)
    period = min(lcm(len(tallies), *(yarn.every for yarn in yarns)), max(section.rows, len(tallies)))
    if period > MOST_ROWS:
        raise StripesRunApart(f"{section.name}: texture and stripes begin again together after {period} rows")
    sums: list[Mapping[int, Spread]] = [{}]
    unknown: dict[int, dict[str, None]] = {}
    loops: dict[tuple[int, int], Spread] = {}
    for row in range(period):
        index = row % len(tallies)
        after = dict(sums[-1])
        for place, stitches in _by_yarn(section, tallies[index], row + 1, yarns).items():
            if (index, place) not in loops or len(yarns) > 1:
                loops[index, place] = loops_of(stitches, vocabulary)
                unknown.setdefault(place, {}).update(dict.fromkeys(not_known(stitches, vocabulary)))
            after[place] = after.get(place, NOTHING) + loops[index, place]
        sums.append(after)
    return SectionLoops(section.rows, tuple(sums), {place: tuple(keys) for place, keys in unknown.items()})


def _by_yarn(section: Section, tally: RowTally, row: int, yarns: Sequence[Yarn]) -> Mapping[int, Stitches]:
    """Return the stitches of a row by the yarn that works them."""
    counted: dict[int, Stitches] = {}
    for key, number in tally.stitches.items():
        counted.setdefault(yarn_of(yarns, section.name, row, key[1]), Stitches())[key] += number
    return counted
