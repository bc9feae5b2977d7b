"""The counts of facets, as SQL: one statement for the columns of items, their openings and their traits."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from counterpane.library.parts.wanted import Facets, Wanted
from counterpane.storage.sqlite.filters import filter_values, filters

Ask = Callable[[str, Mapping[str, Any]], list[tuple[Any, ...]]]

COLUMNS = ("kind", "reversible", "status")

# An item has a word of a name once at most, and several words of one name: those that are known are counted apart,
# under no word.
_COUNTED = """
WITH found AS MATERIALIZED (
    SELECT i.id, i.kind, i.reversible, i.status FROM item i
    WHERE i.shelf = :shelf {filters} ORDER BY i.id LIMIT :most)
SELECT '', NULL, COUNT(*) FROM found
UNION ALL SELECT 'kind', kind, COUNT(*) FROM found GROUP BY kind
UNION ALL SELECT 'reversible', reversible, COUNT(*) FROM found WHERE reversible IS NOT NULL GROUP BY reversible
UNION ALL SELECT 'status', status, COUNT(*) FROM found GROUP BY status
UNION ALL SELECT 'opening', CAST(o.um / 1000 AS TEXT), COUNT(*)
    FROM found JOIN opening o ON o.item = found.id GROUP BY 2
UNION ALL SELECT t.name, t.word, COUNT(*) FROM found JOIN trait t ON t.item = found.id GROUP BY t.name, t.word
UNION ALL SELECT t.name, NULL, COUNT(DISTINCT t.item) FROM found JOIN trait t ON t.item = found.id GROUP BY t.name"""


def counted(ask: Ask, wanted: Wanted, most: int) -> Facets:
    """Count what is wanted, up to so many entries, the oldest first."""
    anywhere = replace(wanted, after=None)
    rows = ask(_COUNTED.format(filters=filters(anywhere)), filter_values(anywhere) | {"most": most})
    words: dict[str, dict[str, int]] = {}
    known: dict[str, int] = {}
    for name, word, count in rows:
        if word is None:
            known[name] = count
        else:
            words.setdefault(name, {})[word] = count
    total = known.pop("")
    for name in (*COLUMNS, "opening"):
        if name in words:
            known[name] = sum(words[name].values())
    return Facets(total, total < most, words, known)
