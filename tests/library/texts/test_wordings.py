"""Texts said in other words: they check to the same, and nothing that is printed gets lost."""

from __future__ import annotations

from itertools import product
from typing import Any, get_args

import pytest

from counterpane.craft.component import Component
from counterpane.craft.rows.say import WordsKind
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library.texts.checks import check_text
from counterpane.library.texts.wordings import Wanted, say_text
from counterpane.seeding import load_components

STARTERS = [(component, index) for component in load_components() for index in range(len(component.versions))]
MANNERS = list(product(get_args(Terms), get_args(WordsKind)))
FROST = """Frost blanket
Tension: 20 sts and 28 rows to 10 cm in St st. Even tension of the yarn matters.
Cast on 20 sts. (multiple of 6 sts + 2)

Row 1 (RS): With A, k2, *yfwd, k2tog, p2tog, yrn, p1, k1; rep from * to end.
Row 2 and all WS rows: K2 (edge sts), p to last 2 sts,
k2.
Row 3: K2, *p3, k3; rep from * to end. (20 sts)
Row 4: As row 2.
Rep rows 1-4 until piece measures 60 cm, ending with a WS row.

Border
Row 1: K5, moss st to last 5 sts, k5.
Knit 4 rows.
Cast off loosely.
"""


def said(text: str, vocabulary: Vocabulary, **wanted: Any) -> dict[str, Any]:
    """Say a text."""
    return say_text(text, vocabulary, Wanted(**wanted))


def facts(text: str, vocabulary: Vocabulary, terms: Terms | None = None) -> dict[str, Any]:
    """Return what a check derives from a text, without the lines and the findings."""
    answer = check_text(text, vocabulary, None, terms)
    rows = [{name: value for name, value in row.items() if name != "line"} for row in answer["rows"]]
    names = ("cast_on", "multiple", "fixed", "classes", "drift")
    return {name: answer[name] for name in names} | {"rows": rows}


@pytest.mark.parametrize(("component", "index"), STARTERS, ids=lambda part: getattr(part, "slug", part))
def test_a_starter_said_in_any_words_checks_to_the_same(
    component: Component, index: int, vocabulary: Vocabulary
) -> None:
    """Rows, counts and multiple are those of the text, in both terms, abbreviated and in full, also written out."""
    text = component.versions[index].rows or ""
    meant = facts(text, vocabulary)
    for terms, words in MANNERS:
        answer = said(text, vocabulary, terms=terms, words=words)
        assert facts(answer["text"], vocabulary, terms) == meant
        written = said(text, vocabulary, terms=terms, words=words, count=meant["cast_on"])
        assert facts(written["text"], vocabulary, terms) == meant


@pytest.mark.parametrize("words", get_args(WordsKind))
def test_a_text_goes_to_other_terms_and_back(words: WordsKind, vocabulary: Vocabulary) -> None:
    """UK to US to UK is the identity, in the rows and between them."""
    there = said(FROST, vocabulary, terms="us", words=words)["text"]
    back = said(there, vocabulary, terms="uk", words=words)["text"]
    assert back == said(FROST, vocabulary, terms="uk", words=words)["text"]
    assert said(back, vocabulary, terms="us", words=words)["text"] == there


def test_everything_keeps_its_place(vocabulary: Vocabulary) -> None:
    """Labels, sides, statements, repeat lines, headings, yarns, notes and fabrics stand where they stood."""
    assert said(FROST, vocabulary, terms="us")["text"] == FROST.replace("yfwd", "yo").replace("yrn", "yo").replace(
        "Tension:", "Gauge:"
    ).replace("2 sts,\nk2", "2 sts, k2").replace("With A", "With A").replace("Cast off", "Bind off")


def test_full_words_reach_between_the_rows(vocabulary: Vocabulary) -> None:
    """Labels, counts and repeat lines are spelt out as well; a fabric's own name stays."""
    text = said(FROST, vocabulary, words="full")["text"]
    for line in (
        "Row 2 and all wrong side rows: Knit 2 (edge stitches), purl to the last 2 stitches, knit 2.",
        "Row 3: Knit 2, *purl 3, knit 3; repeat from * to the end. (20 stitches)",
        "Row 4: As row 2.",
        "Repeat rows 1-4 until piece measures 60 cm, ending with a wrong side row.",
        "Row 1: Knit 5, work in moss stitch to the last 5 stitches, knit 5.",
    ):
        assert line in text.splitlines()
    assert "in St st." in text


def test_a_count_writes_the_repeats_out_beneath(vocabulary: Vocabulary) -> None:
    """Under a row with a repeat stands the same at its count, and in the rows of the answer as well."""
    answer = said("Row 1: K2, *p3, k2; rep from * to last st, k1.\nRow 2: Purl.\n", vocabulary, count=133)
    assert answer["text"].splitlines()[1] == "With 133 sts: k2, [p3, k2] 26 times, k1."
    first = answer["rows"][0]
    assert (first["written_out"], first["repeats"], first["after"]) == ("k2, [p3, k2] 26 times, k1", [26], 133)


