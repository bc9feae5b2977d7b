"""`counterpane check`: statuses, streams, the JSON of the contract, and what a person reads."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from cli.conftest import Type

SOUND = "Cast on 20 sts.\nRow 1 (RS): K2, *p3, k3; rep from * to end.\nRow 2: *P3, k3; rep from * to last 2 sts, p2.\n"
SHORT = "Row 1 (RS): *k3, p3; rep from * to last st, k2.\n"
HOSTILE = {
    "NUL": "Row 1: k2\0, p2\n",
    "brackets": "Row 1: " + "[" * 10_000 + "k1\n",
    "a long row": "Row 1: " + "k1, " * 5_000,
    "a huge number": "Row 1: k" + "9" * 400,
    "a terminal's escape": "\x1b[31mRow 1: k2",
}
KEYS = ["cast_on", "terms", "multiple", "fixed", "classes", "rows", "drift", "sizes", "findings"]


def test_sound_rows_end_with_0_and_the_multiple_in_words(typed: Type):
    """The multiple, the counts and the end are sentences, and nothing goes to standard error."""
    done = typed("check", "-", stdin=SOUND)
    assert (done.status, done.err) == (0, "")
    assert "The rows work over a multiple of 6 stitches plus 2, at least 8." in done.out
    assert "Nothing to correct." in done.out


def test_json_holds_the_members_of_the_contract_in_order(typed: Type):
    """The answer is one JSON document and nothing else."""
    done = typed("check", "-", "--json", stdin=SOUND)
    answer = json.loads(done.out)
    assert list(answer) == KEYS
    assert answer["multiple"] == {"of": 6, "plus": 2, "least": 8}
    assert [(row["before"], row["after"]) for row in answer["rows"]] == [(20, 20), (20, 20)]


def test_an_error_ends_with_1_and_a_caret_under_its_column(typed: Type):
    """The line is quoted, and the caret stands below the stitch that runs short."""
    done = typed("check", "-", stdin=SHORT)
    lines = done.out.splitlines()
    quoted = next(index for index, line in enumerate(lines) if "rep from *" in line)
    assert done.status == 1
    assert lines[quoted + 1].index("^") - 4 == SHORT.index("k2")


def test_the_cast_on_typed_beats_the_one_in_the_text(typed: Type):
    """The rows are worked from the number typed."""
    answer = json.loads(typed("check", "-", "--json", "--cast-on", "26", stdin=SOUND).out)
    assert (answer["cast_on"], answer["rows"][0]["before"]) == (26, 26)


def test_the_terms_typed_are_the_terms_of_the_answer(typed: Type):
    """Without them they follow from the text."""
    assert json.loads(typed("check", "-", "--json", "--terms", "uk", stdin=SOUND).out)["terms"] == "uk"


@pytest.mark.parametrize("count", ["0", "-4", "ten", "1.5", "9" * 19, "9" * 5000, "１２", ""])
def test_a_cast_on_that_is_no_count_ends_with_2(typed: Type, count: str):
    """The message says what is wanted."""
    done = typed("check", "-", f"--cast-on={count}", stdin=SOUND)
    assert (done.status, done.out) == (2, "")
    assert "a whole number from 1" in done.err


def test_an_empty_text_has_no_rows(typed: Type):
    """The error is a finding and not a failure of the command."""
    done = typed("check", "-", "--json", stdin="")
    assert [finding["rule"] for finding in json.loads(done.out)["findings"]] == ["no-rows"]
    assert done.status == 1


def test_a_missing_file_ends_with_3(typed: Type):
    """The name that was typed is in the message."""
    done = typed("check", "nowhere.txt")
    assert (done.status, done.out) == (3, "")
    assert "nowhere.txt: there is no such file" in done.err


def test_bytes_that_are_no_text_end_with_2(typed: Type, tmp_path: Path):
    """The place of the first such byte is in the message."""
    (tmp_path / "rows.txt").write_bytes(b"Row 1: k2\nRow 2: p\xff2\n")
    done = typed("check", "rows.txt")
    assert done.status == 2
    assert "rows.txt, line 2, column 9: not UTF-8 text" in done.err


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
def test_hostile_text_gets_an_answer_and_no_control_signs(typed: Type, text: str):
    """Whatever is in the text, the answer can be shown on a terminal."""
    done = typed("check", "-", stdin=text)
    assert done.status in (0, 1)
    assert done.err == ""
    assert not any(ord(sign) < 32 and sign != "\n" for sign in done.out)


def test_the_gravest_finding_is_the_one_to_read_about_first(typed: Type):
    """A note that comes before an error in the text is not what stops a knitter."""
    done = typed("check", "-", stdin="Row 1: K4, p4 to end.\nRow 2: K4, zzz.\n")
    assert "explain unknown-term` says more about the first error." in done.out


@pytest.mark.parametrize("text", ['[parts]\nbody = "waffle"\n', '{"parts": {"body": "waffle"}}', "[parts.body]\n"])
def test_a_plan_request_is_sent_to_its_own_command(typed: Type, text: str):
    """It holds no rows; the status stays that of the check."""
    done = typed("check", "-", stdin=text)
    assert (done.status, "`counterpane plan` reads" in done.err) == (1, True)


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("K2, *k2, p2; rep from * to last 3 sts, k2.", "In size 1, and alike in sizes 2 and 3: Row 1 leaves 1 stitch"),
        ("K2 (2, 2), *k2, p2; rep from * to last 2 (2, 3) sts, k2.", "In size 3: Row 1 leaves 1 stitch"),
        ("K2 (3, 3), *k2, p2; rep from * to last 2 sts, k2.", "In size 2, and alike in size 3: Row 1 begins with 80"),
        ("K2, *k2, p2; rep from * to end, kk2.", "“kk2” is not a word"),
    ],
)
def test_a_finding_of_several_sizes_is_told_once(typed: Type, row: str, said: str):
    """Where only its numbers differ it is told for the first size, and names the others."""
    done = typed("check", "-", stdin=f"Sizes: S (M, L)\n\nCast on 60 (80, 100) sts.\nRow 1: {row}\nBind off.\n")
    assert (said in " ".join(done.out.split()), done.out.count("\nerror ")) == (True, 1), done.out
