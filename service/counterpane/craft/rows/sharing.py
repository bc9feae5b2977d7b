"""What was worked out of the same things before.

A text in several sizes is read once a size, and a text with a correction in it once more: most of it is alike.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import ParamSpec, TypeVar

Asked = ParamSpec("Asked")
Answer = TypeVar("Answer")


class Shared:
    """Answers of pure functions, kept by what they were asked of: words by their letters, all else by identity.

    A line that several texts have is one and the same.
    """

    def __init__(self) -> None:
        # The things stand beside the answer so that they live on and no other takes their identity.
        self._kept: dict[tuple[object, ...], tuple[object, tuple[object, ...]]] = {}

    def of(self, work: Callable[Asked, Answer], *things: Asked.args, **named: Asked.kwargs) -> Answer:
        """Return what a function answers, asked once."""
        key = (work, *[thing if isinstance(thing, str) else id(thing) for thing in things])
        found = self._kept.get(key)
        if found is None:
            # Without itself, which would live on in a circle when nobody asks any more.
            others = tuple([thing for thing in things if thing is not self])
            found = self._kept[key] = (work(*things, **named), others)
        answer: Answer = found[0]  # type: ignore[assignment]
        return answer
