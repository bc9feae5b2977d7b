"""Fibres of a whole piece by mass over all its yarns, exact, and percentages whose sum is 100.

Percentages of ball bands are taken as they stand. Percentages of an analysis are of clean dry mass, to which each
fibre's agreed allowance and loss are added: Regulation (EU) No 1007/2011, Annex VIII, chapter 3.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.care.fibres import Fibre
from counterpane.craft.care.yarns import Yarn
from counterpane.craft.measures import WHOLE_PCT

MOST_PLACES = 4
"""Decimals beyond which a trace is shown as nothing; house."""


@dataclass(frozen=True, slots=True)
class Portion:
    """One fibre of the piece: the exact per cent of mass that it is at least and at most; equal where it is known."""

    fibre: Fibre
    least: Fraction
    most: Fraction


@dataclass(frozen=True, slots=True)
class Composition:
    """The fibres of a piece, the largest share first, equal ones by name.

    `told` tells that all fibres are known, `known` that each share is one figure besides. Where no bounds follow, there
    are no portions.
    """

    portions: tuple[Portion, ...]
    known: bool
    told: bool = False

    @property
    def figures(self) -> tuple[tuple[str, Fraction, Fraction], ...]:
        """Name, least and most of each share: two compositions of the same figures are alike."""
        return tuple((portion.fibre.name, portion.least, portion.most) for portion in self.portions)

    @property
    def percents(self) -> tuple[Fraction, ...]:
        """The exact shares; of use where they are known."""
        return tuple(portion.least for portion in self.portions)


@dataclass(frozen=True, slots=True)
class _Mix:
    """A yarn as parts of its mass: each fibre, and for words that tell no fibre what they may be (nothing: anything).

    `weight` is what a gram of the yarn counts for.
    """

    parts: Mapping[str, Fraction]
    unread: tuple[tuple[Fraction, tuple[str, ...]], ...]
    weight: Fraction = Fraction(1)

    def stretch(self, name: str) -> _Stretch:
        """Return the least and most part that a fibre is."""
        least = self.parts.get(name, Fraction(0))
        may_be = (part for part, choices in self.unread if not choices or name in choices)
        return least, least + sum(may_be, Fraction(0))


_Stretch = tuple[Fraction, Fraction]


def composition(yarns: Sequence[Yarn], *, dry: bool = False) -> Composition:
    """Return the composition of a piece of these yarns, per cent of mass; `dry` for percentages of an analysis.

    A yarn without grams may be any part of the piece, one of estimated grams any part that those allow, a yarn whose
    fibres are not known anything: the shares then lie between bounds. Dry masses of fibres that are not known, or whose
    state must be told, give no bounds at all.
    """
    mixes = [_mix(yarn, dry) for yarn in yarns]
    if not mixes or (dry and any(mix.unread for mix in mixes)):
        return Composition((), known=False)
    fibres = {fibre.name: fibre for yarn in yarns for fibre in yarn.named}
    weights = [_weight(yarn, mix) for yarn, mix in zip(yarns, mixes, strict=True)]
    found = []
    for name, fibre in fibres.items():
        least, most = _between([mix.stretch(name) for mix in mixes], weights)
        if most:
            found.append(Portion(fibre, least * 100, most * 100))
    found.sort(key=lambda portion: (-portion.most, -portion.least, portion.fibre.name))
    told = not any(mix.unread for mix in mixes)
    return Composition(tuple(found), told and all(portion.least == portion.most for portion in found), told)


def _weight(yarn: Yarn, mix: _Mix) -> _Stretch | None:
    return None if yarn.mass is None else (yarn.mass[0] * mix.weight, yarn.mass[1] * mix.weight)


def _mix(yarn: Yarn, dry: bool) -> _Mix:
    """Return the parts of a yarn; percentages that do not make 100 tell nothing."""
    anything = _Mix({}, ((Fraction(1), ()),))
    if yarn.total != WHOLE_PCT:
        return anything
    masses: dict[str, Fraction] = {}
    unread = []
    for share in yarn.fibres or ():
        fibre = share.reading.fibre
        if fibre is None:
            unread.append((share.percent / 100, share.reading.choices))
            continue
        increase = fibre.increase(share.state) if dry else Fraction(0)
        if increase is None:
            return anything
        masses[fibre.name] = masses.get(fibre.name, Fraction(0)) + share.percent / 100 * (1 + increase / 100)
    weight = sum(masses.values(), Fraction(0)) + sum((part for part, _ in unread), Fraction(0))
    return _Mix({name: mass / weight for name, mass in masses.items()}, tuple(unread), weight)


def _between(stretches: Sequence[_Stretch], weights: Sequence[_Stretch | None]) -> _Stretch:
    """Return the least and most share over all yarns, each of a weight between two ends, or of any (None)."""
    least = _least([low for low, _ in stretches], weights)
    return least, 1 - _least([1 - high for _, high in stretches], weights)


def _least(shares: Sequence[Fraction], weights: Sequence[_Stretch | None]) -> Fraction:
    """Return the least mean of the shares by weights that may be anything between their ends.

    It is had with yarns of small shares as heavy and yarns of large shares as light as they may be. Where the line
    between small and large runs is tried out. A yarn of any weight may be nearly all, or nothing.
    """
    means = [share for share, weight in zip(shares, weights, strict=True) if weight is None]
    bounded = sorted((share, weight) for share, weight in zip(shares, weights, strict=True) if weight is not None)
    mass = sum((light for _, (light, _) in bounded), Fraction(0))
    part = sum((share * light for share, (light, _) in bounded), Fraction(0))
    if mass:
        means.append(part / mass)
    for share, (light, heavy) in bounded:
        if heavy > light:
            mass, part = mass + heavy - light, part + share * (heavy - light)
            means.append(part / mass)
    return min(means, default=Fraction(0))


def rounded(percents: Sequence[Fraction], places: int = 0) -> tuple[Fraction, ...]:
    """Round shares that make 100 to a number of decimals so that they still make 100, by the largest remainder.

    Each is cut, and what is missing goes, a step at a time, to those that were cut the most; of equal ones to the
    larger share, then to the first.
    """
    step = Fraction(1, 10**places)
    cut = [percent // step * step for percent in percents]
    missing = int((sum(percents, Fraction(0)) - sum(cut, Fraction(0))) / step)
    order = sorted(range(len(cut)), key=lambda at: (cut[at] - percents[at], -percents[at], at))
    for at in order[:missing]:
        cut[at] += step
    return tuple(cut)


def places_for(percents: Sequence[Fraction], places: int = 0) -> int:
    """Return the decimals, at least so many, at which no fibre that is there is shown as nothing."""
    while places < MOST_PLACES and any(not shown for shown in rounded(percents, places)):
        places += 1
    return places
