"""Properties of whole texts: places lie in the text, layout changes nothing, and one fault does not hide another."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

TEXTS = sorted((Path(__file__).parents[2] / "texts").glob("*.txt"))
PIECES = st.sampled_from(
    [
        "Row 1: ", "K2, ", "*yo, k2tog; ", "rep from * to end.", "\n", "\r\n", "\t", "½", "ﬁ", "\u00ad", "“Row”", "—",
        "Rep rows 1–4 ", "until 3 sts remain", "(95 sts)", "\ufeff", "🧶", "zork ", "Next 4 rows: ", "knit", "Border\n",
        "14\n", "| 1 | Knit |\n", "\\*", "Abbreviations\n", "k2tog: knit 2 together\n", "Bind off.", "as row 1",
        "re-\n", "pick up and knit 9 sts\n", "\u2028", "Row IV: ", "**", "１２", "Cast on 20 sts.",
    ]
)  # fmt: skip
LINE_END = "\r\n|[\n\r\u2028\u2029\x0b\x0c]"


def shape(answer: dict[str, Any]) -> list[tuple[Any, ...]]:
    """Return what is said of each row but its line."""
    return [(row["label"], row["section"], row["side"], row["before"], row["after"]) for row in answer["rows"]]


@settings(max_examples=150, deadline=None)
@given(text=st.lists(PIECES, max_size=40).map("".join) | st.text(max_size=80))
def test_every_place_lies_in_the_text_as_given(text: str, vocabulary: Vocabulary) -> None:
    """Whatever the text is, rows and findings have lines of it, and columns within their lines or just behind."""
    lines = re.split(LINE_END, text.removeprefix("\ufeff"))
    answer = check_text(text, vocabulary)
    assert all(0 < row["line"] <= len(lines) for row in answer["rows"])
    for found in answer["findings"]:
        assert 0 < found["line"] <= len(lines)
        assert 0 < found["column"] <= len(lines[found["line"] - 1]) + 1


@pytest.mark.parametrize("path", TEXTS, ids=lambda path: path.stem)
def test_line_ends_and_tabs_change_nothing(path: Path, vocabulary: Vocabulary) -> None:
    """CRLF, a BOM, and tabs in the place of blanks give the same answer, places and all."""
    text = path.read_text(encoding="utf-8")
    other = "\ufeff" + re.sub(r"(?<=[a-z,]) (?=[a-z])", "\t", text).replace("\n", "\r\n")
    assert check_text(other, vocabulary)["rows"] == check_text(text, vocabulary)["rows"]


def cuts() -> list[tuple[str, str, int]]:
    """Return each text with each of its rows and each place behind a comma of it."""
    label = re.compile(r"(?:Rows?|Rnd|Next row|\d\w\w row)\b.*: ?.*, ")
    texts = [path.read_text(encoding="utf-8") for path in TEXTS]
    rows = [(text, line) for text in texts for line in text.split("\n") if label.match(line)]
    return [(text, row, match.end()) for text, row in rows for match in re.finditer(", ", row)]


CUTS = cuts()


@settings(max_examples=60, deadline=None)
@given(index=st.integers(0, len(CUTS) - 1))
def test_a_wrap_behind_any_comma_gives_the_same_rows(index: int, vocabulary: Vocabulary) -> None:
    """A row cut behind a comma goes on in the next line."""
    text, row, at = CUTS[index]
    wrapped = text.replace(row, f"{row[: at - 1]}\n{row[at:]}", 1)
    assert shape(check_text(wrapped, vocabulary)) == shape(check_text(text, vocabulary))


@pytest.mark.parametrize("path", TEXTS, ids=lambda path: path.stem)
def test_a_faulty_row_at_the_end_adds_findings_on_that_row_alone(path: Path, vocabulary: Vocabulary) -> None:
    """What was found before is found still, and the rows before it keep their counts."""
    text = path.read_text(encoding="utf-8").rstrip("\n")
    sound, faulty = check_text(text, vocabulary), check_text(f"{text}\n\nRow 99: K2, zork, k2tgo.\n", vocabulary)
    last = text.count("\n") + 3
    errors = [found["line"] for found in faulty["findings"] if found["severity"] == "error"]
    assert set(errors) == {last}
    assert [row[3:] for row in shape(faulty)][: len(shape(sound))] == [row[3:] for row in shape(sound)]


def test_every_faulty_row_has_its_own_findings(vocabulary: Vocabulary) -> None:
    """A row that cannot be read does not hide the fault of another."""
    text = "\n".join(f"Row {number}: K2, zork{number}, p2." for number in range(1, 9))
    found = check_text(text, vocabulary)["findings"]
    assert [one["line"] for one in found if one["rule"] == "unknown-term"] == list(range(1, 9))
