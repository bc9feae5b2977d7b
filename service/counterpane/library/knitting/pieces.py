"""A finished piece beside what safety asked of its plan: what was measured counts, an estimate does not.

Nothing here passes a piece: a rule that was not assessed is named, and the rules of the place where it is used decide.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import CannotBePlanned
from counterpane.craft.measures import exact, half_up
from counterpane.craft.safety.house import HEAVY_GSM, NOT_LIGHT_GSM
from counterpane.craft.safety.limits import FINGERTIP_MM
from counterpane.craft.safety.measured import MEASURABLE
from counterpane.library.errors import LibraryError
from counterpane.library.knitting import noting
from counterpane.library.plans.plan_told import told_of
from counterpane.library.services import Services

Content = Mapping[str, Any]
Answer = dict[str, Any]

ABOUT = (
    "What was measured of the piece stands beside what safety asked of its plan. An estimate does not count. What is "
    "not assessed was not looked at and is no pass, and a rule that says nothing passes nothing. The rules of the "
    "place, ward or charity come first."
)
OF_THE_PIECE = (*MEASURABLE, "measured", "width_cm", "length_cm")
"""Inputs of a plan that a piece tells by itself or not at all: those of the plan were of another piece, or wishes."""
KEPT = (
    *("read_for", "findings", "assessed", "not_assessed", "not_applicable"),
    *("asked_for", "measured", "profile", "cautions", "home_check"),
)
NOT_WASHED = "It was not said to be washed and dry when it was measured, so it does not count."
CM2_TO_M2 = 10_000  # By definition.
NOBODY = "the maker of the piece"


def beside_safety(services: Services, piece: Content) -> Answer:
    """Return the record of a piece with what was measured, and what safety says of the plan with that; NotFound."""
    measured = [_mass(piece), _openings(piece)]
    told = {**piece, "about": ABOUT, "measured": measured}
    try:
        plan, request = noting.plan_of(services, noting.based_of(services, piece["recipe"], piece))
        for_ = _for(request.get("for") or {}, piece, measured)
        safety = told_of(plan, request | {"for": for_}, services.known).safety
    except (CannotBePlanned, LibraryError) as fault:
        return told | {"safety": None, "not_compared": f"Its plan cannot be worked out: {fault}"}
    return told | {"safety": {name: safety[name] for name in KEPT}, "not_compared": None}


def _for(asked: Content, piece: Content, measured: list[Answer]) -> Answer:
    """Return what is known of the child and the use by the recipe, with the figures of this piece and no others."""
    who = {"by": piece["whose"] or NOBODY, "on": piece["on"], "wash": "washed and dry"}
    found = [{"what": each["what"], "value": each["value"], **who} for each in measured if each["counts"]]
    size = {name: piece[name] for name in ("width_cm", "length_cm") if piece.get(name) is not None}
    return {name: value for name, value in asked.items() if name not in OF_THE_PIECE} | size | {"measured": found}


def _mass(piece: Content) -> Answer:
    """Return the weighed mass; it counts with the size, without which it is no mass of an area."""
    value, why = piece.get("weighed_g"), ""
    if value is None:
        why = "It was not weighed."
    elif not piece.get("washed"):
        why = NOT_WASHED
    elif piece.get("width_cm") is None or piece.get("length_cm") is None:
        why = "Its width and length were not measured, and a mass is judged by its area."
    bands = {"not_light_from_gsm": int(NOT_LIGHT_GSM), "heavy_from_gsm": int(HEAVY_GSM)}
    told = {"what": "mass_g", "value": value, "counts": not why, "why": why or "It was weighed, washed and dry."}
    return told | {"gsm": None if why else _gsm(piece), **bands}


def _gsm(piece: Content) -> float:
    grams, wide, long = (exact(piece[name]) for name in ("weighed_g", "width_cm", "length_cm"))
    return float(half_up(grams * CM2_TO_M2 / (wide * long), Fraction(1, 10)))


def _openings(piece: Content) -> Answer:
    """Return the largest opening that a rod found; it counts where no larger one was only estimated."""
    by_rod, guessed = (_largest(piece, found_by) for found_by in ("rod", "estimate"))
    why = ""
    if by_rod is None:
        why = "No opening was tested with a rod" + ("." if guessed is None else "; an estimate does not count.")
    elif not piece.get("washed"):
        why = NOT_WASHED
    elif guessed is not None and guessed >= by_rod:
        why = f"One of {guessed} mm was only estimated: test the largest one with a rod."
    limit = int(FINGERTIP_MM)
    return {
        "what": "hole_mm",
        "value": by_rod,
        "counts": not why,
        "why": why or "The largest one found was tested with a rod, washed and dry.",
        "estimated": guessed,
        "limit_mm": limit,
        "under_limit": None if why else by_rod is not None and by_rod < limit,
    }


def _largest(piece: Content, found_by: str) -> Decimal | int | None:
    found = (each["mm"] for each in piece.get("openings") or () if each["found_by"] == found_by)
    return max(found, default=None)
