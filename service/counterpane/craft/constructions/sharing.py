"""Changes that would let parts share a count: of side borders, of one band's stitches, of who owns the corner."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import product

from counterpane.craft.constructions.fitting import demands, options
from counterpane.craft.constructions.gauging import parts_of
from counterpane.craft.constructions.obstacles import Demand
from counterpane.craft.constructions.settling import Settled
from counterpane.craft.counts import Progression
from counterpane.craft.findings import Correction
from counterpane.craft.sizing.bands import balanced
from counterpane.craft.sizing.classes import common, merged, nearest_of, shifted

MOST_STITCHES = 24
"""Stitches by which a side border may be widened or narrowed in a correction; house figure."""

MOST_MIXTURES = 1024
"""Mixtures of versions looked at for each change; house figure that bounds time."""

MOST_COUNTS = 12
"""Counts of one band looked at; house figure."""

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
    yield from _of_borders(settled)


def _of_borders(settled: Settled) -> Iterator[Correction]:
    """Give other borders of the request for either end."""
    request = settled.request
    for name, end in (("top", request.top), ("bottom", request.bottom)):
        for part in parts_of(request) if end else ():
            component = part.component
            if component.slug and component.kind == "border" and end and component != end.component:
                yield Correction(f"/parts/{name}", component.slug, "it shares counts with the other parts")


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
    starts = [start for texture in band.textures for start in texture.starts]
    tried = _beside_bands(settled, index, starts) if len(settled.bands) > 1 else _alone(settled, starts)
    for count, stitches in tried:
        spare = count - settled.edge - stitches
        if spare >= 2 and spare != 2 * settled.sides:
            right, left = spare // 2, spare - spare // 2
            sides = f"{right} stitches" if right == left else f"{right} stitches on the right and {left} on the left"
            why = f"at {count} stitches this band then has side borders of {sides}"
            yield Correction(f"{band.pointer}/stitches", stitches, why)


def _beside_bands(settled: Settled, index: int, starts: Sequence[Progression]) -> Iterator[tuple[int, int]]:
    """Give the cast-on that suits the other bands, with counts of one band near what that leaves it."""
    found = options(replace(settled, bands=settled.bands[:index] + settled.bands[index + 1 :]))
    for count in nearest_of((option.counts for option in found), settled.target):
        inner = count - settled.edge - 2 * settled.sides
        near = nearest_of(starts, Fraction(inner), MOST_COUNTS)
        for stitches in sorted(near, key=lambda found: ((found - inner) % 2, abs(found - inner), -found)):
            yield count, stitches


def _alone(settled: Settled, starts: Sequence[Progression]) -> Iterator[tuple[int, int]]:
    """Give cast-ons near the target at which a body with one stitch more on its left side suits the borders."""
    others = [demand for demand in demands(settled) if demand.pointer != settled.bands[0].pointer]
    beside = settled.edge + 2 * settled.sides + 1
    for stitches in nearest_of(starts, settled.target - beside, MOST_COUNTS):
        count = stitches + beside
        if all(any(counts.admits(count) for counts in demand.classes) for demand in others):
            yield count, stitches


def joint_changes(settled: Settled) -> tuple[Correction, ...]:
    """Return changes of several bands that only together bring all of them to one count near the target."""
    if settled.edging is None or len(settled.bands) < 2 or len(settled.bands) > MOST_BANDS:
        return ()
    asked = [demand for demand in demands(settled) if any(band.pointer == demand.pointer for band in settled.bands)]
    found = balanced([demand.classes[0] for demand in asked], settled.target)
    inner = found.count - settled.edge - 2 * settled.sides
    return tuple(
        Correction(
            f"{demand.pointer}/stitches", inner - change, f"together with the other changes, at {found.count} stitches"
        )
        for demand, change in zip(asked, found.changes, strict=True)
        if change
    )


def stuck_pair(asked: tuple[Demand, ...]) -> tuple[Demand, Demand] | None:
    """Return the first two parts that share no count by themselves; None where only more of them together do not."""
    for place, demand in enumerate(asked):
        for other in asked[:place]:
            if not any(merged(one, two) for one in other.classes for two in demand.classes):
                return other, demand
    return None
