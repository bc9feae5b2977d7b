"""Rows read by their shape: rows that are alike but for their places and numbers are read once.

A row is read as it stands; when its words come a second time with other numbers, they are read with numbers that stand
for any, and what is read then is the shape. It is used only where it gives, with the row's own numbers and places, what
reading the row itself gives. Numbers below 3 are words of their own, since "1" and "2" have words that go with them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, fields, is_dataclass
from typing import TypeAlias

from counterpane.craft.rows.own_words import OwnWords
from counterpane.craft.rows.read import ReadRow, read_tokens
from counterpane.craft.rows.tree import NOWHERE, Place
from counterpane.craft.rows.words import LONGEST_NUMBER, Token, normal_lines, tokens
from counterpane.craft.stitches import Terms, Vocabulary

LEAST_ALIKE = 3  # Numbers from here on change nothing but counts; house.
_ANY = "\x00"  # In no word: stands for a number.
_FIRST, _APART, _NEAR = 1_000_500, 1_000, 2  # House: numbers that no row prints.
_LEAST_ANY = _FIRST - _APART // 2
_ANY_NUMBER = re.compile(r"(?<!\d)(\d{7})(?!\d)")  # As all of them are printed.
# With these words a number names a stitch or a fabric: it is no number like any other.
_NAMING = frozenset("tog together rib ribbing cn cable moss as through row rows rnd round".split())
_Key: TypeAlias = tuple[str, ...]
_Maker: TypeAlias = Callable[[Sequence[int], Sequence[Token]], object]


@dataclass(frozen=True, slots=True)
class _Constant:
    """What is the same of every row."""

    value: object


class Shapes:
    """The rows of a text, each shape read once."""

    def __init__(self, vocabulary: Vocabulary, terms: Terms, own: OwnWords | None = None) -> None:
        self.vocabulary = vocabulary
        self.terms = terms
        self.own = own or OwnWords()
        self._seen: set[_Key] = set()
        self._makers: dict[_Key, _Maker | None] = {}
        self._shapes: dict[_Key, tuple[_Key, list[int]]] = {}

    def read(self, run: Sequence[Token]) -> ReadRow:
        """Read the tokens of one row."""
        run = self.own.spelt_out(run)
        key, numbers = self._shape_of(run)
        read = self._by_shape(key, numbers, run) or read_tokens(run, self.vocabulary, self.terms)
        if key in self._seen and key not in self._makers:
            self._makers[key] = self._maker(run, numbers, read)
        self._seen.add(key)
        return read

    def read_words(self, text: str) -> ReadRow:
        """Read words that could stand in the place of a row's; places count from 1 in them.

        No shape is made of them: most differ from all others that are tried, and a shape would cost more than it saves.
        """
        run = self.own.spelt_out([token for line in normal_lines(text) for token in tokens(line)])
        return self._by_shape(*_shape(run), run) or read_tokens(run, self.vocabulary, self.terms)

    def _shape_of(self, run: Sequence[Token]) -> tuple[_Key, list[int]]:
        """Return the shape of a row, and its numbers; of words that were read before, what they had then."""
        words = tuple([token.text for token in run])
        found = self._shapes.get(words)
        if found is None:
            found = self._shapes[words] = _shape(run)
        return found

    def _by_shape(self, key: _Key, numbers: Sequence[int], run: Sequence[Token]) -> ReadRow | None:
        """Return a row made by its shape; None where that is not known."""
        maker = self._makers.get(key)
        made = maker(numbers, run) if maker else None
        assert made is None or isinstance(made, ReadRow)
        return made

    def _maker(self, run: Sequence[Token], numbers: Sequence[int], read: ReadRow) -> _Maker | None:
        """Return what makes a row of this shape, None where the numbers mean more than numbers."""
        any_numbers = read_tokens(_with_any(run), self.vocabulary, self.terms) if numbers else read
        places: dict[Place, int] = {}
        for index, token in enumerate(run):
            places.setdefault(token.place, index)
        try:
            members = [_made(getattr(any_numbers, each.name), places, len(numbers)) for each in fields(ReadRow)]
        except KeyError:
            return None
        maker = _built(ReadRow, members)
        return maker if repr(maker(numbers, run)) == repr(read) else None


def _shape(run: Sequence[Token]) -> tuple[_Key, list[int]]:
    """Return the words of a row with their larger numbers left open, and those numbers."""
    key: list[str] = []
    numbers: list[int] = []
    for token in run:
        norm = token.norm
        # Most words and signs end in no digit, which is quickly told.
        number = _number(token) if norm[-1:].isdecimal() else None
        if number is None:
            key.append(token.text)
        else:
            key.append(_ANY if token.value is not None else token.norm[0] + _ANY)
            numbers.append(number)
    if _NAMING.isdisjoint(key):
        return tuple(key), numbers
    return tuple([token.text for token in run]), []


def _number(token: Token) -> int | None:
    """Return the number of "12" or "k12" that may be any other; None for all else."""
    if token.value is not None:
        return token.value if token.value >= LEAST_ALIKE else None
    word = token.norm
    if token.kind == "word" and word[0] in "kp" and word[1:].isdecimal() and len(word) <= LONGEST_NUMBER:
        number = int(word[1:])
        return number if number >= LEAST_ALIKE else None
    return None


def _with_any(run: Sequence[Token]) -> list[Token]:
    """Return the words of a row with numbers that tell which one they stand for."""
    out: list[Token] = []
    count = 0
    for token in run:
        if _number(token) is None:
            out.append(token)
            continue
        number = _FIRST + _APART * count
        count += 1
        word = str(number) if token.value is not None else f"{token.norm[0]}{number}"
        value = number if token.value is not None else None
        out.append(Token(token.kind, word, token.line, token.start, value, word))
    return out


def _made(value: object, places: dict[Place, int], numbers: int) -> _Maker | _Constant:
    """Return what makes a value with other numbers and places; KeyError for a place or a number that is no token's."""
    if isinstance(value, Place):
        return _Constant(value) if value == NOWHERE else _placed(places[value])
    if type(value) is int and value >= _LEAST_ANY:
        which, more = divmod(value - _FIRST + _APART // 2, _APART)
        if abs(more - _APART // 2) > _NEAR or which >= numbers:
            raise KeyError(value)
        return _numbered(which, more - _APART // 2)
    if isinstance(value, str) and len(found := _ANY_NUMBER.split(value)) > 1:
        return _built(_spelt, [_made(int(each) if each.isdecimal() else each, places, numbers) for each in found])
    if isinstance(value, tuple):
        members = [_made(each, places, numbers) for each in value]
        return _Constant(value) if all(isinstance(each, _Constant) for each in members) else _built(_several, members)
    if is_dataclass(value) and not isinstance(value, type):
        return _built(type(value), [_made(getattr(value, each.name), places, numbers) for each in fields(value)])
    return _Constant(value)


def _several(*values: object) -> object:
    return values


def _spelt(*words: object) -> str:
    return "".join(map(str, words))


def _placed(index: int) -> _Maker:
    return lambda numbers, run: run[index].place


def _numbered(which: int, more: int) -> _Maker:
    return lambda numbers, run: numbers[which] + more


def _built(kind: Callable[..., object], makers: Sequence[_Maker | _Constant]) -> _Maker:
    """Return what makes a value; its constant members are put in once and for all."""
    members = [maker.value if isinstance(maker, _Constant) else None for maker in makers]
    changing = [(index, maker) for index, maker in enumerate(makers) if not isinstance(maker, _Constant)]

    def made(numbers: Sequence[int], run: Sequence[Token]) -> object:
        own = members.copy()
        for index, maker in changing:
            own[index] = maker(numbers, run)
        return kind(*own)

    return made
