"""Lengths of the piece in centimetres, in inches, or in both: which of a pair "90.0 cm (35½ in)" is printed.

Sentences are written with both, each rounded once from the exact length; a pattern in one unit keeps that side of the
pair. Where a sentence has centimetres alone, the inches beside them are those of the figure as it is printed.
Millimetres of needles and rods, and metres and yards of yarn, stand as they are. Safety is quoted and not converted.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass, replace
from fractions import Fraction
from typing import TypeVar

from counterpane.craft.measures import Units
from counterpane.craft.pattern import Pattern
from counterpane.craft.pattern.figures import inch, span_in_inches

Thing = TypeVar("Thing")

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
    return replace(_told(pattern, lambda text: in_units(text, units)), units=units)


def _told(thing: Thing, say: Callable[[str], str]) -> Thing:
    """Return a value with all texts said anew that may hold a length."""
    if isinstance(thing, str):
        return say(thing)  # type: ignore[return-value]
    if isinstance(thing, tuple):
        return tuple(_told(each, say) for each in thing)  # type: ignore[return-value]
    if not is_dataclass(thing) or isinstance(thing, type):
        return thing
    named = {field.name: getattr(thing, field.name) for field in fields(thing)}
    changed: Mapping[str, object] = {
        name: _told(value, say) for name, value in named.items() if name not in _AS_THEY_STAND
    }
    return replace(thing, **changed)


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
