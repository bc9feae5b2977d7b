"""Texts and documents that cannot be read end with status 2 or 3 and say where and what to do."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from counterpane.cli.documents import document_of
from counterpane.cli.endings import Missing, Unreadable
from counterpane.cli.inputs import MOST_BYTES, Given, read_text


def test_a_byte_order_mark_is_not_part_of_the_text(tmp_path: Path):
    """The mark is remembered, so that a corrected text can carry it again."""
    (tmp_path / "rows.txt").write_bytes(b"\xef\xbb\xbfRow 1: k2\r\n")
    given = read_text(str(tmp_path / "rows.txt"))
    assert (given.text, given.marked) == ("Row 1: k2\r\n", True)


def test_the_first_byte_that_is_not_utf8_is_named_by_line_and_column(tmp_path: Path):
    """CRLF is one line end and a column is one code point."""
    (tmp_path / "rows.txt").write_bytes("Row 1: k2\r\né".encode() + b"\xe9k")
    with pytest.raises(Unreadable, match="line 2, column 2: not UTF-8 text; the byte 0xe9"):
        read_text(str(tmp_path / "rows.txt"))


def test_wide_text_is_recognised(tmp_path: Path):
    """UTF-16 is the likeliest wrong encoding and is named."""
    (tmp_path / "rows.txt").write_text("Row 1: k2", "utf-16")
    with pytest.raises(Unreadable, match="looks like UTF-16"):
        read_text(str(tmp_path / "rows.txt"))


@pytest.mark.parametrize("more", [0, 1])
def test_a_text_of_a_million_bytes_is_read_and_one_more_is_not(tmp_path: Path, more: int):
    """The bound stands on the byte."""
    (tmp_path / "rows.txt").write_bytes(b"k" * (MOST_BYTES + more))
    if more:
        with pytest.raises(Unreadable, match="more than 1,000,000 bytes"):
            read_text(str(tmp_path / "rows.txt"))
    else:
        assert len(read_text(str(tmp_path / "rows.txt")).text) == MOST_BYTES


@pytest.mark.parametrize(("name", "kind"), [("none.txt", Missing), (".", Unreadable), ("a\0b", Unreadable)])
def test_what_is_no_file_is_refused_by_its_kind(name: str, kind: type[Exception]):
    """A missing file is told from a folder and from a name that cannot be."""
    with pytest.raises(kind):
        read_text(name)


@pytest.mark.parametrize("text", ['{"size": {"width_cm": 69.90}}', "[size]\nwidth_cm = 69.90\n"])
def test_numbers_keep_their_decimal_text(text: str):
    """69.90 is not the nearest binary fraction."""
    assert str(document_of(Given("standard input", text))["size"]["width_cm"]) == str(Decimal("69.90"))


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("a.json", '{"a": 1,\n "b": }', "a.json, line 2, column 7: not JSON"),
        ("a.json", '{"a": NaN}', "NaN is not a number"),
        ("a.json", '{"a": 1, "a": 2}', "'a' stands there twice"),
        ("a.json", "[1]", "an object with fields"),
        ("a.json", '{"a": ' + "9" * 19 + "}", "more than 18 digits"),
        ("a.json", '{"a": ' + "9" * 9999 + "}", "more than 18 digits"),
        ("a.json", '{"a":' * 9999 + "1" + "}" * 9999, "more than 32 brackets"),
        ("a.json", '{"a":' * 40 + "1" + "}" * 40, "more than 32 brackets"),
        ("a.toml", "a = 1\nb = = 2\n", "a.toml, line 2, column 5: not TOML"),
        ("a.toml", "a = [", "a.toml, line 1, column 6: not TOML"),
        ("a.toml", "a = " + "[" * 9999, "a.toml"),
        ("a.toml", f"a = {10**18}", "more than 18 digits"),
    ],
)
def test_a_document_that_cannot_be_read_says_where(name: str, text: str, said: str):
    """Line and column where the format has them, else the field."""
    with pytest.raises(Unreadable) as refused:
        document_of(Given(name, text))
    assert said in str(refused.value)
    assert refused.value.hint


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("body = waffle", 'body = "waffle"'),
        ("body = “waffle”", "straight double quotes"),
        ('body: "waffle"', "Write = between"),
        ("stitches = 21,5", "with a point, as in 21.5"),
        ("a = = 2", "Correct it there"),
    ],
)
def test_a_slip_of_the_pen_in_toml_says_what_to_write(line: str, said: str):
    """Those who write a plan by hand need not know the format."""
    with pytest.raises(Unreadable) as refused:
        document_of(Given("a.toml", f"[parts]\n{line}\n"))
    assert said in refused.value.hint
