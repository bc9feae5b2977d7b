"""Test knits, answers and pieces as a person reads them, line by line."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

Told = Mapping[str, Any]
UNITS = {
    "stitches_10cm": ("stitches", "to 10 cm"),
    "rows_10cm": ("rows", "to 10 cm"),
    "width_cm": ("width", "cm"),
    "length_cm": ("length", "cm"),
    "grams": ("mass", "g"),
    "hours": ("time", "hours"),
}
REFITS = {"loop_mm": "mm of yarn to a loop", "stitches_a_minute": "stitches a minute"}


def words_of(told: Told) -> Iterator[str]:
    """Give a jotting in words, with what follows from it."""
    edition = f", edition {told['edition']}" if told.get("edition") else ""
    whose = told["whose"] or told["whose_key"]
    yield f"{told['sort']} {told['number']} of {told['recipe']}{edition}, by {whose}, revision {told['revision'][:12]}"
    if told.get("not_compared"):
        yield f"  {told['not_compared']}"
    yield from (f"  {_figure(each)}" for each in told.get("compared", ()))
    for each in told.get("washing", ()):
        yield f"  {UNITS[each['figure']][0]} in the wash: {each['before']} → {each['after']} ({each['percent']:+} %)"
    if told["sort"] == "answer":
        yield from _answer(told, told.get("section"), told["row"])
    if told["sort"] == "piece":
        yield from _piece(told)


def _figure(each: Told) -> str:
    name, unit = UNITS[each["figure"]]
    if each["predicted"] is None:
        return f"{name}: {each['actual']} {unit}; the plan predicted nothing"
    bounds = {True: ", within its bounds", False: ", outside its bounds", None: ""}[each["within"]]
    off = f"{each['difference']:+} ({each['percent']:+} %)"
    return f"{name}: {each['actual']} {unit} against {each['predicted']}: {off}{bounds}"


def _answer(told: Told, section: str | None, row: int) -> Iterator[str]:
    yield f"  {section}, row {row}: {told['question']}"
    wrong = " (the pattern was wrong)" if told.get("wrong") else ""
    yield f"    {told['answer']}{wrong}{_righted(told)}"


def _righted(told: Told) -> str:
    return f" (edition {told['erratum']} puts it right)" if told.get("erratum") else ""


def _piece(told: Told) -> Iterator[str]:
    for each in told["measured"]:
        value = "not known" if each["value"] is None else each["value"]
        yield f"  {each['what']}: {value}{'' if each['counts'] else ', does not count'}. {each['why']}"
    if told["safety"]:
        yield from (f"  {each['severity']}: {each['message']}" for each in told["safety"]["findings"])
        yield f"  Not assessed, which is no pass: {', '.join(told['safety']['not_assessed']) or 'none'}."
    yield f"  {told['about']}"


def words_of_knitted(found: Told) -> Iterator[str]:
    """Give all test knits against their plans, and what yarn and pace come to."""
    if not found["items"]:
        yield f"No test knit of {found['recipe']} was noted."
    for each in found["items"]:
        yield f"test-knit {each['number']}, by {each['whose'] or each['whose_key']}"
        yield from (f"  {_figure(figure)}" for figure in each["compared"])
    for name, unit in REFITS.items():
        if refit := found[name]:
            ends = f"{refit['least']} to {refit['most']}"
            yield f"{refit['value']} {unit} by all knits ({ends} by single ones). {refit['worth']}"
    for each in found["left_out"]:
        yield f"Not in {each['of']}: test-knit {each['number']}. {each['why']}"


def words_of_rows(found: Told) -> Iterator[str]:
    """Give the rows that were asked about or answered, the flagged ones marked."""
    if not found["items"]:
        yield f"Nothing was asked about a row of {found['recipe']}."
    for row in found["items"]:
        asked = f"{row['knitters']} knitter{'' if row['knitters'] == 1 else 's'} asked"
        flag = f": look at it, {asked}" if row["flagged"] else f" ({asked})"
        yield f"{row['section']}, row {row['row']}{flag}, revision {row['revision'][:12]}"
        yield from (f"  {each['whose'] or each['whose_key']}: {each['question']}" for each in row["questions"])
        for each in row["answers"]:
            wrong = " (the pattern was wrong)" if each["wrong"] else ""
            yield f"  answer {each['number']}: {each['answer']}{wrong}{_righted(each)}"
