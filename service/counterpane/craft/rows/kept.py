"""What was read of a text and can be used again: of its other sizes, and of texts that differ in a correction."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from counterpane.craft.rows.own_words import own_words
from counterpane.craft.rows.pages import Page
from counterpane.craft.rows.shapes import Shapes
from counterpane.craft.rows.sharing import Shared
from counterpane.craft.rows.words import Lines


@dataclass(frozen=True, slots=True)
class Kept:
    """What was read of lines, and of rows by their shape."""

    shapes: Shapes
    shared: Shared = field(default_factory=Shared)
    lines: Lines = field(default_factory=dict)

    def explained(self, page: Page) -> Kept:
        """Return what was read, the rows without those of a text that explains its words otherwise."""
        shapes = self.shapes
        own = own_words(page.glossary, shapes.vocabulary, shapes.terms)
        return self if own == shapes.own else replace(self, shapes=Shapes(shapes.vocabulary, shapes.terms, own))
