"""The one form of a table in the terminal."""

from __future__ import annotations

from rich import box
from rich.table import Table


def table_of(*titles: str) -> Table:
    """Return an empty table; a column whose title ends with a colon stands to the right."""
    table = Table(box=box.SIMPLE_HEAD, pad_edge=False, show_edge=False)
    for title in titles:
        table.add_column(title.removesuffix(":"), justify="right" if title.endswith(":") else "left", overflow="fold")
    return table
