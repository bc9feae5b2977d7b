"""`counterpane explain`: what a rule looks for, why, and how the fault is put right."""

from __future__ import annotations

import argparse
import difflib

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
    from counterpane.craft.rules import RULES

    rules = {rule.slug: rule for rule in RULES}
    if options.slug not in rules:
        near = difflib.get_close_matches(options.slug, rules, n=3, cutoff=0.5)
        hint = f"Perhaps: {', '.join(near)}." if near else f"There are {len(rules)} rules, for example {min(rules)}."
        raise endings.Missing(f"no rule is called {options.slug!r}", hint)
    from counterpane.cli.showing import rules as showing

    rule = rules[options.slug]
    output.put(output.as_json(showing.fields(rule)) if options.json else showing.words(rule))
    return endings.DONE
