"""Searching components over HTTP: filters, facets, cursors, and refusals that say what to write."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from api.conftest import Desk
from api.contents import RIB

LIST = "/v1/components"


def found(client: FlaskClient, **query: Any) -> list[dict[str, Any]]:
    """Return the cards of all pages of a query."""
    cards: list[dict[str, Any]] = []
    path, asked = LIST, dict[str, Any](query) or None
    while path:
        answer = client.get(path, query_string=asked)
        assert answer.status_code == 200, answer.text
        cards += answer.json["items"]
        path, asked = answer.json["next"], None
    return cards


def slugs(client: FlaskClient, **query: Any) -> set[str]:
    """Return the slugs that a query finds."""
    return {card["slug"] for card in found(client, **query)}


@pytest.mark.parametrize(
    "query",
    [
        {"width_cm": "60..80", "gauge": "21x28"},
        {"goes_with": "garter-rib-border"},
        {"like": "seed-stitch"},
        {"q": "stitch"},
        {"year": "1840..1850", "row_repeat": "2..8"},
    ],
)
def test_pages_of_a_search_give_what_one_page_gives(client: FlaskClient, query: dict[str, str]) -> None:
    """In the same order, each once, with what is told of each."""
    assert found(client, limit=3, **query) == found(client, limit=200, **query) != []


@pytest.mark.parametrize("name", ["difficulty", "licence", "source", "kind", "reversible", "status"])
def test_each_word_of_a_facet_is_what_its_filter_finds(client: FlaskClient, name: str) -> None:
    """And those of which it is not known are the rest."""
    told = client.get(LIST, query_string={"facets": "yes", "limit": 1}).json["facets"]
    facet = next(each for each in told["facets"] if each["name"] == name)
    assert {each["word"]: each["count"] for each in facet["words"]} == {
        each["word"]: len(found(client, **{name: each["word"]})) for each in facet["words"]
    }
    assert sum(each["count"] for each in facet["words"]) + facet["not_known"] == told["counted"]


def test_facets_count_what_the_filters_find(client: FlaskClient) -> None:
    """Whichever page is asked for."""
    for query in ({"q": "lace"}, {"goes_with": "garter-rib-border"}, {"like": "seed-stitch"}, {"q": "!"}):
        answer = client.get(LIST, query_string={**query, "facets": "yes", "limit": 1})
        assert answer.json["facets"]["counted"] == len(found(client, **query))


def test_what_lies_flat_is_what_the_model_says_does(client: FlaskClient) -> None:
    """A texture that is not assessed is not found: unknown is never fine."""
    flat = slugs(client, lies_flat="likely")
    verdicts = {slug: client.get(f"{LIST}/{slug}").json["derived"]["behaviour"]["lies"] for slug in flat}
    assert set(verdicts.values()) <= {"flat", "draws in", "shortens"} and "seed-stitch" in flat
    lace = client.get(f"{LIST}/rose-leaf").json["derived"]["behaviour"]["lies"]
    assert (lace, "rose-leaf" in flat) == ("not known", False)


def test_openings_and_yarn_are_found_by_what_somebody_said(desk: Desk) -> None:
    """A measured opening and a class of yarn; nothing else answers."""
    measured = [{"mm": "4.2", "by": "anna", "on": "2026-01-02", "yarn": "dk", "gauge": "22", "wash": "washed"}]
    desk.add({**RIB, "measured": measured, "yarn_classes": [3, 4]})
    assert slugs(desk.client, openings_under_mm=5) == slugs(desk.client, yarn_class=4) == {RIB["slug"]}
    assert slugs(desk.client, openings_under_mm=4) == slugs(desk.client, yarn_class=2) == set()
    told = desk.client.get(LIST, query_string={"facets": "yes"}).json["facets"]["facets"]
    words = {each["name"]: each["words"] for each in told}
    assert words["openings_measured"] == [{"word": "under 5 mm", "count": 1}]
    assert [each["word"] for each in words["yarn_class"]] == ["3", "4"]


def test_a_count_that_is_asked_for_in_several_ways_is_one_count(client: FlaskClient) -> None:
    """139 stitches at 22 to 10 cm are 63.2 cm; the rib runs over 12 more and takes 4n + 2, so that 138 meets it."""
    assert "waffle" in slugs(client, admits=139, width_cm="63..64", gauge="22")
    assert slugs(client, admits=139, width_cm="70..71", gauge="22") == set()
    meet = found(client, goes_with="garter-rib-border", admits=138)
    assert meet and all(card["goes_with"]["stitches"] == 138 for card in meet)
    assert slugs(client, goes_with="garter-rib-border", admits=139) == set()
    narrow = found(client, goes_with="garter-rib-border", width_cm="62..64", gauge="22")
    assert all(each["stitches"] % 4 == 2 for card in narrow for each in card["widths"])


def test_what_meets_agrees_with_the_matrix(client: FlaskClient) -> None:
    """The same bodies, by another road."""
    for part in ("garter-rib-border", "check-border", "rib-cable-cast-on", "decrease-bind-off", "slipped-selvedge"):
        cells = client.get("/v1/matrix", query_string={"part": part}).json
        place = next(each["place"] for each in cells["others"])
        column = next(at for at, each in enumerate(cells["others"]) if each["place"] == place)
        fits = [row[column]["state"] in ("fits", "some") for row in cells["rows"]]
        meeting = {body["slug"] for body, fit in zip(cells["bodies"], fits, strict=True) if fit}
        assert meeting <= slugs(client, goes_with=part)


@pytest.mark.parametrize(
    ("query", "status", "pointer"),
    [
        ({"width_cm": "60..80"}, 422, "/gauge"),
        ({"gauge": "21"}, 422, "/width_cm"),
        ({"width_cm": "60-80", "gauge": "21"}, 422, "/width_cm"),
        ({"width_cm": "80..60", "gauge": "21"}, 200, None),
        ({"width_cm": "60..80", "gauge": "0"}, 422, "/gauge"),
        ({"row_repeat": "2.5"}, 422, "/row_repeat"),
        ({"year": "19"}, 200, None),
        ({"like_percent": "50"}, 422, "/like_percent"),
        ({"lies_flat": "yes"}, 422, "/lies_flat"),
        ({"facets": "no"}, 422, "/facets"),
        ({"difficulty": "hard"}, 422, "/difficulty"),
        ({"like": "not-kept"}, 404, None),
        ({"goes_with": "not-kept"}, 404, None),
    ],
)
def test_a_filter_that_makes_no_sense_is_refused_with_its_place(
    client: FlaskClient, query: dict[str, str], status: int, pointer: str | None
) -> None:
    """A filter that finds nothing is no fault."""
    answer = client.get(LIST, query_string=query)
    assert answer.status_code == status
    places = [each["pointer"] for each in answer.json.get("errors", answer.json.get("findings", []))]
    assert (pointer is None) or pointer in places


def test_a_cursor_keeps_the_filters_and_not_the_facets(client: FlaskClient) -> None:
    """Facets are counted where they are asked for; other filters beside the cursor are refused."""
    first = client.get(LIST, query_string={"q": "lace", "facets": "yes", "limit": 2}).json
    assert "facets" not in client.get(first["next"]).json
    assert "facets" in client.get(f"{first['next']}&facets=yes").json
    assert client.get(f"{first['next']}&difficulty=easy").status_code == 422
