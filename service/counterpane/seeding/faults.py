"""What can be wrong with a seed file, said so that its author can correct it."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


class SeedFault(Exception):
    """A seed file cannot be used: `file` and `key` say where, `step` what to do next."""

    def __init__(self, file: str, key: str, message: str, step: str) -> None:
        place = f"{file}: {key}" if key else file
        super().__init__(f"{place}: {message}. {step}")
        self.file = file
        self.key = key
        self.message = message
        self.step = step


def nearest(word: str, known: Iterable[str]) -> str:
    """Say which of the known words is nearest to a word, or list them all."""
    names = sorted(known)
    close = get_close_matches(word, names, 1, 0.6)
    return f"Probably meant: {close[0]}." if close else f"Known here: {', '.join(names)}."
