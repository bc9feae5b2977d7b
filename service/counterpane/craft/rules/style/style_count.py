"""A count behind a row, in another form than the style's."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Place

_MANY = r"\d++(?:\s*[(\[][\d\s,;:/-]+[)\]])?"
_COUNT = re.compile(
    rf"(?:(?P<open>[(\[])\s*|(?<![\w,=‐-―-])(?P<sign>[-‐-―=]++)\s*|(?<=[.;])\s+)"
    rf"(?P<many>{_MANY})\s*(?P<word>stitches|sts?)\b\.?\s*(?(open)[)\]])\.?\s*$",
    re.IGNORECASE,
)


@rule(
    "style-count",
    family="style",
    severity="note",
    bad="Cast on 4 sts.\nRow 1: K1, yo, k to end — 5 sts.\nRow 2: Purl.",
    good="Cast on 4 sts.\nRow 1: K1, yo, k to end. (5 sts)\nRow 2: Purl.",
    source="house",
)
def style_count(text: Printed) -> Iterator[Finding]:
    """A count is printed in another form than the house style.

    The count behind a row is no instruction: it must look the same everywhere, so that nobody takes it for one.
    """
    if text.style.count is None:
        return
    found = (each for number, line in text.row_lines() if (each := _departure(text, number, line)) is not None)
    yield from noted(text, "style-count", "A count is printed", found)


def _departure(text: Printed, number: int, line: str) -> Departure | None:
    """Return the count at the end of a line where its form differs; a full stop behind it is part of no form."""
    found = _COUNT.search(line)
    if found is None:
        return None
    begin = found.start() + len(found.group()) - len(found.group().lstrip())
    words = line[begin:].rstrip().rstrip(".").rstrip()
    wanted = (text.style.count or "").replace("95", found["many"]).replace("sts", found["word"].lower())
    return None if words == wanted else Departure(Place(number, begin + 1), words, wanted)
