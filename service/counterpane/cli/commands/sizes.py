"""`counterpane sizes`: what blankets are called, how large they are said to be, and how that lies beside cots."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_json

NAME = "sizes"
ABOUT = """List the sizes of blankets by their names, or show one: what each source says, and cots beside it.

A plan takes such a name in place of a width and a length: [size] named = "pram". No standard sets any of them."""
EXAMPLES = """examples:
  $ counterpane sizes
  $ counterpane sizes pram
  $ counterpane sizes pram --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("name", metavar="NAME", nargs="?", help="the name of a size; all are listed without one")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Show one size, or list all."""
    from counterpane.library.plans import sizes
    from counterpane.seeding.facts import facts_by_name

    facts = facts_by_name()
    answer = {"items": sizes.cards(facts)} if options.name is None else sizes.get(facts, options.name)
    if options.json:
        output.put_json(answer)
        return endings.DONE
    from counterpane.cli.showing import sizes as showing

    with output.page() as console:
        draw = showing.draw_list if options.name is None else showing.draw
        draw(console, answer)
    return endings.DONE
