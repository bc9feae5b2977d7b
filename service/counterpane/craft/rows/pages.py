"""A text as a page: its lines, the passages beside its rows, and what it explains. No row is understood here."""

from __future__ import annotations

import re
from dataclasses import dataclass

from counterpane.craft.rows.glossary import Glossary, glossary_of
from counterpane.craft.rows.passages import Passage, Stretch, Topic, passages_in
from counterpane.craft.rows.words import LINE_END, Line, Lines, normal_lines


@dataclass(frozen=True, slots=True)
class Page:
    """The lines of a text in normal form and as given, its passages in the order printed, and its glossary."""

    lines: tuple[Line, ...] = ()
    given: tuple[str, ...] = ()
    passages: tuple[Passage, ...] = ()
    glossary: Glossary = Glossary()

    def under(self, topic: Topic) -> tuple[Stretch, ...]:
        """Return all lines under the headings of a topic."""
        return tuple(stretch for passage in self.passages if passage.topic == topic for stretch in passage.stretches)

    @property
    def furnished(self) -> bool:
        """Whether the text is a pattern with front matter, and no fragment: it has two topics of gauge, materials, size
        and abbreviations. House measure: what is asked of a pattern is not asked of a few rows.
        """
        topics = {passage.topic for passage in self.passages}
        return len(topics - {"notes", "finishing"}) > 1


def page_of(text: str, known: Lines | None = None) -> Page:
    """Return the page of a text; `known` are lines of texts that are nearly alike."""
    lines = tuple(normal_lines(text, known))
    given = tuple(re.split(LINE_END, text.removeprefix("\ufeff")))
    passages = passages_in(lines, given)
    return Page(lines, given, passages, glossary_of(lines, given, passages))
