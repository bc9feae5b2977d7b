"""Yarns of a request from JSON values that the wire schema has let through; what is told twice must agree."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any, cast

from counterpane.craft.measures import exact, shown
from counterpane.craft.yarn import Fibre, Weighed, Yarn
from counterpane.craft.yarn.numbering import to_tex
from counterpane.library.values import BadInput

Content = Mapping[str, Any]

AGREE = Fraction(1, 100)
"""Share by which two ways of telling one thickness may differ, since labels are rounded; house figure."""

SCALE_G = Fraction(1)
"""Smallest step of the scales where none is given: a kitchen scale; house figure."""

MARGIN_PERCENT = 10
"""Bought beyond the likely amount where nothing is said; house figure."""

NO_YARN = {
    "tex": "0 tex is no thickness of a yarn.",
    "metres_per_100g": "0 m to 100 g is no thickness of a yarn.",
    "nm": "Nm 0 is no thickness of a yarn.",
    "ball_g": "A ball of 0 g is no ball.",
    "ball_m": "A ball of 0 m is no ball.",
}
"""What a 0 in each figure of thickness says."""


def yarns_of(given: Any, pointer: str = "/yarn") -> tuple[Yarn, ...]:
    """Read one yarn or a list of yarns; none for null. BadInput with its pointer where a yarn contradicts itself."""
    if given is None:
        return ()
    if isinstance(given, Mapping):
        return (yarn_of(given, pointer),)
    if not isinstance(given, Sequence) or isinstance(given, str) or not given:
        raise BadInput(pointer, "This is no yarn.", "Write one yarn, or a list with one for each colour.")
    yarns = tuple(yarn_of(_table(each, f"{pointer}/{place}"), f"{pointer}/{place}") for place, each in enumerate(given))
    _refuse_twins(yarns, pointer)
    return yarns


def yarn_of(given: Content, pointer: str) -> Yarn:
    """Read one yarn."""
    ball_g, ball_m = number_of(given, "ball_g", pointer), number_of(given, "ball_m", pointer)
    rows, every = _stripes(given, pointer)
    margin = number_of(given, "margin_percent", pointer)
    return Yarn(
        name=given.get("name"),
        weight=given.get("weight"),
        colour=given.get("colour"),
        fibre=_fibres(given, pointer),
        tex=_tex(given, pointer),
        ball_g=ball_g,
        ball_m=ball_m,
        strands=int(number_of(given, "strands", pointer) or 1),
        parts=tuple(given.get("parts") or ()),
        rows=rows,
        every=every,
        margin=(Fraction(MARGIN_PERCENT) if margin is None else margin) / 100,
        swatch=_weighed(given, "swatch", pointer),
        earlier=_weighed(given, "earlier", pointer),
    )


def _table(value: object, pointer: str) -> Content:
    if not isinstance(value, Mapping):
        raise BadInput(pointer, "This is not an object.", "Write an object in braces.")
    return value


def number_of(given: Content, name: str, pointer: str) -> Fraction | None:
    """Return a number of an object at a pointer, None where it is not given; BadInput for what is none."""
    value = given.get(name)
    if value is None:
        return None
    try:
        return exact(cast("str", value if isinstance(value, int) and not isinstance(value, bool) else str(value)))
    except ValueError:
        raise BadInput(f"{pointer}/{name}", f"{value!r} is not a number.", "Write a number, such as 22.5.") from None


def _tex(given: Content, pointer: str) -> Fraction | None:
    """Return the thickness of one strand, however it was told; BadInput where it was told in two ways that differ."""
    told = [(name, tex) for name, tex in _told(given, pointer) if tex is not None]
    for name, tex in told[1:]:
        first, known = told[0]
        if abs(tex - known) > AGREE * known:
            message = f"{first} tells {shown(known)} tex and {name} tells {shown(tex)} tex."
            raise BadInput(f"{pointer}/{name}", message, "Leave out the one that is wrong.")
    return told[0][1] if told else None


def _told(given: Content, pointer: str) -> list[tuple[str, Fraction | None]]:
    tex, metres, metric, grams, ball = (_above_zero(given, name, pointer) for name in NO_YARN)
    return [
        ("tex", tex),
        ("metres_per_100g", metres and to_tex(metres, "m to 100 g")),
        ("nm", metric and to_tex(metric, "Nm")),
        ("ball_m", ball and grams and 1000 * grams / ball),
    ]


def _above_zero(given: Content, name: str, pointer: str) -> Fraction | None:
    number = number_of(given, name, pointer)
    if number == 0:
        hint = "Give what the band says, such as 230 m to 100 g, or leave it out."
        raise BadInput(f"{pointer}/{name}", NO_YARN[name], hint)
    return number


def _fibres(given: Content, pointer: str) -> tuple[Fibre, ...]:
    listed, others = given.get("fibre"), given.get("fibres")
    if listed is not None and others is not None:
        raise BadInput(f"{pointer}/fibres", "The fibres are told twice.", "Leave out one of fibre and fibres.")
    names = ("fibre", "percent") if others is None else ("name", "pct")
    field = "fibre" if others is None else "fibres"
    found = enumerate((listed if others is None else others) or ())
    return tuple(
        Fibre(each[names[0]], number_of(each, names[1], f"{pointer}/{field}/{place}")) for place, each in found
    )


def _stripes(given: Content, pointer: str) -> tuple[tuple[int, ...], int]:
    rows = tuple(sorted({int(row) for row in given.get("rows") or ()}))
    every = given.get("every")
    if not rows:
        if every is not None:
            raise BadInput(
                f"{pointer}/every", "It is not said which rows this yarn works.", "Give rows, or leave it out."
            )
        return (), 1
    if every is None or rows[-1] > int(every):
        hint = f"Write every, the rows after which the stripes begin again: at least {rows[-1]}."
        raise BadInput(f"{pointer}/every", f"Row {rows[-1]} of the stripes lies outside their repeat.", hint)
    return rows, int(every)


def _weighed(given: Content, name: str, pointer: str) -> Weighed | None:
    table = given.get(name)
    if table is None:
        return None
    where = f"{pointer}/{name}"
    piece = name == "earlier"
    mass, scale = number_of(table, "mass_g", where), number_of(table, "scale_g", where) or SCALE_G
    if mass is None or scale >= mass:
        raise BadInput(f"{where}/scale_g", "The scales' step is as large as the mass.", "Weigh on finer scales.")
    stitches = int(table["stitches_total" if piece else "stitches"])
    rows = 1 if piece else int(table["rows"])
    edges = not piece and table.get("edges") is not False
    return Weighed(mass, stitches, rows, table.get("in"), scale, edges)


def _refuse_twins(yarns: Sequence[Yarn], pointer: str) -> None:
    """Refuse two yarns of one colour, or several of which none is told where it belongs."""
    seen: dict[str, int] = {}
    for place, yarn in enumerate(yarns):
        if place and not (yarn.colour or yarn.parts or yarn.rows):
            hint = "Give its colour as the rows name it, its parts, or its rows."
            raise BadInput(f"{pointer}/{place}", "It is not said what this yarn works.", hint)
        if yarn.colour is not None and seen.setdefault(yarn.colour.casefold(), place) != place:
            raise BadInput(f"{pointer}/{place}/colour", f"Colour {yarn.colour!r} stands twice.", "Name each once.")
