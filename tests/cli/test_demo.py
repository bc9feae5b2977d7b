"""`counterpane demo`: the whole main job, twice, and what it leaves behind."""

from __future__ import annotations

import os
import re
import signal
import stat
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from cli.conftest import Type
from counterpane.cli.commands.demo import corrected
from counterpane.craft.component import content_of
from counterpane.library.parts import components
from counterpane.library.ports import Wanted
from counterpane.library.review import tokens
from counterpane.seeding import load_components
from counterpane.seeding.recipes import load_recipes
from counterpane.wiring import open_library


@pytest.fixture
def season(typed: Type) -> Path:
    """Return the folder of a demonstration that has run."""
    done = typed("demo", "--no-serve")
    assert (done.status, done.err) == (0, "")
    return Path("season")


def test_the_demo_tells_of_every_recipe_and_of_a_mix_that_does_not_fit(typed: Type):
    """Each recipe is planned, and the mix comes with its smallest corrections and what they lead to."""
    done = typed("demo", "--no-serve", "--into", "here")
    assert all(recipe["name"] in done.out for recipe in load_recipes())
    assert "The smallest changes that make it possible" in done.out
    assert len(re.findall("Cast on [0-9]+ stitches by", done.out)) == len(load_recipes()) + 1
    assert "invented" in done.out


def test_every_pattern_of_the_demo_checks_clean(season: Path, typed: Type):
    """A pattern is there as text and as Markdown, each of which goes back through the check, and as HTML and PDF."""
    made = sorted(path for path in (season / "patterns").iterdir() if path.suffix in (".txt", ".md"))
    pages = [path.read_bytes()[:5] for path in sorted((season / "patterns").iterdir()) if path not in made]
    assert len(made) == 2 * len(load_recipes())
    assert pages == [b"<!doc", b"%PDF-"] * len(load_recipes())
    assert [typed("check", str(path)).out.splitlines()[-1] for path in made] == ["Nothing to correct."] * len(made)


def test_the_demo_leaves_a_keepers_token_for_its_owner_alone(season: Path):
    """The library knows it, and nobody else may read the file."""
    path = season / "token"
    with closing(open_library(season / "library.db").store) as store:
        holder = tokens.holder_of(store, path.read_text().strip())
    assert holder.role == "keeper"
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_the_demo_can_be_typed_twice(season: Path, typed: Type):
    """The second time it says the same and keeps the token that works."""
    token, files = (season / "token").read_text(), sorted(season.rglob("*"))
    assert typed("demo", "--no-serve").status == 0
    assert ((season / "token").read_text(), sorted(season.rglob("*"))) == (token, files)


def test_a_file_in_the_way_ends_with_2(typed: Type):
    """The file stays as it is."""
    Path("season").write_text("mine")
    done = typed("demo", "--no-serve")
    assert (done.status, done.out) == (2, "")
    assert Path("season").read_text() == "mine"


def test_a_correction_changes_its_own_place_alone():
    """The request that was given stays as it is."""
    given = {"parts": {"body": ["a", {"stitches": 6}]}}
    changed = corrected(given, {"pointer": "/parts/body/1/stitches", "value": 7})
    assert changed == {"parts": {"body": ["a", {"stitches": 7}]}}
    assert given == {"parts": {"body": ["a", {"stitches": 6}]}}


def test_a_library_left_between_parts_and_recipes_is_completed(typed: Type):
    """An interruption may come between the two; the next run puts in what is missing."""
    Path("season").mkdir()
    with closing(open_library("season/library.db", starters=False).store) as store:
        parts = [content_of(component) for component in load_components()]
        library = open_library(starters=False)
        store.add(*(components.entry_of(library, content, "starters", "accepted") for content in parts))
    assert typed("demo", "--no-serve").status == 0
    with closing(open_library("season/library.db", starters=False).store) as store:
        assert len(store.page(Wanted("recipe")).cards) == len(load_recipes())


def test_an_interrupted_demo_leaves_no_half_file_and_completes_the_next_time(tmp_path: Path, typed: Type):
    """A shell calls both ends 130: the status, and death by the very signal, which some imports lead to."""
    command = [sys.executable, "-m", "counterpane", "demo", "--no-serve"]
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    with subprocess.Popen(command, cwd=tmp_path, env=environment, stdout=-1, stderr=-1, text=True) as running:
        assert running.stdout
        next(line for line in running.stdout if "The library holds" in line)
        running.send_signal(signal.SIGINT)
        said = running.communicate(timeout=60)[1]
    assert running.returncode in (130, -signal.SIGINT)
    assert "interrupted" in said
    assert "Traceback" not in said
    assert [path for path in (tmp_path / "season").rglob("*") if path.name.startswith(".")] == []
    assert typed("demo", "--no-serve").status == 0
