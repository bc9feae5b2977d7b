"""What is open in a row: brackets and stars within each other, and the repeats made when they close.

The nest is a stack of its own, so that nesting costs no recursion; it is limited all the same, because everything that
walks a tree later is recursive.
"""

from __future__ import annotations

from dataclasses import replace

from counterpane.craft.rows.frames import CLOSES, Frame
from counterpane.craft.rows.gathers import Into, gathered_from
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.stops import Stop
from counterpane.craft.rows.tree import BindOff, CastOn, Group, IntoOne, Node, OpenRepeat, Place, Work
from counterpane.craft.rows.units import first_units, shortest_period

DEEPEST = 40  # House.
_WHOLE = frozenset({"k", "p", "patt"})
_TIMES = {1: "once", 2: "twice"}


class Nest:
    """The open frames of one row, innermost last, and the faults of opening and closing them."""

    def __init__(self, start: Place) -> None:
        self.frames = [Frame("", start)]
        self.faults: list[Fault] = []
        self.whole = False
        self.deep = False
        self.lists = 0

    @property
    def frame(self) -> Frame:
        """The innermost frame."""
        return self.frames[-1]

    def put(self, node: Node, bare: bool = False, together: bool = False) -> None:
        """Add a node to the innermost frame; `together` for stitches slipped as one, over which "psso" passes both."""
        frame = self.frame
        if _is_none(node):
            return
        if isinstance(node, Work) and node.stitch == "psso" and frame.pair == len(frame.items) - 2:
            node = replace(node, stitch="p2sso")
        if together:
            frame.pair = len(frame.items)
        frame.items.append(node)
        frame.bare = bare

    def open(self, opener: str, place: Place) -> None:
        """Open a bracket or star, unless too many are open."""
        if not self._too_deep(place, opener):
            self.frames.append(Frame(opener, place))

    def _too_deep(self, place: Place, sign: str) -> bool:
        """Tell whether so much is open that no more is read; said once."""
        if len(self.frames) + self.lists <= DEEPEST:
            return False
        if not self.deep:
            self.faults.append(Fault("brackets-too-deep", place, sign))
        self.deep = True
        return True

    def close_bracket(self, sign: str, place: Place) -> Frame | None:
        """Close the innermost bracket; None where none is open."""
        if not any(frame.opener in CLOSES for frame in self.frames):
            self.faults.append(Fault("bracket-not-closed", place, sign, extra="close"))
            return None
        while self.frame.is_star:
            self._abandon()
        self.settle(None)
        frame = self.frames.pop()
        if CLOSES[frame.opener] != sign:
            self.faults.append(Fault("bracket-not-closed", frame.place, frame.opener))
        return frame

    def _abandon(self) -> None:
        """Note a bracket or star without an end, and keep what stood inside."""
        self.settle(None)
        frame = self.frames.pop()
        rule = "bracket-not-closed" if frame.opener in CLOSES else "repeat-without-end"
        if not self.deep:
            self.faults.append(Fault(rule, frame.place, frame.opener))
        self.frame.items.extend(frame.items)

    def end(self) -> tuple[Node, ...]:
        """Close all that is open and return the row; a bare stitch at its very end is worked across."""
        while len(self.frames) > 1:
            self._abandon()
        self.settle(None)
        items = self.frame.items
        last = items[-1] if items else None
        alone = not any(isinstance(node, OpenRepeat) and node.stop is None for node in items)
        if self.frame.bare and isinstance(last, Work) and last.stitch in _WHOLE and alone:
            items[-1] = plain(last, Stop(rest=0))
        return tuple(items)

    # -- clauses and units

    def pause(self) -> None:
        """End a clause of the list at a semicolon, a full stop or a dash."""
        if self.frame.going is None:
            self.settle(None)
        self.frame.pause()

    def settle(self, stop: Stop | None) -> bool:
        """Join the two units behind "alternately", or what is to be continued; tell whether there were any."""
        frame = self.frame
        if frame.going is not None:
            going, frame.going = frame.going, None
            self.go_on(going, stop or Stop(rest=0))
            return True
        if frame.alternate is None:
            return False
        (start, times, word), frame.alternate = frame.alternate, None
        end = first_units(frame.items, start, 2)
        if end == start:
            self.faults.append(Fault("unknown-term", word.place, word.text))
            return False
        parts = tuple(frame.items[start:end])
        rest = frame.items[end:]
        stop = Stop(times=times) if times is not None else stop or Stop(rest=None if rest else 0)
        frame.items[start:] = [self.repeated(parts, stop, parts[0].place), *rest]
        frame.bare = False
        return True

    def gather_back(self, into: Into, first: int = 0) -> int:
        """Work the single stitches at the end of the clause all into one; return how many those are, 0 for none.

        Those before the index `first` stay outside.
        """
        frame = self.frame
        start = gathered_from(frame.items, max(first, frame.clause), into)
        parts = tuple(frame.items[start:])
        if not parts:
            return 0
        began = parts[0].parts if isinstance(parts[0], IntoOne) else parts[:1]
        frame.items[start:] = [IntoOne((*began, *parts[1:]), into.loops, parts[0].place)]
        frame.bare = False
        return len(began) + len(parts) - 1

    def fold(self, start: int, stop: Stop) -> None:
        """Make one repeat of the items from an index on."""
        frame = self.frame
        parts = tuple(frame.items[start:])
        if not parts or self._too_deep(parts[0].place, "rep"):
            return
        self.lists += any(isinstance(part, Group | OpenRepeat) for part in parts)
        frame.items[start:] = [self.repeated(parts, stop, parts[0].place)]
        frame.bare = False
        frame.clause, frame.earlier = min(frame.clause, start), min(frame.earlier, start)

    def go_on(self, start: int | None, stop: Stop) -> None:
        """Repeat what is to be continued: from an index on, or the shortest list that has been said so far.

        What stands before it and says the same once more is part of the repeat.
        """
        items = self.frame.items
        if start is None:
            first = self.frame.since_repeat()
            start = len(items) - shortest_period(items[first:])
        said = items[start:]
        while said and start >= len(said) and items[start - len(said) : start] == said:
            del items[start - len(said) : start]
            start -= len(said)
        self.fold(start, stop)

    # -- repeats

    def depth_of(self, mark: str) -> int | None:
        """Return which open frame a star mark names, the innermost of its kind; "stars" names any."""
        named = (index for index in range(len(self.frames) - 1, 0, -1) if self._is_named(self.frames[index], mark))
        return next(named, None)

    @staticmethod
    def _is_named(frame: Frame, mark: str) -> bool:
        return frame.opener == mark or (mark == "stars" and frame.is_star)

    def end_star(self, depth: int, stop: Stop | None, place: Place) -> None:
        """Put a starred repeat into the frame around it; what is open inside it has no end.

        A star with nothing behind it stood at the end of a repeat whose first star is missing.
        """
        while len(self.frames) - 1 > depth:
            self._abandon()
        self.settle(None)
        frame = self.frames.pop()
        if not frame.items:
            self.faults.append(Fault("repeat-without-start", place, frame.opener))
            return
        self.put(self.repeated(tuple(frame.items), stop or Stop(), frame.place))

    def end_at_other_mark(self, depth: int, stop: Stop | None) -> None:
        """End "*k2, p2** k1; rep from * to **": what stands between the marks is worked, and repeated."""
        behind = [node for frame in self.frames[depth + 1 :] for node in frame.items]
        frame = self.frames[depth]
        del self.frames[depth:]
        if not behind:
            self.put(self.repeated(tuple(frame.items), stop or Stop(), frame.place))
            return
        self.frame.items += [*frame.items, *behind]
        self.put(self._once_less(tuple(frame.items), stop or Stop(), frame.place))

    def end_pair(self, mark: str, parts: tuple[Node, ...], place: Place, stop: Stop | None) -> None:
        """Put a repeat between two stars; one without a stop may be named again later in the row."""
        if stop is None:
            self.frame.pairs[mark] = len(self.frame.items)
        self.put(self.repeated(parts, stop or Stop(), place))

    def repeat_pair(self, mark: str, stop: Stop | None) -> bool:
        """Repeat a pair of stars that stands further up: "*k2, p2*, k4; rep from * to * twice more"."""
        index = self.frame.pairs.pop(mark, len(self.frame.items))
        pair = self.frame.items[index] if index < len(self.frame.items) else None
        if not isinstance(pair, OpenRepeat):
            return False
        self.frame.items[index : index + 1] = pair.parts
        self.put(self._once_less(pair.parts, stop or Stop(), pair.place))
        return True

    def _once_less(self, parts: tuple[Node, ...], stop: Stop, place: Place) -> Node:
        """Make a repeat of parts that have been worked once before it."""
        times = stop.times - 1 if stop.times else None
        return self.repeated(parts, replace(stop, times=times), place)

    def repeated(self, parts: tuple[Node, ...], stop: Stop, place: Place) -> Node:
        """Make a repeat of parts: so many times, or up to a stop."""
        if stop.times is None:
            return OpenRepeat(parts, stop.rest, marker=stop.marker, place=place)
        if stop.doubtful:
            readings = tuple(f"{_TIMES.get(many, f'{many} times')} in all" for many in (stop.times, stop.times - 1))
            self.faults.append(Fault("ambiguous-term", place, "times", readings=readings, fatal=False))
        return Group(parts, stop.times, stop.doubtful, place)

    def stop_here(self, stop: Stop, apart: bool = False) -> None:
        """Apply a stop to the bare stitch, the star or the list before it.

        A stop that stands `apart`, behind a comma, is that of the list: "make 1, knit 2 together, to the end".
        """
        if self.settle(stop):
            return
        frame = self.frame
        last = frame.items[-1] if frame.items else None
        listed = apart and isinstance(last, Work) and last.stitch not in _WHOLE
        if frame.bare and isinstance(last, Work) and not listed:
            frame.items[-1] = plain(last, stop)
            frame.bare = False
        elif frame.is_star:
            self.end_star(len(self.frames) - 1, stop, frame.place)
        elif isinstance(last, OpenRepeat) and last.stop is None:
            frame.items[-1] = replace(last, stop=stop.rest, marker=stop.marker)
        else:
            self.repeat_list(stop)

    def open_end(self) -> None:
        """Let the stitches that a row ends with decide where its repeat stops: "rep from * across, ending k2"."""
        items = self.frame.items
        last = items[-1] if items else None
        if isinstance(last, OpenRepeat) and last.stop == 0 and not (last.plain or last.marker):
            items[-1] = replace(last, stop=None)

    def repeat_list(self, stop: Stop) -> None:
        """Make one repeat of the list that stands in the frame since its last open repeat."""
        frame = self.frame
        self.settle(None)
        first = frame.since_repeat()
        parts = tuple(frame.items[first:])
        self.fold(first, stop)
        self.whole = self.whole or (bool(parts) and stop.times is None)


def _is_none(node: Node) -> bool:
    """Tell whether a node is worked no time, as in one size of several: "k0", "(k1, p1) 0 times"."""
    return isinstance(node, Work | Group | BindOff | CastOn) and node.times == 0


def plain(node: Work, stop: Stop) -> OpenRepeat:
    """Return a single stitch worked across up to a stop."""
    return OpenRepeat((node,), stop.rest, plain=True, marker=stop.marker, place=node.place)


def from_cable_needle(parts: tuple[Node, ...]) -> tuple[Node, ...]:
    """Return the parts with their stitches taken from the cable needle."""
    return tuple(_held(node) for node in parts)


def _held(node: Node) -> Node:
    if isinstance(node, Work):
        return replace(node, held=True)
    return replace(node, parts=from_cable_needle(node.parts)) if isinstance(node, Group | IntoOne) else node
