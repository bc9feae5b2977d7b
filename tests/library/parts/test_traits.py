"""By what components are searched: what follows from their rows, and what a file of an earlier version lacks."""

from __future__ import annotations

import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest
from sqlite_utils import Database

from counterpane.craft.component import content_of, derive
from counterpane.craft.pattern.level import SKILLS, skills_of_rows
from counterpane.craft.stitches import Vocabulary
from counterpane.library.parts.components import COMPONENTS
from counterpane.library.parts.traits import fill, traits_of
from counterpane.library.parts.wanted import Trait, Wanted
from counterpane.library.ports import Entry
from counterpane.seeding import load_component, load_components
from counterpane.storage.sqlite import SqliteStore
from counterpane.storage.sqlite.migrations import steps
from counterpane.wiring import open_library

MOST = 1_000


def test_traits_follow_from_the_rows_and_the_source(vocabulary: Vocabulary) -> None:
    """Waffle repeats after 4 rows and mixes knit and purl; rose leaf cannot be judged flat or not."""
    waffle = {(each.name, each.word) for each in traits_of(load_component("waffle"), vocabulary)}
    assert {("row_repeat", "4"), ("difficulty", "easy"), ("licence", "CC0-1.0")} <= waffle
    rose = traits_of(load_component("rose-leaf"), vocabulary)
    assert Trait("year", "1843", 1843) in rose
    assert "lies" not in {each.name for each in rose}


def test_a_part_without_rows_has_none_and_is_not_unknown(vocabulary: Vocabulary) -> None:
    """A cast-on repeats after no rows; its difficulty is not known."""
    found = {each.name: each.word for each in traits_of(load_component("long-tail"), vocabulary)}
    assert (found["lies"], found["row_repeat"], "difficulty" in found) == ("none", "none", False)


def test_classes_of_yarn_are_what_the_author_said(vocabulary: Vocabulary) -> None:
    """None where nothing is said, and the content is as it was then."""
    waffle = load_component("waffle")
    assert not any(each.name == "yarn_class" for each in traits_of(waffle, vocabulary))
    told = traits_of(replace(waffle, yarn_classes=(3, 4)), vocabulary)
    assert [each.word for each in told if each.name == "yarn_class"] == ["3", "4"]


def test_skills_of_all_starters_are_named(vocabulary: Vocabulary) -> None:
    """Each is one of the list, and garter asks for none."""
    asked = {skill for each in load_components() for skill in skills_of_rows(derive(each, vocabulary).rows, vocabulary)}
    assert asked <= set(SKILLS) and {"lace", "cables", "slipped-stitches", "twisted-stitches"} <= asked
    assert skills_of_rows(derive(load_component("garter"), vocabulary).rows, vocabulary) == ()


@pytest.mark.parametrize("version", ["0009_peers"])
def test_a_file_of_an_earlier_version_is_searched_like_one_of_this(tmp_path: Path, version: str) -> None:
    """Its traits are worked out once when it is opened, its counts are found for every kind, nothing else changes."""
    services = open_library(starters=False)
    content = {"waffle", "long-tail", "rose-leaf", "garter-rib-border"}
    entries = [COMPONENTS.entry_of(services, _content(slug), "anna", "accepted") for slug in sorted(content)]
    file = tmp_path / "library.db"
    _as_of(file, version, entries)
    opened = open_library(file, starters=False)
    services.store.add(*entries)
    for wanted in (Wanted("component"), Wanted("component", admits=139)):
        assert opened.store.facets(wanted, MOST).words == services.store.facets(wanted, MOST).words
        assert opened.store.page(wanted) == services.store.page(wanted)
    assert opened.store.without_traits(MOST) == ()
    opened.store.close()


def _content(slug: str) -> dict[str, object]:
    return content_of(load_component(slug))


def _as_of(file: Path, version: str, entries: list[Entry]) -> None:
    """Write entries into a file as a version kept them: without all that later steps added."""
    newer = SqliteStore(file.with_name("newer.db"))
    newer.add(*entries)
    newer.close()
    connection = sqlite3.connect(file)
    names = [step.name for step in steps.pending(Database(connection))]
    steps.apply(Database(connection), stop_before=names[names.index(version) + 1])
    connection.execute("ATTACH ? AS newer", (str(file.with_name("newer.db")),))
    for table in ("object", "item", "revision", "class", "texture", "change", "person", "audit"):
        connection.execute(f"INSERT INTO {table} SELECT * FROM newer.{table}")
    connection.commit()
    connection.close()


def test_what_was_withdrawn_has_no_traits_and_stops_nothing(tmp_path: Path) -> None:
    """Its object is gone; the others are worked out."""
    services = open_library(tmp_path / "library.db", starters=False)
    entry = COMPONENTS.entry_of(services, _content("waffle"), "anna", "withdrawn")
    services.store.add(replace(entry, traits=()))
    connection = sqlite3.connect(tmp_path / "library.db")
    connection.execute("INSERT INTO traitless SELECT id FROM item")
    connection.execute(
        "INSERT INTO standing (shelf, slug, sha256, before, status, at, by, because, said) "
        "SELECT shelf, slug, sha256, 'draft', 'withdrawn', at, 'p1', 'x', 'Gone.' FROM item"
    )
    connection.commit()
    connection.close()
    fill(services)
    assert services.store.without_traits(MOST) == ()
    services.store.close()
