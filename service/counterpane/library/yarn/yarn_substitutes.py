"""One yarn in place of another: how they compare, how many strands match, and how much is needed."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Any

from counterpane.craft.measures import half_up
from counterpane.craft.yarn import Yarn
from counterpane.craft.yarn.balls import balls
from counterpane.craft.yarn.classes import Bounds, YarnClass, classes_of_name, classes_of_tex, tex_between
from counterpane.craft.yarn.numbering import from_tex
from counterpane.library.plans.known import Facts
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_facts import yarn_classes
from counterpane.library.yarn.yarn_largest import Stock, stocks_of
from counterpane.library.yarn.yarn_requests import yarn_of

Answer = dict[str, Any]
ALIKE = Fraction(10, 100)
"""Share by which two yarns may differ in thickness and still be tried for each other; house figure."""

MOST_STRANDS = 12
_NUMBER = r"([0-9]{1,6}(?:\.[0-9]{1,6})?)"
WORDS = (
    (re.compile(rf"{_NUMBER}(?: ?m(?:etres)?)?", re.ASCII | re.IGNORECASE), "metres_per_100g"),
    (re.compile(rf"{_NUMBER} ?tex", re.ASCII | re.IGNORECASE), "tex"),
    (re.compile(rf"nm ?{_NUMBER}", re.ASCII | re.IGNORECASE), "nm"),
)

NUMBERS = ("Nm", "Ne", "denier")
SWATCH = "Thickness alone tells no gauge: knit a swatch in the yarn that is meant, wash it, and weigh it."
BASIS = "grams and metres by the same length of yarn at the same gauge; alike within 10 % (house)"


@dataclass(frozen=True, slots=True)
class Thick:
    """A yarn with the least and the most tex of all its strands together, and the classes that it belongs to."""

    yarn: Yarn
    tex: Bounds
    classes: tuple[YarnClass, ...]

    @property
    def known(self) -> Fraction | None:
        """The tex where it is one figure, all strands together."""
        return self.tex[0] if self.tex[0] == self.tex[1] else None


def substitute(content: Mapping[str, Any], facts: Facts) -> Answer:
    """Compare the yarn of `from` with that of `to`, each as far as it is known, and turn an `amount` over.

    BadInput for a yarn of which neither thickness nor class is known.
    """
    classes = yarn_classes(facts)
    one, other = (_thick(content[name], f"/{name}", classes) for name in ("from", "to"))
    return {
        "from": _thick_json(one),
        "to": _thick_json(other),
        "thicker_percent": _compared(one.tex, other.tex),
        "verdict": _verdict(one, other),
        "strands": _strands(one, other),
        "amount": _amount(content, one, other),
        "basis": BASIS,
        "notes": [SWATCH],
    }


def in_words(text: str) -> dict[str, Any]:
    """Return a yarn told in a few words: "230" or "230 m" to 100 g, "435 tex", "Nm 2.3", or the name of a class."""
    for pattern, field in WORDS:
        if found := pattern.fullmatch(text.strip()):
            return {field: Decimal(found[1])}
    return {"weight": text.strip()}


def _thick(given: Mapping[str, Any], pointer: str, classes: Sequence[YarnClass]) -> Thick:
    yarn = yarn_of(given, pointer)
    if yarn.tex is not None:
        whole = yarn.tex * yarn.strands
        return Thick(yarn, (whole, whole), classes_of_tex(whole, classes))
    found = classes_of_name(yarn.weight or "", classes)
    if not found:
        known = ", ".join(name for each in classes for name in each.names[:1])
        hint = f"Give its metres of 100 g, its tex, or its class: {known}."
        raise BadInput(pointer, "Neither the thickness nor the class of this yarn is known.", hint)
    low, high = tex_between(found)
    times = yarn.strands
    return Thick(yarn, (low and low * times, high and high * times), found if times == 1 else ())


def _thick_json(each: Thick) -> Answer:
    return {
        "name": each.yarn.name,
        "strands": each.yarn.strands,
        "tex": [_shown(end) for end in each.tex],
        "metres_per_100g": [_shown(end and 100_000 / end) for end in reversed(each.tex)],
        "numbers": {name: _shown(each.known and from_tex(each.known, name), 2) for name in NUMBERS},
        "classes": [
            {
                "number": one.number,
                "name": one.name,
                "called": list(one.names),
                "wraps_per_inch": [_shown(end) for end in one.wraps],
            }
            for one in each.classes
        ],
    }


def _compared(one: Bounds, other: Bounds) -> list[float | None]:
    """Return by how many percent the other is thicker, least and most; null where a class is open at an end."""
    least = None if other[0] is None or one[1] is None else other[0] / one[1]
    most = None if other[1] is None or one[0] is None else other[1] / one[0]
    return [_shown(share and (share - 1) * 100) for share in (least, most)]


def _verdict(one: Thick, other: Thick) -> str:
    """Say "alike" of yarns to be tried for each other, "not alike", or "not known" where classes leave it open."""
    if one.known and other.known:
        return "alike" if abs(other.known / one.known - 1) <= ALIKE else "not alike"
    if not (one.classes and other.classes):
        return "not known"
    return "not known" if set(one.classes) & set(other.classes) else "not alike"


def _strands(one: Thick, other: Thick) -> Answer | None:
    """Return how many strands of the other yarn come nearest; None where a thickness is not one figure."""
    if not (one.known and other.known):
        return None
    single, wanted = other.known / other.yarn.strands, one.known
    best = min(range(1, MOST_STRANDS + 1), key=lambda strands: abs(strands * single - wanted))
    off = best * single / wanted - 1
    return {"best": best, "thicker_percent": _shown(off * 100), "alike": abs(off) <= ALIKE}


def _amount(content: Mapping[str, Any], one: Thick, other: Thick) -> Answer | None:
    """Return what is needed of the other yarn in place of an amount of the first, both at one gauge."""
    if content.get("amount") is None:
        return None
    (stock,) = stocks_of(content["amount"], content["from"], "/amount", "/from")
    metres = _metres(stock, one) / one.yarn.strands * other.yarn.strands
    tex = other.yarn.tex
    grams = None if tex is None else metres * tex / 1000
    counted = [(metres, other.yarn.ball_m), (grams, other.yarn.ball_g)]
    needed = next((balls(amount, ball) for amount, ball in counted if amount and ball), None)
    return {"metres": _shown(metres), "grams": _shown(grams), "balls": needed}


def _metres(stock: Stock, one: Thick) -> Fraction:
    if stock.unit == "metres":
        return stock.amount
    if one.yarn.tex is None:
        raise BadInput("/from", "Its grams cannot be turned into metres.", "Give its metres of 100 g, or its tex.")
    return stock.amount * 1000 / one.yarn.tex


def _shown(value: Fraction | None, places: int = 1) -> float | None:
    return None if value is None else float(half_up(value, Fraction(1, 10**places)))
