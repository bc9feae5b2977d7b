"""What an operation of the API is: one value that routes, checks and describes it.

The decorator `operation` makes such a value of a view. Nothing is registered by importing: `counterpane.api.catalogue`
lists the operations, the application routes them and the OpenAPI document describes them.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Literal

from marshmallow import Schema

from counterpane.library.errors import NotFound, Unknown
from counterpane.library.ports import Holder, Once, Role
from counterpane.library.services import Services

JSON = "application/json"
USUAL_BYTES = 2**20
"""The largest body, but for a text to be checked, which JSON may escape to more."""
NUMBER = "^[1-9][0-9]{0,8}$"
"""The number of a thing in an address."""
MOST_DIGITS = 9
Method = Literal["GET", "POST", "PUT"]
Shape = type[Schema] | Mapping[str, Any]


@dataclass(slots=True)
class Call:
    """A request as a view sees it: everything read and checked.

    `expected` is the hash that If-Match named, None for any; `media` the media type that was agreed on;
    `once` what makes it one write however often it is sent, None where no key came with it; `makes` says that
    something is made that was not there; `count` that the whole of a list is to be counted.
    """

    services: Services
    path: Mapping[str, str]
    media: str
    holder: Holder | None = None
    expected: str | None = None
    query: Mapping[str, Any] = field(default_factory=dict)
    body: Any = None
    once: Once | None = None
    makes: bool = False
    count: bool = False

    @property
    def by(self) -> str:
        """The name of who writes."""
        return self.holder.name if self.holder else ""

    @property
    def writer(self) -> Holder:
        """Who writes; raise Unknown where no token came."""
        if self.holder is None:
            raise Unknown("This needs a token.")
        return self.holder

    def number(self, of: str, hint: str) -> int:
        """Return the number in the address; raise NotFound, with the hint, for what is no number of such a thing."""
        text = self.path["number"]
        if not re.fullmatch(NUMBER, text):
            raise NotFound(f"{text[:MOST_DIGITS]!r} is no number of {of}.", hint)
        return int(text)


@dataclass(frozen=True, slots=True)
class Answer:
    """What a view answers: bytes that are sent as they are. `sha256` gives the tag; `headers` are added."""

    body: bytes
    status: int = 200
    media: str = JSON
    sha256: str | None = None
    headers: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Example:
    """A request that works on a library with the starters, for the API page and for a test that sends it."""

    path: Mapping[str, str] = field(default_factory=dict)
    query: Mapping[str, Any] = field(default_factory=dict)
    body: Mapping[str, Any] | None = None


View = Callable[[Call], Answer]


@dataclass(frozen=True, slots=True)
class Operation:
    """One method of one path.

    `or_body` is another form of the body; a body with all members that one of them needs is of that form.
    `role` is the least role, None where no token is needed; a "reader" needs none where reading is open. `current`
    returns the hash of what a change would change, which makes If-Match required; where it `creates`, If-None-Match: *
    makes what is not there instead. A list `counts` the whole where `Prefer: count=exact` asks for it. `signed` says
    that it needs a token even where reading is open. `once` says that a key makes it one write however often it is
    sent. `most_bytes` bounds the body; `caching` is the header Cache-Control where it is not the usual one.
    """

    name: str
    method: Method
    path: str
    tag: str
    summary: str
    description: str
    view: View
    answer: Shape | None
    status: int = 200
    media: tuple[str, ...] = (JSON,)
    body: type[Schema] | None = None
    or_body: type[Schema] | None = None
    query: type[Schema] | None = None
    role: Role | None = None
    current: Callable[[Call], str] | None = None
    creates: bool = False
    counts: bool = False
    tagged: bool = False
    once: bool = False
    signed: bool = False
    problems: tuple[str, ...] = ()
    examples: tuple[Example, ...] = ()
    caching: str = ""
    most_bytes: int = USUAL_BYTES


def operation(
    method: Method, path: str, *, tag: str, answer: Shape | None, **details: Any
) -> Callable[[View], Operation]:
    """Make an operation of a view; its docstring's first line is the summary, the rest the description."""

    def wrap(view: View) -> Operation:
        summary, _, rest = (view.__doc__ or "").strip().partition("\n")
        words = " ".join(rest.split())
        return Operation(view.__name__, method, path, tag, summary, words, view, answer, **details)

    return wrap
