"""US and UK words for the same thing, and the names that mean two stitches in the trade.

Rows are not worded here: `rows.say` knows the names of stitches. Source of the pairs: common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from counterpane.craft.stitches import Terms

_US_TO_UK: Mapping[str, str] = {
    "bind off": "cast off",
    "binds off": "casts off",
    "binding off": "casting off",
    "bound off": "cast off",
    "bind-off": "cast-off",
    "bind-offs": "cast-offs",
    "gauge": "tension",
    "gauges": "tensions",
    "stocking stitch (stockinette)": "stocking stitch",
    "stockinette stitch": "stocking stitch",
    "stockinette": "stocking stitch",
    "work even": "work straight",
}
"""What a text in US terms says, and the UK word for it."""

_UK_TO_US: Mapping[str, str] = {
    "cast off": "bind off",
    "casting off": "binding off",
    "cast-off": "bind-off",
    "cast-offs": "bind-offs",
    "stocking stitch (stockinette)": "stockinette stitch",
    "stocking stitch": "stockinette stitch",
    "work straight": "work even",
}
"""The way back; "tension" stays, since US texts speak of the tension of the yarn."""


def _worded(table: Mapping[str, str]) -> re.Pattern[str]:
    longest_first = sorted(table, key=len, reverse=True)
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})(?!\w)", re.IGNORECASE)


_TABLES: Mapping[Terms, tuple[Mapping[str, str], re.Pattern[str]]] = {
    "uk": (_US_TO_UK, _worded(_US_TO_UK)),
    "us": (_UK_TO_US, _worded(_UK_TO_US)),
}


def in_terms(text: str, terms: Terms) -> str:
    """Say a sentence in the terms of one trade; a capital stays a capital.

    Names of the moss family are left alone, since their words alone do not say which stitch is meant.
    """
    table, found = _TABLES[terms]

    def other(match: re.Match[str]) -> str:
        word = table[match.group().lower()]
        return word[0].upper() + word[1:] if match.group()[0].isupper() else word

    return found.sub(other, text)
