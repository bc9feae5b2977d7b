"""`counterpane draw`: a plan as a picture."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from counterpane.cli import endings, output
from counterpane.cli.options import folder, take_input, take_store, take_terms, take_units

if TYPE_CHECKING:
    from counterpane.craft.stitches import Terms

NAME = "draw"
ABOUT = """Draw a plan as a picture in SVG: its rows as a chart, its fabric, or a schematic.

The input is a plan request or a recipe in TOML or JSON. The exit status is 1 where no plan can be made of it."""
EXAMPLES = """examples:
  $ counterpane draw blanket.toml --view schematic --out blanket.svg
  $ counterpane draw blanket.toml --view chart --terms uk
  $ counterpane draw blanket.toml --view fabric --side WS --out back.svg"""
VIEWS = ("chart", "fabric", "schematic")


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    parser.add_argument("--view", metavar="VIEW", required=True, help=f"one of {', '.join(VIEWS)}")
    parser.add_argument(
        "--side", choices=("RS", "WS"), default="RS", help="the side of the fabric seen (RS if not given)"
    )
    mirrors = "left mirrors chart and fabric for left-handers who work mirrored"
    parser.add_argument("--hand", choices=("right", "left"), default="right", help=mirrors)
    take_terms(parser, "US terms if not given")
    take_units(parser)
    parser.add_argument("--out", type=folder, metavar="PATH", help="write into this file instead of standard output")
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Plan, draw, and put the picture where it was asked for."""
    from counterpane.cli.planning import bench_over, planned, read_request, show_refusal
    from counterpane.library.patterns.drawings import Wish, draw

    if options.view not in VIEWS:
        raise endings.Unreadable(f"a plan cannot be drawn as {options.view!r}", f"Views are {', '.join(VIEWS)}.")
    asked = read_request(options.file)
    with output.waiting("drawing"), bench_over(asked.content, options.store) as bench:
        made = planned(asked.content, bench)
        if made.plan is None:
            return show_refusal(asked, made)
        terms: Terms = options.terms or "us"
        wish = Wish(options.view, asked.title, terms, options.side, options.units, options.hand)
        picture = draw(made.plan, bench.known.vocabulary, wish)
    output.deliver(picture, options.out)
    return endings.FOUND if made.has_errors else endings.DONE
