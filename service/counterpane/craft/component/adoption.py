"""From rows that were read to a component: what follows from them is filled in, and nothing else.

Names, licences and people do not follow from rows: they are left empty, for somebody to say.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from counterpane.craft.component.derived import derive, say_counts, sides_of
from counterpane.craft.component.proof import Problem, prove
from counterpane.craft.component.strands import most_opened, most_slipped
from counterpane.craft.component.values import (
    Component,
    Example,
    Kind,
    Measure,
    Note,
    Parameter,
    Provenance,
    SafetyNotes,
    SlippedEdge,
    Version,
)
from counterpane.craft.counts import Chain, Progression, work
from counterpane.craft.fabric import from_rs, reversible
from counterpane.craft.openings import SLIPPED
from counterpane.craft.rows.instructions import AgainStep, Instructions, StartStep, read_text
from counterpane.craft.rows.say import say_line
from counterpane.craft.rows.tree import BindOff, CastOn, Hold, Node, Row, Work
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.trace import trace
from counterpane.craft.trace.meaning import everything

WIDE = 140
"""Stitches of the wider worked example, or the next number above: about a baby blanket in double knitting. House."""

TWIST = 2
"""Stitches up to which a crossing is a twist, which pulls no opening beside it. House."""

MOST_SHOWN = 2_000
"""Stitches and rows beyond which a worked example is not shown, since it is worked loop by loop. House."""


def obstacles(text: Instructions) -> Iterator[Problem]:
    """Give what keeps a text from being one component: another piece or section, or a repeat of only some rows."""
    rows = text.rows
    if len(rows) > MOST_SHOWN:
        said = f"These are {len(rows)} rows, and a component has at most {MOST_SHOWN}."
        yield Problem("/text", said, "Adopt a part of them.", rows[MOST_SHOWN].place)
    for step in text.steps:
        if isinstance(step, StartStep):
            said = "Another piece begins here, and a component is one."
            yield Problem("/text", said, "Adopt the pieces one by one.", step.cast_on.place)
        elif isinstance(step, AgainStep) and len(set(step.rows)) != len(rows):
            said = f"Only {len(set(step.rows))} of {len(rows)} rows are worked again, and a component is what repeats."
            first = next(row for index, row in enumerate(rows) if index not in step.rows)
            yield Problem("/text", said, f"Leave out row {first.label} and others not repeated.", step.again.place)
    later = next((row for row in rows if row.section != rows[0].section), None)
    if later is not None:
        yield Problem(
            "/text", "Another section begins here, and a component is one.", "Adopt them singly.", later.place
        )


def adopted(
    kind: Kind, rows: Sequence[Row], chain: Chain, vocabulary: Vocabulary, shown: int | None = None
) -> Component:
    """Return a component of rows that work over the counts of their chain, with all that follows from them.

    Slug, name and provenance are empty. `shown` is a count for the wider worked example, where the rows take it.
    """
    version = Version(_counts_named(chain.starts), _words(rows, chain.starts, vocabulary))
    bare = Component("", kind, "", "", Provenance("", "", ""), SafetyNotes(), versions=(version,))
    return replace(
        bare,
        summary=_summary(bare, vocabulary),
        safety=_safety(bare, vocabulary),
        parameters=_parameters(kind, len(rows), chain.starts),
        reversible=reversible([row.parts for row in rows], vocabulary, sides_of(rows)),
        slipped_edge=_slipped_edge(rows) if kind == "selvedge" else None,
        examples=tuple(_examples(rows, chain.starts, vocabulary, shown)),
    )


def disagreements(component: Component, rows: Sequence[Row], vocabulary: Vocabulary) -> Iterator[Problem]:
    """Give what keeps an adopted component out: words that read otherwise, no proved example, and what `prove` says.

    A problem of its rows stands at the line of the text that they were read from.
    """
    read = read_text(component.versions[0].rows, vocabulary).rows
    differ = next((row for row, again in zip(rows, read, strict=False) if row.parts != again.parts), None)
    if differ is not None or len(rows) != len(read):
        place = differ.place if differ else None
        yield Problem("/text", "The row cannot be said again in plain words.", "Write it in other words.", place)
        return
    for problem in prove(component, vocabulary):
        line = problem.place.line if problem.place else len(rows)
        yield replace(problem, pointer="/text", place=rows[min(line, len(rows)) - 1].place)
    if not component.examples:
        yield Problem("/text", "No worked example of these rows can be proved.", "Write fewer rows or stitches.")


def faces(rows: Sequence[Row], count: int, vocabulary: Vocabulary) -> dict[str, int]:
    """Return how many stitches of each look the right side shows after one pass over a count that works."""
    traced = trace([row.parts for row in rows], count, vocabulary, sides_of(rows))
    return dict(Counter(look for course in from_rs(traced, vocabulary) for look in course))


def _words(rows: Sequence[Row], starts: Sequence[Progression], vocabulary: Vocabulary) -> str:
    """Say the rows again, numbered from 1, each with its side; a printed count only where one count works."""
    fixed = all(not start.of for start in starts)
    told = (
        replace(row, side=side, stated=row.stated if fixed else None)
        for row, side in zip(rows, sides_of(rows), strict=True)
    )
    lines = (say_line(row, vocabulary, label=str(number)) for number, row in enumerate(told, 1))
    return "".join(f"{line}\n" for line in lines)


def _counts_named(starts: Sequence[Progression]) -> str:
    """Name the counts as a version of a component does: "odd counts", "a multiple of 6 plus 2", "9 stitches"."""
    if len(starts) != 1:
        return " or ".join(map(_counts_named_alone, starts))
    return _counts_named_alone(starts[0])


def _counts_named_alone(start: Progression) -> str:
    if start.of == 0:
        return f"{start.least} stitches"
    if start.of <= 2:
        return "any count" if start.of == 1 else f"{'odd' if start.plus else 'even'} counts"
    return f"a multiple of {start.of}" + (f" plus {start.plus}" if start.plus else "")


def _summary(component: Component, vocabulary: Vocabulary) -> str:
    """Say what the rows are in one sentence of derived facts."""
    (version,) = derive(component, vocabulary).versions
    many = "one row" if version.row_repeat == 1 else f"{version.row_repeat} rows"
    opened = ", with openings" if most_opened(version) else ""
    return f"{many[0].upper()}{many[1:]} over {' or '.join(map(say_counts, version.starts))}{opened}."


def _safety(component: Component, vocabulary: Vocabulary) -> SafetyNotes:
    """Return what the rows show of openings and of yarn past slipped stitches; the rest is not known from rows."""
    (version,) = derive(component, vocabulary).versions
    opened, slipped = most_opened(version), most_slipped(version)
    other = any(_may_open(node, vocabulary) for row in version.rows for node in everything(row.parts))
    none: Note = "not known" if other else "none"
    return SafetyNotes(
        openings=Measure(str(opened), "yarn-over") if opened else none,
        floats=Measure(str(slipped), "stitches") if slipped else "none",
    )


def _may_open(node: Node, vocabulary: Vocabulary) -> bool:
    """Say whether a node may leave an opening that no yarn-over shows: a crossing, or stitches bound off or cast on."""
    if isinstance(node, Work):
        stitch = vocabulary[node.stitch]
        return stitch.uses == stitch.makes > TWIST
    return isinstance(node, BindOff | CastOn | Hold)


def _parameters(kind: Kind, rows: int, starts: Sequence[Progression]) -> tuple[Parameter, ...]:
    """Return what a border takes: whole row repeats, and the counts over which its rows work."""
    if kind != "border" or len(starts) != 1:
        return ()
    start = starts[0]
    stitches = Parameter("stitches", start.least, start.least, max(start.of, 1), None if start.of else start.least)
    return Parameter("rows", rows, rows, rows), stitches


def _slipped_edge(rows: Sequence[Row]) -> SlippedEdge | None:
    """Return how the first slipped stitch is slipped, where every row that begins with one says the same."""
    firsts = [row.parts[0] for row in rows if row.parts]
    manners = {node.manner for node in firsts if isinstance(node, Work) and node.stitch in SLIPPED}
    said = set(manners.pop()) if len(manners) == 1 else set()
    if not said & {"kwise", "pwise"} or not said & {"wyif", "wyib"}:
        return None
    return SlippedEdge("kwise" if "kwise" in said else "pwise", "front" if "wyif" in said else "back")


def _examples(
    rows: Sequence[Row], starts: Sequence[Progression], vocabulary: Vocabulary, shown: int | None
) -> Iterator[Example]:
    """Give worked examples at the least count and at a wider one; one count alone is shown over one pass and two."""
    first = starts[0]
    fits = shown is not None and shown != first.least and shown <= MOST_SHOWN and first.admits(shown)
    wide = shown if fits else first.above(max(WIDE, first.least + 1))
    for count, passes in ((first.least, 1), (wide or first.least, 1 if wide else 2)):
        after = _after(rows, count, vocabulary)
        if after is not None:
            yield Example(count, after * passes)


def _after(rows: Sequence[Row], count: int, vocabulary: Vocabulary) -> tuple[int, ...] | None:
    """Return the counts after the rows, on which both roads agree; None where they do not, or it is too long."""
    if count > MOST_SHOWN or len(rows) > MOST_SHOWN:
        return None
    parts, sides = [row.parts for row in rows], sides_of(rows)
    derived = tuple(step.after for step in work(parts, count, vocabulary, sides))
    traced = tuple(step.after for step in trace(parts, count, vocabulary, sides).steps)
    known = tuple(after for after in derived if after is not None)
    return known if derived == traced and len(known) == len(derived) else None
