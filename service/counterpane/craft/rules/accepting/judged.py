"""A judged text beside its remarks: findings accepted with a reason, levels that are the text's own, remarks unmet.

Nothing disappears: an accepted finding stays as a note that says where and why it was accepted.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.checking import Examined
from counterpane.craft.findings import Family, Finding
from counterpane.craft.rows.remarks import Remark, is_remark, remark_in
from counterpane.craft.rows.words import given_lines

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


def judged(examined: Examined, found: Iterable[Finding], families: Mapping[str, Family]) -> Judged:
    """Apply the remarks of a text to its findings."""
    lines = given_lines(examined.text)
    read = (remark_in(line, number) for number, line in enumerate(lines, start=1))
    remarks = tuple(remark for remark in read if remark is not None)
    if not remarks:
        return Judged((), tuple(found), families)
    valid = [remark for remark in remarks if _is_valid(remark, families)]
    levels = {remark.slug: remark for remark in reversed(valid) if remark.level}
    findings = tuple(_levelled(finding, levels.get(finding.rule), examined) for finding in found)
    spans = _Spans.of(valid, lines, examined)
    met: set[Remark] = set()
    accepted = tuple(_accepted(finding, spans, met, examined) for finding in findings)
    unmet = tuple(remark for remark in spans.all if remark not in met and families[remark.slug] in _OF_TEXTS)
    return Judged(remarks, accepted, families, unmet)


@dataclass(frozen=True, slots=True)
class _Spans:
    """Acceptances: those of the whole text by rule, and those of a row or statement by rule and line."""

    throughout: Mapping[str, Remark]
    at: Mapping[tuple[str, int], Remark]
    all: Sequence[Remark]

    @classmethod
    def of(cls, valid: Sequence[Remark], lines: Sequence[str], examined: Examined) -> _Spans:
        """Find the lines that each acceptance is about: those of the row or statement directly below it."""
        accepting = [remark for remark in valid if remark.level is None]
        below = _below(lines)
        ends = {row.place.line: row.end.line for row in examined.rows}
        at: dict[tuple[str, int], Remark] = {}
        for remark in accepting:
            first = below[remark.place.line]
            for line in () if remark.throughout else range(first, ends.get(first, first) + 1):
                at.setdefault((remark.slug, line), remark)
        return cls({remark.slug: remark for remark in accepting if remark.throughout}, at, accepting)

    def remark_for(self, finding: Finding) -> Remark | None:
        """Return the acceptance that a finding falls under."""
        return self.throughout.get(finding.rule) or self.at.get((finding.rule, finding.line or 0))


def _below(lines: Sequence[str]) -> list[int]:
    """Return for each line number the number of the next line that is neither blank nor a remark, 0 for none."""
    below = [0] * (len(lines) + 1)
    for index in range(len(lines) - 1, 0, -1):
        line = lines[index]
        below[index] = index + 1 if line.strip() and not is_remark(line) else below[index + 1]
    return below


def _is_valid(remark: Remark, families: Mapping[str, Family]) -> bool:
    """Tell whether a remark has an effect: its rule exists and is none of safety, and a reason is given."""
    return bool(remark.reason.strip(" .")) and families.get(remark.slug, "safety") != "safety"


def _levelled(finding: Finding, remark: Remark | None, examined: Examined) -> Finding:
    """Give a finding the level that the text asks for."""
    if remark is None or remark.level is None or remark.level == finding.severity:
        return finding
    article = "an" if remark.level == "error" else "a"
    said = f"Treated as {article} {remark.level} on line {remark.place.line}: {_reason(remark)}"
    quiet = remark.level == "note" and finding.severity == "error"
    return _with(finding, remark.level, f"{_uncounted(finding, examined) if quiet else ''} {said}")


def _accepted(finding: Finding, spans: _Spans, met: set[Remark], examined: Examined) -> Finding:
    """Turn a finding that a remark accepts into a note, and note that the remark is met."""
    remark = spans.remark_for(finding)
    if remark is None:
        return finding
    met.add(remark)
    said = f"Accepted on line {remark.place.line}: {_reason(remark)}"
    return _with(finding, "note", f"{_uncounted(finding, examined)} {said}")


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
