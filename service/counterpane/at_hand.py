"""What follows from the program and its seeds alone: worked out once, and kept at hand in the cache of whoever asks.

It stands in a folder named by the SHA-256 of all that it follows from, every file of the program and of the seeds and
what runs them: one letter changed makes another folder, and so nothing is read that another version proved. What was
changed there since is known by its sums and not believed. Where no such folder can be, all is worked out each time.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import sys
from collections.abc import Callable, Iterator
from contextlib import suppress
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Any

import orjson
import rfc8785

from counterpane.library.errors import BrokenDump
from counterpane.library.keeping.objects import digest
from counterpane.seeding.roots import seeds_root

if TYPE_CHECKING:
    from counterpane.library.services import Services

PROGRAM = Path(__file__).resolve().parent
CACHE = "XDG_CACHE_HOME"
LIBRARY = "library.ndjson"
_IS_VERSION = re.compile(r"[0-9a-f]{64}")
SUFFIXES = (".py", ".toml", ".po")
"""Files of the program and of the seeds from which something follows."""


def open_starters() -> Services:
    """Open the library in memory of what ships with the program, each part of it proved by this very version."""
    from counterpane.library.sharing.dumps import dump, restore
    from counterpane.wiring import load_starters, open_library

    services = open_library(starters=False)
    try:
        with (folder() / LIBRARY).open("rb") as file:
            restore(services.store, file)
    except (OSError, RuntimeError, BrokenDump):
        load_starters(services)
        _keep(LIBRARY, b"".join(dump(services.store)))
    return services


def answer_at_hand(name: str, work: Callable[[], Any]) -> Any:
    """Return the JSON values that follow from the starters alone; the name tells what was asked of them."""
    with suppress(OSError, RuntimeError):
        told, _, content = (folder() / f"{name}.json").read_bytes().partition(b"\n")
        if told == digest(content).encode():
            return orjson.loads(content)
    content = orjson.dumps(work())
    _keep(f"{name}.json", digest(content).encode() + b"\n" + content)
    return orjson.loads(content)


def folder() -> Path:
    """Return where this version keeps what it has at hand; RuntimeError for somebody who has no home."""
    place = os.environ.get(CACHE)
    return (Path(place) if place else Path.home() / ".cache") / "counterpane" / version()


@cache
def version() -> str:
    """Return the SHA-256 of all that anything here follows from."""
    told = hashlib.sha256(f"{sys.version}\n{orjson.__version__}\n{rfc8785.__version__}\n".encode())
    for name, path in _files():
        content = path.read_bytes()
        told.update(f"{name} {len(content)}\n".encode())
        told.update(content)
    return told.hexdigest()


def _files() -> Iterator[tuple[str, Path]]:
    for root in (PROGRAM, seeds_root()):
        for path in sorted(root.rglob("*")):
            if path.suffix in SUFFIXES:
                yield path.relative_to(root).as_posix(), path


def _keep(name: str, content: bytes) -> None:
    """Keep a file whole or not at all, and nothing of other versions; where that cannot be, nothing is kept."""
    with suppress(OSError, RuntimeError):
        place = folder()
        place.mkdir(mode=0o700, parents=True, exist_ok=True)
        with TemporaryDirectory(dir=place) as desk:
            made = Path(desk) / name
            made.write_bytes(content)
            made.replace(place / name)
        for each in place.parent.iterdir():
            if each != place and _IS_VERSION.fullmatch(each.name):
                shutil.rmtree(each, ignore_errors=True)
