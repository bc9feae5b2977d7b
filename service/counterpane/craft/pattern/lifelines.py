"""Lifelines: after which rows a thread is drawn through all stitches, so that lace and cables can be ripped back.

A row suits where it is worked plain and the count is back at that of the first row. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.pattern import WrittenRow
from counterpane.craft.pattern.figures import counted
from counterpane.craft.pattern.level import spelt_out
from counterpane.craft.rows.tree import IntoOne, Row, Work
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace.meaning import everything

APART = 8
"""Rows between lifelines, at least: few enough to knit again, many enough to be worth a thread; house figure."""


@dataclass(frozen=True, slots=True)
class Kinds:
    """What a row works beside plain stitches."""

    opens: bool
    crosses: bool
    gathers: bool

    @property
    def plain(self) -> bool:
        """Tell whether the row is worked plain."""
        return not (self.opens or self.crosses or self.gathers)


def kinds_of(row: Row, vocabulary: Vocabulary) -> Kinds:
    """Return what a row works beside plain stitches: openings, crossings, and stitches made fewer or more."""
    nodes = tuple(everything(row.parts))
    stitches = [vocabulary[node.stitch] for node in nodes if isinstance(node, Work)]
    return Kinds(
        any(stitch.opens for stitch in stitches),
        any(stitch.makes == stitch.uses > 1 for stitch in stitches) or any(spelt_out(row)),
        any(stitch.makes != stitch.uses for stitch in stitches) or any(isinstance(node, IntoOne) for node in nodes),
    )


def needs_lifeline(rows: Sequence[Row], vocabulary: Vocabulary) -> bool:
    """Tell whether anything in the rows is hard to rip back without one."""
    return not all(kinds_of(row, vocabulary).plain for row in rows)


def lifelines(
    listed: Sequence[Row], written: Sequence[WrittenRow], before: int, vocabulary: Vocabulary
) -> tuple[str, ...]:
    """Say after which of the listed rows a lifeline is put, how often, and why; nothing for plain rows.

    `before` is the count before the first of them.
    """
    if not needs_lifeline(listed, vocabulary):
        return ()
    kinds = [kinds_of(row, vocabulary) for row in listed]
    back = [place for place, row in enumerate(written, 1) if row.after == before]
    plain = [place for place in back if kinds[place - 1].plain]
    if not back:
        return ()
    place, row = (plain or back)[-1], written[(plain or back)[-1] - 1]
    kind = f"a plain {row.side} row" if plain else f"a {row.side} row; no row of this part is plain"
    every = -(-APART // len(listed)) * len(listed)
    where = (
        f"Lifeline: after row {place} of this part ({kind}), with all {before} stitches back on the needle, and again "
        f"every {counted(every, 'row')}."
    )
    return (where, f"Why: {_why(kinds)} You rip back to the thread and pick the stitches up from it.")


def _why(kinds: Sequence[Kinds]) -> str:
    opens, crosses = any(kind.opens for kind in kinds), any(kind.crosses for kind in kinds)
    if opens and crosses:
        return "a yarn-over is lost and a crossing comes undone where rows are ripped out one by one."
    if crosses:
        return "a crossing comes undone where rows are ripped out one by one."
    if opens:
        return "a yarn-over is only a loop over the needle and is lost where rows are ripped out one by one."
    return "stitches that were made fewer or more are hard to pick up where rows are ripped out one by one."
