"""A pattern without abbreviations: its rows are written in full words, and here the sentences between them are."""

from __future__ import annotations

from typing import TypeVar

from counterpane.craft.pattern.texts import texts_said
from counterpane.craft.rows.say import prose_in_full

Written = TypeVar("Written")
_AS_THEY_STAND = ("title", "designer", "cautions", "credits", "sharing", "abbreviations", "specials", "rows")
"""Fields that are names or quoted, or are in full words already."""


def in_full(written: Written) -> Written:
    """Return a pattern, whose rows are in full words, or lines of it, with all sentences in full words."""
    return texts_said(written, prose_in_full, _AS_THEY_STAND)
