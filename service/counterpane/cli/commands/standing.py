"""`counterpane standing`: where the revisions of a slug stand, and moving one outside a review."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from typing import Any, get_args

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_there
from counterpane.cli.options import person, slug, take_json, take_store

SHELVES = ("component", "recipe", "profile")
NAME = "standing"
ABOUT = """Tell where the revisions of a component, a recipe or a list stand, or move one to another state.

A move takes a code, which `counterpane review SLUG --because list` shows with their meanings, and a sentence for
whoever is concerned. It is made as a keeper's, since whoever has the file keeps it, and is logged under a name. A
deprecation names the replacement; a quarantine the day on which it is looked at again, and who looks after it. What
is handed in is decided by `counterpane review`. A withdrawn revision never comes back."""
EXAMPLES = """examples:
  $ counterpane standing waffle --store season.db
  $ counterpane standing linen-stitch --to yanked --because misprint --say "Row 2." --by Suri --store season.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    from counterpane.library.keeping.record import Status

    parser.add_argument("which", metavar="SLUG", type=slug, help="what is told of or moved")
    parser.add_argument("--of", choices=SHELVES, default="component", help="what it is (a component if not given)")
    parser.add_argument("--to", choices=get_args(Status), metavar="STATE", help=f"one of {', '.join(get_args(Status))}")
    parser.add_argument("--revision", metavar="HASH", help="the one that is moved (else the latest)")
    parser.add_argument("--because", metavar="CODE", help="the code of the reason")
    parser.add_argument("--say", metavar="TEXT", help="the reason in a sentence for people")
    parser.add_argument("--by", type=person, metavar="NAME", help="who moves it")
    parser.add_argument("--replacement", type=slug, metavar="SLUG", help="what to use instead of a deprecated one")
    parser.add_argument("--until", metavar="DAY", help="when a quarantine is looked at again, such as 2026-11-30")
    parser.add_argument("--owner", type=person, metavar="NAME", help="who looks after a quarantine")
    take_store(parser)
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Move it, if a state is named, and tell where it stands."""
    from counterpane.library.ports import Holder
    from counterpane.library.review import standing

    content = _content(options)
    with library_there(options.store) as services:
        if content:
            holder = Holder("", "keeper", options.by, services.now())
            told = standing.move(services, options.of, options.which, content, holder)
        else:
            told = standing.told(services, options.of, options.which)
    if options.json:
        output.put_json(told)
    else:
        _draw(told)
    return endings.DONE


def _content(options: argparse.Namespace) -> Mapping[str, Any]:
    """Return the move as it goes over the wire, empty where none is asked for; Unreadable for one that is no move."""
    from counterpane_schema.faults import faults_of
    from counterpane_schema.standing import MoveContent

    names = ("to", "because", "say", "revision", "replacement", "until", "owner")
    given = {name: value for name in names if (value := getattr(options, name)) is not None}
    if not given and options.by is None:
        return {}
    for name in ("to", "because", "say", "by"):
        if not getattr(options, name):
            raise endings.Unreadable(f"a move needs --{name}", "See `counterpane standing --help`.")
    for fault in faults_of(MoveContent(), given):
        raise endings.Unreadable(f"--{fault.pointer.lstrip('/')}: {fault.message}", fault.hint or "")
    return given


def _draw(told: Mapping[str, Any]) -> None:
    from counterpane.cli.showing.tables import table_of
    from counterpane.cli.showing.words import visible

    with output.page() as console:
        table = table_of("Number", "State", "Hash")
        for each in told["revisions"]:
            table.add_row(str(each["number"]), each["status"], each["sha256"])
        console.print(table)
        for move in told["moves"]:
            who = move["by"]["name"] or move["by"]["key"]
            way = f"{move['at'][:10]} {move['sha256'][:12]} {move['from']} to {move['to']}"
            console.print(visible(f"{way}, by {who} ({move['because']}): {move['said']}"))
