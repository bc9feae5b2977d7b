"""How a piece may be washed, read from the words of a label; what is not read is not known."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

_WAYS = {
    "dry clean": re.compile(r"\bdry[\s-]?clean"),
    "hand": re.compile(r"\bhand\b"),
    "wool cycle": re.compile(r"\bwool(?:len)?s?\b"),
    "tumble": re.compile(r"\btumble"),
    "machine": re.compile(r"\bmachine\b"),
    "not at all": re.compile(r"\b(?:not|never) (?:be )?wash|\bunwashable\b"),
}
_DENIED = re.compile(r"\b(?:do not|don't|not|no|never)\s+(?:be\s+)?(?!wash)\w+(?:[\s-]?(?:wash|dry|clean)\w*)*")


@dataclass(frozen=True, slots=True)
class Wash:
    """How the finished piece may be washed, as a label says it, and at how many degrees Celsius at most."""

    method: str | None = None
    temp_c: Fraction | None = None

    @property
    def ways(self) -> frozenset[str]:
        """Return the ways that the words allow: "hand", "machine", "wool cycle", "tumble", "dry clean", "not at all".

        What the words forbid is left out. Empty where nothing can be read.
        """
        words = _DENIED.sub(" ", " ".join((self.method or "").casefold().split()))
        return frozenset(way for way, pattern in _WAYS.items() if pattern.search(words))
