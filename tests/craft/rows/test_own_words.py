"""Words that a text explains by known stitches are counted as these; all others stay unknown."""

from __future__ import annotations

import pytest

from counterpane.craft.rows.instructions import read_text
from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text

ROWS = "Cast on 21 sts.\nRow 1: *K1, zig, {word}; rep from * to end.\nRow 2: Purl."


def counts(text: str, vocabulary: Vocabulary) -> list[tuple[object, object]]:
    """Return what each row begins and ends with."""
    rows = check_text(text, vocabulary)["rows"]
    assert isinstance(rows, list)
    return [(row["before"], row["after"]) for row in rows]


@pytest.mark.parametrize(
    ("explained", "word"),
    [
        ("zig = yo, k2tog\nmk = (k1, p1, k1) in next st", "sl 1, k2tog, psso, mk"),
        ("zig: yo, k2tog\nmk: make knot: (k1, p1, k1) in next st", "sl 1, k2tog, psso, mk"),
        ("zig: yo, k2tog\ndk: k3tog\nmk: k1, p1, k1", "dk, mk in next st"),
    ],
)
def test_an_explained_word_takes_the_stitches_of_its_explanation(
    explained: str, word: str, vocabulary: Vocabulary
) -> None:
    """By hand: k1 and yo, k2tog take 3 and leave 3; three into one, and one into three: 7 of 21 go on as 7."""
    text = f"Abbreviations\n{explained}\n\n{ROWS.format(word=word)}"
    assert counts(text, vocabulary) == [(21, 21), (21, 21)]


@pytest.mark.parametrize("words", ["[zig] 3 times", "zig 3 times", "zig, zig twice"])
def test_an_explained_word_is_repeated_as_any_other(words: str, vocabulary: Vocabulary) -> None:
    """Three times yo, k2tog is 6 stitches of 8."""
    text = f"zig = yo, k2tog\nCast on 8 sts.\nRow 1: K1, {words}, k1."
    assert counts(text, vocabulary) == [(8, 8)]


def test_the_place_of_a_word_is_that_in_the_row(vocabulary: Vocabulary) -> None:
    """A row that runs short in an explained word says so there."""
    answer = check_text("zig = yo, k2tog\nCast on 2 sts.\nRow 1: K1, zig.", vocabulary)
    assert [(each["rule"], each["line"]) for each in answer["findings"] if each["severity"] == "error"] == [
        ("row-runs-short", 3)
    ]


@pytest.mark.parametrize(
    "explained",
    ["zig = work as the chart shows", "zig = *k1, p1; rep from * to end", "zig = yo, zag", "zig = k to end"],
)
def test_an_explanation_that_cannot_be_counted_leaves_the_word_unknown(explained: str, vocabulary: Vocabulary) -> None:
    """Nothing is guessed: no stitches, as many as the row has, another unknown word."""
    faults = read_text(f"{explained}\nCast on 8 sts.\nRow 1: K1, zig, k1.", vocabulary).faults
    assert [(fault.rule, fault.word) for fault in faults] == [("unknown-term", "zig")]


@pytest.mark.parametrize("name", ["k2tog", "rep", "sts", "k", "yo"])
def test_a_word_of_the_trade_keeps_its_meaning(name: str, vocabulary: Vocabulary) -> None:
    """What a text says of a known word is for the rule that compares them, and changes no count."""
    row = "Cast on 8 sts.\nRow 1: *K1, yo, k2tog, k1; rep from * to last 0 sts."
    plain, explained = (read_text(text, vocabulary).rows for text in (row, f"{name} = k1, p1, k1\n{row}"))
    assert [each.parts for each in plain] == [each.parts for each in explained]


def test_a_text_read_again_with_other_explanations_is_counted_by_these(vocabulary: Vocabulary) -> None:
    """The same rows under another explanation are other rows."""
    rows = "\nCast on 8 sts.\nRow 1: K1, zig, k to end."
    assert counts(f"zig = yo, k2tog{rows}", vocabulary) == [(8, 8)]
    assert counts(f"zig = k2tog{rows}", vocabulary) == [(8, 7)]
