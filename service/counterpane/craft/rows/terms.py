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
    return "uk" if len(_UK.findall(text)) > len(_US.findall(text)) else "us"
