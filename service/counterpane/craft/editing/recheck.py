"""A sheet checked again: what became of each query, and what is asked besides.

Nothing that a person wrote is changed: no answer, decision or note, and no question that was put into other words.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.editing.matching import paired
from counterpane.craft.editing.questions import question_of
from counterpane.craft.editing.sheet import Query, Sheet, State

HIGHEST_NUMBER = 1_000_000
"""No sheet has as many queries (house figure)."""


def rechecked(sheet: Sheet, found: Sequence[Query], changed: bool) -> Sheet:
    """Return the sheet after a check that found these; `changed` says that the text is not the one last checked.

    Earlier queries keep their order and numbers, others follow. Settled ones stay as a record.
    """
    numbered = _numbered(sheet.queries)
    there = _there(numbered, found)
    taken = {id(query) for query in there.values()}
    queries = [_again(query, there.get(index), changed) for index, query in enumerate(numbered)]
    first = _last(queries) + 1
    fresh = [query for query in found if id(query) not in taken]
    queries += [_asked(replace(query, number=number)) for number, query in enumerate(fresh, first)]
    return replace(sheet, queries=tuple(queries))


def _numbered(queries: Sequence[Query]) -> list[Query]:
    """Give a number to queries that a person added without one, or with one that is taken."""
    seen: set[int] = set()
    last = _last(queries)
    out: list[Query] = []
    for query in queries:
        taken = query.number < 1 or query.number in seen
        last += taken
        out.append(replace(query, number=last) if taken else query)
        seen.add(query.number)
    return out


def _last(queries: Sequence[Query]) -> int:
    """Return the highest number given so far; one that only a slip of the pen can have made does not count."""
    return max((query.number for query in queries if query.number < HIGHEST_NUMBER), default=0)


def _there(earlier: Sequence[Query], found: Sequence[Query]) -> dict[int, Query]:
    """Return the finding of each earlier query that is there, by index; those that stood come before settled ones."""
    there: dict[int, Query] = {}
    left = list(found)
    for settled in (False, True):
        asked = [i for i, query in enumerate(earlier) if query.rule and (query.state == "settled") is settled]
        pairs = paired([earlier[index] for index in asked], left)
        there |= {asked[old]: left[new] for new, old in pairs.items()}
        left = [query for index, query in enumerate(left) if index not in pairs]
    return there


def _again(query: Query, seen: Query | None, changed: bool) -> Query:
    """Return an earlier query as it stands after the check; `seen` is its finding, None where it is gone."""
    if query.rule is None:
        return replace(query, state=_own_state(query))
    if seen is None:
        return replace(query, state="settled")
    current = replace(
        seen,
        number=query.number,
        answer=query.answer,
        decision=query.decision,
        note=query.note,
        question=query.question,
    )
    if not query.answer and query.question in ("", _question(query)):
        current = _asked(current)
    return replace(current, state=_state(query, changed) if not seen.accepted else "kept")


def _asked(query: Query) -> Query:
    return replace(query, question=_question(query), state="kept" if query.accepted else query.state)


def _question(query: Query) -> str:
    return question_of(query.finding, query.hint, query.suggestions, query.severity, query.sizes)


def _own_state(query: Query) -> State:
    """Return the state of a question without a rule, which its people settle."""
    if query.decision == "done":
        return "settled"
    return "kept" if query.decision == "keep" else _waiting(query)


def _state(query: Query, changed: bool) -> State:
    """Return the state of a query whose finding is there."""
    if query.decision == "keep":
        return "kept"
    if query.state in ("settled", "back"):
        return "back"
    stays = query.decision == "change" and (changed or query.state == "still there")
    return "still there" if stays or query.decision == "done" else _waiting(query)


def _waiting(query: Query) -> State:
    if query.decision == "change":
        return "to change"
    return "answered" if query.answer.strip() else "open"
