"""`counterpane swatch`: what to knit and to measure before a blanket is begun."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from typing import Any

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
    from counterpane.cli.planning import planned_over, read_request
    from counterpane.library import swatches
    from counterpane.seeding import load_vocabulary

    asked = read_request(options.file)
    made = planned_over(asked.content, options.store)
    if made.plan is None:
        return refuse(asked.title, made.answer, as_json=options.json)
    answer = swatches.of_plan(made.plan, load_vocabulary(), options.terms or "us")
    if options.json:
        output.put_json(answer)
        return endings.DONE
    from counterpane.cli.showing import swatches as showing

    with output.page() as console:
        showing.draw(console, asked.title or "A blanket", answer)
    return endings.DONE


def refuse(title: str | None, problem: Mapping[str, Any], *, as_json: bool) -> int:
    """Show why no plan can be made."""
    if as_json:
        output.put_json(problem)
        return endings.FOUND
    from counterpane.cli.showing import plans

    with output.page() as console:
        plans.draw_refusal(console, title or "A blanket", problem)
    return endings.FOUND
