"""Pages of what is kept."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from counterpane.library.parts import searching
from counterpane.library.ports import Key, Page, Shelf, Wanted
from counterpane.library.services import Services

_WORD = re.compile(r"[^\W_]+")


def page(services: Services, shelf: Shelf, filters: Mapping[str, Any], after: Key | None, limit: int) -> Page:
    """Return a page of cards; `filters` are those of the query, `q` as a text whose words must all occur.

    Components are searched as `searching` has it; raise what that raises.
    """
    asked = _worded(filters)
    if asked is None:
        return Page((), None)
    if shelf == "component":
        search = searching.search_of(services, asked)
        return Page((), None) if search is None else searching.page(services, search, after, limit)
    return services.store.page(Wanted(shelf, after=after, limit=limit, **asked))


def count(services: Services, shelf: Shelf, filters: Mapping[str, Any]) -> int:
    """Return how many the whole list holds, over all pages; raise what a page of it raises."""
    asked = _worded(filters)
    if asked is None:
        return 0
    if shelf == "component":
        search = searching.search_of(services, asked)
        return 0 if search is None else services.store.count(search.wanted)
    return services.store.count(Wanted(shelf, **asked))


def facets(services: Services, filters: Mapping[str, Any]) -> dict[str, Any]:
    """Return what a search of components finds, counted; raise what a page of it raises."""
    asked = _worded(filters)
    return searching.facets(services, None if asked is None else searching.search_of(services, asked))


def _worded(filters: Mapping[str, Any]) -> dict[str, Any] | None:
    """Return the filters with the words of the search; None for a text without words, which finds nothing."""
    rest = {name: value for name, value in filters.items() if name != "q"}
    text = filters.get("q", "").strip()
    words = words_of(text)
    return None if text and not words else {**rest, "words": words}


def words_of(text: str) -> tuple[str, ...]:
    """Return the words of a search, each once: runs of letters and digits."""
    return tuple(dict.fromkeys(_WORD.findall(text)))
