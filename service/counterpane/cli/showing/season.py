"""The demonstration as a person reads it: the library in a table, each plan in brief, the mix that does not fit."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any

from rich.console import Console
from rich.padding import Padding

from counterpane.cli.showing import plans
from counterpane.cli.showing.words import listed, number_of, tally

NOUNS = {"cast-on": "cast-on", "border": "border", "selvedge": "selvedge", "body": "texture", "bind-off": "bind-off"}


def draw_library(console: Console, kinds: Sequence[str]) -> None:
    """Draw how many parts of each kind there are."""
    counts = Counter(kinds)
    parts = [number_of(counts[kind], noun) for kind, noun in NOUNS.items() if counts[kind]]
    console.print(f"\nThe library holds {listed(parts)}.\nEach multiple in it is derived from the rows, none typed in.")


def draw_plan(console: Console, recipe: Mapping[str, Any], answer: Mapping[str, Any]) -> None:
    """Draw a plan in brief."""
    console.print()
    plans.draw_title(console, recipe["name"])
    console.print(f"\n{recipe['summary']}\n")
    plans.draw_numbers(console, answer)
    plans.draw_findings(console, answer["findings"])
    console.print(f"\n{_safety(answer['safety'])}")


def draw_misfit(console: Console, title: str, story: str, problem: Mapping[str, Any]) -> None:
    """Draw a mix that cannot be made, with the smallest changes that make it possible."""
    console.print()
    plans.draw_title(console, title)
    console.print(f"\n{story}")
    plans.draw_reasons(console, problem)


def draw_corrected(console: Console, correction: Mapping[str, Any], answer: Mapping[str, Any]) -> None:
    """Draw what the first of those changes leads to."""
    console.print(f"\nWith the first of these changes ({correction['why']}):\n")
    plans.draw_counts(console, answer)


def draw_closing(console: Console, text: str) -> None:
    """Draw where everything is, and what to try next."""
    console.print()
    plans.draw_title(console, "The season is ready")
    console.print(Padding(text, (1, 0, 0, 0)))


def _safety(safety: Mapping[str, Any]) -> str:
    said = tally(safety["findings"]) or "nothing said"
    open_ = number_of(len(safety["not_assessed"]), "rule")
    return f"Safety: {said}; {open_} not assessed, which is never a pass. The pattern prints each one."
