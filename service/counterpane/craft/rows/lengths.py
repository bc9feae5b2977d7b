"""Lengths printed in a text: "60 cm", "28 x 36 in", "10 cm (4 in)". Centimetres and inches alone are read."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.measures import CM_PER_INCH
from counterpane.craft.rows.words import Line

_REST = r"(?:\d{0,3}\s+\d/\d{1,2}|/\d{1,2}|\d{0,3}(?:\.\d{1,3})?)"
# The first digit stands before all else, so that a search passes over every other sign at once.
_FIRST = r"\d(?<![\d.]\d)(?<!\d/\d)"
_CM = r"cms?\b|centimet(?:re|er)s?\b"
_IN = r"inch(?:es)?\b|ins?\b|\"|''"
_LENGTH = re.compile(
    rf"(?P<one>{_FIRST}{_REST})(?:\s*(?:x|by)\s*(?P<two>\d{_REST}))?\s*-?(?:(?P<cm>{_CM})|(?P<inch>{_IN}))"
)
_OF_A_ROW = re.compile(r"\s+(?:\d|(?:a|the|all|each|every|next|same|this|st|sts|patt|one)\b)")
_BETWEEN = re.compile(r"\s*(?:\.\s*)?(?:[(\[/]|=|\bor\b)\s*(?:approx(?:imately|\.)?\s*|about\s*)?")


@dataclass(frozen=True, slots=True)
class PrintedLength:
    """One length or two ("28 x 36 in") as printed; `steps` are the last places printed: 1, 1/10, 1/2."""

    values: tuple[Fraction, ...]
    steps: tuple[Fraction, ...]
    metric: bool
    line: Line
    start: int
    end: int

    @property
    def centimetres(self) -> tuple[Fraction, ...]:
        """The values in centimetres, exactly."""
        return self.values if self.metric else tuple(value * CM_PER_INCH for value in self.values)


def lengths_in(line: Line, start: int = 0) -> Iterator[PrintedLength]:
    """Yield the lengths of a line in the order printed; "in" counts as inches only where no word of a row follows."""
    for match in _LENGTH.finditer(line.text, start):
        if match["inch"] == "in" and _OF_A_ROW.match(line.text, match.end()):
            continue
        printed = [text for text in (match["one"], match["two"]) if text]
        yield PrintedLength(
            tuple(value_of(text) for text in printed),
            tuple(_step(text) for text in printed),
            match["cm"] is not None,
            line,
            match.start(),
            match.end(),
        )


def pairs_in(line: Line) -> Iterator[tuple[PrintedLength, PrintedLength]]:
    """Yield each length that is printed in centimetres and inches side by side: "10 cm (4 in)", "4 in/10 cm"."""
    found = list(lengths_in(line))
    for one, other in itertools.pairwise(found):
        side_by_side = _BETWEEN.fullmatch(line.text[one.end : other.start])
        if side_by_side and one.metric != other.metric and len(one.values) == len(other.values):
            yield one, other


def value_of(printed: str) -> Fraction:
    """Return the number that "28", "27.5" or "28 1/2" is."""
    whole, _, part = printed.rpartition(" ")
    if "/" not in part:
        return Fraction(part)
    above, below = part.split("/")
    return Fraction(int(whole or 0)) + Fraction(int(above), max(1, int(below)))


def _step(printed: str) -> Fraction:
    """Return the unit of the last place printed."""
    if "/" in printed:
        return Fraction(1, max(1, int(printed.rpartition("/")[2])))
    return Fraction(1, 10 ** len(printed.partition(".")[2]))
