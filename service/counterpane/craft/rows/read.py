"""The reader of a row's words: brackets, stars and stitches to a tree, going on after a fault.

Each kind of clause says with which words it may begin; at a word only those are tried, and a stitch after them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from counterpane.craft.records import record
from counterpane.craft.rows import commands
from counterpane.craft.rows.cursor import Cursor, without_points
from counterpane.craft.rows.frames import CLOSES
from counterpane.craft.rows.lexicon import Lexicon, lexicon_of
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.reading import Reading
from counterpane.craft.rows.repeats import (
    REPEAT,
    bracketed_repeat,
    close_bracket,
    letter_mark,
    star,
)
from counterpane.craft.rows.row_clauses import KINDS, NUMBERED, Clause, take_note
from counterpane.craft.rows.stitching import take_plain, take_stitch
from counterpane.craft.rows.stops import Stop
from counterpane.craft.rows.tree import Marker, Node, OpenRepeat, Place, Work
from counterpane.craft.rows.words import Token, normal_lines, tokens
from counterpane.craft.rows.workings import MARKERS
from counterpane.craft.stitches import Terms, Vocabulary

_ROW = phrases(*ways("the|each|every", "row|round|needle"))
_ENDS = ("end", "ending")
MOST_FATAL = 30
"""Places of a row that cannot be read before the rest of it is left unread; house."""
_CLAUSE_ENDS = frozenset(";.-")
_INSTEAD = phrases(*ways("instead of", "|the|the last|last|the final"))
_MOST_EXCHANGED = 24
_LAST_REPEAT = phrases(*ways("ending|end", "|the", "last", "rep|repeat", "|with"))

ELLIPSIS = [".", ".", "."]
"""An ellipsis as signs, by which a row goes on as it began."""


@record
class ReadRow:
    """What a row's words say: the nodes, the faults met, a printed count with its place, and where it begins.

    `whole` says that the list was taken as one repeat, `old` that it is in the words of handbooks.
    """

    parts: tuple[Node, ...]
    faults: tuple[Fault, ...] = ()
    stated: int | None = None
    stated_place: Place | None = None
    whole: bool = False
    start: Place | None = None
    old: bool = False

    @property
    def readable(self) -> bool:
        """Whether the row can be counted."""
        return not any(fault.fatal for fault in self.faults)


def read_row(text: str, vocabulary: Vocabulary, terms: Terms | None = None) -> ReadRow:
    """Read the words of one row, without its label; places count from 1 in the text given."""
    run = [token for line in normal_lines(text) for token in tokens(line)]
    return read_tokens(run, vocabulary, terms)


def read_tokens(run: Sequence[Token], vocabulary: Vocabulary, terms: Terms | None = None) -> ReadRow:
    """Read the tokens of one row, which may come from several lines."""
    return _read(without_points(run), lexicon_of(vocabulary), terms)


def reads_well(run: Sequence[Token], vocabulary: Vocabulary, terms: Terms | None = None) -> bool:
    """Tell whether words say stitches and nothing unknown; what follows an unknown word is not looked at."""
    row = _read(without_points(run), lexicon_of(vocabulary), terms, known_only=True)
    return bool(row.parts) and not any(fault.rule == "unknown-term" for fault in row.faults)


def _read(
    run: Sequence[Token], lexicon: Lexicon, terms: Terms | None, inner: bool = False, known_only: bool = False
) -> ReadRow:
    """Read to the end, or where `known_only` to the first unknown word, and return what was understood."""
    reading = Reading.of(run, lexicon, terms, inner)
    cursor = reading.cursor
    start = run[0].place if run else None
    fatal, noted, faults = 0, 0, reading.faults
    while cursor and not reading.nest.deep and fatal < MOST_FATAL:
        before = cursor.at
        _step(reading)
        if cursor.at == before:
            _unknown(reading)
        if len(faults) > noted:
            fatal += any(fault.fatal for fault in faults[noted:])
            if known_only and any(fault.rule == "unknown-term" for fault in faults[noted:]):
                break
            noted = len(faults)
    if cursor and fatal == MOST_FATAL:
        reading.faults.append(Fault("too-many-unknown-terms", cursor.place, cursor.token.text))
    parts = reading.nest.end()
    stated = reading.stated, reading.stated_place
    return ReadRow(parts, tuple(reading.faults), *stated, reading.nest.whole, start, reading.old)


def _step(reading: Reading) -> None:
    """Read one sign, clause or stitch phrase."""
    token = reading.cursor.token
    sign = _SIGNS.get(token.kind)
    if sign is not None:
        sign(reading, token)
        return
    if take_plain(reading.cursor, reading.nest):
        return
    orders = NUMBERED if token.value is not None else _CLAUSES.get(token.norm, ())
    for order in orders:
        if order(reading):
            return
    take_stitch(reading)


def _unknown(reading: Reading) -> None:
    """Note words that mean nothing here, and go on at the next sign."""
    cursor = reading.cursor
    token = cursor.token
    reading.faults.append(Fault("unknown-term", token.place, token.text))
    cursor.at += 1
    while cursor and cursor.token.kind not in _SIGNS and cursor.word() not in REPEAT:
        cursor.at += 1


# -- signs


def _pause(reading: Reading, token: Token) -> None:
    """Move past a sign; a semicolon, a full stop and a dash end a clause."""
    if token.norm == "&" and commands.take_order(reading.cursor, reading.nest):
        return
    if token.norm == "." and _goes_on(reading):
        return
    reading.cursor.at += 1
    if token.norm in _CLAUSE_ENDS:
        reading.nest.pause()


def _goes_on(reading: Reading) -> bool:
    """Read the points at the end of "k1, p1…": what has been said goes on to the end of the row."""
    cursor, nest = reading.cursor, reading.nest
    points = [token.norm for token in cursor.run[cursor.at : cursor.at + 4]]
    if points != ELLIPSIS or len(nest.frames) > 1 or not all(isinstance(node, Work) for node in nest.frame.items):
        return False
    cursor.at += len(points)
    if nest.frame.items:
        nest.go_on(None, Stop(rest=0))
        nest.whole = True
    return True


def _open(reading: Reading, token: Token) -> None:
    """Move past a note in brackets or a letter that marks a repeat, or open a bracket."""
    if bracketed_repeat(reading.cursor, reading.nest):
        return
    if letter_mark(reading.cursor, reading.nest, reading.marks) or _explained(reading) or take_note(reading):
        return
    reading.nest.open(token.norm, token.place)
    reading.cursor.at += 1


def _explained(reading: Reading) -> bool:
    """Move past the abbreviation of what has just been said in words: "place marker (pm)", "yarn over (yo)"."""
    cursor, items = reading.cursor, reading.nest.frame.items
    said, word = cursor.word(-1) if cursor.at else "", cursor.word(1)
    if not items or not said.isalpha() or said == word or cursor.word(2) not in CLOSES.values():
        return False
    node, inside = items[-1], (cursor.run, cursor.at + 1)
    if isinstance(node, Marker):
        explained = MARKERS.longest(*inside) == (1, node.act)
    else:
        length, keys = reading.lexicon.names.longest(*inside)
        explained = isinstance(node, Work) and node.times == length == 1 and node.stitch in (keys or ())
    cursor.at += 3 * explained
    return explained


_SIGNS: Mapping[str, Callable[[Reading, Token], None]] = {
    "pause": _pause,
    "open": _open,
    "close": lambda reading, _: close_bracket(reading.cursor, reading.nest),
    "star": lambda reading, _: star(reading.cursor, reading.nest),
}


def _ending(reading: Reading) -> bool:
    """Move past "end" or "ending with" before the rest of a row; read an altered last repeat."""
    cursor = reading.cursor
    if cursor.take(_LAST_REPEAT):
        if not _exchanged(reading):
            _last_repeat(reading)
        return True
    cursor.at += 1
    cursor.take(_ROW)
    cursor.take_word("with", "by")
    if not _exchanged(reading):
        reading.nest.open_end()
    return True


def _exchanged(reading: Reading) -> bool:
    """Read "k3 instead of the last k1": the repeat before it ends with other stitches in its last working."""
    items, cursor = reading.nest.frame.items, reading.cursor
    earlier = items[-1] if items else None
    ahead = [token.norm for token in cursor.run[cursor.at : cursor.at + _MOST_EXCHANGED]]
    if reading.inner or not isinstance(earlier, OpenRepeat) or "instead" not in ahead:
        return False
    at = cursor.at + ahead.index("instead")
    behind = Cursor(cursor.run)
    behind.at = at
    if not behind.take(_INSTEAD):
        return False
    new = _read(cursor.run[cursor.at : at], reading.lexicon, reading.terms, inner=True)
    old = _read(cursor.run[behind.at :], reading.lexicon, reading.terms, inner=True)
    kept = len(earlier.parts) - len(old.parts)
    if not (new.parts and old.parts and new.readable and old.readable) or earlier.parts[kept:] != old.parts:
        return False
    cursor.at = len(cursor.run)
    reading.stated, reading.stated_place = old.stated, old.stated_place
    items[-1] = replace(earlier, stop=earlier.stop or 0, last=(*earlier.parts[:kept], *new.parts))
    return True


def _last_repeat(reading: Reading) -> None:
    """Read the parts of an altered last repeat up to the end of the row into the repeat before it."""
    items, cursor = reading.nest.frame.items, reading.cursor
    earlier = items[-1] if items else None
    if reading.inner or not isinstance(earlier, OpenRepeat):
        return
    rest = _read(cursor.run[cursor.at :], reading.lexicon, reading.terms, inner=True)
    if rest.parts:
        cursor.at = len(cursor.run)
        reading.nest.faults += rest.faults
        reading.stated, reading.stated_place = rest.stated, rest.stated_place
        items[-1] = replace(earlier, last=rest.parts)


_CLAUSES: Mapping[str, tuple[Clause, ...]] = {
    word: tuple(clause for openings, clause in ((_ENDS, _ending), *KINDS) if word in openings)
    for word in {*_ENDS, *(word for openings, _ in KINDS for word in openings)}
}
