"""Statements of a text about its counts: "Cast on 96 sts.", "(multiple of 6 sts plus 2)"."""

from __future__ import annotations

import re
from dataclasses import dataclass

from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LONGEST_NUMBER, NUMBER_WORD, NUMBER_WORDS, Line

_STITCHES = r"(?:stitches|sts?)\b"
_STS = rf"(?:\s*{_STITCHES})?"
_N = (
    rf"(\d{{1,3}}(?:,\d{{3}})+(?!\d)|\d{{1,{LONGEST_NUMBER}}}|"
    rf"{NUMBER_WORD})"
)
_CASTS_ON = (
    r"\b(?:cast(?:ing)? (?:on|up)|c/?o|c\.o\.|set (?:on|up)"
    r"|pick(?:ing)? up(?:\s*[(]?\s*(?:and|&)\s+(?:k|p|knit|purl)\b\s*[)]?)?)(?:\*\*|__)?\s*"
    r"(?:(?:loosely|about|approx\w*|exactly|a total of|another)\s+)*"
)
CAST_ON = re.compile(rf"{_CASTS_ON}{_N}\b((?:\s*[(\[][\d,;\s]+[)\]])?)")
_NOT_WHOLE = re.compile(rf"{_CASTS_ON}(-\s?\d+|\d+(?:\s\d/\d|[.,]\d{{1,2}}))(?=\s*{_STITCHES})")
_EXTRAS = (
    rf"(?:\s*,?\s*[(\[]?(?:\+|plus|and|adding|with|&)\s*{_N}{_STS}"
    r"(?:\s+(?:over|extra|more|edge sts?|edge stitches|for the edges?))?)"
)
_PATTERN = r"(?:patt(?:ern)?|repeat|rep|scallop|diamond|leaf|shell|feather|point)\b"
_NEEDS = "(?:requires?|takes?|needs?|is|has|consists of)"
# A repeat alone ("14-st rep") is that of the pattern between its edges; with what is over it is that of the cast-on.
_MULTIPLES = tuple(
    re.compile(form)
    for form in (
        rf"\b(?:mult(?:iples?|s)?\.? of|mult(?:iple)?\s*:?|divisible by|divided? by){_STS}\s+{_N}{_STS}({_EXTRAS}*)",
        rf"\b{_N}\s*{_STITCHES}\s+(?:for|to)\s+(?:each|every|the|a|one)\s+{_PATTERN}({_EXTRAS}*)",
        rf"\b(?:each|every)\s+{_PATTERN}\s*(?:{_NEEDS}\s+)?{_N}\s*{_STITCHES}({_EXTRAS}*)",
        rf"{_STITCHES}\s+(?:in|by)\s+{_N}\s?'?(?:e?s)\b({_EXTRAS}*)",
        rf"\b{_N}[\s-]*(?:sts?|stitch(?:es)?)[\s-]+(?:patt(?:ern)?\s+)?rep(?:eat)?s?\b({_EXTRAS}+)",
        rf"\b(?:rep(?:eat)?|patt(?:ern)?)\s*(?:of|over|:)\s*{_N}\s*{_STITCHES}({_EXTRAS}+)",
    )
)
_COUNT_ALONE = re.compile(rf"\W*(\d{{1,{LONGEST_NUMBER}}})\s*{_STITCHES}\W*$")
_EXTRA = re.compile(_N)
# What each of these holds: looked for first, since it is quickly told.
_CASTS = r"c(?:ast|/?o|\.o)|set |pick|hold|held"
_MAY_BE_CASTING_ON, _MAY_CAST_ON = re.compile(_CASTS), re.compile(rf"{_CASTS}|st")
_MAY_BE_MULTIPLE = re.compile("st|mult|divi|odd|even")
_PARITY = re.compile(r"\b(?:an?\s+)?(odd|uneven|even)\s+(?:number|no\.?)\b")
_ANY = re.compile(r"\bany\s+number\s+of\s+(?:sts|stitches)\b")
_WITH = (
    r"(?:(?:now|next|then)\s*,?\s+)?(?:(?:rotate|turn)\s+(?:the\s+)?(?:work|piece)\b[^.;:]{0,40}?(?:,|\band\b)\s*)?"
    r"(?:(?:using|with|from|on|along|beg(?:inning)? at|join|starting)\b[^.;:()]{2,120}?[, ]\s*(?:and\s+)?)?"
)
_TOTAL = re.compile(rf"[(\[-]\s*(?:total\s*(?:of|:)?\s*)?{_N}\s*{_STITCHES}")
_ALONG = re.compile(rf"{_N}{_STS}\s+(?:more\s+)?(?:evenly\s+)?(?:along|across|from|down|up|over|around)\b")
# "Slip the sts from both holders to one needle (90 sts)": a piece begins with what waited for it.
_FROM_HOLDERS = (
    rf"(?:slip|place|transfer|return|put|join)\b[^.;()]{{0,60}}\b(?:holders?|held)\b[^.;()]{{0,60}}\({_N}\s*{_STITCHES}"
)
_HELD = re.compile(_FROM_HOLDERS)
# "**BO** all sts": what is printed bold keeps its stars where a text comes out of Markdown.
_BOLD = r"(?:\*\*|__)?"
CASTING_ON = re.compile(
    rf"{_BOLD}{_WITH}(?:(?:loosely|provisionally)\s+)?"
    r"(?:cast(?:ing)? (?:on|up)|c/?o|set up(?=\s+\d)|set on|pick(?:ing)? up)\b"
    rf"|{_FROM_HOLDERS}"
)
_ADDS = re.compile(r"\b(?:at|more|extra|further|additional|beg|beginning|next)\b")
BINDING_OFF = re.compile(
    rf"{_BOLD}(?:(?:now|next|then|and|finally)\s*,?\s+)*(?:(?:very\s+)?(?:loosely|evenly)\s+)?"
    r"(?:(?:cast|bind|chain)(?:ing)? off|b/?o)\b"
)
_ALL_OFF = re.compile(
    rf"(?:[,\s]*+(?:very|off|loosely|evenly|firmly|softly|kwise|pwise|knitwise|purlwise|on|in|using|with|as|all|the|your|"
    r"rem|remaining|last|of|these)\b)*+\s*+"
    rf"(?:{_N}\s*(?:rem|remaining|live)?\s*{_STITCHES})?"
)


