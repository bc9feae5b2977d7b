"""A ribbon, button or fringe on a blanket for a baby."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.quick import word_of
from counterpane.craft.rows.words import Line

_FOR_A_BABY = re.compile(
    word_of(
        *("bab(?:y|ies)", "infants?", "newborns?", "preemies?", "pram", "stroller", "crib", "cot", "cradle", "moses"),
        *("layette", "toddlers?", "nursery"),
    )
    + r"\b"
)
_ATTACHED = re.compile(
    r"\b(?:(?P<fringe>fring(?:e|es|ing)|tassels?)|(?P<pom>pom-?\s?poms?)"
    r"|(?P<string>ribbons?|ties\b(?!\s+in)|bows?\b|cords?)|(?P<hard>buttons?|beads?|snaps?|bells?|charms?))\b"
)
_DENIED = re.compile(r"\b(?:no|not|never|without|omit|avoid|leave out|instead of)\b[^.;:]{0,60}$")
LOOKED_BACK = 80  # Signs before an attachment in which it may be denied; house.
_RULES = {
    "fringe": "see the safety rule “fringe-or-tassel”",
    "pom": "see the safety rule “pom-pom”",
    "string": "see the safety rule “cord-near-a-baby” and its neighbours, R20 to R23",
    "hard": "see the safety rule “hard-part-comes-off”",
}


@rule(
    "attachment-near-a-baby",
    family="wording",
    severity="note",
    bad="A blanket for a baby\n\nMaterials: 300 g wool, 2 m of ribbon.\n\nCast on 4 sts.\nRow 1: Knit.",
    good="A blanket for a baby\n\nMaterials: 300 g wool, a blunt needle.\n\nCast on 4 sts.\nRow 1: Knit.",
    source="usual caution: no ties, ribbons, fringes, pom-poms, buttons or beads for children under three",
)
def attachment_near_a_baby(examined: Examined) -> Iterator[Finding]:
    """Materials or finishing of a blanket for a baby name something that can come off or wind round.

    The note judges nothing: the safety rules ask for the measures, and usual advice is to leave such things off for
    children under three.
    """
    if _FOR_A_BABY.search(examined.text.lower()) is None:
        return
    page = examined.instructions.page
    seen: set[str] = set()
    for stretch in (*page.under("materials"), *page.under("finishing")):
        for kind, match in _attached(stretch.line, stretch.start):
            if kind in seen:
                continue
            seen.add(kind)
            message = f"{quoted(match.group().strip())} on a blanket for a baby: {_RULES[kind]}."
            hint = "Leave it off for a child under three, or answer the safety questions for it."
            yield at(stretch.line.place(match.start()), "attachment-near-a-baby", "note", message, hint)


def _attached(line: Line, start: int) -> Iterator[tuple[str, re.Match[str]]]:
    """Yield what a line attaches; what it tells to leave off is none."""
    for match in _ATTACHED.finditer(line.text, start):
        if not _DENIED.search(line.text, max(0, match.start() - LOOKED_BACK), match.start()) and match.lastgroup:
            yield match.lastgroup, match
