"""Corrections are the smallest edits that let the whole text go on."""

from __future__ import annotations

import pytest

from counterpane.craft.stitches import Vocabulary
from counterpane.library.texts.checks import check_text


def corrections(text: str, vocabulary: Vocabulary) -> list[str]:
    """Return the corrections of the first error that has any."""
    findings = check_text(text, vocabulary)["findings"]
    return next((f["corrections"] for f in findings if f["corrections"] and f["severity"] == "error"), [])


@pytest.mark.parametrize(
    ("row", "first"),
    [
        ("K8, p4.", "Row 1: K8, p3."),
        ("K8, p2.", "Row 1: K8, p3."),
        ("[K2, p2] twice, k2.", "Row 1: [K2, p2] twice, k3."),
        ("*K2, p2; rep from * to last 4 sts, k4.", "Row 1: *K2, p2; rep from * to last 3 sts, k3."),
    ],
)
def test_the_smallest_edit_comes_first(row: str, first: str, vocabulary: Vocabulary) -> None:
    """One number is changed, by as little as will do."""
    found = corrections(f"Cast on 11 sts.\nRow 1: {row}", vocabulary)
    assert found and check_text(f"Cast on 11 sts.\n{found[0]}", vocabulary)["findings"] == []
    assert first in found


def test_a_correction_suits_the_rows_behind_it(vocabulary: Vocabulary) -> None:
    """An edit that only moves the trouble to the next row is not offered."""
    text = "Cast on 8 sts.\nRow 1: *K2, p1; rep from * to end.\nRow 2: *K2, p2; rep from * to end."
    for correction in corrections(text, vocabulary):
        assert check_text(text.replace("Row 1: *K2, p1; rep from * to end.", correction), vocabulary)["findings"] == []


def test_a_line_for_several_rows_is_corrected_in_all_of_them(vocabulary: Vocabulary) -> None:
    """The edit is worked wherever the line stands."""
    text = "Cast on 11 sts.\nRows 1-4: K8, p4."
    assert corrections(text, vocabulary)


def test_a_printed_count_is_kept_by_a_correction(vocabulary: Vocabulary) -> None:
    """An edit that makes the row fit must leave the count printed after it."""
    text = "Cast on 10 sts.\nRow 1: K1, yo, k8. (11 sts)"
    assert corrections(text, vocabulary)[0] == "Row 1: K1, yo, k9. (11 sts)"


@pytest.mark.parametrize(("word", "hint"), [("skq", "Did you mean"), ("the", "Write the"), ("Other", "Write the")])
def test_a_word_of_any_sentence_is_no_misspelt_stitch(word: str, hint: str, vocabulary: Vocabulary) -> None:
    """What is near a stitch by its letters is asked about; "the" is not."""
    findings = check_text(f"Cast on 4 sts.\nRow 1: K2, {word}, k1.", vocabulary)["findings"]
    assert [each["hint"].startswith(hint) for each in findings if each["rule"] == "unknown-term"] == [True]
