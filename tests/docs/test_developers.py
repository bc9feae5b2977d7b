"""The map of DEVELOPERS.md is the tree on the disk, and its recipes lead to files that exist."""

from __future__ import annotations

import re
from pathlib import Path

from docs.console import TOP

TEXT = (TOP / "DEVELOPERS.md").read_text("utf-8")
ROOTS = ("service/counterpane", "schema/counterpane_schema", "seeds", "tests", "openapi")
CHECK = "bash .ci/run"


def _mapped() -> set[str]:
    block = re.search(r"^```text\n(.*?)^```$", TEXT, re.DOTALL | re.MULTILINE)
    assert block
    return {line.split()[0].rstrip("/") for line in block[1].splitlines() if line.strip()}


def _folders(root: Path) -> set[str]:
    kept = {path.parent for path in root.rglob("*") if path.is_file() and "__pycache__" not in path.parts}
    return {
        folder.relative_to(TOP).as_posix() for folder in kept if not any(part.startswith(".") for part in folder.parts)
    }


def test_every_folder_of_the_tree_is_on_the_map():
    """Whoever adds a folder says on the map what it is for."""
    on_disk = set().union(*(_folders(TOP / root) for root in ROOTS))
    assert on_disk <= _mapped(), sorted(on_disk - _mapped())


def test_everything_on_the_map_is_on_the_disk():
    """A folder or file that has gone leaves the map too."""
    assert [path for path in sorted(_mapped()) if not (TOP / path).exists()] == []


def test_every_recipe_is_a_numbered_list_that_ends_in_the_one_check():
    """Each section called "To add …" counts its steps from 1, and the last one runs the check command."""
    recipes = re.findall(r"^### To add .*?\n(.*?)(?=^#)", TEXT + "\n#", re.DOTALL | re.MULTILINE)
    assert len(recipes) == 7
    for recipe in recipes:
        steps = re.findall(r"^(\d+)\. (.*(?:\n   .*)*)", recipe, re.MULTILINE)
        assert [int(number) for number, _ in steps] == list(range(1, len(steps) + 1))
        assert f"`{CHECK}`" in steps[-1][1]


def test_paths_that_the_text_names_exist():
    """A path in backquotes without a placeholder is a file or folder of the checkout."""
    named = {path for path in re.findall(r"`([\w./-]+/[\w./-]*)`", TEXT) if path.split("/")[0] in _tops()}
    assert [path for path in sorted(named) if not (TOP / path).exists()] == []


def test_every_benchmark_has_its_figure() -> None:
    """The table of speed holds each program of the benchmarks, and none that has gone."""
    named = set(re.findall(r"^\| `(bench_\w+\.py)` \|.*\d.*\|$", TEXT, re.MULTILINE))
    assert named == {path.name for path in (TOP / "tests" / "benchmarks").glob("bench_*.py")}


def _tops() -> set[str]:
    return {"service", "schema", "seeds", "tests", "openapi", ".ci"}
