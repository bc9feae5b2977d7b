"""A text followed from its cast-on: every row in working order, every repeat line, to the first place of trouble."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from counterpane.craft.counts import UNPROVED, Chain, Maps, Misfit, can_repeat, count, passes_from, passes_until, work
from counterpane.craft.counts.wellformed import names_markers, within
from counterpane.craft.records import record
from counterpane.craft.rows.instructions import AgainStep, EndStep, StartStep, Step
from counterpane.craft.rows.tree import Place, Row, Turn
from counterpane.craft.stitches import Vocabulary

# House bounds of what is worked row by row.
MOST_PASSES_WORKED = 200
MOST_ROWS_WORKED = 20_000


@record
class Followed:
    """A listed row with its counts at the first pass; None where they are not known."""

    row: Row
    before: int | None
    after: int | None


@dataclass(frozen=True, slots=True)
class Jam:
    """Where the knitter of a piece is stuck: the listed row, why, and in which repeat line, None at the first pass.

    `working` counts the passes of that repeat line from 1; `begins` is how many stitches the row begins with from the
    stated cast-on, where it fails at any.
    """

    row: Row
    misfit: Misfit
    again: AgainStep | None = None
    working: int = 1
    begins: int | None = None


@dataclass(frozen=True, slots=True)
class WrongCount:
    """A count printed after a row or repeat line, or for a bind-off, that is not true; the row is that before it."""

    row: Row
    printed: int
    true: int
    again: AgainStep | None = None
    end: EndStep | None = None

    @property
    def place(self) -> Place:
        """Where the count is printed."""
        if self.end:
            return self.end.end.place
        return (self.again.again.stated_place if self.again else self.row.stated_place) or self.row.start


@dataclass(frozen=True, slots=True)
class Repeated:
    """A repeat line: what one pass of its rows does, and whether it can be worked as it says.

    `reached` tells for "until n sts remain" whether n is reached, None where the count before is not known;
    `fits_again` whether the rows can be worked again and again.
    """

    step: AgainStep
    chain: Chain
    before: int | None
    reached: bool | None = None
    fits_again: bool = True


@dataclass(slots=True)
class Walk:
    """What following the text shows; `unproved` is the first row that arithmetic cannot follow."""

    rows: list[Followed] = field(default_factory=list)
    jams: list[Jam] = field(default_factory=list)
    wrong_counts: list[WrongCount] = field(default_factory=list)
    repeated: list[Repeated] = field(default_factory=list)
    unproved: Row | None = None

    @property
    def jam(self) -> Jam | None:
        """The first place where a knitter is stuck."""
        return self.jams[0] if self.jams else None


@record
class _Worked:
    """A row to be worked: listed (its first pass) or in a repeat line, and the how-manieth working it is there."""

    row: Row
    again: AgainStep | None = None
    working: int = 1


def follow(
    steps: Sequence[Step], rows: Sequence[Row], start: int | None, vocabulary: Vocabulary, maps: Maps | None = None
) -> Walk:
    """Work a text from `start` stitches; `rows` are its rows in the reading settled on, in the order listed."""
    return _Follower(rows, start, maps or Maps(vocabulary)).through(steps)


class _Follower:
    """The state of one walk: what waits to be worked since the count was last known."""

    def __init__(self, rows: Sequence[Row], start: int | None, maps: Maps) -> None:
        self.rows = rows
        self.maps, self.vocabulary = maps, maps.vocabulary
        self.walk = Walk()
        self.now = start
        self.waiting: list[_Worked] = []
        # The rows of one line have the same stitches.
        unlike = {(id(row.parts), row.readable): row for row in rows}
        self.stateful = any(map(self.moves, unlike.values()))
        self.done = 0
        self.began = start
        self.jammed = self.ended = False

    def moves(self, row: Row) -> bool:
        """Tell whether a row has markers or turns, as none has that is one map."""
        if row.readable and self.maps.of(row.parts) is not None:
            return False
        return names_markers(row.parts) or any(isinstance(node, Turn) for node in within(row.parts))

    def through(self, steps: Sequence[Step]) -> Walk:
        """Go through all steps."""
        listed = 0
        for step in steps:
            if isinstance(step, Row):
                if self.ended:
                    self.begin_piece(None)
                self.row(self.rows[listed])
                listed += 1
            elif isinstance(step, StartStep):
                self.work_waiting()
                self.begin_piece(step.cast_on.count if step.known else None)
            elif isinstance(step, EndStep):
                self.end_piece(step)
            else:
                self.again(step)
        self.work_waiting()
        return self.walk

    def begin_piece(self, count: int | None) -> None:
        """Go on with the needle of another piece, which may fail in a place of its own."""
        self.now = self.began = count
        self.waiting, self.done = [], 0
        self.jammed = self.ended = False

    def end_piece(self, step: EndStep) -> None:
        """Bind off all: compare the number of stitches that the end says there are with the true one."""
        self.work_waiting()
        printed = step.end.count
        if printed is not None and self.now is not None and not step.end.agrees(self.now) and self.walk.rows:
            self.walk.wrong_counts.append(WrongCount(self.walk.rows[-1].row, printed, self.now, end=step))
        self.ended = True

    def row(self, row: Row) -> None:
        """List a row; one that cannot be read ends the counts."""
        if row.readable:
            self.waiting.append(_Worked(row))
            return
        self.work_waiting()
        self.walk.rows.append(Followed(row, self.now, None))
        self.lose()

    def lose(self) -> None:
        """Go on without counts."""
        self.now = None
        self.waiting, self.done = [], 0

    def work_waiting(self) -> None:
        """Work the rows that wait, and note their counts."""
        fresh = self.waiting[self.done :]
        if self.now is None or self.began is None:
            self.walk.rows += [Followed(worked.row, None, None) for worked in fresh if worked.again is None]
            self.waiting, self.done = [], 0
            return
        run, start = (self.waiting, self.began) if self.stateful else (fresh, self.now)
        steps = work([w.row.parts for w in run], start, self.vocabulary, [w.row.side for w in run], self.maps)
        for worked, step in zip(fresh, steps[len(run) - len(fresh) :], strict=True):
            self.note(worked, step.before, step.after, step.misfit)
        if steps:
            self.now = steps[-1].after
        self.done = len(self.waiting)
        if not self.stateful or self.now is None:
            self.waiting, self.done = [], 0

    def note(self, worked: _Worked, before: int | None, after: int | None, misfit: Misfit | None) -> None:
        """Note one row as worked."""
        if worked.again is None:
            self.walk.rows.append(Followed(worked.row, before, after))
        if misfit is not None and misfit.slug == UNPROVED:
            self.walk.unproved = self.walk.unproved or worked.row
        elif misfit is not None and not self.jammed:
            self.jammed = True
            self.walk.jams.append(Jam(worked.row, misfit, worked.again, worked.working))
        printed = worked.row.stated
        if worked.again is None and printed is not None and after is not None and printed != after:
            self.walk.wrong_counts.append(WrongCount(worked.row, printed, after))

    # -- repeat lines

    def again(self, step: AgainStep) -> None:
        """Work the rows of a repeat line again, as often as it says."""
        rows = [self.rows[index] for index in step.rows]
        self.work_waiting()
        if not all(row.readable for row in rows):
            self.lose()
            return
        chain = count([row.parts for row in rows], self.vocabulary, [row.side for row in rows], self.maps)
        passes, before = self.passes_between_markers(step, rows, chain), self.now
        if passes is not None:
            self.work_passes(step, rows, chain, passes)
        elif chain.drift != 0 and not chain.proved_at_count_only:
            self.lose()
            self.now = self.began = self.remaining(step, chain, before)
        self.change(step)
        self.check_count(step, rows, before)

    def remaining(self, step: AgainStep, chain: Chain, before: int | None) -> int | None:
        """Return the stitches at which a repeat line stops, where nothing says whether they are reached."""
        remain, drift = step.again.remain, chain.drift
        if step.again.loose:  # "Cont in this way until 3 sts remain" names no rows: the number is all that is told.
            return remain
        if before is not None or remain is None or drift is None or drift > 0:
            return None
        return remain if chain.admits(remain - drift) else None

    def change(self, step: AgainStep) -> None:
        """Add what a repeat line adds in its last row; where that is not told, go on from what is printed."""
        change = step.again.change
        if change is None:
            self.lose()
            self.now = self.began = step.again.remain if step.again.stated is None else step.again.stated
        elif change and self.now is not None:
            self.now = self.began = self.now + change

    def passes_between_markers(self, step: AgainStep, rows: Sequence[Row], chain: Chain) -> int | None:
        """Return how many further passes a repeat line asks for; one is worked where the rows count to markers."""
        remain, now = step.again.remain, self.now
        if remain is None or now is None or not self.stateful or chain.starts:
            return self.passes(step, chain)
        run = [*(worked.row for worked in self.waiting), *rows]
        last = work(
            [row.parts for row in run], self.began or now, self.vocabulary, [row.side for row in run], self.maps
        )
        drift = (last[-1].after or now) - now
        if not drift or (remain - now) % drift or not 0 < (remain - now) // drift <= MOST_PASSES_WORKED:
            return self.passes(step, chain)
        return (remain - now) // drift

    def passes(self, step: AgainStep, chain: Chain) -> int | None:
        """Return how many further passes a repeat line asks for, None where it does not say or cannot reach it."""
        again = step.again
        if again.remain is not None:
            found = None if self.now is None else passes_until(chain, self.now, again.remain)
            if found is None and again.loose:
                return None
            reached = None if self.now is None else found is not None
            self.walk.repeated.append(Repeated(step, chain, self.now, reached))
            return found
        fits = self.now is None or passes_from(chain, self.now) != 0 if chain.starts else True
        fits = fits and (chain.drift == 0 or not chain.starts or again.passes is not None or can_repeat(chain))
        self.walk.repeated.append(Repeated(step, chain, self.now, fits_again=fits))
        return again.passes

    def work_passes(self, step: AgainStep, rows: Sequence[Row], chain: Chain, passes: int) -> None:
        """Work the passes one by one as far as needed; those that repeat themselves follow by arithmetic."""
        needed = min(passes, 1 if chain.drift == 0 and not self.stateful else MOST_PASSES_WORKED)
        needed = min(needed, MOST_ROWS_WORKED // max(1, len(rows)))
        self.waiting += [_Worked(row, step, working + 1) for working in range(needed) for row in rows]
        self.work_waiting()
        left = passes - needed
        if not left or chain.drift == 0 or self.now is None:
            return
        possible = passes_from(chain, self.now)
        if chain.drift is None or self.stateful:
            self.lose()
        elif possible is None or left <= possible:
            self.now = self.began = self.now + chain.drift * left
        else:
            self.now = self.began = self.now + chain.drift * possible
            self.waiting += [_Worked(row, step, needed + possible + 1) for row in rows]
            self.work_waiting()

    def check_count(self, step: AgainStep, rows: Sequence[Row], before: int | None) -> None:
        """Compare the count printed after a repeat line with the true one."""
        printed = step.again.stated
        if printed is not None and self.now is not None and before is not None and printed != self.now:
            self.walk.wrong_counts.append(WrongCount(rows[-1], printed, self.now, step))
