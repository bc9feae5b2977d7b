"""How many a list holds is told where `Prefer: count=exact` asks for it, and never else (RFC 7240)."""

from __future__ import annotations

from urllib.parse import urlencode

import pytest
from flask.testing import FlaskClient

EXACT = "count=exact"
ASKED = [
    ("components", {}),
    ("components", {"kind": "body", "admits": "139"}),
    ("components", {"q": "rib", "reversible": "yes"}),
    ("components", {"width_cm": "60..80", "gauge": "21x28", "kind": "body"}),
    ("components", {"like": "waffle", "like_percent": "60"}),
    ("components", {"goes_with": "garter-border"}),
    ("components", {"q": "---"}),
    ("recipes", {}),
    ("recipes", {"q": "frost"}),
    ("profiles", {}),
]


@pytest.mark.parametrize(("noun", "query"), ASKED)
def test_the_total_is_what_all_pages_hold(client: FlaskClient, noun: str, query: dict[str, str]) -> None:
    """Counted by going through them; each page tells the same."""
    path: str | None = f"/v1/{noun}?{urlencode({**query, 'limit': '7'})}"
    totals, seen = set(), 0
    while path:
        answer = client.get(path, headers={"Prefer": EXACT})
        assert answer.status_code == 200, answer.text
        assert answer.headers["Preference-Applied"] == EXACT
        totals.add(answer.json["total"])
        seen += len(answer.json["items"])
        path = answer.json["next"]
    assert totals == {seen}


@pytest.mark.parametrize("header", [None, "count=planned", "return=minimal", "count", "", ",;=", "discount=exact"])
def test_nothing_is_counted_unless_it_is_asked_for(client: FlaskClient, header: str | None) -> None:
    """Another preference is passed over; a cache is told that the header matters."""
    answer = client.get("/v1/components?limit=1", headers={} if header is None else {"Prefer": header})
    assert (answer.status_code, "total" in answer.json, "Preference-Applied" in answer.headers) == (200, False, False)
    assert "Prefer" in answer.headers["Vary"]


@pytest.mark.parametrize(
    "header", ['Count="exact"', "return=minimal, count=exact; strict", "respond-async,count = exact"]
)
def test_the_preference_is_read_however_it_is_written(client: FlaskClient, header: str) -> None:
    """Beside others, in quotes, with a parameter."""
    assert client.get("/v1/recipes?limit=1", headers={"Prefer": header}).json["total"] == 4
