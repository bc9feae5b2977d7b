"""How demanding a blanket is: the council's level, from the stitches and techniques that its rows use.

The council names four levels by what a project asks for and no rule that tells one from another, so that the level is
an estimate by the rule below. What cast-on, bind-off and finishing ask for is not weighed: each pattern has them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from counterpane.craft.constructions import Plan
from counterpane.craft.pattern import Level
from counterpane.craft.rows.tree import Hold, IntoOne, OpenRepeat, Row, Work
from counterpane.craft.stitches import Stitch, Vocabulary
from counterpane.craft.trace.meaning import everything

LEVELS = ("Basic", "Easy", "Intermediate", "Complex")
"""The levels of a project, least demanding first: Craft Yarn Council, project levels of 2018, second-hand."""
SOURCE = "Scale: project levels of the Craft Yarn Council, 2018, second-hand; the level is estimated by our own rule"

SKILLS = (
    *("knit-and-purl", "slipped-stitches", "twisted-stitches", "crossings", "cables", "decreases", "lace"),
    *("lace-on-both-sides", "several-into-one", "bobbles", "row-below", "colours", "colours-in-a-row"),
)
"""What rows may ask for beside rows of knit or of purl alone; "knit-and-purl" is rows that change between them."""

_BASIC, _EASY, _INTERMEDIATE, _COMPLEX = range(len(LEVELS))
_PLAIN_ROWS = "rows of knit or of purl stitches alone"
_NEEDS_A_CABLE_NEEDLE = 3
"""Stitches of a crossing from which it counts as a cable and not as a twist of two; house figure."""


@dataclass(frozen=True, slots=True)
class _Asks:
    """A technique with the level that it asks for by itself, and the skill that it is."""

    level: int
    words: str
    skill: str


def level_of(plan: Plan, rows: Sequence[Row], vocabulary: Vocabulary) -> Level:
    """Return the level of a blanket worked in these rows: that of its most demanding technique.

    Two of the third level at once make the fourth; the reason names those that decide.
    """
    return _judged((*_of_rows(rows, vocabulary), *_of_making(plan, rows)))


def level_of_rows(rows: Sequence[Row], vocabulary: Vocabulary) -> Level:
    """Return the level of a part by itself, by the same rule."""
    return _judged((*_of_rows(rows, vocabulary), *_of_colours(rows)))


def skills_of_rows(rows: Sequence[Row], vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return the skills beside knit and purl rows that these rows ask for, each once: some of `SKILLS`."""
    return tuple(dict.fromkeys(each.skill for each in (*_of_rows(rows, vocabulary), *_of_colours(rows))))


def _judged(asks: Sequence[_Asks]) -> Level:
    asked = tuple(dict.fromkeys(asks))
    highest = max((each.level for each in asked), default=_BASIC)
    deciding = [each.words for each in asked if each.level == highest]
    if highest == _INTERMEDIATE and len(deciding) > 1:
        highest = _COMPLEX
    name = LEVELS[highest]
    return Level(name, f"{name}, because of {_joined(deciding or [_PLAIN_ROWS])}", SOURCE)


def _joined(words: Sequence[str]) -> str:
    return " and ".join(filter(None, (", ".join(words[:-1]), words[-1])))


def _of_making(plan: Plan, rows: Sequence[Row]) -> Iterator[_Asks]:
    if plan.picked:
        yield _Asks(_EASY, "borders picked up along the edges", "picked-up-stitches")
    yield from _of_colours(rows)


def _of_colours(rows: Sequence[Row]) -> Iterator[_Asks]:
    coloured = [{node.colour for node in everything(row.parts) if isinstance(node, Work)} - {None} for row in rows]
    if any(len(colours) > 1 for colours in coloured):
        yield _Asks(_INTERMEDIATE, "several colours in one row", "colours-in-a-row")
    elif any(coloured):
        yield _Asks(_EASY, "changes of colour", "colours")


