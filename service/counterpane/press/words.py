"""The words of a page itself, beside those of the pattern on it: what a browser or a printer puts around the blocks."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PageWords:
    """The words around the blocks of a page.

    `code` is the language of the page, "" for English in the terms of the pattern; `again` and `stop` begin a repeat
    line and the line that says that safety says stop, `times` stands beside the counter of a repeat line, and `english`
    begins what is not translated, which the next bracket of its own ends. The rest says in the head of a printed page
    which rows stand on it.
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
    english: str = ""


ENGLISH = PageWords()


def in_languages(text: str, words: PageWords) -> Iterator[tuple[str, bool]]:
    """Give the pieces of a text, and whether each is English on a page of another language."""
    while words.english and words.english in text:
        before, mark, text = text.partition(words.english)
        end = _end(text)
        yield before + mark, False
        yield text[:end], True
        text = text[end:]
    if text:
        yield text, False


def _end(text: str) -> int:
    """Return where the bracket ends in which a text begins; it may hold brackets of its own."""
    depth = 1
    for place, sign in enumerate(text):
        depth += (sign == "[") - (sign == "]")
        if not depth:
            return place
    return len(text)
