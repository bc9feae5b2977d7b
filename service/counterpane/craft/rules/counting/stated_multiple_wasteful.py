"""A stated multiple larger than it need be."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, said
from counterpane.craft.checking.pieces import cast_on_later
from counterpane.craft.checking.wording import at, multiple
from counterpane.craft.counts import judge
from counterpane.craft.findings import Finding, rule


@rule(
    "stated-multiple-wasteful",
    family="counting",
    severity="warning",
    bad="(multiple of 12 sts plus 2)\nRow 1: K2, *p3, k3; rep from * to end.",
    good="(multiple of 6 sts plus 2)\nRow 1: K2, *p3, k3; rep from * to end.",
)
def stated_multiple_wasteful(examined: Examined) -> Iterator[Finding]:
    """A stated multiple leaves out counts that work.

    All the counts it promises work, but a smaller multiple would do, and a designer could come nearer to the wanted
    width.
    """
    stated, chain = examined.instructions.multiple, examined.chain
    if stated is None or cast_on_later(examined.instructions) or not examined.complete or len(chain.starts) != 1:
        return
    if judge(stated.of, stated.plus, chain.starts[0]) == "wasteful":
        true = multiple(chain.starts[0])
        message = f"The stated multiple of {stated.of} works, but the rows take {true}."
        yield at(
            stated.place,
            "stated-multiple-wasteful",
            "warning",
            message,
            f"Print {true}.",
            corrections=said(examined, stated.place.line, "multiple"),
        )
