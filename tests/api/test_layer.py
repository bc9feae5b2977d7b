"""The parts of the API layer, one by one: bodies, tags, pages and log lines."""

from __future__ import annotations

import io
import json
import logging
from decimal import Decimal
from typing import Any

import pytest
from flask.testing import FlaskClient

from counterpane.api import paging, tags
from counterpane.api.access import LOGGER, JsonLines
from counterpane.api.parsing import BrokenJson, depth, parse
from counterpane.api.problems import Problem


class TestBodies:
    """JSON is read strictly and exactly."""

    @pytest.mark.parametrize(
        ("text", "value"),
        [
            (b"22.1", Decimal("22.1")),
            (b"3.0", Decimal("3.0")),
            (b"123456789012345678", 123456789012345678),
            (b'"[[[\\"[["', '[[["[['),
            (b"1e3", Decimal("1e3")),
            (b"null", None),
        ],
    )
    def test_values_keep_their_digits(self, text: bytes, value: Any) -> None:
        """No number passes through a binary fraction."""
        assert parse(text) == value

    def test_a_long_whole_number_is_read_in_linear_time(self) -> None:
        """It is refused by the field that gets it, with a pointer."""
        assert parse(b"[" + b"9" * 500_000 + b"]")[0].adjusted() == 499_999

    @pytest.mark.parametrize("text", [b"0" * 20, b"[1" + b"0" * 20 + b"x]", b'{"a": "' + b"9" * 20 + b'\\ud800"}'])
    def test_a_long_number_hides_no_other_fault(self, text: bytes) -> None:
        """What stands beside it is still looked at."""
        with pytest.raises(BrokenJson):
            parse(text)

    def test_brackets_in_strings_have_no_depth(self) -> None:
        """Only those outside count."""
        assert depth(b'{"a": ["[[[[", {"b": []}]}') == 4


class TestTags:
    """RFC 9110 on strong tags."""

    @pytest.mark.parametrize(
        ("header", "change", "read"),
        [('"a"', True, True), ('W/"a"', False, True), ("*", True, True), ('"b", "a"', True, True), ("a", False, False)],
    )
    def test_a_weak_tag_serves_reading_only(self, header: str, change: bool, read: bool) -> None:
        """If-Match compares strongly, If-None-Match weakly."""
        assert (tags.matched(header, "a"), tags.answers_none_match(header, "a")) == (change, read)


class TestCursors:
    """A cursor carries the filters and the place."""

    def test_a_cursor_is_read_back(self) -> None:
        """Filters, limit and key come back as written."""
        cursor = paging.write_cursor({"kind": "body", "limit": 7}, (3, 1, 20))
        assert paging.read_query({"cursor": cursor}) == ({"kind": "body"}, (3, 1, 20), 7)

    def test_another_limit_may_be_asked_for(self) -> None:
        """It does not change which items follow."""
        cursor = paging.write_cursor({"limit": 7}, ("moss",))
        assert paging.read_query({"cursor": cursor, "limit": 2}) == ({}, ("moss",), 2)

    @pytest.mark.parametrize("place", range(0, 40, 5))
    def test_a_flipped_letter_is_seen(self, place: int) -> None:
        """Whichever it is."""
        cursor = paging.write_cursor({"kind": "body", "limit": 7}, (3, 1, 20))
        flipped = cursor[:place] + ("A" if cursor[place] != "A" else "B") + cursor[place + 1 :]
        with pytest.raises(Problem):
            paging.read_query({"cursor": flipped})


class TestLogs:
    """One JSON line a request."""

    @pytest.fixture
    def lines(self) -> Any:
        """Yield what is logged."""
        stream = io.StringIO()
        handler = logging.StreamHandler(stream)
        handler.setFormatter(JsonLines())
        LOGGER.addHandler(handler)
        LOGGER.setLevel(logging.INFO)
        yield stream
        LOGGER.removeHandler(handler)
        LOGGER.setLevel(logging.NOTSET)

    def test_a_line_names_the_route_and_not_what_was_asked_for(self, client: FlaskClient, lines: io.StringIO) -> None:
        """No slug, no body and no token is in it."""
        answer = client.get("/v1/components/waffle", headers={"Authorization": "Bearer cpn_secret"})
        line = json.loads(lines.getvalue())
        assert (line["route"], line["status"], line["method"]) == ("/v1/components/<slug>", 200, "GET")
        assert line["request_id"] == answer.headers["X-Request-Id"]
        assert "waffle" not in lines.getvalue() and "cpn_" not in lines.getvalue()

    def test_a_failure_is_logged_with_its_traceback(self, lines: io.StringIO) -> None:
        """The line of a failure is JSON too."""
        try:
            raise RuntimeError("seen")
        except RuntimeError:
            LOGGER.exception("failure", extra={"fields": {"request_id": "x"}})
        assert "RuntimeError: seen" in json.loads(lines.getvalue())["traceback"]
