"""Rows in another language, said from their tree: its messages are the phrases of an English row.

In English they give what `rows.say` gives in US terms, abbreviated; a test holds the two against each other.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import chain, zip_longest

from counterpane.craft.language.messages import Language, Message
from counterpane.craft.rows.tree import (
    BindOff,
    CastOn,
    Group,
    Hold,
    IntoOne,
    Marker,
    Node,
    OpenRepeat,
    Turn,
    Work,
)
from counterpane.craft.stitches import Vocabulary

ROW, STITCH = "row", "stitch"
"""Contexts of messages that are parts of rows, and names of stitches."""


def _row(english: str, plural: str = "") -> Message:
    return Message(english, plural, ROW)


_GLUED: Mapping[str, Message] = {
    "k": _row("k{n}"),
    "p": _row("p{n}"),
    "k tbl": _row("k{n} tbl"),
    "p tbl": _row("p{n} tbl"),
    "sl": _row("sl {n}"),
    "patt": _row("patt {n}"),
    "pick up and knit": _row("pick up and knit {n} st", "pick up and knit {n} sts"),
    "pick up and purl": _row("pick up and purl {n} st", "pick up and purl {n} sts"),
}
"""Stitches whose number stands inside their words."""
_WHOLE = {"k": _row("knit"), "p": _row("purl")}
_BARE = {"k tbl": "k", "p tbl": "p"}
_STITCHES = _row("{n} st", "{n} sts")
_OFTEN = {1: _row("once"), 2: _row("twice")}
_TIMES = _row("{n} time", "{n} times")
_SEVERAL = _row("{stitch} {often}")
_TO_STOP = _row("{stitch} {stop}")
_TO_END = _row("to end")
_TO_LAST = _row("to last st", "to last {n} sts")
_TO_MARKER = _row("to marker")
_BEFORE_MARKER = _row("to {n} st before marker", "to {n} sts before marker")
_BRACKETS = _row("[{inner}] {often}")
_REPEAT = _row("{star}{inner}; rep from {star}")
_REPEAT_TO = _row("{star}{inner}; rep from {star} {stop}")
_LAST_REPEAT = _row("{repeat}, ending last rep {inner}")
_END = _row("end {inner}")
_INTO = {1: _row("({inner}) into next st"), 2: _row("({inner}) into next double yo")}
_OFF = _row("bind off {n} st", "bind off {n} sts")
_ALL_OFF = _row("bind off all sts")
_OFF_SO = _row("bind off {n} st {manner}", "bind off {n} sts {manner}")
_ALL_OFF_SO = _row("bind off all sts {manner}")
_ALL_BUT = _row("bind off all but {n} st", "bind off all but {n} sts")
_ALL_BUT_SO = _row("bind off {manner} all but {n} st", "bind off {manner} all but {n} sts")
_ON = _row("cast on {n} st", "cast on {n} sts")
_HOLD = {
    "front": _row("sl next st to cn and hold in front", "sl next {n} sts to cn and hold in front"),
    "back": _row("sl next st to cn and hold at back", "sl next {n} sts to cn and hold at back"),
}
_MARKERS = {"place": _row("pm"), "slip": _row("sm"), "remove": _row("rm")}
_TURN, _WRAP = _row("turn"), _row("w&t")
_MANNER = _row("{stitch} {manner}")
_MANNERS = {name: _row(name) for name in ("kwise", "pwise", "wyif", "wyib", "in pattern")}
_HELD = _row("from cn")
_COLOUR = _row("in {colour}")
_FEWER = _row("decrease {n} st evenly", "decrease {n} sts evenly")
_MORE = _row("increase {n} st evenly", "increase {n} sts evenly")

PHRASES: tuple[Message, ...] = (
    *_GLUED.values(),
    *_WHOLE.values(),
    *(_STITCHES, *_OFTEN.values(), _TIMES, _SEVERAL, _TO_STOP, _TO_END, _TO_LAST, _TO_MARKER, _BEFORE_MARKER),
    *(_BRACKETS, _REPEAT, _REPEAT_TO, _LAST_REPEAT, _END, *_INTO.values()),
    *(_OFF, _ALL_OFF, _OFF_SO, _ALL_OFF_SO, _ALL_BUT, _ALL_BUT_SO, _ON),
    *_HOLD.values(),
    *_MARKERS.values(),
    *(_TURN, _WRAP, _MANNER, *_MANNERS.values(), _HELD, _COLOUR, _FEWER, _MORE),
)
"""All phrases of rows."""


class Sayer:
    """Says rows in one language."""

    def __init__(self, language: Language, vocabulary: Vocabulary) -> None:
        self.language = language
        self.vocabulary = vocabulary
        self._missing: list[str] = []

    def say(self, parts: Sequence[Node]) -> tuple[str, tuple[str, ...]]:
        """Say the parts of a row, and name the stitches that have no name in the language."""
        self._missing = []
        whole = _whole_row(parts)
        said = self._phrase(_WHOLE[whole]) if whole else self._list(tuple(parts), "*")
        return said, tuple(dict.fromkeys(self._missing))

    def _phrase(self, message: Message, number: int | None = None, **values: str) -> str:
        if not self.language.knows(message) and self.language.code != "en":
            self._missing.append(message.english)
        if number is not None:
            values["n"] = str(number)
        return self.language.say(message, number, **values)

    def _list(self, parts: tuple[Node, ...], star: str) -> str:
        out: list[str] = []
        for place in range(len(parts)):
            said = self._node(parts, place, star)
            earlier = parts[place - 1] if place else None
            if isinstance(earlier, OpenRepeat) and earlier.stop is None and earlier.last is None and not earlier.marker:
                said = self._phrase(_END, inner=said)
            out.append(said)
        return ", ".join(out)

    def _node(self, parts: tuple[Node, ...], place: int, star: str) -> str:
        match parts[place]:
            case Work(evenly=True) as work:
                return self._phrase(_FEWER if self.vocabulary[work.stitch].uses else _MORE, work.times)
            case Work() as work:
                return self._work(work)
            case Group(doubtful=True) as group:
                inner = self._list(group.parts, star + "*")
                return self._phrase(_REPEAT_TO, star=star, inner=inner, stop=self._often(group.times - 1))
            case Group() as group:
                return self._phrase(_BRACKETS, inner=self._list(group.parts, star), often=self._often(group.times))
            case IntoOne() as into:
                return self._phrase(_INTO[into.loops], inner=self._list(into.parts, star))
            case OpenRepeat() as repeat:
                return self._repeat(repeat, parts[place + 1 : place + 2], star)
            case node:
                return self._small(node)

    def _work(self, work: Work) -> str:
        if work.stitch in _GLUED:
            said = self._phrase(_GLUED[work.stitch], work.times)
            often = 1
        else:
            said, often = self._stitch(work.stitch), work.times
        for manner in work.manner:
            said = self._phrase(_MANNER, stitch=said, manner=self._phrase(_MANNERS[manner]))
        if work.held:
            said = f"{said} {self._phrase(_HELD)}"
        if often > 1:
            said = self._phrase(_SEVERAL, stitch=said, often=self._often(often))
        return f"{said} {self._phrase(_COLOUR, colour=_capital(work.colour))}" if work.colour else said

    def _stitch(self, key: str) -> str:
        english, numbers = stitch_message(self.vocabulary[key].names["us"][0])
        said = self._phrase(english)
        for place, number in enumerate(numbers, 1):
            said = said.replace(f"{{n{place}}}", number)
        return said

    def _often(self, times: int) -> str:
        return self._phrase(_OFTEN[times]) if times in _OFTEN else self._phrase(_TIMES, times)

    def _repeat(self, node: OpenRepeat, behind: tuple[Node, ...], star: str) -> str:
        change = behind[0] if behind else None
        stop = node.stop
        if isinstance(change, Work) and change.evenly and stop:
            stop -= self.vocabulary[change.stitch].uses * change.times
        first = node.parts[0]
        if node.plain and isinstance(first, BindOff):
            return self._all_but(first, stop or 0)
        if node.plain and isinstance(first, Work):
            name = self._stitch(_BARE.get(first.stitch, first.stitch))
            for manner in first.manner:
                name = self._phrase(_MANNER, stitch=name, manner=self._phrase(_MANNERS[manner]))
            return self._phrase(_TO_STOP, stitch=name, stop=self._stop(stop, node.marker))
        inner = self._list(node.parts, star + "*")
        if stop is None and not node.marker:
            said = self._phrase(_REPEAT, star=star, inner=inner)
        else:
            said = self._phrase(_REPEAT_TO, star=star, inner=inner, stop=self._stop(stop, node.marker))
        last = self._list(node.last, star + "*") if node.last else ""
        return self._phrase(_LAST_REPEAT, repeat=said, inner=last) if last else said

    def _stop(self, stop: int | None, marker: bool) -> str:
        if marker:
            return self._phrase(_BEFORE_MARKER, stop) if stop else self._phrase(_TO_MARKER)
        return self._phrase(_TO_LAST, stop) if stop else self._phrase(_TO_END)

    def _small(self, node: BindOff | CastOn | Hold | Marker | Turn) -> str:
        match node:
            case BindOff():
                return self._off(node)
            case CastOn():
                return self._phrase(_ON, node.times)
            case Hold():
                return self._phrase(_HOLD[node.where], node.times)
            case Marker():
                return self._phrase(_MARKERS[node.act])
        return self._phrase(_WRAP if node.wrapped else _TURN)

    def _off(self, node: BindOff) -> str:
        if not node.manner:
            return self._phrase(_ALL_OFF) if node.times is None else self._phrase(_OFF, node.times)
        manner = self._phrase(_MANNERS[node.manner])
        if node.times is None:
            return self._phrase(_ALL_OFF_SO, manner=manner)
        return self._phrase(_OFF_SO, node.times, manner=manner)

    def _all_but(self, one: BindOff, left: int) -> str:
        if not one.manner:
            return self._phrase(_ALL_BUT, left)
        return self._phrase(_ALL_BUT_SO, left, manner=self._phrase(_MANNERS[one.manner]))


def stitch_message(name: str) -> tuple[Message, tuple[str, ...]]:
    """Return the message of the name of a stitch, with places for its numbers, and the numbers."""
    pieces, numbers = re.split(r"\d+", name), tuple(re.findall(r"\d+", name))
    places = (f"{{n{place}}}" for place in range(1, len(numbers) + 1))
    return Message("".join(chain.from_iterable(zip_longest(pieces, places, fillvalue=""))), context=STITCH), numbers


def _whole_row(parts: Sequence[Node]) -> str | None:
    """Return "k" or "p" where it is worked across the whole row."""
    node = parts[0] if len(parts) == 1 else None
    if not isinstance(node, OpenRepeat) or not node.plain or node.stop != 0 or node.marker:
        return None
    return node.parts[0].stitch if node.parts[0] in (Work("k"), Work("p")) and isinstance(node.parts[0], Work) else None


def _capital(colour: str) -> str:
    """Write the letter of a colour as a capital; a name stays as it is."""
    return colour.upper() if len(colour) == 1 or colour[:2] in ("mc", "cc") else colour
