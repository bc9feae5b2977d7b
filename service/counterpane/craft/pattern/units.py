"""Lengths of the piece in centimetres, in inches, or in both: which of a pair "90.0 cm (35½ in)" is printed.

Sentences are written with both, each rounded once from the exact length; a pattern in one unit keeps that side of the
pair. Where a sentence has centimetres alone, the inches beside them are those of the figure as it is printed.
Millimetres of needles and rods, and metres and yards of yarn, stand as they are. Safety is quoted and not converted.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from counterpane.craft.measures import Units
from counterpane.craft.pattern import Pattern
from counterpane.craft.pattern.figures import inch, span_in_inches
from counterpane.craft.pattern.texts import texts_said

_NUMBER = r"\d[\d.]*"
_SPAN = rf"{_NUMBER}(?: to {_NUMBER})? cm"
_PAIR = re.compile(rf"(?P<cm>{_SPAN}) \((?P<in>[^()]{{1,40}} in)\)")
_ALONE = re.compile(rf"(?<!over )(?<!to )(?<![\d.])(?P<low>{_NUMBER})(?: to (?P<high>{_NUMBER}))? cm(?! \()\b")
_COUNTS = rf"{_NUMBER} sts and {_NUMBER} rows"
_GAUGE = re.compile(
    rf"(?P<stated>{_COUNTS}) over (?P<window>{_NUMBER} (?P<unit>cm|in)) "
    rf"\(over (?P<other_window>{_NUMBER} (?:cm|in)): (?P<other>{_COUNTS})\)"
)
_AS_THEY_STAND = (
    "title",
    "designer",
    "cautions",
    "credits",
    "sharing",
    "abbreviations",
    "rows",
    "repeats",
    "line",
    "level",
)
"""Fields that hold no length of the piece, or are quoted."""


def in_units(text: str, units: Units) -> str:
    """Say a sentence in these units."""
    if units == "both":
        return _ALONE.sub(_beside(text), text)
    told = _GAUGE.sub(lambda match: _gauge(match, units), text)
    told = _PAIR.sub(lambda match: match[units], told)
    return _ALONE.sub(_as_inches, told) if units == "in" else told


def pattern_in_units(pattern: Pattern, units: Units) -> Pattern:
    """Return a pattern with all its sentences in these units."""
    return replace(texts_said(pattern, lambda text: in_units(text, units), _AS_THEY_STAND), units=units)


def _gauge(match: re.Match[str], units: Units) -> str:
    if match["unit"] == units:
        return f"{match['stated']} over {match['window']}"
    return f"{match['other']} over {match['other_window']}"


def _as_inches(match: re.Match[str]) -> str:
    if match["high"] is None:
        return inch(Fraction(match["low"]))
    return span_in_inches(Fraction(match["low"]), Fraction(match["high"]))


def _beside(text: str) -> Callable[[re.Match[str]], str]:
    """Return what puts the inches beside centimetres that stand alone, outside of brackets."""

    def both(match: re.Match[str]) -> str:
        before = text[: match.start()]
        inside = before.count("(") > before.count(")")
        return match[0] if inside else f"{match[0]} ({_as_inches(match)})"

    return both
