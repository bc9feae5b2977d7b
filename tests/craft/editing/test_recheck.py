"""A sheet checked again: what each query becomes, and that nothing a person wrote is changed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from counterpane.craft.editing import Query, Sheet, rechecked

FOUND = Query(
    0,
    "",
    rule="row-runs-short",
    severity="error",
    row="3",
    line=4,
    column=8,
    printed="Row 3: K8, p3.",
    words="p3",
    finding="Row 3 begins with 10 stitches and here asks for 3 stitches where 2 are left.",
    hint="Shorten the row, or begin it with 11.",
)
FIRST = rechecked(Sheet(), [FOUND], False)


def answered(**written: object) -> Sheet:
    """Return the first sheet with what a person wrote into its query."""
    return replace(FIRST, queries=(replace(FIRST.queries[0], **written),))


def test_a_finding_becomes_a_numbered_question() -> None:
    """The first check asks about everything found."""
    query = FIRST.queries[0]
    assert (query.number, query.state) == (1, "open")
    assert query.question == (
        "Row 3 begins with 10 stitches and here asks for 3 stitches where 2 are left: "
        "could you shorten the row, or begin it with 11?"
    )


@pytest.mark.parametrize(
    ("written", "changed", "state"),
    [
        ({}, False, "open"),
        ({"answer": "It is 2."}, True, "answered"),
        ({"decision": "change"}, False, "to change"),
        ({"decision": "change"}, True, "still there"),
        ({"decision": "done"}, False, "still there"),
        ({"decision": "keep"}, True, "kept"),
        ({"state": "still there", "decision": "change"}, False, "still there"),
        ({"state": "settled"}, True, "back"),
        ({"state": "back", "answer": "Again?"}, False, "back"),
    ],
)
def test_a_query_whose_finding_stands_has_the_state_of_what_was_written(
    written: dict[str, object], changed: bool, state: str
) -> None:
    """The state follows from answer, decision, and whether the text was changed since."""
    assert rechecked(answered(**written), [FOUND], changed).queries[0].state == state


def test_a_query_whose_finding_is_gone_is_settled_and_stays() -> None:
    """The record keeps where it stood, and what was said of it."""
    query = rechecked(answered(answer="Yes."), [], True).queries[0]
    assert (query.state, query.line, query.answer) == ("settled", 4, "Yes.")


@pytest.mark.parametrize(
    ("decision", "answer", "state"),
    [
        (None, "", "open"),
        (None, "Yes.", "answered"),
        ("change", "", "to change"),
        ("keep", "", "kept"),
        ("done", "", "settled"),
    ],
)
def test_a_question_of_the_editor_is_settled_by_its_people(decision: str | None, answer: str, state: str) -> None:
    """No finding decides about a question without a rule."""
    own = Query(0, "Is the yarn held double?", decision=decision, answer=answer)  # type: ignore[arg-type]
    query = rechecked(replace(FIRST, queries=(*FIRST.queries, own)), [], True).queries[1]
    assert (query.number, query.question, query.state) == (2, own.question, state)


def test_numbers_are_never_given_twice() -> None:
    """A query that a person copied keeps its words and gets a number of its own."""
    twice = replace(FIRST, queries=(FIRST.queries[0], Query(1, "And the edge?")))
    other = replace(FOUND, row="5", printed="Row 5: K9, yo2.", words="yo2")
    assert [query.number for query in rechecked(twice, [FOUND, other], False).queries] == [1, 2, 3]


def test_an_unanswered_question_keeps_up_with_its_numbers() -> None:
    """Another misfit in the same words is the same query, asked with the numbers that hold."""
    seen = replace(FOUND, finding="Row 3 begins with 9 stitches and here asks for 3 stitches where 1 is left.")
    query = rechecked(FIRST, [seen], True).queries[0]
    assert query.question.startswith("Row 3 begins with 9 stitches")


@pytest.mark.parametrize("written", [{"question": "Why 11, dear Ada?"}, {"answer": "Because."}])
def test_a_question_that_a_person_worded_or_answered_stays(written: dict[str, object]) -> None:
    """The finding beside it has the numbers that hold."""
    sheet = answered(**written)
    seen = replace(FOUND, finding="Row 3 begins with 9 stitches and here asks for 3 stitches where 1 is left.")
    query = rechecked(sheet, [seen], True).queries[0]
    assert (query.question, query.finding) == (sheet.queries[0].question, seen.finding)
