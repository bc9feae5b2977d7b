"""What each slip looks like, and how it is put right. Common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from counterpane.craft.helping import Kind, Suspect, WorkedRow
from counterpane.craft.pattern.figures import counted
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.stitches import Terms, Vocabulary


@dataclass(frozen=True, slots=True)
class Remedy:
    """What happened, with the name of the stitch left open; what it looks like; and how it is put right in place."""

    said: str
    looks: str
    correct: str


REMEDIES: Mapping[Kind, Remedy] = {
    "left-out": Remedy(
        "{stitch} was left out {times}",
        "Where it should be there is no hole and no loop, and the strand between the two stitches is short.",
        "With the left needle lift the strand that runs between the two stitches, from front to back, and work it in "
        "this row as the pattern has it. The hole comes out a little smaller, and washing evens it.",
    ),
    "increase-worked-plain": Remedy(
        "{stitch} was worked plain {times}",
        "The stitch stands alone where there should be two.",
        "Lift the strand beside the stitch and work it twisted, so that no hole is left.",
    ),
    "decrease-missed": Remedy(
        "{stitch} was not worked together {times}",
        "Two stitches stand side by side where one should lean over the other.",
        "In the next row work the two together where they stand; or let both down to that row and hook them up as one.",
    ),
    "pass-over-missed": Remedy(
        "a slipped stitch was not passed over {times}",
        "A long stitch, carried up without being knitted, stands beside the one that it should lie over.",
        "Slip both to the right needle, pass the long stitch over the other, and slip that back.",
    ),
    "cast-on-miscounted": Remedy(
        "the cast-on was counted wrong",
        "Every row since comes out as written, and the cast-on edge has as many stitches too many or too few.",
        "Knit on if the size pleases: the rows work over this count as well. Otherwise begin again.",
    ),
    "loop-made": Remedy(
        "the yarn went over the needle by mistake {times}, as it does on the way from a knit to a purl",
        "A loose loop lies over the needle with no stitch below it, or a hole stands where none belongs.",
        "Let the loop fall off the needle and ease its yarn into the stitches beside it.",
    ),
    "edge-stitch-doubled": Remedy(
        "an edge stitch was worked as two {times}",
        "The first stitch of a row was pulled up and over the needle, so that its two legs looked like two stitches.",
        "Work the two as one in this row. At the start of each row bring the yarn under the needle first.",
    ),
    "stitch-split": Remedy(
        "a strand was split and worked as two {times}",
        "Two thin stitches come out of one, each of a part of the strand.",
        "Let the two down to the split and hook the whole strand up again.",
    ),
    "stitch-dropped": Remedy(
        "a stitch was dropped {times}",
        "A loop stands free below the needle, or a ladder of loose strands runs up from it.",
        "Catch the loop with a pin at once. Turn so that it shows a knit stitch, and hook each rung through it from "
        "below, up to the needle. Never leave it: a ladder is an opening for a baby's finger.",
    ),
    "two-together": Remedy(
        "two stitches were worked together by mistake {times}",
        "Two stitches come out of one, and nothing in the pattern asks for it there.",
        "Let the stitch down to that row, take both loops, and hook each up by itself.",
    ),
}


def said(suspect: Suspect, vocabulary: Vocabulary, terms: Terms) -> str:
    """Say in a few words what happened."""
    times = "once" if suspect.times == 1 else "twice" if suspect.times == 2 else f"{suspect.times} times"
    key = suspect.slip.stitch
    stitch = "" if key is None else vocabulary[key].names[terms][0]
    return in_terms(REMEDIES[suspect.slip.kind].said.format(stitch=stitch, times=times).strip(), terms)


def looks(suspect: Suspect, terms: Terms) -> str:
    """Say what it looks like."""
    return in_terms(REMEDIES[suspect.slip.kind].looks, terms)


def correct(suspect: Suspect, terms: Terms) -> str:
    """Say how it is put right in place."""
    return in_terms(REMEDIES[suspect.slip.kind].correct, terms)


def why(suspect: Suspect, rows: tuple[WorkedRow, ...]) -> str:
    """Say what speaks for a suspect, and what against it."""
    first, last = suspect.rows
    if last == 0:
        return "The rows work over that count too, so that nothing showed it."
    if suspect.shows_in:
        return (
            f"Row {suspect.shows_in} could then not be worked to its end as written: it would have shown there, "
            "unless it was made to fit."
        )
    since = rows[-1].number - last
    if first != last:
        return f"In any of rows {first} to {last} it goes unseen: every row since comes out as written."
    return (
        "This is the row that you have just worked."
        if not since
        else f"{counted(since, 'row')} later nothing has shown it: every row since comes out as written."
    )
