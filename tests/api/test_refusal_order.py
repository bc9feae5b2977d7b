"""Of several reasons to refuse the first is the answer, and the type of each problem leads to its page."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from api.conftest import Desk
from api.contents import RIB
from counterpane.api.sorts import SORTS


class TestOrder:
    """401, 403, 404, 428, 412, then the body."""

    @pytest.mark.parametrize(
        ("role", "path", "tag", "status"),
        [
            (None, "nope", None, 401),
            ("reader", "nope", None, 403),
            ("contributor", "nope", None, 404),
            ("contributor", "four-rib", None, 428),
            ("contributor", "four-rib", '"0"', 412),
            ("contributor", "four-rib", "*", 422),
        ],
    )
    def test_the_first_reason_is_the_answer(
        self, desk: Desk, role: Any, path: str, tag: str | None, status: int
    ) -> None:
        """A request that is wrong in every way is refused for the first reason."""
        desk.add(RIB)
        headers = (desk.token(role) if role else {}) | ({"If-Match": tag} if tag else {})
        assert desk.client.put(f"/v1/components/{path}", json={"bad": 1}, headers=headers).status_code == status


@pytest.mark.parametrize("name", sorted(SORTS))
def test_every_type_leads_to_a_page_that_says_how_to_fix_it(client: FlaskClient, name: str) -> None:
    """The address in `type` resolves."""
    answer = client.get(SORTS[name].type)
    assert (answer.status_code, answer.mimetype) == (200, "text/html")
    assert "How to put it right" in answer.text
