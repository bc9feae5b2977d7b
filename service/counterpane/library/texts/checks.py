"""Check a text of rows: the answer of `counterpane check` and `POST /v1/checks`, as JSON values."""

from __future__ import annotations

from typing import Any

from counterpane.craft.checking import Examined, TextCorrection, examine_sizes
from counterpane.craft.checking.rewriting import written
from counterpane.craft.counts import Progression
from counterpane.craft.findings import Finding
from counterpane.craft.rules import judge_sizes, with_findings
from counterpane.craft.stitches import Terms, Vocabulary


def check_text(
    text: str, vocabulary: Vocabulary, cast_on: int | None = None, terms: Terms | None = None
) -> dict[str, Any]:
    """Read a text, derive its counts and say what is wrong; see `answer_of` for the shape."""
    sizes = examine_sizes(text, vocabulary, cast_on, terms)
    answers = [answer_of(examined, findings) for examined, findings in zip(sizes, judge_sizes(sizes), strict=True)]
    if len(answers) > 1:
        each = [{name: answer[name] for name in ("cast_on", "rows", "findings")} for answer in answers]
        return {**answers[0], "sizes": each}
    return answers[0]


MOST_CORRECTED = 20


def corrected(text: str, vocabulary: Vocabulary, cast_on: int | None = None, terms: Terms | None = None) -> str:
    """Return the text with its wrong rows and statements corrected where a correction is known.

    One correction at a time, the likeliest first; what cannot be corrected stays, and nothing else changes.
    """
    for _ in range(MOST_CORRECTED):
        judged = (with_findings(examined) for examined in examine_sizes(text, vocabulary, cast_on, terms))
        wanted = (
            correction
            for examined, findings in judged
            for correction in examined.corrections
            if _is_wanted(correction, findings)
        )
        correction = next(wanted, None)
        if correction is None:
            return text
        text = written(text, correction.changes)
    return text


def _is_wanted(correction: TextCorrection, findings: tuple[Finding, ...]) -> bool:
    """Tell whether a correction belongs to a finding that the text does not accept."""
    return correction.kind != "asked" and any(
        finding.corrections
        and finding.severity != "note"
        and correction.line <= (finding.line or 0) <= correction.last_line
        for finding in findings
    )


def answer_of(examined: Examined, findings: tuple[Finding, ...]) -> dict[str, Any]:
    """Return an examined text as JSON values: counts are whole numbers, null where they are not known."""
    rows = [
        {
            "label": followed.row.label,
            "section": followed.row.section,
            "side": followed.row.side,
            "line": followed.row.place.line,
            "before": followed.before,
            "after": followed.after,
        }
        for followed in examined.followed
    ]
    return {
        "cast_on": examined.cast_on,
        "terms": examined.instructions.terms,
        **_multiple(examined),
        "rows": rows,
        "drift": _drift(examined),
        "sizes": None,
        "findings": [finding_json(finding) for finding in findings],
    }


def _multiple(examined: Examined) -> dict[str, Any]:
    """Return multiple, fixed and classes: at most one of them is not null."""
    starts = examined.chain.starts if examined.complete and examined.rows else ()
    several = [_class(start) for start in starts] if len(starts) > 1 else None
    only = starts[0] if len(starts) == 1 else None
    return {
        "multiple": _class(only) if only and only.of else None,
        "fixed": only.least if only and not only.of else None,
        "classes": several,
    }


def _class(progression: Progression) -> dict[str, int]:
    return {"of": progression.of, "plus": progression.plus, "least": progression.least}


def _drift(examined: Examined) -> int | None:
    followed = examined.followed
    if not followed or followed[0].before is None or followed[-1].after is None:
        return None
    return followed[-1].after - followed[0].before


def finding_json(finding: Finding) -> dict[str, Any]:
    """Return a finding of a text as JSON values."""
    return {
        "rule": finding.rule,
        "severity": finding.severity,
        "line": finding.line,
        "column": finding.column,
        "message": finding.message,
        "hint": finding.hint,
        "corrections": list(finding.corrections),
    }
