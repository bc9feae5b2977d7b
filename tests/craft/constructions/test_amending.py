"""Changes of a request: what a correction points at is changed, and what is not there cannot be."""

from __future__ import annotations

from dataclasses import replace

import pytest

from counterpane.craft.constructions.amending import amended
from counterpane.craft.findings import Correction
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import plan_request_of

from .asking import Starters, asked, content


@pytest.mark.parametrize(
    ("pointer", "value"),
    [
        ("/colour", "red"),
        ("/parts/body/colour", 3),
        ("/parts/sides/stitches", 5),
        ("/parts/sides", None),
    ],
)
def test_what_a_request_does_not_hold_cannot_be_changed(
    pointer: str, value: int | str | None, starters: Starters, vocabulary: Vocabulary
) -> None:
    """A request without side borders has no stitches of them to change, and none has a colour."""
    request = asked(starters, vocabulary, "garter", sides=None)
    with pytest.raises(KeyError):
        amended(request, Correction(pointer, value, "a reason"))


def test_borders_worked_outwards_are_changed_by_their_rows(starters: Starters, vocabulary: Vocabulary) -> None:
    """A picked-up border has rows; in a piece worked at once it becomes the side border."""
    sides = {"component": "garter-border", "rows": 8}
    request = plan_request_of(
        {**content("garter", sides=sides), "construction": "sides-picked-up"}, starters.__getitem__, vocabulary
    )
    wider = amended(request, Correction("/parts/sides/rows", 12, "a reason"))
    assert wider.picked == replace(request.picked, rows=12)
    at_once = amended(request, Correction("/construction", "one-piece", "a reason"))
    assert (at_once.picked, at_once.sides) == (None, request.picked)
