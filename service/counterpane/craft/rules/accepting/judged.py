"""A judged text beside its remarks: findings accepted with a reason, levels that are the text's own, remarks unmet.

Nothing disappears: an accepted finding stays as a note that says where and why it was accepted.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.checking import Examined
from counterpane.craft.findings import Family, Finding
from counterpane.craft.rows.remarks import Remark, is_remark, remark_in
from counterpane.craft.rows.words import LINE_END

# Findings of other families are made elsewhere: whether they are met is not known here.
_OF_TEXTS = frozenset({"reading", "counting", "wording", "accepting"})


@dataclass(frozen=True, slots=True)
class Judged:
    """The remarks of a text, its findings as they stand after them, and the family of every rule there is.

    `unmet` are the acceptances that meet no finding; those of style may meet one where a style is asked for.
    """

    remarks: tuple[Remark, ...]
    findings: tuple[Finding, ...]
    families: Mapping[str, Family]
    unmet: tuple[Remark, ...] = ()

    def valid(self, remark: Remark) -> bool:
        """Tell whether a remark has an effect: its rule exists and is none of safety, and a reason is given."""
        return _is_valid(remark, self.families)


def judged(examined: Examined, found: Iterable[Finding], families: Mapping[str, Family]) -> Judged:
    """Apply the remarks of a text to its findings."""
    lines = re.split(LINE_END, examined.text.removeprefix("\ufeff"))
    read = (remark_in(line, number) for number, line in enumerate(lines, start=1))
    remarks = tuple(remark for remark in read if remark is not None)
    if not remarks:
        return Judged((), tuple(found), families)
    valid = [remark for remark in remarks if _is_valid(remark, families)]
    findings = tuple(_levelled(finding, valid, examined) for finding in found)
    spans = {remark: _span(remark, lines, examined) for remark in valid if remark.level is None}
    met: set[Remark] = set()
    accepted = tuple(_accepted(finding, spans, met, examined) for finding in findings)
    unmet = tuple(remark for remark in spans if remark not in met and families[remark.slug] != "style")
    return Judged(remarks, accepted, families, unmet)


def _is_valid(remark: Remark, families: Mapping[str, Family]) -> bool:
    return bool(remark.reason.strip(" .")) and families.get(remark.slug, "safety") != "safety"


def _levelled(finding: Finding, valid: Sequence[Remark], examined: Examined) -> Finding:
    """Give a finding the level that the text asks for."""
    remark = next((each for each in valid if each.level and each.slug == finding.rule), None)
    if remark is None or remark.level is None or remark.level == finding.severity:
        return finding
    article = "an" if remark.level == "error" else "a"
    said = f"Treated as {article} {remark.level} on line {remark.place.line}: {_reason(remark)}"
    quiet = remark.level == "note" and finding.severity == "error"
    return _with(finding, remark.level, f"{_uncounted(finding, examined) if quiet else ''} {said}")


def _accepted(
    finding: Finding, spans: Mapping[Remark, tuple[int, int]], met: set[Remark], examined: Examined
) -> Finding:
    """Turn a finding that a remark accepts into a note, and note that the remark is met."""
    for remark, (first, last) in spans.items():
        if remark.slug == finding.rule and first <= (finding.line or 0) <= last:
            met.add(remark)
            said = f"Accepted on line {remark.place.line}: {_reason(remark)}"
            return _with(finding, "note", f"{_uncounted(finding, examined)} {said}")
    return finding


def _with(finding: Finding, level: str, more: str) -> Finding:
    severity = next(each for each in ("error", "warning", "note") if each == level)
    return replace(finding, severity=severity, message=f"{finding.message}{more}")


def _reason(remark: Remark) -> str:
    return remark.reason.rstrip(" .") + "."


def _uncounted(finding: Finding, examined: Examined) -> str:
    """Say so where the row of a finding has no count: what is accepted is not thereby counted."""
    rows = (row for row in examined.followed if row.row.place.line <= (finding.line or 0) <= row.row.end.line)
    lost = finding.severity == "error" and any(row.after is None for row in rows)
    return " The counts from here on stay unknown." if lost else ""


def _span(remark: Remark, lines: Sequence[str], examined: Examined) -> tuple[int, int]:
    """Return the lines that an acceptance is about: the row or statement directly below it, or the whole text."""
    if remark.throughout:
        return 0, len(lines)
    below = range(remark.place.line + 1, len(lines) + 1)
    first = next((n for n in below if lines[n - 1].strip() and not is_remark(lines[n - 1])), remark.place.line)
    ends = [row.end.line for row in examined.rows if row.place.line == first]
    return first, max(ends, default=first)
