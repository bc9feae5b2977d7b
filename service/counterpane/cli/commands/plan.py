"""`counterpane plan`: work out a recipe at a gauge and a size."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_input, take_json, take_profile, take_store

NAME = "plan"
ABOUT = """Work out a recipe at a gauge and a size: the stitches to cast on, the rows, the finished size.

The input is a plan request or a recipe in TOML or JSON. The exit status is 1 where the parts cannot be made to
fit; the answer then gives the smallest changes with which they do.

A plan request needs a body, a gauge and a size; all else may be left out:

  [parts]
  body = "waffle"                            `counterpane find` lists the names; or { text = "Row 1 (RS): …" }
  sides = { component = "garter-border", stitches = 6 }
  bottom = { component = "garter-border", rows = 12 }

  [[gauge]]                                  one for each fabric that was swatched
  stitches = 21
  rows = 28
  over_cm = 10                               or over_in = 4
  in = "waffle"

  [size]
  width_cm = 75                              or width_in = 30; or named = "pram"
  length_cm = 90

  [for]                                      for whom; what is left out is not assessed
  age_months = [0, 12]
  use = "pram"
  markets = ["UK"]"""
EXAMPLES = """examples:
  $ counterpane plan blanket.toml
  $ counterpane plan blanket.toml --json
  $ counterpane plan blanket.toml --profile neonatal-unit-oxford-relayed"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a plan request or recipe, TOML or JSON")
    take_json(parser)
    take_store(parser, "else the parts that ship with the program")
    take_profile(parser)


def run(options: argparse.Namespace) -> int:
    """Plan and show the answer, or why there is none."""
    from counterpane.cli.planning import bench_over, planned, problem_document, read_request, with_profile
    from counterpane.library.errors import LicenceRefused

    asked = with_profile(read_request(options.file), options.profile)
    with output.waiting("planning"), bench_over(asked.content, options.store) as bench:
        try:
            made = planned(asked.content, bench)
        except LicenceRefused as refusal:
            if options.json:
                output.put_json(problem_document(refusal))
            raise
    if options.json:
        output.put_json(made.answer)
    else:
        from counterpane.cli.showing import plans

        with output.page() as console:
            draw = plans.draw if made.plan else plans.draw_refusal
            draw(console, asked.title or "A blanket", made.answer)
    return endings.FOUND if made.has_errors else endings.DONE
