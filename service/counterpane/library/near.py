"""What was probably meant by a name that is not known."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

MOST_LETTERS = 100
"""Longer names are cut before they are compared, which takes time with the square of the length."""


def nearest(name: str, known: Iterable[str]) -> str | None:
    """Return a hint that names what is nearest; None where nothing is near."""
    found = get_close_matches(name[:MOST_LETTERS], list(known), 1)
    return f"Probably meant: {found[0]}." if found else None
