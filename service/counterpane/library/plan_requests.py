"""Plan requests from JSON values: parts by slug or in words, gauges, sizes; the usual parts where none is named."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any, cast

from counterpane.craft.component import Component, Kind, Provenance, SafetyNotes, Version
from counterpane.craft.constructions import Corner, Part, PlanRequest, Unit
from counterpane.craft.constructions.gauging import own_gauges
from counterpane.craft.measures import Gauge, exact, inches
from counterpane.craft.stitches import Vocabulary
from counterpane.library.errors import NotFound
from counterpane.library.safety_inputs import BadInput

Find = Callable[[str], Component]
Content = Mapping[str, Any]

USUAL: Content = {
    "cast_on": "long-tail",
    "bottom": {"component": "garter-border", "rows": 12},
    "sides": {"component": "garter-border", "stitches": 6},
    "selvedge": None,
    "top": {"component": "garter-border", "rows": 12},
    "bind_off": "plain-bind-off",
}
"""The parts of a blanket for which none is named; house."""

KINDS: Mapping[str, Kind] = {
    "bottom": "border",
    "sides": "border",
    "selvedge": "selvedge",
    "body": "body",
    "top": "border",
}
OPTIONAL = ("bottom", "sides", "selvedge", "top")
FIELDS = ("component", "text", "revision", "rows", "stitches", "left")
IN_WORDS = Provenance("in the request", "not stated", "not stated")


class UnknownPart(NotFound):
    """A part or a gauge names a component that is not kept; `pointer` says where."""

    def __init__(self, pointer: str, fault: NotFound) -> None:
        super().__init__(str(fault), fault.hint)
        self.pointer = pointer


def plan_request_of(content: Content, find: Find, vocabulary: Vocabulary) -> PlanRequest:
    """Build a plan request from JSON values that the wire schema has let through.

    Numbers are whole numbers, decimals or decimal texts. A part left out is the usual one; null is none. Raises
    UnknownPart for a slug that `find` does not know, BadInput for values that no schema should have passed.
    """
    parts = _table(content.get("parts"), "/parts")
    placed = {name: _placed(name, parts, find) for name in USUAL}
    bands = parts.get("body")
    body = tuple(_bands(bands, find))
    size = _table(content.get("size"), "/size")
    request = PlanRequest(
        **cast("dict[str, Any]", placed),
        body=body,
        gauges=_gauges(content.get("gauge")),
        width_cm=_length(size, "width", "/size"),
        length_cm=_length(size, "length", "/size"),
        corner=cast("Corner", content.get("corner") or "ends"),
        construction=content.get("construction") or "one-piece",
        units=(_unit(size, "width"), _unit(size, "length")),
    )
    return _with_named_gauges(request, find, vocabulary)


def _table(value: object, pointer: str) -> Content:
    if not isinstance(value, Mapping):
        raise BadInput(pointer, "This is not an object.", "Write an object in braces.")
    return value


def _placed(name: str, parts: Content, find: Find) -> Part | None:
    given = parts.get(name, USUAL[name])
    if given is None and name not in OPTIONAL:
        given = USUAL[name]
    return None if given is None else _part(name, given, f"/parts/{name}", find)


def _bands(given: object, find: Find) -> Iterable[Part]:
    if isinstance(given, Sequence) and not isinstance(given, str):
        for index, band in enumerate(given):
            yield _part("body", band, f"/parts/body/{index}", find)
        if given:
            return
        given = None
    if given is None:
        raise BadInput("/parts/body", "The body is missing.", "Name a body, or write its rows.")
    yield _part("body", given, "/parts/body", find)


def _part(name: str, given: object, pointer: str, find: Find) -> Part:
    if isinstance(given, str):
        return Part(_found(given, pointer, find))
    table = _table(given, pointer)
    for field in table:
        if field not in FIELDS:
            raise BadInput(f"{pointer}/{field}", f"A part has no field {field!r}.", f"Use {', '.join(FIELDS)}.")
    text = table.get("text")
    if (text is None) == (table.get("component") is None):
        raise BadInput(pointer, "A part has either a component or a text.", 'Write one of "component" and "text".')
    if text is None:
        component = _found(str(table["component"]), f"{pointer}/component", find)
    elif name not in KINDS:
        raise BadInput(pointer, "Cast-ons and bind-offs are components only.", "Name a component.")
    else:
        component = in_words(str(text), KINDS[name])
    rows, stitches = (_whole(table.get(field), f"{pointer}/{field}") for field in ("rows", "stitches"))
    return Part(component, rows, stitches, table.get("left"))


def in_words(text: str, kind: Kind) -> Component:
    """Return a part given in words as a component without a slug."""
    return Component("", kind, "", "", IN_WORDS, SafetyNotes(), versions=(Version("", text),))


def _found(slug: str, pointer: str, find: Find) -> Component:
    try:
        return find(slug)
    except NotFound as fault:
        raise UnknownPart(pointer, fault) from None


def _whole(value: object, pointer: str) -> int | None:
    if value is None:
        return None
    number = _number(value, pointer)
    if number.denominator != 1 or number < 1:
        raise BadInput(pointer, f"{value} is not a whole number above 0.", "Write a whole number, such as 12.")
    return int(number)


def _number(value: object, pointer: str) -> Fraction:
    try:
        return exact(cast("str", value if isinstance(value, int) and not isinstance(value, bool) else str(value)))
    except ValueError:
        raise BadInput(pointer, f"{value!r} is not a number.", "Write a number, such as 22.5.") from None


def _above_zero(table: Content, field: str, pointer: str) -> Fraction:
    number = _number(table.get(field), f"{pointer}/{field}")
    if number <= 0:
        raise BadInput(f"{pointer}/{field}", f"{table[field]} is not above 0.", "Write a number above 0.")
    return number


def _length(table: Content, name: str, pointer: str) -> Fraction:
    """Return the centimetres of a length given in centimetres or inches."""
    if table.get(f"{name}_in") is not None:
        return inches(_above_zero(table, f"{name}_in", pointer))
    return _above_zero(table, f"{name}_cm", pointer)


def _unit(table: Content, name: str) -> Unit:
    return "in" if table.get(f"{name}_in") is not None else "cm"


def _gauges(given: object) -> tuple[Gauge, ...]:
    if isinstance(given, Mapping):
        return (_gauge(given, "/gauge"),)
    if not isinstance(given, Sequence) or isinstance(given, str) or not given:
        raise BadInput("/gauge", "No gauge is given.", "Write stitches, rows, and the length they were counted over.")
    return tuple(_gauge(_table(one, f"/gauge/{index}"), f"/gauge/{index}") for index, one in enumerate(given))


def _gauge(table: Content, pointer: str) -> Gauge:
    stitches, rows = (_above_zero(table, field, pointer) for field in ("stitches", "rows"))
    return Gauge(stitches, rows, _length(table, "over", pointer), table.get("in"))


def _with_named_gauges(request: PlanRequest, find: Find, vocabulary: Vocabulary) -> PlanRequest:
    """Let a gauge knitted in a texture count for every part of the same rows, whatever it is called."""
    placed = {part.component.slug for part in (*request.body, request.bottom, request.sides, request.top) if part}
    knitted = {
        gauge.texture: _found(gauge.texture, "/gauge/in", find)
        for gauge in request.gauges
        if gauge.texture is not None and gauge.texture not in placed
    }
    return replace(request, gauges=own_gauges(request, knitted, vocabulary)) if knitted else request
