"""How much yarn the parts of a plan take, by colour; the loops in closed form, then one scale for each yarn."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.gauging import body_gauge
from counterpane.craft.openings import loop_mm
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.balls import ENDS_A_JOIN, Balls, balls_of, by_the_ball, ends_of, joins
from counterpane.craft.yarn.choosing import scale_of, yarn_of
from counterpane.craft.yarn.edges import bind_off_loops, cast_on_loops
from counterpane.craft.yarn.joins import Join, joins_at
from counterpane.craft.yarn.scales import Scale
from counterpane.craft.yarn.sections import SectionLoops, section_loops
from counterpane.craft.yarn.spreads import NOTHING, Spread, total
from counterpane.craft.yarn.stripes import Bumps, bumps
from counterpane.craft.yarn.values import Yarn

SIDES = "sides"
"""The part whose yarn works borders that are picked up."""

ENDS = "ends"
"""The part that stands for ends to weave in."""

CARRIED_ROWS = 4
"""Rows over which a yarn is carried up the side and not cut; house figure, narrow stripes of common practice."""

END_M = Fraction("0.15"), Fraction("0.175"), Fraction("0.20")
"""Metres of an end to weave in, 6 to 8 in: The Knitting Guild Association, article on tail lengths, 2023 to 2024."""

_AS_KNOWN: Mapping[int, Scale] = {}


@dataclass(frozen=True, slots=True)
class PartYarn:
    """What one part takes of one yarn, ends apart; `loops` as of plain knit stitches."""

    part: str
    loops: Spread
    metres: Spread | None
    grams: Spread | None


@dataclass(frozen=True, slots=True)
class ColourYarn:
    """What a blanket takes of one yarn: by part, the ends, and all together with the balls to buy.

    `joins` is how often a ball is joined to the one before, None where the balls are not known, and `joins_at` where
    that is. `pieces` are the stretches that are worked without cutting it. `unknown` are the stitches whose yarn is not
    known and was taken within wide bounds.
    """

    yarn: Yarn
    scale: Scale
    parts: tuple[PartYarn, ...]
    loops: Spread
    metres: Spread | None
    grams: Spread | None
    balls: Balls | None
    joins: int | None
    joins_at: tuple[Join, ...]
    pieces: int
    ends: int
    unknown: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class YarnEstimate:
    """The yarn of a plan, one entry for each yarn that is used.

    `edges_not_known` are edges without a figure, `bumps` stripes that begin with purl faces, `weaving` says how the
    ends are woven in, yarn by yarn. `classes` are the classes that the weight of each yarn names, as "3 Light".
    """

    colours: tuple[ColourYarn, ...]
    edges_not_known: tuple[str, ...]
    bumps: tuple[Bumps, ...] = ()
    weaving: tuple[str, ...] = ()
    classes: tuple[str, ...] = ()

    @property
    def metres(self) -> Spread | None:
        """The metres of all yarns together; None where those of one are not known."""
        return _sum([each.metres for each in self.colours])

    @property
    def grams(self) -> Spread | None:
        """The grams of all yarns together; None where those of one are not known."""
        return _sum([each.grams for each in self.colours])


def estimate(
    plan: Plan, yarns: Sequence[Yarn], vocabulary: Vocabulary, scales: Mapping[int, Scale] = _AS_KNOWN
) -> YarnEstimate:
    """Estimate the yarn of a plan; `yarns` holds at least one, and the first works what no other claims.

    `scales` are those of yarns, by their place, that are better known than the yarns tell.
    TextureNotWorked where a swatch was weighed in a texture that is no part of the plan, StripesRunApart for stripes
    that do not come together with the texture.
    """
    work = worked_out(plan, yarns, vocabulary)
    known = {place: scales.get(place) or scale_of(plan, yarns[place], vocabulary) for place in work.places}
    colours = tuple(_colour(work, place, scale) for place, scale in known.items())
    edges = (plan.request.cast_on.component, plan.request.bind_off.component)
    not_known = tuple(each.name for each in edges if not _is_known(each))
    return YarnEstimate(colours, not_known, bumps(plan, yarns, vocabulary))


def worked_out(plan: Plan, yarns: Sequence[Yarn], vocabulary: Vocabulary) -> Work:
    """Return the loops of a plan; StripesRunApart for stripes that do not come together with the texture."""
    sections = tuple(section_loops(section, yarns, vocabulary) for section in plan.sections)
    outwards = (replace(edge.border, name=SIDES) for edge in plan.picked)
    borders = tuple(section_loops(border, yarns, vocabulary) for border in outwards)
    return Work(plan, tuple(yarns), sections, vocabulary, borders)


def _is_known(edge: Component) -> bool:
    return edge.operation is not None and edge.operation.loops_per_stitch is not None


@dataclass(frozen=True, slots=True)
class Work:
    """What a plan works in loops: its yarns, and the loops of its sections, in their order."""

    plan: Plan
    yarns: tuple[Yarn, ...]
    sections: tuple[SectionLoops, ...]
    vocabulary: Vocabulary
    borders: tuple[SectionLoops, ...] = ()

    @property
    def places(self) -> tuple[int, ...]:
        """The yarns that are used, by their place."""
        edges = {yarn_of(self.yarns, "cast_on"), yarn_of(self.yarns, "bind_off")}
        picked = {self.picker} if self.borders else set()
        return tuple(sorted(edges.union(picked, *(each.places for each in (*self.sections, *self.borders)))))

    @property
    def picker(self) -> int:
        """The yarn that picks up and binds off the borders, by its place."""
        return yarn_of(self.yarns, SIDES)

    def border(self, place: int, index: int) -> Spread | None:
        """Return the loops of a picked-up border; a stitch picked up takes one loop, common practice, no source."""
        each, edge = self.borders[index], self.plan.picked[index]
        loops = each.loops(place) if place in each.places else None
        if self.picker != place:
            return loops
        ends = Spread.exactly(edge.picks) + bind_off_loops(self.plan.request.bind_off.component, edge.border.after)
        return ends if loops is None else loops + ends

    def cast_on(self, place: int) -> Spread | None:
        """Return the loops of the cast-on, None where another yarn works it."""
        if yarn_of(self.yarns, "cast_on") != place:
            return None
        return cast_on_loops(self.plan.request.cast_on.component, self.plan.counts.cast_on)

    def bind_off(self, place: int) -> Spread | None:
        """Return the loops of the bind-off, None where another yarn works it."""
        if yarn_of(self.yarns, "bind_off") != place:
            return None
        return bind_off_loops(self.plan.request.bind_off.component, self.plan.sections[-1].after)

    def parts(self, place: int) -> tuple[tuple[str, Spread], ...]:
        """Return what each part takes of a yarn, in order of working."""
        names: tuple[str, ...] = ("cast-on", *(section.name for section in self.plan.sections), "bind-off")
        rows = (each.loops(place) if place in each.places else None for each in self.sections)
        picked = {edge.border.name: self.border(place, index) for index, edge in enumerate(self.plan.picked)}
        names += tuple(picked)
        loops = (self.cast_on(place), *rows, self.bind_off(place), *picked.values())
        return tuple((name, each) for name, each in zip(names, loops, strict=True) if each is not None)

    def pieces(self, place: int) -> int:
        """Return in how many pieces a yarn is worked: it is cut where others work before it comes again.

        Over `CARRIED_ROWS` rows at the most it is carried up the side, where it waits at the edge that it is needed at.
        """
        if len(self.yarns) == 1:
            return max(1, len(self.borders))
        rows = list(self._rows_of(place))
        gaps = (after - before - 1 for before, after in pairwise(rows))
        cut = sum(gap > CARRIED_ROWS or gap % 2 for gap in gaps if gap)
        return (
            (1 if rows else 0) + cut + sum(self.border(place, index) is not None for index in range(len(self.borders)))
        )

    def _rows_of(self, place: int) -> Iterator[int]:
        """Give the rows that a yarn works in; the cast-on stands as row 0, the bind-off behind the last."""
        if self.cast_on(place) is not None:
            yield 0
        for section, each in zip(self.plan.sections, self.sections, strict=True):
            yield from (section.first_row + row for row in range(section.rows) if each.works(place, row))
        if self.bind_off(place) is not None:
            yield self.last_row + 1

    def likely_up_to(self, place: int, row: int) -> Fraction:
        """Return the likely loops of a yarn in the rows up to the end of a row of the blanket, without the cast-on."""
        loops = Fraction(0)
        for section, each in zip(self.plan.sections, self.sections, strict=True):
            if row < section.first_row:
                break
            loops += each.likely(place, min(section.rows, row - section.first_row + 1))
        return loops

    @property
    def last_row(self) -> int:
        """The number of rows of the blanket."""
        return sum(section.rows for section in self.plan.sections)


def _colour(work: Work, place: int, scale: Scale) -> ColourYarn:
    yarn, used = work.yarns[place], work.parts(place)
    joined, placed = _joined(work, place, scale, total(loops for _, loops in used))
    pieces = work.pieces(place)
    ends = ends_of(joined or 0, pieces)
    everything = (*used, (ENDS, end_loops(work.plan, scale).times(ends)))
    parts = tuple(PartYarn(part, loops, scale.metres_of(loops), scale.grams_of(loops)) for part, loops in everything)
    loops = total(each for _, each in everything)
    metres, grams = scale.metres_of(loops), scale.grams_of(loops)
    balls = balls_of(yarn, metres, grams)
    unknown = tuple(
        dict.fromkeys(key for each in (*work.sections, *work.borders) for key in each.unknown.get(place, ()))
    )
    return ColourYarn(yarn, scale, parts, loops, metres, grams, balls, joined, placed, pieces, ends, unknown)


def _joined(work: Work, place: int, scale: Scale, worked: Spread) -> tuple[int | None, tuple[Join, ...]]:
    """Return how often a ball is joined on, None where that is not known, and where."""
    yarn, end = work.yarns[place], end_loops(work.plan, scale)

    def amount(loops: Spread) -> tuple[Spread, Fraction] | None:
        return by_the_ball(yarn, scale.metres_of(loops), scale.grams_of(loops))

    ends, rest = amount(end), amount(worked)
    joined = None if ends is None or rest is None else joins(rest[0].likely, ends[0].likely, rest[1])
    if ends is None or rest is None or not joined:
        return joined, ()

    # A row takes the same share of the whole by the low, the likely and the high figures, near enough for a place.
    a_ball = (ends[1] - ENDS_A_JOIN * ends[0].likely) * worked.likely
    balls = [a_ball / end for end in (rest[0].high, rest[0].low)]
    begun = (work.cast_on(place) or NOTHING).likely
    placed = joins_at(joined, (balls[0], balls[1]), begun, work.last_row, lambda row: work.likely_up_to(place, row))
    return joined, placed


def end_loops(plan: Plan, scale: Scale) -> Spread:
    """Return one end in loops, by the loop length of the scale, else by that of the body's gauge."""
    by_gauge = loop_mm(body_gauge(plan.request).gauge.per_cm * 10)
    loop = by_gauge if scale.loop_mm is None else scale.loop_mm.likely
    return Spread(*(1000 * end / loop for end in END_M))


def _sum(figures: Sequence[Spread | None]) -> Spread | None:
    known = [figure for figure in figures if figure is not None]
    return total(known) if len(known) == len(figures) else None
