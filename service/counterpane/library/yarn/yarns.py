"""The yarn of a plan as JSON values: metres and grams to 0.1, half up; balls and ends are whole."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.measures import half_up
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import ColourYarn, PartYarn, Scale, Spread, Yarn, YarnEstimate, estimate
from counterpane.craft.yarn.amounts import CARRIED_ROWS
from counterpane.craft.yarn.choosing import TextureNotWorked
from counterpane.craft.yarn.sections import StripesRunApart
from counterpane.craft.yarn.stripes import Bumps
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_requests import yarns_of

Answer = dict[str, Any]


def yarn_of_plan(plan: Plan, given: Any, vocabulary: Vocabulary) -> YarnEstimate | None:
    """Estimate the yarn of a plan from the `yarn` of its request; None where that is null.

    BadInput for a yarn that contradicts itself, or a swatch in a texture that is no part of the plan.
    """
    yarns = yarns_of(given)
    if not yarns:
        return None
    try:
        return estimate(plan, yarns, vocabulary)
    except StripesRunApart as fault:
        hint = "Give stripes whose rows go into those of the texture, or the other way round."
        raise BadInput("/yarn", f"{fault}.", hint) from None
    except TextureNotWorked as fault:
        place = next(index for index, yarn in enumerate(yarns) if str(fault) in _textures(yarn))
        where = f"/yarn/{place}" if len(yarns) > 1 else "/yarn"
        hint = "Name the texture of a part, or leave it out where it was the body."
        raise BadInput(where, f"No part of this plan is worked in {str(fault)!r}.", hint) from None


def _textures(yarn: Yarn) -> list[str | None]:
    return [weighed.texture for weighed in (yarn.swatch, yarn.earlier) if weighed is not None]


def yarn_json(found: YarnEstimate | None) -> Answer | None:
    """Return the yarn of a plan as JSON values, null where none was asked for."""
    if found is None:
        return None
    scales = [each.scale for each in found.colours]
    return {
        "colours": [_colour(each) for each in found.colours],
        "metres": _together(found.metres, scales),
        "grams": _together(found.grams, scales),
        "ends": sum(each.ends for each in found.colours),
        "weaving": list(found.weaving),
        "notes": list(notes_of(found)),
    }


def notes_of(found: YarnEstimate) -> Iterator[str]:
    """Give what is to be minded of an estimate."""
    for each in found.colours:
        if each.unknown:
            yield f"Not known, and taken within wide bounds: the yarn of {', '.join(each.unknown)}."
        if each.metres is None:
            yield "Metres are not known: give the metres of a ball, or of 100 g."
        if each.grams is None:
            yield "Grams are not known: give the metres of 100 g, or weigh a swatch."
        if each.pieces > 1:
            named = each.yarn.colour or each.yarn.name or "One yarn"
            yield (
                f"{named} is worked in {each.pieces} pieces, cut between its stripes; over {CARRIED_ROWS} rows or "
                "fewer it is carried up the side (house)."
            )
        if each.balls is not None and each.joins is None:
            yield "A ball is hardly longer than the ends that it leaves."
    for each_bumps in found.bumps:
        yield _bumps(each_bumps)
    for name in found.edges_not_known:
        yield f"{name}: its yarn is not recorded, and was taken within wide bounds."
    yield "Buy all of one colour from one dye lot."


def _bumps(found: Bumps) -> str:
    """Say which stripes begin with a broken line; `counterpane explain colour-change-shows-bumps` tells why."""
    more = f", and {found.more} more of its stripes begin so" if found.more else ""
    return (
        f"Row {found.row} is the first in {found.yarn.colour or found.yarn.name or 'a yarn'} and shows purl faces on "
        f"the right side{more}: begin with a row that is plain there, unless a broken line is meant."
    )


def _colour(each: ColourYarn) -> Answer:
    yarn, scale = each.yarn, each.scale
    return {
        "colour": yarn.colour,
        "name": yarn.name,
        "tex": None if yarn.tex is None else tenths(yarn.tex),
        "strands": yarn.strands,
        "loop_mm": figure_json(scale.loop_mm and scale.loop_mm.widened(scale.spread), scale, 2),
        "parts": [_part(part, scale) for part in each.parts],
        "metres": figure_json(each.metres, scale),
        "grams": figure_json(each.grams, scale),
        "margin_percent": tenths(yarn.margin * 100),
        "balls": _balls(each),
        "ball": {"grams": _or_null(yarn.ball_g), "metres": _or_null(yarn.ball_m)},
        "joins": each.joins,
        "joins_at": [{"ball": one.ball, "rows": [one.first_row, one.last_row]} for one in each.joins_at],
        "pieces": each.pieces,
        "ends": each.ends,
    }


def _part(part: PartYarn, scale: Scale) -> Answer:
    return {
        "part": part.part,
        "loops": int(half_up(part.loops.likely)),
        "metres": figure_json(part.metres, scale),
        "grams": figure_json(part.grams, scale),
    }


def _balls(each: ColourYarn) -> Answer | None:
    balls = each.balls
    if balls is None:
        return None
    return {"low": balls.low, "likely": balls.likely, "high": balls.high, "buy": balls.buy}


def figure_json(figure: Spread | None, scale: Scale, places: int = 1) -> Answer | None:
    """Return a figure with its basis and source, to so many decimals; null where it is not known."""
    if figure is None:
        return None
    step = Fraction(1, 10**places)
    ends = {name: float(half_up(getattr(figure, name), step)) for name in ("low", "likely", "high")}
    return ends | {"basis": scale.basis, "source": scale.source}


def _together(figure: Spread | None, scales: list[Scale]) -> Answer | None:
    """Return a figure of several yarns; its basis is the weakest of theirs, which counts most."""
    weakest = max(scales, key=lambda scale: scale.spread)
    return figure_json(figure, weakest)


def tenths(value: Fraction) -> float:
    """Return a number to 0.1, half up."""
    return float(half_up(value, Fraction(1, 10)))


def _or_null(value: Fraction | None) -> float | None:
    return None if value is None else tenths(value)
