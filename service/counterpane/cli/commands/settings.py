"""`counterpane settings`: each setting, its value, and where the value comes from."""

from __future__ import annotations

import argparse

from counterpane.cli import endings, output
from counterpane.cli.options import take_json

NAME = "settings"
ABOUT = """Show each setting, its value, and where it comes from.

An option of a command comes before the environment (COUNTERPANE_STORE and so on), that before the file
counterpane.toml in the folder where you are, that before the default."""
EXAMPLES = """examples:
  $ counterpane settings
  $ counterpane settings --json"""


def declare(parser: argparse.ArgumentParser) -> None:
    """Add the options."""
    take_json(parser)


def run(options: argparse.Namespace) -> int:
    """Show the settings."""
    from counterpane.cli.configuring import settings_of

    known = settings_of().values()
    if options.json:
        output.put_json([{"name": each.name, "value": each.value, "from": each.origin} for each in known])
        return endings.DONE
    from rich import box
    from rich.table import Table

    table = Table("Setting", "Value", "From", "What it is", box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    for each in known:
        table.add_row(each.name, str(each.value), each.origin, each.about)
    with output.page() as console:
        console.print(table)
    return endings.DONE
