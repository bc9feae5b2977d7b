"""`counterpane backup`: the file of a library copied while it is in use."""

from __future__ import annotations

import argparse
from pathlib import Path

from counterpane.cli import endings, output
from counterpane.cli.options import folder, store_there, take_store

NAME = "backup"
ABOUT = """Copy the file of a library while it is in use, and look at the copy before it takes its place.

The copy is of one moment. It is opened and read from end to end: every page of the file, the hash of every object,
every chain of revisions. It holds the hashes of tokens too, and is readable by its owner alone; serve it as it is."""
EXAMPLES = """examples:
  $ counterpane backup --store season/library.db --out monday.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("--out", type=folder, metavar="FILE", required=True, help="the file to write")
    take_store(parser)


def run(options: argparse.Namespace) -> int:
    """Copy the file and verify the copy."""
    from counterpane.library.sharing.dumps import proved_dump
    from counterpane.storage.sqlite.backup import back_up
    from counterpane.wiring import open_store

    path = store_there(options.store)
    open_store(path).close()  # What is no library is refused, and an old form brought up to date.
    with (
        output.waiting("copying the library"),
        output.saving(options.out, mode=0o600) as file,
        back_up(Path(path), Path(file.name)) as records,
    ):
        manifest = proved_dump(records)
    output.put(f"wrote {options.out}: {manifest.records} records, sha256 of its dump {manifest.sha256}\n")
    return endings.DONE
