"""A sheet as a person reads it: what waits, by its place in the text, then what is kept and what is settled."""

from __future__ import annotations

from collections.abc import Sequence

from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from counterpane.cli.showing.findings import STYLES
from counterpane.cli.showing.words import listed, number_of, visible
from counterpane.craft.editing import STANDING, STATES, Query, Sheet
from counterpane.library.texts.sheets import acceptance
from counterpane.press.sheets import place_of, where_of

MOST_SHOWN = 60  # Queries drawn for a person; the sheet holds all of them; house.


def draw(console: Console, name: str, sheet: Sheet, changed: bool) -> None:
    """Draw the whole sheet; `changed` says that the text was changed since the check before."""
    since = "; the text has changed since it was last checked" if changed else ""
    console.print(f"{visible(name)}: {_tally(sheet.queries)}{since}")
    waiting = sorted((query for query in sheet.queries if query.state in STANDING), key=_order)
    for query in waiting[:MOST_SHOWN]:
        console.print()
        _draw_query(console, query)
    if len(waiting) > MOST_SHOWN:
        console.print(f"\n… and {len(waiting) - MOST_SHOWN:,} more in the sheet.")
    _draw_kept(console, [query for query in sheet.queries if query.state == "kept"])
    _draw_settled(console, [query for query in sheet.queries if query.state == "settled"])


def _tally(queries: Sequence[Query]) -> str:
    """Return how many queries there are in each state: "3 queries: 2 open, 1 settled"."""
    found = [query.state for query in queries]
    parts = [f"{found.count(state)} {state}" for state in STATES if state in found]
    whole = "1 query" if len(queries) == 1 else f"{len(queries):,} queries" if queries else "no queries"
    return f"{whole}: {', '.join(parts)}" if parts else whole


def _order(query: Query) -> tuple[int, int, int]:
    return (query.line or 0, query.column or 0, query.number)


def _draw_query(console: Console, query: Query) -> None:
    """Draw number and place, the state, the line as printed, the question, and what was written."""
    section = f"{query.section}: " if query.section else ""
    place = f"{query.number}. {visible(section + place_of(query))}: "
    state = (query.state, STYLES.get(query.severity or "", "bold"))
    kind = f" {query.severity}" if query.severity and query.state == "open" else ""
    console.print(Text.assemble(place, state, f"{kind} ({query.rule})" if query.rule else ""))
    if query.printed:
        console.print(Padding(Text(visible(query.printed), "italic"), (0, 0, 0, 4)))
    written = {"Answer": query.answer, "Decision": query.decision or "", "Note": query.note}
    said = [query.question, *(f"{name}: {words}" for name, words in written.items() if words.strip())]
    for sentence in said:
        console.print(Padding(visible(" ".join(sentence.split())), (0, 0, 0, 4)))


def _draw_kept(console: Console, kept: Sequence[Query]) -> None:
    """Draw the lines that accept what is kept."""
    if not kept:
        return
    console.print(f"\nKept as meant: {listed([str(query.number) for query in kept])}.")
    for query in kept:
        if line := acceptance(query):
            console.print(f"    To say so in the text, put this line above {where_of(query)}:")
            console.print(Padding(visible(line), (0, 0, 0, 8)))


def _draw_settled(console: Console, settled: Sequence[Query]) -> None:
    if settled:
        stood = [f"{query.number} ({place_of(query).partition(', at ')[0].lower()})" for query in settled]
        console.print(f"\nSettled: {listed(stood[:MOST_SHOWN])}.")
    if len(settled) > MOST_SHOWN:
        console.print(f"… and {number_of(len(settled) - MOST_SHOWN, 'other')}.")
