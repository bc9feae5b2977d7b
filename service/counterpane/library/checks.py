"""Check a text of rows: the answer of `counterpane check` and `POST /v1/checks`, as JSON values."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from counterpane.craft.checking import Examined, corrected_rows, examine, odd_repeat, trouble
from counterpane.craft.counts import Progression
from counterpane.craft.findings import Finding
from counterpane.craft.rows.say import say_row
from counterpane.craft.rows.tree import Place, Row
from counterpane.craft.rows.words import LINE_END
from counterpane.craft.rules import judge_text
from counterpane.craft.stitches import Terms, Vocabulary


def check_text(
    text: str, vocabulary: Vocabulary, cast_on: int | None = None, terms: Terms | None = None
) -> dict[str, Any]:
    """Read a text, derive its counts and say what is wrong; see `answer_of` for the shape."""
    examined = examine(text, vocabulary, cast_on, terms)
    return answer_of(examined, judge_text(examined))


MOST_CORRECTED = 20


def corrected(text: str, vocabulary: Vocabulary, cast_on: int | None = None, terms: Terms | None = None) -> str:
    """Return the text with its wrong rows and printed counts corrected where a correction is known.

    One row at a time, the first place of trouble first; what cannot be corrected stays, and nothing else changes.
    """
    for _ in range(MOST_CORRECTED):
        examined = examine(text, vocabulary, cast_on, terms)
        change = _correction(examined)
        if change is None:
            return text
        row, new = change
        words = say_row(new.parts, vocabulary, examined.instructions.terms)
        count = f". ({new.stated} sts)" if new.stated is not None else ""
        text = _replaced(text, row.start, row.end, f"{words[:1].upper()}{words[1:]}{count}")
    return text


def _correction(examined: Examined) -> tuple[Row, Row] | None:
    """Return the first row to correct and what it becomes."""
    if not examined.complete:
        return None
    for wrong in examined.walk.wrong_counts:
        if trouble(examined) is None and wrong.again is None:
            return wrong.row, replace(wrong.row, stated=wrong.true)
    odd = odd_repeat(examined)
    stuck = trouble(examined)
    row = examined.counted[odd] if odd is not None else stuck[0] if stuck else None
    new = corrected_rows(examined, row)[:1] if row is not None else ()
    return (row, new[0]) if row is not None and new else None


def _replaced(text: str, start: Place, end: Place, words: str) -> str:
    """Return the text with what stands between two places replaced."""
    begins = [text.startswith("\ufeff"), *(match.end() for match in re.finditer(LINE_END, text))]
    return text[: begins[start.line - 1] + start.column - 1] + words + text[begins[end.line - 1] + end.column - 1 :]


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
