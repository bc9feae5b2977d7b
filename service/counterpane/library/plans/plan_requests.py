"""Plan requests from JSON values: parts by slug or in words, gauges, sizes; the usual parts where none is named."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any, cast

from counterpane.craft.component import Component, Kind, Provenance, SafetyNotes, Version
from counterpane.craft.constructions import Corner, Part, PlanRequest, Unit
from counterpane.craft.constructions.gauging import own_gauges
from counterpane.craft.measures import AS_USUAL, Gauge, Reading, exact, inches
from counterpane.craft.sizing.swatch import pooled
from counterpane.craft.stitches import Vocabulary
from counterpane.library.errors import NotFound
from counterpane.library.values import BadInput

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

PICKED_UP = "sides-picked-up"
"""The construction whose side borders are picked up along the finished middle and worked outwards."""

USUAL_PICKED: Content = {"component": "garter-border", "rows": 12}
"""The side borders that are picked up where none are named; house."""

FARTHEST = Fraction(10**6)
"""Stitches or rows to a centimetre, and centimetres of a window, beyond which a gauge is refused; house."""

NO_GAUGE = "are taken from 1 in 1,000,000 cm to 1,000,000 in 1 cm."
NO_SWATCH = "No swatch is counted so: lengths are taken up to 1,000,000 cm."

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
        gauges=gauges_of(content.get("gauge")),
        width_cm=length_of(size, "width", "/size"),
        length_cm=length_of(size, "length", "/size"),
        corner=cast("Corner", content.get("corner") or "ends"),
        construction=content.get("construction") or "one-piece",
        units=(_unit(size, "width"), _unit(size, "length")),
    )
    if request.construction == PICKED_UP:
        sides = _placed("sides", {"sides": USUAL_PICKED} | dict(parts), find)
        request = replace(request, sides=None, picked=sides)
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


def above_zero(table: Content, field: str, pointer: str) -> Fraction:
    """Return the number of a field, exact; BadInput where it is none, or not above 0."""
    number = _number(table.get(field), f"{pointer}/{field}")
    if number <= 0:
        raise BadInput(f"{pointer}/{field}", f"{table[field]} is not above 0.", "Write a number above 0.")
    return number


def length_of(table: Content, name: str, pointer: str) -> Fraction:
    """Return the centimetres of a length given in centimetres or inches; BadInput where it is not above 0."""
    if table.get(f"{name}_in") is not None:
        return inches(above_zero(table, f"{name}_in", pointer))
    return above_zero(table, f"{name}_cm", pointer)


def _unit(table: Content, name: str) -> Unit:
    return "in" if table.get(f"{name}_in") is not None else "cm"


def gauges_of(given: object, pointer: str = "/gauge") -> tuple[Gauge, ...]:
    """Return one gauge or a list of them; BadInput for none, and for counts that measure nothing."""
    if isinstance(given, Mapping):
        return (gauge_of(given, pointer),)
    if not isinstance(given, Sequence) or isinstance(given, str) or not given:
        raise BadInput(pointer, "No gauge is given.", "Write stitches, rows, and the length they were counted over.")
    found = [gauge_of(_table(one, f"{pointer}/{index}"), f"{pointer}/{index}") for index, one in enumerate(given)]
    return tuple(pooled(group) for group in by_texture(found))


def by_texture(gauges: Iterable[Gauge]) -> tuple[tuple[Gauge, ...], ...]:
    """Return the swatches of each texture together, in the order in which the textures come."""
    groups: dict[str | None, list[Gauge]] = {}
    for gauge in gauges:
        groups.setdefault(gauge.texture, []).append(gauge)
    return tuple(map(tuple, groups.values()))


def gauge_of(table: Content, pointer: str) -> Gauge:
    """Return a swatch as it was counted; BadInput for counts that measure nothing."""
    counted = _counted(table, pointer)
    before = table.get("before")
    return replace(
        counted,
        texture=table.get("in"),
        reading=_reading(table, pointer),
        washed=True if before is not None else table.get("washed"),
        needle_mm=None if table.get("needle_mm") is None else above_zero(table, "needle_mm", pointer),
        before=None if before is None else _counted(_table(before, f"{pointer}/before"), f"{pointer}/before"),
    )


def _counted(table: Content, pointer: str) -> Gauge:
    stitches, rows = (above_zero(table, field, pointer) for field in ("stitches", "rows"))
    counted = Gauge(stitches, rows, length_of(table, "over", pointer))
    for field, figure in (("stitches", counted.per_cm), ("rows", counted.rows_per_cm), ("over_cm", counted.over_cm)):
        if not 1 / FARTHEST <= figure <= FARTHEST:
            hint = "Count over 10 cm or 4 in, and write what was counted there, such as 22 stitches and 30 rows."
            message = NO_SWATCH if field == "over_cm" else f"No yarn is knitted so: {field} {NO_GAUGE}"
            raise BadInput(f"{pointer}/{field}", message, hint)
    return counted


def _reading(table: Content, pointer: str) -> Reading:
    """Return how a swatch was read; what is not said is as usual."""
    given = {name: table.get(name) for name in ("count_error", "window_error_cm")}
    errors = {name: _number(value, f"{pointer}/{name}") for name, value in given.items() if value is not None}
    return replace(AS_USUAL, **errors, swatches=_whole(table.get("swatches"), f"{pointer}/swatches") or 1)


def regauged(request: PlanRequest, given: object, pointer: str, find: Find, vocabulary: Vocabulary) -> PlanRequest:
    """Return a request at other gauges, which stand at a pointer; UnknownPart and BadInput as for a whole request."""
    return _with_named_gauges(replace(request, gauges=gauges_of(given, pointer)), find, vocabulary, pointer)


def _with_named_gauges(
    request: PlanRequest, find: Find, vocabulary: Vocabulary, pointer: str = "/gauge"
) -> PlanRequest:
    """Let a gauge knitted in a texture count for every part of the same rows, whatever it is called."""
    borders = (request.bottom, request.sides, request.picked, request.top)
    placed = {part.component.slug for part in (*request.body, *borders) if part}
    knitted = {
        gauge.texture: _found(gauge.texture, f"{pointer}/in", find)
        for gauge in request.gauges
        if gauge.texture is not None and gauge.texture not in placed
    }
    return replace(request, gauges=own_gauges(request, knitted, vocabulary)) if knitted else request
