"""A stated multiple that does not work."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said, trouble
from counterpane.craft.checking.pieces import cast_on_later
from counterpane.craft.checking.wording import at, counts
from counterpane.craft.counts import judge
from counterpane.craft.findings import Finding, Severity, rule


@rule(
    "stated-multiple-wrong",
    family="counting",
    severity="error",
    bad="(multiple of 4 sts plus 1)\nRow 1: K2, *p3, k3; rep from * to end.",
    good="(multiple of 6 sts plus 2)\nRow 1: K2, *p3, k3; rep from * to end.",
)
def stated_multiple_wrong(examined: Examined) -> Iterator[Finding]:
    """A stated multiple is wrong.

    Whoever casts on by the stated multiple would be stuck in a row. The true multiple follows from the rows.
    """
    stated, chain = examined.instructions.multiple, examined.chain
    if (
        stated is None
        or cast_on_later(examined.instructions)
        or not examined.complete
        or not chain.starts
        or examined.odd is not None
    ):
        return
    if trouble(examined) and examined.corrections and examined.corrections[0].kind == "row":
        return  # A row that is put right gives the multiple that is stated.
    if all(judge(stated.of, stated.plus, true) == "wrong" for true in chain.starts):
        true = counts(chain.starts)
        message = f"The text promises a {stated.said}, but its rows take {true}."
        severity: Severity = "warning" if trouble(examined) else "error"
        fixes = said(examined, stated.place.line, "multiple")
        yield at(stated.place, "stated-multiple-wrong", severity, message, f"Print {true}.", corrections=fixes)
