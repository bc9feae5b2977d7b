"""`counterpane say`: the forms, the streams and the statuses."""

from __future__ import annotations

import json

from cli.conftest import Type

ROWS = "Cast on 8 sts.\nRow 1 (RS): *k2, yo, k2tog; rep from * to end.\nRow 2: Purl.\n"


def test_a_text_is_said_in_the_terms_asked_for(typed: Type):
    """The text goes to standard output, and nothing else anywhere."""
    done = typed("say", "-", "--terms", "uk", stdin=ROWS)
    assert (done.status, done.err) == (0, "")
    assert done.out == ROWS.replace("yo", "yfwd")


def test_full_words_with_a_count_are_for_a_beginner(typed: Type):
    """Every repeat stands there twice: as it is printed, and as often as it is worked."""
    lines = typed("say", "-", "--words", "full", "--count", "12", stdin=ROWS).out.splitlines()
    assert lines[1].endswith("*knit 2, yarn over, knit 2 stitches together; repeat from * to the end.")
    assert lines[2] == "With 12 stitches: [knit 2, yarn over, knit 2 stitches together] 3 times."


def test_a_table_is_as_wide_as_a_page(typed: Type):
    """Words wrap inside their column."""
    table = typed("say", "-", "--as", "table", "--count", "40", stdin=ROWS).out
    assert "Written out" in table and max(map(len, table.splitlines())) <= 100


def test_what_cannot_be_read_is_told_beside_the_text(typed: Type):
    """The row stays as printed, the finding goes to standard error, and the status is 1."""
    done = typed("say", "-", stdin="Row 1: K2, zz3.\n")
    assert (done.status, done.out) == (1, "Row 1: K2, zz3.\n")
    assert "standard input:1:12: error:" in done.err and "(unknown-term)" in done.err


def test_json_holds_the_answer_of_the_api(typed: Type):
    """One document with the members that `POST /v1/wordings` gives."""
    answer = json.loads(typed("say", "-", "--json", stdin=ROWS).out)
    assert list(answer) == ["terms", "rows", "text", "findings"]
    assert answer["rows"][0]["repeats"] == [2]
