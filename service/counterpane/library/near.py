"""What was probably meant by a name that is not known."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

MOST_LETTERS = 100
"""Longer names are cut before they are compared, which takes time with the square of the length."""


MOST_NAMED = 5
"""Names of a hint where none is near; house."""


def nearest(name: str, known: Iterable[str]) -> str | None:
    """Return a hint that names what is nearest; None where nothing is near."""
    found = get_close_matches(name[:MOST_LETTERS], list(known), 1)
    return f"Probably meant: {found[0]}." if found else None


def nearest_few(name: str, known: Iterable[str]) -> str:
    """Return a hint that names the few nearest, and says whether one of them is near."""
    every = list(known)
    found = get_close_matches(name[:MOST_LETTERS], every, MOST_NAMED, cutoff=0)
    return nearest(name, every) or f"The nearest names that are kept: {', '.join(found) or 'none'}."
