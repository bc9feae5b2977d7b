"""`counterpane settings`: each setting, its value, and where the value comes from."""

from __future__ import annotations

import argparse

from counterpane.cli import endings
from counterpane.cli.options import take_json

NAME = "settings"
ABOUT = """Show each setting, its value, and where it comes from.

Options of a command come before the environment, that before the settings file, that before the default."""
EXAMPLES = """examples:
  $ counterpane settings
  $ counterpane settings --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Show the settings."""
    return endings.DONE
