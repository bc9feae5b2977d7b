"""`counterpane regauge`: a recipe with another yarn, at the same size or with the same counts."""

from __future__ import annotations

import argparse
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.options import slug, take_input, take_json, take_store

NAME = "regauge"
ABOUT = """Take a recipe to another gauge: the same size from other counts, and the same counts at another size.

The input is a plan request or a recipe in TOML or JSON at its own gauge. Where the same counts change the shape, that
is printed too. The exit status is 1 where the recipe cannot be planned at its own gauge, or not in the same size."""
EXAMPLES = """examples:
  $ counterpane regauge blanket.toml --stitches 18 --rows 25
  $ counterpane regauge blanket.toml --stitches 5 --rows 7 --over-in 1 --in waffle --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    parser.add_argument("--stitches", required=True, metavar="N", help="the stitches that the other swatch counted")
    parser.add_argument("--rows", required=True, metavar="N", help="the rows that it counted")
    window = parser.add_mutually_exclusive_group()
    window.add_argument("--over-cm", metavar="CM", help="the centimetres they were counted over (10 if not given)")
    window.add_argument("--over-in", metavar="IN", help="or the inches")
    parser.add_argument("--in", dest="texture", type=slug, metavar="SLUG", help="the texture that it was knitted in")
    take_json(parser)
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Plan, take the plan to the other gauge, and show both ways."""
    from counterpane.cli.planning import answered_over, read_request
    from counterpane.library.plans.regauging import plan_regauge

    asked = read_request(options.file)
    with output.waiting("planning"):
        made = answered_over({**asked.content, "to": _gauge(options)}, options.store, plan_regauge)
    if options.json:
        output.put_json(made.answer)
    else:
        from counterpane.cli.showing import plans, regauging

        with output.page() as console:
            draw = regauging.draw if made.done else plans.draw_refusal
            draw(console, asked.title or "A blanket", made.answer)
    whole = made.done and made.answer["same_size"]["counts"] is not None
    return endings.DONE if whole else endings.FOUND


def _gauge(options: argparse.Namespace) -> dict[str, Any]:
    window = {"over_in": options.over_in} if options.over_in else {"over_cm": options.over_cm or "10"}
    return {"stitches": options.stitches, "rows": options.rows, "in": options.texture} | window
