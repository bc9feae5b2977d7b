"""In the middle of a piece: rows left of the yarn that is left, when to start the top, and the plan anew."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import Plan, PlanRequest
from counterpane.craft.constructions.fitting import width_cm
from counterpane.craft.constructions.gauging import body_gauge
from counterpane.craft.constructions.settling import settle
from counterpane.craft.measures import Gauge, half_up
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Scale, Spread, Weighed, Yarn, scale_by_weighing
from counterpane.craft.yarn.amounts import worked_out
from counterpane.craft.yarn.choosing import scale_of
from counterpane.craft.yarn.midway import (
    Piece,
    loops_to_bind_off,
    loops_to_free,
    loops_worked,
    reach,
    spot_of,
)
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_requests import SCALE_G, number_of, yarns_of
from counterpane.library.yarn.yarns import figure_json, tenths

Answer = dict[str, Any]
Content = Mapping[str, Any]
AT = "/at"
BODY = "body"


def piece_of(plan: Plan, yarn: Any, at: Content, vocabulary: Vocabulary) -> Piece:
    """Return the piece that is on the needle; BadInput for rows that it does not have, or a yarn of another colour."""
    yarns = yarns_of(yarn) or (Yarn(),)
    spot = spot_of(plan.sections, int(at["rows_done"]))
    if spot is None:
        rows = sum(section.rows for section in plan.sections)
        raise BadInput(f"{AT}/rows_done", f"The blanket has {rows} rows in all.", "Count the rows again.")
    return Piece(worked_out(plan, yarns, vocabulary), _place(yarns, at.get("colour")), spot)


def _place(yarns: Sequence[Yarn], colour: Any) -> int:
    if colour is None:
        return 0
    for place, yarn in enumerate(yarns):
        if yarn.colour is not None and yarn.colour.casefold() == str(colour).casefold():
            return place
    raise BadInput(f"{AT}/colour", f"No yarn of this plan is of the colour {colour!r}.", "Name the colour of a yarn.")


def yarn_left(piece: Piece, at: Content) -> Answer | None:
    """Return how far the yarn that is left will go; None where it was not weighed.

    BadInput where nothing tells what a row weighs.
    """
    left = number_of(at, "left_g", AT)
    if left is None:
        return None
    scale = scale_midway(piece, at)
    if scale.grams is None:
        hint = "Weigh what the piece has taken, or give the metres of 100 g or a weighed swatch with the yarn."
        raise BadInput(f"{AT}/used_g", "It is not known what a row weighs.", hint)
    after = piece.spot.section if piece.free is None else piece.free
    following = _grams(scale, loops_to_bind_off(piece, after + 1, scale))
    reserve = number_of(at, "reserve_g", AT)
    kept = following.likely * piece.yarns[piece.place].margin if reserve is None else reserve
    rest = _to_the_end(piece, scale)
    return {
        "left_g": tenths(left),
        "reserve_g": tenths(kept),
        "worked": figure_json(_grams(scale, loops_worked(piece)), scale),
        "to_the_end": figure_json(rest, scale),
        "enough": _enough(rest, left - kept),
        "after_the_body": figure_json(following, scale),
        "start_next_at_g": None if piece.free is None else tenths(following.high + kept),
        "rows_left": None if piece.free is None else _rows_left(piece, piece.free, scale, left - kept),
    }


def scale_midway(piece: Piece, at: Content) -> Scale:
    """Return what a loop weighs: by what this piece has taken, else as planned."""
    yarn, used = piece.yarns[piece.place], number_of(at, "used_g", AT)
    if used is None:
        return scale_of(piece.plan, yarn, piece.work.vocabulary)
    step = number_of(at, "scale_g", AT) or SCALE_G
    loops = loops_worked(piece)
    if step >= used or loops.low <= 0:
        raise BadInput(
            f"{AT}/used_g", "Too little is worked to weigh a row by it.", "Leave it out, and go on knitting."
        )
    return scale_by_weighing(Weighed(used, 1, scale_g=step, edges=False), loops, yarn, "this piece")


def _grams(scale: Scale, loops: Spread) -> Spread:
    found = scale.grams_of(loops)
    assert found is not None
    return found


def _rows_left(piece: Piece, free: int, scale: Scale, left: Fraction) -> Answer:
    """Return the rows of the body still to be had, surely and likely, beside those planned."""
    section = piece.plan.sections[free]
    fixed = _grams(scale, loops_to_free(piece) + loops_to_bind_off(piece, free + 1, scale))
    sure, likely = (reach(piece, left - fixed.high, scale, True), reach(piece, left - fixed.likely, scale, False))
    done = piece.spot.rows if free == piece.spot.section else 0
    return {
        "section": section.name,
        "sure": sure.rows,
        "likely": likely.rows,
        "planned": section.rows - done,
        "repeat": sure.repeat,
    }


def _to_the_end(piece: Piece, scale: Scale) -> Spread:
    """Return the grams from the needle to the last end where the body is done."""
    spot = piece.spot
    whole = loops_to_bind_off(piece, spot.section, scale)
    return _grams(scale, whole - piece.loops(spot.section, spot.rows))


def _enough(need: Spread, left: Fraction) -> str:
    return "sure" if need.high <= left else "likely" if need.likely <= left else "short"


def true_request(piece: Piece, at: Content) -> PlanRequest | None:
    """Return the request at the gauge that the piece has come out at, the cast-on kept; None where nothing is measured.

    All gauges of the request are taken to be off by the same share as the measured one. A piece on the needle is not
    washed: where the gauge before the wash is known, it is held against that.
    """
    measured = at.get("measured")
    if measured is None:
        return None
    where = f"{AT}/measured"
    wide, long = (number_of(measured, name, where) for name in ("width_cm", "length_cm"))
    factors = (_across(piece, wide), _along(piece, long, measured, where))
    request = _scaled(piece.plan.request, *factors)
    settled = settle(request, piece.work.vocabulary)
    return replace(request, width_cm=width_cm(settled, piece.plan.counts.cast_on))


def _across(piece: Piece, measured: Fraction | None) -> Fraction:
    if measured is None:
        return Fraction(1)
    gauge = body_gauge(piece.plan.request).gauge
    now = gauge.before or gauge
    return measured * now.per_cm / gauge.per_cm / piece.plan.sections[piece.spot.section].cm_width


def _along(piece: Piece, measured: Fraction | None, at: Content, where: str) -> Fraction:
    """Return how much longer the measured rows came out than planned: so many of the body, else all that is worked."""
    if measured is None:
        return Fraction(1)
    rows = at.get("rows")
    gauge = body_gauge(piece.plan.request).gauge
    now = gauge.before or gauge
    if rows is not None:
        return measured / now.length(int(rows))
    sections, spot = piece.plan.sections, piece.spot
    here = sections[spot.section]
    planned = sum((each.cm_length for each in sections[: spot.section]), Fraction(0))
    planned += here.cm_length * spot.rows / here.rows
    if planned == 0:
        raise BadInput(f"{where}/length_cm", "No row is worked yet.", "Leave the length out.")
    return measured * now.rows_per_cm / gauge.rows_per_cm / planned


def _scaled(request: PlanRequest, across: Fraction, along: Fraction) -> PlanRequest:
    return replace(request, gauges=tuple(_stretched(each, across, along) for each in request.gauges))


def _stretched(gauge: Gauge, across: Fraction, along: Fraction) -> Gauge:
    before = None if gauge.before is None else _stretched(gauge.before, across, along)
    return replace(gauge, stitches=gauge.stitches / across, rows=gauge.rows / along, before=before)


def gauge_json(request: PlanRequest) -> Answer:
    """Return the body's gauge of a request over 10 cm, to 0.1."""
    gauge = body_gauge(request).gauge
    return {"stitches": tenths(gauge.per_cm * 10), "rows": tenths(gauge.rows_per_cm * 10), "over_cm": 10}


def place_json(piece: Piece) -> Answer:
    """Return where the work stands as JSON values."""
    section = piece.plan.sections[piece.spot.section]
    return {
        "section": section.name,
        "rows_done": section.first_row - 1 + piece.spot.rows,
        "rows_done_in_section": piece.spot.rows,
        "stitches": section.before,
        "worked_percent": int(half_up(100 * _share(piece))),
    }


def _share(piece: Piece) -> Fraction:
    """Return the share of the loops of all yarns that is worked."""
    one = Piece(worked_out(piece.plan, (Yarn(),), piece.work.vocabulary), 0, piece.spot)
    scale = scale_of(piece.plan, Yarn(), piece.work.vocabulary)
    done = loops_worked(one).likely
    here = one.loops(one.spot.section, one.spot.rows).likely
    rest = loops_to_bind_off(one, one.spot.section, scale).likely - here
    return done / (done + rest)
