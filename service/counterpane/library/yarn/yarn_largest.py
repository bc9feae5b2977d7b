"""The largest blanket of a recipe that the yarn at hand makes."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Literal, cast

from counterpane.craft.constructions import CannotBePlanned, Plan
from counterpane.craft.findings import Finding
from counterpane.craft.measures import shown
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import ColourYarn, Spread, Yarn, estimate
from counterpane.craft.yarn.largest import LARGEST_CM, Keep, largest
from counterpane.craft.yarn.sizing import NotEnoughYarn, SizeLaw
from counterpane.library.plans.plan_answers import tenths
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_requests import number_of, yarns_of
from counterpane.library.yarn.yarns import yarn_of_plan

Answer = dict[str, Any]
Unit = Literal["metres", "grams"]
UNITS: tuple[Unit, ...] = ("metres", "grams")
BALL: Mapping[Unit, str] = {"metres": "ball_m", "grams": "ball_g"}


@dataclass(frozen=True, slots=True)
class Stock:
    """What is at hand of one yarn, in metres or grams."""

    amount: Fraction
    unit: Unit


@dataclass(frozen=True, slots=True)
class Found:
    """The largest plan with the margin kept, and the largest without any.

    `limited` says that the yarn does for more than any size that is looked at.
    """

    plan: Plan
    without_margin: Plan | None
    limited: bool


def largest_of(plan: Plan, yarn: Any, have: Any, keep: Keep, vocabulary: Vocabulary) -> Found:
    """Return the largest plan of a recipe that the yarn at hand makes, whatever size the plan has.

    Enough is what covers the likely yarn with its margin and the high end of the estimate, colour by colour. BadInput
    for yarn that cannot be reckoned in what is at hand, CannotBePlanned where it does not do for any size.
    """
    yarns, stocks = yarns_of(yarn), stocks_of(have, yarn)
    found = yarn_of_plan(plan, yarn, vocabulary)
    if found is None:
        raise BadInput("/yarn", "No yarn is given.", "Give the yarn: a swatch that was weighed, or its metres by mass.")
    guess = min(_guess(plan, each, stock, keep) for each, stock in _pairs(found.colours, yarns, stocks))

    def enough(sure: bool) -> Callable[[Plan], bool]:
        def covers(made: Plan) -> bool:
            pairs = _pairs(estimate(made, yarns, vocabulary).colours, yarns, stocks)
            return all(_needed(each, stock, sure) <= stock.amount for each, stock in pairs)

        return covers

    safe = largest(plan, enough(sure=True), guess, keep, vocabulary)
    if safe is None:
        raise CannotBePlanned((_short(plan, found.colours, yarns, stocks),))
    return Found(safe, largest(plan, enough(sure=False), guess, keep, vocabulary), guess > LARGEST_CM)


def stocks_of(have: Any, yarn: Any, pointer: str = "/have", of_yarn: str = "/yarn") -> tuple[Stock, ...]:
    """Read what is at hand, one entry for each yarn in their order; BadInput where that is not what was sent."""
    yarns = yarns_of(yarn, of_yarn)
    several = isinstance(have, Sequence)
    listed = have if several else (have,)
    if len(listed) != len(yarns):
        hint = "Give what is at hand of each yarn, in the order of the yarns."
        raise BadInput(pointer, f"{len(yarns)} yarns are used and {len(listed)} amounts given.", hint)
    places = (f"{pointer}/{place}" if several else pointer for place in range(len(listed)))
    return tuple(_stock(table, one, where) for table, one, where in zip(listed, yarns, places, strict=True))


def _stock(table: Mapping[str, Any], yarn: Yarn, where: str) -> Stock:
    for unit in UNITS:
        if (amount := number_of(table, unit, where)) is not None:
            return Stock(amount, unit)
    balls = number_of(table, "balls", where) or Fraction(0)
    held: tuple[tuple[Unit, Fraction | None], ...] = (("metres", yarn.ball_m), ("grams", yarn.ball_g))
    for unit, ball in held:
        if ball is not None and (unit == "grams" or _in_metres(yarn)):
            return Stock(balls * ball, unit)
    raise BadInput(f"{where}/balls", "It is not said what a ball holds.", "Give ball_g or ball_m with the yarn.")


def _in_metres(yarn: Yarn) -> bool:
    """Tell whether metres of a yarn can be reckoned: by the gauge always, by the scales only with a thickness."""
    return yarn.tex is not None or not (yarn.swatch or yarn.earlier)


def _pairs(
    colours: Sequence[ColourYarn], yarns: Sequence[Yarn], stocks: Sequence[Stock]
) -> list[tuple[ColourYarn, Stock]]:
    """Return each yarn that is used with what there is of it."""
    return [(each, stocks[yarns.index(each.yarn)]) for each in colours]


def _amount(each: ColourYarn, unit: Unit) -> Spread:
    found = each.metres if unit == "metres" else each.grams
    if found is None:
        missing = "the metres of a ball or of 100 g" if each.yarn.tex is None else "a swatch that was weighed"
        raise BadInput("/yarn", f"The {unit} of this yarn cannot be reckoned.", f"Give {missing} with the yarn.")
    return found


def _needed(each: ColourYarn, stock: Stock, sure: bool) -> Fraction:
    found = _amount(each, stock.unit)
    return max(found.likely * (1 + each.yarn.margin), found.high) if sure else found.likely


def _guess(plan: Plan, each: ColourYarn, stock: Stock, keep: Keep) -> Fraction:
    """Return the width, or the length where the width is kept, that the closed form names."""
    law = _law(plan, each, stock.unit)
    margin = _needed(each, stock, True) / _needed(each, stock, False) - 1
    try:
        if keep == "width":
            return law.length(stock.amount, plan.width_cm, margin)
        return law.width(stock.amount, margin)
    except NotEnoughYarn:
        return Fraction(0)


def _law(plan: Plan, each: ColourYarn, unit: Unit) -> SizeLaw:
    """Return how the yarn grows with the size, from what this plan takes of it."""
    part = {one.part: one.metres if unit == "metres" else one.grams for one in each.parts}
    likely = {name: figure.likely for name, figure in part.items() if figure is not None}
    edges = sum((likely.pop(name, Fraction(0)) for name in ("cast-on", "bind-off")), Fraction(0))
    fixed = likely.pop("ends", Fraction(0))
    area = sum(likely.values(), Fraction(0)) / (plan.width_cm * plan.length_cm)
    shape = plan.request.length_cm / plan.request.width_cm
    # A yarn that works edges alone grows with the width; the smallest area keeps the closed form soluble.
    return SizeLaw(max(area, Fraction(1, 10**9)), edges / plan.width_cm, fixed, shape)


def _short(plan: Plan, colours: Sequence[ColourYarn], yarns: Sequence[Yarn], stocks: Sequence[Stock]) -> Finding:
    pairs = _pairs(colours, yarns, stocks)
    each, stock = min(pairs, key=lambda pair: pair[1].amount / _needed(pair[0], pair[1], True))
    asked = shown(_needed(each, stock, True), 0)
    message = f"{shown(stock.amount, 0)} {stock.unit} make no blanket of this recipe, whatever its size."
    hint = f"At {shown(plan.width_cm)} by {shown(plan.length_cm)} cm it would take about {asked} {stock.unit}."
    return Finding("not-enough-yarn", "error", message, hint, pointer="/have")


def largest_json(found: Found) -> Answer:
    """Return the sizes as JSON values: `size` can be sent on as the size of a plan request."""
    bare = found.without_margin
    return {
        "size": _size(found.plan),
        "cast_on": found.plan.counts.cast_on,
        "rows": sum(section.rows for section in found.plan.sections),
        "limited": found.limited,
        "without_margin": None if bare is None else _size(bare) | {"cast_on": bare.counts.cast_on},
    }


def _size(plan: Plan) -> Answer:
    return {"width_cm": tenths(plan.width_cm), "length_cm": tenths(plan.length_cm)}


def keep_of(word: object) -> Keep:
    """Return what is kept, the shape where nothing is said."""
    return cast("Keep", word or "shape")
