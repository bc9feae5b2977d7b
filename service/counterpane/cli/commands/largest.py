"""`counterpane largest`: the largest blanket of a recipe that the yarn at hand makes."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from decimal import Decimal

from counterpane.cli import endings, output
from counterpane.cli.options import amount, take_input, take_json, take_store

NAME = "largest"
ABOUT = """Work out the largest blanket of a recipe that the yarn at hand makes.

The input is a plan request or a recipe with its yarn, in TOML or JSON; its size tells the shape, or with --keep width
the width. Give an amount once for each yarn, in their order. The margin of the yarn stays in hand. The exit status is
1 where the yarn does for no size."""
EXAMPLES = """examples:
  $ counterpane largest blanket.toml --grams 350
  $ counterpane largest blanket.toml --balls 7 --keep width"""
UNITS = ("grams", "metres", "balls")


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe with its yarn, TOML or JSON")
    for unit in UNITS:
        said = f"what is at hand, in {unit}"
        parser.add_argument(f"--{unit}", dest="have", action="append", type=_stock(unit), metavar="NUMBER", help=said)
    parser.add_argument("--keep", choices=("shape", "width"), default="shape", help="what stays as it is (the shape)")
    take_json(parser)
    take_store(parser, "else the parts that ship with the program")


def _stock(unit: str) -> Callable[[str], dict[str, Decimal]]:
    def stock(text: str) -> dict[str, Decimal]:
        return {unit: amount(text)}

    return stock


def run(options: argparse.Namespace) -> int:
    """Work it out and show it, or why the yarn does for nothing."""
    from counterpane.cli.planning import answered_over, read_request
    from counterpane.library.yarn.yarn_planning import plan_largest

    if not options.have:
        raise endings.Unreadable("what is at hand is not given", "Give --grams, --metres or --balls.")
    asked = read_request(options.file)
    have = options.have if len(options.have) > 1 else options.have[0]
    content = {**asked.content, "have": have, "keep": options.keep}
    with output.waiting("planning"):
        made = answered_over(content, options.store, plan_largest)
    if options.json:
        output.put_json(made.answer)
    else:
        from counterpane.cli.showing import largest, plans

        with output.page() as console:
            draw = largest.draw if made.done else plans.draw_refusal
            draw(console, asked.title or "A blanket", made.answer)
    return endings.DONE if made.done else endings.FOUND
