"""Two writings of a pattern held against each other: every line that differs, once, with what to do about it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.erratum import WORKED, Change, Line
from counterpane.craft.erratum.advice import advice

Lines = Sequence[Line]
Keyed = Mapping[str, Line]


@dataclass(frozen=True, slots=True)
class _Pair:
    """A line in both writings; None where one of them has none."""

    old: Line | None
    fresh: Line | None

    @property
    def shown(self) -> Line:
        """The line that says where the change stands: the fresh one, where there is one."""
        line = self.fresh or self.old
        assert line is not None
        return line

    @property
    def differs(self) -> bool:
        """Tell whether a reader reads another line, or is left with another count."""
        if self.old is None or self.fresh is None:
            return True
        return (self.old.text, self.old.stitches) != (self.fresh.text, self.fresh.stitches)

    @property
    def first_row(self) -> int | None:
        """The row of the piece at which the texts part, as the old text counts them; None for what is not worked.

        A repeat that is worked more often, or less, parts only after the fewer of its rows.
        """
        line = self.old or self.fresh
        if line is None or line.sort not in WORKED or line.first_row is None:
            return None
        rows = {each.rows for each in (self.old, self.fresh) if each}
        return line.first_row + min(rows) if line.sort == "repeat" and len(rows) > 1 else line.first_row


def changes(old: Lines, fresh: Lines, *, for_safety: bool = False) -> tuple[Change, ...]:
    """Return what differs, safety first, then in reading order; `for_safety` says that a fault of safety is mended.

    Each differing key stands in it exactly once, and no other.
    """
    counts_hold = {piece: _counts(old, piece) == _counts(fresh, piece) for piece in {line.piece for line in fresh}}
    found = []
    for pair in _pairs(old, fresh):
        may_stay = not for_safety and counts_hold.get(pair.shown.piece, False) and _may_stay(pair, old, fresh)
        found.append(_change(pair, may_stay, for_safety))
    return tuple(sorted(found, key=lambda change: not change.is_of_safety))


def in_sizes(found: Mapping[str, Sequence[Change]]) -> tuple[Change, ...]:
    """Return the changes of all sizes, by their names, as one list; what is alike in several is listed once for them.

    A pattern of one size has the name "" and names no size.
    """
    merged: dict[Change, list[str]] = {}
    for size, each in found.items():
        for change in each:
            merged.setdefault(change, []).append(size)
    together = [replace(change, sizes=tuple(size for size in sizes if size)) for change, sizes in merged.items()]
    return tuple(sorted(together, key=lambda change: not change.is_of_safety))


def _pairs(old: Lines, fresh: Lines) -> Iterator[_Pair]:
    """Give the lines that differ in the order of the fresh text; one that it leaves out stands where it stood."""
    before, after = {line.key: line for line in old}, {line.key: line for line in fresh}
    for key in _merged(tuple(before), tuple(after)):
        pair = _Pair(before.get(key), after.get(key))
        if pair.differs:
            yield pair


def _merged(before: Sequence[str], after: Sequence[str]) -> Iterator[str]:
    """Give the keys of both texts once each, those left out behind the key that they followed."""
    kept, following = set(after), dict[str | None, list[str]]()
    last: str | None = None
    for key in before:
        if key in kept:
            last = key
        else:
            following.setdefault(last, []).append(key)
    yield from following.get(None, ())
    for key in after:
        yield key
        yield from following.get(key, ())


def _counts(lines: Lines, piece: str) -> dict[str, tuple[int, ...]]:
    """Return the stitches of each section of a piece, row by row; once where all its rows leave the same."""
    found: dict[str, list[int]] = {}
    for line in lines:
        if line.piece == piece and line.stitches is not None:
            found.setdefault(line.place.section, []).append(line.stitches)
    return {name: tuple(each) if len(set(each)) > 1 else tuple(each[:1]) for name, each in found.items()}


def _may_stay(pair: _Pair, old: Lines, fresh: Lines) -> bool:
    """Tell whether work by the old text can stay where all counts hold: its section ends on the same side."""
    if pair.shown.sort not in ("row", "repeat"):
        return pair.shown.sort in ("cast-on", "bind-off")
    section = pair.shown.place.section
    return (_rows(old, section) - _rows(fresh, section)) % 2 == 0


def _rows(lines: Lines, section: str) -> int:
    return sum(line.rows for line in lines if line.place.section == section)


def _change(pair: _Pair, may_stay: bool, for_safety: bool) -> Change:
    old, fresh, shown = pair.old, pair.fresh, pair.shown
    row = pair.first_row
    past = None if row is None else max(0, row - 1)
    return Change(
        key=shown.key,
        sort=shown.sort,
        place=shown.place,
        old=old.text if old else None,
        fresh=fresh.text if fresh else None,
        old_stitches=old.stitches if old else None,
        fresh_stitches=fresh.stitches if fresh else None,
        piece=shown.piece,
        past_row=past,
        may_stay=may_stay,
        advice=advice(shown, past, may_stay=may_stay, for_safety=for_safety, left_out=fresh is None),
    )
