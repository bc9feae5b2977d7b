"""The yarn of a pattern in its list of materials: which, how much of it, how many balls and ends."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from counterpane.craft.constructions import Plan
from counterpane.craft.measures import CM_PER_INCH, half_up, shown
from counterpane.craft.needles import Needle
from counterpane.craft.pattern import Entry
from counterpane.craft.pattern.figures import counted, inch, number
from counterpane.craft.pattern.parts import texture_name
from counterpane.craft.stitches import Terms
from counterpane.craft.yarn import ColourYarn, Spread, Yarn, YarnEstimate
from counterpane.craft.yarn.needles import NeedleAdvice

_NOT_STATED = "not stated; any yarn that gives the gauge, all of one dye lot"
_HOW_MUCH = "not known: weigh the swatch, and take all of one dye lot"
_YARD_M = 36 * CM_PER_INCH / 100  # 36 inches by definition.


def yarn_entries(found: YarnEstimate | None) -> Iterator[Entry]:
    """Give the yarns and their amounts; what is not known is said to be so."""
    if found is None:
        yield Entry("Yarn", _NOT_STATED)
        yield Entry("Amount of yarn", _HOW_MUCH)
        return
    for place, each in enumerate(found.colours):
        council = found.classes[place] if found.classes else ""
        colour = f" ({each.yarn.colour})" if each.yarn.colour else ""
        yield Entry(f"Yarn{colour}", _said(each.yarn, council) or _NOT_STATED)
        yield Entry(f"A ball{colour}", _holds(each.yarn))
        yield Entry(f"Amount of yarn{colour}", _amount(each))
        yield from _joins(each, colour)
    ends = sum(each.ends for each in found.colours)
    said = (f"about {ends}, each left 15 to 20 cm (6 to 8 in) long.", *found.weaving)
    yield Entry("Ends to weave in", " ".join(said))


def _joins(each: ColourYarn, colour: str) -> Iterator[Entry]:
    """Say at which rows of the blanket a ball runs out, if more than one is used."""
    rows = [f"{join.first_row} to {join.last_row}" for join in each.joins_at]
    if rows:
        where = f"a ball runs out about rows {'; '.join(rows)} of the blanket"
        yield Entry(f"Joins{colour}", f"{where}: join the next at the side, at the beginning of a row")


def needle_entries(plan: Plan, advice: NeedleAdvice | None, terms: Terms) -> Iterator[Entry]:
    """Give which needles to begin with, of which kind, and how long a cord holds the stitches."""
    held = counted(max(section.before for section in plan.every_section), "stitch", "stitches")
    long = advice.cord_cm if advice else None
    cord = "long circular needle" if long is None else f"circular needle of {number(long)} cm ({inch(long)}) or longer"
    told = _knitted_on(plan, advice.knitted_on, terms) if advice and advice.knitted_on else _sizes(advice)
    yield Entry("Needles", told)
    yield Entry("Kind of needle", f"a {cord}, worked back and forth, holds the {held}")


def _knitted_on(plan: Plan, known: Sequence[tuple[str | None, Needle]], terms: Terms) -> str:
    """Say the needles of the gauges, and of which texture each is where they differ."""
    sizes = list(dict.fromkeys(_size(needle) for _, needle in known))
    if len(sizes) > 1:
        sizes = [f"{_size(needle)} for {_low(_texture(plan, slug, terms))}" for slug, needle in known]
    return f"{' and '.join(sizes)}, on which the swatch was knitted; take the size that gives the gauge"


def _texture(plan: Plan, slug: str | None, terms: Terms) -> str:
    return texture_name(plan, slug or plan.request.body[0].component.slug, terms)


def _low(name: str) -> str:
    return f"{name[0].lower()}{name[1:]}"


def _size(needle: Needle) -> str:
    return f"{number(needle.mm)} mm ({f'US {needle.us}' if needle.us else 'no US size'})"


def _sizes(advice: NeedleAdvice | None) -> str:
    """Say the needles of the council's class of yarn."""
    if advice is None or advice.mm is None:
        return "size not known (mm and US): take the size that gives the gauge"
    mm = " to ".join(number(end) for end in advice.mm if end is not None)
    us = " to ".join(dict.fromkeys(advice.us or ()))
    names = " or ".join(each.name for each in advice.classes)
    whose = "of this class" if advice.by_yarn else "knitted so in stockinette stitch"
    return (
        f"begin with {mm} mm (US {us}), which the Craft Yarn Council has for yarns {whose} ({names}), and change the "
        "size until the swatch agrees"
    )


def _said(yarn: Yarn, council: str) -> str:
    """Say which yarn, what it is made of, and how thick it is."""
    weight = yarn.weight
    if weight and council:
        weight = f"{weight} (Craft Yarn Council {council})"
    told = [yarn.name, weight, _fibres(yarn)]
    if yarn.tex is not None:
        metres = 100_000 / yarn.tex
        told.append(f"{shown(metres, 0)} m ({_yards(metres)} yd) to 100 g, {shown(yarn.tex, 0)} tex")
    if yarn.strands > 1:
        told.append(f"{yarn.strands} strands held together")
    return ", ".join(part for part in told if part)


def _holds(yarn: Yarn) -> str:
    """Say what a ball holds: mass, and length in metres and yards."""
    if yarn.ball_g is None and yarn.ball_m is None:
        return "what a ball holds is not stated: read its band"
    grams = f"{number(yarn.ball_g)} g" if yarn.ball_g else "mass not stated"
    long = f"{number(yarn.ball_m)} m ({_yards(yarn.ball_m)} yd)" if yarn.ball_m else "length not stated"
    return f"{grams}, {long}"


def _fibres(yarn: Yarn) -> str:
    return " and ".join(f"{number(each.percent)} % {each.name}" if each.percent else each.name for each in yarn.fibre)


def _amount(each: ColourYarn) -> str:
    """Say the balls to buy and the figures they rest on."""
    figures = [figure for figure in (_metres(each.metres), _grams(each.grams)) if figure]
    amount = f"{', '.join(figures)}, by the {each.scale.basis}" if figures else "not known: weigh the swatch"
    if each.balls is None:
        return f"{amount}, and {number(each.yarn.margin * 100)} % over; all of one dye lot"
    return f"{counted(each.balls.buy, 'ball')}, all of one dye lot. The blanket takes {amount}"


def _metres(figure: Spread | None) -> str:
    if figure is None:
        return ""
    return f"{_ends(figure)} m ({_yards(figure.low)} to {_yards(figure.high)} yd)"


def _grams(figure: Spread | None) -> str:
    return "" if figure is None else f"{_ends(figure)} g"


def _ends(figure: Spread) -> str:
    low, high = (int(half_up(end)) for end in (figure.low, figure.high))
    return f"{low:,} to {high:,}" if low < high else f"{low:,}"


def _yards(metres: Fraction) -> str:
    return f"{int(half_up(metres / _YARD_M)):,}"
