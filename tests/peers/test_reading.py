"""Contents as peers send them: what is read is what was sent, and what has another shape is refused."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import closing

import orjson
import pytest

from counterpane import wiring
from counterpane.library.keeping import recipes
from counterpane.library.parts import components
from counterpane.library.safety import kept_profiles
from counterpane.peers import read


def test_every_starter_reads_back_to_its_own_hash() -> None:
    """Components, lists and recipes, with numbers that are no whole ones."""
    services = wiring.open_library()
    proofs = {"component": components.entry_of, "recipe": recipes.entry_of, "profile": kept_profiles.entry_of}
    with closing(services.store):
        changes = services.store.changes(0, 10_000)
        assert {each.kind for each in changes} == set(proofs)
        for each in changes:
            content = read(each.kind, services.store.object(each.sha256 or ""))
            assert proofs[each.kind](services, content, "anna", "draft").sha256 == each.sha256


@pytest.mark.parametrize(
    "content",
    [[], {}, {"slug": "x", "name": "1/2"}, {"slug": "x", "name": "X", "gauge": {"stitches": "1/3"}}, {"parts": "1/0"}],
)
def test_what_has_another_shape_is_refused(content: Mapping | list) -> None:
    """A fraction without an end is no number that anybody sent."""
    with pytest.raises(ValueError):
        read("recipe", orjson.dumps(content))


@pytest.mark.parametrize("data", [b"", b"{", b"\xff", b"[" * 100_000, b'{"a":1,"a":2}'])
def test_what_is_no_json_is_refused(data: bytes) -> None:
    """Without a traceback of any other kind."""
    with pytest.raises(ValueError):
        read("component", data)
