"""seeds/recipes/<slug>.toml → recipes as JSON values, through the schema that the API has for them."""

from __future__ import annotations

import tomllib
from decimal import Decimal
from pathlib import Path
from typing import Any

from counterpane.seeding.faults import SeedFault
from counterpane.seeding.roots import seeds_root, toml_files
from counterpane_schema.faults import faults_of
from counterpane_schema.recipe import RecipeContent


def load_recipes(root: Path | None = None) -> tuple[dict[str, Any], ...]:
    """Load the recipes in order of slug, their numbers with the digits as written; SeedFault for a misfit."""
    return tuple(_load(path, file) for path, file in toml_files(root or seeds_root(), "recipes"))


def _load(path: Path, file: str) -> dict[str, Any]:
    try:
        content = tomllib.loads(path.read_text("utf-8"), parse_float=Decimal)
    except (UnicodeDecodeError, tomllib.TOMLDecodeError) as fault:
        raise SeedFault(file, "", f"it is no TOML: {fault}", "Correct it.") from None
    for wrong in faults_of(RecipeContent(), content):
        raise SeedFault(file, wrong.pointer, wrong.message, wrong.hint or "Correct it.")
    if content["slug"] != path.stem:
        raise SeedFault(
            file, "slug", "the slug does not name the file", f"Move it to seeds/recipes/{content['slug']}.toml."
        )
    return content
