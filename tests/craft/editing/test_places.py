"""Places in the words of a pattern, and questions that can be read aloud."""

from __future__ import annotations

import pytest

from counterpane.craft.editing import Places, Spot, question_of

TEXT = """Leaf

Border
Row 1 (RS): K2, *yo, k2tog;
rep from * to end. (12 sts)
Rows 2-4: Knit. Rep rows 1-4.

Setup row: K1.
"""
PLACES = Places(TEXT, [(4, "Border"), (6, "Border"), (8, None)])


@pytest.mark.parametrize(
    ("line", "column", "spot"),
    [
        (4, 18, Spot("Border", "1", "Row 1 (RS): K2, *yo, k2tog;", "yo")),
        (5, 20, Spot("Border", "1", "rep from * to end. (12 sts)", "(12 sts)")),
        (6, 11, Spot("Border", "2-4", "Rows 2-4: Knit. Rep rows 1-4.", "Knit")),
        (6, 17, Spot("Border", None, "Rows 2-4: Knit. Rep rows 1-4.", "Rep rows 1-4")),
        (8, 12, Spot(None, "setup", "Setup row: K1.", "K1")),
        (1, 1, Spot(None, None, "Leaf", "Leaf")),
        (99, 1, Spot(None, None, "", "")),
        (None, None, Spot(None, None, "", "")),
    ],
)
def test_a_place_is_named_by_section_row_line_and_words(line: int | None, column: int | None, spot: Spot) -> None:
    """A wrapped row is one row, and a repeat line behind a row is none."""
    assert PLACES.spot(line, column) == spot


def test_a_long_line_is_cut_and_an_empty_text_has_no_places() -> None:
    """Nothing of a text makes a sheet endless."""
    assert len(Places("Row 1: " + "k1, " * 500, []).spot(1, 8).printed) == 200
    assert Places("", []).spot(1, 1) == Spot(None, None, "", "")


@pytest.mark.parametrize(
    ("parts", "question"),
    [
        (("“skq” is not known.", "Did you mean “skp”?", (), "error"), "“skq” is not known: did you mean “skp”?"),
        (("It ends. The rest stays.", "Work on. Or stop.", (), "error"), "It ends; the rest stays: could you work on?"),
        (
            ("Two are left.", "Do it.", ("Row 1: K2.",), "error"),
            "Two are left: should it read “Row 1: K2”, or is something else meant?",
        ),
        (("No star.", "Put a star.", (), "note"), "No star: would you like to put a star?"),
        (("Row 2: a misprint.", "Look.", (), "error"), "Row 2: a misprint; could you look?"),
        (("It differs.", "Rows 1 to 2 agree.", (), "error"), "It differs: rows 1 to 2 agree; could you look at it?"),
        (("It is odd.", "", (), "warning"), "It is odd: is that as you mean it?"),
        (("", "Put a star.", (), "note"), ""),
    ],
)
def test_a_question_is_one_polite_sentence(parts: tuple[str, str, tuple[str, ...], str], question: str) -> None:
    """What was seen comes first, then what might be meant."""
    assert question_of(*parts) == question  # type: ignore[arg-type]


def test_a_question_about_some_sizes_names_them() -> None:
    """The numbers are those of the first one; sizes that are not named are as they should be."""
    for sizes, named in (((2,), "2"), ((2, 4), "2, and alike in size 4"), ((2, 4, 5), "2, and alike in sizes 4 and 5")):
        asked = question_of("Row 2 runs short.", "Shorten it.", (), "error", sizes)
        assert asked == f"In size {named}: Row 2 runs short: could you shorten it?"
