"""The reader of a row's words: brackets, stars and stitches to a tree, going on after a fault."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from counterpane.craft.rows import colours
from counterpane.craft.rows.asides import aside_at
from counterpane.craft.rows.cursor import STITCH_WORDS, Cursor
from counterpane.craft.rows.fabrics import MOSS, PATTERN, take_across, take_fabric
from counterpane.craft.rows.forward import forward
from counterpane.craft.rows.lexicon import Lexicon, lexicon_of
from counterpane.craft.rows.mistakes import Fault
from counterpane.craft.rows.nest import Nest, plain
from counterpane.craft.rows.phrasebook import phrases, ways
from counterpane.craft.rows.phrases import TOGETHER, Phrase, take_phrase
from counterpane.craft.rows.repeats import REPEAT, close_bracket, named_star, repeat_clause, repeat_from, star
from counterpane.craft.rows.stops import OPENINGS, Stop, take_stop
from counterpane.craft.rows.tree import Node, OpenRepeat, Place, Work
from counterpane.craft.rows.words import Token, normal_lines, tokens
from counterpane.craft.rows.workings import WHICH
from counterpane.craft.stitches import Terms, Vocabulary

_WHOLE_ROW = frozenset({"row", "rnd", "round", "all"})
_FILLERS = frozenset({"then", "and", "also", "finally", "now"})
_LAST_REPEAT = phrases(*ways("ending|end", "|the", "last", "rep|repeat", "|with"))


@dataclass(frozen=True, slots=True)
class ReadRow:
    """What a row's words say: the nodes, the faults met, a printed count with its place, and where it begins.

    `whole` says that the list was taken as one repeat.
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


def read_row(text: str, vocabulary: Vocabulary, terms: Terms | None = None) -> ReadRow:
    """Read the words of one row, without its label; places count from 1 in the text given."""
    run = [token for line in normal_lines(text) for token in tokens(line)]
    return read_tokens(run, vocabulary, terms)


def read_tokens(run: Sequence[Token], vocabulary: Vocabulary, terms: Terms | None = None) -> ReadRow:
    """Read the tokens of one row, which may come from several lines."""
    return _Reader(run, lexicon_of(vocabulary), terms).read()


