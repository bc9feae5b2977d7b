"""What should be on the needle after a row, how far the piece has come, and where a count went wrong."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.helping import Suspect, WorkedRow
from counterpane.craft.helping.back import way_back
from counterpane.craft.helping.progress import Progress, progress
from counterpane.craft.helping.remedies import correct, looks, said, why
from counterpane.craft.helping.rows import stretches, worked_rows
from counterpane.craft.helping.suspects import LOOKED_AT, suspects
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.say import say_row
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.yarn import YarnEstimate
from counterpane.craft.yarn.pace import OF_PRACTICE, TURNS, hours
from counterpane.library.knitting.looks_wrong import looks_wrong, way_json
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.plan_answers import tenths
from counterpane.library.plans.regauging import plan_regauge
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_requests import number_of
from counterpane.library.yarn.yarns import yarn_of_plan

Answer = dict[str, Any]
Content = Mapping[str, Any]
MEMBERS = ("at", "terms", "to")
"""Members of a request that a plan request does not have."""

FIRST = (
    "Count once more, in tens with a marker after each ten: a miscount is commoner than a mistake.",
    "See that no stitch hangs below the needle, at both ends and under the tips.",
)
BASIS = "which slip is likelier is common practice, no source; every count was worked on through the rows since"
CARE = (
    "A dropped stitch or a ladder that is left is an opening for a baby's finger: mend it before you knit on.",
    "Count markers, pins and needles when you put the work away, and keep them from the child.",
)


def at_row(content: Content, bench: Bench) -> Answer:
    """Return what a row of a plan should leave, and where the count that is told went wrong, as JSON values.

    Raises what planning raises, and BadInput for a row that the piece has not.
    """
    request = {name: value for name, value in content.items() if name not in MEMBERS}
    at = content["at"]
    terms: Terms = content.get("terms") or "us"
    plan = bench.made(request)
    number, sure = int(at["row"]), int(at.get("sure") or 0)
    rows = _rows(plan, number, sure, bench.vocabulary)
    pace = request.get("pace")
    own = None if pace is None else number_of(pace, "stitches_a_minute", "/pace")
    far = progress(plan, number, bench.vocabulary)
    yarn = yarn_of_plan(plan, request.get("yarn"), bench.vocabulary)
    return {
        "terms": terms,
        "row": row_json(rows[-1], plan, bench.vocabulary, terms),
        "progress": _progress_json(plan, far, yarn, own, bench.vocabulary),
        "count_in": _stretches_json(rows, bench.vocabulary),
        "gauge": plan_regauge({**request, "to": content["to"]}, bench) if content.get("to") else None,
        "looks_wrong": looks_wrong(plan, number, own, bench.vocabulary, terms),
        "wrong": _wrong(rows, at, own, bench.vocabulary, terms),
    }


def _rows(plan: Plan, number: int, sure: int, vocabulary: Vocabulary) -> tuple[WorkedRow, ...]:
    """Return the rows in which a slip is looked for, up to the one that was counted."""
    many = sum(section.rows for section in plan.sections)
    if not 1 <= number <= many:
        told = f" and {len(plan.picked)} borders that are picked up later" if plan.picked else ""
        raise BadInput("/at/row", f"The blanket has {many:,} rows from cast-on to bind-off{told}.", "Count again.")
    if sure >= number:
        raise BadInput("/at/sure", "The count was sure in a row before the one that is asked about.", "Leave it out.")
    return worked_rows(plan, max(sure + 1, number - LOOKED_AT + 1), number, vocabulary)


def row_json(row: WorkedRow, plan: Plan, vocabulary: Vocabulary, terms: Terms) -> Answer:
    """Return a row with its place, its words and its counts as JSON values."""
    section = next(each for each in plan.sections if each.name == row.part)
    return {
        "number": row.number,
        "of": sum(each.rows for each in plan.sections),
        "part": row.part,
        "in_part": row.in_part,
        "of_part": section.rows,
        "in_repeat": (row.in_part - 1) % len(section.cycle) + 1,
        "side": row.row.side,
        "text": say_row(row.row.parts, vocabulary, terms),
        "stitches_before": row.before,
        "stitches_after": row.after,
    }


def _progress_json(
    plan: Plan, far: Progress, yarn: YarnEstimate | None, own: Fraction | None, vocabulary: Vocabulary
) -> Answer:
    left = 1 - far.share
    whole = hours(plan, vocabulary, own)
    grams = yarn.grams if yarn else None
    return {
        "stitches": far.done,
        "stitches_total": far.total,
        "percent": tenths(100 * far.share),
        "hours_left": [tenths(whole.quick * left), tenths(whole.slow * left)],
        "grams_left": None if grams is None else [tenths(grams.low * left), tenths(grams.high * left)],
        "basis": "shares of stitches; grams and hours are the estimate of the whole plan, shared out over its stitches",
    }


def _stretches_json(rows: Sequence[WorkedRow], vocabulary: Vocabulary) -> Answer | None:
    found = stretches(rows, vocabulary)
    return None if found is None else asdict(found)


def _wrong(
    rows: tuple[WorkedRow, ...], at: Content, pace: Fraction | None, vocabulary: Vocabulary, terms: Terms
) -> Answer | None:
    """Return where the count went wrong; None where none is told, or it is as it should be."""
    have = at.get("stitches")
    if have is None or int(have) == rows[-1].after:
        return None
    since_cast_on = rows[0].number == 1
    found = suspects(rows, int(have), vocabulary, since_cast_on=since_cast_on)
    return {
        "off": int(have) - rows[-1].after,
        "first": list(FIRST),
        "looked_at": [rows[0].number, rows[-1].number],
        "suspects": [_suspect_json(each, rows, pace, vocabulary, terms) for each in found],
        "care": [in_terms(each, terms) for each in CARE],
        "basis": f"{BASIS}; minutes: {OF_PRACTICE if pace is None else f'the pace that was given, {TURNS}'}",
    }


def _suspect_json(
    suspect: Suspect, rows: tuple[WorkedRow, ...], pace: Fraction | None, vocabulary: Vocabulary, terms: Terms
) -> Answer:
    first, last = suspect.rows
    back = None
    if first == last and last > 0:
        way = way_back(rows, last)
        back = way_json(way, way.ladder and suspect.times == 1, pace)
    return {
        "kind": suspect.slip.kind,
        "rows": [first, last],
        "times": suspect.times,
        "said": said(suspect, vocabulary, terms),
        "why": why(suspect, rows),
        "shows_in": suspect.shows_in,
        "looks": looks(suspect, terms),
        "correct": correct(suspect, terms),
        "back": back,
    }
