"""Ridges of garter stitch as they are counted on the right side: one for each WS row that is knitted.

With row 1 as a RS row, r rows show r // 2 ridges there and the rest on the wrong side (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from counterpane.craft.component import Operation
from counterpane.craft.rows.tree import Group, Node, OpenRepeat, Row, Side, Work


def is_garter(rows: Iterable[Row]) -> bool:
    """Tell whether every stitch of every row is knitted, slipped edge stitches aside."""
    return all(_is_knitted(row.parts) for row in rows)


def edge_is_garter(rows: Iterable[Row], selvedge: int, sides: int) -> bool:
    """Tell whether the first `sides` stitches inside the selvedge are knitted on every row."""
    return sides > 0 and all(_knits(row.parts, selvedge, sides) for row in rows)


def ridges(rows: int, first: Side) -> int:
    """Return the ridges on the right side of this many garter rows."""
    return rows // 2 if first == "RS" else (rows + 1) // 2


def shows_as_ridge(cast_on: Operation, first: Side) -> bool:
    """Tell whether the cast-on looks like one ridge more on the right side: its bumps face a row 1 that is RS."""
    return first == "RS" and "bump" in (cast_on.faces_row_1 or "")


def _is_knitted(parts: Sequence[Node]) -> bool:
    for index, node in enumerate(parts):
        match node:
            case Work(stitch="k" | "wyib" | "wyif"):
                continue
            case Work(stitch="sl", times=1) if index in (0, len(parts) - 1):
                continue
            case OpenRepeat() | Group() if _is_knitted(node.parts):
                continue
            case _:
                return False
    return True


def _knits(parts: Sequence[Node], skip: int, need: int) -> bool:
    """Tell whether `need` knit stitches follow the first `skip` loops of a row, as far as it is plain to see."""
    for key, times in _works(parts, skip + need):
        skipped = min(skip, times)
        skip -= skipped
        if times > skipped and key != "k":
            return need <= 0
        need -= times - skipped
        if need <= 0:
            return True
    return False


def _works(parts: Sequence[Node], most: int) -> Iterator[tuple[str, int]]:
    """Yield the stitches at the start of a row with their numbers, up to its first repeat of several."""
    for node in parts:
        if isinstance(node, OpenRepeat) and node.plain and isinstance(node.parts[0], Work):
            yield node.parts[0].stitch, most
        if not isinstance(node, Work):
            return
        if node.stitch not in ("wyif", "wyib"):
            yield node.stitch, node.times
