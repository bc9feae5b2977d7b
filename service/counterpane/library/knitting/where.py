"""Which row a piece is on: questions about what the fabric shows, until one row is left or those left look alike."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.helping import narrowing
from counterpane.craft.helping.narrowing import NOT_SURE, ORDER, Asking, Question
from counterpane.craft.helping.rows import worked_rows
from counterpane.craft.helping.seeing import Sight, sights
from counterpane.craft.helping.under import Under, in_groups, read, shortened
from counterpane.craft.pattern.figures import counted
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library.knitting.on_needle import row_json
from counterpane.library.plans.bench import Bench
from counterpane.library.plans.plan_answers import tenths
from counterpane.library.values import BadInput

Content = Mapping[str, Any]
Answer = dict[str, Any]
MEMBERS = ("seen", "terms")
"""Members of a request that a plan request does not have."""

MOST_ROWS = 5_000
"""Rows of a piece beyond which no row is looked for; house figure that bounds time."""

SHOWN = 8
"""Rows that are told one by one; house."""

LISTED = 30
"""Answers of a question that are listed; more are told as a range; house."""

STITCHES = (
    "Write the side, the stitches under the needle, and after a stroke those one course further down, as in RS: k2 p2 "
    "/ p4; each a letter and how many follow one another: k a V, p a bump, o a hole, s a long slipped stitch, x one "
    "that crosses others. The first few are enough, and what you cannot tell is left out."
)
BASIS = (
    "read off a trace of the plan's rows; how far a length may be off is a house figure; how sides are told is common "
    "practice, no source"
)


def where(content: Content, bench: Bench) -> Answer:
    """Return the next question about a piece on the needle, or the rows that it may be on, as JSON values.

    Raises what planning raises, and BadInput for a piece of too many rows and an answer that is none.
    """
    request = {name: value for name, value in content.items() if name not in MEMBERS}
    terms: Terms = content.get("terms") or "us"
    plan = bench.made(request)
    if sum(section.rows for section in plan.sections) > MOST_ROWS:
        raise BadInput("/size/length_cm", f"Rows are looked for in pieces of at most {MOST_ROWS:,} rows.", "Count.")
    every = sights(plan, bench.vocabulary)
    seen = _seen(content.get("seen") or {}, every)
    left = narrowing.left_by(every, seen)
    asking = narrowing.next_question(left, seen) if len(left) > 1 else None
    shown = left if asking is None or len(left) <= SHOWN else ()
    return {
        "terms": terms,
        "rows": len(every),
        "left": len(left),
        "between": [left[0].row, left[-1].row] if left else None,
        "question": None if asking is None else _question_json(asking, left, plan),
        "candidates": [_candidate(each, plan, bench.vocabulary, terms) for each in shown[:SHOWN]],
        "told": _told(every, left, seen, asking),
        "basis": BASIS,
    }


def _seen(sent: Content, every: Sequence[Sight]) -> dict[Question, narrowing.Answer]:
    """Return the answers as the rows have them, in the order of the questions."""
    return {question: _read(question, sent[question], every) for question in ORDER if sent.get(question) is not None}


def _read(question: Question, said: Any, every: Sequence[Sight]) -> narrowing.Answer:
    text = str(said).strip()
    place = f"/seen/{question}"
    if text.lower() == NOT_SURE:
        return NOT_SURE
    if question == "needle":
        under = read(text)
        if under is None:
            raise BadInput(place, f"{text[:40]!r} cannot be read as stitches.", STITCHES)
        return under
    if question in ("repeats", "length_cm"):
        try:
            return int(text) if question == "repeats" else Fraction(text)
        except (ValueError, ZeroDivisionError):
            raise BadInput(place, f"{text[:40]!r} is no number.", f"Give a number, or {NOT_SURE!r}.") from None
    answers = dict.fromkeys(str(narrowing.answer_of(sight, question)) for sight in every)
    found = next((answer for answer in answers if answer.lower() == text.lower()), None)
    if found is None:
        raise BadInput(place, f"{text[:40]!r} is no answer to this.", f"Answers: {', '.join([*answers, NOT_SURE])}.")
    return found


def _question_json(asking: Asking, left: Sequence[Sight], plan: Plan) -> Answer:
    lengths = [tenths(sight.cm) for sight in left] if asking.question == "length_cm" else []
    numbers = [sight.repeats for sight in left] if asking.question == "repeats" else lengths
    return {
        "name": asking.question,
        "asks": _asks(asking.question, left[0], plan),
        "look": _look(asking.question, plan),
        "answers": None if len(asking.answers) > LISTED or not asking.answers else _answers_json(asking),
        "between": [min(numbers), max(numbers)] if numbers else None,
        "at_worst": asking.worst,
    }


def _answers_json(asking: Asking) -> list[Answer]:
    values = [value for value, _ in asking.answers]
    said = [each.said() for each in shortened([value for value in values if isinstance(value, Under)])] or values
    return [{"answer": answer, "left": left} for answer, (_, left) in zip(said, asking.answers, strict=True)]


def _asks(question: Question, sight: Sight, plan: Plan) -> str:
    period = "rows" if sight.period == 1 else f"whole repeats of {sight.period} rows"
    border = plan.counts.sides + plan.counts.selvedge
    past = f", past the {counted(border, 'stitch', 'stitches')} of the border" if border else ""
    return {
        "part": "Which part is the row below the needle in?",
        "needle": (
            "Take the needle with the stitches in your left hand, about to work the next row. Which side faces you, "
            f"which stitches hang right below the needle from where that row begins{past}, and which lie one course "
            "below them?"
        ),
        "repeats": f"How many {period} stand in this part below the row on the needle?",
        "length_cm": "How long is the piece from the cast-on edge to the needle, in cm, laid flat and not pulled?",
    }[question]


def _look(question: Question, plan: Plan) -> str:
    first = plan.sections[0].first_row_side
    return {
        "part": "Parts that go on alike cannot be told apart and stand together, as in bottom+body.",
        "needle": (
            f"The {first} is the side on which the tail of the cast-on hangs at the same hand as when you began row 1. "
            f"{STITCHES}"
        ),
        "repeats": "Where ridges stand, two rows make one. Do not count a repeat that the needle is still in.",
        "length_cm": "A length on the needle is taken to be right within 1 cm and a tenth of it.",
    }[question]


def _candidate(sight: Sight, plan: Plan, vocabulary: Vocabulary, terms: Terms) -> Answer:
    (row, *after) = worked_rows(plan, sight.row, sight.row + 1, vocabulary)
    following = row_json(after[0], plan, vocabulary, terms) if after else None
    return {
        "worked": row_json(row, plan, vocabulary, terms),
        "next": following,
        "length_cm": tenths(sight.cm),
        "needle": in_groups(sight.needle.needle),
    }


def _told(
    every: Sequence[Sight],
    left: Sequence[Sight],
    seen: Mapping[Question, narrowing.Answer],
    asking: Asking | None,
) -> list[str]:
    if asking is not None:
        return []
    if not left:
        return _none_left(every, seen)
    if len(left) == 1:
        return [f"You have worked row {left[0].row:,}: no other row shows all of that."]
    told = [f"{counted(len(left), 'row')} from {left[0].row:,} to {left[-1].row:,} are left."]
    unsure = [question for question, answer in seen.items() if answer == NOT_SURE]
    if unsure and not all(narrowing.alike(left[0], each) for each in left[1:]):
        return [*told, f"An answer to what you were not sure of would tell more: {', '.join(unsure)}."]
    return [
        *told,
        "They look alike in all that can be asked. Count up from the last checkpoint, lifeline or marker; or hold the "
        "lengths of these rows against the piece.",
    ]


def _none_left(every: Sequence[Sight], seen: Mapping[Question, narrowing.Answer]) -> list[str]:
    """Say which answer alone keeps every row out."""
    told = ["No row shows all of that: one of the answers is off, or a row was worked otherwise than it is written."]
    for question in seen:
        others = {name: answer for name, answer in seen.items() if name != question}
        rows = narrowing.left_by(every, others)
        if rows:
            first, last = rows[0].row, rows[-1].row
            told.append(f"Without the answer to {question}: {counted(len(rows), 'row')}, {first:,} to {last:,}.")
    return told
