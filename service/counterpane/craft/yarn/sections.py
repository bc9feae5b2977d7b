"""The loops of a section for each yarn: one repeat row by row, then as often as it is worked."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from math import lcm

from counterpane.craft.constructions import Section
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.choosing import yarn_of
from counterpane.craft.yarn.figures import Figure
from counterpane.craft.yarn.tally import Stitches, loops_of, not_known, tally_rows
from counterpane.craft.yarn.values import Yarn


def section_loops(
    section: Section, yarns: Sequence[Yarn], vocabulary: Vocabulary, rows: int | None = None
) -> Mapping[int, tuple[Figure, tuple[str, ...]]]:
    """Return for each yarn, by its place, its loops in a section, and its stitches of which no yarn is known.

    `rows` are the first so many rows of the section, all if None; more than it has go on in the same repeat.
    """
    counted = _stitches(section, yarns, vocabulary, section.rows if rows is None else rows)
    return {place: (loops_of(each, vocabulary), not_known(each, vocabulary)) for place, each in sorted(counted.items())}


def _stitches(section: Section, yarns: Sequence[Yarn], vocabulary: Vocabulary, rows: int) -> Mapping[int, Stitches]:
    """Count stitches by yarn: the rows after which the repeat and the stripes begin again together, and the rest."""
    if rows < 1:
        return {}
    tallies = tally_rows((row.parts for row in section.cycle[:rows]), section.before, vocabulary)
    period = lcm(len(tallies), *(yarn.every for yarn in yarns))
    whole, rest = divmod(rows, period)
    counted: dict[int, Stitches] = {}
    for index in range(min(rows, period)):
        times = whole + (index < rest)
        for key, number in tallies[index % len(tallies)].stitches.items():
            place = yarn_of(yarns, section.name, index + 1, key[1])
            counted.setdefault(place, Counter())[key] += number * times
    return counted
