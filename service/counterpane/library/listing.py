"""Pages of what is kept."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from counterpane.library.ports import Key, Page, Shelf, Wanted
from counterpane.library.services import Services

_WORD = re.compile(r"[^\W_]+")


def page(services: Services, shelf: Shelf, filters: Mapping[str, Any], after: Key | None, limit: int) -> Page:
    """Return a page of cards; `filters` are those of the query, `q` as a text whose words must all occur."""
    rest = {name: value for name, value in filters.items() if name != "q"}
    text = filters.get("q", "").strip()
    words = words_of(text)
    if text and not words:
        return Page((), None)
    return services.store.page(Wanted(shelf, words=words, after=after, limit=limit, **rest))


def words_of(text: str) -> tuple[str, ...]:
    """Return the words of a search, each once: runs of letters and digits."""
    return tuple(dict.fromkeys(_WORD.findall(text)))
