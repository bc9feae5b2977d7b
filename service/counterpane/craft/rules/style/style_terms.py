"""A text in the other terms than the style's."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.printed import Printed
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.terms import telling_word
from counterpane.craft.rows.tree import Place


@rule(
    "style-terms",
    family="style",
    severity="note",
    bad="Tension: 22 sts to 10 cm in garter stitch.\nCast on 4 sts.\nRow 1: Knit.\nCast off.",
    good="Gauge: 22 sts to 10 cm in garter stitch.\nCast on 4 sts.\nRow 1: Knit.\nBind off.",
    source="house",
)
def style_terms(text: Printed) -> Iterator[Finding]:
    """A text is in US terms where the house style has UK ones, or the other way round.

    Most words are the same in both, and a few mean different things. A house prints in one of them and says which.
    """
    wanted, has = text.style.terms, text.examined.instructions.terms
    if wanted is None or wanted == has:
        return
    for number, line in enumerate(text.lines, 1):
        word = telling_word(line, has)
        if word is not None:
            told, style = quoted(word[0]), quoted(text.style.name)
            message = (
                f"The text is in {has.upper()} terms, as {told} tells; the style {style} has {wanted.upper()} ones."
            )
            hint = f"Put the pattern into {wanted.upper()} terms, or say at its head that it is in {has.upper()} ones."
            yield at(Place(number, word[1] + 1), "style-terms", "note", message, hint)
            return
