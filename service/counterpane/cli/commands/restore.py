"""`counterpane restore`: a library made of a dump."""

from __future__ import annotations

import argparse
from contextlib import closing
from pathlib import Path
from typing import IO

from counterpane.cli import endings, output

NAME = "restore"
ABOUT = """Make a library of a dump: all of it or nothing.

The whole file is read and held against its manifest before anything is written: every sum, the hash of every object,
every chain of revisions. A file that was cut or changed is refused with its line. The library to make must not hold
anything yet; it then dumps the same bytes. Tokens are not in a dump: `counterpane token create` makes others."""
EXAMPLES = """examples:
  $ counterpane restore season.ndjson --store restored.db"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    parser.add_argument("file", metavar="FILE", help="a dump made by `counterpane dump`")
    parser.add_argument("--store", metavar="PATH", required=True, help="the SQLite file of the library to make")


def run(options: argparse.Namespace) -> int:
    """Verify the dump, then fill the library with it."""
    from counterpane.library.sharing.dumps import restore, verify
    from counterpane.wiring import open_store

    with _opened(options.file) as file, output.waiting("reading the dump"):
        verify(file)  # No file of a library is made for a dump that does not hold.
        file.seek(0)
        with closing(open_store(options.store)) as store:
            manifest = restore(store, file)
    output.put(f"restored {manifest.records} records of {options.file}, sha256 {manifest.sha256}\n")
    return endings.DONE


def _opened(name: str) -> IO[bytes]:
    try:
        return Path(name).open("rb")
    except FileNotFoundError:
        raise endings.Missing(f"{name}: there is no such file", "Name a dump.") from None
    except ValueError:
        raise endings.Unreadable("a file name cannot hold a NUL character", "Check the name.") from None
