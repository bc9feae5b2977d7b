"""Corrections of what a text states about its counts: cast-on, multiple, printed counts; each from those derived."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking.edits import number_of, renumbered
from counterpane.craft.checking.examine import Examined, TextCorrection, printed_start, trouble
from counterpane.craft.checking.pieces import later_pieces
from counterpane.craft.checking.rewriting import Change, Stretch, Word, line_begins, stretch
from counterpane.craft.checking.troubles import cast_on_is_outside, multiple_is_wrong
from counterpane.craft.counts import Progression, count, judge
from counterpane.craft.counts.values import nearest
from counterpane.craft.rows.tree import Place

# House figures. The first are how unlikely each statement is to be the wrong one, beside the edits of rows.
CAST_ON, CAST_ON_TOLD, PICKED_UP, COUNT, MULTIPLE, NAMED = 11, 9, 13, 10, 10, 10
# So many printed counts tell against a cast-on; one alone may be the wrong one.
SEVERAL = 2
# A cast-on that rows with a repeat have taken before the trouble is probably right.
BORNE_OUT = 4
MOST_COUNTS, MOST_NAMED = 3, 2
_STITCHES = frozenset({"st", "sts", "stitch", "stitches"})


def restated(examined: Examined) -> Iterator[TextCorrection]:
    """Yield the corrections of the statements that are in doubt."""
    stuck, stated = trouble(examined) is not None, examined.instructions.cast_on
    if stated is not None and examined.given is not None and examined.given != stated.count:
        changes = _numbered(examined, stated.place, examined.given)
        yield TextCorrection("asked", changes, CAST_ON, stated.place.line, stated.place.line, examined.given)
    if examined.given is None and examined.complete:
        yield from _cast_on(examined, stuck)
    yield from _picked_up(examined)
    if not stuck:
        yield from _counts(examined)
    yield from _multiple(examined)
    yield from _named(examined)


def _cast_on(examined: Examined, stuck: bool) -> Iterator[TextCorrection]:
    """Yield other cast-ons: the one that makes the printed counts true, the nearest that the rows take."""
    stated, starts = examined.instructions.cast_on, examined.chain.starts
    if stated is None or not starts or not (stuck or examined.walk.wrong_counts or cast_on_is_outside(examined)):
        return
    likely = BORNE_OUT if _is_borne_out(examined) else 0
    told = sum(row.stated is not None for row in examined.counted)
    confirmed = printed_start(examined.counted, examined.chain, examined.maps) if told else None
    for number in dict.fromkeys((confirmed, *nearest(_promised(examined), stated.count))):
        if number and number != stated.count:
            weight = CAST_ON_TOLD if number == confirmed and told >= SEVERAL else CAST_ON + likely
            changes = _numbered(examined, stated.place, number)
            yield TextCorrection("cast-on", changes, weight, stated.place.line, stated.place.line, number)


def _promised(examined: Examined) -> tuple[Progression, ...]:
    """Return the counts that the rows take, without those that the stated multiple leaves out where it is true."""
    stated, starts = examined.instructions.multiple, examined.chain.starts
    if stated is None or len(starts) != 1 or judge(stated.of, stated.plus, starts[0]) != "wasteful":
        return starts
    plus = stated.plus % stated.of
    least = Progression(stated.of, plus, plus).above(starts[0].least)
    return starts if least is None else (Progression(stated.of, plus, least),)


def _picked_up(examined: Examined) -> Iterator[TextCorrection]:
    """Yield the nearest counts that the rows of a later piece take, where a knitter is stuck in it."""
    in_doubt = {jam.row.place for jam in examined.jams}
    for start, rows in later_pieces(examined.instructions.steps, examined.rows):
        if start.known and not in_doubt.isdisjoint(row.place for row in rows):
            stated, sides = start.cast_on, [row.side for row in rows]
            chain = count([row.parts for row in rows], examined.vocabulary, sides, examined.maps)
            for number in filter(None, nearest(chain.starts, stated.count)):
                changes, line = _numbered(examined, stated.place, number), stated.place.line
                yield TextCorrection("picked-up", changes, PICKED_UP, line, line, number)


def _is_borne_out(examined: Examined) -> bool:
    """Tell whether rows that take not every count were worked before the trouble."""
    stuck = trouble(examined)
    before = [row.parts for row in examined.counted if stuck is None or row.place < stuck[0].place]
    starts = count(before, examined.vocabulary).starts if before else ()
    return any(start.of != 1 for start in starts)


def _counts(examined: Examined) -> Iterator[TextCorrection]:
    """Yield the true counts in the place of printed ones."""
    for wrong in examined.walk.wrong_counts[:MOST_COUNTS]:
        place = wrong.again.again.stated_place if wrong.again else wrong.row.stated_place
        changes = _numbered(examined, place, wrong.true) if place else ()
        first = (wrong.again.again.place if wrong.again else wrong.row.place).line
        if changes and place:
            yield TextCorrection("count", changes, COUNT, first, place.line, wrong.true, partial=True)


def _multiple(examined: Examined) -> Iterator[TextCorrection]:
    """Yield the derived multiple in the place of one that promises what does not work, or less than does."""
    stated, starts = examined.instructions.multiple, examined.chain.starts
    if stated is None or not examined.complete or len(starts) != 1 or not starts[0].of:
        return
    if multiple_is_wrong(examined) or judge(stated.of, stated.plus, starts[0]) == "wasteful":
        changes = _restated_multiple(examined, stated.place, stated.plus, starts[0])
        if changes:
            yield TextCorrection("multiple", changes, MULTIPLE, stated.place.line, stated.place.line, partial=True)


def _named(examined: Examined) -> Iterator[TextCorrection]:
    """Yield the numbers of rows that are there, the nearest first, in the place of one that is not."""
    for fault in examined.instructions.faults:
        if fault.rule != "unknown-row" or not fault.word.isdigit():
            continue
        line, number = _line_from(examined, fault.place), int(fault.word)
        word = next((word for word in line.words if number_of(word) == number), None)
        named = {number_of(other) for other in line.words}
        rows = (row for row in examined.rows if row.place.line < fault.place.line and row.label.isdigit())
        there = {int(row.label) for row in rows} - named
        for other in sorted(there, key=lambda label: abs(label - number))[:MOST_NAMED] if word else ():
            changes = renumbered(line, word, other) if word else ()
            yield TextCorrection(
                "named", changes, NAMED + abs(other - number), fault.place.line, fault.place.line, partial=True
            )


def _numbered(examined: Examined, place: Place, number: int) -> tuple[Change, ...]:
    """Return the changes that put a number in the place of the one that stands there; none where none does."""
    row = _line_from(examined, place)
    word = row.words[0] if row.words and row.words[0].begin == row.begin else None
    return renumbered(row, word, number) if word and number_of(word) is not None else ()


def _line_from(examined: Examined, place: Place) -> Stretch:
    begins = [*line_begins(examined.text), len(examined.text) + 1]
    return stretch(examined.text, examined.offset(place), begins[place.line] - 1)


def _restated_multiple(examined: Examined, place: Place, plus: int, true: Progression) -> tuple[Change, ...]:
    """Return the changes of a printed multiple: its numbers, or the words "plus n" put in or left out."""
    row = _line_from(examined, place)
    numbers = [word for word in row.words if number_of(word) is not None]
    if not numbers or (plus and (len(numbers) < 2 or number_of(numbers[1]) != plus)):
        return ()
    of = renumbered(row, numbers[0], true.of)
    if plus and true.plus and (plus - true.plus) % true.of:
        return (*of, *renumbered(row, numbers[1], true.plus))
    if plus and true.plus:
        return of
    behind = _behind(row, numbers[0])
    if plus:
        return (*of, Change(behind.end, _behind(row, numbers[1]).end if behind != numbers[0] else numbers[1].end, ""))
    return (*of, Change(behind.end, behind.end, f" plus {true.plus}")) if true.plus else of


def _behind(row: Stretch, number: Word) -> Word:
    """Return the word for stitches behind a number, or the number itself."""
    after = next((word for word in row.words if word.begin >= number.end), number)
    return after if after.norm in _STITCHES else number
