"""A text in the words of two trades."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import zip_longest
from typing import NamedTuple

from counterpane.craft.checking import Examined
from counterpane.craft.checking.runs import given_line
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, Severity, rule
from counterpane.craft.rows.quick import word_of
from counterpane.craft.rows.words import Line
from counterpane.craft.stitches import Terms


class _Pair(NamedTuple):
    """Patterns of the US and the UK words for one thing, what the UK ones hold, and the word of each to print."""

    us: re.Pattern[str]
    uk: re.Pattern[str]
    uk_holds: str
    said: dict[Terms, str]
    severity: Severity = "warning"

    def in_both(self, text: str) -> bool:
        """Tell whether a text in small letters holds words of both trades."""
        if self.uk_holds not in text or not self.us.search(text):
            return False
        return re.search(self.uk.pattern, text, re.MULTILINE) is not None


def _pair(us: str, uk: str, uk_holds: str, said: tuple[str, str], severity: Severity = "warning") -> _Pair:
    return _Pair(re.compile(us), re.compile(uk), uk_holds, {"us": said[0], "uk": said[1]}, severity)


_TENSION = r"^[ #*_]{0,8}tension\b|\btension(?=\s*[:=]|\s+(?:square|swatch))"
_ST = r"(?:\s+st(?:itch)?)"
_PAIRS = (
    _pair(word_of(r"bind(?=[- ]off\b)"), word_of(r"cast(?=[- ]off\b)"), "cast", ("bind", "cast")),
    _pair(word_of(r"gauge\b"), _TENSION, "tension", ("gauge", "tension")),
    _pair(
        word_of(rf"stockinette{_ST}?\b"),
        word_of(rf"stocking{_ST}\b"),
        "stocking",
        ("stockinette stitch", "stocking stitch"),
    ),
    _pair(word_of(r"work even\b"), word_of(r"work straight\b"), "straight", ("work even", "work straight")),
    _pair(word_of(r"yo\b"), word_of(r"y(?:fwd|rn|frn|on)\b"), "y", ("yo", "")),
    _pair(word_of(r"seed st(?:itch)?\b"), word_of(r"moss st(?:itch)?\b"), "moss st", ("", ""), "note"),
)
_GLOSS = re.compile(
    r"\([^()]{0,60}\b(?:uk|us|u\.k\.|u\.s\.|also|or|called|british|american)\b[^()]{0,60}\)|\b(?:uk|us)\s?:[^;.]*"
)


@rule(
    "terms-mixed",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1: Bind off 1 st, k to end.\nRow 2: Cast off all sts.",
    good="Cast on 4 sts.\nRow 1: Bind off 1 st, k to end.\nRow 2: Bind off all sts.",
    source="US and UK pairs: magazines and blogs that agree, second-hand",
)
def terms_mixed(examined: Examined) -> Iterator[Finding]:
    """The words of two trades stand in one text.

    “Tension” beside “gauge” is harmless by itself; but the same names mean different stitches in US and UK terms, and
    a text that mixes them does not tell which are meant. A word explained in brackets (“UK moss stitch”) is no mixture.
    """
    text = examined.text.lower()
    mixed = [pair for pair in _PAIRS if pair.in_both(text)]
    found = [(pair, _places(examined, pair.us, pair.uk), _places(examined, pair.uk, pair.us)) for pair in mixed]
    us, uk = sum(len(us) for _, us, _ in found), sum(len(uk) for _, _, uk in found)
    terms: Terms = examined.instructions.terms if us == uk else "us" if us > uk else "uk"
    for pair, american, british in found:
        if american and british:
            few, many = (british, american) if terms == "us" else (american, british)
            yield _finding(examined, pair, terms, few[0], many[0])


def _places(examined: Examined, words: re.Pattern[str], others: re.Pattern[str]) -> list[tuple[Line, int, int]]:
    """Return where words of one trade stand; a line that names both explains one by the other, with a wrap between."""
    page = examined.instructions.page
    out = []
    for line, below in zip_longest(page.lines, page.lines[1:]):
        if line.number in page.glossary.lines or not words.search(line.text):
            continue
        wrapped = _GLOSS.match(below.text.lstrip()) if below else None
        if others.search(f"{line.text} {wrapped[0]}" if wrapped else line.text):
            continue
        plain = _GLOSS.sub(lambda match: " " * len(match.group()), line.text)
        out += [(line, match.start(), match.end()) for match in words.finditer(plain)]
    return out


def _finding(
    examined: Examined, pair: _Pair, terms: Terms, place: tuple[Line, int, int], other: tuple[Line, int, int]
) -> Finding:
    """Name the first word of the trade that the text speaks less."""
    line, start, end = place
    word, usual = line.text[start:end].strip(" -"), other[0].text[other[1] : other[2]].strip(" -")
    mine, others = ("US", "UK") if terms == "us" else ("UK", "US")
    message = f"{quoted(word)} is {others} wording; {quoted(usual)} on line {other[0].number} is {mine} wording."
    if pair.severity == "note":
        message = f"{quoted(word)} and {quoted(usual)}: each is the other's name in US or in UK terms."
    hint = f"Use {mine} terms throughout." if pair.severity == "warning" else "Print the rows of each beside its name."
    said = pair.said[terms]
    given = given_line(examined, line.number)
    kept = said.capitalize() if given[start : start + 1].isupper() else said
    corrections = (given[:start] + kept + given[end:],) if said and line.columns is None else ()
    return at(line.place(start), "terms-mixed", pair.severity, message, hint, corrections=corrections)
