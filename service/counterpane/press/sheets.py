"""A sheet as Markdown, to send to the designer: the queries that wait, with room for answers."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.editing import STANDING, Query, Sheet
from counterpane.library.texts.sheets import acceptance
from counterpane.press.markdown import escaped

_ASKING = "Please write under each question. “It is meant so” is an answer as well."


def as_markdown(sheet: Sheet, title: str) -> str:
    """Return the queries that wait for somebody as Markdown, with room for answers, in the order of the text."""
    waiting = sorted((query for query in sheet.queries if query.state in STANDING), key=_order)
    blocks = [f"# {escaped(title)}: {'questions' if waiting else 'no questions'} to the designer"]
    blocks += [_ASKING] if waiting else []
    section: str | None = None
    for query in waiting:
        if query.section != section:
            section = query.section
            blocks.append(f"## {escaped(section or title)}")
        blocks += _asked(query)
    blocks += _meant_so(sheet)
    return "\n\n".join(blocks) + "\n"


def _order(query: Query) -> tuple[int, int, int]:
    return (query.line or 0, query.column or 0, query.number)


def _asked(query: Query) -> Iterator[str]:
    yield f"### {query.number}. {escaped(place_of(query))}"
    if query.printed:
        yield f"> {escaped(query.printed)}"
    yield escaped(" ".join(query.question.split()))
    if query.state in ("back", "still there"):
        yield "(The text was changed since, and this stands as before.)" if query.state != "back" else "(This is back.)"
    yield f"Answer: {escaped(' '.join(query.answer.split()))}".rstrip()


def place_of(query: Query) -> str:
    """Say where a query stands: "Row 3, line 5, at “p3”"."""
    row = f"Row{'s' if query.row and not query.row.isdigit() and query.row[0].isdigit() else ''} {query.row}"
    named = row if query.row and query.row[0].isdigit() else f"The {query.row} row" if query.row else ""
    line = f"line {query.line}" if query.line else ""
    place = ", ".join(part for part in (named, line, f"at “{query.words}”" if query.words else "") if part)
    return (place[:1].upper() + place[1:]) or "The whole pattern"


def where_of(query: Query) -> str:
    """Say which row or line a query is about: "row 3 (line 5)", "line 1"."""
    if query.row is None:
        return f"line {query.line}" if query.line else "the first row"
    return f"row {query.row} (line {query.line})" if query.row[0].isdigit() else f"the {query.row} row"


def _meant_so(sheet: Sheet) -> list[str]:
    """Return the lines that accept what is kept."""
    lines = [f"- Above {where_of(query)}: `{line}`" for query in sheet.queries if (line := acceptance(query))]
    return ["## Meant so", "These lines, in the text, say so to whoever checks it.", "\n".join(lines)] if lines else []
