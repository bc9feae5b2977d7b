"""An abbreviation with two explanations."""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, Severity, rule
from counterpane.craft.rows.glossary import Entry

_ELSEWHERE = re.compile(r"(?:see|as|explained|described)\b")


@rule(
    "abbreviation-explained-twice",
    family="wording",
    severity="warning",
    bad="k = knit\nm1 = make 1\nm1 = place marker 1\n\nCast on 4 sts.\nRow 1: K2, m1, k2.",
    good="k = knit\nm1 = make 1\nst = stitch\n\nCast on 4 sts.\nRow 1: K2, m1, k1, k next st.",
)
def abbreviation_explained_twice(examined: Examined) -> Iterator[Finding]:
    """An abbreviation is explained twice.

    Two meanings of one abbreviation leave the knitter to guess at every use; one meaning said twice only takes room.
    “See special stitches” beside the steps themselves is no second meaning.
    """
    first: dict[str, Entry] = {}
    told: set[str] = set()
    for entry in examined.instructions.page.glossary.entries:
        for name in entry.names[:1]:
            earlier = first.setdefault(name, entry)
            if earlier is entry or name in told or _ELSEWHERE.match(entry.meaning) or _ELSEWHERE.match(earlier.meaning):
                continue
            told.add(name)
            severity: Severity = "note" if _alike(earlier.meaning, entry.meaning) else "warning"
            where = f"{quoted(earlier.meaning)} on line {earlier.place.line}"
            message = f"{quoted(entry.printed)} is {where} and {quoted(entry.meaning)} here."
            hint = "Give the two stitches two abbreviations." if severity == "warning" else "Keep one of the two."
            yield at(entry.place, "abbreviation-explained-twice", severity, message, hint)


def _alike(one: str, other: str) -> bool:
    """Tell whether the words of one meaning are all in the other."""
    words, others = (set(re.findall(r"[a-z0-9]+", said)) for said in (one, other))
    return words <= others or others <= words
