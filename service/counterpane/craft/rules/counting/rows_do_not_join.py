"""A row that cannot follow the rows before it."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, jammed
from counterpane.craft.counts import Misfit
from counterpane.craft.findings import Finding, rule


@rule(
    "rows-do-not-join",
    family="counting",
    severity="error",
    bad="Row 1: *K3, p1; rep from * to end.\nRow 2: *K5, p1; rep from * to last st, k1.",
    good="Row 1: *K3, p1; rep from * to end.\nRow 2: *K3, p1; rep from * to end.",
)
def rows_do_not_join(examined: Examined) -> Iterator[Finding]:
    """Rows do not join, whatever the cast-on.

    Each row can be worked alone, but no cast-on exists that the rows before this one turn into a count it takes.
    """
    return jammed(examined, "rows-do-not-join", _say)


def _say(name: str, misfit: Misfit) -> tuple[str, str]:
    """Word why no count serves, in the remainders that contradict each other."""
    hint = "Change the edge stitches of this row or of the rows before it, so that both take the same counts."
    if misfit.modulus is None:
        return f"{name} cannot follow the rows before it, whatever the cast-on.", hint
    left, taken = (
        f"a multiple of {misfit.modulus}{f' plus {rest}' if rest else ''}" for rest in (misfit.residue, misfit.wanted)
    )
    return (
        f"{name} cannot follow the rows before it, whatever the cast-on: they leave {left}, and this row takes {taken}."
    ), hint
