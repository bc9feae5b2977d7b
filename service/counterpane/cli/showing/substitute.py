"""One yarn beside another, as a person reads it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from rich.console import Console

from counterpane.cli.showing.tables import table_of
from counterpane.cli.showing.words import number_of

Answer = Mapping[str, Any]
VERDICTS = {
    "alike": "Alike in thickness: try it, and knit a swatch.",
    "not alike": "Not alike in thickness.",
    "not known": "Classes alone do not tell whether they are alike.",
}


def draw(console: Console, answer: Answer) -> None:
    """Draw both yarns, the verdict, the strands that match and the amount."""
    table = table_of("", "Tex:", "m to 100 g:", "Nm:", "Class")
    for title, name in (("the yarn meant", "from"), ("the other", "to")):
        each = answer[name]
        strands = f", {each['strands']} strands" if each["strands"] > 1 else ""
        figures = (_ends(each["tex"]), _ends(each["metres_per_100g"]), _one(each["numbers"]["Nm"]))
        table.add_row(f"{title}{strands}", *figures, _classes(each["classes"]))
    console.print(table)
    console.print(f"\n{_compared(answer['thicker_percent'])}{VERDICTS[answer['verdict']]}")
    if answer["strands"]:
        console.print(_strands(answer["strands"]))
    if answer["amount"]:
        console.print(_amount(answer["amount"]))
    for note in answer["notes"]:
        console.print(note)


def _ends(ends: Sequence[float | None]) -> str:
    low, high = ends
    if low is None or high is None:
        known = low if high is None else high
        return "not known" if known is None else f"{known:g} and {'more' if high is None else 'less'}"
    return f"{low:g}" if low == high else f"{low:g} to {high:g}"


def _one(value: float | None) -> str:
    return "–" if value is None else f"{value:g}"


def _classes(classes: Sequence[Answer]) -> str:
    told = (f"{each['number']} {each['name']} ({', '.join(each['called'][:3])})" for each in classes)
    return "; ".join(told) or "between the classes"


def _compared(percent: Sequence[float | None]) -> str:
    low, high = percent
    if low is None or high is None:
        return ""
    return f"The other is {_off(low)}{'' if low == high else f' to {_off(high)}'}. "


def _strands(strands: Answer) -> str:
    return f"Nearest: {number_of(strands['best'], 'strand')} of the other, {_off(strands['thicker_percent'])}."


def _off(percent: float) -> str:
    return f"{abs(percent):g} % {'thicker' if percent > 0 else 'thinner'}" if percent else "just as thick"


def _amount(amount: Answer) -> str:
    grams = "" if amount["grams"] is None else f", {amount['grams']:g} g"
    balls = "" if amount["balls"] is None else f", {number_of(amount['balls'], 'ball')}"
    return f"In its place, at the same gauge: {amount['metres']:g} m{grams}{balls} of the other."
