"""How a piece may be washed against how it is going to be washed, and wool that felts."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.care.groups import CareLine, CareValue
from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.yarns import Yarn

VERY_MILD = 2
"""Rank of the process in washing that a machine's wool cycle keeps to: the two bars. Common practice, no source."""

METHODS = ("not at all", "hand", "machine, wool cycle", "machine, mild process", "machine")
"""Ways of washing by the rank of their process."""

WATER = ("washing", "tumble_drying")
"""The groups of care in which wool felts."""

ROOM = 1
"""Rank of the temperature of the room, which has no degrees."""


@dataclass(frozen=True, slots=True)
class Washes:
    """How a piece is washed at most: the way, and degrees Celsius, None where there are none."""

    method: str
    degrees: int | None


def washes(value: CareValue) -> Washes:
    """Return what a value of washing says."""
    process, degrees = value.ranks
    return Washes(METHODS[process], degrees if degrees > ROOM else None)


def felts(washing: CareValue | None, tumble: CareValue | None, most: Fraction) -> bool | None:
    """Tell whether untreated wool felts in this washing and tumble dryer; `most` is the warmest it bears, in °C.

    It does above that, in any process of a machine but the wool cycle, and in a tumble dryer. None where what is not
    known could make it felt.
    """
    harsh = washing is not None and (washing.ranks[0] > VERY_MILD or washing.ranks[1] > most)
    tumbled = tumble is not None and any(tumble.ranks)
    if harsh or tumbled:
        return True
    return None if washing is None or tumble is None else False


def washed_at_most(label: Labelled) -> Washes | None:
    """Return how a piece is washed at most, or is going to be, in the words of the safety inputs; None if not known."""
    washing, tumble, dry = (_going(label, name) for name in (*WATER, "dry_cleaning"))
    if washing is None or (tumble is None and any(washing.ranks)):
        return None
    way = washes(washing)
    if not any(washing.ranks):
        return None if dry is None else Washes("dry clean only" if any(dry.ranks) else "not at all", None)
    return Washes(f"{way.method}, tumble dry", way.degrees) if tumble and any(tumble.ranks) else way


def _going(label: Labelled, group: str) -> CareValue | None:
    line = next(line for line in label.care if line.group.name == group)
    word = label.piece.washed.get(group)
    return line.group.of(word) if word else line.value


def superwash(label: Labelled) -> bool | None:
    """Tell whether all wool and hair of a piece is treated against felting; None if not known, or there is none."""
    found = [may_felt(yarn) for yarn in label.piece.yarns if yarn.has("animal hair") is not False]
    if not found or (None in found and True not in found):
        return None
    return True not in found


def may_felt(yarn: Yarn) -> bool | None:
    """Tell whether a yarn holds wool or hair that is not treated against felting; None where that is not known."""
    hair = yarn.has("animal hair")
    if hair is False or yarn.superwash:
        return False
    return True if hair and yarn.superwash is False else None


def treated(label: Labelled, yarn: Yarn) -> tuple[CareValue | None, CareValue | None]:
    """Return the washing and the tumble drying that a yarn gets: as the piece is going to be, else as its band says."""
    washing, tumble = (next(line for line in label.care if line.group.name == name) for name in WATER)
    return _told(washing, label, yarn), _told(tumble, label, yarn)


def _told(line: CareLine, label: Labelled, yarn: Yarn) -> CareValue | None:
    word = label.piece.washed.get(line.group.name) or yarn.care.get(line.group.name)
    return line.group.of(word) if word else None


@dataclass(frozen=True, slots=True)
class Beyond:
    """A group in which the piece is going to be treated harder than a yarn bears; the yarn by its place."""

    line: CareLine
    asked: CareValue
    bears: CareValue
    place: int


def beyond(label: Labelled) -> Iterator[Beyond]:
    """Give each yarn that does not bear how the piece is going to be treated."""
    for line in label.care:
        asked = _asked(line, label.piece.washed)
        for place, yarn in enumerate(label.piece.yarns):
            told = yarn.care.get(line.group.name)
            if asked and told and not line.group.bears(line.group.of(told), asked):
                yield Beyond(line, asked, line.group.of(told), place)


def _asked(line: CareLine, washed: Mapping[str, str]) -> CareValue | None:
    told = washed.get(line.group.name)
    return line.group.of(told) if told else None
