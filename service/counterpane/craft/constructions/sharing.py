"""Changes that would let parts share a count: of side borders, of one band's stitches, of who owns the corner."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import product

from counterpane.craft.constructions.fitting import demands, options, target
from counterpane.craft.constructions.obstacles import Demand
from counterpane.craft.constructions.settling import Settled
from counterpane.craft.counts import Progression
from counterpane.craft.findings import Correction
from counterpane.craft.sizing.classes import ANY, common, merged, nearest, nearest_of, shifted

MOST_STITCHES = 24
"""Stitches by which a side border may be widened or narrowed in a correction; house figure."""

MOST_MIXTURES = 1024
"""Mixtures of versions looked at for each change; house figure that bounds time."""

MOST_BANDS = 12
"""Bands for which a change is looked for; house figure that bounds time."""


def changes_to_share(settled: Settled) -> Iterator[Correction]:
    """Give changes that bring all parts to common counts, the smallest first."""
    yield from _of_sides(settled)
    yield from _of_bands(settled)
    if settled.edging:
        other = "sides" if settled.request.corner == "ends" else "ends"
        why = (
            "the end borders are then worked over the body's stitches"
            if other == "sides"
            else "they then run full width"
        )
        yield Correction("/corner", other, why)


def _of_sides(settled: Settled) -> Iterator[Correction]:
    if settled.edging is None:
        return
    asked = demands(settled)
    for change in sorted(range(-MOST_STITCHES, MOST_STITCHES + 1), key=lambda change: (abs(change), -change)):
        width = settled.sides + change
        if change and width > 0 and _shared(settled, asked, 2 * change):
            many = f"{abs(change)} {'more' if change > 0 else 'fewer'} on each side"
            yield Correction("/parts/sides/stitches", width, f"{many} lets all parts share a count")


def _shared(settled: Settled, asked: tuple[Demand, ...], by: int) -> bool:
    """Say whether the parts share counts when those beside the side borders move by so many stitches."""
    moved = [
        tuple(shifted(counts, by) for counts in demand.classes) if _beside_sides(settled, demand) else demand.classes
        for demand in asked
    ]
    mixtures = list(product(*moved))[:MOST_MIXTURES] if _few(moved) else []
    return any(common(mixture) is not None for mixture in mixtures)


def _few(classes: list[tuple[Progression, ...]]) -> bool:
    many = 1
    for each in classes:
        many *= len(each)
        if many > MOST_MIXTURES:
            return False
    return True


def _beside_sides(settled: Settled, demand: Demand) -> bool:
    return settled.request.corner == "sides" or any(band.pointer == demand.pointer for band in settled.bands)


def _of_bands(settled: Settled) -> Iterator[Correction]:
    for index in range(min(len(settled.bands), MOST_BANDS)):
        yield from band_changes(settled, index)


def band_changes(settled: Settled, index: int) -> Iterator[Correction]:
    """Give the stitches over which one band could be worked at the other parts' best count, its borders giving way.

    Changes that halve over both sides come first.
    """
    band = settled.bands[index]
    if settled.edging is None or band.stitches is not None:
        return
    count, inner = _count_of_others(settled, index)
    if count is None:
        return
    starts = [start for texture in band.textures for start in texture.starts]
    near = nearest_of(starts, Fraction(inner), 4)
    for stitches in sorted(near, key=lambda found: ((found - inner) % 2, abs(found - inner), -found)):
        spare = count - settled.edge - stitches
        alone = len(settled.bands) == 1 and spare - 2 * settled.sides not in (0, 1)
        if stitches != inner and spare >= 2 and not alone:
            right, left = spare // 2, spare - spare // 2
            sides = f"{right} stitches" if right == left else f"{right} stitches on the right and {left} on the left"
            why = f"at {count} stitches this band then has side borders of {sides}"
            yield Correction(f"{band.pointer}/stitches", stitches, why)


def _count_of_others(settled: Settled, index: int) -> tuple[int | None, int]:
    """Return the cast-on nearest the target that suits all parts but one band, and the stitches that would leave it."""
    others = tuple(band for place, band in enumerate(settled.bands) if place != index)
    if others:
        found = options(replace(settled, bands=others))
        near = nearest_of((option.counts for option in found), target(settled)) if found else ()
    else:
        asked = [demand for demand in demands(settled) if demand.pointer != settled.bands[index].pointer]
        shared = ANY
        for demand in asked:
            both = next((both for counts in demand.classes if (both := merged(shared, counts))), None)
            if both is None:
                return None, 0
            shared = both
        near = nearest(shared, target(settled))
    if not near:
        return None, 0
    return near[0], near[0] - settled.edge - 2 * settled.sides


def stuck_pair(asked: tuple[Demand, ...]) -> tuple[Demand, Demand] | None:
    """Return the first two parts that share no count by themselves; None where only more of them together do not."""
    for place, demand in enumerate(asked):
        for other in asked[:place]:
            if not any(merged(one, two) for one in other.classes for two in demand.classes):
                return other, demand
    return None
