"""`counterpane swatch`: what to knit and to measure before a blanket is begun."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_input, take_json, take_store, take_terms

NAME = "swatch"
ABOUT = """Write a swatch of each fabric of a plan: what to cast on and to work, and what to do with it.

The input is a plan request or a recipe in TOML or JSON; its gauge may be a guess, such as that of the yarn's label.
What the swatches count goes into `counterpane gauge`. The exit status is 1 where no plan can be made of it."""
EXAMPLES = """examples:
  $ counterpane swatch blanket.toml
  $ counterpane swatch blanket.toml --terms uk --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    take_terms(parser, "US terms if not given")
    take_json(parser)
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Plan, and show the swatches of the plan, or why there is none."""
    from counterpane.cli.planning import answered_over, read_request
    from counterpane.library.plans.swatches import write_swatches

    asked = read_request(options.file)
    with output.waiting("planning"):
        made = answered_over({**asked.content, "terms": options.terms}, options.store, write_swatches)
    if options.json:
        output.put_json(made.answer)
    else:
        from counterpane.cli.showing import plans, swatches

        with output.page() as console:
            draw = swatches.draw if made.done else plans.draw_refusal
            draw(console, asked.title or "A blanket", made.answer)
    return endings.DONE if made.done else endings.FOUND
