"""A remark on a rule that does not exist."""

from __future__ import annotations

import difflib
from collections.abc import Iterator

from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rules.accepting.judged import Judged

MOST_LETTERS = 100  # House.


@rule(
    "accepts-unknown-rule",
    family="accepting",
    severity="warning",
    bad="Cast on 10 sts.\nAccept row-leaves-stiches: the last 3 sts stay on a holder.\nRow 1: K10.",
    good="Cast on 10 sts.\nAccept row-leaves-stitches: the last 3 sts stay on a holder.\nRow 1: K7.",
)
def accepts_unknown_rule(judged: Judged) -> Iterator[Finding]:
    """A rule is accepted or treated that does not exist.

    A misspelt name accepts nothing, and whoever wrote it believes that it does.
    """
    for remark in judged.remarks:
        if remark.slug not in judged.families:
            near = difflib.get_close_matches(remark.slug[:MOST_LETTERS], judged.families, n=1)
            message = f"There is no rule {quoted(remark.slug)}, so this line has no effect."
            hint = f"Did you mean {quoted(near[0])}?" if near else "Use the name that stands beside the finding."
            yield at(remark.slug_place, "accepts-unknown-rule", "warning", message, hint)
