"""Classes of yarn, cords and ways to weave in ends, from the facts that ship with the program."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from counterpane.craft.needles import Needle
from counterpane.craft.yarn.classes import Bounds, YarnClass
from counterpane.craft.yarn.weaving import Weaving
from counterpane.library.plans.known import Facts

CLASSES = "yarn-weight-"
NAMES = "yarn-names-"
ENDS = "ends-of-"
CORDS = "needle-lengths"
NEEDLES = "needle-"
MILLIMETRES = "-mm"
SUPERWASH = {"yes": True, "no": False, "": None}


def yarn_classes(facts: Facts) -> tuple[YarnClass, ...]:
    """Return the classes of yarn from the thinnest on: the council's figures and the names of the trade."""
    named = {fact["value"]["number"]: fact["value"] for name, fact in facts.items() if name.startswith(NAMES)}
    known = [fact["value"] for name, fact in facts.items() if name.startswith(CLASSES)]
    return tuple(_class(value, named[value["number"]]) for value in known)


def _class(council: Mapping[str, Any], trade: Mapping[str, Any]) -> YarnClass:
    low, high = council["stitches"]
    return YarnClass(
        number=int(council["number"]),
        name=council["name"],
        names=tuple(dict.fromkeys((*trade["us"], *trade["uk"], *trade["au"]))),
        stitches=(int(low), int(high)),
        needle_mm=_bounds([*council["needle_mm"], ""][:2]),
        needle_us=tuple(council["needle_us"]),
        metres=tuple(_bounds(bounds) for bounds in trade["metres_100g"]),
        wraps=_bounds(trade["wraps_inch"]),
    )


def _bounds(ends: list[str]) -> Bounds:
    low, high = (Fraction(end) if end else None for end in ends)
    return low, high


def source_of_classes(facts: Facts) -> str:
    """Return where the needles of the classes come from."""
    return str(facts[f"{CLASSES}3"]["source"])


def cords(facts: Facts) -> tuple[Fraction, ...]:
    """Return the usual lengths of circular needles in cm."""
    return tuple(Fraction(length) for length in facts[CORDS]["value"])


def needle_sizes(facts: Facts) -> tuple[Needle, ...]:
    """Return the needle sizes with their numbers in the scales, the thinnest first."""
    known = (fact["value"] for name, fact in facts.items() if name.startswith(NEEDLES) and name.endswith(MILLIMETRES))
    return tuple(Needle(Fraction(value["mm"]), value.get("us"), value.get("uk")) for value in known)


def weavings(facts: Facts) -> tuple[Weaving, ...]:
    """Return the ways in which ends are woven in."""
    return tuple(_weaving(fact) for name, fact in facts.items() if name.startswith(ENDS))


def _weaving(fact: Mapping[str, Any]) -> Weaving:
    value = fact["value"]
    low, high = (Fraction(end) for end in value["each_way"])
    return Weaving(fact["says"], tuple(value["sorts"]), SUPERWASH[value["superwash"]], (low, high), int(value["ways"]))
