"""The domain error of this package: a row that cannot be worked; raised inside, a `Misfit` outside."""

from __future__ import annotations

from counterpane.craft.counts.values import Slug
from counterpane.craft.rows.tree import Place


class Stuck(Exception):
    """A row stops at a place: it asks for `asked` stitches and `left` are there."""

    def __init__(self, slug: Slug, place: Place, asked: int | None = None, left: int | None = None) -> None:
        super().__init__(slug)
        self.slug = slug
        self.place = place
        self.asked = asked
        self.left = left
