"""Settings as a command sees them: its options, then the environment, then the file in this folder, then defaults."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from counterpane.cli.options import store_there
from counterpane.settings import FILE, Setting, gather

if TYPE_CHECKING:
    from counterpane.library.services import Services


def settings_of(**flags: Any) -> Mapping[str, Setting]:
    """Return all settings by name; an option of None was not typed."""
    return gather(flags, os.environ, Path(FILE))


@contextmanager
def library_at(store: str | None) -> Iterator[Services]:
    """Open the library that an option names, else the one of the settings, for a block."""
    from counterpane.wiring import open_library

    known = settings_of(store=store)
    services = replace(open_library(str(known["store"].value)), address=str(known["readers_at"].value))
    try:
        yield services
    finally:
        services.store.close()


@contextmanager
def library_there(store: str | None) -> Iterator[Services]:
    """Open the library as `library_at` does, as it is: nothing is put into it; raise Missing where there is none."""
    from counterpane.wiring import open_library

    services = open_library(store_there(store), starters=False)
    try:
        yield services
    finally:
        services.store.close()


@contextmanager
def library_or_starters(store: str | None) -> Iterator[Services]:
    """Open the library at a path, else the one of what ships with the program, for a block."""
    from counterpane.at_hand import open_starters
    from counterpane.wiring import open_library

    services = open_library(store) if store else open_starters()
    try:
        yield services
    finally:
        services.store.close()
