"""The sheet of a text: what is asked, and what becomes of it when the text changes."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from counterpane.craft.editing import Query, Sheet
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.sheets import (
    UnknownStyle,
    _findings,
    acceptance,
    belongs,
    check_sheet,
    sheet_json,
    sheet_of,
    style_of,
)
from counterpane.seeding.styles import load_styles

BROKEN = "Cast on 10 sts.\nRow 1: K1, skq, k to end.\nRow 2: Purl.\nRow 3: K1, skq, k to end.\n"


def about(sheet: Sheet, rule: str = "unknown-term") -> list[Query]:
    """Return the queries of a rule."""
    return [query for query in sheet.queries if query.rule == rule]


def states(sheet: Sheet) -> list[tuple[str, str | None]]:
    """Return state and row of each query about an unknown word."""
    return [(query.state, query.row) for query in about(sheet)]


def test_the_same_fault_in_two_rows_is_two_queries(vocabulary: Vocabulary) -> None:
    """Each has its row, its line and its words."""
    sheet = check_sheet(BROKEN, vocabulary, Sheet())
    assert states(sheet) == [("open", "1"), ("open", "3")]
    assert [(query.line, query.column, query.words) for query in about(sheet)] == [(2, 12, "skq"), (4, 12, "skq")]


def test_mending_one_row_settles_its_query_and_no_other(vocabulary: Vocabulary) -> None:
    """The other stands, also where lines were put in above it."""
    first = check_sheet(BROKEN, vocabulary, Sheet())
    mended = "A title\n\nBy Ada.\n\n" + BROKEN.replace("skq", "skp", 1)
    after = check_sheet(mended, vocabulary, first)
    assert states(after) == [("settled", "1"), ("open", "3")]
    assert [query.line for query in about(after)] == [2, 8]


def test_what_a_change_breaks_is_asked_besides(vocabulary: Vocabulary) -> None:
    """Other findings get numbers of their own."""
    first = check_sheet(BROKEN, vocabulary, Sheet())
    after = check_sheet(BROKEN.replace("Row 2: Purl.", "Row 2: (P1, k to end."), vocabulary, first)
    (asked,) = about(after, "bracket-not-closed")
    assert (asked.state, asked.row) == ("open", "2")
    assert asked.number > max(query.number for query in first.queries)


def test_a_sheet_remembers_how_the_text_was_checked(vocabulary: Vocabulary) -> None:
    """Departures from its style stay queries without asking for the style again."""
    style = load_styles()["counterpane"]
    first = check_sheet("1st row: K2.", vocabulary, Sheet(style="counterpane", cast_on=2), style)
    assert [query.words for query in about(first, "style-row-label")] == ["1st row"]
    assert check_sheet("1st row: K2.", vocabulary, first, style_of(load_styles(), first.style)) == first


def test_a_style_that_is_not_there_is_refused_with_the_nearest() -> None:
    """The pointer leads to it in a request."""
    with pytest.raises(UnknownStyle) as caught:
        style_of(load_styles(), "counterpain")
    assert (caught.value.pointer, caught.value.hint) == ("/style", "Probably meant: counterpane.")


def test_a_kept_finding_has_the_line_that_accepts_it(vocabulary: Vocabulary) -> None:
    """The reason is the editor's note, else the designer's answer, on one line."""
    first = check_sheet(BROKEN, vocabulary, Sheet())
    query = replace(about(first)[0], decision="keep", answer="It is\nmeant.")
    kept = check_sheet(BROKEN, vocabulary, replace(first, queries=(query,))).queries[0]
    assert acceptance(kept) == "Accept unknown-term: It is meant."
    assert acceptance(replace(kept, note="See the notes.")) == "Accept unknown-term: See the notes."
    assert acceptance(replace(kept, answer=" ")) == "Accept unknown-term: it is meant so"
    assert acceptance(replace(kept, rule="style-count")) == "Accept style-count throughout: It is meant."
    assert acceptance(query) is None


def test_a_sheet_goes_through_json_and_back(vocabulary: Vocabulary) -> None:
    """Nothing is lost on the way."""
    sheet = check_sheet(BROKEN, vocabulary, Sheet(text="leaf.txt"))
    assert sheet_of(sheet_json(sheet)) == sheet


def test_a_text_without_any_line_of_a_sheet_is_another_text(vocabulary: Vocabulary) -> None:
    """One with a line of it may be the same, and so may any where nothing is asked."""
    sheet = check_sheet(BROKEN, vocabulary, Sheet())
    assert belongs(sheet, BROKEN) and belongs(sheet, "Row 3:  K1, skq, k to end.\n")
    assert not belongs(sheet, "Row 1: *K2, p2; rep from * to end.\n")
    assert belongs(Sheet(checked="0" * 64, queries=(Query(1, "Own?"),)), "Row 1: Knit.\n")


def finding(rule: str, line: int, message: str = "It is so.") -> dict[str, Any]:
    """Return a finding."""
    return {"rule": rule, "line": line, "column": 1, "message": message}


def test_a_finding_of_some_sizes_names_them() -> None:
    """One of all sizes, and one about words, is about none of them in particular."""
    all_sizes, second, words = finding("row-runs-short", 1), finding("row-runs-short", 2), finding("unknown-term", 3)
    parts = [{"findings": [all_sizes, words]}, {"findings": [all_sizes, second]}, {"findings": [all_sizes]}]
    answer = {"findings": parts[0]["findings"], "sizes": parts}
    assert [(each["line"], sizes) for each, sizes in _findings(answer)] == [(1, ()), (3, ()), (2, (2,))]


def test_signs_that_no_file_can_hold_are_left_out(vocabulary: Vocabulary) -> None:
    """A sheet of any text can be read again."""
    sheet = check_sheet("Row 1: k\x1b2, q\x00q, \ud800x.\n", vocabulary, Sheet())
    assert sheet.queries
    assert all(sign.isprintable() for query in sheet.queries for sign in query.printed + query.words + query.question)


@given(mended=st.lists(st.booleans(), min_size=12, max_size=12), above=st.integers(0, 5), numbered_anew=st.booleans())
@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_an_answer_never_moves_to_another_row(
    mended: list[bool], above: int, numbered_anew: bool, vocabulary: Vocabulary
) -> None:
    """Rows alike but for one word are mended, moved and numbered anew in any mixture."""
    words = [f"sk{letter}q" for letter in "abcdefghijkl"]
    first = check_sheet(rows_of(words, 0), vocabulary, Sheet())
    answered = replace(first, queries=tuple(replace(each, answer=each.words) for each in first.queries))
    left = ["skp" if done else word for word, done in zip(words, mended, strict=True)]
    text = "".join(f"A note, number {number}.\n" for number in range(above)) + rows_of(left, 1 if numbered_anew else 0)
    after = about(check_sheet(text, vocabulary, answered))
    assert [query.answer for query in after] == words
    assert [query.state for query in after] == ["settled" if done else "answered" for done in mended]


def rows_of(words: list[str], more: int) -> str:
    """Return a row for each word, numbered from 1 and so many more."""
    return "".join(f"Row {number + more}: K4, {word}, k4.\n" for number, word in enumerate(words, 1))
