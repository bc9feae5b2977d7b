"""What the fabric of a plan will do, as a person reads it: parts that are alike once, with what the figures rest on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from rich.console import Console
from rich.padding import Padding

from counterpane.cli.showing.words import listed, visible

Answer = Mapping[str, Any]


def draw_behaviour(console: Console, behaviour: Answer) -> None:
    """Draw how the fabrics of a plan behave; the basis of each figure stands in brackets behind it."""
    console.print("\nHow the fabric behaves", style="bold")
    for names, texture, message in _alike(behaviour["parts"]):
        console.print(Padding(f"{listed(names)} ({visible(texture)}): {visible(message)}.", (0, 0, 0, 2)))
    for seam in behaviour["seams"]:
        said = f"{seam['part']} beside {seam['body']}: {visible(seam['message'])}."
        console.print(Padding(said, (0, 0, 0, 2)))
    for opening in behaviour["openings"]:
        console.print(Padding(f"openings of the {opening['section']}: {opening['message']}.", (0, 0, 0, 2)))
    for names, texture, message in _alike(behaviour["mass"] or ()):
        console.print(Padding(f"{listed(names)} ({visible(texture)}): {message}.", (0, 0, 0, 2)))


def _alike(parts: Sequence[Answer]) -> list[tuple[list[str], str, str]]:
    """Return the parts of one texture together, in order."""
    found: dict[tuple[str, str], list[str]] = {}
    for part in parts:
        found.setdefault((part["texture"] or "in words", part["message"]), []).append(part["part"])
    return [(names, texture, message) for (texture, message), names in found.items()]
