"""`counterpane demo`: a season of blankets in an invented studio, from the library to the written patterns."""

from __future__ import annotations

import argparse
import copy
from collections.abc import Callable, Mapping
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output, studio
from counterpane.cli.commands.serve import serve_until_interrupted, take_address
from counterpane.cli.commands.write import written
from counterpane.cli.options import folder
from counterpane.cli.planning import Planned, asked_of, planned

if TYPE_CHECKING:
    from rich.console import Console

    from counterpane.library.services import Services

NAME = "demo"
ABOUT = """Prepare a season of baby blankets in an invented studio, and serve its library.

It makes a library, plans four recipes, shows a mix that cannot be made with its smallest corrections, and writes the
patterns. All figures of the scenario are invented. Typed again it goes on with what is there."""
EXAMPLES = """examples:
  $ counterpane demo --no-serve
  $ counterpane demo --into season --no-serve"""
PATTERNS = (("text", "txt"), ("markdown", "md"), ("html", "html"), ("pdf", "pdf"))


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("--into", type=folder, metavar="DIR", default=Path("season"), help="the folder (else season)")
    parser.add_argument("--no-serve", action="store_true", help="end when all is written, without serving the library")
    take_address(parser)


def run(options: argparse.Namespace) -> int:
    """Tell the story, and serve unless told not to."""
    place = options.into
    if place.exists() and not place.is_dir():
        raise endings.Unreadable(f"{place} is a file, not a folder", "Name another place with --into.")
    place.mkdir(parents=True, exist_ok=True)
    store = place / "library.db"
    _tell_story(place, store)
    return endings.DONE if options.no_serve else serve_until_interrupted(options, str(store))


def _tell_story(place: Path, store: Path) -> None:
    from counterpane.cli.showing import season
    from counterpane.seeding import shipped
    from counterpane.seeding.recipes import load_recipes
    from counterpane.wiring import open_library

    recipes = load_recipes()
    _show(lambda console: console.print(studio.OPENING.format(count=len(recipes))))
    with output.waiting("putting the parts into the library"):
        services = open_library(store)
    with closing(services.store):
        _show(lambda console: season.draw_library(console, list(shipped().values())))
        for recipe in recipes:
            _plan_and_write(services, recipe, place)
        _show_misfit(services)
        _keep_token(services, place / "token")
    said = studio.CLOSING.format(place=place, patterns=len(recipes), command=output.called())
    _show(lambda console: season.draw_closing(console, said))


def _plan_and_write(services: Services, recipe: Mapping[str, Any], place: Path) -> None:
    from counterpane.cli.showing import season
    from counterpane.seeding import seeds_root

    asked, slug = asked_of(recipe), recipe["slug"]
    with output.waiting(f"planning {recipe['name']}"):
        made = _planned(services, asked.content)
    _show(lambda console: season.draw_plan(console, recipe, made.answer))
    source = seeds_root() / "recipes" / f"{slug}.toml"
    output.save(place / "recipes" / source.name, source.read_text("utf-8"))
    for form, suffix in PATTERNS:
        output.save(place / "patterns" / f"{slug}.{suffix}", written(asked, made, services.known, form))


def _show_misfit(services: Services) -> None:
    from counterpane.cli.showing import season

    refused = _planned(services, studio.MISFIT)
    _show(lambda console: season.draw_misfit(console, studio.MISFIT_TITLE, studio.MISFIT_STORY, refused.answer))
    first = refused.answer["corrections"][0]
    made = _planned(services, corrected(studio.MISFIT, first))
    _show(lambda console: season.draw_corrected(console, first, made.answer))


def corrected(content: Mapping[str, Any], correction: Mapping[str, Any]) -> dict[str, Any]:
    """Return a request with the value of a correction at its pointer."""
    changed = copy.deepcopy(dict(content))
    *way, last = correction["pointer"].removeprefix("/").split("/")
    inner: Any = changed
    for step in way:
        inner = inner[int(step)] if isinstance(inner, list) else inner[step]
    inner[last] = correction["value"]
    return changed


def _planned(services: Services, content: Mapping[str, Any]) -> Planned:
    from counterpane.library.plans.bench import bench_of

    return planned(content, bench_of(services, content))


def _keep_token(services: Services, path: Path) -> None:
    """Leave a keeper's token that the library knows, readable by its owner alone; one that works stays."""
    from counterpane.library.errors import Unknown
    from counterpane.library.review import tokens

    try:
        tokens.holder_of(services.store, path.read_text("utf-8").strip())
    except (OSError, UnicodeDecodeError, Unknown):
        token = tokens.create(services.store, "keeper", "the keeper of Ninepenny Loft", services.now())
        output.save(path, f"{token}\n", mode=0o600)
    path.chmod(0o600)


def _show(draw: Callable[[Console], object]) -> None:
    with output.page() as console:
        draw(console)