def test_rows_of_one_line_are_written_out_once_for_each_count(vocabulary: Vocabulary) -> None:
    """Where the count changes from one row to the next, the row is named."""
    text = "Cast on 10 sts.\nRows 1 and 3: K1, yo, k to end.\nRow 2: Purl.\n"
    lines = said(text, vocabulary, count=10)["text"].splitlines()
    assert lines[2:4] == ["With 10 sts: k1, yo, k9.", "With 11 sts (row 3): k1, yo, k10."]


def test_a_short_row_is_told_stitch_by_stitch(vocabulary: Vocabulary) -> None:
    """Groups go where a beginner wants every stitch."""
    answer = said("Row 1: *K2, p2; rep from * to end.", vocabulary, count=8, single=True)
    assert answer["rows"][0]["written_out"] == "k2, p2, k2, p2"


def test_a_count_that_does_not_work_is_a_finding_with_the_nearest(vocabulary: Vocabulary) -> None:
    """The row is said, nothing is written out, and the hint names counts that would do."""
    answer = said("Row 1: K2, *p3, k2; rep from * to end.", vocabulary, count=133)
    finding = answer["findings"][0]
    assert (finding["rule"], answer["rows"][0]["written_out"]) == ("repeat-does-not-fit", None)
    assert "132" in finding["hint"] and "137" in finding["hint"]


def test_what_cannot_be_read_stays_as_printed(vocabulary: Vocabulary) -> None:
    """The other rows are said all the same, and a finding names the place."""
    answer = said("Row 1: K4, zz3, k2.\nRow 2: K1, yo, k2tog.\n", vocabulary, terms="uk")
    assert answer["text"] == "Row 1: K4, zz3, k2.\nRow 2: K1, yfwd, k2tog.\n"
    assert [(each["rule"], each["line"]) for each in answer["findings"]] == [("unknown-term", 1)]
    assert answer["rows"][0]["words"] == "K4, zz3, k2"


def test_a_row_in_several_sizes_stays_as_printed(vocabulary: Vocabulary) -> None:
    """The tree of one size does not hold the numbers of the others, and the row says why it is kept."""
    text = "Cast on 24 (30) sts.\nRow 1: K1, yo, k2tog, k to end.\nRow 2: P to last 4 (5) sts, k4 (5).\n"
    answer = said(text, vocabulary, terms="uk", words="full")
    lines = answer["text"].splitlines()
    assert lines[1:] == [
        "Row 1: Knit 1, yarn forward, knit 2 stitches together, knit to the end.",
        "Row 2: P to last 4 (5) sts, k4 (5).",
    ]
    assert [row["kept"] for row in answer["rows"]] == [None, "it has a number for each size"]


def test_rows_without_a_known_count_have_none(vocabulary: Vocabulary) -> None:
    """Neither the request nor the text says how many stitches there are."""
    row = said("Row 1: *K2, p2; rep from * to end.", vocabulary)["rows"][0]
    assert (row["before"], row["after"], row["written_out"], row["repeats"]) == (None, None, None, [])


def test_a_table_has_a_line_for_each_row(vocabulary: Vocabulary) -> None:
    """Rows that one line stands for, and rows that take another's words, are all said."""
    table = said("Cast on 8 sts.\nRow 1 (RS): *K2, p2; rep from * to end.\nRow 2: As row 1.", vocabulary, form="table")
    assert table["text"].splitlines() == [
        "Row  Side  Words                       Repeats  Before  After",
        "───  ────  ──────────────────────────  ───────  ──────  ─────",
        "1    RS    *k2, p2; rep from * to end  2             8      8",
        "2    WS    *k2, p2; rep from * to end  2             8      8",
    ]


def test_a_table_in_markdown_shows_its_stars(vocabulary: Vocabulary) -> None:
    """A star of a row is no layout."""
    table = said("Row 1: *[K2, p2] twice; rep from * to end.", vocabulary, form="markdown")["text"]
    assert table.splitlines()[2] == "| 1 | \\*\\[k2, p2\\] twice; rep from \\* to end |"


def test_a_wide_table_is_wrapped_to_its_page(vocabulary: Vocabulary) -> None:
    """The widest column gives way, and no line is longer than the page."""
    text = "Row 1: " + "k2, *p3, k2; rep from * to last 5 sts, p3, k2, " * 6
    table = say_text(text, vocabulary, Wanted(form="table"), page=80)["text"]
    assert max(map(len, table.splitlines())) <= 80 and len(table.splitlines()) > 3


def test_a_row_after_a_turn_is_written_out_over_the_stitches_worked(vocabulary: Vocabulary) -> None:
    """After a repeat line nobody knows where the turn was, and nothing is written out."""
    text = "Cast on 20 sts.\nRow 1: K12, turn.\nRow 2: Sl 1, p to end.\nRep rows 1-2 twice more.\nRow 3: Knit.\n"
    rows = said(text, vocabulary)["rows"]
    assert [row["written_out"] for row in rows] == ["k12, turn", "sl 1, p11", None]


def test_an_empty_text_is_said_as_it_is(vocabulary: Vocabulary) -> None:
    """There is nothing to say, and the finding says so."""
    for form in ("lines", "table", "markdown"):
        answer = said("", vocabulary, form=form)
        assert (answer["text"], [each["rule"] for each in answer["findings"]]) == ("", ["no-rows"])
