"""Where the revision of a part stands in the library that keeps it, as the rules see it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PlacedPart:
    """A kept part of a plan request: its pointer and slug, where its revision stands, and the sentence about that.

    `replacement` is the slug of what to use instead, `until` the day up to which a quarantine was meant to last, and
    `over` says that this day has passed.
    """

    pointer: str
    slug: str
    status: str
    said: str
    replacement: str | None = None
    until: str | None = None
    over: bool = False
