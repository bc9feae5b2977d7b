"""Text to lines and lines to tokens, each keeping the line and column of the text as given.

Everything is normalised once, here: dashes, quotes, unusual spaces, signs for "times", number words, capitals.
What a token means is not known here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal, NamedTuple, TypeAlias

from counterpane.craft.rows.remarks import is_remark
from counterpane.craft.rows.tree import Place

Kind: TypeAlias = Literal["word", "number", "mark", "star", "open", "close", "pause"]

_SAME = {
    **dict.fromkeys("‐‑‒–—―−﹣－", "-"),
    **dict.fromkeys("‘’‚′ʼ", "'"),
    **dict.fromkeys("“”„″", '"'),
    **dict.fromkeys(
        "\t\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000", " "
    ),
    **dict.fromkeys("＊∗⁎✱✳﹡", "*"),
    **dict.fromkeys("×✕✖", "x"),
    "，": ",",
    "；": ";",
    "：": ":",
    "（": "(",
    "）": ")",
    "＋": "+",
    "＝": "=",
    "⁄": "/",
}
_DROPPED = frozenset("\u00ad\u200b\u200c\u200d\u2060\ufeff")
_UNITS = "one two three four five six seven eight nine".split()
_TEENS = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
NUMBER_WORDS = {
    word: number
    for number, word in enumerate(
        (*_UNITS, *_TEENS, *(word for ten in _TENS for word in (ten, *(f"{ten}-{unit}" for unit in _UNITS)))), start=1
    )
}
LONGEST_NUMBER = 18
LINE_END = "\r\n|\n|\r|\u2028|\u2029|\x0b|\x0c"
# "k2p2" and "k2/p2" are two words; "p.s.s.o." is one, without its points.
_TOKEN = re.compile(
    r"(?P<number>\d+(?![a-z0-9/])|\d+(?=(?:st|nd|rd|th|sts|x)\b))"
    r"|(?P<dotted>(?:[a-z]\.){2,}[a-z]?(?![a-z0-9]))"
    r"|(?P<word>[kp]\d+(?=[/-]?[kp]\d)|[a-z0-9]+(?:[/'-][a-z0-9]+)*)"
    r"|(?P<star>\*+|†+|‡+|#+|\+(?=\s*[a-z(\[]))"
    r"|(?P<open>[(\[{])|(?P<close>[)\]}])|(?P<pause>[,;.:&=/-])|(?P<mark>\S)"
)


_KINDS: dict[str, Kind] = {"star": "star", "open": "open", "close": "close", "pause": "pause"}


@dataclass(frozen=True, slots=True)
class Line:
    """A line in normal form, and where each of its characters stood: `columns` is None where nothing was dropped."""

    number: int
    text: str
    columns: tuple[int, ...] | None = None

    def place(self, index: int) -> Place:
        """Return the place of a character of the normal form in the text as given."""
        return Place(self.number, self.columns[index] if self.columns and index < len(self.columns) else index + 1)


class Token(NamedTuple):
    """One word, number or sign; `value` is the number, also of a number word, and `norm` the text with it as digits.

    A tuple with its place worked out when asked for, because a text of a megabyte has half a million tokens.
    """

    kind: Kind
    text: str
    line: Line
    start: int
    value: int | None
    norm: str

    @property
    def place(self) -> Place:
        """Where the token begins."""
        return self.line.place(self.start)


def normal_lines(text: str) -> list[Line]:
    """Split a text into lines in normal form; CRLF is one line end, a leading BOM is not counted, a remark is blank."""
    text = text.removeprefix("\ufeff")
    raw = re.split(LINE_END, text)
    return [_normal(number, "" if is_remark(line) else line) for number, line in enumerate(raw, start=1)]


def _normal(number: int, line: str) -> Line:
    if line.isascii() and "\t" not in line:
        return Line(number, line.lower())
    kept = [(index, char) for index, char in enumerate(line, start=1) if char not in _DROPPED]
    text = "".join(_SAME.get(char) or _lower(char) for _, char in kept)
    dropped = len(kept) != len(line)
    return Line(number, text, tuple(index for index, _ in kept) if dropped else None)


def _lower(char: str) -> str:
    low = char.lower()
    return low if len(low) == 1 else char


def tokens(line: Line, start: int = 0, end: int | None = None) -> list[Token]:
    """Cut a stretch of a line into tokens; every character but spaces lands in one."""
    found = _TOKEN.finditer(line.text, start, len(line.text) if end is None else end)
    return [_token(line, match.start(), match.lastgroup or "mark", match.group()) for match in found]


def _token(line: Line, start: int, kind: str, text: str) -> Token:
    if kind == "word":
        value = NUMBER_WORDS.get(text)
        return Token("word", text, line, start, None, text) if value is None else _number(line, start, text, value)
    if kind == "number" and len(text) <= LONGEST_NUMBER:
        return _number(line, start, text, int(text))
    if kind == "dotted":
        return Token("word", text, line, start, None, text.replace(".", ""))
    return Token(_KINDS.get(kind, "mark"), text, line, start, None, text)


def _number(line: Line, start: int, text: str, value: int) -> Token:
    return Token("number", text, line, start, value, str(value))
