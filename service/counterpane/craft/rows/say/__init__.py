"""The way back: a tree to the words of a row, in US or UK terms, so that reading the words gives the tree again.

Words are abbreviated ("k2tog") or written in full ("knit 2 stitches together"). In UK terms the yarn-over is named by
its neighbours: yfwd between knits, yrn between purls, yfrn from knit to purl, yon from purl to knit; across the join
of a repeat the first stitch of the repeat follows its last one.
"""

from __future__ import annotations

from collections.abc import Sequence

from counterpane.craft.rows.say.nodes import said_list
from counterpane.craft.rows.say.printed import NOTHING, Fabric, Printed, printed_in
from counterpane.craft.rows.say.prose import prose_in_full
from counterpane.craft.rows.say.spelling import SPELLINGS, WordsKind
from counterpane.craft.rows.say.stitches import Speech
from counterpane.craft.rows.tree import Node, OpenRepeat, Row, Work
from counterpane.craft.stitches import Terms, Vocabulary

__all__ = ["NOTHING", "Fabric", "Printed", "WordsKind", "printed_in", "prose_in_full", "say_line", "say_row"]


def say_row(
    parts: Sequence[Node],
    vocabulary: Vocabulary,
    terms: Terms = "us",
    words: WordsKind = "short",
    printed: Printed = NOTHING,
) -> str:
    """Write the parts of a row as words, without a label: "k2, *p3, k2; rep from * to end"."""
    spelling = SPELLINGS[words]
    whole = _whole_row(parts)
    if whole and not printed.words:
        return spelling.whole_row[whole]
    said = said_list(tuple(parts), Speech(vocabulary, terms, spelling, printed))
    return ", ".join(filter(None, (said, printed.tail)))


def say_line(
    row: Row, vocabulary: Vocabulary, terms: Terms = "us", label: str | None = None, words: WordsKind = "short"
) -> str:
    """Write a whole row line with label, side and printed count: "Row 1 (RS): K2, p2. (4 sts)"."""
    spelling = SPELLINGS[words]
    word = spelling.round if row.side == "round" else spelling.row
    side = f" ({spelling.sides[row.side]})" if row.side and row.side in spelling.sides else ""
    text = say_row(row.parts, vocabulary, terms, words)
    count = f" ({spelling.counted(row.stated)})" if row.stated is not None else ""
    return f"{word} {label or row.label}{side}: {text[:1].upper()}{text[1:]}.{count}"


def _whole_row(parts: Sequence[Node]) -> str | None:
    """Return "k" or "p" where it is worked across the whole row."""
    node = parts[0] if len(parts) == 1 else None
    if not isinstance(node, OpenRepeat) or not node.plain or node.stop != 0 or node.marker:
        return None
    work = node.parts[0]
    return work.stitch if work in (Work("k"), Work("p")) and isinstance(work, Work) else None
