"""`counterpane outdated`: what it tells, and its status."""

from __future__ import annotations

import json

from cli.conftest import Type
from counterpane import wiring
from counterpane.craft.component import content_of
from counterpane.library.parts import components

STORE = ("--store", "lib.db")


def test_a_successor_is_told_with_what_it_changes(typed: Type) -> None:
    """In words and as JSON, and the status is 0 where a blanket comes of it."""
    assert typed("outdated", "first-frost", *STORE).out.startswith("Each part of first-frost")
    services = wiring.open_library("lib.db")
    content = content_of(components.find(services, "waffle")) | {"summary": "Little boxes."}
    components.COMPONENTS.revise(services, "waffle", content, None, "Bram")
    services.store.close()
    done = typed("outdated", "first-frost", *STORE)
    assert (done.status, done.out.startswith("waffle: pinned to ")) == (0, True)
    told = json.loads(typed("outdated", "first-frost", "--json", *STORE).out)
    assert [part["component"] for part in told["parts"]] == ["waffle"]


def test_a_recipe_that_is_not_kept_is_missing(typed: Type) -> None:
    """Status 3."""
    assert typed("outdated", "nowhere", *STORE).status == 3
