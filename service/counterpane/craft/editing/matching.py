"""Which query of a sheet a finding of the text is, whatever moved, was numbered anew or was edited beside it.

Findings are told apart by what a person would tell them apart by: the rule, the row, the words, and the rest of the
row. The surest likeness is tried first, over all of them, then the next; what is alike in nothing is another query.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TypeAlias

from counterpane.craft.editing.sheet import Query
from counterpane.craft.rows.labels import label_at

_CHANGING = re.compile(r"\d+|“[^”]*”|\b[RW]S\b")
Likeness: TypeAlias = Callable[[Query], tuple[object, ...]]


def paired(earlier: Sequence[Query], found: Sequence[Query]) -> Mapping[int, int]:
    """Return for each finding that is an earlier query the index of that query, by index of the finding.

    A finding is at most one query. Those alike in everything are paired in their order.
    """
    old, new = dict(enumerate(earlier)), dict(enumerate(found))
    pairs: dict[int, int] = {}
    for likeness, sure in _LIKENESSES:
        for olds, news in _groups(likeness, old, new):
            if sure or len(olds) == len(news):
                pairs.update(zip(news, olds, strict=False))
        gone = set(pairs.values())
        old = {index: query for index, query in old.items() if index not in gone}
        new = {index: query for index, query in new.items() if index not in pairs}
    return pairs


def _groups(
    likeness: Likeness, old: Mapping[int, Query], new: Mapping[int, Query]
) -> Iterable[tuple[list[int], list[int]]]:
    """Give the indices of earlier and found queries that are alike."""
    groups: dict[tuple[object, ...], tuple[list[int], list[int]]] = defaultdict(lambda: ([], []))
    for side, queries in enumerate((old, new)):
        for index, query in queries.items():
            groups[likeness(query)][side].append(index)
    return ((olds, news) for olds, news in groups.values() if olds and news)


def _body(query: Query) -> str:
    """Return a printed line without its label, so that a row numbered anew is the same row."""
    line = query.printed.lower()
    found = label_at(line, 0, len(line))
    return line[found[1] :].strip() if found else line


def _said(query: Query) -> str:
    """Return what a rule says without its numbers and what it quotes, which change with the text."""
    return _CHANGING.sub("", query.finding)


def _elsewhere(query: Query) -> str:
    """Return what a rule says where no row tells its findings apart: a gauge that is missing is no missing size."""
    return "" if query.row else _said(query)


def _all(query: Query) -> tuple[object, ...]:
    return (query.rule, query.section, query.row, query.words, _body(query), _said(query))


def _section_named_anew(query: Query) -> tuple[object, ...]:
    return (query.rule, query.row, query.words, _body(query), _said(query))


def _row_moved(query: Query) -> tuple[object, ...]:
    return (query.rule, query.words, _body(query), _said(query))


def _row_edited(query: Query) -> tuple[object, ...]:
    return (query.rule, query.section, query.row, query.words, _elsewhere(query))


def _words_edited(query: Query) -> tuple[object, ...]:
    return (query.rule, query.section, query.row, _elsewhere(query))


def _section_and_row_edited(query: Query) -> tuple[object, ...]:
    return (query.rule, query.row, query.words, _elsewhere(query))


def _words_alone(query: Query) -> tuple[object, ...]:
    return (query.rule, query.words, _elsewhere(query))


_LIKENESSES: tuple[tuple[Likeness, bool], ...] = (
    (_all, True),
    (_section_named_anew, True),
    (_row_moved, False),
    (_row_edited, True),
    (_words_edited, True),
    (_section_and_row_edited, False),
    (_words_alone, False),
)
"""The likenesses, the surest first; where one is not sure, as many must be found as there were."""
