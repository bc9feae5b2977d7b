"""What the fabric of a plan will do, as a person reads it: parts that are alike once, with what the figures rest on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rich.console import Console
from rich.padding import Padding

from counterpane.cli.showing.words import listed, visible

Answer = Mapping[str, Any]


def draw_behaviour(console: Console, behaviour: Answer) -> None:
    """Draw how the fabrics of a plan behave; the basis of each figure stands in brackets behind it."""
    console.print("\nHow the fabric behaves", style="bold")
    for names, texture, message in _alike(behaviour):
        console.print(Padding(f"{listed(names)} ({visible(texture)}): {visible(message)}.", (0, 0, 0, 2)))
    for seam in behaviour["seams"]:
        said = f"{seam['part']} beside {seam['body']}: {visible(seam['message'])}."
        console.print(Padding(said, (0, 0, 0, 2)))


def _alike(behaviour: Answer) -> list[tuple[list[str], str, str]]:
    """Return the parts of one texture together, in order."""
    found: dict[tuple[str, str], list[str]] = {}
    for part in behaviour["parts"]:
        found.setdefault((part["texture"] or "in words", part["message"]), []).append(part["part"])
    return [(names, texture, message) for (texture, message), names in found.items()]
