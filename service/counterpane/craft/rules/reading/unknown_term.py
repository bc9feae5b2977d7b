"""A word that means nothing to the reader."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.rewordings import likely_words
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Place

MOST_GUESSES = 30  # House.
LONGEST_CLAUSE = 60  # House.
_STOPS = frozenset({"to", "until", "till"})
_CHANGES = frozenset({"but", "except", "excepting", "omitting", "reversing"})


@rule(
    "unknown-term",
    family="reading",
    severity="error",
    bad="Cast on 4 sts.\nRow 1: K1, skq, k1.",
    good="Cast on 4 sts.\nRow 1: K1, skp, k1.",
)
def unknown_term(examined: Examined) -> Iterator[Finding]:
    """A word or abbreviation is not known.

    A word that is passed over may hide a stitch, and every count behind it would be wrong without anybody noticing.
    So nothing is skipped: the row is not counted until the word is replaced.
    """
    faults = [fault for fault in examined.instructions.faults if fault.rule == "unknown-term"]
    for index, fault in enumerate(faults):
        likely = next(iter(likely_words(fault, examined.vocabulary)), None) if index < MOST_GUESSES else None
        message = f"{quoted(fault.word)} is not a word of knitting that is known here."
        hint = f"Did you mean {quoted(likely)}?" if likely else "Write the stitch with its usual abbreviation."
        if index < MOST_GUESSES and _is_explained(fault.word.lower(), examined.instructions.page.glossary.names):
            message = f"{quoted(fault.word)} is explained in the text, in words that cannot be counted here."
            hint = "Write its stitches in the row, in brackets."
        if fault.word.lower() in _STOPS and index < MOST_GUESSES:
            message = f"Where {quoted(_clause(examined, fault.place))} is, is not known here."
            hint = "Place a marker there and work to it, or say how many stitches are left to the end of the row."
        if fault.word.lower() in _CHANGES:
            message = f"What {quoted(fault.word)} changes in the row before it is not worked out here."
            hint = "Write this row out in full."
        yield at(
            fault.place, "unknown-term", "error", message, hint, corrections=said(examined, fault.place.line, "row")
        )


def _is_explained(word: str, names: frozenset[str]) -> bool:
    return word in names or any(name.startswith(f"{word} ") for name in names)


def _clause(examined: Examined, place: Place) -> str:
    """Return the words from a place up to the next sign, as given."""
    rest = examined.instructions.page.given[place.line - 1][place.column - 1 :][:LONGEST_CLAUSE]
    return re.split(r"[,;.:()\[\]*]", rest)[0].strip()
