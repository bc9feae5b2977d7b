"""Care values in their groups, and the mildest of several: a value for each group that every yarn bears.

Each value has ranks along one or two lines: how hot, how hard. The milder of two has the smaller rank along each line,
and is a value of the group itself, since the values of ISO 3758 are closed under that.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from counterpane.craft.care.yarns import Yarn


@dataclass(frozen=True, slots=True)
class CareValue:
    """One value of a group: its short word, its sentence, its ranks. In washing the ranks are process and degrees."""

    word: str
    says: str
    ranks: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class CareGroup:
    """A group of care values, under one of the five headings of a label."""

    name: str
    heading: str
    values: tuple[CareValue, ...]

    def of(self, word: str) -> CareValue:
        """Return the value of a word; KeyError for none."""
        return {value.word: value for value in self.values}[word]

    def mildest(self, values: Iterable[CareValue]) -> CareValue:
        """Return what all of these allow: the smallest rank along each line. At least one value is given."""
        lowest = tuple(map(min, zip(*(value.ranks for value in values), strict=True)))
        return next(value for value in self.values if value.ranks == lowest)

    def bears(self, most: CareValue, asked: CareValue) -> bool:
        """Tell whether a value that allows this most allows what is asked."""
        return self.mildest((most, asked)) == asked


@dataclass(frozen=True, slots=True)
class CareLine:
    """A group of a piece's label.

    `value` is None where a yarn does not tell it; `at_most` is then what the others leave at most, None where none
    tells it. `untold` are the places of the yarns that do not tell it, `deciding` those that alone set the value.
    """

    group: CareGroup
    value: CareValue | None
    at_most: CareValue | None
    untold: tuple[int, ...]
    deciding: tuple[int, ...]


def care_label(yarns: Sequence[Yarn], groups: Iterable[CareGroup]) -> tuple[CareLine, ...]:
    """Return the care label of a piece of these yarns, group by group in the order of a label."""
    return tuple(_line(yarns, group) for group in groups)


def _line(yarns: Sequence[Yarn], group: CareGroup) -> CareLine:
    told = {place: group.of(yarn.care[group.name]) for place, yarn in enumerate(yarns) if group.name in yarn.care}
    untold = tuple(place for place in range(len(yarns)) if place not in told)
    most = group.mildest(told.values()) if told else None
    return CareLine(group, None if untold else most, most, untold, _deciding(told, group))


def _deciding(told: Mapping[int, CareValue], group: CareGroup) -> tuple[int, ...]:
    """Return the places of the yarns without whose value the label would be harsher; none where all are alike."""
    if len(set(told.values())) < 2:
        return ()
    most = group.mildest(told.values())
    without = {value: group.mildest(set(told.values()) - {value}) for value in told.values()}
    return tuple(place for place, value in told.items() if without[value] != most)


def known_headings(lines: Iterable[CareLine]) -> dict[str, bool]:
    """Tell of each heading of a label whether it is known, in the order of a label.

    It is where a group under it is known, and none is told by some of the yarns only.
    """
    under: dict[str, list[CareLine]] = {}
    for line in lines:
        under.setdefault(line.group.heading, []).append(line)
    return {
        heading: any(line.value for line in found) and not any(line.at_most and not line.value for line in found)
        for heading, found in under.items()
    }
