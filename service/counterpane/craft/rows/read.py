"""The reader of a row's words: brackets, stars and stitches to a tree, going on after a fault.

The reader keeps its own stack of open brackets and stars, so that nesting costs no recursion; it is limited all the
same, because everything that walks a tree later is recursive.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from counterpane.craft.rows.cursor import STITCH_WORDS, Cursor
from counterpane.craft.rows.lexicon import Lexicon, lexicon_of
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.phrases import Phrase, take_phrase
from counterpane.craft.rows.stops import Stop, take_count, take_stop
from counterpane.craft.rows.tree import Group, IntoOne, Node, OpenRepeat, Place, Work
from counterpane.craft.rows.words import Token, normal_lines, tokens
from counterpane.craft.stitches import Vocabulary

DEEPEST = 40
MOST_TAILS = 8
_CLOSES = {"(": ")", "[": "]", "{": "}"}
_REPEAT = ("rep", "repeat")
_INTO_ONE = (
    "all in next st", "all into next st", "in next st", "into next st", "in the next st", "into the next st",
    "in next stitch", "into next stitch", "in the next stitch", "into the next stitch", "all in 1 st", "all in one st",
    "in 1 st", "into 1 st", "in same st", "into same st", "in the same st", "into the same stitch", "in 1 stitch",
    "all in the next st", "all into the next st", "all in same st", "in first st", "in next loop",
)  # fmt: skip
_INTO_DOUBLE = ("into next double yo", "in next double yo", "into double yo", "in double yo", "into the double yo")
_FROM_START = (
    "from beginning of row",
    "from the beginning of the row",
    "from beg of row",
    "from beg",
    "from the beginning",
    "from beginning",
)
_FILLERS = frozenset({"then", "and", "also", "finally", "now"})
_LAST_REPEAT = (
    "ending last rep with",
    "end last rep with",
    "ending last rep",
    "end last rep",
    "ending last repeat with",
    "ending last repeat",
    "end last repeat with",
    "end last repeat",
)
_WHOLE = frozenset({"k", "p"})
_COUNT_TAILS = frozenset(
    {"rem", "remain", "remaining", "now", "total", "left", "in", "all", "on", "needle", "each", "the"}
)


@dataclass(frozen=True, slots=True)
class ReadRow:
    """What a row's words say: the nodes, the faults met, a printed count with its place, and how the row was taken.

    `whole` says that the list was taken as one repeat; `may_be_whole` that it would be, had the text a multiple.
    """

    parts: tuple[Node, ...]
    faults: tuple[Fault, ...] = ()
    stated: int | None = None
    stated_place: Place | None = None
    whole: bool = False
    start: Place | None = None

    @property
    def readable(self) -> bool:
        """Whether the row can be counted."""
        return not any(fault.fatal for fault in self.faults)


def read_row(text: str, vocabulary: Vocabulary) -> ReadRow:
    """Read the words of one row, without its label; places count from 1 in the text given."""
    run = [token for line in normal_lines(text) for token in tokens(line)]
    return read_tokens(run, vocabulary)


def read_tokens(run: Sequence[Token], vocabulary: Vocabulary) -> ReadRow:
    """Read the tokens of one row, which may come from several lines."""
    return _Reader(run, lexicon_of(vocabulary)).read()


@dataclass(slots=True)
class _Frame:
    """An open bracket or star, or the row itself (opener ""), with what has been read inside."""

    opener: str
    place: Place
    items: list[Node] = field(default_factory=list)
    bare: bool = False
    since: int = 0


class _Reader:
    """One reading of one row."""

    def __init__(self, run: Sequence[Token], lexicon: Lexicon, inner: bool = False) -> None:
        self.cursor = Cursor(run)
        self.lexicon = lexicon
        self.frames = [_Frame("", run[0].place if run else Place(1, 1))]
        self.faults: list[Fault] = []
        self.stated: int | None = None
        self.stated_place: Place | None = None
        self.whole = False
        self.deep = False
        self.lists = 0
        self.inner = inner

    @property
    def frame(self) -> _Frame:
        return self.frames[-1]

    def read(self) -> ReadRow:
        """Read to the end and return what was understood."""
        start = self.cursor.run[0].place if self.cursor else None
        while self.cursor and not self.deep:
            before = self.cursor.at
            self.step()
            if self.cursor.at == before:
                self.unknown()
        while len(self.frames) > 1:
            self.unclosed(self.frames.pop())
        parts = self.finish(self.frame)
        return ReadRow(parts, tuple(self.faults), self.stated, self.stated_place, self.whole, start)

    def step(self) -> None:
        """Read one sign, clause or stitch phrase."""
        kind = self.cursor.token.kind
        if kind == "pause" or self.cursor.word() in _FILLERS:
            self.cursor.at += 1
        elif self.count_printed():
            return
        elif kind == "open":
            self.open(self.cursor.word())
        elif kind == "close":
            self.close()
        elif kind == "star":
            self.star()
        elif self.cursor.word() in _REPEAT:
            self.repeat()
        elif stop := take_stop(self.cursor):
            self.stop_here(stop)
        else:
            self.stitch()

    # -- stitches

    def stitch(self) -> None:
        """Read one stitch phrase into the open frame."""
        if self.cursor.word() == "work" and self.cursor.word(1) != "in":
            self.work_across()
            return
        if self.cursor.word() in ("end", "ending"):
            self.ending()
            return
        phrase = take_phrase(self.cursor, self.lexicon)
        if phrase is None:
            return
        self.doubt(phrase)
        stop = take_stop(self.cursor) if phrase.bare else None
        if stop and isinstance(phrase.node, Work):
            self.put(_plain(phrase.node, stop))
        else:
            self.put(phrase.node, bare=phrase.bare)

    def work_across(self) -> None:
        """Read "work to last 3 sts" as work in pattern; a bare "work" before a stitch says nothing."""
        place = self.cursor.place
        self.cursor.at += 1
        number = self.cursor.number()
        if stop := take_stop(self.cursor):
            self.put(_plain(Work("patt", place=place), stop))
        elif number is not None and self.cursor.word(1) in STITCH_WORDS:
            self.cursor.at += 2
            self.cursor.take("in pattern", "in patt")
            self.put(Work("patt", number, place=place))

    def ending(self) -> None:
        """Move past "end" or "ending with" before the rest of a row; read an altered last repeat."""
        if self.cursor.take(*_LAST_REPEAT):
            self.last_repeat()
            return
        self.cursor.at += 1
        self.cursor.take("with", "row with")

    def last_repeat(self) -> None:
        """Read the parts of an altered last repeat up to the end of the row into the repeat before it."""
        earlier = self.frame.items[-1] if self.frame.items else None
        if self.inner or not isinstance(earlier, OpenRepeat):
            return
        rest = _Reader(self.cursor.run[self.cursor.at :], self.lexicon, inner=True).read()
        if rest.parts:
            self.cursor.at = len(self.cursor.run)
            self.faults += rest.faults
            self.stated, self.stated_place = rest.stated, rest.stated_place
            self.frame.items[-1] = replace(earlier, last=rest.parts)

    def doubt(self, phrase: Phrase) -> None:
        """Note a word with several meanings in the trade; those that differ in stitches cannot be counted."""
        known = self.lexicon.vocabulary.stitches
        entries = [known[key] for key in phrase.keys if key in known]
        readings = tuple(reading for entry in entries for reading in entry.ambiguous)
        if readings and isinstance(phrase.node, Work):
            fatal = any(entry.key in ("inc", "dec") for entry in entries)
            self.faults.append(Fault("ambiguous-term", phrase.node.place, phrase.word, readings=readings, fatal=fatal))

    def put(self, node: Node, bare: bool = False) -> None:
        """Add a node to the open frame."""
        self.frame.items.append(node)
        self.frame.bare = bare

    # -- brackets

    def open(self, opener: str) -> None:
        """Open a bracket, unless too many are open."""
        place = self.cursor.place
        self.cursor.at += 1
        if self.too_deep(place, opener):
            return
        self.frames.append(_Frame(opener, place))

    def too_deep(self, place: Place, sign: str) -> bool:
        """Tell whether so much is open that no more is read; said once."""
        if len(self.frames) + self.lists <= DEEPEST:
            return False
        if not self.deep:
            self.faults.append(Fault("brackets-too-deep", place, sign))
        self.deep = True
        return True

    def close(self) -> None:
        """Close the innermost bracket, and read what stands behind it."""
        token = self.cursor.token
        self.cursor.at += 1
        if self.deep:
            return
        while self.frame.opener and _CLOSES.get(self.frame.opener) is None:
            self.unclosed(self.frames.pop())
        if not self.frame.opener:
            self.faults.append(Fault("bracket-not-closed", token.place, token.text, extra="close"))
            return
        frame = self.frames.pop()
        if _CLOSES[frame.opener] != token.text:
            self.faults.append(Fault("bracket-not-closed", frame.place, frame.opener))
        self.after_bracket(frame)

    def after_bracket(self, frame: _Frame) -> None:
        """Put a closed bracket into the frame around it, by the words that follow it."""
        parts = self.finish(frame)
        if not parts:
            return
        if self.cursor.take(*_INTO_DOUBLE):
            self.put(IntoOne(parts, 2, frame.place))
        elif self.cursor.take(*_INTO_ONE):
            self.put(IntoOne(parts, 1, frame.place))
        elif (times := self.cursor.take_times()) is not None:
            self.put(Group(parts, times, place=frame.place))
        elif stop := self.bracket_stop():
            self.put(OpenRepeat(parts, stop.rest, marker=stop.marker, place=frame.place))
        else:
            self.frame.items.extend(parts)
            self.frame.bare = False

    def bracket_stop(self) -> Stop | None:
        """Read "to end" behind a bracket, with or without the word repeat."""
        before = self.cursor.at
        self.cursor.take(", rep", "; rep", "rep", "repeat", ", repeat")
        stop = take_stop(self.cursor)
        if stop is None:
            self.cursor.at = before
        return stop

    def unclosed(self, frame: _Frame) -> None:
        """Note a bracket or star without an end, and keep what stood inside."""
        rule = "bracket-not-closed" if frame.opener in _CLOSES else "repeat-without-end"
        if not self.deep:
            self.faults.append(Fault(rule, frame.place, frame.opener))
        self.frame.items.extend(frame.items)

    # -- stars and repeats

    def star(self) -> None:
        """Open a repeat at a star, or end one at the second of a pair."""
        mark, place = self.cursor.word(), self.cursor.place
        self.cursor.at += 1
        if self.frame.opener == mark and self.frame.items:
            self.pair_of_stars(mark)
        elif not self.too_deep(place, mark):
            self.frames.append(_Frame(mark, place))

    def pair_of_stars(self, mark: str) -> None:
        """End a repeat between two stars: "*k2, p2*; rep between *s to end", "*k2, p2* to last 2 sts"."""
        before = self.cursor.at
        while self.cursor and self.cursor.token.kind == "pause":
            self.cursor.at += 1
        if self.cursor.take(*_REPEAT):
            self.cursor.take(
                f"from {mark} to {mark}", f"between {mark} and {mark}", f"between {mark} s", f"between {mark}s"
            )
            self.cursor.take("between the stars", "between stars", f"from {mark}", "between")
        else:
            self.cursor.at = before
        stop = take_stop(self.cursor) or take_count(self.cursor)
        self.end_star(self.frames.pop(), stop)

    def repeat(self) -> None:
        """Read a repeat clause: "rep from * to last 3 sts", "rep to end", "repeat"."""
        place = self.cursor.place
        self.cursor.at += 1
        self.cursor.take("the")
        if self.cursor.take(*_FROM_START):
            self.repeat_all()
        elif self.cursor.word() == "from" and self.cursor.at + 1 < len(self.cursor.run):
            self.cursor.at += 1
            self.repeat_from(place)
        else:
            self.repeat_all()

    def repeat_from(self, place: Place) -> None:
        """Repeat from the star that is named."""
        mark = self.cursor.word()
        self.cursor.at += 1
        if self.cursor.take(f"to {mark}"):
            pass
        stop = take_stop(self.cursor) or take_count(self.cursor)
        depth = next((i for i in range(len(self.frames) - 1, 0, -1) if self.frames[i].opener == mark), None)
        if depth is None:
            self.faults.append(Fault("repeat-without-start", place, mark))
            return
        while len(self.frames) - 1 > depth:
            self.unclosed(self.frames.pop())
        self.end_star(self.frames.pop(), stop)

    def end_star(self, frame: _Frame, stop: Stop | None) -> None:
        """Put a starred repeat into the frame around it."""
        parts = self.finish(frame)
        if stop and stop.times is not None:
            self.put(Group(parts, stop.times, stop.doubtful, frame.place))
            if stop.doubtful:
                readings = (f"{stop.times} times in all", f"{stop.times - 1} times in all")
                self.faults.append(Fault("ambiguous-term", frame.place, "times", readings=readings, fatal=False))
        else:
            self.put(
                OpenRepeat(parts, stop.rest if stop else None, marker=bool(stop and stop.marker), place=frame.place)
            )

    def repeat_all(self) -> None:
        """Take everything read since the row or bracket began as the repeat."""
        stop = take_stop(self.cursor) or take_count(self.cursor) or Stop(rest=0)
        self.take_list(stop)

    def stop_here(self, stop: Stop) -> None:
        """Apply a stop to the bare stitch, the star or the list before it."""
        frame = self.frame
        last = frame.items[-1] if frame.items else None
        if frame.bare and isinstance(last, Work):
            frame.items[-1] = _plain(last, stop)
            frame.bare = False
        elif frame.opener not in ("", *_CLOSES):
            self.end_star(self.frames.pop(), stop)
        elif isinstance(last, OpenRepeat) and last.stop is None:
            frame.items[-1] = replace(last, stop=stop.rest, marker=stop.marker)
        else:
            self.take_list(stop)

    def take_list(self, stop: Stop) -> None:
        """Make one repeat of the list that stands in the frame since its last open repeat."""
        frame = self.frame
        first = next((i + 1 for i in range(len(frame.items) - 1, -1, -1) if isinstance(frame.items[i], OpenRepeat)), 0)
        parts = tuple(frame.items[first:])
        if not parts or self.too_deep(parts[0].place, "rep"):
            return
        self.lists += 1
        if stop.times is not None:
            frame.items[first:] = [Group(parts, stop.times, stop.doubtful, parts[0].place)]
            return
        frame.items[first:] = [OpenRepeat(parts, stop.rest, marker=stop.marker, place=parts[0].place)]
        self.whole = True

    # -- ends

    def finish(self, frame: _Frame) -> tuple[Node, ...]:
        """Return what a frame holds; a bare stitch at its very end is worked across the row."""
        items = frame.items
        if items and frame.bare and frame.opener == "" and isinstance(items[-1], Work) and items[-1].stitch in _WHOLE:
            items[-1] = _plain(items[-1], Stop(rest=0))
        return tuple(items)

    def count_printed(self) -> bool:
        """Move past a printed count, bare or in brackets: "(17 sts)", "17 sts."."""
        cursor, ahead = self.cursor, 1 if self.cursor.token.kind == "open" else 0
        number = cursor.number(ahead)
        if number is None or cursor.word(ahead + 1) not in STITCH_WORDS:
            return False
        end = ahead + 2
        while end < ahead + MOST_TAILS and cursor.word(end) in _COUNT_TAILS:
            end += 1
        closed = cursor.at + end < len(cursor.run) and cursor.run[cursor.at + end].kind == "close"
        done = cursor.at + end >= len(cursor.run) or cursor.word(end) in (".", ";")
        if closed if ahead else done:
            self.stated, self.stated_place = number, cursor.run[cursor.at + ahead].place
            cursor.at += end + ahead
            return True
        return False

    def unknown(self) -> None:
        """Note words that mean nothing here, and go on at the next sign."""
        token = self.cursor.token
        self.faults.append(Fault("unknown-term", token.place, token.text))
        self.cursor.at += 1
        while self.cursor and self.cursor.token.kind not in ("pause", "open", "close", "star"):
            if self.cursor.word() in _REPEAT:
                break
            self.cursor.at += 1


def _plain(node: Work, stop: Stop) -> OpenRepeat:
    """Return a single stitch worked across up to a stop."""
    return OpenRepeat((node,), stop.rest, plain=True, marker=stop.marker, place=node.place)
