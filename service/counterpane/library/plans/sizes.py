"""Sizes by name, and the insides of cots beside a piece: facts of the trade as JSON values.

No standard sets the size of a blanket, so a name is a span with its sources, and the size planned for it a house
choice inside. Centimetres are shown to 0.1, half up.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.sizing.spans import CM_PER, Span, beyond, joined, span_of
from counterpane.library.errors import NotFound
from counterpane.library.near import nearest
from counterpane.library.plans.known import Facts
from counterpane.library.plans.plan_answers import ends_of, tenths
from counterpane.library.values import BadInput

Answer = dict[str, Any]

PREFIX = "size-"
SIZES, COTS = "blanket sizes", "cots and cribs"
SIDES = ("width", "length")
CHOSEN = "The size planned is a house choice inside what the sources say; no standard sets it."
FIGURES_ONLY = "Figures only: a difference says nothing of how a blanket may be used; see the safety rules."


def named(facts: Facts) -> dict[str, Mapping[str, Any]]:
    """Return the facts of the named sizes by name, in the order of the seeds."""
    found = (fact for fact in facts.values() if fact["topic"] == SIZES and fact["name"].startswith(PREFIX))
    return {fact["name"].removeprefix(PREFIX): fact for fact in found}


def cards(facts: Facts) -> list[Answer]:
    """Return what a list says of each named size."""
    return [_card(name, fact) for name, fact in named(facts).items()]


def get(facts: Facts, name: str) -> Answer:
    """Return a size by its name or another name of it, beside the insides of cots; NotFound with the nearest name."""
    known, fact = _fact(facts, name)
    size = {side: _cm(fact["value"][side], fact["unit"]) for side in SIDES}
    return _card(known, fact) | {
        "figures": [_figure(each, fact["unit"]) for each in fact["value"]["figures"]],
        "basis": CHOSEN,
        "confidence": fact["confidence"],
        "beside_cots": list(beside_cots(facts, size["width"], size["length"])),
        "about_cots": FIGURES_ONLY,
    }


def sized(content: Mapping[str, Any], facts: Facts) -> Mapping[str, Any]:
    """Return a plan request whose size is written out where it was named; a side given beside the name beats it.

    Raises BadInput for a name that is not known.
    """
    size = content.get("size")
    if not isinstance(size, Mapping) or size.get("named") is None:
        return content
    try:
        _, fact = _fact(facts, str(size["named"]))
    except NotFound as fault:
        raise BadInput("/size/named", str(fault), fault.hint) from None
    written = {name: value for name, value in size.items() if name != "named"}
    for side in SIDES:
        if not any(name.startswith(side) for name in written):
            written[f"{side}_{fact['unit']}"] = fact["value"][side]
    return {**content, "size": written}


def told(facts: Facts, content: Mapping[str, Any], plan: Plan) -> Answer:
    """Return what an answer says of the size of a plan: what was asked for, its span, and the cots beside it."""
    name = content["size"].get("named") if isinstance(content.get("size"), Mapping) else None
    known = {} if name is None else get(facts, name)
    return {
        "size": {
            "named": known.get("name"),
            "asked_cm": {"width": tenths(plan.request.width_cm), "length": tenths(plan.request.length_cm)},
            **{member: known.get(member) for member in ("range_cm", "basis", "source")},
        },
        "beside_cots": list(beside_cots(facts, plan.width_cm, plan.length_cm)),
    }


def beside_cots(facts: Facts, width_cm: Fraction, length_cm: Fraction) -> Iterator[Answer]:
    """Give each cot, crib and mattress that is known with how far a piece of this size goes beyond it.

    A side that is not known is null.
    """
    for fact in facts.values():
        value = fact["value"]
        if fact["topic"] == COTS and isinstance(value, Mapping) and "length" in value:
            inside = {side: _inside(value, side, fact["unit"]) for side in SIDES}
            yield {
                "name": fact["name"],
                "says": fact["says"],
                "inside_cm": {side: _ends(span) for side, span in inside.items()},
                "wider_by_cm": _beyond(width_cm, inside["width"]),
                "longer_by_cm": _beyond(length_cm, inside["length"]),
                **{name: fact[name] for name in ("jurisdiction", "source", "confidence", "basis")},
            }


def _fact(facts: Facts, name: str) -> tuple[str, Mapping[str, Any]]:
    sizes = named(facts)
    for known, fact in sizes.items():
        if name == known or name in fact["value"]["also"]:
            return known, fact
    every = [*sizes, *(other for fact in sizes.values() for other in fact["value"]["also"])]
    raise NotFound(f"No size is called {name!r}.", nearest(name, every) or f"Known sizes: {', '.join(sizes)}.")


def _card(name: str, fact: Mapping[str, Any]) -> Answer:
    value, unit = fact["value"], fact["unit"]
    planned = {f"{side}_{unit}": float(Fraction(value[side])) for side in SIDES}
    return {
        "name": name,
        "also": list(value["also"]),
        "says": fact["says"],
        **planned,
        **{f"{side}_cm": tenths(_cm(value[side], unit)) for side in SIDES},
        "range_cm": {side: _ends(joined(_said(each, side, unit) for each in value["figures"])) for side in SIDES},
        "source": fact["source"],
    }


def _figure(figure: Mapping[str, str], unit: str) -> Answer:
    cm = {side: _ends(_said(figure, side, unit)) for side in SIDES}
    stated = {name: text for name, text in figure.items() if name != "source"}
    return {"stated": stated, "unit": unit, "range_cm": cm, "source": figure["source"]}


def _said(figure: Mapping[str, str], side: str, unit: str) -> Span:
    """Return what one source says of a side; a least size has no bound above."""
    if f"to_{side}" not in figure:
        return Span(_cm(figure[side], unit), None)
    return span_of((figure[side], figure[f"to_{side}"]), unit)


def _inside(value: Mapping[str, Any], side: str, unit: str) -> Span | None:
    if side not in value:
        return None
    ends = value[side] if isinstance(value[side], list) else [value[side]]
    return span_of(ends, unit, value.get("tolerance", "0"))


def _beyond(size_cm: Fraction, inside: Span | None) -> list[float | None] | None:
    return None if inside is None else _ends(beyond(size_cm, inside))


def _ends(span: Span | None) -> Any:
    return None if span is None else ends_of((span.least, span.most))


def _cm(text: str, unit: str) -> Fraction:
    return Fraction(text) * CM_PER[unit]
