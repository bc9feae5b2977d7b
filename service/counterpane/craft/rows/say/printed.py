"""What is printed beside the stitches of a row and is not in its tree: yarns, notes in brackets, names of fabrics."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from counterpane.craft.rows.asides import aside_at
from counterpane.craft.rows.colours import LEADS, take_yarn
from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.fabrics import take_across, take_fabric
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Token, normal_lines, tokens
from counterpane.craft.rows.workings import ADVERBS

_ENDS = frozenset({"end", "ending"})
_FILLERS = _ENDS | {"then", "and", "also", "finally", "now"}
_LEAD = re.compile(r"(?:work|cont|continue|keep)?\s*(?:even\s+|across\s+)?(?:in\s+)?", re.IGNORECASE)
_NO_NAME = frozenset({"", "patt", "pattern", "pat"})


@dataclass(frozen=True, slots=True)
class Fabric:
    """The name of a fabric as printed; `whole` says that it is a sentence of its own ("work sts as they appear")."""

    words: str
    whole: bool = False


@dataclass(frozen=True, slots=True)
class Printed:
    """Words to be said before and after the nodes at some places, the fabrics named at others, and the end."""

    before: Mapping[Place, str] = field(default_factory=dict)
    after: Mapping[Place, str] = field(default_factory=dict)
    fabrics: Mapping[Place, Fabric] = field(default_factory=dict)
    tail: str = ""

    def mapped(self, change: Callable[[str], str]) -> Printed:
        """Return the same with notes and the names of fabrics changed; yarns keep their names."""
        after = {place: change(words) for place, words in self.after.items()}
        fabrics = {place: Fabric(change(fabric.words), fabric.whole) for place, fabric in self.fabrics.items()}
        return Printed(self.before, after, fabrics, self.tail)

    @property
    def words(self) -> tuple[str, ...]:
        """All that is to be said."""
        fabrics = (fabric.words for fabric in self.fabrics.values())
        return (*self.before.values(), *self.after.values(), *fabrics, *filter(None, (self.tail,)))


NOTHING = Printed()


def printed_in(row: str, start: Place) -> Printed:
    """Find what is printed beside the stitches in the words of a row as given, which begin at a place of the text."""
    return _Finder(row, start).found()


class _Finder:
    """A walk over the words of a row; `clause` is the place of the stitch that is being spoken of."""

    def __init__(self, row: str, start: Place) -> None:
        lines = normal_lines(row)
        self.raw = row.splitlines()
        self.start = start
        self.cursor = Cursor([token for line in lines for token in tokens(line)])
        self.before: dict[Place, str] = {}
        self.after: dict[Place, str] = {}
        self.fabrics: dict[Place, Fabric] = {}
        self.tail = ""
        self.clause: Place | None = None

    def found(self) -> Printed:
        """Go through the row once."""
        while self.cursor:
            token = self.cursor.token
            if token.kind == "open" and self._aside():
                continue
            if token.kind not in ("word", "number"):
                self.clause = None
                self.cursor.at += 1
            elif self.clause is None and token.norm in _FILLERS:
                self.cursor.at += 1
                if token.norm in _ENDS:
                    self.cursor.take_word("with")
            else:
                self._word(token)
        return Printed(self.before, self.after, self.fabrics, self.tail)

    def _aside(self) -> bool:
        """Keep a note in brackets; a printed count is said elsewhere."""
        aside = aside_at(self.cursor)
        if aside is None:
            return False
        begin, place = self.cursor.at, self.clause
        self.cursor.at += aside.length
        if aside.count is None and place is not None:
            self.after[place] = self._given(begin)
        elif aside.count is None:
            self.tail = self._given(begin)
        return True

    def _word(self, token: Token) -> None:
        """Keep a clause on the yarn, the name of a fabric, or how a stitch is worked ("loosely")."""
        begin = self.cursor.at
        if self.clause is None and token.norm in LEADS and take_yarn(self.cursor):
            self._yarn(self._given(begin))
            return
        self.clause = self.clause or self._place(begin)
        if take_across(self.cursor):
            words = self._given(begin)
            self.fabrics[self.clause] = Fabric(words[0].lower() + words[1:], whole=True)
        elif take_fabric(self.cursor):
            self._fabric(self._given(begin), self.clause)
        else:
            if token.norm in ADVERBS:
                self.after[self.clause] = token.text
            self.cursor.at = begin + 1

    def _fabric(self, words: str, place: Place) -> None:
        name = words[_LEAD.match(words).end() :]  # type: ignore[union-attr]
        if name.lower().startswith("as "):
            self.fabrics[place] = Fabric(f"work {name}", whole=True)
        elif name.lower() not in _NO_NAME:
            self.fabrics[place] = Fabric(name)

    def _yarn(self, words: str) -> None:
        """Keep a clause on the yarn for the stitch that follows."""
        run, at = self.cursor.run, self.cursor.at
        following = next(
            (i for i in range(at, len(run)) if run[i].kind not in ("pause", "close") and run[i].norm not in _FILLERS),
            None,
        )
        if following is None:
            self.tail = words
        else:
            self.before[self._place(following)] = words[0].lower() + words[1:]

    def _place(self, index: int) -> Place:
        """Return where a token stands in the text that the row is from."""
        place = self.cursor.run[index].place
        column = place.column + (self.start.column - 1 if place.line == 1 else 0)
        return Place(self.start.line + place.line - 1, column)

    def _given(self, begin: int) -> str:
        """Return the words from a token up to the cursor, as given."""
        first, last = self.cursor.run[begin].place, self.cursor.run[self.cursor.at - 1]
        lines = self.raw[first.line - 1 : last.place.line]
        lines[-1] = lines[-1][: last.place.column - 1 + len(last.text)]
        lines[0] = lines[0][first.column - 1 :]
        return " ".join(line.strip() for line in lines)
