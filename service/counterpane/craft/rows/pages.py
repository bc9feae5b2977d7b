"""A text as a page: its lines, the passages beside its rows, and what it explains. No row is understood here."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.craft.rows.glossary import Glossary, glossary_of
from counterpane.craft.rows.passages import Passage, Stretch, Topic, passages_in
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Line, Lines, given_lines, in_normal_form

LEAST_READ, LETTERS_OF_LINE = 3_000, 20
"""So many lines of a text are read, and one for so many letters: house figures that bound time. A pattern has fewer."""


@dataclass(frozen=True, slots=True)
class Page:
    """The lines of a text in normal form and as given, its passages in the order printed, and its glossary.

    `unread` is the place of the first line that is one too many, None where all are read.
    """

    lines: tuple[Line, ...] = ()
    given: tuple[str, ...] = ()
    passages: tuple[Passage, ...] = ()
    glossary: Glossary = Glossary()
    unread: Place | None = None

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
    everything = given_lines(text)
    most = max(LEAST_READ, len(text) // LETTERS_OF_LINE)
    given = tuple(everything[:most])
    lines = tuple(in_normal_form(given, {} if known is None else known))
    passages = passages_in(lines, given)
    unread = Place(most + 1, 1) if len(everything) > most else None
    return Page(lines, given, passages, glossary_of(lines, given, passages), unread)
