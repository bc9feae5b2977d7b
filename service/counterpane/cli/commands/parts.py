"""`counterpane parts`: what there is to choose from, and one part with its rows."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, Any, TypeVar

from counterpane.cli import endings, output
from counterpane.cli.options import stitches, take_json, take_store

if TYPE_CHECKING:
    from counterpane.library.services import Services

NAME = "parts"
ABOUT = """List the textures, borders, edges, cast-ons and bind-offs to choose from, or show one with its rows.

The first word of a line is the name that a plan takes. The stitches that each takes are derived from its rows."""
EXAMPLES = """examples:
  $ counterpane parts --kind body
  $ counterpane parts --kind body --admits 133 --reversible yes
  $ counterpane parts --words lace
  $ counterpane parts waffle"""
KINDS = ("cast-on", "border", "selvedge", "body", "bind-off")
LISTED = "`counterpane parts` lists all of them."
PAGE = 200  # Cards that are read from the store at a time; house.

Answer = TypeVar("Answer")


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("slug", metavar="SLUG", nargs="?", help="one part, with its rows; all are listed without one")
    parser.add_argument("--kind", choices=KINDS, help="only parts of this kind")
    parser.add_argument("--admits", type=stitches, metavar="N", help="only parts that can be worked over N stitches")
    parser.add_argument(
        "--reversible", choices=("yes", "both-good", "no"), help="alike on both sides, both fit to show, or neither"
    )
    parser.add_argument("--words", metavar="TEXT", help="only parts that hold all these words")
    take_store(parser, "else the parts that ship with the program")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Show one part, or list those that are wanted."""
    answer = _over(options, _one if options.slug else _many)
    if options.json:
        output.put_json(answer)
        return endings.DONE
    from counterpane.cli.showing import parts

    with output.page() as console:
        draw = parts.draw if options.slug else parts.draw_list
        draw(console, answer)
    return endings.DONE


def _over(options: argparse.Namespace, work: Callable[[Services, argparse.Namespace], Answer]) -> Answer:
    from counterpane.wiring import open_library

    with output.waiting("looking through the parts"):
        services = open_library(options.store) if options.store else open_library()
        try:
            return work(services, options)
        finally:
            services.store.close()


def _one(services: Services, options: argparse.Namespace) -> dict[str, Any]:
    import orjson

    from counterpane.library import components
    from counterpane.library.errors import NotFound
    from counterpane.library.near import nearest

    try:
        kept = components.get(services, options.slug)
    except NotFound as missing:
        known = [card["slug"] for card in _cards(services, {})]
        raise NotFound(str(missing), nearest(options.slug, known) or LISTED) from None
    shown: dict[str, Any] = orjson.loads(kept.body)
    return shown


def _many(services: Services, options: argparse.Namespace) -> dict[str, Any]:
    asked = {"kind": options.kind, "admits": options.admits, "reversible": options.reversible, "q": options.words}
    filters = {name: value for name, value in asked.items() if value is not None}
    return {"items": list(_cards(services, filters))}


def _cards(services: Services, filters: dict[str, Any]) -> Iterator[dict[str, Any]]:
    import orjson

    from counterpane.library import listing

    page = listing.page(services, "component", filters, None, PAGE)
    yield from map(orjson.loads, page.cards)
    while page.last is not None:
        page = listing.page(services, "component", filters, page.last, PAGE)
        yield from map(orjson.loads, page.cards)
