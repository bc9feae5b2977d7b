"""Finishing by fibre: how a piece is washed, laid out, steamed and dried. Common practice, no source.

A piece of several fibres gets what each of them bears: no steam where one bears none, no pins where one bears none.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.care.fibres import Fibre
from counterpane.craft.care.yarns import Yarn
from counterpane.craft.measures import WHOLE_PCT


@dataclass(frozen=True, slots=True)
class Way:
    """How one kind of fibre is finished; `width` and `length` are per cent of the finished size, least and most.

    `sorts` and `fibres` say whom it is for, a fibre by name before its sort; `superwash` narrows it to wool that is
    treated (True) or not. `soak` is what to mind in the water, "" for nothing. `steam` is whether steam may be held
    over it, `pins` whether it is pinned, `tumble` what a tumble dryer does for it, "" for nothing good.
    """

    name: str
    says: str
    sorts: tuple[str, ...]
    fibres: tuple[str, ...]
    superwash: bool | None
    soak: str
    steam: bool
    pins: bool
    tumble: str
    width: tuple[Fraction, Fraction]
    length: tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class Finish:
    """How a piece is finished: what its fibres bear together, and what to mind of each kind.

    `unknown` tells that some fibre is not known: nothing that heat or pull may spoil is then allowed.
    """

    ways: tuple[Way, ...]
    unknown: bool
    superwash_unknown: bool

    @property
    def steam(self) -> bool:
        """Tell whether steam may be held over the piece."""
        return not self.unknown and bool(self.ways) and all(way.steam for way in self.ways)

    @property
    def pins(self) -> bool:
        """Tell whether the piece is pinned."""
        return not self.unknown and bool(self.ways) and all(way.pins for way in self.ways)

    @property
    def soaks(self) -> tuple[str, ...]:
        """What to mind in the water, each thing once."""
        said = (part for way in self.ways for part in way.soak.split(", ") if part)
        return tuple(dict.fromkeys(said))

    def laid(self, width: Fraction, length: Fraction) -> tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]]:
        """Return how wide and how long the wet piece is laid out, least and most, in the unit of what is given."""
        return _reach(width, [way.width for way in self.ways]), _reach(length, [way.length for way in self.ways])


@dataclass(frozen=True, slots=True)
class Aftercare:
    """What a pattern says after the bind-off: how the piece is finished, and its care in words, None if not known.

    `steam` and `tumble` tell whether its label allows steam and a tumble dryer; None is not known.
    """

    finish: Finish
    care: str | None = None
    steam: bool | None = None
    tumble: bool | None = None


def _reach(size: Fraction, spans: Iterable[tuple[Fraction, Fraction]]) -> tuple[Fraction, Fraction]:
    ends = list(spans) or [(WHOLE_PCT, WHOLE_PCT)]
    return size * min(least for least, _ in ends) / 100, size * max(most for _, most in ends) / 100


def finish(yarns: Sequence[Yarn], ways: Sequence[Way]) -> Finish:
    """Return how a piece of these yarns is finished; wool gets both ways where nobody tells whether it is treated."""
    found = {way.name: way for yarn in yarns for fibre in yarn.named for way in _for(fibre, yarn, ways)}
    unsure = any(yarn.superwash is None and _treatable(yarn, ways) for yarn in yarns)
    unknown = not yarns or not all(yarn.is_read for yarn in yarns)
    return Finish(tuple(way for way in ways if way.name in found), unknown, unsure)


def _for(fibre: Fibre, yarn: Yarn, ways: Iterable[Way]) -> list[Way]:
    named = [way for way in ways if fibre.name in way.fibres]
    sorted_ = [way for way in ways if fibre.sort in way.sorts]
    return [
        way for way in named or sorted_ if None in (way.superwash, yarn.superwash) or way.superwash == yarn.superwash
    ]


def _treatable(yarn: Yarn, ways: Sequence[Way]) -> bool:
    return any(way.superwash is not None for fibre in yarn.named for way in _for(fibre, yarn, ways))
