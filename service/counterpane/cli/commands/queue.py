"""`counterpane queue`: what waits to be decided, or to be changed by who submitted it."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_there
from counterpane.cli.options import take_json, take_store

NAME = "queue"
ABOUT = """List what waits in a library: safety reports first, then what waits for us, the oldest first.

Each line says whose turn it is and for how many days. What is closed is listed with `--turn nobody`."""
EXAMPLES = """examples:
  $ counterpane queue --store season.db
  $ counterpane queue --turn us --json --store season.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("--turn", choices=("us", "contributor", "nobody"), help="only what waits for these")
    parser.add_argument("--lane", choices=("safety", "review"), help="only reports, or only submissions")
    take_store(parser)
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """List the queue."""
    from counterpane.cli.showing.tables import table_of
    from counterpane.library.review import submissions

    asked = {name: getattr(options, name) for name in ("turn", "lane") if getattr(options, name)}
    with library_there(options.store) as services:
        found = list(submissions.everything(services, **asked))
    if options.json:
        output.put_json({"items": found})
        return endings.DONE
    if not found:
        output.put("Nothing waits.\n")
        return endings.DONE
    with output.page() as console:
        table = table_of("Number", "Lane", "What", "By", "Turn", "Since", "Days")
        for each in found:
            what, by = f"{each['about']} {each['slug']}", each["by"]["name"] or each["by"]["key"]
            days = "" if each["waiting_days"] is None else str(each["waiting_days"])
            table.add_row(str(each["number"]), each["lane"], what, by, each["turn"], each["since"][:10], days)
        console.print(table)
    return endings.DONE
