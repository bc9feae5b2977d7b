"""What may be typed: the commands, their options and their help, each with examples that can be typed as they stand."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import Any, Protocol

from counterpane import __version__
from counterpane.cli.commands import (
    adopt,
    audit,
    backup,
    check,
    class_counts,
    demo,
    draw,
    dump,
    edition,
    explain,
    find,
    gauge,
    grade,
    label,
    largest,
    lesson,
    matrix,
    midway,
    note,
    outdated,
    plan,
    profile,
    propose,
    publish,
    pull,
    queue,
    regauge,
    restore,
    review,
    row,
    safety,
    say,
    serve,
    settings,
    sheet,
    size,
    sizes,
    standing,
    submit,
    substitute,
    swatch,
    token,
    translate,
    where,
    write,
)

ABOUT = "Proves that the parts of a knitted baby blanket fit one stitch count, and writes its pattern."
MORE = """examples:
  $ counterpane check rows.txt
  $ counterpane find --kind body
  $ counterpane plan blanket.toml
  $ counterpane demo --no-serve

`counterpane COMMAND --help` tells more about each command."""


class Command(Protocol):
    """One command: a module with its name, one line about it, its examples, its options and what it does."""

    NAME: str
    ABOUT: str
    EXAMPLES: str

    def declare(self, parser: argparse.ArgumentParser) -> None:
        """Add the options."""

    def run(self, options: argparse.Namespace) -> int:
        """Do it and return the exit status."""


COMMANDS: tuple[Command, ...] = (
    check,
    say,
    sheet,
    size,
    adopt,
    swatch,
    gauge,
    find,
    matrix,
    propose,
    plan,
    regauge,
    write,
    translate,
    draw,
    lesson,
    class_counts,
    grade,
    sizes,
    safety,
    label,
    largest,
    midway,
    row,
    where,
    substitute,
    profile,
    edition,
    note,
    outdated,
    submit,
    queue,
    review,
    standing,
    audit,
    explain,
    demo,
    serve,
    publish,
    dump,
    restore,
    backup,
    pull,
    token,
    settings,
)


def run(argv: Sequence[str] | None) -> int:
    """Run the command that was typed; wrong usage ends with status 2 by SystemExit."""
    options = build().parse_args(argv)
    status: int = options.run(options)
    return status


def build() -> argparse.ArgumentParser:
    """Return the whole parser."""
    parser = argparse.ArgumentParser("counterpane", **_manner(ABOUT, MORE))
    parser.add_argument("--version", action="version", version=f"counterpane {__version__}")
    places = parser.add_subparsers(title="commands", metavar="COMMAND", required=True)
    for command in COMMANDS:
        about = command.ABOUT.split("\n", 1)[0]
        short = about[0].lower() + about[1:].removesuffix(".")
        place = places.add_parser(command.NAME, help=short, **_manner(command.ABOUT, command.EXAMPLES))
        command.declare(place)
        place.set_defaults(run=place.get_default("run") or command.run)
    return parser


def _manner(about: str, examples: str) -> dict[str, Any]:
    plain = argparse.RawDescriptionHelpFormatter
    return {"description": about, "epilog": examples, "formatter_class": plain, "allow_abbrev": False}
