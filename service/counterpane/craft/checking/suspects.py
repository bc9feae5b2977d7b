"""The rows that may be at fault for a trouble, the likeliest first, and whether an edit of one could correct it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from itertools import islice

from counterpane.craft.checking.doubts import Parts
from counterpane.craft.checking.edits import Edit, edits
from counterpane.craft.checking.endings import endings
from counterpane.craft.checking.examine import Examined, trouble
from counterpane.craft.checking.foreseen import foreseen, stitches_of
from counterpane.craft.checking.pieces import piece_begin, run_end
from counterpane.craft.checking.rewordings import closed_repeat, rewordings
from counterpane.craft.checking.rewriting import Stretch, stretch
from counterpane.craft.checking.troubles import Shown, shown
from counterpane.craft.counts import UNPROVED, Maps, work
from counterpane.craft.counts.chain import gone_on, is_listed
from counterpane.craft.counts.needle import Needle
from counterpane.craft.counts.wellformed import is_open
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.read import ReadRow, read_row
from counterpane.craft.rows.tree import OpenRepeat, Place, Row, Work

# House bounds of what is looked at.
MOST_SUSPECTS = 10
MOST_UNREADABLE, MOST_FAULTS, MOST_PIECES = 6, 4, 3
# Nobody finds a slip in a longer row by changing a word.
LONGEST_ROW = 1_000
# How many rows behind the trouble an edited row is worked with before the whole text is.
AHEAD = 4
NOT_STUCK = 1


@dataclass(frozen=True, slots=True)
class Suspect:
    """A row in doubt as it was read: its index, the count it begins with, the faults of its reading.

    It must be worked with the rows up to `upto`, some behind the trouble; `penalty` is added to the weights of its
    edits. `plain` says that its words alone give its stitches, so that an edit can be tried by reading them. Where no
    count is known, `begin` is the needle after some rows before it, None where none can be worked.
    """

    examined: Examined
    row: Row
    index: int
    upto: int
    before: int | None
    penalty: int
    words: Stretch
    plain: bool
    begin: Needle | None = None
    faults: tuple[Fault, ...] = ()
    malformed: bool = False

    @property
    def place(self) -> Place:
        """Where its line begins."""
        return self.row.place

    @property
    def end(self) -> Place:
        """Where its words end."""
        return self.row.end

    @property
    def keeps(self) -> bool:
        """Whether it is not the likeliest, and ends with the count it begins with."""
        return self.penalty > 0 and self.before is not None and self.before == _after(self.examined, self.index)

    def edits(self) -> Sequence[Edit]:
        """Return what may be changed in it, never its printed count."""
        if self.faults:
            at, vocabulary = self.examined.offset, self.examined.vocabulary
            return _together([rewordings(self.words, at(each.place), each, vocabulary) for each in self.faults])
        found = [*edits(self.words), *endings(self.words)]
        if self.malformed:
            found = [*closed_repeat(self.words), *found]
        counted = self._count_begins()
        return [edit for edit in found if all(change.begin < counted for change in edit.changes)]

    def _count_begins(self) -> int:
        if self.row.stated is None:
            return self.words.begin + len(self.words.text)
        at = self.examined.offset(self.row.stated_place)
        return at if at > self.words.begin else self.words.begin + len(self.words.text)

    def edited(self, edit: Edit) -> Row | None:
        """Read the edited row; None where it cannot be read, or not be worked among its neighbours."""
        parts = _reading(self.examined, self.words.changed(edit.changes))
        fits = parts is not None and self._fits(parts)
        return replace(self.row, parts=parts, readable=True) if parts is not None and fits else None

    def is_misfit(self, edit: Edit) -> bool:
        """Tell without reading the edited row that it cannot be worked among its neighbours; False where unknown."""
        if not self.plain or self.faults:
            return False
        examined = self.examined
        stitches = examined.instructions.shared.of(_stitches, self.row, examined)
        new = foreseen(self.row.parts, stitches, self.words, edit, lambda words: _item(examined, words))
        return new is not None and not self._fits(new)

    def is_like_another(self, row: Row) -> bool:
        """Tell whether an edited row says what another row says."""
        examined = self.examined
        like = examined.maps.first_like(row.parts)
        places = examined.instructions.shared.of(_places, examined.rows, examined.maps)
        return like is not None and bool(places.get(id(like), frozenset()) - {row.place})

    def _fits(self, new: Parts) -> bool:
        rows, maps = self._ahead(), self.examined.maps
        parts = [new if self._is_said_by(row) else row.parts for row in rows]
        if self.before is None:
            after = gone_on(self.begin, parts, maps)
            return after is not None and is_listed(after)
        if maps.refuses(new, self.before):
            return False  # Most edits end here: the row itself does not take the count, and no neighbour is asked.
        steps = work(parts, self.before, maps.vocabulary, [row.side for row in rows], maps, told=False)
        for row, step in zip(rows, steps, strict=True):
            if step.misfit is not None:
                return step.misfit.slug == UNPROVED
            if row.stated not in (None, step.after):
                return False
        return True

    def _is_said_by(self, row: Row) -> bool:
        """Tell whether a row has the words of this one, its own or taken from it: "as row 1"."""
        taken = bool(row.parts) and any(row.parts is own.parts for own in (self.row, self.examined.rows[self.index]))
        return taken or row.place == self.place

    def _ahead(self) -> Sequence[Row]:
        """Return the rows to try: from this one to behind the trouble."""
        rows = self.examined.rows[self.index : self.upto + 1]
        stop = next((at for at, row in enumerate(rows) if not row.readable and row.place != self.place), len(rows))
        return rows[:stop]


def _places(rows: Sequence[Row], maps: Maps) -> Mapping[int, Set[Place]]:
    """Return where rows that are alike stand, by the identity of the first of them."""
    out: dict[int, set[Place]] = {}
    for row in rows:
        out.setdefault(id(maps.first_like(row.parts)), set()).add(row.place)
    return out


def suspects(examined: Examined) -> list[Suspect]:
    """Return the rows in doubt: those that cannot be read, or those that may have led to a count that is wrong."""
    return [*_unreadable(examined), *_miscounting(examined)]


def _together(choices: Sequence[Sequence[Edit]]) -> list[Edit]:
    """Return the edits that correct all faults of a row: the first of each, and those with one other choice."""
    if not all(choices) or len(choices) > MOST_FAULTS:
        return []
    first = [edits[0] for edits in choices]
    sets = [first, *([*first[:at], other, *first[at + 1 :]] for at, edits in enumerate(choices) for other in edits[1:])]
    return [Edit(tuple(change for edit in each for change in edit.changes), _weight(each)) for each in sets]


def _weight(edits: Sequence[Edit]) -> int:
    return max(edit.weight for edit in edits) + len(edits) - 1


def _unreadable(examined: Examined) -> Iterator[Suspect]:
    """Yield the rows that cannot be read."""
    seen: set[Place] = set()
    fatal = [fault for fault in examined.instructions.faults if fault.fatal]
    for index, row in enumerate(examined.instructions.rows):
        if row.readable or row.place in seen or len(seen) >= MOST_UNREADABLE:
            continue
        seen.add(row.place)
        found = printed_row(examined, row)
        faults = tuple(fault for fault in fatal if row.place <= fault.place < row.end)
        if found and faults:
            upto = _ahead(examined, index, index)
            was = _before(examined, index)
            yield Suspect(examined, row, index, upto, was, 0, found, True, _begin(examined, index, was), faults)


def _miscounting(examined: Examined) -> Iterator[Suspect]:
    """Yield the rows that may be at fault for the first count that is wrong, in each piece."""
    malformed = {row.place for row, _ in examined.malformed}
    odd = examined.odd
    settled = trouble(examined) is None and not examined.walk.wrong_counts
    seen: set[Place] = set()
    rows = examined.instructions.rows
    for place in shown(examined)[:MOST_PIECES]:
        indices = _in_doubt(examined, place, odd)
        before = _counts_before(examined, place.row)
        likely = odd if odd in indices else max((at for at in indices if before.get(at) is not None), default=place.row)
        for index in indices:
            raw = rows[index]
            found = None if raw.place in seen or not raw.readable else printed_row(examined, raw)
            seen.add(raw.place)
            plain = found is not None and _is_plain(examined, raw, found)
            if found and (plain or not examined.instructions.sizes):
                penalty = 0 if index == likely or settled else NOT_STUCK
                was = before.get(index)
                upto = _ahead(examined, index, place.row)
                begin, twofold = _begin(examined, index, was), raw.place in malformed
                yield Suspect(examined, raw, index, upto, was, penalty, found, plain, begin, malformed=twofold)


def _is_plain(examined: Examined, row: Row, words: Stretch) -> bool:
    """Tell whether the words of a row alone give its stitches."""
    return _reading(examined, words.text) == row.parts


def _in_doubt(examined: Examined, place: Shown, odd: int | None) -> list[int]:
    """Return the indices of the rows in doubt for a trouble, the likeliest first, each once for its line."""
    begin = max(_cleared(examined, place.row), piece_begin(examined.instructions.steps, place.row) - 1)
    order = list(place.again.rows[::-1]) if place.again else list(range(place.row, begin, -1))
    first = [odd] if odd is not None else []
    firsts = _firsts_of_lines(examined.rows)
    return [firsts[at] for at in islice(dict.fromkeys((*first, *order)), MOST_SUSPECTS)]


def _cleared(examined: Examined, upto: int) -> int:
    """Return the index of the last row before a trouble whose printed count is true, else -1."""
    rows = examined.followed[:upto]
    proved = [at for at, row in enumerate(rows) if row.row.stated is not None and row.row.stated == row.after]
    return proved[-1] if proved else -1


def _firsts_of_lines(rows: Sequence[Row]) -> list[int]:
    """Return for each row the first of the run of rows that its line stands for."""
    out: list[int] = []
    for at, row in enumerate(rows):
        out.append(out[-1] if at and rows[at - 1].place == row.place else at)
    return out


def _counts_before(examined: Examined, upto: int) -> dict[int, int | None]:
    """Return the counts with which rows begin up to a trouble; where no count works, those from the stated cast-on."""
    followed = examined.followed
    if examined.cast_on is None or not followed or followed[0].before is not None:
        return {index: row.before for index, row in enumerate(followed)}
    rows = examined.counted[: upto + 1]
    steps = work([row.parts for row in rows], examined.cast_on, examined.vocabulary, [row.side for row in rows])
    return {index: step.before for index, step in enumerate(steps)}


def _begin(examined: Examined, index: int, before: int | None) -> Needle | None:
    """Return the needle after the readable rows before one; None where they cannot be worked, or the count is known."""
    if before is not None:
        return None
    rows = examined.rows[max(0, index - AHEAD) : index]
    first = max((at for at, row in enumerate(rows, start=1) if not row.readable), default=0)
    return gone_on(Needle.any_count(), [row.parts for row in rows[first:]], examined.maps)


def _before(examined: Examined, index: int) -> int | None:
    return examined.followed[index].before if index < len(examined.followed) else None


def _after(examined: Examined, index: int) -> int | None:
    return examined.followed[index].after if index < len(examined.followed) else None


def _ahead(examined: Examined, index: int, trouble: int) -> int:
    """Return the index of the last row that an edited row is worked with."""
    return min(trouble + AHEAD, run_end(examined.instructions.steps, index))


def printed_row(examined: Examined, row: Row, longest: int = LONGEST_ROW) -> Stretch | None:
    """Return the words of a row as printed; None for one without words of its own, or with more signs than asked."""
    begin, end = examined.offset(row.start), examined.offset(row.end)
    found = stretch(examined.text, begin, end) if begin < end <= begin + longest else None
    # "Accept row-runs-short: ..." is a remark, which has no words, also behind a label.
    return found if found and found.words else None


def _stitches(row: Row, examined: Examined) -> Mapping[int, Work]:
    return stitches_of(row.parts, examined.offset)


def _item(examined: Examined, words: str) -> Parts:
    """Read words alone; no parts where they cannot be read."""
    read = _read(examined, words)
    return read.parts if read.readable else ()


def _read(examined: Examined, words: str) -> ReadRow:
    kept, terms = examined.instructions.kept, examined.instructions.terms
    # An edit that changes a number leaves a row of the shape that is known already; rows that are alike have the same.
    return kept.shared.of_words(kept.shapes.read_words, words) if kept else read_row(words, examined.vocabulary, terms)


def _reading(examined: Examined, words: str) -> Parts | None:
    """Read words in the place of a row's own; None where they cannot be read or say nothing."""
    read = _read(examined, words)
    if not read.readable or not read.parts:
        return None
    parts = read.parts
    promised = examined.instructions.multiple
    if promised is not None and promised.of > 1 and not any(map(is_open, parts)):
        return (OpenRepeat(parts, 0),)
    return parts
