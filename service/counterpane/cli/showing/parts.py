"""Parts to choose from as a person reads them, and one part with its rows."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from rich.console import Console
from rich.padding import Padding

from counterpane.cli.showing.tables import table_of
from counterpane.cli.showing.words import number_of, progression, visible

Answer = Mapping[str, Any]
HEADINGS = {
    "body": "Textures for the body",
    "border": "Borders, for bottom, top and sides",
    "selvedge": "Selvedges",
    "cast-on": "Cast-ons",
    "bind-off": "Bind-offs",
}
BOTH_SIDES = {"yes": "alike", "both-good": "differ, both fit to show", "no": "one right side"}
UNKNOWN = "not known"
NONE = "No part is like that, of those of which it is known."
NOTED = "What its author noted: a claim, not a measurement, and not an approval."
MORE = "`counterpane find --show NAME` shows one with its rows; a plan takes the name: body = “waffle”."


def draw_list(console: Console, answer: Answer) -> None:
    """Draw the parts under their kinds: name, summary, stitches, sides and what the search tells of each."""
    found = {kind: [card for card in answer["items"] if card["kind"] == kind] for kind in HEADINGS}
    for kind, cards in found.items():
        if cards:
            _draw_kind(console, HEADINGS[kind], cards)
    if answer["items"]:
        console.print(f"{number_of(len(answer['items']), 'part')}. {MORE}")
    else:
        console.print(f"{NONE} Ask for less: leave out one of the words or options.")
    if "facets" in answer:
        _draw_facets(console, answer["facets"])


def _draw_kind(console: Console, heading: str, cards: Sequence[Answer]) -> None:
    console.print(heading, style="bold")
    told = [name for name in TOLD if any(name in card for card in cards)]
    table = table_of("Name", "What it is", "Stitches", "Both sides", *(TOLD[name][0] for name in told))
    table.columns[0].no_wrap = True
    for card in cards:
        sides = BOTH_SIDES.get(card["reversible"] or "", UNKNOWN)
        more = (TOLD[name][1](card[name]) for name in told)
        table.add_row(visible(card["slug"]), visible(card["summary"]), stitches(card), sides, *more)
    console.print(table)
    console.print()


def _widths(widths: Sequence[Answer]) -> str:
    return ", ".join(f"{each['stitches']} ({each['width_cm']} cm)" for each in widths)


def _alike(alike: Answer) -> str:
    return f"{alike['percent']} %"


def _meets(meeting: Answer) -> str:
    count = "any count" if meeting["stitches"] is None else f"from {meeting['stitches']}"
    return f"{meeting['place']}, {count}"


TOLD: Mapping[str, tuple[str, Callable[[Any], str]]] = {
    "widths": ("Within the width", _widths),
    "alike": ("Alike", _alike),
    "goes_with": ("Meets it at", _meets),
}
"""What a search tells of each part: its heading, and how it is written."""


def _draw_facets(console: Console, facets: Answer) -> None:
    """Draw what was found, counted by each question."""
    more = "" if facets["whole"] else ", and there are more"
    console.print(f"\n{number_of(facets['counted'], 'part')} counted{more}", style="bold")
    table = table_of("Question", "Answers", "Not known")
    table.columns[0].no_wrap = True
    for facet in facets["facets"]:
        words = ", ".join(f"{visible(each['word'])} {each['count']}" for each in facet["words"])
        rest = f" and {facet['more_words']} more" if facet["more_words"] else ""
        table.add_row(facet["name"].replace("_", " "), f"{words}{rest}" or "–", str(facet["not_known"]))
    console.print(table)


def stitches(card: Answer) -> str:
    """Return over which counts a part is worked, shortly: `6n + 2, from 8`, `any`, `24 alone`."""
    if card["fixed"] is not None:
        return f"{card['fixed']} alone"
    classes = card["classes"] or ([card["multiple"]] if card["multiple"] else [])
    return "; ".join(_short(each) for each in classes) or "any"


def _short(multiple: Mapping[str, int]) -> str:
    of, plus, least = multiple["of"], multiple["plus"], multiple["least"]
    from_ = f", from {least}" if least > 1 else ""
    return f"any{from_}" if of == 1 else f"{of}n{f' + {plus}' if plus else ''}{from_}"


def draw(console: Console, part: Answer) -> None:
    """Draw one part: what it takes, its rows, its parameters, what is noted of safety, and where it comes from."""
    console.rule(visible(part["name"]), align="left", characters="─")
    console.print(f"\n{visible(part['summary'])}")
    console.print(f"In a plan: {part['slug']} ({part['kind']}). Stitches: {_takes(part['derived'])}.")
    console.print(f"Both sides: {BOTH_SIDES.get(part['reversible'] or '', UNKNOWN)}.")
    for version in part["versions"]:
        console.print(f"\nRows, {visible(version['name'])}", style="bold")
        for row in version["rows"].splitlines():
            console.print(Padding(visible(row), (0, 0, 0, 2)))
    for parameter in part["parameters"]:
        console.print(f"\n{parameter['name'].capitalize()}: {_spread(parameter)}.")
    _draw_notes(console, part)
    source, author = part["provenance"]["source"], part["provenance"]["author"]
    console.print()
    console.print(visible(f"Source: {source}; words by {author}, {part['provenance']['licence']}."))


def _takes(derived: Answer) -> str:
    if derived["fixed"] is not None:
        return f"{derived['fixed']} and no other count"
    classes = derived["classes"] or ([derived["multiple"]] if derived["multiple"] else [])
    return "; or ".join(progression(each) for each in classes) or "any number"


def _spread(parameter: Answer) -> str:
    most = "" if parameter["most"] is None else f" to {parameter['most']}"
    usual = "" if parameter["default"] is None else f", usually {parameter['default']}"
    return f"from {parameter['least']}{most}{usual}"


def _draw_notes(console: Console, part: Answer) -> None:
    console.print("\nNoted for safety", style="bold")
    console.print(NOTED)
    for name, note in part["safety"].items():
        said = note if isinstance(note, str) else f"{note['value']} ({note['unit']})"
        console.print(Padding(visible(f"{name.replace('_', ' ')}: {said}"), (0, 0, 0, 2)))
