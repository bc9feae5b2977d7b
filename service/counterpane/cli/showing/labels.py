"""A label as a person reads it: the fibres, the words of each market, what it wants beside, and what is not known."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from rich.console import Console
from rich.padding import Padding

from counterpane.cli.showing.findings import draw_heading, draw_words
from counterpane.cli.showing.words import tally, visible

Answer = Mapping[str, Any]

TOLD_WITH_THE_LABEL = "market-field-not-told"
"""The rule whose findings stand with the label of each market, in more words."""


def draw(console: Console, answer: Answer) -> None:
    """Draw the whole label."""
    console.print(answer["notes"][0])
    draw_composition(console, answer["composition"], "Fibres of the whole piece")
    if answer["composition"]["known"]:
        _say(console, "Rounded so that they make 100; in brackets to two places.")
    for each in answer["left_out"]:
        if each["left_out"]:
            _say(console, f"Without {each['why']}, {each['percent_of_piece']:g} % of the piece.")
    for part in answer["parts"]:
        share = "" if part["percent_of_piece"] is None else f", {part['percent_of_piece']:g} % of the piece"
        draw_composition(console, part, f"Fibres of the {visible(part['part'])}{share}")
    _draw_care(console, answer["care"])
    for label in answer["labels"]:
        _draw_label(console, label)
    said = [finding for finding in answer["findings"] if finding["rule"] != TOLD_WITH_THE_LABEL]
    _draw_findings(console, said)
    messages = {finding["message"] for finding in said}
    _draw_not_known(console, [each for each in answer["not_known"] if each["what"] not in messages])
    console.print("\n" + "\n".join(answer["notes"][2:]))


def draw_composition(console: Console, of: Answer, title: str) -> None:
    """Draw the fibres of the piece or a part, with bounds where shares are not known."""
    bounds = "only between bounds" if of["fibres"] else "not known"
    console.print(f"\n{title}{'' if of['known'] else f': {bounds}'}", style="bold")
    for each in of["fibres"]:
        _say(console, f"{_share(each)} {each['fibre']}")
    if of["fibres"] and not of["all_fibres_told"]:
        _say(console, "The rest, if any, is of fibres that are not known.")


def _share(each: Answer) -> str:
    if each["between"]:
        least, most = each["between"]
        return f"{least:g} to {most:g} %"
    return f"{each['percent']:g} % ({each['hundredths']:.2f})"


def draw_of_plan(console: Console, answer: Answer) -> None:
    """Draw what a plan tells of its label: fibres, care, findings, and what is not known."""
    draw_composition(console, answer["composition"], "Fibres")
    _draw_care(console, answer["care"])
    _draw_findings(console, answer["findings"])
    messages = {finding["message"] for finding in answer["findings"]}
    _draw_not_known(console, [each for each in answer["not_known"] if each["what"] not in messages])


def _draw_care(console: Console, care: Sequence[Answer]) -> None:
    """Draw the care of the piece, its value or what it cannot be more than; nothing where no yarn tells any."""
    if not any(line["at_most"] for line in care):
        return
    console.print("\nCare: what every yarn bears", style="bold")
    for line in care:
        if line["value"]:
            by = f" (because of {visible(' and '.join(line['set_by']))})" if line["set_by"] else ""
            _say(console, f"{line['says']}{by}.")
        elif line["at_most"]:
            _say(console, f"{_field(line['group'])}: not known, untold of {visible(' and '.join(line['untold']))}.")


def _draw_label(console: Console, label: Answer) -> None:
    console.print(f"\nOn a label for {label['market']}", style="bold")
    for line in label["fibres"] or ("Fibres: not known yet.",):
        _say(console, visible(line))
    for line in label["care"] or ():
        _say(console, f"{visible(line)}.")
    for name, text in label["stated"].items():
        _say(console, f"{_field(name)}: {visible(text)}")
    if label["fibres"] and label["tolerance_percent"]:
        _say(console, f"An analysis may differ from these percentages by {label['tolerance_percent']:g} % of the mass.")
    wanted = [want for want in label["wants"] if not want["told"]]
    for want in wanted:
        memory = " (from memory)" if want["confidence"] == "memory" else ""
        _say(console, f"Not told, {want['duty']}: {want['says']}{memory}")


def _field(name: str) -> str:
    return name.replace("_", " ").capitalize()


def _say(console: Console, text: str) -> None:
    console.print(Padding(text, (0, 0, 0, 2)))


def _draw_findings(console: Console, findings: Sequence[Answer]) -> None:
    if findings:
        console.print(f"\nFindings: {tally(findings)}", style="bold")
    for finding in findings:
        console.print()
        draw_heading(console, finding)
        draw_words(console, finding)


def _draw_not_known(console: Console, unknown: Sequence[Answer]) -> None:
    if unknown:
        console.print("\nAlso not known, which is never a pass", style="bold")
    for each in unknown:
        _say(console, f"{visible(each['what'])} {visible(each['ask'])}")
