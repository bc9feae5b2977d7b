"""The seams of a plan as JSON values: frill or pull, take-up with its row, extra rows of the side borders."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from counterpane.craft.behaviour import Figure, Seam, seams
from counterpane.craft.behaviour.extra_rows import ExtraRows
from counterpane.craft.behaviour.places import the_band
from counterpane.craft.behaviour.take_up import ChangingRow, TakeUp
from counterpane.craft.constructions import Plan
from counterpane.craft.rows.say import say_row
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.behaving import figure_json, rests_on, span

Answer = dict[str, Any]

EDGES = {"RS": "right", "WS": "left", "round": "right"}
"""The edge at which a row of each side begins."""


def seams_json(plan: Plan, vocabulary: Vocabulary) -> list[Answer]:
    """Return the seams of a plan at which two fabrics meet, from the bottom up."""
    return [_seam(seam, vocabulary) for seam in seams(plan, vocabulary)]


def _seam(seam: Seam, vocabulary: Vocabulary) -> Answer:
    return {
        "part": seam.part,
        "body": seam.body,
        "lies": seam.lies,
        "excess": figure_json(seam.excess),
        "take_up": None if seam.take_up is None else _take_up(seam.take_up, vocabulary),
        "extra_rows": None if seam.extra_rows is None else _extra(seam.extra_rows, vocabulary),
        "message": sentence(seam),
    }


def _take_up(found: TakeUp, vocabulary: Vocabulary) -> Answer:
    row = None if found.row is None else _row(found.row, vocabulary)
    return {"stitches": figure_json(found.stitches), "chosen": found.chosen, "row": row}


def _row(row: ChangingRow, vocabulary: Vocabulary) -> Answer:
    names = ("section", "row", "side", "before", "after")
    return {name: getattr(row, name) for name in names} | {"text": say_row(row.parts, vocabulary)}


def _extra(found: ExtraRows, vocabulary: Vocabulary) -> Answer:
    return {
        "pairs": figure_json(found.pairs),
        "chosen": found.chosen,
        "before_rows": list(found.before),
        "every": list(found.every),
        "instructions": [
            {"edge": EDGES[pair.side], "before": pair.side, "text": say_row(pair.parts, vocabulary)}
            for pair in found.pairs_in_words
        ],
    }


def sentence(seam: Seam) -> str:
    """Say what happens at a seam and what evens it out, with what it rests on."""
    if seam.excess is None:
        return f"{_meets(seam)} is not known: swatch both"
    told = [f"{_excess(seam)} ({rests_on(seam.excess)})", _evened(seam.take_up), _paired(seam.extra_rows)]
    return "; ".join(filter(None, told))


def _meets(seam: Seam) -> str:
    return "whether it is wider or narrower" if seam.lies == "across" else "how many rows it takes to one of the body"


def _excess(seam: Seam) -> str:
    """Say the excess of a seam: one way, or open which way."""
    low, high = _cm(seam.excess)
    across = seam.lies == "across"
    more, less = ("wider", "narrower") if across else ("longer", "shorter")
    over = "over the same stitches" if across else "worked row for row"
    if low >= 0:
        return f"{span_of(low, high)} cm {more} {over}: it {'frills' if across else 'waves'}"
    if high <= 0:
        return f"{span_of(-high, -low)} cm {less} {over}: it draws {the_band(seam.body)} {'in' if across else 'up'}"
    return f"from {_short(-low)} cm {less} to {_short(high)} cm {more} {over}: only a swatch decides"


def _cm(figure: Figure | None) -> tuple[float, float]:
    told = figure_json(figure) or {}
    return told.get("low") or 0.0, told.get("high") or 0.0


def span_of(low: float, high: float) -> str:
    """Return two ends in words, one where they are shown alike."""
    return _short(low) if low == high else f"{_short(low)} to {_short(high)}"


def _short(value: float) -> str:
    return f"{value:g}"


def _evened(found: TakeUp | None) -> str:
    if found is None or found.chosen is None:
        return ""
    number, way = abs(found.chosen), "fewer" if found.chosen > 0 else "more"
    stitches = found.stitches if found.chosen > 0 else found.stitches.times(Fraction(-1), "stitches")
    said = f"level over about {number} stitches {way} between the side borders ({span(stitches)})"
    row = found.row
    if row is None:
        return said
    change = "increased" if row.after > row.before else "decreased"
    return f"{said}, {change} evenly in row {row.row} ({row.side}) of {the_band(row.section)}"


def _paired(found: ExtraRows | None) -> str:
    if found is None:
        return ""
    low, high = found.every
    every = f"{low}" if low == high else f"{low} or {high}"
    return f"level with about {found.chosen} extra pairs of turned rows ({span(found.pairs)}), one every {every} rows"
