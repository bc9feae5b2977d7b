"""`counterpane review`: a decision about what waits, never without a reason for people."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_there
from counterpane.cli.options import person, slug, take_json, take_store

DECISIONS = ("accept", "ask", "refuse", "uphold", "dismiss")
NAME = "review"
ABOUT = """Decide about what waits under a slug: the safety report, else the submission.

A submission is accepted, asked about or refused; a report is upheld or dismissed. Each takes a code, which
`--because list` shows with their meanings, and a sentence for whoever is concerned. Nobody decides about what they
added or submitted."""
EXAMPLES = """examples:
  $ counterpane review ridge --ask --because wording-unclear --say "Row 2?" --by Suri --store season.db
  $ counterpane review ridge --because list"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("which", metavar="SLUG", type=slug, help="what is decided about")
    ways = parser.add_mutually_exclusive_group()
    for each in DECISIONS:
        ways.add_argument(f"--{each}", dest="decision", action="store_const", const=each, help=f"{each} it")
    parser.add_argument("--because", metavar="CODE", required=True, help="the code of the reason, or list")
    parser.add_argument("--say", metavar="TEXT", help="the reason in a sentence for people")
    parser.add_argument("--by", type=person, metavar="NAME", help="who decides")
    take_store(parser)
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Decide and say where it stands."""
    from counterpane.library.ports import Holder
    from counterpane.library.review import submissions

    if options.because == "list":
        return _list()
    for name in ("decision", "say", "by"):
        if not getattr(options, name):
            wanted = " or ".join(f"--{each}" for each in DECISIONS) if name == "decision" else f"--{name}"
            raise endings.Unreadable(f"a decision needs {wanted}", "See `counterpane review --help`.")
    content = {"decision": options.decision, "because": options.because, "say": options.say}
    with library_there(options.store) as services:
        number = submissions.open_of(services, options.which).number
        holder = Holder("", "reviewer", options.by, services.now())
        told = submissions.decide(services, number, content, holder)
    if options.json:
        output.put_json(told)
    else:
        output.put(f"submission {number}, {told['about']} {told['slug']}: {options.decision} ({options.because})\n")
    return endings.DONE


def _list() -> int:
    from counterpane.cli.showing.tables import table_of
    from counterpane.library.review.reasons import REASONS

    with output.page() as console:
        table = table_of("Code", "Meaning", "For")
        for reason in REASONS:
            table.add_row(reason.code, reason.meaning, ", ".join(reason.serves))
        console.print(table)
    return endings.DONE
