"""What matters of a part beside any other, worked out once: counts, texture, lines, sides, edges."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Literal

from counterpane.craft.behaviour.textures import Behaviour, behaviour_of
from counterpane.craft.component import Component, Kind, Look, canonical_textures, derive, textures
from counterpane.craft.constructions.fabrics import is_garter, rows_against_smooth
from counterpane.craft.constructions.obstacles import CountChanges, DoesNotJoin, LeftDiffers, Stuck, ValueRefused
from counterpane.craft.constructions.strips import Edging, selvedge, side_border
from counterpane.craft.constructions.textures import textures_of
from counterpane.craft.counts import Progression
from counterpane.craft.fabric import Reversible, sides_of_texture
from counterpane.craft.pairing.lines import Lines, lines_of
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.texture import Cell

KEPT = 1_024
"""Parts whose facts are kept at hand; house figure."""

HOST_WIDTHS = 4
"""Widths of a border in the body beside which it is tried as a side border; house figure, any that leaves a body."""

Place = Literal["ends", "sides", "selvedge", "cast-on", "bind-off"]
Give = Literal["firm", "moderate", "elastic"]
Shape = Literal["flat", "raised", "open"]

PLACES: dict[Kind, tuple[Place, ...]] = {
    "body": (),
    "border": ("ends", "sides"),
    "selvedge": ("selvedge",),
    "cast-on": ("cast-on",),
    "bind-off": ("bind-off",),
}
"""Where a part of each kind can stand beside a body."""

GIVES: dict[str, Give] = {
    "firm": "firm",
    "moderate": "moderate",
    "soft": "elastic",
    "loose": "elastic",
    "elastic": "elastic",
}
"""How far an edge stretches, by the words that cast-ons and bind-offs are described with; house order."""

SHAPES: dict[Look, Shape] = {
    "chain": "flat",
    "bumps": "flat",
    "rope": "raised",
    "cord": "raised",
    "loops": "open",
}
"""What the eye makes of an edge at arm's length, by what it shows; those of one shape pass for alike; house order."""

SHOWN: dict[Look, str] = {
    "chain": "a chain",
    "bumps": "a line of bumps",
    "rope": "a rope",
    "cord": "a cord",
    "loops": "open loops",
}
"""What an edge shows, in a sentence."""


@dataclass(frozen=True, slots=True)
class Facts:
    """A part beside others. None is not known.

    `width` are its stitches on one side as a side border or selvedge, and `no_edge` why it cannot be one. `stuck` says
    why its rows cannot be worked with others at all. `form` is the canonical texture, `give` how far an edge stretches,
    `look` what it shows on the side it faces.
    """

    component: Component
    counts: tuple[Progression, ...]
    said: str
    rows: int
    behaviour: Behaviour
    form: Cell | None = None
    lines: Lines | None = None
    reversible: Reversible | None = None
    garter: bool = False
    lower_rows: Fraction | None = None
    width: int | None = None
    no_edge: str = ""
    stuck: str = ""
    give: Give | None = None
    look: Look | None = None


@lru_cache(maxsize=KEPT)
def facts_of(component: Component, vocabulary: Vocabulary) -> Facts:
    """Work out the facts of a part."""
    derived, behaviour = derive(component, vocabulary), behaviour_of(component, vocabulary)
    if component.operation is not None:
        give = GIVES.get(component.operation.stretch or "")
        return Facts(component, derived.starts, derived.said, 0, behaviour, give=give, look=component.operation.look)
    texture = next((each for each in textures(component, vocabulary) if each), None)
    width, no_edge = _edge(component, vocabulary)
    return Facts(
        component,
        derived.starts,
        derived.said,
        max((version.row_repeat for version in derived.versions), default=0),
        behaviour,
        next((form for form in canonical_textures(component, vocabulary) if form), None),
        lines_of(texture) if texture else None,
        component.reversible or (sides_of_texture(texture) if texture else None),
        is_garter(component, vocabulary),
        rows_against_smooth(component, vocabulary),
        width,
        no_edge,
        _stuck(component, vocabulary),
    )


def _stuck(component: Component, vocabulary: Vocabulary) -> str:
    try:
        textures_of(component, vocabulary, "")
    except Stuck as fault:
        return _why(fault)
    return ""


def _edge(component: Component, vocabulary: Vocabulary) -> tuple[int | None, str]:
    """Return the stitches of a part as an edge, its default or its one count, and why it cannot be an edge."""
    edging = Edging(component, "")
    try:
        if component.kind == "selvedge":
            return selvedge(edging, None, None, vocabulary).widths[0], ""
        width = _default_width(component, vocabulary) if component.kind == "border" else None
        if width is None:
            return None, "it has no number of stitches for a side"
        return side_border(edging, (width, width), HOST_WIDTHS * width, vocabulary).widths[0], ""
    except Stuck as fault:
        return None, _why(fault)


def _default_width(component: Component, vocabulary: Vocabulary) -> int | None:
    default = next((each.default for each in component.parameters if each.name == "stitches"), None)
    fixed = (start.least for start in derive(component, vocabulary).starts if not start.of)
    return default or next(fixed, None)


def _why(fault: Stuck) -> str:
    """Say an obstacle of one part in half a sentence."""
    match fault.obstacles[0]:
        case DoesNotJoin(why=why):
            return f"it {why}"
        case LeftDiffers(why=why):
            return f"its left side does not go with the right one: {why}"
        case CountChanges(by=by):
            return f"its rows do not come back to their count{f' ({by:+d} stitches)' if by else ''}"
        case ValueRefused(why=why):
            return why
        case _:
            return "its rows work at no count, or cast on"
