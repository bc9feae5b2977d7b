"""Sentences that hold for some sizes: "For size 2 only: ...", "Sizes 1 and 3 only", "All sizes:", "(newborn only)"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from counterpane.craft.rows.labels import LABEL, number_of
from counterpane.craft.rows.quick import word_of
from counterpane.craft.rows.sizes.flat import Flat

_ORDINAL = r"(?:\d{1,2}(?:st|nd|rd|th)|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth)"
_JOIN = r"\s*(?:,\s*and\s|,|and\b|or\b|&|-|to\b)\s*"
_ENDS = r"(?:(?:two|three)\s+)?(?:smallest|smaller|largest|larger)"
_SIGN = re.compile(r"\s{0,4}(?P<sign>[:,.;)\]]|\n|$|-\s)|(?=\s)")
_MOST_LOOKED_BACK = 60  # House.
_NAMED = {"two": 2, "three": 3}  # English words, by definition.
# What a note begins with, but for the names of sizes: looked at first, so that most places are passed over at once.
_FIRST = r"\daefilnorst"
_CLAUSE = re.compile(r"(?:^|[.;:,(\[\n*#_])\s*$")
_CLOSE = {"(": ")", "[": "]"}
_MAY_NOTE = re.compile(word_of(r"only\b", r"sizes?\s+\d", "sizes?:"))
_TELLS = re.compile(r"\s*\)?\s*[:.]")


@dataclass(frozen=True, slots=True)
class Note:
    """A note and what it governs: `sizes` counts from 0; the note's words stand from `start` to `end`.

    What it governs reaches from `begin` to `stop` and holds the note itself; `phrase` says that it is the phrase or
    sentence around the note.
    """

    sizes: frozenset[int]
    start: int
    end: int
    begin: int
    stop: int
    phrase: bool = False


def notes(flat: Flat, number: int, names: Sequence[str]) -> list[Note]:
    """Return the notes of a text in so many sizes, in order."""
    form = _form(names)
    found: list[tuple[re.Match[str], frozenset[int]]] = []
    for match in form.finditer(flat.text):
        if not _is_note(match, flat.text):
            continue
        sizes = _sizes(match, number, names, found[-1][1] if found else frozenset())
        if sizes is not None:
            found.append((match, sizes))
    marks = [(match.start(), _behind(flat.text, match), sizes) for match, sizes in found]
    return list(_governed(flat, marks))


def may_hold_notes(text: str) -> bool:
    """Tell cheaply whether there can be any."""
    return _MAY_NOTE.search(text) is not None


def _form(names: Sequence[str]) -> re.Pattern[str]:
    """Return the form of a note in a text whose sizes have these names."""
    name = "|".join(re.escape(name) for name in sorted(names, key=len, reverse=True)) or r"(?!)"
    first = "".join(sorted({re.escape(name[:1]) for name in names}))
    return re.compile(
        rf"(?=[{_FIRST}{first}])(?<![\w-])(?:(?:for|on|in)\s+)?(?:the\s+)?(?:"
        rf"sizes?\s+(?P<numbers>\d{{1,2}}(?:{_JOIN}\d{{1,2}}){{0,40}})(?![\w.])"
        rf"|(?P<ordinals>{_ORDINAL}(?:{_JOIN}{_ORDINAL}){{0,40}})\s+sizes?\b"
        rf"|sizes?\s+(?P<named>(?:{name})(?:{_JOIN}(?:{name})){{0,40}})(?!\w)"
        rf"|(?P<bare>(?:{name})(?:{_JOIN}(?:{name})){{0,40}})(?!\w)(?P<size>\s+sizes?\b)?"
        rf"|(?P<ends>{_ENDS})\s+sizes?\b|(?P<rest>(?:all\s+)?(?:the\s+)?(?:other|remaining)\s+sizes)\b"
        rf"|(?P<all>all(?:\s+the)?\s+sizes|every\s+size)\b)(?P<only>\s+only\b)?"
    )


def _sizes(match: re.Match[str], number: int, names: Sequence[str], earlier: frozenset[int]) -> frozenset[int] | None:
    """Return the sizes that a note names, None where they are not sizes of this text."""
    every = frozenset(range(number))
    if match["all"]:
        return every
    if match["rest"]:
        return every - earlier
    if match["ends"]:
        return _at_an_end(match["ends"], number)
    if printed := match["numbers"] or match["ordinals"]:
        found = _listed(printed)
        return found if found <= every else None
    words = match["named"] or match["bare"] or ""
    return frozenset(names.index(word) for word in re.split(_JOIN, words) if word and word in names) or None


def _listed(printed: str) -> frozenset[int]:
    """Return the sizes of "1, 3 and 5" or "2-4", from 0."""
    out: list[int] = []
    for join, item in re.findall(rf"({_JOIN})?({_ORDINAL}|\d{{1,2}})", printed):
        last = (number_of(item) or 0) - 1
        first = out[-1] + 1 if out and join.strip() in ("-", "to") else last
        out += range(first, last + 1)
    return frozenset(out)


def _at_an_end(words: str, number: int) -> frozenset[int]:
    """Return the sizes of "smallest", "two largest": the sizes are printed from small to large."""
    many = next((many for word, many in _NAMED.items() if words.startswith(word)), 1)
    if words.endswith("er"):
        many = max(many, number - 1)
    return frozenset(range(many) if "small" in words else range(number - many, number))


def _is_note(match: re.Match[str], text: str) -> bool:
    """Tell whether words that name sizes govern something, and are no mention of a size in passing."""
    if match["bare"] and not match["only"]:
        return False
    sign = _SIGN.match(text, match.end())
    if sign is None:
        return False
    begins = _CLAUSE.search(text, max(0, match.start() - _MOST_LOOKED_BACK), match.start()) or match.start() == 0
    if match["only"]:
        return bool(begins or sign["sign"])
    return bool(begins) and sign["sign"] in (":", "\n" if match["all"] or match["rest"] else ":")


def _behind(text: str, match: re.Match[str]) -> int:
    """Return where the words of a note end, with the sign and the blanks behind them."""
    sign = _SIGN.match(text, match.end())
    if sign is None or sign["sign"] in (None, "", "\n", ")", "]", ".", ";"):
        return match.end()
    end = sign.end()
    while text[end : end + 1] in (" ", "*", "_"):
        end += 1
    return end


def _governed(flat: Flat, marks: Sequence[tuple[int, int, frozenset[int]]]) -> Iterator[Note]:
    """Yield each note with what it governs."""
    for index, (start, end, sizes) in enumerate(marks):
        following = [mark[0] for mark in marks[index + 1 : index + 2]]
        opened = flat.text[max(0, start - 2) : start].strip()[-1:]
        if opened in _CLOSE and opened:
            yield _in_brackets(flat, start, end, sizes, opened)
        else:
            yield _in_line(flat, start, end, sizes, following[0] if following else len(flat.text))


def _in_brackets(flat: Flat, start: int, end: int, sizes: frozenset[int], opened: str) -> Note:
    """Return a note in brackets: with words behind it there, behind the label of a row, or behind a phrase."""
    opening = flat.text.rfind(opened, 0, start)
    close, behind = _closing(flat.text, opened, end, flat.paragraph_end(start))
    line = flat.starts[flat.line_at(start)]
    if flat.text[end:close].strip():
        alone = not flat.text[line:opening].strip() or bool(_CLAUSE.search(flat.text, line, opening))
        begin = opening if alone else len(flat.text[line:opening].rstrip()) + line
        return Note(sizes, start, end, begin, behind, phrase=alone)
    label = LABEL.match(flat.text, line + _lead(flat.text, line), flat.line_end(flat.line_at(start)))
    before = len(flat.text[line:opening].rstrip()) + line
    if _TELLS.match(flat.text, close) and label and label.end() >= opening:
        return Note(sizes, before, behind, line, flat.paragraph_end(start))
    return Note(sizes, before, behind, before, behind, phrase=True)


def _closing(text: str, opened: str, begin: int, last: int) -> tuple[int, int]:
    """Return where an open bracket is closed and what follows it begins; twice the end of a text that never does."""
    depth = 1
    for index in range(begin, last):
        depth += (text[index] == opened) - (text[index] == _CLOSE[opened])
        if depth == 0:
            return index, index + 1
    return last, last


def _lead(text: str, line: int) -> int:
    found = re.compile(r"[\s*#>_•-]*").match(text, line)
    return found.end() - line if found else 0


def _in_line(flat: Flat, start: int, end: int, sizes: frozenset[int], following: int) -> Note:
    """Return a note in a line: a heading over a block, or before or behind the words that it governs."""
    line = flat.line_at(start)
    begin, stop = flat.starts[line], flat.line_end(line)
    leads = not flat.text[begin:start].strip(" \t*#>_•-")
    if leads and not flat.text[end:stop].strip(" \t*_:.-"):
        return Note(sizes, begin, stop, begin, _block_end(flat, line, following))
    if not leads and not _CLAUSE.search(flat.text, max(0, start - _MOST_LOOKED_BACK), start):
        start = begin + len(flat.text[begin:start].rstrip())
        return Note(sizes, start, end, start, end, phrase=True)
    stop = flat.paragraph_end(start)
    if following < stop:
        return Note(sizes, start, end, start, following)
    if leads:
        return Note(sizes, start, end, start, stop)
    sentence = re.compile(r"[.;](?=\s|$)").search(flat.text, end, stop)
    return Note(sizes, start, end, start, sentence.end() if sentence else stop)


def _block_end(flat: Flat, line: int, following: int) -> int:
    """Return where a block under a heading ends: at the next note, else at a blank line behind its words."""
    if following < len(flat.text):
        return following
    filled = False
    for number in range(line + 1, len(flat.lines)):
        blank = not flat.lines[number].text.strip()
        if blank and filled:
            return flat.starts[number]
        filled = filled or not blank
    return len(flat.text)
