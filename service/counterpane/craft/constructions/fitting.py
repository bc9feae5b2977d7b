"""The counts over which all parts can be worked, and the versions of the parts that each of them takes."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from counterpane.craft.constructions.gauging import body_gauge
from counterpane.craft.constructions.obstacles import Demand, NoCommonCount, Stuck
from counterpane.craft.constructions.settling import Block, Settled
from counterpane.craft.counts import Progression
from counterpane.craft.sizing.classes import merged, nearest, nearest_of, rank

MOST_CLASSES = 4096
"""Separate classes of counts kept side by side; house figure that bounds time."""


@dataclass(frozen=True, slots=True)
class Option:
    """Counts of the whole cast-on, and the version of each block that is worked at them."""

    counts: Progression
    versions: tuple[int, ...]


def options(settled: Settled) -> tuple[Option, ...]:
    """Return the cast-on counts at which every part works, in classes with their versions; empty if there are none."""
    for spare in (0, 1):
        found = _folded(settled, spare)
        if found or not all(band.stitches for band in settled.bands):
            return found
    return ()


def _folded(settled: Settled, spare: int) -> tuple[Option, ...]:
    least = settled.request.cast_on.component.operation
    kept: dict[Progression, tuple[int, ...]] = {Progression(1, 0, max(1, least.least if least else 1)): ()}
    for block in settled.blocks:
        step: dict[Progression, tuple[int, ...]] = {}
        asked = _wanted(block, settled, spare)
        for counts, versions in kept.items():
            for wanted, version in asked:
                if both := merged(counts, wanted):
                    step.setdefault(both, (*versions, version))
        kept = _pruned(step, settled)
    return tuple(Option(counts, versions) for counts, versions in kept.items())


def _pruned(classes: dict[Progression, tuple[int, ...]], settled: Settled) -> dict[Progression, tuple[int, ...]]:
    """Return the classes, or where they are very many those that come nearest the target."""
    if len(classes) <= MOST_CLASSES:
        return classes
    wanted = settled.target
    near = sorted(classes, key=lambda counts: rank(nearest(counts, wanted)[0], wanted))
    return {counts: classes[counts] for counts in near[:MOST_CLASSES]}


def _wanted(block: Block, settled: Settled, spare: int) -> tuple[tuple[Progression, int], ...]:
    """Return the cast-on counts that suit a block, with its version; `spare` is one stitch more on the left side."""
    if block.stitches is None:
        return settled.asked[block.pointer]
    version = next(number for number, texture in enumerate(block.textures) if texture.admits(block.stitches))
    return ((_around(block.stitches, settled, spare), version),)


def _around(stitches: int, settled: Settled, spare: int) -> Progression:
    """Return the cast-on counts for a band of so many stitches, whose side borders take up the rest."""
    if not all(band.stitches for band in settled.bands):
        least = stitches + settled.edge + (2 if settled.edging else 0)
        return Progression(1, 0, least) if settled.edging else Progression.only(least)
    widest = max(band.stitches or 0 for band in settled.bands)
    return Progression.only(widest + settled.edge + 2 * settled.sides + spare)


def demands(settled: Settled) -> tuple[Demand, ...]:
    """Return what each block asks of the cast-on count, in order from the cast-on up."""
    return tuple(
        Demand(block.pointer, block.name, tuple(counts for counts, _ in _wanted(block, settled, 0)))
        for block in settled.blocks
    )


def width_cm(settled: Settled, cast_on: int) -> Fraction:
    """Return the width across the body at a cast-on count, part by part."""
    body = cast_on - settled.edge - 2 * settled.sides
    return settled.edge_cm + body_gauge(settled.request).gauge.width(body)


def nearest_counts(settled: Settled, found: tuple[Option, ...], how_many: int) -> tuple[int, ...]:
    """Return the admissible cast-on counts nearest the target, nearest first, the larger of a tie first."""
    return nearest_of((option.counts for option in found), settled.target, how_many)


def best(settled: Settled, found: tuple[Option, ...]) -> tuple[int, Option]:
    """Return the count nearest the target with its versions; Stuck where the parts share no count."""
    if not found:
        raise Stuck(NoCommonCount(demands(settled), settled.target))
    count = nearest_counts(settled, found, 1)[0]
    return count, next(option for option in found if option.counts.admits(count))


def smallest(found: tuple[Option, ...], versions: tuple[int, ...]) -> int:
    """Return the least cast-on of the options that take these versions."""
    return min(option.counts.least for option in found if option.versions == versions)
