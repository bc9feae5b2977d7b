"""PUT with `If-None-Match: *` makes what is not there, under the slug of the address (RFC 9110, 13.1.2)."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

import pytest
from werkzeug.test import TestResponse

from api.conftest import Desk
from api.contents import BLANKET, RIB, WARD
from api.test_refusals import refused
from counterpane import wiring
from counterpane.library.review.tokens import create

ONLY_NEW = {"If-None-Match": "*"}
ONE = "/v1/components/four-rib"


def put(desk: Desk, content: dict[str, Any], path: str = ONE, **headers: str) -> TestResponse:
    """Send what is to be made."""
    return desk.client.put(path, json=content, headers=desk.token() | ONLY_NEW | headers)


@pytest.mark.parametrize(("noun", "content"), [("components", RIB), ("recipes", BLANKET), ("profiles", WARD)])
def test_what_is_not_there_is_made_once(stocked: Desk, noun: str, content: dict[str, Any]) -> None:
    """The second is told the tag of the first, which stays as it was."""
    content = content | {"slug": "another"}
    path = f"/v1/{noun}/another"
    first = put(stocked, content, path)
    assert (first.status_code, first.headers["Location"]) == (201, path)
    assert first.headers["ETag"] == first.json["etag"]
    second = put(stocked, content, path)
    assert refused(second, 412, "stale")["current"] == first.json["etag"]
    assert stocked.client.get(path).data == first.data


def test_what_is_made_has_the_slug_of_its_address_and_proves(desk: Desk) -> None:
    """Else nothing is made."""
    for content in (RIB | {"slug": "other"}, RIB | {"examples": [{"stitches": 23, "after": [23, 23]}]}):
        refused(put(desk, content), 422, "does-not-prove")
    assert desk.services.store.changes(0, 9) == ()


def test_a_tag_beside_it_means_a_change(desk: Desk) -> None:
    """Of what is not there nothing can be changed; without either header it is asked for a tag."""
    refused(put(desk, RIB, **{"If-Match": '"0"'}), 404, "not-found")
    desk.add(RIB)
    refused(desk.client.put(ONE, json=RIB, headers=desk.token()), 428, "tag-needed")


def test_who_may_not_change_what_is_there_is_told_so_first(desk: Desk) -> None:
    """Before it is said that there is one, as for any change."""
    desk.add(RIB)
    headers = desk.token("contributor", "berta") | ONLY_NEW
    refused(desk.client.put(ONE, json=RIB, headers=headers), 403, "not-theirs")


def test_what_was_withdrawn_is_not_made_again(desk: Desk) -> None:
    """Its slug is never used again."""
    desk.add(RIB)
    move = {"to": "withdrawn", "because": "by-its-author", "say": "It was mine."}
    assert desk.client.post(f"{ONE}/standing", json=move, headers=desk.token()).status_code == 200
    refused(put(desk, RIB), 410, "withdrawn")


def test_of_twenty_at_once_one_makes_it(tmp_path: Path) -> None:
    """In a file, each through a connection of its own: the others are told its tag."""
    services = wiring.open_library(tmp_path / "library.db", starters=False)
    headers = {"Authorization": f"Bearer {create(services.store, 'contributor', 'anna', services.now())}"} | ONLY_NEW
    app = wiring.app_of(services)

    def send(number: int) -> int:
        content = RIB | {"summary": f"Of writer {number}."}
        return app.test_client().put(ONE, json=content, headers=headers).status_code

    with ThreadPoolExecutor(8) as pool:
        assert sorted(pool.map(send, range(20))) == [201] + [412] * 19
    assert len(services.store.changes(0, 30)) == 1
    services.store.close()
