"""How much yarn the parts of a plan take, by colour; the loops in closed form, then one scale for each yarn."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.gauging import body_gauge
from counterpane.craft.openings import loop_mm
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.balls import Balls, balls_of, by_the_ball, ends_of, joins
from counterpane.craft.yarn.choosing import scale_of, yarn_of
from counterpane.craft.yarn.edges import bind_off_loops, cast_on_loops
from counterpane.craft.yarn.figures import Figure, total
from counterpane.craft.yarn.scales import Scale
from counterpane.craft.yarn.sections import section_loops
from counterpane.craft.yarn.values import Yarn

ENDS = "ends"
"""The part that stands for ends to weave in."""

END_M = Fraction("0.15"), Fraction("0.175"), Fraction("0.20")
"""Metres of an end to weave in: The Knitting Guild Association, article on tail lengths, 2023 to 2024."""

_AS_KNOWN: Mapping[int, Scale] = {}


@dataclass(frozen=True, slots=True)
class PartYarn:
    """What one part takes of one yarn, ends apart; `loops` as of plain knit stitches."""

    part: str
    loops: Figure
    metres: Figure | None
    grams: Figure | None


@dataclass(frozen=True, slots=True)
class ColourYarn:
    """What a blanket takes of one yarn: by part, the ends, and all together with the balls to buy.

    `joins` is how often a ball is joined to the one before, None where the balls are not known. `unknown` are the
    stitches whose yarn is not known and was taken within wide bounds.
    """

    yarn: Yarn
    scale: Scale
    parts: tuple[PartYarn, ...]
    loops: Figure
    metres: Figure | None
    grams: Figure | None
    balls: Balls | None
    joins: int | None
    ends: int
    unknown: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class YarnEstimate:
    """The yarn of a plan, one entry for each yarn that is used; `edges_not_known` are edges without a figure."""

    colours: tuple[ColourYarn, ...]
    edges_not_known: tuple[str, ...]

    @property
    def metres(self) -> Figure | None:
        """The metres of all yarns together; None where those of one are not known."""
        return _sum([each.metres for each in self.colours])

    @property
    def grams(self) -> Figure | None:
        """The grams of all yarns together; None where those of one are not known."""
        return _sum([each.grams for each in self.colours])


def estimate(
    plan: Plan, yarns: Sequence[Yarn], vocabulary: Vocabulary, scales: Mapping[int, Scale] = _AS_KNOWN
) -> YarnEstimate:
    """Estimate the yarn of a plan; `yarns` holds at least one, and the first works what no other claims.

    `scales` are those of yarns, by their place, that are better known than the yarns tell.

    TextureNotWorked where a swatch was weighed in a texture that is no part of the plan.
    """
    used: dict[int, list[tuple[str, Figure]]] = {}
    unknown: dict[int, dict[str, None]] = {}
    for place, part, loops, keys in _parts(plan, yarns, vocabulary):
        used.setdefault(place, []).append((part, loops))
        unknown.setdefault(place, {}).update(dict.fromkeys(keys))
    known = {place: scales.get(place) or scale_of(plan, yarns[place], vocabulary) for place in sorted(used)}
    colours = [_colour(plan, yarns[place], used[place], tuple(unknown[place]), known[place]) for place in known]
    edges = (plan.request.cast_on.component, plan.request.bind_off.component)
    return YarnEstimate(tuple(colours), tuple(each.name for each in edges if not _is_known(each)))


def _is_known(edge: Component) -> bool:
    return edge.operation is not None and edge.operation.loops_per_stitch is not None


def _parts(
    plan: Plan, yarns: Sequence[Yarn], vocabulary: Vocabulary
) -> Iterator[tuple[int, str, Figure, tuple[str, ...]]]:
    """Give what each part takes of each yarn: the place of the yarn, the part, its loops, the stitches not known."""
    cast_on, bind_off = plan.request.cast_on.component, plan.request.bind_off.component
    yield yarn_of(yarns, "cast_on"), "cast-on", cast_on_loops(cast_on, plan.counts.cast_on), ()
    for section in plan.sections:
        for place, (loops, keys) in section_loops(section, yarns, vocabulary).items():
            yield place, section.name, loops, keys
    yield yarn_of(yarns, "bind_off"), "bind-off", bind_off_loops(bind_off, plan.sections[-1].after), ()


def _colour(
    plan: Plan, yarn: Yarn, used: list[tuple[str, Figure]], unknown: tuple[str, ...], scale: Scale
) -> ColourYarn:
    joined = _joins(plan, yarn, scale, total(loops for _, loops in used))
    ends = ends_of(joined or 0)
    everything = [*used, (ENDS, end_loops(plan, scale).times(ends))]
    parts = tuple(PartYarn(part, loops, scale.metres_of(loops), scale.grams_of(loops)) for part, loops in everything)
    loops = total(each for _, each in everything)
    metres, grams = scale.metres_of(loops), scale.grams_of(loops)
    balls = balls_of(yarn, metres, grams)
    return ColourYarn(yarn, scale, parts, loops, metres, grams, balls, joined, ends, unknown)


def _joins(plan: Plan, yarn: Yarn, scale: Scale, worked: Figure) -> int | None:
    end = end_loops(plan, scale)
    ends = by_the_ball(yarn, scale.metres_of(end), scale.grams_of(end))
    rest = by_the_ball(yarn, scale.metres_of(worked), scale.grams_of(worked))
    return None if ends is None or rest is None else joins(rest[0].likely, ends[0].likely, rest[1])


def end_loops(plan: Plan, scale: Scale) -> Figure:
    """Return one end in loops, by the loop length of the scale, else by that of the body's gauge."""
    by_gauge = loop_mm(body_gauge(plan.request).gauge.per_cm * 10)
    loop = by_gauge if scale.loop_mm is None else scale.loop_mm.likely
    return Figure(*(1000 * end / loop for end in END_M))


def _sum(figures: Sequence[Figure | None]) -> Figure | None:
    known = [figure for figure in figures if figure is not None]
    return total(known) if len(known) == len(figures) else None
