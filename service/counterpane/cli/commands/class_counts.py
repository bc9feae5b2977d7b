"""`counterpane class`: one sheet of counts for a class of up to ten gauges."""

from __future__ import annotations

import argparse
import re
from collections.abc import Mapping
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.options import slug, take_input, take_json, take_store

NAME = "class"
ABOUT = """Work out one recipe in one size at the gauges of a class: one sheet with everybody's counts.

The input is a plan request or a recipe in TOML or JSON. A gauge is stitches by rows over 10 cm or 4 in, with a letter
or a first name before it if you like; names are printed and never kept. Yarn needs the yarn in the request. The exit
status is 1 where somebody has no plan."""
EXAMPLES = """examples:
  $ counterpane class blanket.toml --gauge 22x30 --gauge 20x28 --gauge Ines=19.5x27
  $ counterpane class blanket.toml --gauge A=22x30 --in basket-weave --json"""

_GAUGE = re.compile(r"(?:(?P<label>[^=]{1,40})=)?(?P<stitches>[0-9.]{1,12})x(?P<rows>[0-9.]{1,12})")
MOST = 10


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    told = "a gauge, such as 22x30 or Ines=22x30; up to ten"
    parser.add_argument(
        "--gauge", dest="knitters", type=_knitter, action="append", required=True, metavar="GAUGE", help=told
    )
    window = parser.add_mutually_exclusive_group()
    window.add_argument("--over-cm", metavar="CM", help="the centimetres all were counted over (10 if not given)")
    window.add_argument("--over-in", metavar="IN", help="or the inches")
    parser.add_argument("--in", dest="texture", type=slug, metavar="SLUG", help="the texture that all were knitted in")
    take_json(parser)
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Plan at each gauge and show the sheet."""
    from counterpane.cli.planning import answered_over, read_request
    from counterpane.library.plans.class_counts import plan_class

    if len(options.knitters) > MOST:
        raise endings.Unreadable(
            f"{len(options.knitters)} gauges are more than one sheet holds", f"Give {MOST} or fewer."
        )
    asked = read_request(options.file)
    with output.waiting("planning"):
        knitters = [_with_window(each, options) for each in options.knitters]
        made = answered_over({**asked.content, "knitters": knitters}, options.store, plan_class)
    if options.json:
        output.put_json(made.answer)
    else:
        from counterpane.cli.showing import class_counts

        with output.page() as console:
            class_counts.draw(console, asked.title or "A blanket", made.answer)
    return endings.DONE if all(each["cast_on"] for each in made.answer["knitters"]) else endings.FOUND


def _knitter(text: str) -> dict[str, Any]:
    found = _GAUGE.fullmatch(text.strip())
    if found is None:
        raise argparse.ArgumentTypeError(
            f"{text[:40]!r} is no gauge: write stitches x rows, such as 22x30 or Ines=22x30"
        )
    return found.groupdict()


def _with_window(knitter: Mapping[str, Any], options: argparse.Namespace) -> dict[str, Any]:
    window = {"over_in": options.over_in} if options.over_in else {"over_cm": options.over_cm or "10"}
    gauge = {"stitches": knitter["stitches"], "rows": knitter["rows"], "in": options.texture} | window
    return {"label": knitter["label"], "gauge": gauge}
