"""A repeat line whose number of times can be counted in two ways."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.instructions import AgainStep

_TIMES = re.compile(
    r"rep(?:eat)?\b[^.;]*?\b(?P<times>twice|(?:\d+|two|three|four|five|six|seven|eight|nine|ten)\s+times)\b"
)
LONGEST_ORDER = 200  # House.
_SETTLED = re.compile(r"\b(?:more|again|total|altogether|in all|further|additional|another|extra)\b")


@rule(
    "repeat-times-two-ways",
    family="wording",
    severity="note",
    bad="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRep rows 1-2 5 times.",
    good="Cast on 4 sts.\nRow 1: Knit.\nRow 2: Purl.\nRep rows 1-2 5 times more.",
)
def repeat_times_two_ways(examined: Examined) -> Iterator[Finding]:
    """A number of times may or may not count the first.

    The rows have been worked once when the line is read: “repeat 5 times” is five times more to some and five in all
    to others.
    """
    for step in examined.instructions.steps:
        if not isinstance(step, AgainStep):
            continue
        line = examined.instructions.page.lines[step.again.place.line - 1]
        start = step.again.place.column - 1
        match = _TIMES.search(line.text, start, start + LONGEST_ORDER)
        if match is None or _SETTLED.search(line.text, start, start + LONGEST_ORDER):
            continue
        given = examined.instructions.page.given[line.number - 1]
        ways = ("more", "in all")
        corrections = tuple(f"{given[: match.end()]} {way}{given[match.end() :]}" for way in ways)
        message = f"{quoted(match['times'])} may be that many more, or that many in all."
        place = line.place(match.start("times"))
        hint = "Write “more” or “in all” behind it."
        yield at(place, "repeat-times-two-ways", "note", message, hint, corrections=corrections)
