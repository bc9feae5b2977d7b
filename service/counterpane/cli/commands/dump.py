"""`counterpane dump`: all that a library keeps, as lines of JSON with a manifest."""

from __future__ import annotations

import argparse
import sys
from contextlib import closing
from pathlib import Path

from counterpane.cli import endings, output
from counterpane.cli.options import folder, store_there, take_store

NAME = "dump"
ABOUT = """Write all that a library keeps into one file of lines (NDJSON) with a manifest.

It holds every object, every revision with its day, its author and its state, and the history; never a token. The same
library gives the same bytes, whichever version of SQLite holds it. Each line carries a sum, so that `counterpane
restore` names the line that was cut or changed. The library may be served meanwhile."""
EXAMPLES = """examples:
  $ counterpane dump --store season/library.db --out season.ndjson"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    known = "the file to write, or - for standard output"
    parser.add_argument("--out", type=folder, metavar="FILE", required=True, help=known)
    take_store(parser)


def run(options: argparse.Namespace) -> int:
    """Write the dump."""
    from counterpane.library.sharing.dumps import dump
    from counterpane.wiring import open_store

    path = store_there(options.store)
    with closing(open_store(path)) as store, output.waiting("writing the dump"):
        if options.out == Path("-"):
            for line in dump(store):
                sys.stdout.buffer.write(line)
            return endings.DONE
        with output.saving(options.out) as file:
            file.writelines(dump(store))
    output.tell(f"wrote {options.out}")
    return endings.DONE
