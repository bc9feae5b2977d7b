"""The words of a page itself, beside those of the pattern on it: what a browser or a printer puts around the blocks."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PageWords:
    """The words around the blocks of a page.

    `code` is the language of the page, "" for English in the terms of the pattern; `again` and `stop` begin a repeat
    line and the line that says that safety says stop, `times` stands beside the counter of a repeat line. The rest says
    in the head of a printed page which rows stand on it.
    """

    code: str = ""
    again: str = "Rep"
    stop: str = "Safety says stop"
    times: str = "Times worked so far"
    row: str = "row"
    rows: str = "rows"
    of_the_blanket: str = "of the blanket"
    before: str = "before row 1"
    after: str = "after row"
    done: str = "after the last row"


ENGLISH = PageWords()
