"""The words of a repeat, other than the style's."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Place

_FROM = re.compile(r"\b(?P<verb>rep|repeat)\.?(?P<from>\s+from\s+(?:\*+|†+|‡+))", re.IGNORECASE)
_LAST = re.compile(r"\bto\s+(?P<the>the\s+)?last(?=\s+(?:\d|st))", re.IGNORECASE)
_END = re.compile(r"\bto\s+(?:the\s+)?end(?:\s+of\s+(?:the\s+)?(?:row|rnd|round))?\b(?!\s+of)", re.IGNORECASE)


@rule(
    "style-repeat",
    family="style",
    severity="note",
    bad="Cast on 8 sts.\nRow 1: *K2, p2; repeat from * to the end.",
    good="Cast on 8 sts.\nRow 1: *K2, p2; rep from * to end.",
    source="house",
)
def style_repeat(text: Printed) -> Iterator[Finding]:
    """A repeat is worded otherwise than in the house style.

    The same order in the same words is taken in as one sign; in other words it is read again, in case it means
    something else.
    """
    yield from noted(text, "style-repeat", "A repeat is worded", _verbs(text))
    yield from noted(text, "style-repeat", "The end is worded", _ends(text))
    yield from noted(text, "style-repeat", "The rest is worded", _lasts(text))


def _verbs(text: Printed) -> Iterator[Departure]:
    wanted = (text.style.rep or "").partition(" ")[0]
    for number, line in text.row_lines():
        for found in _FROM.finditer(line):
            if wanted and found["verb"].lower() != wanted:
                yield Departure(Place(number, found.start() + 1), found.group(), wanted + found["from"])


def _ends(text: Printed) -> Iterator[Departure]:
    wanted = text.style.to_end
    for number, line in text.row_lines():
        for found in _END.finditer(line):
            said = wanted.replace("row", "round") if wanted and re.search("rnd|round", found.group(), re.I) else wanted
            if said and found.group().lower() != said:
                yield Departure(Place(number, found.start() + 1), found.group(), said)


def _lasts(text: Printed) -> Iterator[Departure]:
    """Give the words before the stitches that are left, which have an article where the end has one."""
    wanted = {None: None, "to the end": "to the last"}.get(text.style.to_end, "to last")
    for number, line in text.row_lines():
        for found in _LAST.finditer(line):
            if wanted and " ".join(found.group().lower().split()) != wanted:
                yield Departure(Place(number, found.start() + 1), found.group(), wanted)
