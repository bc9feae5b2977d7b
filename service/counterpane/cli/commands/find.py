"""`counterpane find`: the parts to choose from, searched as a designer asks, and one part with its rows."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_or_starters
from counterpane.cli.options import beside as beside_stitches
from counterpane.cli.options import gauge, millimetres, percent, slug, span, stitches, take_json, take_store, whole_span
from counterpane_schema.choices import DIFFICULTIES, KINDS, LICENCES, REVERSIBLE

if TYPE_CHECKING:
    from counterpane.library.services import Services

NAME = "find"
ABOUT = """Find textures, borders, edges, cast-ons and bind-offs by words and by what a designer asks of them.

The first word of a line is the name that a plan takes. The stitches that each takes are derived from its rows. What is
not known of a part answers no question: it is left out, and --facets counts it apart."""
EXAMPLES = """examples:
  $ counterpane find
  $ counterpane find lace
  $ counterpane find --kind body --admits 133 --reversible yes
  $ counterpane find --kind body --width 60..80 --gauge 21x28 --lies-flat --row-repeat 2..8
  $ counterpane find --with garter-rib-border --difficulty easy --facets
  $ counterpane find --like seed-stitch
  $ counterpane find --show waffle"""
LISTED = "`counterpane find` lists all of them."
FILTERS = (
    *("kind", "admits", "width_cm", "gauge", "row_repeat", "reversible", "openings_under_mm", "yarn_class"),
    *("difficulty", "licence", "source", "year", "like", "like_percent", "goes_with", "beside", "status"),
)


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("words", metavar="WORD", nargs="*", help="only parts that hold all these words")
    parser.add_argument("--show", metavar="SLUG", help="show this one part, with its rows")
    parser.add_argument("--kind", choices=KINDS, help="only parts of this kind")
    _take_counts(parser)
    _take_fabric(parser)
    _take_origin(parser)
    parser.add_argument("--facets", action="store_true", help="count what is found, by each question")
    take_store(parser, "else the parts that ship with the program")
    take_json(parser)


def _take_counts(parser: argparse.ArgumentParser) -> None:
    add = parser.add_argument
    add("--admits", type=stitches, metavar="N", help="can be worked over N stitches")
    add("--width", dest="width_cm", type=span, metavar="CM..CM", help="can be so wide, in cm at --gauge")
    add("--gauge", type=gauge, metavar="STxROWS", help="for --width: stitches, and rows if you like, to 10 cm")
    add("--with", dest="goes_with", type=slug, metavar="SLUG", help="shares a count with this border, edge or body")
    said = "for --with: stitches on each side over which ends run and the body does not (else 6)"
    add("--beside", type=beside_stitches, metavar="N", help=said)
    add("--row-repeat", type=whole_span, metavar="N..N", help="repeats after so many rows")


def _take_fabric(parser: argparse.ArgumentParser) -> None:
    add = parser.add_argument
    both = "alike on both sides, both fit to show, or neither"
    add("--reversible", choices=REVERSIBLE, help=both)
    add("--lies-flat", action="store_true", help="likely to lie flat, by a model of our own")
    said = "openings measured, all under this; an estimate does not count"
    add("--openings-measured-under", dest="openings_under_mm", type=millimetres, metavar="MM", help=said)
    add("--like", type=slug, metavar="SLUG", help="a texture like that of this one, the likest first")
    add("--like-percent", type=percent, metavar="N", help="for --like: stitches of 100 that agree (else 60)")
    add("--difficulty", choices=DIFFICULTIES, help="of this level, estimated by a rule of our own")
    add(
        "--yarn-class", type=int, choices=range(8), help="worked by its author in yarn of this class, 0 lace to 7 jumbo"
    )


def _take_origin(parser: argparse.ArgumentParser) -> None:
    add = parser.add_argument
    add("--licence", choices=LICENCES, help="words under this licence")
    add("--source", metavar="SLUG", help="from this source, such as lambert-1843")
    add("--year", type=whole_span, metavar="YEAR..YEAR", help="from a source of these years")
    add("--status", metavar="STATE", help="in this state, such as accepted or draft")


def run(options: argparse.Namespace) -> int:
    """Show one part, or list those that are wanted."""
    with output.waiting("looking through the parts"), library_or_starters(options.store) as services:
        answer = (_one if options.show else _many)(services, options)
    if options.json:
        output.put_json(answer)
        return endings.DONE
    from counterpane.cli.showing import parts

    with output.page() as console:
        draw = parts.draw if options.show else parts.draw_list
        draw(console, answer)
    return endings.DONE


def _one(services: Services, options: argparse.Namespace) -> dict[str, Any]:
    import orjson

    from counterpane.library.errors import NotFound
    from counterpane.library.near import nearest
    from counterpane.library.parts import components

    try:
        kept = components.get(services, options.show)
    except NotFound as missing:
        known = [card["slug"] for card in _cards(services, {})]
        raise NotFound(str(missing), nearest(options.show, known) or LISTED) from None
    shown: dict[str, Any] = orjson.loads(kept.body)
    return shown


def _many(services: Services, options: argparse.Namespace) -> dict[str, Any]:
    from counterpane.library.keeping import listing

    filters = {name: value for name in FILTERS if (value := getattr(options, name)) is not None}
    if options.words:
        filters["q"] = " ".join(options.words)
    if options.lies_flat:
        filters["lies_flat"] = "likely"
    answer: dict[str, Any] = {"items": list(_cards(services, filters))}
    return answer | ({"facets": listing.facets(services, filters)} if options.facets else {})


def _cards(services: Services, filters: dict[str, Any]) -> Iterator[dict[str, Any]]:
    import orjson

    from counterpane.library.sharing.exports import cards

    return map(orjson.loads, cards(services, "component", filters))
