"""`counterpane grade`: a range of sizes as a table and as one pattern."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from cli.conftest import Type

REQUEST: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": "waffle"},
    "size": {"width_cm": 70, "length_cm": 90},
}


def test_a_person_reads_every_size_and_the_counts_in_brackets(typed: Type) -> None:
    """The size of the request itself is left aside."""
    done = typed("grade", "-", "--sizes", "preemie,large=90x120", stdin=json.dumps(REQUEST))
    sizes = [line.split() for line in done.out.splitlines() if line.startswith(("preemie", "large"))]
    assert done.status == 0
    assert f"Cast on {sizes[0][1]} ({sizes[1][1]}) sts." in done.out


def test_one_size_has_a_table_too(typed: Type) -> None:
    """Without brackets: there is nothing to put in them."""
    done = typed("grade", "-", "--sizes", "pram", stdin=json.dumps(REQUEST))
    (line,) = [line.split() for line in done.out.splitlines() if line.startswith("pram")]
    assert (done.status, "in 1 size" in done.out) == (0, True)
    assert f"Cast on {line[1]} sts." in done.out


def test_the_pattern_goes_to_standard_output_or_into_a_file(typed: Type, tmp_path: Path) -> None:
    """The same text either way."""
    sizes = ("--sizes", "preemie,pram", "--borders", "in-proportion", "--sample", "2")
    text = typed("grade", "-", *sizes, "--text", stdin=json.dumps(REQUEST)).out
    done = typed("grade", "-", *sizes, "--out", str(tmp_path / "range.txt"), stdin=json.dumps(REQUEST))
    assert (done.out, (tmp_path / "range.txt").read_text("utf-8")) == ("", text)
    assert "Sizes: preemie (pram)" in text


def test_a_range_is_written_as_text_markdown_or_json(typed: Type, tmp_path: Path) -> None:
    """The text of the data is the text itself; --text and --json say the same in short."""
    grade = ("grade", "-", "--sizes", "preemie,pram")
    given = json.dumps(REQUEST)
    data = json.loads(typed(*grade, "--as", "json", stdin=given).out)
    assert typed(*grade, "--as", "text", stdin=given).out == typed(*grade, "--text", stdin=given).out == data["text"]
    assert json.loads(typed(*grade, "--json", stdin=given).out) == data
    assert "### Sizes: preemie (pram)" in typed(*grade, "--as", "markdown", stdin=given).out
    typed(*grade, "--as", "json", "--out", "range.json", stdin=given)
    assert json.loads((tmp_path / "range.json").read_text("utf-8")) == data


def test_a_refusal_as_json_is_a_problem_document(typed: Type, tmp_path: Path) -> None:
    """It goes to standard output, and no file is written."""
    done = typed("grade", "-", "--sizes", "pram,tiny=2x2", "--as", "json", "--out", "x.json", stdin=json.dumps(REQUEST))
    assert (done.status, json.loads(done.out)["status"]) == (1, 422)
    assert not (tmp_path / "x.json").exists()


def test_a_size_that_cannot_be_planned_ends_with_1(typed: Type) -> None:
    """And says which it is."""
    done = typed("grade", "-", "--sizes", "pram,tiny=2x2", stdin=json.dumps(REQUEST))
    assert done.status == 1
    assert "In size tiny" in done.out


def test_sizes_that_are_none_end_with_2(typed: Type) -> None:
    """With the place of each."""
    for sizes, place in (("", "/sizes/0/named"), ("pram,pramm", "/sizes/1/named"), ("pram,pram", "/sizes/1/name")):
        done = typed("grade", "-", "--sizes", sizes, stdin=json.dumps(REQUEST))
        assert (done.status, done.out) == (2, "")
        assert place in done.err
