"""Patterns as files over HTTP: a page of HTML and PDF, by the member `as` or by the header Accept."""

from __future__ import annotations

import pytest
from flask.testing import FlaskClient

from counterpane.api import examples

REQUEST = {name: value for name, value in (examples.PATTERN[0].body or {}).items() if name != "as"}


@pytest.mark.parametrize(
    ("form", "media", "begins"), [("html", "text/html", b"<!doctype html>"), ("pdf", "application/pdf", b"%PDF-")]
)
def test_a_pattern_comes_as_a_file(client: FlaskClient, form: str, media: str, begins: bytes) -> None:
    """The same bytes whichever way it is asked for, to be kept and not shown in place of the page."""
    named = client.post("/v1/patterns", json={**REQUEST, "as": form})
    accepted = client.post("/v1/patterns", json=REQUEST, headers={"Accept": media})
    assert (named.status_code, named.mimetype) == (accepted.status_code, accepted.mimetype) == (200, media)
    assert named.data.startswith(begins) and named.data == accepted.data
    assert named.headers["Content-Disposition"] == f'attachment; filename="pattern.{form}"'


def test_letter_paper_is_another_file(client: FlaskClient) -> None:
    """A4 where nothing is said."""
    usual, a4, letter = (
        client.post("/v1/patterns", json={**REQUEST, "as": "pdf", **more}).data
        for more in ({}, {"paper": "a4"}, {"paper": "letter"})
    )
    assert usual == a4 != letter
