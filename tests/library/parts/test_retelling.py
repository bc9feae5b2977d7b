"""A library of an earlier version: what it did not derive is told, and nothing that it kept changes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import orjson
import pytest

from counterpane.api.examples import WAVE
from counterpane.craft.component import content_of
from counterpane.library.parts.components import COMPONENTS
from counterpane.library.ports import Entry
from counterpane.library.services import Services
from counterpane.seeding import load_component
from counterpane.wiring import IN_MEMORY, app_of, open_library


def as_before(entry: Entry, *lacking: str) -> Entry:
    """Return an entry as a version kept it that did not derive these."""
    body = orjson.loads(entry.body)
    derived = {name: value for name, value in body["derived"].items() if name not in lacking}
    versions = [{name: value for name, value in each.items() if name not in lacking} for each in derived["versions"]]
    rest = {name: value for name, value in body.items() if name not in lacking}
    return replace(entry, body=orjson.dumps(rest | {"derived": derived | {"versions": versions}}), textures=())


@pytest.fixture(params=[IN_MEMORY, "library.db"])
def library(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Services]:
    """Yield an empty library of each sort."""
    path = request.param if request.param == IN_MEMORY else tmp_path / request.param
    services = open_library(path, starters=False)
    yield services
    services.store.close()


def entry(library: Services, content: dict[str, Any], *lacking: str) -> Entry:
    """Return a component as a version kept it that did not derive these."""
    return as_before(COMPONENTS.entry_of(library, content, "anna", "draft"), *lacking)


@pytest.mark.parametrize("lacking", [("behaviour",), ("texture", "same_texture"), ("texture", "behaviour")])
def test_what_was_not_derived_is_told(library: Services, lacking: tuple[str, ...]) -> None:
    """As if the component had been kept by this version; its hash and its canonical bytes are those that were kept."""
    before = entry(library, WAVE, *lacking)
    library.store.add(before)
    told = orjson.loads(COMPONENTS.get(library, before.slug).body)
    assert told == orjson.loads(COMPONENTS.entry_of(library, WAVE, "anna", "draft").body) | {"changed": before.at}
    assert told["derived"]["versions"][0]["texture"] and told["derived"]["behaviour"]
    assert library.store.object(told["sha256"]) == before.content
    assert library.store.latest("component", before.slug).body == before.body


def test_an_earlier_revision_is_told_whole_too(library: Services) -> None:
    """Each by its own rows."""
    first = entry(library, WAVE, "texture", "behaviour")
    library.store.add(first)
    library.store.revise(entry(library, WAVE | {"summary": "Another."}, "texture", "behaviour"), None)
    told = orjson.loads(COMPONENTS.revision(library, first.slug, first.sha256).body)
    assert told["summary"] == WAVE["summary"]
    assert told["derived"]["behaviour"]


def test_the_answer_has_the_tag_of_the_revision(library: Services) -> None:
    """Over HTTP what is told lies outside the tag, and a change still names the revision."""
    library.store.add(before := entry(library, WAVE, "texture", "behaviour", "same_texture"))
    answer = app_of(library).test_client().get(f"/v1/components/{before.slug}")
    assert answer.headers["ETag"] == f'"{before.sha256}"'
    assert answer.json["derived"]["behaviour"] and answer.json["same_texture"] == []


@pytest.mark.parametrize("slug", ["long-tail", "waffle", "garter-border"])
def test_what_has_all_of_it_is_served_as_it_is_kept(library: Services, slug: str) -> None:
    """Byte for byte, parts without rows too."""
    kept = COMPONENTS.entry_of(library, content_of(load_component(slug)), "anna", "draft")
    library.store.add(kept)
    assert COMPONENTS.get(library, slug) is library.store.latest("component", slug)
