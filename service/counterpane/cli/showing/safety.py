"""The safety record as a person reads it: for whom, what stops, warns and is noted, and what nobody has assessed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from counterpane.cli.showing.findings import STYLES
from counterpane.cli.showing.words import visible

STANDING = "General information, not approval. What is not assessed is never a pass."
MORE = "`counterpane explain SLUG` gives the reason and the source of each."
GROUPS = {"stop": "Stop", "warn": "Warn", "note": "Note"}
AGES = {
    "preterm": "a preterm baby",
    "0-3m": "0 to 3 months",
    "3-12m": "3 to 12 months",
    "12-24m": "12 to 24 months",
    "24-36m": "24 to 36 months",
    "36m+": "from 36 months",
}
NOT_SAID = "not said"

Safety = Mapping[str, Any]


def draw_safety(console: Console, safety: Safety, among: str = "Under “for”") -> None:
    """Draw for whom the record is read, the findings by how grave they are, the list held against, and the rest.

    `among` says where the inputs that are asked for are written.
    """
    console.print("\nSafety", style="bold")
    console.print(STANDING)
    console.print(_read_for(safety["read_for"]))
    for severity, name in GROUPS.items():
        _draw_group(console, severity, name, safety)
    _draw_conflicts(console, safety)
    _draw_profile(console, safety["profile"])
    _draw_measured(console, safety["measured"])
    _draw_estimates(console, safety["estimates"])
    _draw_rest(console, safety, among)
    console.print(MORE)


def _read_for(read: Safety) -> str:
    age = AGES.get(read["age_band"], NOT_SAID)
    use, sold = read["use"] or NOT_SAID, ", ".join(read["markets"] or ()) or NOT_SAID
    advice = ", ".join(read["advice"] or ()) or NOT_SAID
    followed = "" if advice == sold else f"; sleep advice of: {advice}"
    return visible(f"Read for: age, {age}; use, {use}; markets, {sold}{followed}.")


def _draw_group(console: Console, severity: str, name: str, safety: Safety) -> None:
    findings = [each for each in safety["findings"] if each["severity"] == severity]
    if findings:
        console.print(Text(f"\n{name}", STYLES[severity]))
    for finding in findings:
        own = finding["markets"] != (safety["read_for"]["markets"] or [])
        markets = f", {', '.join(finding['markets'])}" if own else ""
        console.print(visible(f"  {finding['rule']} ({finding['reference']}, {finding['basis']}{markets})"))
        console.print(Padding(visible(finding["message"]), (0, 0, 0, 4)))


def _draw_conflicts(console: Console, safety: Safety) -> None:
    """Draw where the sources of what was said contradict each other: every statement stands."""
    spoken = {finding["reference"] for finding in safety["findings"]}
    touched = [each for each in safety["conflicts"] if spoken & set(each["rules"])]
    if touched:
        console.print("\nWhere sources differ")
    for conflict in touched:
        said = "; ".join(f"{each['who']}: {each['says']}" for each in conflict["statements"])
        text = f"{_capital(conflict['about'])} ({', '.join(conflict['rules'])}). {_capital(said)}."
        console.print(Padding(visible(text), (0, 0, 0, 2)))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _draw_estimates(console: Console, estimates: Safety) -> None:
    told = [(kind, each) for kind, found in estimates.items() for each in found]
    if told:
        console.print("\nEstimates")
    for kind, each in told:
        console.print(Padding(visible(f"{kind.capitalize()}, {each['section']}: {each['message']}"), (0, 0, 0, 2)))


def _draw_profile(console: Console, profile: Safety | None) -> None:
    from counterpane.craft.pattern import record

    if profile is None:
        return
    console.print()
    console.print(visible(f"Held against: {record.whose(profile)}"))
    for item in profile["items"]:
        console.print(Padding(visible(f"{item['verdict']}: {item['says']} ({item['found']})"), (0, 0, 0, 2)))
    console.print(Padding(visible(profile["about"]), (0, 0, 0, 2)))


def _draw_measured(console: Console, measured: Sequence[Safety]) -> None:
    from counterpane.craft.pattern import record

    if measured:
        console.print("\nMeasured")
    for told in record.measured(measured):
        console.print(Padding(visible(told), (0, 0, 0, 2)))


def _draw_rest(console: Console, safety: Safety, among: str) -> None:
    console.print()
    for name, label in (("assessed", "Looked at, nothing to say"), ("not_applicable", "Of another age or use")):
        if safety[name]:
            console.print(f"{label}: {', '.join(ranges(safety[name]))}.")
    if safety["not_assessed"]:
        console.print(f"Not assessed: {', '.join(ranges(safety['not_assessed']))}. {among}, each asks for:")
    for asked, references in _asked(safety["asked_for"]):
        console.print(Padding(visible(f"{', '.join(ranges(references))}: {asked}"), (0, 0, 0, 2)))


def _asked(asked_for: Mapping[str, Sequence[str]]) -> list[tuple[str, list[str]]]:
    """Return which rules lack the same inputs, in the order of the first of them."""
    groups: dict[str, list[str]] = {}
    for reference, inputs in asked_for.items():
        groups.setdefault(", ".join(inputs), []).append(reference)
    return list(groups.items())


def ranges(references: Sequence[str]) -> list[str]:
    """Return references in order with neighbours drawn together: R03, R04, R05 as R03–R05."""
    runs: list[list[str]] = []
    for reference in sorted(references):
        if runs and _number(reference) == _number(runs[-1][-1]) + 1:
            runs[-1].append(reference)
        else:
            runs.append([reference])
    return [run[0] if len(run) == 1 else f"{run[0]}–{run[-1]}" for run in runs]


def _number(reference: str) -> int:
    return int(reference.removeprefix("R"))