@dataclass(frozen=True, slots=True)
class StatedCastOn:
    """A cast-on as printed; `others` are the counts of further sizes in brackets."""

    count: int
    place: Place
    others: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class StatedMultiple:
    """A multiple as printed; `plus` may be larger than `of`."""

    of: int
    plus: int
    place: Place

    @property
    def said(self) -> str:
        """The multiple in words: "multiple of 4 plus 2"."""
        return f"multiple of {self.of} plus {self.plus}" if self.plus else f"multiple of {self.of}"


def _number(text: str) -> int:
    return NUMBER_WORDS.get(text) or int(text.replace(",", ""))


def casts_on(text: str) -> bool:
    """Tell whether a cast-on stands anywhere in a text in normal form."""
    return bool(_MAY_BE_CASTING_ON.search(text) and CASTING_ON.search(text))


def cast_on_in(line: Line, start: int, end: int) -> StatedCastOn | None:
    """Find a cast-on count in a stretch of a line; a count that stands there alone is one as well ("141 sts")."""
    if not _MAY_CAST_ON.search(line.text, start, end):
        return None
    match = CAST_ON.search(line.text, start, end)
    if match and "pick" in match.group():
        return _picked_up(line, match, end)
    if not match and (held := _HELD.search(line.text, start, end)):
        return StatedCastOn(_number(held.group(1)), line.place(held.start(1)))
    if not match:
        alone = _COUNT_ALONE.match(line.text, start, end)
        return StatedCastOn(int(alone.group(1)), line.place(alone.start(1))) if alone else None
    others = tuple(int(text) for text in re.findall(rf"\d{{1,{LONGEST_NUMBER}}}", match.group(2)))
    return StatedCastOn(_number(match.group(1)), line.place(match.start(1)), others)


def not_whole_in(line: Line, start: int, end: int) -> tuple[str, Place] | None:
    """Find what stands for the count of a cast-on and is no whole number: "10.5", "10 1/2", "-10"."""
    match = _NOT_WHOLE.search(line.text, start, end)
    return (line.given(match.start(1), match.end(1)), line.place(match.start(1))) if match else None


