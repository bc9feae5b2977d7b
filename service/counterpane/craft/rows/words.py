"""Text to lines and lines to tokens, each keeping the line and column of the text as given.

Everything is normalised once, here: dashes, quotes, unusual spaces, signs for "times", fractions, joined and wide
letters, number words, capitals. What a token means is not known here.
"""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_right
from collections.abc import Callable, Sequence
from functools import lru_cache, partial
from typing import Literal, NamedTuple, TypeAlias

from counterpane.craft.records import record
from counterpane.craft.rows.remarks import is_remark
from counterpane.craft.rows.tree import Place

Kind: TypeAlias = Literal["word", "number", "mark", "star", "open", "close", "pause"]

_SAME = {
    **dict.fromkeys("‐‑‒–−﹣－", "-"),
    **dict.fromkeys("—―", " - "),  # Parts sentences, never a word: "k2—42 sts".
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
_SOFT_HYPHEN = "\u00ad"
_DROPPED = frozenset(_SOFT_HYPHEN + "\u200b\u200c\u200d\u200e\u200f\u2060\ufe0e\ufe0f\ufeff")
# A backslash keeps a star or bracket from being taken for layout where a text comes out of Markdown.
_ESCAPED = re.compile(r"\\(?=[*_#\[\](){}+.!`~>|-])")
_RPT = re.compile(r"\brpt(?=s?\b)")  # "rep" in as many other letters.
_UNITS = "one two three four five six seven eight nine".split()
_TEENS = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
NUMBER_WORDS = {
    word: number
    for number, word in enumerate(
        (*_UNITS, *_TEENS, *(word for ten in _TENS for word in (ten, *(f"{ten}-{unit}" for unit in _UNITS)))), start=1
    )
}
NUMBER_WORD = rf"(?:{'|'.join(_TENS)})(?:-(?:{'|'.join(_UNITS)}))?|{'|'.join((*_TEENS, *_UNITS))}"
"""The alternatives of a regular expression for a number in words; of two that begin alike the longer comes first."""
LONGEST_NUMBER = 18  # Digits of a number that is read; house.
CUT_WORD = re.compile(r"(?P<word>\b[a-z]{2,})(?P<hyphen>-)\s*$")
# Words that keep their hyphen where it stands at the end of a line.
_HYPHENED = frozenset({*"right left wrong cast slip bind double set yarn over in pick odd even".split(), *_TENS})
_LONGEST_KEPT = 400  # House: signs of a stretch whose tokens are kept for another that says the same.
LINE_END = "\r\n|\n|\r|\u2028|\u2029|\x0b|\x0c"
# "k2p2", "k2/p2" and "k2MC" are two words; "p.s.s.o." is one, without its points, and so is the "k." of "k. 2".
_COLOUR = r"mc|cc\d?|[acd]"  # Glued to a number as in "k2MC"; "k2b" has a meaning of its own.
_TOKEN = re.compile(
    rf"(?P<number>\d+(?![a-z0-9/])|\d+(?=(?:st|nd|rd|th|d|sts|x|b|{_COLOUR})\b))"
    r"|(?P<short>(?:rep|sl|k|p|m|inc|dec|cont)\.(?=\s*(?:from\b|\d|\*)))"
    r"|(?P<dotted>(?:[a-z]\.){2,}[a-z]?(?![a-z0-9]))"
    rf"|(?P<word>[kp]\d+(?=[/-]?[kp]\d|(?:{_COLOUR})\b)|[a-z0-9]+(?:[/'-][a-z0-9]+)*)"
    r"|(?P<star>\*+|†+|‡+|#+|\+(?=\s*[a-z(\[]))"
    r"|(?P<open>[(\[{])|(?P<close>[)\]}])|(?P<pause>[-=]>|→|[,;.:&=/-])|(?P<mark>\S)"
)
_KINDS: dict[str, Kind] = {
    **{"word": "word", "mark": "mark", "star": "star", "open": "open", "close": "close", "pause": "pause"},
}
# Straight from a tuple, which takes half the time.
_placed: Callable[[tuple[int, int]], Place] = partial(tuple.__new__, Place)


@record
class Line:
    """A line in normal form, and where each of its characters stood.

    `raw` is the line as given. `columns` is None where every character stands where it stood, else the column of each,
    and one behind the last. `parts` are the lines that a joined line was made of, each with the index at which it
    begins; a joined line has the number of its first.
    """

    number: int
    text: str
    columns: tuple[int, ...] | None = None
    raw: str = ""
    parts: tuple[tuple[int, Line], ...] = ()

    def place(self, index: int) -> Place:
        """Return the place of a character of the normal form in the text as given."""
        if self.parts:
            start, line = self._part(index)
            return line.place(index - start)
        if self.columns:
            return _placed((self.number, self.columns[max(0, min(index, len(self.text)))]))
        return _placed((self.number, index + 1))

    def column(self, index: int) -> int:
        """Return the column of a character of the normal form in the text as given."""
        return self.place(index).column if self.parts or self.columns else index + 1

    def index(self, column: int) -> int:
        """Return where in the normal form of a line that is not joined a column stands, or the nearest before it."""
        return bisect_right(self.columns, column) - 1 if self.columns else column - 1

    def _part(self, index: int) -> tuple[int, Line]:
        return self.parts[max(0, bisect_right(self.parts, index, key=lambda part: part[0]) - 1)]

    def given(self, start: int, end: int) -> str:
        """Return the stretch as given that a stretch of the normal form comes from, on one line."""
        if not self.parts:
            return self.raw[self.place(start).column - 1 : self.place(end).column - 1]
        out = [
            line.given(max(0, start - begin), min(len(line.text), end - begin))
            for begin, line in self.parts
            if begin < end and start < begin + len(line.text)
        ]
        return " ".join(text.strip() for text in out)


Lines: TypeAlias = dict[tuple[int, str], Line]
"""Lines in normal form by their numbers and as they are given."""


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


# As a place is.
_copied: Callable[[tuple[Kind, str, Line, int, int | None, str]], Token] = partial(tuple.__new__, Token)


def given_lines(text: str) -> list[str]:
    """Split a text into lines; CRLF is one line end, a leading BOM is not counted."""
    return re.split(LINE_END, text.removeprefix("\ufeff"))


def normal_lines(text: str) -> list[Line]:
    """Split a text into lines in normal form; a remark is blank."""
    return in_normal_form(given_lines(text), {})


def in_normal_form(given: Sequence[str], known: Lines) -> list[Line]:
    """Return the normal form of lines; `known` are lines of texts that are nearly alike, and these are added."""
    found = list(enumerate(given, start=1))
    for each in found:
        if each not in known:
            known[each] = _normal(each[0], "" if is_remark(each[1]) else each[1])
    return [known[each] for each in found]


def _normal(number: int, line: str) -> Line:
    found = _of_table(_normal_signs(number, line)) if "|" in line else _normal_signs(number, line)
    return found if "rpt" not in found.text else Line(number, _RPT.sub("rep", found.text), found.columns, found.raw)


def _of_table(line: Line) -> Line:
    """Take the first cell of a row of a table for its label: "| 3 | knit |" is "3: knit"."""
    if not line.text.lstrip().startswith("|"):
        return line
    blank = line.text.replace("|", " ", 1)
    text = blank.replace("|", ":", 1).replace("|", " ")
    return Line(line.number, text, line.columns, line.raw)


def _normal_signs(number: int, line: str) -> Line:
    if line.isascii() and "\t" not in line and "\\" not in line:
        return Line(number, line.lower(), raw=line)
    out = list(map(_plain, line))
    if "\\" in line:
        for match in _ESCAPED.finditer(line):
            out[match.start()] = ""
    text = "".join(out)
    if len(text) == len(line) and "" not in out:
        return Line(number, text, None, line)
    for index in [index for index, signs in enumerate(map(len, out)) if signs != 1]:
        out[index] = _in_place(out[index], line, index)
    columns = [column for column, plain in enumerate(out, start=1) for _ in plain]
    return Line(number, "".join(out), (*columns, len(line) + 1), line)


def _in_place(plain: str, line: str, index: int) -> str:
    """Return what a sign that is not one sign stands for where it stands: "2½" is "2 1/2", a cut word keeps its cut."""
    if plain[:1].isdigit() and plain[-1:].isdigit() and "/" in plain and line[index - 1 : index].isdigit():
        return " " + plain
    return "-" if line[index] == _SOFT_HYPHEN and not line[index + 1 :].strip() else plain


def joined(lines: Sequence[Line]) -> Line:
    """Join lines that belong together; a word cut by a hyphen at the end of a line becomes whole."""
    out: list[str] = []
    parts: list[tuple[int, Line]] = []
    length = 0
    for index, line in enumerate(lines):
        text = line.text
        cut = CUT_WORD.search(text) if index + 1 < len(lines) and lines[index + 1].text.lstrip()[:1].isalpha() else None
        if cut:
            text = text[: cut.start("hyphen")] if cut["word"] not in _HYPHENED else text.rstrip()
        lead = len(text) - len(text.lstrip()) if index else 0
        parts.append((length - lead, line))
        text = text[lead:] + ("" if cut or index + 1 == len(lines) else " ")
        out.append(text)
        length += len(text)
    return Line(lines[0].number, "".join(out), parts=tuple(parts))


@lru_cache(maxsize=4096)
def _plain(char: str) -> str:
    """Return a character in normal form: "½" is "1/2", "ﬁ" is "fi", a wide digit a digit, a dash a hyphen."""
    if char in _DROPPED:
        return ""
    if char in _SAME:
        return _SAME[char]
    parts = char if char.isascii() else unicodedata.normalize("NFKC", char)
    if len(parts) == 1:
        low = _SAME.get(parts, parts).lower()
    else:
        low = "".join(_SAME.get(part, part) for part in parts).lower()
    return low if len(low) == len(parts) else parts


def tokens(line: Line, start: int = 0, end: int | None = None) -> list[Token]:
    """Cut a stretch of a line into tokens; every character but spaces lands in one."""
    end = len(line.text) if end is None else end
    if end - start > _LONGEST_KEPT:
        return _cut(line, start, end)
    said = line.text[start:end]
    seen = _seen(said)
    if not seen:
        seen.append(True)
        return _cut(line, start, end)
    kept = _cut_again(said)
    return [_copied((kind, word, line, start + at, value, norm)) for kind, word, _, at, value, norm in kept]


def first_token(line: Line, start: int, end: int) -> Token | None:
    """Return the token that a stretch of a line begins with; None where there are only spaces."""
    match = _TOKEN.search(line.text, start, end)
    return _token(line, match) if match else None


def _cut(line: Line, start: int, end: int) -> list[Token]:
    return [
        # Words and signs, most of a text, are made here; what else there is, below.
        _copied((kind, text, line, match.start(), None, text))
        if (kind := _KINDS.get(match.lastgroup or "")) and (text := match[0]) not in NUMBER_WORDS
        else _token(line, match)
        for match in _TOKEN.finditer(line.text, start, end)
    ]


@lru_cache(maxsize=256)
def _seen(text: str) -> list[bool]:
    """Return a list of its own for each of the latest words: what stands once is cut where it stands and not kept."""
    return []


@lru_cache(maxsize=256)
def _cut_again(text: str) -> list[Token]:
    """Cut words that other rows say as well, as most rows of a pattern do: the latest are kept."""
    return _cut(Line(0, text), 0, len(text))


def _token(line: Line, match: re.Match[str]) -> Token:
    kind, text, start = match.lastgroup or "mark", match.group(), match.start()
    if text in NUMBER_WORDS:
        return _number(line, start, text, NUMBER_WORDS[text])
    if kind in _KINDS:
        return Token(_KINDS[kind], text, line, start, None, text)
    if kind == "number" and len(text) <= LONGEST_NUMBER:
        return _number(line, start, text, int(text))
    if kind in ("dotted", "short"):
        return Token("word", text, line, start, None, text.replace(".", ""))
    return Token("mark", text, line, start, None, text)


def _number(line: Line, start: int, text: str, value: int) -> Token:
    return Token("number", text, line, start, value, str(value))
