"""`counterpane publish`: a whole library as a folder of pages that any web server can serve."""

from __future__ import annotations

import argparse
from typing import get_args

from counterpane.cli import endings, output
from counterpane.cli.configuring import library_there
from counterpane.cli.options import folder, person, take_store

NAME = "publish"
ABOUT = """Write a whole library as a folder of pages, pictures and data that any web server can serve.

A page for each part with its rows in US and UK words, for each recipe with its pattern, for each rule; lists as CSV and
NDJSON, a feed, and each revision by its hash. All links are relative and no page needs a script, so it opens from a
disk too. What is withdrawn or in quarantine is left out, and so is each recipe that rests on it. The same library gives
the same bytes. A folder that this command made is replaced whole; one with other files in it is refused."""
EXAMPLES = """examples:
  $ counterpane publish pages --only accepted --title "Ninepenny Loft" --store season/library.db"""
TITLE = "A library of parts for baby blankets"


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    from counterpane.library.keeping.record import Status

    known = "the folder to make, or to make again"
    parser.add_argument("folder", type=folder, metavar="FOLDER", help=known)
    states = tuple(state for state in get_args(Status) if state not in ("quarantined", "withdrawn"))
    only = f"only revisions that stand so, the latest of each; may be given again (one of {', '.join(states)})"
    parser.add_argument("--only", choices=states, metavar="STATE", action="append", default=[], help=only)
    parser.add_argument("--title", type=person, default=TITLE, help="the name of the library on its pages")
    take_store(parser)


def run(options: argparse.Namespace) -> int:
    """Write the folder beside its place, and move it there."""
    from counterpane.cli.folders import refuse_foreign, replace_folder
    from counterpane.library.sharing.published import published
    from counterpane.web.folder import FORM, LIST, files_of
    from counterpane.wiring import rule_pages

    with library_there(options.store) as services, output.waiting("writing the pages"):
        refuse_foreign(options.folder.resolve(), LIST, FORM)
        shown = published(services, options.only)
        files = files_of(services, shown, rule_pages(services), options.title)
        count = replace_folder(options.folder, files, LIST, FORM)
    told = f"{count} files, {len(shown.parts)} parts, {len(shown.recipes)} recipes"
    without = f", {shown.left_out} left out" if shown.left_out else ""
    output.put(f"wrote {options.folder}: {told}{without}\n")
    return endings.DONE
