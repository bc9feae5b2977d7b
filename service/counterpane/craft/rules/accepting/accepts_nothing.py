"""An acceptance that meets no finding."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rules.accepting.judged import Judged


@rule(
    "accepts-nothing",
    family="accepting",
    severity="note",
    bad="Cast on 8 sts.\nAccept row-runs-short: the sleeve gives the rest.\nRow 1: *K2, p2; rep from * to end.",
    good="Cast on 8 sts.\nRow 1: *K2, p2; rep from * to end.",
)
def accepts_nothing(judged: Judged) -> Iterator[Finding]:
    """An acceptance meets no finding.

    It was put right since, or the line stands in the wrong place: directly above the row or statement it is about.
    """
    for remark in judged.unmet:
        where = "in the text" if remark.throughout else "on the row or statement below"
        message = f"There is no finding {quoted(remark.slug)} {where} to accept."
        yield at(remark.place, "accepts-nothing", "note", message, "Leave the line out, or move it above its row.")
