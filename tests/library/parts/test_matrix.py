"""The matrix of bodies against other parts, as JSON, as text and as a picture."""

from __future__ import annotations

from typing import Any
from xml.etree import ElementTree

import pytest

from counterpane.library.errors import NotFound, Refused
from counterpane.library.parts.matrix import matrix, tally
from counterpane.library.parts.matrix_picture import as_svg
from counterpane.library.parts.matrix_text import as_text
from counterpane.library.services import Services
from counterpane.wiring import open_library


@pytest.fixture(scope="module")
def services() -> Services:
    """Return a library with the starters, which no test changes."""
    return open_library()


def cell(answer: dict[str, Any], slug: str, place: str) -> dict[str, Any]:
    """Return the cell of the one body against a part in a place."""
    columns = [(other["slug"], other["place"]) for other in answer["others"]]
    found: dict[str, Any] = answer["rows"][0][columns.index((slug, place))]
    return found


def test_the_worked_example_of_waffle_and_garter_rib(services: Services) -> None:
    """Waffle 3n + 1 under six stitches of border: of its counts a garter rib 4n + 2 takes 12n + 10."""
    found = cell(matrix(services, body="waffle"), "garter-rib-border", "ends")
    assert (found["state"], found["multiple"]) == ("some", {"of": 12, "plus": 10, "least": 10})
    assert [each["what"] for each in found["corrections"]] == ["counts"]


def test_counts_that_never_meet_have_a_change_that_makes_them(services: Services) -> None:
    """Basket weave is 8n + 4 and the rib 6n + 3: even against odd, so one stitch more."""
    found = cell(matrix(services, body="basket-weave"), "rib-three-by-three-border", "ends")
    assert (found["state"], found["corrections"][0]["value"]) == ("change", 1)
    assert found["reason"] == (
        "They share no count: the body takes a multiple of 8 stitches plus 4, at least 12; this takes a multiple of 6 "
        "stitches plus 3, at least 9, and is worked over 12 stitches more."
    )


def test_at_a_count_the_nearest_counts_and_the_edge_stitches_are_named(services: Services) -> None:
    """139 suits the waffle; with 12 stitches beside it the garter rib would need 150 or 154."""
    found = cell(matrix(services, 139, body="waffle", kind="border"), "garter-rib-border", "ends")
    assert found["state"] == "change"
    assert [(each["what"], each["value"]) for each in found["corrections"]] == [("count", 142), ("stitches", 1)]
    answer = matrix(services, 140, body="waffle", kind="border")
    assert answer["bodies"][0]["nearest"] == [139, 142]
    assert {each["state"] for each in answer["rows"][0]} == {"change", "no"}


def test_every_body_stands_against_every_other_part(services: Services) -> None:
    """A border stands twice, at the ends and at the sides; every cell has its reason."""
    answer = matrix(services)
    places = [other["place"] for other in answer["others"]]
    assert places.count("ends") == places.count("sides") > 15
    assert sum(tally(answer).values()) == len(answer["bodies"]) * len(places)
    assert all(each["reason"] for row in answer["rows"] for each in row)
    assert all(each["corrections"] for row in answer["rows"] for each in row if each["state"] in ("some", "change"))
    assert answer["more"] == {"bodies": False, "others": False}


def test_the_text_of_one_body_tells_reasons_and_that_of_many_shows_letters(services: Services) -> None:
    """Nothing is said by a letter alone where there is room for words."""
    text = as_text(matrix(services, body="rib-two-by-two", kind="bind-off"))
    assert "  bind-off: plain-bind-off: fits\n    It takes every count that the body takes.\n" in text
    assert "(edge-binds)" in text
    letters = as_text(matrix(services, 139, kind="cast-on"))
    assert "F fits, S some counts, C with a change, - does not fit" in letters
    assert "basket-weave             takes 140 or 132, not 139\n" in letters
    assert "   1 cast-on: cable-cast-on\n" in letters


def test_the_picture_is_whole_and_says_each_cell_in_words(services: Services) -> None:
    """It is well-formed, has a letter in each cell, and a reason behind it."""
    answer = matrix(services, kind="border")
    drawn = ElementTree.fromstring(as_svg(answer))
    space = "{http://www.w3.org/2000/svg}"
    cells = [each for each in drawn.iter(f"{space}g") if each.find(f"{space}title") is not None]
    assert len(cells) == len(answer["bodies"]) * len(answer["others"])
    assert {each.findtext(f"{space}text", "").rstrip("+") for each in cells} <= {"F", "S", "C", "-"}
    assert "waffle, ends garter-border: fits. It takes every count" in as_svg(answer)


@pytest.mark.parametrize(("asked", "error"), [({"body": "garter-border"}, Refused), ({"part": "waffle"}, Refused)])
def test_a_part_of_another_kind_is_refused(asked: dict[str, str], error: type[Exception], services: Services) -> None:
    """A border is no body, and a body no border."""
    with pytest.raises(error):
        matrix(services, **asked)  # type: ignore[arg-type]
    with pytest.raises(NotFound):
        matrix(services, body="nothing-like-it")
