"""Borders picked up along the finished middle, in words: the pick-up with its rate, the rows, and the bind-off."""

from __future__ import annotations

from collections.abc import Sequence

from counterpane.craft.constructions import PickedEdge, Plan
from counterpane.craft.constructions.picking import Stretch, rate_in_words
from counterpane.craft.pattern import Checkpoint, WrittenBorder, WrittenSection
from counterpane.craft.pattern.checkpoints import seen
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.lifelines import lifelines
from counterpane.craft.pattern.parts import section_name, texture_name
from counterpane.craft.pattern.ridges import is_garter, ridges
from counterpane.craft.pattern.rows import next_side, repeats, written_rows
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.say import WordsKind
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Terms, Vocabulary

WAYS = {"left": "from the bind-off down to the cast-on", "right": "from the cast-on up to the bind-off"}
"""How one goes along an edge with the RS facing, from right to left; common practice, no source."""


def written_border(
    plan: Plan,
    edge: PickedEdge,
    rows: Sequence[Row],
    vocabulary: Vocabulary,
    terms: Terms,
    *,
    words: WordsKind = "short",
) -> WrittenBorder:
    """Write the border of one edge; its rows are `rows`, once."""
    border = edge.border
    return WrittenBorder(
        line=in_terms(
            f"With RS facing, pick up and knit {edge.picks} sts along the {edge.edge} edge ({WAYS[edge.edge]}).", terms
        ),
        stitches=edge.picks,
        rates=tuple(in_terms(f"{_rate(each)}.", terms) for each in edge.stretches),
        section=_section(plan, edge, rows, vocabulary, terms, words=words),
        bind_off=in_terms(f"Bind off all {border.after} stitches on the {next_side(border)}.", terms),
    )


def _rate(stretch: Stretch) -> str:
    """Say what is picked up along one stretch."""
    name = f"{stretch.name[:1].upper()}{stretch.name[1:]}"
    along = f"along {counted(stretch.rows, 'row')}"
    return f"{name}: {counted(stretch.picks, 'stitch', 'stitches')} {along}, {rate_in_words(stretch)}"


def _section(
    plan: Plan, edge: PickedEdge, rows: Sequence[Row], vocabulary: Vocabulary, terms: Terms, *, words: WordsKind
) -> WrittenSection:
    border = edge.border
    texture = texture_name(plan, border.texture, terms)
    many = counted(border.rows, "row")
    worked = written_rows(rows, border, vocabulary, terms, words)
    return WrittenSection(
        name=section_name(border),
        texture=texture,
        intro=f"{texture}: {many} outwards, {both(border.cm_length)} wide.",
        first_row=1,
        last_row=border.rows,
        before=border.before,
        after=border.after,
        rows=worked,
        repeats=repeats(len(rows), border.rows),
        checkpoints=(_end(plan, edge, rows, vocabulary),),
        lifelines=lifelines(rows, worked, border.before, vocabulary),
        stop=in_terms(
            f"Stop after row {border.rows} of this border, a {border.last_row_side} row: bind off on the next row, a "
            f"{next_side(border)} row.",
            terms,
        ),
    )


def _end(plan: Plan, edge: PickedEdge, rows: Sequence[Row], vocabulary: Vocabulary) -> Checkpoint:
    border, side = edge.border, next_side(edge.border)
    number = ridges(border.rows, border.first_row_side) if is_garter(rows) else None
    looks = seen(plan, border, vocabulary)
    needle = f"{counted(border.after, 'stitch', 'stitches')} on the needle"
    size = f"about {both(border.cm_length)} from the edge and {both(border.cm_width)} along it"
    shown = "" if number is None else f": {counted(number, 'ridge')} on the right side"
    shows = f" The right side shows {looks}." if looks else ""
    text = (
        f"{counted(border.rows, 'row')} worked{shown}. {needle}; the border measures {size}; the {side} faces you next."
        f"{shows}"
    )
    return Checkpoint(border.rows, border.rows, text, border.after, side, border.cm_length, number, looks)
