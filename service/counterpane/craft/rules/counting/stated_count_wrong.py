"""A printed count that is not true."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, trouble
from counterpane.craft.checking.edits import recounted, said
from counterpane.craft.checking.wording import at, row_name, stitches
from counterpane.craft.counts import judge
from counterpane.craft.findings import Finding, rule


@rule(
    "stated-count-wrong",
    family="counting",
    severity="error",
    bad="Cast on 10 sts.\nRow 1: K1, yo, k to end. (12 sts)",
    good="Cast on 10 sts.\nRow 1: K1, yo, k to end. (11 sts)",
)
def stated_count_wrong(examined: Examined) -> Iterator[Finding]:
    """A printed count is not true.

    A count after a row is how a knitter checks the work; a wrong one sends them looking for a fault that is not
    there. The cast-on is such a count too: it must belong to the stated multiple.
    """
    stuck = trouble(examined) is not None
    for wrong in examined.walk.wrong_counts[:1]:
        place = wrong.again.again.stated_place if wrong.again else wrong.row.stated_place
        message = f"{row_name(wrong.row)} says {stitches(wrong.printed)} and leaves {wrong.true}."
        hint = f"Print {wrong.true}, or change the row by {stitches(abs(wrong.true - wrong.printed))}."
        fixes = () if stuck or wrong.again else (recounted(examined, wrong.row, wrong.true), *said(examined, wrong.row))
        yield at(
            place or wrong.row.start,
            "stated-count-wrong",
            "warning" if stuck else "error",
            message,
            hint,
            corrections=fixes,
        )
    yield from _cast_on(examined, stuck or bool(examined.walk.wrong_counts))


def _cast_on(examined: Examined, minor: bool) -> Iterator[Finding]:
    """Name a printed cast-on that lies outside a stated multiple which the rows bear out."""
    stated, promised = examined.instructions.cast_on, examined.instructions.multiple
    if stated is None or promised is None or promised.of < 1 or (stated.count - promised.plus) % promised.of == 0:
        return
    if examined.complete and any(judge(promised.of, promised.plus, true) == "wrong" for true in examined.chain.starts):
        return
    below = stated.count - (stated.count - promised.plus) % promised.of
    message = f"The cast-on of {stated.count} is not in the stated multiple of {promised.of} plus {promised.plus}."
    hint = f"Cast on {below} or {below + promised.of}."
    yield at(stated.place, "stated-count-wrong", "warning" if minor else "error", message, hint)
