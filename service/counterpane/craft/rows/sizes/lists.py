"""Lists of one number a size: "95 (113, 131)", "95 [113: 131]", "95 (113) 131", "(95, 113, 131 sts)", "95/113/131".

Here stands what such a list can look like. Whether it is one is told by the number of sizes that a text has; a text in
one size has none, and its brackets are left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from string import digits

from counterpane.craft.records import record
from counterpane.craft.rows.words import NUMBER_WORD

MOST_SIZES = 40  # House.
LONGEST = 9  # Figures of an entry; house.
_S = r"\s{0,8}"
_NUMBER = rf"\d/\d(?!\d)|\d{{1,{LONGEST}}}(?:\.\d{{1,{LONGEST}}})?(?:\s\d/\d(?!\d))?"
_WORD = rf"\b(?:once|twice|thrice|{NUMBER_WORD})\b"
_ENTRY = rf"(?:{_NUMBER}|{_WORD}|-)(?:{_S}times\b)?"
_BETWEEN = r"(?:\s*[,:;/]\s*(?:and\s)?|\sand\s|\s*-\s*(?=\d))"
_UNIT = r"(?:sts?|stitches|loops?|rows?|rnds?|rounds?|repeats?|reps?|times|cm|mm|ins?|inch(?:es)?)\b"
_INSIDE = rf"{_ENTRY}(?:{_BETWEEN}{_ENTRY})*"
BRACKET = re.compile(rf"[(\[{{]{_S}(?P<inside>{_INSIDE}){_S}(?P<unit>{_UNIT}[^()\[\]{{}}]{{0,60}})?[)\]}}]")
_LEAD = re.compile(rf"(?<![\d/])(?<!\d[.,])(?P<entry>{_ENTRY})(?:{_S}{_UNIT})?{_S}$")
_MIDDLE = re.compile(rf"{_S}(?P<entry>{_NUMBER}|-){_S}(?=[(\[])")
_TAIL = re.compile(rf"{_S}(?P<entry>{_NUMBER}|-)(?!\d|\.\d|/)(?!{_S}[(\[])")
# The first digit stands before all else: a search passes over every other sign at once.
_BARE = re.compile(
    r"(?P<inside>\d(?<![\d/.-]\d)\d{0,8}(?:(?:/\d{1,9}){2,40}|(?:-\d{1,9}){2,40}"
    rf"|(?:,{_S}(?!0\d)\d{{1,9}}){{2,40}}(?={_S}(?:sts?|stitches)\b)))(?![\d/-])"
)
_ONE = re.compile(_ENTRY)
_OPERAND = re.compile(
    rf"{_S}(?:sts?|stitches|times|rows?|rnds?|rounds?|cm|mm|ins?|inches|loops?|more|repeats?|,)(?![a-z])"
)
_TIMES = re.compile(rf"{_S}(?:more{_S})?times\b")
_LOOKED_BACK = 40  # House.

Span = tuple[int, int]


@record
class Reading:
    """One way to take a stretch of text for a list: where it begins and ends, and its entries."""

    start: int
    end: int
    entries: tuple[Span, ...]


@record
class Candidate:
    """A stretch of text that may be a list, with every way to take it; `plain` is how it looks at first sight.

    `sure` says that it can hardly be anything else, whatever the number of sizes.
    """

    readings: tuple[Reading, ...]
    sure: bool

    @property
    def plain(self) -> Reading:
        """The way in which the stretch looks at first sight."""
        return self.readings[0]

    def of(self, number: int) -> Reading | None:
        """Return the way to take it that gives so many sizes, None where there is none."""
        return next((reading for reading in self.readings if len(reading.entries) == number), None)


def candidates(text: str) -> Iterator[Candidate]:
    """Yield what may be lists in a text in normal form, in order."""
    at = 0
    for match in BRACKET.finditer(text):
        if match.start() >= at:
            found, at = _candidate(text, match)
            yield found
    yield from (_bare(match) for match in _BARE.finditer(text))


def _bare(match: re.Match[str]) -> Candidate:
    entries = tuple((m.start(), m.end()) for m in re.compile(r"\d+").finditer(match.string, *match.span()))
    return Candidate((Reading(*match.span(), entries),), sure=False)


def _candidate(text: str, match: re.Match[str]) -> tuple[Candidate, int]:
    """Return the ways to take a bracket with what stands around it, and where the stretch ends."""
    lead = None if match["unit"] else _lead(text, match.start())
    inside = _entries(match)
    within = Reading(*match.span("inside"), inside)
    if lead is None:
        bare = not match["unit"] and _OPERAND.match(text, match.end())
        return Candidate((Reading(*match.span(), inside) if bare else within,), sure=len(inside) > 1), match.end()
    end, entries = _further(text, match.end(), inside)
    readings = [Reading(lead[0], end, (lead, *entries))]
    if _TIMES.match(text, end) or text[lead[0]] == "-":
        readings.append(Reading(*match.span(), inside))
    if len(inside) == 1:
        readings = [*reversed(_alternating(text, match, lead)), *readings]
        end = readings[0].end
    return Candidate(tuple(readings), sure=len(readings[0].entries) > 2), end


def _lead(text: str, before: int) -> Span | None:
    """Return the entry that stands right before a bracket."""
    near = text[max(0, before - _LOOKED_BACK) : before]
    words = near.rstrip()
    if not (words[-1:].isalnum() or words[-1:] == "-"):
        return None  # Behind a sign stands no entry, which is quickly told.
    blanks, figures = len(near) - len(words), len(words) - len(words.rstrip(digits))
    if blanks <= 1 and 0 < figures <= LONGEST and words[:-figures][-1:].isalpha():
        return before - blanks - figures, before - blanks  # So stand most: "k5 (6, 7)".
    found = _LEAD.search(text, max(0, before - _LOOKED_BACK), before)
    if found is None:
        return None
    start, end = found.span("entry")
    if found["entry"] == "-" and text[max(0, start - 10) : start].rstrip()[-1:].isdigit():
        return None
    return start, end


def _entries(match: re.Match[str]) -> tuple[Span, ...]:
    if match["inside"].isdecimal():
        return (match.span("inside"),)
    found = _ONE.finditer(match.string, *match.span("inside"))
    return tuple((m.start(), m.end()) for m in found if m.group() != "-" or _stands_alone(m, match.start()))


def _stands_alone(dash: re.Match[str], opening: int) -> bool:
    """Tell a dash for "not worked" from one between numbers."""
    before = dash.string[max(opening, dash.start() - 3) : dash.start()].rstrip()
    return not before[-1:].isdigit()


def _further(text: str, end: int, entries: tuple[Span, ...]) -> tuple[int, tuple[Span, ...]]:
    """Add brackets that follow at once: "95 (113, 131)[149, 167]"."""
    while (match := BRACKET.match(text, end + (text[end : end + 1] == " "))) and not match["unit"]:
        end, entries = match.end(), (*entries, *_entries(match))
    return end, entries


def _alternating(text: str, match: re.Match[str], lead: Span) -> list[Reading]:
    """Return the ways to take "95 (113) 131 (149)", the shortest first."""
    entries, end, out = (lead, *_entries(match)), match.end(), []
    while (middle := _MIDDLE.match(text, end)) and (after := BRACKET.match(text, middle.end())) and not after["unit"]:
        entries, end = (*entries, middle.span("entry"), *_entries(after)), after.end()
        out.append(Reading(lead[0], end, entries))
    if tail := _TAIL.match(text, end):
        out.append(Reading(lead[0], tail.end("entry"), (*entries, tail.span("entry"))))
    return out
