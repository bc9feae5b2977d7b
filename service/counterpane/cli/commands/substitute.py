"""`counterpane substitute`: one yarn in place of another."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import amount, strands, take_json

NAME = "substitute"
ABOUT = """Compare one yarn with another in its place: thickness, class, strands that match, and how much is needed.

A YARN is its metres to 100 g ("230"), its thickness ("435 tex", "Nm 2.3"), or the name of its class ("double
knitting", "8-ply", "worsted"). Thickness alone tells no gauge: knit a swatch."""
EXAMPLES = """examples:
  $ counterpane substitute 230 420 --strands 2 --grams 350
  $ counterpane substitute "double knitting" "435 tex\""""
UNITS = ("grams", "metres", "balls")


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("first", metavar="YARN", help="the yarn that was meant")
    parser.add_argument("second", metavar="OTHER", help="the yarn in its place")
    parser.add_argument("--strands", type=strands, metavar="N", help="strands of the other yarn held together (1)")
    needed = parser.add_mutually_exclusive_group()
    for unit in UNITS:
        needed.add_argument(f"--{unit}", type=amount, metavar="NUMBER", help=f"{unit} of the first yarn to turn over")
    parser.add_argument("--ball-g", type=amount, metavar="NUMBER", help="grams of a ball, of both yarns")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Compare and show."""
    from counterpane.library.yarn.yarn_substitutes import in_words, substitute
    from counterpane.seeding.facts import facts_by_name

    told = next(({unit: getattr(options, unit)} for unit in UNITS if getattr(options, unit) is not None), None)
    ball = {} if options.ball_g is None else {"ball_g": options.ball_g}
    other = {**in_words(options.second), **ball, "strands": options.strands or 1}
    content = {"from": in_words(options.first) | ball, "to": other, "amount": told}
    answer = substitute(content, facts_by_name())
    if options.json:
        output.put_json(answer)
    else:
        from counterpane.cli.showing import substitute as showing

        with output.page() as console:
            showing.draw(console, answer)
    return endings.DONE
