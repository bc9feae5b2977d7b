"""US or UK terms, told from words that only one of them uses."""

from __future__ import annotations

import re

from counterpane.craft.stitches import Terms

_UK = re.compile(
    r"\b(?:cast(?:ing)? off|tension|yfwd|yrn|yfrn|yon|stocking st(?:itch)?|skpo|"
    r"alt(?:ernate)? row|work straight|tog tbl)\b",
    re.IGNORECASE,
)
_US = re.compile(r"\b(?:bind(?:ing)? off|bo|gauge|yo|yarn over|stockinette|ssk|work even)\b", re.IGNORECASE)


def terms_of(text: str) -> Terms:
    """Return the terms that a text is written in; US where nothing decides."""
    british = len(_UK.findall(text))
    return "uk" if british and british > len(_US.findall(text)) else "us"


def telling_word(text: str, terms: Terms) -> tuple[str, int] | None:
    """Return the first word that only these terms use, and its index; None where there is none."""
    found = (_UK if terms == "uk" else _US).search(text)
    return (found.group(), found.start()) if found else None
