"""What the use cases work with, put together once by `wiring` and passed in."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

from counterpane.craft.stitches import Vocabulary
from counterpane.craft.styles import Style
from counterpane.library.plans.known import Known
from counterpane.library.ports import Store
from counterpane.library.safety.profile_finding import found_in

Press = Callable[[Any, Any], str]
Page = Callable[[Any, Any, Any], bytes]
Data = Callable[[Any, Any], Mapping[str, Any]]
Pressed = Callable[[str, str, Any, Any, Any], bytes]
Told = Callable[[str, Any, Any], Mapping[str, Any]]
Lessons = Callable[[Any, Any], bytes]


def utc_now() -> str:
    """Return the time in UTC to the second, as RFC 3339 has it."""
    return datetime.now(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")


@dataclass(frozen=True, slots=True)
class Services:
    """A store with the knowledge that comes with the program.

    `presses` turn a written pattern with its pictures into a text, by the name of the form: "text", "markdown"; `pages`
    turn it, for a size of paper, into the bytes of a file: "html", "pdf"; `sheet_press` turns a designer's
    sheet into any of these four and `sheet_data` into JSON values; `grade_press` turns those of several sizes,
    with their names, into one; `as_data` turns a pattern with its pictures into JSON values;
    `language_press` turns it, in a language and a form, into the bytes of a file, `language_data` into JSON values with
    their text; `languages` are those there are besides English.
    `lesson_presses` turn a lesson with its pictures into the bytes of a form. `sources` are the
    titles of sources by slug, and `styles` the house styles by theirs.
    `address` is where readers reach this library, "" where nobody said.
    `open_reading` says that reading needs no token, which holds where only this machine can ask.
    """

    store: Store
    vocabulary: Vocabulary
    facts: Mapping[str, Mapping[str, Any]]
    presses: Mapping[str, Press]
    pages: Mapping[str, Page]
    sheet_press: Callable[[Any, Any, Any], bytes]
    sheet_data: Callable[[Any], Mapping[str, Any]]
    grade_press: Callable[[Any, Any], str]
    as_data: Data
    language_press: Pressed
    language_data: Told
    languages: tuple[str, ...]
    lesson_presses: Mapping[str, Lessons]
    sources: Mapping[str, str]
    styles: Mapping[str, Style]
    now: Callable[[], str] = utc_now
    open_reading: bool = True
    address: str = ""

    @property
    def known(self) -> Known:
        """What planning knows beside components."""
        return Known(self.vocabulary, self.facts, found_in(self.store), self.sources)