def _picked_up(line: Line, match: re.Match[str], end: int) -> StatedCastOn:
    """Read stitches picked up along one edge or several: the total in brackets, else the sum."""
    place = line.place(match.start(1))
    total = _TOTAL.search(line.text, match.end(), end)
    if total:
        return StatedCastOn(_number(total.group(1)), place)
    further = (_number(number) for number in _ALONG.findall(line.text, match.end(), end))
    return StatedCastOn(_number(match.group(1)) + sum(further), place)


def multiple_in(line: Line, start: int, end: int) -> StatedMultiple | None:
    """Find a stated multiple in a stretch of a line; "an odd number of sts" is one as well."""
    if not _MAY_BE_MULTIPLE.search(line.text, start, end):
        return None
    found = (match for form in _MULTIPLES if (match := form.search(line.text, start, end)))
    if match := next(found, None):
        plus = sum(_number(text) for text in _EXTRA.findall(match.group(2)))
        return StatedMultiple(_number(match.group(1)), plus, line.place(match.start()))
    if match := _PARITY.search(line.text, start, end):
        return StatedMultiple(2, 0 if match.group(1) == "even" else 1, line.place(match.start()))
    if match := _ANY.search(line.text, start, end):
        return StatedMultiple(1, 0, line.place(match.start()))
    return None


@dataclass(frozen=True, slots=True)
class StatedEnd:
    """A bind-off of all stitches that stands by itself; `count` is how many there are, None where it does not say.

    `some` says that it may be of a part of the stitches: there are no fewer than that.
    """

    count: int | None
    place: Place
    some: bool = False

    def agrees(self, count: int) -> bool:
        """Tell whether what is printed is true of so many stitches."""
        return self.count is None or self.count == count or (self.some and self.count < count)


def end_in(line: Line, start: int, end: int, last: bool = False) -> StatedEnd | None:
    """Read "Bind off all sts loosely." and "Cast off the remaining 4 sts."; None for a part of the stitches.

    Where it is the `last` that is worked, "Bind off 60 sts." is the end as well.
    """
    begin = BINDING_OFF.match(line.text, start, end)
    which = begin.end() if begin else start
    behind = _ALL_OFF.match(line.text, which, end)
    if behind is None or behind.group(1) is None:
        return None if re.match(rf"\s*{_N}\b", line.text[which:end]) else StatedEnd(None, line.place(start))
    some = not re.search(r"\b(?:all|rem|remaining|last|these)\b", behind.group())
    return None if some and not last else StatedEnd(_number(behind.group(1)), line.place(behind.start(1)), some)


def begins_piece(line: Line, start: int, end: int) -> bool:
    """Tell whether a cast-on begins a piece, and is no order to cast on further stitches in one at hand."""
    return not _ADDS.search(line.text, start, end) or "pick" in line.text[start:end]


@dataclass(frozen=True, slots=True)
class StatedCount:
    """A count printed by itself: "You should have 95 stitches."."""

    count: int
    place: Place


_TELLS_COUNT = re.compile(
    rf"\W*(?:stitch\s+count\s*:?\s*{_N}{_STS}\W*$"
    r"|(?:total(?:\s+of)?\s*:?\s*|=\s*|(?:this|which)\s+(?:leaves|makes|gives)\s+(?:you\s+)?"
    r"|(?:(?!until|till)[^.]){0,60}?\b(?:you|there)\s+(?:(?:will|should|must|ought\s+to|now|then|still)\s+)*(?:have|be|are)\s+(?:now\s+)?)?"
    rf"(?:a\s+total\s+of\s+)?{_N}\s*{_STITCHES}"
    r"(?:\s+(?:rem\w*|left|in\s+all|total|altogether|now|on\s+(?:the\s+|your\s+)?needles?|at\s+this\s+point))*\W*$)"
)


def count_in(line: Line, start: int, end: int) -> StatedCount | None:
    """Read a sentence that says how many stitches there are at that point; None for any other."""
    match = _TELLS_COUNT.match(line.text, start, end) if line.text.find("st", start, end) >= 0 else None
    if match is None or match.lastindex is None:
        return None
    return StatedCount(_number(match.group(match.lastindex)), line.place(match.start(match.lastindex)))
