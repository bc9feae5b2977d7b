"""A pattern as JSON values: centimetres to 0.1, half up; inches beside them, converted exactly first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from fractions import Fraction
from typing import Any

from counterpane.craft.drawing import Picture
from counterpane.craft.measures import CM_PER_INCH, half_up
from counterpane.craft.pattern import Checkpoint, Pattern, Size, TextureGauge, WrittenBorder, WrittenSection
from counterpane.craft.pattern.derivations import Derivation
from counterpane.craft.pattern.designing import DesignerSheet

_TENTH = Fraction(1, 10)
_THOUSANDTH = Fraction(1, 1000)
"""The last digit of a gauge: a window of 4 in is 10.16 cm."""


def as_data(pattern: Pattern, pictures: Sequence[Picture] = ()) -> dict[str, Any]:
    """Return the pattern as JSON values; `safety` is the answer of the safety rules as it was given."""
    return {
        "title": pattern.title,
        "designer": pattern.designer,
        "level": asdict(pattern.level),
        "edition": pattern.edition or None,
        "terms": pattern.terms,
        "summary": pattern.summary,
        "size": _size(pattern.size),
        "gauge": [_gauge(gauge) for gauge in pattern.gauges],
        "materials": [asdict(entry) for entry in pattern.materials],
        "abbreviations": [asdict(entry) for entry in pattern.abbreviations],
        "special_stitches": [{"name": special.name, "steps": list(special.steps)} for special in pattern.specials],
        "cast_on": asdict(pattern.cast_on),
        "sections": [_section(section) for section in pattern.sections],
        "bind_off": asdict(pattern.bind_off),
        "borders": [_border(border) for border in pattern.borders],
        "finishing": list(pattern.finishing),
        "care": pattern.care,
        "notes": list(pattern.notes),
        "sampler": list(pattern.sampler),
        "swatches": [{"name": each.name, "where": each.where, "steps": list(each.steps)} for each in pattern.swatches],
        "no_swatch": [asdict(each) for each in pattern.no_swatches],
        "safety": dict(pattern.cautions.record),
        "credits": [asdict(credit) for credit in pattern.credits],
        "sharing": pattern.sharing,
        "pictures": [_picture(picture) for picture in pictures],
    }


def sheet_data(sheet: DesignerSheet) -> dict[str, Any]:
    """Return the derivations of a designer's sheet as JSON values, with what they are of."""
    pattern = sheet.pattern
    return {
        "title": pattern.title,
        "designer": pattern.designer,
        "level": asdict(pattern.level),
        "derivations": [_derivation(each) for each in sheet.derived],
        "gauge": [_gauge(gauge) for gauge in pattern.gauges],
        "credits": [asdict(credit) for credit in pattern.credits],
    }


def _derivation(each: Derivation) -> dict[str, Any]:
    return asdict(each) | {"number": _shown(each.number), "sums": list(each.sums)}


def _picture(picture: Picture) -> dict[str, Any]:
    """Return a picture as SVG, in sentences, and its charts as signs with their key."""
    return {
        "kind": picture.kind,
        "name": picture.name,
        "svg": picture.svg,
        "words": list(picture.lines) or [picture.words],
        "charts": [asdict(chart) for chart in picture.charts],
        "key": [{"sign": sign, "means": means} for sign, means in picture.key],
    }


def _size(size: Size) -> dict[str, Any]:
    return {
        "width_cm": _shown(size.width_cm),
        "length_cm": _shown(size.length_cm),
        "width_in": _shown(size.width_cm / CM_PER_INCH),
        "length_in": _shown(size.length_cm / CM_PER_INCH),
        "tolerance_cm": {"width": _shown(size.width_tolerance_cm), "length": _shown(size.length_tolerance_cm)},
    }


def _gauge(gauge: TextureGauge) -> dict[str, Any]:
    return {
        "in": gauge.texture,
        "stitches": _shown(gauge.stitches, _THOUSANDTH),
        "rows": _shown(gauge.rows, _THOUSANDTH),
        "over_cm": _shown(gauge.over_cm, _THOUSANDTH),
        "stated": gauge.stated,
        "text": gauge.text,
    }


def _section(section: WrittenSection) -> dict[str, Any]:
    return {
        "name": section.name,
        "texture": section.texture,
        "intro": section.intro,
        "first_row": section.first_row,
        "last_row": section.last_row,
        "before": section.before,
        "after": section.after,
        "rows": [asdict(row) for row in section.rows],
        "repeats": [asdict(repeat) for repeat in section.repeats],
        "checkpoints": [_checkpoint(checkpoint) for checkpoint in section.checkpoints],
        "lifelines": list(section.lifelines),
        "stop": section.stop,
    }


def _checkpoint(checkpoint: Checkpoint) -> dict[str, Any]:
    return asdict(checkpoint) | {"long_cm": _shown(checkpoint.long_cm)}


def _border(border: WrittenBorder) -> dict[str, Any]:
    return {
        "line": border.line,
        "stitches": border.stitches,
        "rates": list(border.rates),
        "section": _section(border.section),
        "bind_off": border.bind_off,
    }


def _shown(value: Fraction, step: Fraction = _TENTH) -> int | float:
    """Round half up and return an int where nothing is behind the point."""
    rounded = half_up(value, step)
    return int(rounded) if rounded.denominator == 1 else float(rounded)
