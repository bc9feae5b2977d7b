"""The recipes that ship with the program."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from counterpane.seeding import SeedFault
from counterpane.seeding.recipes import load_recipes

SOUND = 'slug = "a"\nname = "A"\n[parts]\nbody = "garter"\n[gauge]\nstitches = 20.5\nrows = 30\nover_cm = 10\n'
SOUND += "[size]\nwidth_cm = 70\nlength_cm = 90\n"


def written(root: Path, text: str) -> Path:
    """Write a recipe called a below a folder of seeds."""
    (root / "recipes").mkdir()
    (root / "recipes" / "a.toml").write_text(text)
    return root


def test_the_recipes_load() -> None:
    """At least three, each with its own slug."""
    slugs = [recipe["slug"] for recipe in load_recipes()]
    assert len(slugs) == len(set(slugs)) >= 3


def test_numbers_keep_their_digits(tmp_path: Path) -> None:
    """20.5 is no binary fraction."""
    assert load_recipes(written(tmp_path, SOUND))[0]["gauge"]["stitches"] == Decimal("20.5")


@pytest.mark.parametrize(
    ("old", "new", "place"),
    [('"A"', "3", "/name"), ('"a"', '"b"', "slug"), ("[size]", "[sise]", "/size"), ("= 20.5", "=", "no TOML")],
)
def test_a_recipe_that_does_not_hold_is_refused_with_its_place(tmp_path: Path, old: str, new: str, place: str) -> None:
    """The file and the member are named."""
    with pytest.raises(SeedFault, match=place):
        load_recipes(written(tmp_path, SOUND.replace(old, new)))
