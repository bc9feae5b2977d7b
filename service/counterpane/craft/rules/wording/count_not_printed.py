"""A row that changes the count without saying what is left."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined, Followed
from counterpane.craft.checking.runs import given_line
from counterpane.craft.checking.wording import at, row_name, stitches
from counterpane.craft.findings import Finding, Severity, rule
from counterpane.craft.rows.instructions import AgainStep
from counterpane.craft.rows.tree import Place


@rule(
    "count-not-printed",
    family="wording",
    severity="warning",
    bad="Cast on 8 sts.\nRow 1: K1, yo, k to end. (9 sts)\nRow 2: Purl.\nRow 3: K1, yo, k to end.\nRow 4: Purl.",
    good=(
        "Cast on 8 sts.\nRow 1: K1, yo, k to end. (9 sts)\nRow 2: Purl.\nRow 3: K1, yo, k to end. (10 sts)\n"
        "Row 4: Purl."
    ),
    source="stitch counts after each change are in four published checklists of what a pattern holds",
)
def count_not_printed(examined: Examined) -> Iterator[Finding]:
    """A row changes the count and does not print it.

    The count after a change is the only check a knitter has. It is asked of a text that prints counts after other rows
    that change them; and once, as a note, of a whole pattern that ends with another count than it began with.
    """
    cast_on = examined.instructions.cast_on
    if cast_on is not None and cast_on.others:
        return
    changing = [followed for followed in _last_of_lines(examined) if followed.before != followed.after]
    told = _told_by_repeat(examined)
    silent = [f for f in changing if f.row.stated is None and f.row.place not in told and f.after != 1]
    printed = sum(followed.row.stated is not None for followed in changing)
    severity: Severity = "warning" if 2 * printed >= len(changing) else "note"
    if not printed and not (_pattern(examined) and _changes_for_good(examined)):
        return
    square = _in_square_brackets(examined)
    for followed in silent if printed else silent[-1:]:
        row, after = followed.row, followed.after or 0
        message = f"{row_name(row)} leaves {stitches(after)} of {followed.before} and does not say so."
        hint = f"Print the count behind the row: ({after} sts)."
        corrections = _with_count(examined, followed, square=square)
        yield at(row.start, "count-not-printed", severity, message, hint, corrections=corrections)


def _last_of_lines(examined: Examined) -> list[Followed]:
    """Return the last row of every line whose counts are known, unless all is bound off or a repeat line follows it."""
    last: dict[Place, Followed] = {}
    for followed in examined.followed:
        last[followed.row.place] = followed
    return [followed for followed in last.values() if followed.before and followed.after]


def _told_by_repeat(examined: Examined) -> set[Place]:
    """Return the rows whose count stands in the repeat line behind them: "until 60 sts remain"."""
    steps = (step for step in examined.instructions.steps if isinstance(step, AgainStep))
    told = (step for step in steps if step.again.remain is not None or step.again.stated is not None)
    return {examined.rows[index].place for step in told for index in step.rows}


def _pattern(examined: Examined) -> bool:
    return examined.instructions.page.furnished and examined.instructions.cast_on is not None


def _changes_for_good(examined: Examined) -> bool:
    """Tell whether the last row that is not bound off leaves another count than the first began with."""
    counts = [followed for followed in examined.followed if followed.before and followed.after]
    return bool(counts) and counts[0].before != counts[-1].after


def _with_count(examined: Examined, followed: Followed, *, square: bool) -> tuple[str, ...]:
    """Return the row with its count in brackets."""
    row = followed.row
    if row.place.line != row.end.line:
        return ()
    line = given_line(examined, row.place.line)
    count = f"[{followed.after} sts]" if square else f"({followed.after} sts)"
    stop = line[row.end.column - 1 : row.end.column]
    before = line[: row.end.column - 1] + ("." if stop == "." else "")
    rest = line[row.end.column - 1 + (stop == ".") :]
    return (f"{before} {count}{rest}",)


def _in_square_brackets(examined: Examined) -> bool:
    """Tell whether a count that the text prints stands in square brackets."""
    first = next((row.stated for row in examined.rows if row.stated), 0)
    return f"[{first} " in examined.text
