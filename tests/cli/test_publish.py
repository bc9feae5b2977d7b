"""A library as a folder of pages, from the command line: what is replaced, and what is left alone."""

from __future__ import annotations

from contextlib import closing
from pathlib import Path

import pytest

from cli.conftest import Type
from counterpane import wiring
from counterpane.craft.component import content_of
from counterpane.library.parts import components
from counterpane.seeding import load_component
from counterpane.web import RulePages

STORE = ("--store", "lib.db")


@pytest.fixture
def library(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Make a library of one part; the pages of the rules, which other tests read, are left out."""
    services = wiring.open_library(tmp_path / "lib.db", starters=False)
    with closing(services.store):
        components.add(services, content_of(load_component("waffle")), "Bram", "accepted")
    monkeypatch.setattr(wiring, "rule_pages", lambda services: RulePages((), lambda slug: {}))


def held(folder: str) -> dict[str, bytes]:
    """Return the files under a folder."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in Path(folder).rglob("*") if path.is_file()}


@pytest.mark.usefixtures("library")
def test_a_folder_is_made_and_made_again_with_the_same_bytes(typed: Type) -> None:
    """What the library does not hold any more does not stay in it, and nothing is left beside it."""
    done = typed("publish", "out/pages", *STORE)
    assert (done.status, done.err) == (0, "") and done.out.startswith("wrote out/pages: ")
    first = held("out/pages")
    assert typed("publish", "out/pages", "--title", "Ninepenny Loft", *STORE).status == 0
    assert b"Ninepenny Loft" in held("out/pages")["index.html"]
    assert typed("publish", "out/pages", *STORE).status == 0
    assert held("out/pages") == first
    assert [path.name for path in Path("out").iterdir()] == ["pages"]


@pytest.mark.usefixtures("library")
@pytest.mark.parametrize("name", ["notes.txt", "components/mine.html", "published.json"])
def test_a_folder_with_a_file_of_somebody_else_is_left_alone(typed: Type, name: str) -> None:
    """In an old folder of pages too; the file is named."""
    path = Path("pages", name)
    if name != "published.json":
        typed("publish", "pages", *STORE)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text("{}", "utf-8")
    before = held("pages")
    done = typed("publish", "pages", *STORE)
    assert done.status == 4 and name in done.err
    assert held("pages") == before


@pytest.mark.usefixtures("library")
def test_an_empty_folder_is_taken_and_a_file_is_not(typed: Type) -> None:
    """A file of that name is no folder."""
    Path("empty").mkdir()
    assert typed("publish", "empty", *STORE).status == 0
    Path("file").write_text("mine", "utf-8")
    assert typed("publish", "file", *STORE).status == 4
    assert Path("file").read_text("utf-8") == "mine"


def test_no_library_makes_no_folder(typed: Type) -> None:
    """It is said that there is none, and none is made."""
    assert typed("publish", "pages", "--store", "none.db").status == 3
    assert not Path("pages").exists() and not Path("none.db").exists()
