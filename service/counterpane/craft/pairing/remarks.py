"""What is to be said of two parts side by side though their counts meet: each a remark under the slug of its rule."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.component import Look
from counterpane.craft.measures import shown
from counterpane.craft.pairing.facts import SHAPES, SHOWN, Facts, Place

LOWER = Fraction(21, 20)
"""Rows of a side border to one of a smooth body from which the difference shows; house figure."""


@dataclass(frozen=True, slots=True)
class Remark:
    """What two parts do to each other, and what helps."""

    rule: str
    message: str
    hint: str


def remarks(body: Facts, other: Facts, place: Place) -> tuple[Remark, ...]:
    """Return what is to be said of a body and another part in a place; an edge is worked on the body itself here."""
    if place in ("cast-on", "bind-off"):
        return tuple(edge_on(body, other, place))
    if place == "selvedge":
        return ()
    return (
        *lines_meet(body, other, place),
        *sides_differ(body, other),
        *_curl(body, place),
        *_rows(body, other, place),
    )


def lines_meet(body: Facts, border: Facts, place: Place) -> Iterator[Remark]:
    """Say where the lines of two textures run into one another or against one another; house judgement.

    The same texture in both makes one fabric on purpose, and nothing is said of it; its mirror image may slant the
    other way.
    """
    here, there = body.lines, border.lines
    if here is None or there is None or (body.form == border.form and here.way == there.way):
        return
    along = "upright" if place == "ends" else "level"
    if here.way == there.way == along and here.repeat != there.repeat and not (body.garter or border.garter):
        what, unit = ("ribs", "stitches") if along == "upright" else ("ridges", "rows")
        yield Remark(
            "textures-fight",
            f"The {what} of both run into the join: those of the border come again after {there.repeat} {unit}, those "
            f"of the body after {here.repeat}, so that they do not run on.",
            f"Take a border whose {what} come again after {here.repeat} {unit}, or one without {what}.",
        )
    elif {here.way, there.way} == {"slanting to the left", "slanting to the right"}:
        yield Remark(
            "textures-fight",
            "The lines of the border slant one way and those of the body the other.",
            "Take the mirror image of one of them, or a border without slanting lines.",
        )
    elif here.way == there.way and here.way != along:
        yield Remark(
            "textures-merge",
            f"The lines of both textures run the same way, {here.way}: the border is hardly told from the body.",
            "Take a border whose lines run another way, or one without lines such as seed stitch (UK moss).",
        )


def sides_differ(body: Facts, border: Facts) -> Iterator[Remark]:
    """Say where one of two parts is the same on both sides and the other has one right side."""
    if body.reversible == "yes" and border.reversible == "no":
        yield Remark(
            "one-sided-among-reversible",
            "The body is the same on both sides and this border has one right side.",
            "Take a border that is the same on both sides, or mark the right side and keep to it.",
        )


def edge_on(fabric: Facts, edge: Facts, place: Place) -> Iterator[Remark]:
    """Say where a cast-on or bind-off is tighter than the fabric beside it, or flares on it."""
    name = "bind-off" if place == "bind-off" else "cast-on"
    if stretchy(fabric) and edge.give == "firm":
        yield Remark(
            "edge-binds",
            f"The fabric at this {name} draws in and stretches, and the {name} is firm: it binds and may break.",
            f"Take an elastic {name}, or work it with a larger needle.",
        )
    if place == "bind-off" and edge.give == "elastic" and fabric.garter:
        yield Remark(
            "edge-flares",
            "An elastic bind-off flares on garter stitch.",
            "Take a plain bind-off with a needle of the same size.",
        )


def stretchy(fabric: Facts) -> bool:
    """Say whether a fabric draws in at rest and stretches in width, as ribs do."""
    return fabric.behaviour.lies == "draws in" or fabric.behaviour.stretch is not None


def edges_differ(cast_on: Facts, bind_off: Facts) -> Iterator[Remark]:
    """Say where one end of a piece stretches and the other does not."""
    if {cast_on.give, bind_off.give} == {"firm", "elastic"}:
        tight, slack = ("cast-on", "bind-off") if cast_on.give == "firm" else ("bind-off", "cast-on")
        yield Remark(
            "edges-stretch-unlike",
            f"The {tight} is firm and the {slack} elastic: one end of the blanket stretches and the other does not.",
            f"Take an elastic {tight}, or a {slack} that is firm or moderate.",
        )


def looks_differ(cast_on: Facts, bind_off: Facts) -> Iterator[Remark]:
    """Say where two ends that face one side of a piece show edges of another shape; nothing where a look is not known.

    Common practice, no source: a chain and a line of bumps are both flat and pass for a pair.
    """
    below, above = cast_on.look, bind_off.look
    if below is None or above is None or SHAPES[below] == SHAPES[above]:
        return
    yield Remark(
        "edges-look-unlike",
        f"The cast-on shows {SHOWN[below]} and the bind-off {SHOWN[above]} on the same side: the two ends of the "
        "blanket do not match in look.",
        f"Take a bind-off that shows {_like(below)}, or a cast-on that shows {_like(above)}.",
    )


def _like(look: Look) -> str:
    """Name every look of the shape of one."""
    return " or ".join(SHOWN[other] for other in SHAPES if SHAPES[other] == SHAPES[look])


def _curl(body: Facts, place: Place) -> Iterator[Remark]:
    curl = body.behaviour.curl
    if curl is not None:
        least = curl.end_border if place == "ends" else curl.side_border
        yield Remark(
            "border-narrow-for-curl",
            f"This body rolls {curl.ends if place == 'ends' else curl.sides} here.",
            f"Make the border {_range(least)} wide at least ({least.source}); it may flip all the same.",
        )


def _range(figure: Figure) -> str:
    ends = [shown(end) for end in (figure.low, figure.high) if end is not None]
    return f"{' to '.join(dict.fromkeys(ends))} {figure.unit}"


def _rows(body: Facts, border: Facts, place: Place) -> Iterator[Remark]:
    if place != "sides" or border.lower_rows is None or body.garter:
        return
    ratio = border.lower_rows / (body.lower_rows or 1)
    if ratio >= LOWER:
        yield Remark(
            "rows-differ-in-height",
            f"Rows of this border are lower than those of the body: about {shown(ratio, 2)} to one (common practice).",
            "Work extra pairs of border rows with a turn, as the plan says, or block a very narrow border.",
        )
