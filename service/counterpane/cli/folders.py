"""A folder of files that a command makes: written whole beside its place, then moved there.

A list in it names every file, so that a folder is known again; one that holds anything else is left alone.
"""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Iterable
from pathlib import Path

from counterpane.cli.endings import NotPermitted

NAMED = 3
"""Files of others that a refusal names; house."""


def replace_folder(place: Path, files: Iterable[tuple[str, bytes]], listed_in: str, form: str) -> int:
    """Make a folder of these files and return how many; NotPermitted where another's files would be lost."""
    place = place.resolve()
    refuse_foreign(place, listed_in, form)
    place.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=place.parent, prefix=f".{place.name}.") as beside:
        made, old = Path(beside, "made"), Path(beside, "old")
        count = _write(made, files)
        refuse_foreign(place, listed_in, form)  # It took a while; somebody may have put a file there.
        if place.exists():
            place.rename(old)
        try:
            made.rename(place)
        except OSError:
            if old.exists():
                old.rename(place)
            raise
    return count


def _write(made: Path, files: Iterable[tuple[str, bytes]]) -> int:
    made.mkdir()
    count = 0
    for name, content in files:
        path = made / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
        count += 1
    return count


def refuse_foreign(place: Path, listed_in: str, form: str) -> None:
    """Raise NotPermitted for a folder, not empty, that holds a file which its own list does not name."""
    if not place.exists():
        return
    if not place.is_dir():
        raise NotPermitted(f"{place}: is a file, not a folder", "Name a folder that is not there yet, or an empty one.")
    own = _listed(place / listed_in, form)
    foreign = sorted(name for name in _held(place) if name not in own)
    if foreign:
        named = ", ".join(foreign[:NAMED]) + (f" and {len(foreign) - NAMED} more" if len(foreign) > NAMED else "")
        hint = "Name another folder, or move these away: the folder would be replaced whole."
        raise NotPermitted(f"{place}: holds files that were not made here: {named}", hint)


def _held(place: Path) -> list[str]:
    return [
        Path(folder, name).relative_to(place).as_posix()
        for folder, folders, names in os.walk(place)
        for name in (*names, *(each for each in folders if Path(folder, each).is_symlink()))
    ]


def _listed(path: Path, form: str) -> frozenset[str]:
    """Return the files that a folder's own list names, none where it is no such list."""
    try:
        listed = json.loads(path.read_bytes())
        if listed["form"] == form:
            return frozenset((path.name, *listed["files"]))
    except (OSError, ValueError, KeyError, TypeError, RecursionError):
        pass
    return frozenset()
