"""The parts of the API layer, one by one: bodies, tags, pages and log lines."""

from __future__ import annotations

import json
from base64 import urlsafe_b64decode
from dataclasses import asdict
from decimal import Decimal
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient

from api.conftest import Desk
from counterpane import wiring
from counterpane.api import paging, tags
from counterpane.api.access import Journal
from counterpane.api.application import create_app
from counterpane.api.document import document
from counterpane.api.parsing import BrokenJson, parse
from counterpane.api.problems import Problem
from counterpane.api.sorts import SORTS
from counterpane.library.rules import cards, get
from counterpane.library.services import Services
from counterpane.web import RulePages, pages


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
        """Only those outside count: thirty-two deep is read, thirty-three is not."""
        deep = b'{"a": ' + b"[" * 31 + b'"' + b"[" * 9 + b'"' + b"]" * 31 + b"}"
        assert len(parse(deep)) == 1
        with pytest.raises(BrokenJson, match="32 deep"):
            parse(deep.replace(b'"a": ', b'"a": [').replace(b"]}", b"]]}"))

    def test_brackets_are_bounded(self) -> None:
        """Each is a value to be made: more than fifty thousand are refused before any is."""
        with pytest.raises(BrokenJson, match="50,000 brackets"):
            parse(b'{"a": [' + b"[], " * 25_000 + b"[]]}")


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

    def test_a_cursor_is_read_back(self, library: Services) -> None:
        """Filters, limit and key come back as written."""
        cursor = paging.write_cursor(library, {"kind": "body", "limit": 7}, (3, 1, 20))
        assert paging.read_query(library, {"cursor": cursor}) == ({"kind": "body"}, (3, 1, 20), 7)

    def test_another_limit_may_be_asked_for(self, library: Services) -> None:
        """It does not change which items follow."""
        cursor = paging.write_cursor(library, {"limit": 7}, ("moss",))
        assert paging.read_query(library, {"cursor": cursor, "limit": 2}) == ({}, ("moss",), 2)

    @pytest.mark.parametrize("place", range(0, 60, 5))
    def test_a_flipped_letter_is_seen(self, library: Services, place: int) -> None:
        """Whichever it is."""
        cursor = paging.write_cursor(library, {"kind": "body", "limit": 7}, (3, 1, 20))
        flipped = cursor[:place] + ("A" if cursor[place] != "A" else "B") + cursor[place + 1 :]
        with pytest.raises(Problem) as caught:
            paging.read_query(library, {"cursor": flipped})
        assert caught.value.sort.name == "cursor-not-valid"

    @pytest.mark.parametrize("cursor", ["", "A", "AAAA", "A" * 21, "A" * 22, "A" * 23, "é", "!", "=" * 9])
    def test_what_has_no_signature_is_refused(self, library: Services, cursor: str) -> None:
        """Nothing is read of it; an empty one is none."""
        if not cursor:
            assert paging.read_query(library, {"cursor": cursor}) == ({}, None, paging.USUAL_LIMIT)
            return
        with pytest.raises(Problem, match="no cursor"):
            paging.read_query(library, {"cursor": cursor})

    def test_a_cursor_is_signed_as_hmac_says(self, library: Services) -> None:
        """The first 16 bytes of HMAC-SHA-256 (RFC 2104), worked out here from its definition, over what follows."""
        raw = urlsafe_b64decode(paging.write_cursor(library, {"limit": 7}, ("moss",)) + "===")
        key = library.store.secret().ljust(64, b"\0")
        inner = sha256(bytes(each ^ 0x36 for each in key) + b"cursor of a page\0" + raw[16:]).digest()
        assert raw[:16] == sha256(bytes(each ^ 0x5C for each in key) + inner).digest()[:16]
        assert library.store.secret() not in raw

    def test_a_cursor_of_another_library_is_refused(self, client: FlaskClient, desk: Desk) -> None:
        """Both were made by this program, and the lists are the same."""
        following = client.get("/v1/components?kind=body&limit=2").json["next"]
        assert client.get(following).status_code == 200
        refused = desk.client.get(following)
        assert (refused.status_code, refused.json["type"]) == (422, "/problems/cursor-not-valid")

    def test_a_cursor_outlives_the_program(self, tmp_path: Path) -> None:
        """Another process on the same file goes on where the first one stopped."""
        pages = []
        following = "/v1/components?kind=body&limit=2"
        for _ in range(3):
            services = wiring.open_library(tmp_path / "library.db")
            answer = wiring.app_of(services).test_client().get(following)
            services.store.close()
            pages += [each["slug"] for each in answer.json["items"]]
            following = answer.json["next"]
        assert len(set(pages)) == 6


class TestLogs:
    """One JSON line a request."""

    def test_a_line_names_the_route_and_not_what_was_asked_for(self, library: Services) -> None:
        """No slug, no body and no token is in it."""
        lines: list[bytes] = []
        client = create_app(library, journal=Journal(lines.append)).test_client()
        answer = client.get("/v1/components/waffle", headers={"Authorization": "Bearer cpn_secret"})
        line = json.loads(lines[0])
        assert (line["route"], line["status"], line["method"]) == ("/v1/components/<slug>", 200, "GET")
        assert line["request_id"] == answer.headers["X-Request-Id"]
        assert b"waffle" not in lines[0]
        assert b"cpn_" not in lines[0]

    @pytest.mark.parametrize(("path", "status"), [("/nope", 404), ("/", 200), ("/problems/nope", 404)])
    def test_every_answer_has_one_line(self, library: Services, path: str, status: int) -> None:
        """Pages and unknown addresses too."""
        lines: list[bytes] = []
        shown = pages(document(), [asdict(sort) for sort in SORTS.values()], RulePages(cards(), get))
        client = create_app(library, (shown,), Journal(lines.append)).test_client()
        answer = client.get(path)
        assert [json.loads(line)["status"] for line in lines] == [status] == [answer.status_code]
        assert answer.headers["X-Request-Id"] == json.loads(lines[0])["request_id"]

    def test_a_failure_is_logged_with_its_traceback(self) -> None:
        """Its line is JSON too, and ends with a line end."""
        lines: list[bytes] = []
        try:
            raise RuntimeError("seen")
        except RuntimeError as error:
            Journal(lines.append).failure("x", "/v1/plans", error)
        assert "RuntimeError: seen" in json.loads(lines[0])["traceback"]
        assert lines[0].count(b"\n") == 1