def _of_rows(rows: Sequence[Row], vocabulary: Vocabulary) -> Iterator[_Asks]:
    """Give what the rows ask for, the most demanding first."""
    works = [node for row in rows for node in everything(row.parts) if isinstance(node, Work)]
    stitches = [vocabulary[key] for key in dict.fromkeys(work.stitch for work in works)]
    yield from _lace(rows, vocabulary)
    yield from _crossings(crossings(rows, vocabulary))
    if any(isinstance(node, IntoOne) for row in rows for node in everything(row.parts)):
        yield _Asks(_INTERMEDIATE, "several stitches worked into one", "several-into-one")
    if any(stitch.key == "mb" for stitch in stitches):
        yield _Asks(_INTERMEDIATE, "bobbles", "bobbles")
    if any(stitch.key in ("k below", "p below") for stitch in stitches):
        yield _Asks(_INTERMEDIATE, "stitches worked into the row below", "row-below")
    if any(_slips(row) for row in rows):
        yield _Asks(_EASY, "slipped stitches in the fabric", "slipped-stitches")
    if any(stitch.key.endswith("tbl") and stitch.uses == stitch.makes == 1 for stitch in stitches):
        yield _Asks(_EASY, "twisted stitches", "twisted-stitches")
    if any(_mixed(row) for row in rows):
        yield _Asks(_EASY, "rows that change between knit and purl", "knit-and-purl")


def _lace(rows: Sequence[Row], vocabulary: Vocabulary) -> Iterator[_Asks]:
    """Say how yarn-overs and decreases are worked; on both sides of the fabric they ask the most."""
    opened = [row for row in rows if any(stitch.opens for stitch in _worked(row, vocabulary))]
    fewer = [row for row in rows if any(stitch.makes < stitch.uses for stitch in _worked(row, vocabulary))]
    if not opened:
        if fewer:
            yield _Asks(_INTERMEDIATE, "decreases in the fabric", "decreases")
        return
    sides = {row.side for row in (*opened, *fewer)}
    if {"RS", "WS"} <= sides:
        yield _Asks(_COMPLEX, "yarn-overs and decreases on both RS and WS rows", "lace-on-both-sides")
    else:
        yield _Asks(_INTERMEDIATE, "lace: yarn-overs with decreases", "lace")


def crossings(rows: Sequence[Row], vocabulary: Vocabulary) -> tuple[int, ...]:
    """Return over how many stitches the rows cross others, each number once, the least first."""
    stitches = (stitch for row in rows for stitch in _worked(row, vocabulary))
    named = {stitch.uses for stitch in stitches if stitch.makes == stitch.uses > 1}
    return tuple(sorted(named.union(wide for row in rows for wide in spelt_out(row))))


def _crossings(wide: Sequence[int]) -> Iterator[_Asks]:
    cables = [number for number in wide if number >= _NEEDS_A_CABLE_NEEDLE]
    if cables:
        yield _Asks(_INTERMEDIATE, f"cables crossed over {_joined([str(number) for number in cables])} sts", "cables")
    elif wide:
        yield _Asks(_EASY, "crossings of 2 sts", "crossings")


def spelt_out(row: Row) -> Iterator[int]:
    """Give the stitches of each crossing that is spelt out: those held, and those worked until they are."""
    wide = 0
    for node in everything(row.parts):
        if isinstance(node, Hold):
            wide = node.times
        elif isinstance(node, Work) and wide and node.held:
            yield wide
            wide = 0
        elif isinstance(node, Work) and wide:
            wide += node.times


def _worked(row: Row, vocabulary: Vocabulary) -> Iterator[Stitch]:
    return (vocabulary[node.stitch] for node in everything(row.parts) if isinstance(node, Work))


def _slips(row: Row) -> bool:
    """Tell whether a row slips stitches elsewhere than at its ends."""
    ends = (0, len(row.parts) - 1)
    inner = [node for place, node in enumerate(row.parts) if place not in ends or not isinstance(node, Work)]
    return any(isinstance(node, Work) and node.stitch == "sl" for node in everything(inner))


def _mixed(row: Row) -> bool:
    """Tell whether a row has knit and purl stitches in what it repeats across."""
    repeated = [node for node in row.parts if isinstance(node, OpenRepeat)]
    keys = {node.stitch for node in everything(repeated) if isinstance(node, Work)}
    return {"k", "p"} <= keys
