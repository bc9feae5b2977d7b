"""A pattern in several sizes as JSON values: each row once, and what may differ as a list with one value a size."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from counterpane.craft.pattern import Edge, Pattern, Repeat, WrittenRow, WrittenSection
from counterpane.craft.pattern.brackets import in_brackets

Answer = dict[str, Any]


def graded_pattern_json(patterns: Sequence[Pattern]) -> Answer:
    """Return patterns whose rows are alike but for their numbers as one; a text that differs in more is null."""
    return {
        "title": in_brackets([pattern.title for pattern in patterns]),
        "terms": patterns[0].terms,
        "cast_on": _edge([pattern.cast_on for pattern in patterns]),
        "sections": [_section(each) for each in zip(*(pattern.sections for pattern in patterns), strict=True)],
        "bind_off": _edge([pattern.bind_off for pattern in patterns]),
    }


def _edge(sizes: Sequence[Edge]) -> Answer:
    line = in_brackets([size.line for size in sizes])
    return {"name": sizes[0].name, "line": line, "stitches": [size.stitches for size in sizes]}


def _section(sizes: Sequence[WrittenSection]) -> Answer:
    whole = [size.last_row - size.first_row + 1 for size in sizes]
    several = {name: [getattr(size, name) for size in sizes] for name in ("first_row", "last_row", "before", "after")}
    return {
        "name": sizes[0].name,
        "texture": sizes[0].texture,
        "worked": whole,
        **several,
        "rows": [_row(each) for each in zip(*(size.rows for size in sizes), strict=True)],
        "repeats": [[_repeat(each) for each in size.repeats] for size in sizes],
    }


def _row(sizes: Sequence[WrittenRow]) -> Answer:
    return {
        "label": sizes[0].label,
        "text": in_brackets([size.text for size in sizes]),
        "side": [size.side for size in sizes],
        "after": [size.after for size in sizes],
    }


def _repeat(repeat: Repeat) -> Answer:
    return {name: getattr(repeat, name) for name in ("first", "last", "times")}
