"""A row that begins with the other kind of letter."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.clauses import Clause


@rule(
    "style-first-letter",
    family="style",
    severity="note",
    bad="Cast on 4 sts.\nRow 1: k2, p2.\nRow 2: Knit.",
    good="Cast on 4 sts.\nRow 1: K2, p2.\nRow 2: Knit.",
    source="house",
)
def style_first_letter(text: Printed) -> Iterator[Finding]:
    """A row begins with a small letter where the house style has a capital, or the other way round.

    It changes nothing for the knitter and much for the page: one way throughout looks as if somebody had taken care.
    """
    if text.style.first_letter is None:
        return
    found = (each for clause in text.rows if (each := _departure(text, clause)) is not None)
    yield from noted(text, "style-first-letter", "A row begins", found)


def _departure(text: Printed, clause: Clause) -> Departure | None:
    """Return the first word of a row where its first letter differs."""
    token = next((token for token in clause.body if token.kind == "word"), None)
    if token is None:
        return None
    word = text.between(token, token)
    letter = word[:1].upper() if text.style.first_letter == "K2" else word[:1].lower()
    return None if word.startswith(letter) else Departure(token.place, word, letter + word[1:])
