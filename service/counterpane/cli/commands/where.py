"""`counterpane where`: which row a piece is on."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_input, take_json, take_store, take_terms

NAME = "where"
ABOUT = """Find out which row a piece is on, by a few questions about what its fabric shows.

The input is the plan request or recipe that the piece was begun by, in TOML or JSON. Each run asks one question; type
the command again with the answer added. Whoever cannot tell answers not-sure."""
EXAMPLES = """examples:
  $ counterpane where blanket.toml
  $ counterpane where blanket.toml --seen part=body
  $ counterpane where blanket.toml --seen part=body --seen needle="RS: k2 p2 / p4" --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_input(parser, "the plan request or recipe of the piece, TOML or JSON")
    answer = "an answer: QUESTION=ANSWER; once for each question"
    parser.add_argument("--seen", action="append", default=[], metavar="Q=A", help=answer)
    take_terms(parser, "US terms if not given")
    take_json(parser)
    take_store(parser, "else the parts that ship with the program")


def run(options: argparse.Namespace) -> int:
    """Ask the next question, or tell the rows that are left, or why the piece cannot be planned."""
    from counterpane.cli.planning import answered_over, read_request
    from counterpane.library.knitting.where import where

    asked = read_request(options.file)
    content = {**asked.content, "seen": _seen(options.seen), "terms": options.terms}
    with output.waiting("planning"):
        made = answered_over(content, options.store, where)
    if options.json:
        output.put_json(made.answer)
    else:
        from counterpane.cli.showing import plans
        from counterpane.cli.showing import where as showing

        with output.page() as console:
            draw = showing.draw if made.done else plans.draw_refusal
            draw(console, asked.title or "A blanket", made.answer)
    return endings.DONE if made.done else endings.FOUND


def _seen(given: list[str]) -> dict[str, str]:
    """Return the answers by their questions; Unreadable for what is none."""
    from counterpane.craft.helping.narrowing import ORDER

    found: dict[str, str] = {}
    for each in given:
        question, sign, answer = each.partition("=")
        if not sign or question not in ORDER:
            raise endings.Unreadable(f"--seen {each}: write QUESTION=ANSWER; questions are {', '.join(ORDER)}.")
        if question in found:
            raise endings.Unreadable(f"--seen {question} stands twice: give one answer.")
        found[question] = answer
    return found
