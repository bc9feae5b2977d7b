"""Put the facts of a text together: what it says, what its rows need, and what happens when it is worked."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

from counterpane.craft.checking.causes import odd_row
from counterpane.craft.checking.doubts import Choice, settled
from counterpane.craft.checking.follow import Followed, Jam, Walk, follow
from counterpane.craft.checking.pieces import first_piece, rows_before_change, workable
from counterpane.craft.checking.rewriting import Change, offset
from counterpane.craft.counts import Chain, Maps, Misfit, count, work
from counterpane.craft.rows.gauges import PrintedGauge, gauges_of
from counterpane.craft.rows.instructions import AgainStep, Instructions, read_sizes, read_text
from counterpane.craft.rows.tree import Place, Row
from counterpane.craft.stitches import Terms, Vocabulary


@dataclass(frozen=True, slots=True)
class TextCorrection:
    """Changes of a row or a statement with which the text checks clean; of two, the one of less weight is likelier.

    The lines from `line` to `last_line` are those of the row or statement; `count` is the number it then states.
    "asked" is a cast-on that was asked for beside the text. `partial` says that it is worth having where it makes the
    text better and not yet clean.
    """

    kind: Literal["row", "cast-on", "picked-up", "multiple", "count", "named", "asked"]
    changes: tuple[Change, ...]
    weight: int
    line: int
    last_line: int
    count: int | None = None
    partial: bool = False


@dataclass(frozen=True, slots=True)
class Origin:
    """The text in sizes that the text of one was taken from, and for each letter of that its offset in this one."""

    text: str
    offsets: Sequence[int]


@dataclass(frozen=True, slots=True)
class Examined:
    """A text and all that follows from it.

    `given` is the cast-on asked for; `cast_on` the one the rows are followed from, None where no count works. `chain`
    is what the first `reach` rows do together, those before the first that cannot be read, or before a repeat line
    changes the count; `complete` says that these are all rows of the (first) piece. `odd` is the index of the counted
    row whose repeat differs from the others, where the repeats do not nest; `malformed` are the readable rows that have
    no single meaning at any count, once for each line; `jams` is where a knitter is stuck, once in each piece.
    `corrections` are changes that would put the text right, the likeliest first, where they were looked for; `maps`
    are those of its rows. All places are those of `origin` where there is one, whose lines the text has.
    """

    text: str
    instructions: Instructions
    vocabulary: Vocabulary
    rows: tuple[Row, ...]
    chain: Chain
    complete: bool
    given: int | None
    cast_on: int | None
    walk: Walk
    maps: Maps = field(compare=False, repr=False)
    corrections: tuple[TextCorrection, ...] = ()
    reach: int = 0
    odd: int | None = None
    malformed: tuple[tuple[Row, Misfit], ...] = ()
    jams: tuple[Jam, ...] = ()
    origin: Origin | None = None

    def offset(self, place: Place) -> int:
        """Return the offset of a place in the text, of one that was left out that of the next letter."""
        if self.origin is None:
            return offset(self.text, place)
        return bisect_left(self.origin.offsets, offset(self.origin.text, place))

    @property
    def counted(self) -> tuple[Row, ...]:
        """The rows that the chain is made of."""
        return self.rows[: self.reach]

    @property
    def gauges(self) -> tuple[PrintedGauge, ...]:
        """The gauges that the text states."""
        return self.instructions.shared.of(gauges_of, self.instructions.page)

    @property
    def followed(self) -> Sequence[Followed]:
        """The listed rows with their counts."""
        return self.walk.rows


def examine(text: str, vocabulary: Vocabulary, cast_on: int | None = None, terms: Terms | None = None) -> Examined:
    """Read a text, derive its counts, and follow it from the cast-on given, else stated, else the least that works."""
    return reexamine(text, read_text(text, vocabulary, terms), vocabulary, cast_on)


def examine_sizes(
    text: str, vocabulary: Vocabulary, cast_on: int | None = None, terms: Terms | None = None
) -> tuple[Examined, ...]:
    """Examine a text in each of its sizes; one in one size gives one answer."""
    maps = Maps(vocabulary)
    return tuple(reexamine(text, read, vocabulary, cast_on, maps) for read in read_sizes(text, vocabulary, terms))


def reexamine(
    text: str, instructions: Instructions, vocabulary: Vocabulary, cast_on: int | None, maps: Maps | None = None
) -> Examined:
    """Derive and follow instructions that are already read; `maps` are those of rows that other sizes have too."""
    maps = maps or Maps(vocabulary)
    stated = instructions.cast_on.count if instructions.cast_on else None
    start = cast_on if cast_on is not None else stated
    rows = settled(instructions.rows, start, instructions.shared.of(Choice, maps))
    piece = first_piece(instructions.steps, rows)
    readable = _readable(piece)
    chain = count([row.parts for row in readable], vocabulary, [row.side for row in readable], maps)
    chain, counted = _derived(instructions, readable, start, chain, maps)
    if start is None and readable:
        start = printed_start(readable, chain, maps)
        if start is not None and any(isinstance(step, AgainStep) for step in instructions.steps):
            start = workable(start, chain, lambda at: follow(instructions.steps, rows, at, vocabulary, maps))
    impossible = not chain.starts and not chain.proved_at_count_only
    walk = follow(instructions.steps, rows, None if impossible else start, vocabulary, maps)
    complete = counted == len(piece)
    odd = _odd(rows[:counted], chain, instructions, maps) if complete else None
    return Examined(
        text,
        instructions,
        vocabulary,
        rows,
        chain,
        complete,
        cast_on,
        start,
        walk,
        maps,
        reach=counted,
        odd=odd,
        # Rows that were counted together at some count have a meaning each.
        malformed=_malformed(rows[counted if chain.starts else 0 :], maps),
        jams=_jams(rows[:counted], chain, start, walk, maps),
    )


def _derived(
    instructions: Instructions, rows: tuple[Row, ...], start: int | None, chain: Chain, maps: Maps
) -> tuple[Chain, int]:
    """Return the chain of a piece and of how many rows it is: fewer where repeat lines change the count before others.

    One pass of all rows is then not what is worked, and says nothing where it fails or refuses the count to begin with.
    """
    if chain.starts and (start is None or chain.admits(start)):
        return chain, len(rows)
    upto = rows_before_change(instructions.steps, rows, maps)
    if upto >= len(rows):
        return chain, len(rows)
    shorter = count([row.parts for row in rows[:upto]], maps.vocabulary, [row.side for row in rows[:upto]], maps)
    return (shorter, upto) if shorter.starts or not chain.starts else (chain, len(rows))


def printed_start(rows: Sequence[Row], chain: Chain, maps: Maps) -> int | None:
    """Return the count to begin with where no cast-on is known: the least at which the first printed count is true.

    Where nothing is printed, or no count makes it true, it is the least that works; None where none does.
    """
    least = min((start.least for start in chain.starts), default=None)
    index = next((index for index, row in enumerate(rows) if row.stated is not None), None)
    printed = None if index is None else rows[index].stated
    if index is None or printed is None:
        return least
    first = rows[: index + 1]
    upto = count([row.parts for row in first], maps.vocabulary, [row.side for row in first], maps)
    for start, end in zip(upto.starts, upto.ends, strict=True):
        before = start.least + (printed - end) / upto.ratio if upto.ratio else None
        if before is not None and before.denominator == 1 and chain.admits(int(before)):
            return int(before)
    return least


def unproved_row(examined: Examined) -> Row | None:
    """Return the row that arithmetic cannot follow, the first of all where no count is known; None for none."""
    if examined.walk.unproved is not None:
        return examined.walk.unproved
    followed = examined.followed
    lost = examined.chain.proved_at_count_only and bool(followed) and followed[0].before is None
    return followed[0].row if lost else None


def _readable(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    """Return the rows before the first that cannot be read."""
    first = next((index for index, row in enumerate(rows) if not row.readable), len(rows))
    return rows[:first]


def trouble(examined: Examined) -> tuple[Row, Misfit] | None:
    """Return the row where a knitter is stuck, at the cast-on or at any count, and why; None where nowhere."""
    return next(((jam.row, jam.misfit) for jam in examined.jams), None)


def _jams(counted: Sequence[Row], chain: Chain, start: int | None, walk: Walk, maps: Maps) -> tuple[Jam, ...]:
    """Return where a knitter is stuck in each piece; no piece has more than one place."""
    misfit = chain.misfit
    if misfit is None:
        return tuple(walk.jams)
    begins = None
    if start is not None:
        steps = work([earlier.parts for earlier in counted[: misfit.row]], start, maps.vocabulary, maps=maps)
        begins = steps[-1].after if steps else start
    return (Jam(counted[misfit.row], misfit, begins=begins), *walk.jams)


def _malformed(rows: Sequence[Row], maps: Maps) -> tuple[tuple[Row, Misfit], ...]:
    unlike = {id(row.parts): row.parts for row in rows if row.readable}
    faults = {key: misfit for key, parts in unlike.items() if (misfit := maps.malformed(parts))}
    if not faults:
        return ()
    found = {row.place: (row, faults[id(row.parts)]) for row in rows if row.readable and id(row.parts) in faults}
    return tuple(found.values())


def _odd(rows: Sequence[Row], chain: Chain, instructions: Instructions, maps: Maps) -> int | None:
    """Return the index of the row whose repeat differs from the others, where the repeats do not nest."""
    disjoint = chain.misfit is not None and chain.misfit.slug == "rows-do-not-join"
    if not (chain.suspicious or disjoint):
        return None
    promised = instructions.multiple
    index = odd_row(rows, maps, promised.of if promised else 0)
    if index is None or disjoint:
        return index
    # Parts of a blanket need not nest with each other: bands of 8 and 3 stitches share every 24th count by design.
    own = [row.parts for row in _part_of(rows, index)]
    return index if count(own, maps.vocabulary, maps=maps).suspicious else None


def _part_of(rows: Sequence[Row], index: int) -> Sequence[Row]:
    """Return the rows around one that are numbered on from each other in its section."""
    begins, last = [0], 0
    for at, row in enumerate(rows):
        number = int(row.label) if row.label.isdigit() else None
        if at and (row.section != rows[at - 1].section or (number is not None and number <= last)):
            begins.append(at)
            last = 0
        last = last if number is None else number
    begin = max(at for at in begins if at <= index)
    return rows[begin : next((at for at in begins if at > index), len(rows))]
