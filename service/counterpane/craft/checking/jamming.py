"""The findings for rows in which a knitter is stuck: their shape, which is the same whatever the reason."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from counterpane.craft.checking.corrections import pointing, said
from counterpane.craft.checking.examine import Examined
from counterpane.craft.checking.wording import at, in_several_sections, jam_name, on_needle, place_of
from counterpane.craft.counts import Misfit, Slug
from counterpane.craft.findings import Finding

Say = Callable[[str, Misfit], tuple[str, str]]
"""From the name of a row and why it cannot be worked: the message and the hint."""


def jammed(examined: Examined, slug: Slug, say: Say) -> Iterator[Finding]:
    """Yield a finding for each row in which a knitter is stuck for this reason, with the corrections of its line."""
    stuck = [jam for jam in examined.jams if jam.misfit.slug == slug]
    several = in_several_sections(examined.rows) if stuck else frozenset[str]()
    for jam in stuck:
        message, hint = say(jam_name(jam, several), jam.misfit)
        place, line = place_of(jam.row, jam.misfit), jam.row.place.line
        hint, fixes = pointing(examined, line, hint), said(examined, line, "row")
        yield at(place, slug, "error", message + on_needle(jam), hint, corrections=fixes)
