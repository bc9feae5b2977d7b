"""A remark that does not say why."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rules.accepting.judged import Judged


@rule(
    "accepts-without-reason",
    family="accepting",
    severity="warning",
    bad="Cast on 8 sts.\nAccept repeat-assumed:\nRow 1: *K2, p2; rep from * to end.",
    good="Cast on 8 sts.\nAccept repeat-assumed: the leaflet has no room for stars.\nRow 1: K2, p2, repeat.",
)
def accepts_without_reason(judged: Judged) -> Iterator[Finding]:
    """A finding is accepted, or a rule treated, without a reason.

    The next editor must know why; a line without a reason has no effect.
    """
    for remark in judged.remarks:
        if not remark.reason.strip(" ."):
            message = "No reason is given, so this line has no effect."
            yield at(remark.place, "accepts-without-reason", "warning", message, "Say why behind a colon.")
