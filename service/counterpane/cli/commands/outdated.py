"""`counterpane outdated`: which parts of a kept recipe have successors, and what an upgrade would change."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_at
from counterpane.cli.options import slug, take_json, take_store

NAME = "outdated"
ABOUT = """Tell which parts of a kept recipe have successors, and what an upgrade would change.

The recipe is planned as it stands and with the latest revisions; each count, row, length, amount of yarn and finding of
safety that differs is told with both values. Nothing is changed. The status is 1 where no blanket comes of it."""
EXAMPLES = """examples:
  $ counterpane outdated first-frost --store season.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("recipe", metavar="RECIPE", type=slug, help="the slug of a kept recipe")
    take_store(parser)
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Tell what is outdated."""
    from counterpane.library.editions import outdated

    with library_at(options.store) as services, output.waiting("planning it twice"):
        told = outdated.outdated(services, options.recipe)
    if options.json:
        output.put_json(told)
    else:
        output.put("\n".join(outdated.words_of_outdated(told)) + "\n")
    return endings.DONE if told["fits"] else endings.FOUND
