"""What is open in a row: brackets and stars within each other, and the repeats made when they close.

The nest is a stack of its own, so that nesting costs no recursion; it is limited all the same, because everything that
walks a tree later is recursive.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.stops import Stop
from counterpane.craft.rows.tree import Group, IntoOne, Node, OpenRepeat, Place, Work

DEEPEST = 40
CLOSES = {"(": ")", "[": "]", "{": "}"}
_WHOLE = frozenset({"k", "p", "patt"})


@dataclass(slots=True)
class Frame:
    """An open bracket or star, or the row itself (opener ""), with what has been read inside.

    `bare` says that the last item is a stitch without a number, `pair` where two stitches were slipped as one, `pairs`
    where a pair of stars stood without a stop.
    """

    opener: str
    place: Place
    items: list[Node] = field(default_factory=list)
    bare: bool = False
    pair: int | None = None
    pairs: dict[str, int] = field(default_factory=dict)

    @property
    def is_star(self) -> bool:
        """Whether a star opened it."""
        return self.opener not in ("", *CLOSES)


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
        frame = self.frames.pop()
        if CLOSES[frame.opener] != sign:
            self.faults.append(Fault("bracket-not-closed", frame.place, frame.opener))
        return frame

    def _abandon(self) -> None:
        """Note a bracket or star without an end, and keep what stood inside."""
        frame = self.frames.pop()
        rule = "bracket-not-closed" if frame.opener in CLOSES else "repeat-without-end"
        if not self.deep:
            self.faults.append(Fault(rule, frame.place, frame.opener))
        self.frame.items.extend(frame.items)

    def end(self) -> tuple[Node, ...]:
        """Close all that is open and return the row; a bare stitch at its very end is worked across."""
        while len(self.frames) > 1:
            self._abandon()
        items = self.frame.items
        last = items[-1] if items else None
        alone = not any(isinstance(node, OpenRepeat) and node.stop is None for node in items)
        if self.frame.bare and isinstance(last, Work) and last.stitch in _WHOLE and alone:
            items[-1] = plain(last, Stop(rest=0))
        return tuple(items)

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
            readings = (f"{stop.times} times in all", f"{stop.times - 1} times in all")
            self.faults.append(Fault("ambiguous-term", place, "times", readings=readings, fatal=False))
        return Group(parts, stop.times, stop.doubtful, place)

    def stop_here(self, stop: Stop) -> None:
        """Apply a stop to the bare stitch, the star or the list before it."""
        frame = self.frame
        last = frame.items[-1] if frame.items else None
        if frame.bare and isinstance(last, Work):
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
        first = next((i + 1 for i in range(len(frame.items) - 1, -1, -1) if isinstance(frame.items[i], OpenRepeat)), 0)
        parts = tuple(frame.items[first:])
        if not parts or self._too_deep(parts[0].place, "rep"):
            return
        self.lists += 1
        frame.bare = False
        frame.items[first:] = [self.repeated(parts, stop, parts[0].place)]
        self.whole = self.whole or stop.times is None


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
