"""A repeat line that does not say how far it goes."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.instructions import AgainStep, StartStep
from counterpane.craft.rows.tree import Place, Row

_PATTERN = re.compile(
    r"\W*(?:rep|repeat|continue|cont)\.?(?:\s+(?:to|in|the|this|repeating))*(?:\s+(?:patt(?:ern)?"
    r"|pat))?\b(?=\W*$|\s+until\b)"
)


@rule(
    "repeat-extent-unclear",
    family="wording",
    severity="warning",
    bad="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRep last 4 rows.",
    good="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRep last 2 rows.",
)
def repeat_extent_unclear(examined: Examined) -> Iterator[Finding]:
    """A repeat line does not say which rows it means.

    It names more rows than the part has, it says “the last row” after a line of several unlike rows, or it says
    “repeat the pattern” where the text has several.
    """
    for place, why in sorted((*_again_lines(examined), *_pattern_lines(examined))):
        hint = "Name the rows by number, as in “Rep rows 1–4”."
        yield at(place, "repeat-extent-unclear", "warning", why, hint)


def _again_lines(examined: Examined) -> Iterator[tuple[Place, str]]:
    """Yield the repeat lines that count back too far, or to a line of several rows."""
    listed, latest = 0, list[Row]()
    for step in examined.instructions.steps:
        if isinstance(step, StartStep):
            listed, latest = 0, []
        elif isinstance(step, Row):
            listed = listed + 1 if latest and latest[-1].section == step.section else 1
            latest = [*latest[-1:], step]
        elif not isinstance(step, AgainStep):
            continue
        elif listed and step.again.last > listed:
            yield step.again.place, f"It repeats the last {step.again.last} rows, and this part has {listed}."
        elif step.again.last == 1 and _unlike(latest):
            yield step.again.place, "“The last row” stands behind a line that gives several rows."


def _unlike(rows: list[Row]) -> bool:
    """Tell whether two rows come from one line and are not the same."""
    return len(rows) > 1 and rows[0].place == rows[1].place and rows[0].parts != rows[1].parts


def _pattern_lines(examined: Examined) -> Iterator[tuple[Place, str]]:
    """Yield the lines that repeat "the pattern" where several parts have rows."""
    sections = {row.section for row in examined.rows}
    if len(sections) < 2:
        return
    rows = {row.place.line for row in examined.rows}
    for line in examined.instructions.page.lines:
        if line.number not in rows and _PATTERN.match(line.text):
            yield (
                line.place(len(line.text) - len(line.text.lstrip())),
                "It repeats a pattern, and the text has several.",
            )
