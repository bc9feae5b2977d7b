"""Lessons, class sheets, help on the needle and editions through the client, against the real application."""

from __future__ import annotations

from api.contents import BLANKET, RIB
from counterpane.api.examples import BLANKET as PLANNED
from counterpane.api.examples import CLASSROOM
from counterpane.client import Client


def test_the_row_is_narrowed_down_by_answers(client: Client) -> None:
    """The first question takes any answer that it lists, or a number."""
    first = client.where(PLANNED)
    assert first.question is not None and first.left == first.rows
    fewer = client.where(PLANNED, {"length_cm": "31"})
    assert 0 < fewer.left < first.left


def test_what_a_count_does_not_find_comes_along(client: Client) -> None:
    """Waffle worked a stitch late still has its count."""
    found = client.on_needle(PLANNED, 47)
    assert "worked-twice" in [each["kind"] for each in found.looks_wrong]


def test_a_lesson_is_told(client: Client) -> None:
    """How it is told goes along."""
    assert client.lesson(PLANNED, session_minutes=90, hand="left").lesson["hand"] == "left"


def test_a_class_has_a_row_for_each(client: Client) -> None:
    """The request's own gauge is left aside."""
    found = client.class_sheet(PLANNED, CLASSROOM["knitters"])
    assert [each["label"] for each in found.knitters] == ["A", "Ines"]


def test_editions_are_published_listed_and_touched(client: Client) -> None:
    """A corrected part touches the recipe and its edition."""
    kept = client.add_component(RIB | {"slug": "edition-rib"})
    client.add_recipe(BLANKET | {"slug": "edition-blanket", "parts": {"body": "edition-rib"}})
    published = client.publish("edition-blanket", date="2026-11-26")
    assert (published.number, published.erratum) == (1, None)
    assert [each.sha256 for each in client.editions("edition-blanket")] == [published.sha256]
    assert client.edition("edition-blanket", 1) == published
    client.revise_component({**kept.data, "summary": "Changed."}, kept.etag)
    assert {each.edition for each in client.touched("edition-rib")} >= {1}


def test_what_knitters_say_is_noted_read_changed_and_taken_back(client: Client) -> None:
    """A wrong row stands among the corrections until it is taken back."""
    client.add_recipe(BLANKET | {"slug": "noted-blanket", "parts": {"body": "waffle"}})
    client.publish("noted-blanket", date="2026-11-26")
    knit = client.note("noted-blanket", "test-knits", {"whose": "Odile", "grams": 300, "metres_per_100g": 230})
    changed = client.change_note("noted-blanket", "test-knits", knit.number, knit.data | {"grams": 310}, knit.etag)
    assert client.noted("noted-blanket", "test-knits", knit.number).sha256 == changed.sha256
    knitted = client.knitted("noted-blanket")
    assert knitted.loop_mm is not None and knitted.loop_mm["knits"] == 1
    said = {"edition": 1, "section": "body", "row": 2, "question": "Purl?", "answer": "Knit.", "wrong": True}
    answer = client.note("noted-blanket", "answers", said)
    assert [each.number for each in client.notes("noted-blanket", "answers")] == [answer.number]
    assert [(each.row, each.wrong) for each in client.row_notes("noted-blanket")] == [(2, True)]
    assert client.corrections("noted-blanket", 1).corrected
    client.take_back("noted-blanket", "answers", answer.number, "A slip.")
    assert not client.corrections("noted-blanket", 1).corrected
