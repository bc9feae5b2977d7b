"""A pattern of several sizes in one of them: the text with that size's numbers alone."""

from __future__ import annotations

from typing import Any

from counterpane.craft.rows.sizes import Sizes, extract_of, sizes_in
from counterpane.craft.rows.words import normal_lines
from counterpane.library.errors import LibraryError

LONGEST_SAID = 40  # Characters of what was asked for that are repeated; house.


class NoSuchSize(LibraryError):
    """The text is not written for the size that was asked for."""

    hint = "Give its number from 1, its cast-on, or its name as the text has it."
    pointer = "/size"


def extract_text(text: str, wanted: str | int) -> dict[str, Any]:
    """Return the text of one size, that size's number from 1, and the names of all sizes, empty where it names none.

    `left` are the lists with more or fewer entries than there are sizes, which stay as they are printed.
    Raise NoSuchSize where the text has no such size; a text in one size has size 1 alone.
    """
    sizes = sizes_in(normal_lines(text))
    if sizes is None:
        if str(wanted).strip() != "1":
            raise NoSuchSize("This text is written in one size.", "Ask for size 1, which is the text as it stands.")
        return {"text": text, "size": 1, "names": [], "left": []}
    size = size_of(sizes, str(wanted).strip())
    names = [sizes.given(span) for span in sizes.named.entries] if sizes.named else []
    left = [{"line": each.place.line, "column": each.place.column} for each in sizes.misfits]
    return {"text": extract_of(text, sizes, size).text, "size": size + 1, "names": names, "left": left}


def size_of(sizes: Sizes, wanted: str) -> int:
    """Return which size is meant, from 0: by its number, else by its cast-on, else by its name."""
    counts = next((each.entries for each in sizes.lists if each.cast_on), ())
    number = int(wanted) if wanted.isascii() and wanted.isdigit() and len(wanted) < len(str(10**9)) else 0
    if 1 <= number <= sizes.number:
        return number - 1
    for known in (counts, sizes.names):
        if known.count(wanted.lower()) == 1:
            return known.index(wanted.lower())
    told = f" ({', '.join(sizes.names or counts)})" if sizes.names or counts else ""
    raise NoSuchSize(f"The text is written in {sizes.number} sizes{told}, none of them “{wanted[:LONGEST_SAID]}”.")
