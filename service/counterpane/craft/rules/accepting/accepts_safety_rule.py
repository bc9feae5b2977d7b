"""A remark on a rule of safety."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rules.accepting.judged import Judged


@rule(
    "accepts-safety-rule",
    family="accepting",
    severity="warning",
    bad="Cast on 8 sts.\nAccept pom-pom throughout: it looks sweet.\nRow 1: *K2, p2; rep from * to end.",
    good="Cast on 8 sts.\nRow 1: *K2, p2; rep from * to end.",
    source="house",
)
def accepts_safety_rule(judged: Judged) -> Iterator[Finding]:
    """A rule of safety is accepted or treated otherwise.

    What can hurt a baby is not for a text to wave through; the warning stays with the piece and whoever uses it.
    """
    for remark in judged.remarks:
        if judged.families.get(remark.slug) == "safety":
            message = f"{quoted(remark.slug)} is a rule of safety; it cannot be accepted, and this line has no effect."
            yield at(
                remark.slug_place,
                "accepts-safety-rule",
                "warning",
                message,
                "Change the piece, and leave the line out.",
            )
