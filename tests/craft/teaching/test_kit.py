"""The pieces to prepare, and their yarn."""

from __future__ import annotations

from counterpane.craft.teaching import Kit
from counterpane.craft.teaching.kit import kit_of, letter
from counterpane.craft.yarn import Yarn, estimate
from craft.pattern.plans import vocabulary
from craft.teaching.samples import little


def _kit(rows: int = 8) -> Kit:
    return kit_of(little(rows=rows), (Yarn(),), ("Needles of 4 mm.",), vocabulary(), "us")


def test_the_pieces_stop_where_something_changes():
    """Cast-on, ends of parts, first rows of parts, one whole repeat, the bind-off halfway and done."""
    assert [piece.stops for piece in _kit().pieces] == [
        "after the cast-on",
        "Bottom border, after row 4",
        "Body, after row 1",
        "Body, after row 4",
        "Body, after row 8",
        "Top border, after row 1",
        "Top border, after row 4",
        "halfway along the bind-off",
        "after the bind-off",
    ]


def test_a_caption_tells_rows_stitches_and_the_next_row():
    """4 rows of border and 1 of waffle are 5, so the next is a WS row."""
    assert _kit().pieces[2].caption == (
        "5 rows in all: bottom border 4, body 1. 16 stitches on the needle; the next row is a WS row."
    )


def test_the_yarn_of_the_finished_piece_is_that_of_the_yarn_model():
    """With its two tails, as the estimate of the same plan has them."""
    whole = estimate(little(rows=8), (Yarn(),), vocabulary())
    assert _kit().pieces[-1].metres == whole.metres


def test_a_later_piece_takes_more_yarn():
    """Each has all that the one before has, and something more."""
    likely = [piece.metres.likely for piece in _kit().pieces if piece.metres]
    assert likely == sorted(set(likely))


def test_grams_are_not_known_without_a_thickness():
    """Nobody told the metres of a ball, and nothing is made up."""
    assert _kit().grams is None


def test_letters_go_on_after_z():
    """So that each piece of a long kit has its own."""
    assert [letter(place) for place in (0, 25, 26)] == ["A", "Z", "A2"]
