"""`counterpane check`: read rows, derive their count, and say what does not add up."""

from __future__ import annotations

import argparse
import re
from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from counterpane.cli import endings, output
from counterpane.cli.inputs import Given, read_text
from counterpane.cli.options import stitches, take_input, take_json, take_terms

if TYPE_CHECKING:
    from counterpane.craft.stitches import Vocabulary

NAME = "check"
ABOUT = """Read rows as they are written, derive the stitches they take, and check every number printed in them.

The exit status is 0 where nothing is wrong and 1 where there is an error; with --correct it judges
the corrected text."""
EXAMPLES = """examples:
  $ counterpane check rows.txt
  $ counterpane check rows.txt --cast-on 29 --json
  $ printf 'Row 1: *k2, p2; rep from * to end.\\n' | counterpane check -
  $ counterpane check rows.txt --correct"""

_PLAN = re.compile(r"^\s*\[parts[\].]|\"parts\"\s*:", re.M)
"""How a plan request in TOML or JSON begins its parts."""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "a text of rows")
    parser.add_argument("--cast-on", type=stitches, metavar="N", help="begin with N stitches, whatever the text says")
    take_terms(parser, "else as the text suggests")
    take_json(parser)
    parser.add_argument(
        "--correct",
        action="store_true",
        help="write the text with the corrections that can be computed, nothing else changed",
    )


def run(options: argparse.Namespace) -> int:
    """Check the text and show the answer."""
    from counterpane.seeding import load_vocabulary

    given, vocabulary = read_text(options.file), load_vocabulary()
    with output.waiting(f"checking {given.name}"):
        if options.correct:
            return _correct(given, vocabulary, options)
        return _show(given, vocabulary, options)


def _correct(given: Given, vocabulary: Vocabulary, options: argparse.Namespace) -> int:
    from counterpane.library.texts.checks import check_text, corrected

    better = corrected(given.text, vocabulary, options.cast_on, options.terms)
    left = check_text(better, vocabulary, options.cast_on, options.terms)
    if options.json:
        output.put_json({**left, "corrected": better})
    else:
        output.put(("\ufeff" if given.marked else "") + better)
        _tell_left(given, left)
    return _status(left)


def _show(given: Given, vocabulary: Vocabulary, options: argparse.Namespace) -> int:
    from counterpane.library.texts.checks import check_text

    answer = check_text(given.text, vocabulary, options.cast_on, options.terms)
    if options.json:
        output.put_json(answer)
    else:
        from counterpane.cli.showing import checks

        with output.page() as console:
            checks.draw(console, given.name, given.text, answer)
        if not answer["rows"] and _PLAN.search(given.text):
            output.tell("note: this looks like a plan request, which `counterpane plan` reads.")
    return _status(answer)


def _tell_left(given: Given, left: Mapping[str, Any]) -> None:
    sizes = left["sizes"] or [left]
    told = [finding for size in sizes for finding in size["findings"]]
    for finding in [each for index, each in enumerate(told) if each not in told[:index]]:
        place = f"{given.name}:{finding['line']}:{finding['column']}"
        output.tell(f"{place}: {finding['severity']}: {finding['message']} ({finding['rule']})")


def _status(answer: Mapping[str, Any]) -> int:
    sizes = answer["sizes"] or [answer]
    wrong = any(found["severity"] == "error" for size in sizes for found in size["findings"])
    return endings.FOUND if wrong else endings.DONE
