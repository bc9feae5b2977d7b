"""`counterpane where`."""

from __future__ import annotations

import json

import pytest

from cli.conftest import Type
from cli.test_row import LACE

UNDER_ROW_47 = "WS: p5 o1 p5 o1 / p6"
"""By hand: of its yo, k2tog, k4 the back shows p5 and a hole."""


def test_questions_lead_to_the_row(typed: Type) -> None:
    """Row 47 is row 35 of the body, 15.7 cm up at 30 rows to 10 cm, with 8 rows to a repeat; a WS row follows it."""
    seen: list[str] = []
    truth = {"length_cm": "15.7", "part": "body", "needle": UNDER_ROW_47, "repeats": "4"}
    for _ in range(4):
        answer = json.loads(typed("where", "-", *seen, "--json", stdin=LACE).out)
        if answer["question"] is None:
            break
        name = answer["question"]["name"]
        seen += ["--seen", f"{name}={truth[name]}"]
    assert [each["worked"]["number"] for each in answer["candidates"]] == [47]
    assert answer["candidates"][0]["next"]["number"] == 48


def test_a_question_says_how_it_is_answered(typed: Type) -> None:
    """Each answer stands as it is typed, with the rows that it leaves."""
    done = typed("where", "-", "--seen", "length_cm=not-sure", stdin=LACE)
    said = " ".join(done.out.split())
    assert done.status == 0
    assert "208 rows of 208 may be it" in said
    assert "=not-sure if you cannot tell" in said


def test_answers_that_no_row_gives_are_told_one_by_one(typed: Type) -> None:
    """Two centimetres up lies the bottom border."""
    done = typed("where", "-", "--seen", "length_cm=2", "--seen", "part=top", stdin=LACE)
    said = " ".join(done.out.split())
    assert "No row shows all of that" in said
    assert "Without the answer to part: " in said and "Without the answer to length_cm: " in said


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ("needle", "write QUESTION=ANSWER"),
        ("colour=red", "questions are part, needle"),
        ("part=sleeve", "is no answer to this"),
        ("needle=zz", "cannot be read as stitches"),
        ("repeats=1/0", "is no number"),
        ("length_cm=1/0", "is no number"),
    ],
)
def test_what_is_no_answer_is_refused_with_those_there_are(typed: Type, given: str, said: str) -> None:
    """The status is 2."""
    done = typed("where", "-", "--seen", given, stdin=LACE)
    assert (done.status, done.out) == (2, "")
    assert said in " ".join(done.err.split())
