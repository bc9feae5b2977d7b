"""One size out of a pattern of several, asked for by number, cast-on or name."""

from __future__ import annotations

import pytest

from counterpane.library.texts.extracts import NoSuchSize, extract_text

TEXT = (
    "Sizes: Preemie (Newborn, Toddler)\nCast on 95 (113, 131) sts.\n"
    "Row 1 (RS): K4 (5, 6), *p1, k1; rep from * to last 3 (4, 5) sts, k0 (1, 2), p3.\n"
)
NEWBORN = "Sizes: Newborn\nCast on 113 sts.\nRow 1 (RS): K5, *p1, k1; rep from * to last 4 sts, k1, p3.\n"


@pytest.mark.parametrize("wanted", [2, "2", "113", "Newborn", " newborn "])
def test_a_size_is_asked_for_by_number_cast_on_or_name(wanted: int | str) -> None:
    """All of them mean the same size."""
    answer = extract_text(TEXT, wanted)
    assert (answer["text"], answer["size"]) == (NEWBORN, 2)


def test_the_names_are_given_as_printed() -> None:
    """Capitals and all."""
    assert extract_text(TEXT, 1)["names"] == ["Preemie", "Newborn", "Toddler"]


@pytest.mark.parametrize("wanted", ["0", "4", "96", "baby", "", "9" * 30])
def test_a_size_that_is_not_there_is_refused_with_those_that_are(wanted: str) -> None:
    """Nothing is guessed."""
    with pytest.raises(NoSuchSize, match="preemie, newborn, toddler"):
        extract_text(TEXT, wanted)


def test_a_text_in_one_size_is_its_own_extract() -> None:
    """Size 1 is the text, letter by letter, and there is no other."""
    text = "\tCast on 20 sts.\r\nRow 1: K20.  \r\n"
    assert extract_text(text, 1) == {"text": text, "size": 1, "names": [], "left": []}
    with pytest.raises(NoSuchSize, match="one size"):
        extract_text(text, 2)


def test_line_ends_and_odd_letters_stay() -> None:
    """What is not a list keeps its dashes, capitals and line ends."""
    text = "Cast on 9 (10) sts.\r\n\u00adRow 1 – Knit “all” 9 (10)\u00a0sts.\r\n\r\nBind off."
    assert extract_text(text, 2)["text"] == "Cast on 10 sts.\r\n\u00adRow 1 – Knit “all” 10\u00a0sts.\r\n\r\nBind off."


def test_a_list_of_another_length_stays_and_is_told() -> None:
    """Which of its numbers is meant cannot be known."""
    answer = extract_text(TEXT + "Row 2: K4 (5), p to end.\n", 2)
    assert answer["text"].endswith("Row 2: K4 (5), p to end.\n")
    assert answer["left"] == [{"line": 4, "column": 9}]
