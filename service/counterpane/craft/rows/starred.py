"""A star before whole rows, and the line that calls it: "*Knit 4 rows, purl 1 row; rep from * until …"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from counterpane.craft.rows.again import Again, from_star
from counterpane.craft.rows.clauses import Clause

_LOOKED_BACK = 40  # House: signs before a row in which its star stands; a line may hold any number of rows.


def with_starred_rows(found: Sequence[Clause]) -> list[Clause]:
    """Take "rep from *" behind rows of which one begins with the star for a repeat line of the rows since."""
    out: list[Clause] = []
    starred: list[Clause] = []
    for clause in found:
        again = _called(clause, starred) if starred else None
        if clause.kind != "row":
            starred = []
        elif starred or _has_star(clause):
            starred.append(clause)
        out.append(clause if again is None else replace(clause, kind="again", again=again))
    return out


def _has_star(clause: Clause) -> bool:
    """Tell whether one star stands before a row; two are print for bold letters."""
    text, start = clause.line.text, clause.start
    before, begins = text[max(0, start - _LOOKED_BACK) : start].rstrip()[-2:], text[start : start + 2]
    return (begins[:1] == "*" != begins[1:]) or (before[-1:] == "*" != before[:-1])


def _called(clause: Clause, starred: Sequence[Clause]) -> Again | None:
    """Return the repeat line of rows that a clause asks for once more; None where it asks for none."""
    labels = [row.label for row in starred if row.label]
    if clause.kind != "prose" or any(label.also for label in labels):
        return None
    numbered = labels[0].numbers
    rows = sum(len(label.numbers) or label.copies for label in labels)
    return from_star(clause.line, clause.start, clause.end, numbered[0] if numbered else None, rows)