class _Reader:
    """One reading of one row."""

    def __init__(self, run: Sequence[Token], lexicon: Lexicon, terms: Terms | None, inner: bool = False) -> None:
        self.cursor = Cursor(run)
        self.lexicon = lexicon
        self.terms = terms
        self.nest = Nest(run[0].place if run else Place(1, 1))
        self.faults = self.nest.faults
        self.stated: int | None = None
        self.stated_place: Place | None = None
        self.inner = inner

    def read(self) -> ReadRow:
        """Read to the end and return what was understood."""
        cursor = self.cursor
        start = cursor.run[0].place if cursor else None
        while cursor and not self.nest.deep:
            before = cursor.at
            self.step()
            if cursor.at == before:
                self.unknown()
        parts = self.nest.end()
        return ReadRow(parts, tuple(self.faults), self.stated, self.stated_place, self.nest.whole, start)

    def step(self) -> None:
        """Read one sign, clause or stitch phrase."""
        kind, word = self.cursor.token.kind, self.cursor.word()
        if kind == "pause" or word in _FILLERS:
            self.cursor.at += 1
        elif kind == "close":
            close_bracket(self.cursor, self.nest)
        elif kind == "star":
            star(self.cursor, self.nest)
        elif self.aside():
            return
        elif kind == "open":
            self.nest.open(word, self.cursor.place)
            self.cursor.at += 1
        elif word in REPEAT:
            repeat_clause(self.cursor, self.nest)
        elif word in _CLAUSES and _CLAUSES[word](self):
            return
        elif word in OPENINGS and (stop := take_stop(self.cursor)):
            self.nest.stop_here(stop)
        else:
            self.stitch()

    def aside(self) -> bool:
        """Move past a printed count, or a note in brackets."""
        aside = aside_at(self.cursor)
        if aside is None:
            return False
        self.cursor.at += aside.length
        if aside.count is not None:
            self.stated, self.stated_place = aside.count, aside.place
        return True

    def unknown(self) -> None:
        """Note words that mean nothing here, and go on at the next sign."""
        token = self.cursor.token
        self.faults.append(Fault("unknown-term", token.place, token.text))
        self.cursor.at += 1
        while self.cursor and self.cursor.token.kind not in ("pause", "open", "close", "star"):
            if self.cursor.word() in REPEAT:
                break
            self.cursor.at += 1

    # -- stitches

    def stitch(self) -> None:
        """Read one stitch phrase into the open frame."""
        cursor, before = self.cursor, self.cursor.at
        if take_across(cursor):
            place = cursor.run[before].place
            self.nest.put(plain(Work(PATTERN, place=place), take_stop(cursor) or Stop(rest=0)))
            return
        phrase = take_phrase(cursor, self.lexicon)
        if phrase is None:
            return
        phrase = self.brought_forward(phrase)
        self.doubt(phrase, before)
        node = phrase.node
        stop = take_stop(cursor) if phrase.bare else None
        if phrase.bare and stop is None and cursor.take_any(_WHOLE_ROW):
            stop = Stop(rest=0)
        if stop and isinstance(node, Work):
            self.nest.put(plain(node, stop))
        elif isinstance(node, Work) and node.stitch == "sl":
            words = {token.norm for token in cursor.run[before : cursor.at]}
            self.nest.put(node, phrase.bare, together=node.times == 2 and bool(words & {*TOGETHER, "sl2tog"}))
        else:
            self.nest.put(node, phrase.bare)

    def brought_forward(self, phrase: Phrase) -> Phrase:
        """Decide whether a yarn brought forward makes a loop."""
        if not isinstance(phrase.node, Work) or phrase.node.times != 1:
            return phrase
        found = forward(self.cursor, phrase.word, phrase.keys, self.terms) if phrase.keys else None
        if found is None or found[0] not in self.lexicon.vocabulary.stitches:
            return phrase
        key, doubtful = found
        if doubtful:
            readings = ("yarn over (a stitch more)", "yarn to front (no stitch)")
            self.faults.append(Fault("ambiguous-term", phrase.node.place, phrase.word, readings=readings, fatal=False))
        return replace(phrase, node=replace(phrase.node, stitch=key), keys=(key,))

    def doubt(self, phrase: Phrase, start: int) -> None:
        """Note a word with several meanings in the trade; what is printed may settle it."""
        if not phrase.keys or not isinstance(phrase.node, Work):
            return
        known = self.lexicon.vocabulary.stitches
        readings: tuple[str, ...] = ()
        if phrase.node.stitch == PATTERN and "moss" in [
            token.norm for token in self.cursor.run[start : self.cursor.at]
        ]:
            readings = MOSS
        for key in phrase.keys:
            readings += known[key].ambiguous if key in known else ()
        if readings:
            word = "moss" if readings == MOSS else phrase.word
            self.faults.append(Fault("ambiguous-term", phrase.node.place, word, readings=readings, fatal=False))

    def work(self) -> bool:
        """Read "work to last 3 sts" as work in pattern; a bare "work" before a stitch says nothing."""
        cursor = self.cursor
        before, place = cursor.at, cursor.place
        cursor.at += 1
        if stop := take_stop(cursor):
            self.nest.put(plain(Work(PATTERN, place=place), stop))
            return True
        cursor.take(WHICH)
        if cursor.number() is not None and cursor.word(1) in STITCH_WORDS:
            number = cursor.take_number() or 0
            cursor.take_stitches()
            take_fabric(cursor)
            self.nest.put(Work(PATTERN, number, place=place))
            return True
        cursor.at = before
        return False

    def ending(self) -> bool:
        """Move past "end" or "ending with" before the rest of a row; read an altered last repeat."""
        if self.cursor.take(_LAST_REPEAT):
            self.last_repeat()
            return True
        self.cursor.at += 1
        self.cursor.take_word("with")
        self.nest.open_end()
        return True

    def last_repeat(self) -> None:
        """Read the parts of an altered last repeat up to the end of the row into the repeat before it."""
        items = self.nest.frame.items
        earlier = items[-1] if items else None
        if self.inner or not isinstance(earlier, OpenRepeat):
            return
        rest = _Reader(self.cursor.run[self.cursor.at :], self.lexicon, self.terms, inner=True).read()
        if rest.parts:
            self.cursor.at = len(self.cursor.run)
            self.faults += rest.faults
            self.stated, self.stated_place = rest.stated, rest.stated_place
            items[-1] = replace(earlier, last=rest.parts)

    def yarn(self) -> bool:
        """Move past words on yarn and needles."""
        return colours.take_yarn(self.cursor)

    def from_star(self) -> bool:
        """Read "work from * to end" or "from * to end" as a repeat."""
        before, place = self.cursor.at, self.cursor.place
        self.cursor.take_word("work", "continue", "cont")
        named = named_star(self.cursor) if self.cursor.word() in ("from", "between") else None
        if named is None:
            self.cursor.at = before
            return False
        repeat_from(self.cursor, self.nest, place, *named)
        return True

    def work_or_repeat(self) -> bool:
        """Read "work from * to end", "work to last 3 sts", or move past "work" before a stitch."""
        if self.from_star():
            return True
        before = self.cursor.at
        named = self.lexicon.names.longest(self.cursor.run, before)[0] > 0
        if named or take_across(self.cursor) or take_fabric(self.cursor):
            self.cursor.at = before
            return False
        if not self.work():
            self.cursor.at = before + 1
        return True


_CLAUSES: Mapping[str, Callable[[_Reader], bool]] = {
    "work": _Reader.work_or_repeat,
    **dict.fromkeys(("from", "cont", "continue"), _Reader.from_star),
    **dict.fromkeys(("end", "ending"), _Reader.ending),
    **dict.fromkeys(colours.LEADS, _Reader.yarn),
}
