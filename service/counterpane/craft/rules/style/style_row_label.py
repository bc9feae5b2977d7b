"""A row label in another form than the style's."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.checking.wording import ordinal as in_order
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.clauses import Clause
from counterpane.craft.rows.labels import number_of
from counterpane.craft.rows.tree import Place

_NUMBER = re.compile(r"\d+(?:st|nd|rd|th)?\b|[a-z]+(?:-[a-z]+)?", re.IGNORECASE)
_KIND = r"(?P<kind>rows?|rnds?|rounds?|r)"
_BEFORE = re.compile(rf"{_KIND}\.?\s*(?P<numbers>\d[\d\s,&+/a-z-]*?)(?=\s*(?:[:.=(\[]|$))", re.IGNORECASE)
_AFTER = re.compile(rf"(?P<numbers>[\w\s,&+/-]+?)\s+{_KIND}\b", re.IGNORECASE)
LONGEST_LABEL = 200  # Signs of a label that is looked at; house.


@rule(
    "style-row-label",
    family="style",
    severity="note",
    bad="Cast on 4 sts.\n1st row: Knit.\n2nd row: Purl.",
    good="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.",
    source="house",
)
def style_row_label(text: Printed) -> Iterator[Finding]:
    """A row label has another form than the house style.

    A knitter finds the next row by its label, at a glance and often after a pause. One form throughout lets the eye
    run down the left edge of the page.
    """
    if text.style.row_label is None:
        return
    found = (each for clause in text.rows if (each := _departure(text, clause)) is not None)
    yield from noted(text, "style-row-label", "A row is labelled", found)


def _departure(text: Printed, clause: Clause) -> Departure | None:
    """Return the label that differs; a row without a number has a name of its own."""
    if clause.label is None or not clause.label.numbers or clause.label.too_long:
        return None
    begin = clause.place.column - 1
    first = clause.body[0].place if clause.body else None
    end = first.column - 1 if first and first.line == clause.place.line else None
    head = text.line_at(clause.place)[begin:end].lstrip("*_ ")
    found = _BEFORE.match(head) or _AFTER.match(head) if len(head) <= LONGEST_LABEL else None
    if found is None:
        return None
    wanted = _label(found["numbers"].strip(), found["kind"], text.style.row_label == "1st row:")
    column = begin + 1 + text.line_at(clause.place)[begin:end].index(head)
    return None if found.group() == wanted else Departure(Place(clause.place.line, column), found.group(), wanted)


def _label(numbers: str, kind: str, ordinal: bool) -> str:
    """Write numbers and kind in one of the two forms: "Rows 2 and 4", "2nd and 4th rows"."""
    many = len([word for word in _NUMBER.findall(numbers) if number_of(word.lower())]) > 1
    word = (
        f"{'round' if kind.lower()[:2] in ('rn', 'ro') and kind.lower()[:3] != 'row' else 'row'}{'s' if many else ''}"
    )
    said = _NUMBER.sub(lambda found: _number(found.group(), ordinal), numbers)
    return f"{said} {word}" if ordinal else f"{word.capitalize()} {said}"


def _number(word: str, ordinal: bool) -> str:
    number = number_of(word.lower())
    if number is None:
        return word
    return in_order(number) if ordinal else str(number)
