"""A text in several sizes: how many there are, what they are called, and the text of one of them.

A text is in several sizes where its cast-on, its list of sizes or its rows give lists of one number a size. A text in
one size has none, and nothing in it is touched.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from counterpane.craft.records import record
from counterpane.craft.rows.sizes.draft import Draft
from counterpane.craft.rows.sizes.extract import Extract, extract
from counterpane.craft.rows.sizes.flat import Flat
from counterpane.craft.rows.sizes.lists import MOST_SIZES, Candidate, Reading, Span, candidates
from counterpane.craft.rows.sizes.names import names_in
from counterpane.craft.rows.sizes.notes import Note, may_hold_notes, notes
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import Line

__all__ = ["Extract", "SizeList", "Sizes", "extract_of", "for_size", "sizes_in"]
_CASTING_ON = re.compile(
    r"c(?<=\bc)(?:ast(?:ing)?[ -]on|/?o|\.o\.)\s*(?:(?:loosely|about|approx\w*|exactly|a total of)\s+)*$"
)
# A bracket without a stitch before its end, and a star by itself, tell of no size.
_STITCH = re.compile(
    r"(?:\b(?:k|p|sl|knit|purl|slip|last|bind off|cast off|bo)\s?|[a-z]\d{0,4}\.?\s?[\])]\s?|\bfrom\s?[*]\s?)$"
)
_ROW_END = re.compile(r"[.\s]*$")
# House: signs looked back over for a cast-on and for a stitch, and what each kind of list weighs.
_LOOKED_BACK, _LONGEST_STITCH = 50, 12
_WEIGHT_OF_NAMES, _WEIGHT_OF_CAST_ON = 3, 2


@record
class SizeList:
    """A list of one number a size as printed, and where it begins; `cast_on` says that it follows "cast on"."""

    place: Place
    entries: tuple[str, ...]
    cast_on: bool = False


@dataclass(frozen=True, slots=True)
class Sizes:
    """How many sizes a text is in, their names (empty where it names none), and its lists.

    `lists` have an entry for each size; `misfits` have more or fewer. The rest tells where all of it stands.
    """

    number: int
    names: tuple[str, ...]
    lists: tuple[SizeList, ...]
    misfits: tuple[SizeList, ...]
    flat: Flat
    readings: tuple[Reading, ...]
    notes: tuple[Note, ...]
    named: Reading | None = None
    odd: tuple[Reading, ...] = ()

    def given(self, span: Span) -> str:
        """Return a stretch of one line as it stands in the text as given."""
        line = self.flat.line_at(span[0])
        start = self.flat.starts[line]
        return self.flat.lines[line].given(span[0] - start, span[1] - start)


def sizes_in(lines: Sequence[Line]) -> Sizes | None:
    """Return the sizes of a text, None where it is in one size."""
    flat = Flat(lines)
    found, named = list(candidates(flat.text)), names_in(flat.text)
    if not found and not (named and may_hold_notes(flat.text)):
        return None
    number = _number(flat, found, named)
    if number is None:
        return None
    names = _words(flat.text, named) if named and len(named.entries) == number else ()
    said = tuple(notes(flat, number, names)) if may_hold_notes(flat.text) else ()
    spans = [named] if named and names else []
    found = [one for one in found if not any(span.start <= one.plain.start < span.end for span in spans)]
    readings = tuple(reading for one in found if (reading := one.of(number)))
    if not readings and not said:
        return None
    misfits = tuple(one.plain for one in found if one.of(number) is None and _is_misfit(flat.text, one, number))
    lists = tuple(_printed(flat, reading) for reading in readings)
    odd = tuple(_printed(flat, reading) for reading in misfits)
    return Sizes(number, names, lists, odd, flat, readings, said, named if names else None, misfits)


def _number(flat: Flat, found: Sequence[Candidate], named: Reading | None) -> int | None:
    """Return in how many sizes a text is: what its list of sizes, its cast-on and its rows say most often."""
    votes: Counter[int] = Counter()
    told = bool(named)
    for one in found:
        cast_on = _casts_on(flat.text, one.plain)
        first = one.plain
        if cast_on and len(first.entries) > 1:
            votes[len(first.entries)] += _WEIGHT_OF_CAST_ON
            told = True
        elif one.sure and _stitch_before(flat.text, first):
            votes[len(first.entries)] += 1
            told = True
    if named and (len(named.entries) in votes or not votes):
        votes[len(named.entries)] += _WEIGHT_OF_NAMES
    number = max(votes, key=lambda many: votes[many], default=1) if told else 1
    return number if 1 < number <= MOST_SIZES else None


def _casts_on(text: str, reading: Reading) -> bool:
    return bool(_CASTING_ON.search(text, max(0, reading.start - _LOOKED_BACK), reading.start))


def _stitch_before(text: str, reading: Reading) -> bool:
    return bool(_STITCH.search(text, max(0, reading.start - _LONGEST_STITCH), reading.start))


def _is_misfit(text: str, one: Candidate, number: int) -> bool:
    """Tell whether a list of another number of entries than there are sizes is meant as one."""
    if one.sure or _casts_on(text, one.plain):
        return True
    ends = _ROW_END.match(text, one.plain.end, text.find("\n", one.plain.end) % (len(text) + 1))
    return len(one.plain.entries) == 2 and _stitch_before(text, one.plain) and not ends


def _words(text: str, reading: Reading) -> tuple[str, ...]:
    return tuple(text[start:end] for start, end in reading.entries)


def _printed(flat: Flat, reading: Reading) -> SizeList:
    line = flat.line_at(reading.start)
    place = flat.lines[line].place(reading.start - flat.starts[line])
    return SizeList(place, _words(flat.text, reading), _casts_on(flat.text, reading))


def draft_for(sizes: Sizes, size: int, untouched: frozenset[int] = frozenset()) -> Draft:
    """Return the text on its way to one size, counted from 0: its numbers chosen, what is not for it left out.

    Lines whose numbers from 0 are in `untouched` are left as they are.
    """
    draft = Draft(sizes.flat)
    for note in sizes.notes:
        if size in note.sizes:
            draft.drop_word(note.start, note.end)
        elif note.phrase:
            draft.leave_out_phrase(note.begin, note.stop)
        else:
            draft.drop(note.begin, note.stop)
    for start, end in _chosen(sizes, size, draft, untouched):
        if draft.letters[start]:
            draft.leave_out(start, end)
    return draft


def _chosen(sizes: Sizes, size: int, draft: Draft, untouched: frozenset[int]) -> list[Span]:
    """Keep the entry of a size in each list, and return those that say that nothing is worked."""
    nothing = []
    for reading in (*([sizes.named] if sizes.named else []), *sizes.readings):
        if untouched and sizes.flat.line_at(reading.start) in untouched:
            continue
        start, end = reading.entries[size]
        draft.drop(reading.start, start)
        draft.drop(end, reading.end)
        if reading is not sizes.named and sizes.flat.text[start:end] in ("0", "-"):
            nothing.append((start, end))
    return nothing


def for_size(sizes: Sizes, size: int, first: Mapping[int, Line] | None = None) -> list[Line]:
    """Return the lines of one size, counted from 0; a line that is the same in every size stays the same object.

    `first` are lines of the first size, by their number from 0, that are to stand for those of this one.
    """
    first = first or {}
    draft = draft_for(sizes, size, frozenset(first))
    for reading in sizes.odd:
        # The row cannot be read in any size; one number of it is kept so that its other words can be.
        start, end = reading.entries[min(size, len(reading.entries) - 1)]
        draft.drop(reading.start, start)
        draft.drop(end, reading.end)
    lines = list(sizes.flat.lines)
    for number in draft.touched:
        lines[number] = draft.line(number)
    for number, line in first.items():
        lines[number] = line
    return lines


def extract_of(text: str, sizes: Sizes, size: int, *, keep_lines: bool = False) -> Extract:
    """Return the text with only the numbers of one size, counted from 0, and everything else as it is."""
    return extract(text, draft_for(sizes, size), keep_lines=keep_lines)
