"""What is said of faults that a count does not find, and how each is put right. Common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping

from counterpane.craft.helping.under import in_groups
from counterpane.craft.helping.unseen import Fault, FaultKind
from counterpane.craft.stitches import Terms, Vocabulary

SAID: Mapping[FaultKind, str] = {
    "shifted": "the repeat was begun one stitch late or early",
    "faces-swapped": "the row was worked as one of the other side: purl for knit, and knit for purl",
    "worked-twice": "the row was worked twice, and the rows after it come on the other side",
    "left-out-whole": "the row was left out, and the rows after it come on the other side",
    "crossed-the-other-way": "{stitch} was worked as {instead}: the cable crosses the other way",
    "hole-and-decrease-swapped": "the hole and the decrease beside it were worked in the other order",
}

CORRECT: Mapping[FaultKind, str] = {
    "shifted": (
        "One or two repeats: let each wrong stitch down to this row and hook it up with its other face. The whole row: "
        "take it back stitch by stitch."
    ),
    "faces-swapped": (
        "Take the row back stitch by stitch. Further down, a few stitches can be let down one at a time and hooked up "
        "with their other face."
    ),
    "worked-twice": (
        "Take the second working back, stitch by stitch while it is on the needle. Tick each row off as you end it."
    ),
    "left-out-whole": "Take the rows after it back and work it. Tick each row off as you end it.",
    "crossed-the-other-way": (
        "Work to the cable, let down its stitches alone to the row of the crossing, cross them the right way on a "
        "cable needle, and hook each up again."
    ),
    "hole-and-decrease-swapped": (
        "While the row is on the needle take it back to the pair. Further down go back to a lifeline: lace that is let "
        "down seldom comes up as it was."
    ),
}

SHOWN_ON = 6
"""Stitches that are shown from the first wrong one on; house."""


def said(fault: Fault, vocabulary: Vocabulary, terms: Terms) -> str:
    """Say in a few words what happened."""
    names = {
        place: "" if key is None else vocabulary[key].names[terms][0]
        for place, key in (("stitch", fault.stitch), ("instead", fault.instead))
    }
    return SAID[fault.kind].format(**names)


def looks(fault: Fault, number: int) -> str:
    """Say when it shows and what it then looks like, by the rows worked loop by loop."""
    when = "It shows at once" if fault.shows_after == number else f"It first shows after row {fault.shows_after:,}"
    if fault.turned_to and fault.turned_to != fault.meant:
        ridge = " A ridge is missing there." if fault.meant == "garter" else ""
        return f"{when}: two courses of {fault.turned_to} where {fault.meant or 'the pattern'} was meant.{ridge}"
    if fault.right == fault.wrong:
        return f"{when}: the strands on top lean the other way."
    right, wrong = _apart(fault.right, fault.wrong)
    return f"{when}: right below the needle, past the border, stands {wrong} where {right} was meant."


def _apart(right: str, wrong: str) -> tuple[str, str]:
    """Return both courses in groups, as far as they are needed to tell them apart and a little on."""
    first = next(
        (at for at, pair in enumerate(zip(right, wrong, strict=False)) if pair[0] != pair[1]),
        min(len(right), len(wrong)),
    )
    end = first + SHOWN_ON
    return in_groups(right[:end]), in_groups(wrong[:end])
