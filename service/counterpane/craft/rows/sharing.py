"""What was worked out of the same things before.

A text in several sizes is read once a size, and a text with a correction in it once more: most of it is alike.
"""

from __future__ import annotations

from collections.abc import Callable
from sys import intern
from typing import Concatenate, ParamSpec, TypeVar

Asked = ParamSpec("Asked")
Answer = TypeVar("Answer")


class Shared:
    """Answers of pure functions, kept by what they were asked of: by its identity, or words by their letters.

    A line that several texts have is one and the same.
    """

    def __init__(self) -> None:
        # The things stand beside the answer so that they live on and no other takes their identity.
        self._kept: dict[tuple[object, ...], tuple[object, tuple[object, ...]]] = {}

    def of(self, work: Callable[Asked, Answer], *things: Asked.args, **named: Asked.kwargs) -> Answer:
        """Return what a function answers of things, asked once."""
        key = (work, *map(id, things))
        found = self._kept.get(key)
        if found is None:
            # Without itself, which would live on in a circle when nobody asks any more.
            others = tuple([thing for thing in things if thing is not self])
            found = self._kept[key] = (work(*things, **named), others)
        answer: Answer = found[0]  # type: ignore[assignment]
        return answer

    def of_words(
        self, work: Callable[Concatenate[str, Asked], Answer], words: str, *things: Asked.args, **named: Asked.kwargs
    ) -> Answer:
        """Return what a function answers of words and things, asked once."""
        return self.of(work, intern(words), *things, **named)
