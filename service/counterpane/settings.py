"""Settings: what they are, and where each value comes from.

A flag of the command line comes before the environment, that before the settings file, that before the default. A key
that is not known is an error with the nearest match, so that a slip of the pen is never silent.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path
from typing import Any

PREFIX = "COUNTERPANE_"
FILE = "counterpane.toml"
_ADDRESS = re.compile(r"https?://[A-Za-z0-9.:/_~%\[\]-]{1,200}")
"""Letters that can stand in a printed line and in a style sheet alike."""
SERVERS = ("granian", "waitress")
MOST_REQUESTS = 1_000_000
"""The largest quota of a minute; house."""


class SettingsError(Exception):
    """A setting cannot be used; `hint` is the next step."""

    def __init__(self, message: str, hint: str) -> None:
        super().__init__(message)
        self.hint = hint


@dataclass(frozen=True, slots=True)
class Kind:
    """A setting that there is: its default, what it is, and how its value is read."""

    name: str
    default: str | int
    about: str
    read: Callable[[str], str | int]


@dataclass(frozen=True, slots=True)
class Setting:
    """A setting with its value, and where the value comes from."""

    name: str
    value: str | int
    origin: str
    about: str


def _text(value: str) -> str:
    if not value.strip() or "\0" in value:
        raise ValueError("is empty")
    return value


def _address(value: str) -> str:
    if value and not _ADDRESS.fullmatch(value):
        raise ValueError("is no address such as https://library.example")
    return value.rstrip("/")


def _server(value: str) -> str:
    if value not in SERVERS:
        raise ValueError(f"is none of {', '.join(SERVERS)}")
    return value


def _from(least: int, most: int) -> Callable[[str], int]:
    def read(value: str) -> int:
        if not (value.isascii() and value.isdigit() and len(value) <= len(str(most)) and least <= int(value) <= most):
            raise ValueError(f"is no whole number from {least} to {most}")
        return int(value)

    return read


def _quota(value: str) -> str | int:
    return _from(0, MOST_REQUESTS)(value) if value else value


KINDS: tuple[Kind, ...] = (
    Kind("store", "counterpane.db", "the SQLite file that holds the library", _text),
    Kind("host", "127.0.0.1", "the address to listen on; reading needs a token on any other", _text),
    Kind("port", 8321, "the TCP port to listen on; 0 lets the system choose", _from(0, 65535)),
    Kind("server", "granian", "granian, or waitress where granian is not to be had", _server),
    Kind("workers", 2, "processes of granian", _from(1, 64)),
    Kind("threads", 2, "threads of each process; waitress has one process", _from(1, 64)),
    Kind(
        "requests_per_minute",
        "",
        "requests a minute of each caller, 0 for no limit; else 1200, and no limit where only this machine can ask",
        _quota,
    ),
    Kind("readers_at", "", "where readers reach this library, as https://library.example; editions print it", _address),
    Kind("peer_certificates", "", "a PEM file: peers show a certificate of it or from it, not of a public one", str),
    Kind("peers", "", "addresses of libraries that may be asked, with commas between them", str),
)
_BY_NAME = {kind.name: kind for kind in KINDS}


def gather(flags: Mapping[str, Any], environment: Mapping[str, str], file: Path | None = None) -> dict[str, Setting]:
    """Return all settings by name; a flag of None was not given. Raise SettingsError for a key or value of nonsense."""
    sources = (
        ("command line", {name: value for name, value in flags.items() if value is not None}),
        (
            "environment",
            {key[len(PREFIX) :].lower(): value for key, value in environment.items() if key.startswith(PREFIX)},
        ),
        (str(file), _read_file(file) if file and file.is_file() else {}),
    )
    for origin, values in sources:
        _refuse_unknown(origin, values)
    return {kind.name: _settled(kind, sources) for kind in KINDS}


def _settled(kind: Kind, sources: tuple[tuple[str, Mapping[str, Any]], ...]) -> Setting:
    for origin, values in sources:
        if kind.name in values:
            return Setting(kind.name, _read(kind, origin, values[kind.name]), origin, kind.about)
    return Setting(kind.name, kind.default, "default", kind.about)


def _read(kind: Kind, origin: str, value: Any) -> str | int:
    try:
        return kind.read(str(value))
    except ValueError as fault:
        raise SettingsError(f"{kind.name} ({origin}): {str(value)[:40]!r} {fault}", f"It is {kind.about}.") from None


def _refuse_unknown(origin: str, values: Mapping[str, Any]) -> None:
    for name in values:
        if name not in _BY_NAME:
            near = get_close_matches(name[:40], _BY_NAME, 1)
            hint = f"Probably meant: {near[0]}." if near else f"Settings are {', '.join(_BY_NAME)}."
            raise SettingsError(f"there is no setting {name[:40]!r} ({origin})", hint)


def _read_file(file: Path) -> dict[str, Any]:
    try:
        return tomllib.loads(file.read_text("utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as fault:
        raise SettingsError(f"{file} cannot be read: {fault}", "Correct the file, or remove it.") from None
