"""`counterpane explain`: what a rule looks for, why, and how the fault is put right."""

from __future__ import annotations

import argparse
from typing import Any

from counterpane.cli import endings, output
from counterpane.cli.options import take_json

NAME = "explain"
ABOUT = """Explain a rule by its slug: what it looks for, why it matters, a bad example and the same put right.

The name of a family, such as counting, lists its rules; without a name all rules are listed."""
EXAMPLES = """examples:
  $ counterpane explain row-runs-short
  $ counterpane explain counting
  $ counterpane explain row-runs-short --json"""

LISTED = "`counterpane explain` lists the rules, `counterpane find` the parts."


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument(
        "slug", metavar="SLUG", nargs="?", help="the name of a rule, as findings give it, or of a family"
    )
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Show the rule of this slug, or list the rules of a family or all."""
    from counterpane.library import rules

    listed = [card for card in rules.cards() if options.slug in (None, card["family"])]
    if listed:
        return _list(listed, options)
    rule = _rule(options.slug)
    if options.json:
        output.put_json(rule)
        return endings.DONE
    from counterpane.cli.showing.rules import words

    output.put(words(rule))
    return endings.DONE


def _rule(slug: str) -> dict[str, Any]:
    from counterpane.library import rules
    from counterpane.library.errors import NotFound

    try:
        return rules.get(slug)
    except NotFound as missing:
        near = missing.hint != NotFound.hint
        raise NotFound(str(missing), missing.hint if near else LISTED) from None


def _list(cards: list[dict[str, Any]], options: argparse.Namespace) -> int:
    if options.json:
        output.put_json({"items": cards})
        return endings.DONE
    from counterpane.cli.showing.rules import lines

    output.put(lines(cards))
    return endings.DONE
