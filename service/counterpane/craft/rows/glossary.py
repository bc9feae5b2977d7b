"""The abbreviations that a text explains, and those that its rows use.

An explanation stands under a heading ("Abbreviations") in any usual form, or anywhere as "k2tog = knit 2 together" or
"ssk: slip, slip, knit". Nothing is judged here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from counterpane.craft.rows.passages import Passage, Stretch, begins_rows
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Line
from counterpane.craft.stitches import Terms, Vocabulary

SHORT_WORDS: Mapping[str, str] = {
    "[ ]": "work what stands inside as many times as the number after it says",
    "*": "work from the star to the semicolon, then again as far as the row says",
    "cn": "cable needle",
    "kwise": "knitwise, as if to knit",
    "pm": "place marker",
    "pwise": "purlwise, as if to purl",
    "rep": "repeat",
    "rm": "remove marker",
    "RS": "right side",
    "sm": "slip marker",
    "st": "stitch",
    "sts": "stitches",
    "WS": "wrong side",
}
"""Short words and signs of rows that are no stitches. Common practice, no source."""
FURTHER_WORDS: Mapping[str, str] = {
    "alt": "alternate",
    "beg": "beginning",
    "BO": "bind off",
    "CO": "cast on",
    "cont": "continue",
    "dpn": "double-pointed needle",
    "foll": "following",
    "pat": "pattern",
    "patt": "pattern",
    "rem": "remaining",
    "rnd": "round",
    "rnds": "rounds",
    "tbl": "through the back loop",
    "tog": "together",
}
"""Further short words that rows use. Common practice, no source."""
_WORDS = {word.lower(): meaning for words in (SHORT_WORDS, FURTHER_WORDS) for word, meaning in words.items()}
_PLAIN = frozenset(
    "bobble decrease increase intake knit over pattern pearl plain purl seam seamed slip yarn-over yarnover".split()
)
_SHAPE = (
    r"(?:k|p|sl|ss|sts?|st\(s\)|yo|yfwd|yrn|yon|yfrn|yb|yf|ybk|wyi[fb]|tbl|psso|p2sso|skpo?|sk2po?|s{2,3}[kp]|s2kpo?2?|cdd"
    r"|kf?b|pf?b|mb|pm|sm|rm|rs|ws|rep|tog|bo|co|mc|cc|cn|lli|rli|dpns?|m1[lrkp]*|[kp]\d?(?:tog|tbl|fb|b)(?:\s+tbl)?"
    r"|[ct]\d+[fblr]|\d/\d\s?[lr]p?c|w&t|alt|beg|cont|foll|inc|dec|patt?|rem|rnds?)"
)
# Heads of rows and orders as well ("WS: purl"): outside a list they explain nothing.
_ORDERS = r"(?!(?:rep|bo|co|beg|cont|foll|alt|rem|patt?|rnds?|inc|dec|[rw]s(?!\W+(?:right|wrong)\b))\b)"
_LOOSE = re.compile(
    rf"[\s>•*-]*(?P<names>[a-z][a-z0-9/(), &-]{{0,13}}?|{_SHAPE})\s*=\s*(?P<means>(?!\d)\S.*)"
    rf"|[\s>•*-]*{_ORDERS}(?P<known>{_SHAPE}(?:\s*[/,]\s*{_SHAPE})*)\s*(?::|\s-)\s+(?P<says>[a-z(].*)"
)
_ENTRY = re.compile(
    r"\s*(?:[-•>]\s+|\*\s(?=\S))?(?P<names>[^\s=:;][^=:;]{0,29}?)(?P<delim>\s*[=:]\s*|\s+-\s+|\s{2,})(?P<means>\S.*)"
)
_CLOSE = re.compile(r"\s*(?:[-•>]\s+)?(?P<names>[^\s,]{1,12})(?P<delim>,\s+|\s+)(?P<means>\S.*)")
_NEXT = re.compile(r"[;,.]\s+(?=[a-z][a-z0-9/() -]{0,14}?\s*=)|[;,.]\s+(?=[a-z][a-z0-9/()-]{0,9}:\s)|;\s+")
_NAMES = re.compile(r"\s*(?:[,/]|\bor\b|\()\s*")
_GLUED = re.compile(r"([a-z]+(?:[/-][a-z]+)*)\d+(tbl)?")
_DRESS = re.compile(r"[*_`\\]")
_LETTERS = re.compile("[a-z]+")
_ROW_WORDS = ("row", "rnd", "round")
_WORD = re.compile(r"[kp]\d+(?=[/-]?[kp]\d)|[a-z][a-z0-9]*(?:[/'-][a-z0-9]+)*|\d/\d\s?[lr]p?c\b")
_GOES_ON = 3
_LEAST_LISTED = 3


@dataclass(frozen=True, slots=True)
class Entry:
    """One explanation: the abbreviations it explains, as printed and in lower case, what it says, and where."""

    printed: str
    names: tuple[str, ...]
    meaning: str
    place: Place
    delimiter: str = " = "


@dataclass(frozen=True, slots=True)
class Glossary:
    """All explanations of a text in the order printed, and the lines they stand on.

    `listed` says that there is a list, which has a heading or several entries; `whole` that it goes down to the
    plainest ones (k, p or sts), so that what it leaves out is left out by mistake.
    """

    entries: tuple[Entry, ...] = ()
    lines: frozenset[int] = frozenset()
    listed: bool = False

    @property
    def names(self) -> frozenset[str]:
        """All abbreviations explained, in lower case."""
        return frozenset(name for entry in self.entries for name in entry.names)

    @property
    def whole(self) -> bool:
        """Whether the list explains even the plainest abbreviations."""
        return self.listed and bool(self.names & {"k", "p", "sts"})


def glossary_of(lines: Sequence[Line], given: Sequence[str], passages: Iterable[Passage]) -> Glossary:
    """Return what a text explains; `given` are its lines as printed."""
    entries, numbers, headed = [], set[int](), False
    for passage in passages:
        if passage.topic == "abbreviations":
            headed = True
            numbers |= {passage.head.number, *(stretch.line.number for stretch in passage.stretches)}
            entries += [entry for stretch in _begun(passage.stretches) for entry in _entries(stretch, given)]
    for line in lines:
        if line.number not in numbers and _may_explain(line.text) and (found := _loose(line, given)):
            entries += found
            numbers.add(line.number)
    entries.sort(key=lambda entry: entry.place)
    return Glossary(tuple(entries), frozenset(numbers), headed or len(entries) >= _LEAST_LISTED)


def _begun(stretches: Sequence[Stretch]) -> Iterator[Stretch]:
    """Yield the lines that begin an explanation, not those that go on with one further to the right."""
    first = min((_indent(stretch) for stretch in stretches), default=0)
    yield from (stretch for stretch in stretches if _indent(stretch) < first + _GOES_ON)


def _indent(stretch: Stretch) -> int:
    return 0 if stretch.start else len(stretch.text) - len(stretch.text.lstrip())


def _may_explain(text: str) -> bool:
    """Tell quickly that most lines explain nothing."""
    return not text.startswith(_ROW_WORDS) and ("=" in text or ":" in text or " - " in text)


def _loose(line: Line, given: Sequence[str]) -> list[Entry]:
    """Return the explanations that a line gives outside any list."""
    match = _LOOSE.match(line.text)
    if match is None or begins_rows(line.text):
        return []
    return list(_entries(Stretch(line, match.start("names") if match["names"] else match.start("known")), given))


def _entries(stretch: Stretch, given: Sequence[str]) -> Iterator[Entry]:
    """Yield the explanations on a line of a list."""
    cuts = [0, *(match.end() for match in _NEXT.finditer(stretch.text)), len(stretch.text)]
    for begin, end in pairwise(cuts):
        part = stretch.text[begin:end].rstrip(" ;,")
        match = _ENTRY.match(part) or _close(part)
        if match:
            at = Stretch(stretch.line, stretch.start + begin + match.start("names"))
            yield _entry(at, match["names"], match["means"], match["delim"], given)


def _close(part: str) -> re.Match[str] | None:
    """Match "k, knit" and "k knit": a known short word before its meaning."""
    match = _CLOSE.match(part)
    short = match and (re.fullmatch(_SHAPE, _DRESS.sub("", match["names"])) or match["delim"].startswith(","))
    return match if short else None


def _entry(at: Stretch, names: str, meaning: str, delimiter: str, given: Sequence[str]) -> Entry:
    begins = at.line.place(at.start)
    raw = given[at.line.number - 1][begins.column - 1 :][: len(names)]
    shown = _DRESS.sub("", names).strip() or ("*" if "*" in names else "")
    return Entry(raw.strip(), tuple(_names(shown)), meaning.strip(" .;,"), begins, delimiter)


def _names(printed: str) -> Iterator[str]:
    """Yield the abbreviations of "st(s)", "C4F/C4B", "k, knit", "M1L/R", each in lower case."""
    if printed.endswith(("(s)", "(es)")):
        stem = printed.partition("(")[0]
        yield from (stem, f"{stem}s")
        return
    last = ""
    for name in filter(None, (part.strip(" .)") for part in _NAMES.split(printed))):
        yield name
        if last and len(name) == 1 and len(last) > 1:
            yield last[:-1] + name
        last = name
    yield from [printed] if "/" in printed or printed in ("[ ]", "( )") else []


def is_short(word: str, vocabulary: Vocabulary) -> bool:
    """Tell whether a word of a row is an abbreviation and no plain English word."""
    return word in _WORDS or (word in vocabulary.by_name and word not in _PLAIN and "-" not in word)


def is_reserved(word: str) -> bool:
    """Tell whether a word has a meaning in rows beside the stitches: rep, sts, RS, row."""
    return word in _WORDS or word in _PLAIN or word in _ROW_WORDS


def used_in(lines: Iterable[Line], vocabulary: Vocabulary) -> dict[str, Place]:
    """Return the abbreviations that lines use, numbers taken off ("k3" is "k"), each with its first place."""
    out: dict[str, Place] = {}
    seen: set[str] = set()
    for line in lines:
        for match in _WORD.finditer(line.text):
            word = match.group()
            if word not in seen:
                seen.add(word)
                for name in short_words(word, vocabulary):
                    out.setdefault(name, line.place(match.start()))
    return out


def short_words(word: str, vocabulary: Vocabulary) -> Iterator[str]:
    """Yield the abbreviations in a word of a row, numbers taken off: k in "k3", k and tbl in "k2tbl"."""
    if is_short(word, vocabulary):
        yield word
    elif glued := _GLUED.fullmatch(word):
        yield from (part for part in glued.groups() if part and is_short(part, vocabulary))


def words_in(text: str) -> frozenset[str]:
    """Return the words of a text as they stand, and their letters without numbers: "k2tog", k and tog."""
    return frozenset((*_WORD.findall(text), *_LETTERS.findall(text)))


def usual_meaning(name: str, vocabulary: Vocabulary, terms: Terms) -> str | None:
    """Return what the trade means by an abbreviation, in a few words; None where it means several things."""
    if name in _WORDS:
        return _WORDS[name]
    keys = vocabulary.by_name.get(name, ())
    if len(keys) != 1 or vocabulary[keys[0]].ambiguous:
        return None
    said = vocabulary[keys[0]].said[terms]
    return said[: match.start() if (match := re.search(r"[:;(]", said)) else None].strip()


def usual_spelling(name: str) -> str:
    """Return an abbreviation in the capitals that the trade gives it: RS, M1L, C4F."""
    upper = next((word for word in (*SHORT_WORDS, *FURTHER_WORDS) if word.lower() == name), None)
    return upper or (name.upper() if re.fullmatch(r"[mct]\d+[a-z]*|[lr]{2}i|\d/\d[a-z]+", name) else name)
