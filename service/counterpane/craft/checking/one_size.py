"""Corrections of a text in several sizes: a change of one size's own number, or one that is right in all of them.

They are looked for in the text of that size alone, and written into the text as given, where the numbers of the other
sizes stand beside it. A change that would break a list, or make another size worse, is not offered.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from counterpane.craft.checking import corrections
from counterpane.craft.checking.examine import Examined, Origin, TextCorrection, reexamine
from counterpane.craft.checking.rewriting import Change, offset, written
from counterpane.craft.checking.troubles import counting_troubles, reading_troubles
from counterpane.craft.rows.instructions import read_again
from counterpane.craft.rows.sizes import Extract, Sizes, extract_of

# Changes of all sizes at once that are followed, each in every size, and those of a long text; house.
MOST_TRIED, MOST_TRIED_OF_LONG = 3, 1
# Characters of a text, once for each of its sizes, beyond which none is followed in all of them; house.
MOST_IN_ALL = 200_000
_Spans = Sequence[tuple[int, int]]


def with_corrections(examined: Examined, in_sizes: Sequence[Examined] = ()) -> Examined:
    """Return what is known of a text, in its one size or this one of several, with the corrections for its troubles.

    `in_sizes` is what is known of the text in each of its sizes; where it is empty it is worked out if it is needed.
    """
    sizes = examined.instructions.sizes
    if sizes is None:
        return corrections.with_corrections(examined)
    if not corrections.may_be_found(examined):
        return examined
    own = extract_of(examined.text, sizes, examined.instructions.size, keep_lines=True)
    alone = corrections.with_corrections(_alone(examined, sizes, own))
    offsets = (*own.offsets, len(examined.text))
    moved = ((correction, _moved(correction.changes, offsets)) for correction in alone.corrections)
    found = [replace(correction, changes=changes) for correction, changes in moved if changes is not None]
    return replace(examined, corrections=tuple(_sound(examined, sizes, found, in_sizes)))


def _alone(examined: Examined, sizes: Sizes, own: Extract) -> Examined:
    """Return what is known of one size as that of its text alone; what a list left open may mean is read afresh."""
    if sizes.odd:
        read = next(read_again(own.text, examined.instructions))
        return reexamine(own.text, read, examined.vocabulary, examined.given, examined.maps)
    read = replace(examined.instructions, sizes=None, size=0)
    return replace(examined, text=own.text, instructions=read, origin=Origin(examined.text, own.offsets))


def _moved(changes: Sequence[Change], offsets: Sequence[int]) -> tuple[Change, ...] | None:
    """Return changes of the text of one size as changes of the text as given; None where something stands between."""
    out = []
    for change in changes:
        before = offsets[change.begin - 1] if change.begin else -1
        stretch = offsets[change.begin : change.end] or (before + 1,)
        if change.begin == change.end and offsets[change.begin] != before + 1:
            return None
        if stretch[-1] - stretch[0] != len(stretch) - 1:
            return None
        out.append(Change(stretch[0], stretch[0] + change.end - change.begin, change.words))
    return tuple(out)


def _sound(
    examined: Examined, sizes: Sizes, found: Sequence[TextCorrection], before: Sequence[Examined]
) -> Iterator[TextCorrection]:
    """Yield the corrections that change a number of this size alone, or make no other size worse than `before`."""
    lists, entries = _spans(examined, sizes)
    left = MOST_TRIED if len(examined.text) <= corrections.LONG else MOST_TRIED_OF_LONG
    left = 0 if len(examined.text) * sizes.number > MOST_IN_ALL else left
    for correction in found:
        if correction.kind == "asked" or all(_within(change, entries) for change in correction.changes):
            yield correction
        elif not any(_touches(change, lists) for change in correction.changes) and left:
            left -= 1
            before = before or _of_all(examined, examined.text)
            if _helps_all(before, _of_all(examined, written(examined.text, correction.changes))):
                yield correction


def _spans(examined: Examined, sizes: Sizes) -> tuple[_Spans, _Spans]:
    """Return where the lists of a text stand, and where the entries of this size do, as offsets of the text."""
    text, flat = examined.text, sizes.flat

    def given(index: int) -> int:
        line = flat.line_at(index)
        return offset(text, flat.lines[line].place(index - flat.starts[line]))

    lists = [(given(each.start), given(each.end)) for each in (*sizes.readings, *sizes.odd)]
    entries = [each.entries[examined.instructions.size] for each in sizes.readings]
    return lists, [(given(start), given(end)) for start, end in entries]


def _within(change: Change, spans: _Spans) -> bool:
    return any(start <= change.begin < change.end <= end for start, end in spans)


def _touches(change: Change, spans: _Spans) -> bool:
    return any(change.begin < end and start < change.end for start, end in spans)


def _of_all(examined: Examined, text: str) -> tuple[Examined, ...]:
    """Examine a text that is nearly alike in each of its sizes; only what is changed is read."""
    read = read_again(text, examined.instructions)
    return tuple(reexamine(text, each, examined.vocabulary, examined.given, examined.maps) for each in read)


def _helps_all(before: Sequence[Examined], after: Sequence[Examined]) -> bool:
    """Tell whether no size has more troubles with a correction than without it."""
    pairs = zip(before, after, strict=False)
    return len(before) == len(after) and all(
        reading_troubles(new) <= reading_troubles(old) and counting_troubles(new) <= counting_troubles(old)
        for old, new in pairs
    )
