"""`counterpane plan`: work out a recipe at a gauge and a size."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.options import take_input, take_json

NAME = "plan"
ABOUT = """Work out a recipe at a gauge and a size: the stitches to cast on, the rows, the finished size.

The input is a plan request or a recipe in TOML or JSON. The exit status is 1 where the parts cannot be made to
fit; the answer then gives the smallest changes with which they do."""
EXAMPLES = """examples:
  $ counterpane plan blanket.toml
  $ counterpane plan blanket.toml --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Plan and show the answer, or why there is none."""
    from counterpane.cli.planning import planned, read_request

    asked = read_request(options.file)
    made = planned(asked.content)
    if options.json:
        output.put_json(made.answer)
    else:
        _draw(asked.title, made.answer, made.plan is not None)
    return made.status


def _draw(title: str, answer: Mapping[str, Any], fits: bool) -> None:
    from counterpane.cli.showing import plans

    with output.page() as console:
        (plans.draw if fits else plans.draw_refusal)(console, title, answer)
