"""`counterpane explain`: what a rule looks for, why, and how the fault is put right."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_json

NAME = "explain"
ABOUT = "Explain a rule by its slug: what it looks for, why it matters, a bad example and the same put right."
EXAMPLES = """examples:
  $ counterpane explain row-runs-short
  $ counterpane explain row-runs-short --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("slug", metavar="SLUG", help="the name of a rule, as findings give it")
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Show the rule of this slug."""
    from counterpane.library import rules

    rule = rules.get(options.slug)
    if options.json:
        output.put_json(rule)
        return endings.DONE
    from counterpane.cli.showing.rules import words

    output.put(words(rule))
    return endings.DONE
