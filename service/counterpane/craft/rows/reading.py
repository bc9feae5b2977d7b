"""One reading of one row: where it stands, what is open, what has been noted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.lexicon import Lexicon
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.nest import Nest
from counterpane.craft.rows.repeats import letters_named
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Token
from counterpane.craft.stitches import Terms

# Words that only handbooks of 1840 to 1920 use: beside them "make 1" is a yarn-over.
HANDBOOK_WORDS = frozenset(
    "seam seamed pearl pearled narrow cotton silk thread worsted wool pin pins alternately".split()
)


@dataclass(slots=True)
class Reading:
    """The words of a row and what has been made of them.

    `inner` says that only the altered last repeat of a row is read, `marks` which letters in brackets are named as
    repeats, `old` that the row is in the words of handbooks, `spelt` that it spells "knit 2 together" as they do,
    `and_at` where the last "and" stands.
    """

    cursor: Cursor
    lexicon: Lexicon
    terms: Terms | None
    nest: Nest
    inner: bool = False
    marks: frozenset[str] = frozenset()
    old: bool = False
    spelt: bool = False
    and_at: int = 0
    stated: int | None = None
    stated_place: Place | None = None

    @classmethod
    def of(cls, run: Sequence[Token], lexicon: Lexicon, terms: Terms | None, inner: bool = False) -> Reading:
        """Begin to read."""
        nest = Nest(run[0].place if run else Place(1, 1))
        return cls(Cursor(run), lexicon, terms, nest, inner, letters_named(run), _is_old(run), _is_spelt(run))

    @property
    def faults(self) -> list[Fault]:
        """What could not be read, or in two ways."""
        return self.nest.faults


def _is_old(run: Sequence[Token]) -> bool:
    return any(token.norm in HANDBOOK_WORDS for token in run)


def _is_spelt(run: Sequence[Token]) -> bool:
    return any(token.norm == "together" and at > 0 and run[at - 1].value is not None for at, token in enumerate(run))
