"""Edits of a row that cannot be read: a word nearly spelt, a bracket or star without its partner.

Each begins at a fault of the reader. Whether the row can then be read and counted is not asked here.
"""

from __future__ import annotations

import difflib
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import lru_cache
from itertools import chain, islice, pairwise, takewhile
from typing import NamedTuple

from counterpane.craft.checking.edits import Edit, Piece, is_stitch, number_of, pieces, put_before, renumbered
from counterpane.craft.checking.rewriting import Change, Stretch, Word
from counterpane.craft.rows.cursor import TIMES
from counterpane.craft.rows.mistakes import LIKELY, LONGEST_WORD, Fault, likely_word
from counterpane.craft.rows.repeats import REPEAT
from counterpane.craft.stitches import Vocabulary

PARTNERS = {"(": ")", "[": "]", "{": "}"}
# House figures: how unlikely the first guess at a word is beside other edits, and of which words guesses are made.
FIRST_GUESS = 10
# What a shorter word was meant to be nobody can tell.
LEAST_LETTERS = 2
MOST_LIKELY = 4
READING_WORDS = ("rep", "repeat", "from", "to", "end", "last", "times", "twice", "more", "into", "next", "turn", "row")
# Words of any sentence: whoever printed one did not misspell a stitch.
SENTENCE_WORDS = frozenset(
    "the a an this that these those it its is are be of off at on by with and or as so but not you your each both "
    "every some any same other side sides hand back front left right edge centre center middle across over "
    "under".split()
)


def rewordings(row: Stretch, at: int, fault: Fault, vocabulary: Vocabulary) -> list[Edit]:
    """Return the edits that may correct a fault of reading at an offset, the likeliest first."""
    kind = _KINDS.get(fault.rule)
    word = next((word for word in row.words if word.begin == at), None)
    if kind is None or word is None:
        return []
    return sorted(kind(row, word, fault, vocabulary), key=lambda edit: edit.weight)


def likely_words(fault: Fault, vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return the words that an unknown one was probably meant to be, the likeliest first."""
    if not LEAST_LETTERS <= len(fault.word) <= LONGEST_WORD or fault.word.isdigit():
        return ()
    if fault.word.lower() in SENTENCE_WORDS:
        return ()
    near = _near(fault.word, vocabulary)
    first = fault.likely or likely_word(fault.word, near)
    others = (word for word in (first, *near) if word and word != fault.word.lower())  # A word known elsewhere is near.
    words = tuple(dict.fromkeys(others))
    meant = {vocabulary.by_name.get(word, (word,)): word for word in reversed(words)}
    return tuple(word for word in words if word in meant.values())


class _Spellings:
    """The known words by their letters, so that a word is held against those alone that share enough of them."""

    def __init__(self, known: Sequence[str]) -> None:
        self.known = known
        self._holding: dict[tuple[str, int], list[int]] = {}
        for at, word in enumerate(known):
            for letter in _letters(word):
                self._holding.setdefault(letter, []).append(at)

    def near(self, word: str) -> list[str]:
        """Return the nearest known words, the nearest first: what difflib finds among all of them."""
        shared = Counter(chain.from_iterable(self._holding.get(letter, ()) for letter in _letters(word)))
        # No two words have more letters in common in order than in any: the others need not be compared.
        most = [(2.0 * many / len(word + self.known[at]), self.known[at]) for at, many in shared.items()]
        matcher = difflib.SequenceMatcher(b=word)
        best: list[tuple[float, str]] = []
        for bound, known in sorted(each for each in most if each[0] >= LIKELY)[::-1]:
            if len(best) == MOST_LIKELY and bound < best[-1][0]:
                break
            matcher.set_seq1(known)
            best = sorted([*best, (matcher.ratio(), known)], reverse=True)[:MOST_LIKELY]
        return [known for ratio, known in best if ratio >= LIKELY]


def _letters(word: str) -> list[tuple[str, int]]:
    """Return each letter of a word with how often it stood before: "bob" holds a first and a second b."""
    return [(letter, word.count(letter, 0, at)) for at, letter in enumerate(word)]


@lru_cache(maxsize=1024)
def _near(word: str, vocabulary: Vocabulary) -> tuple[str, ...]:
    """Return the nearest known words; the latest are kept, since what is misspelt once is so again."""
    return tuple(_spellings(vocabulary).near(word))


@lru_cache(maxsize=4)
def _spellings(vocabulary: Vocabulary) -> _Spellings:
    return _Spellings((*vocabulary.by_name, *READING_WORDS))


def _respelt(row: Stretch, word: Word, fault: Fault, vocabulary: Vocabulary) -> Iterator[Edit]:
    """Put a near word in the place of an unknown one, or the star that "rep from" has lost behind it."""
    star = _star_open(row, word) if word.norm == "from" else None
    if star is not None:
        yield Edit((Change(word.end, word.end, f" {row.given(star)}"),), FIRST_GUESS)
        return
    capital = row.text[word.begin - row.begin].isupper()
    for rank, likely in enumerate(likely_words(fault, vocabulary)):
        said = likely[:1].upper() + likely[1:] if capital else likely
        yield Edit((Change(word.begin, word.end, said),), FIRST_GUESS + rank)


def _star_open(row: Stretch, word: Word) -> Word | None:
    """Return the star that a repeat clause goes back to which is broken off at a word; None where none is open."""
    before = list(takewhile(lambda other: other.begin < word.begin, row.words))
    stars = [other for other in before if other.kind == "star"]
    return stars[-1] if stars and before[-1].norm in REPEAT else None


def _bracketed(row: Stretch, word: Word, fault: Fault, vocabulary: Vocabulary) -> Iterator[Edit]:
    """Put in the partner of a bracket, or leave the bracket out."""
    yield Edit((Change(word.begin, word.end, ""),), FIRST_GUESS + 2)
    if fault.extra == "close":
        opener = next((opener for opener, closer in PARTNERS.items() if closer == word.norm), "(")
        for rank, piece in enumerate(_before(row, word)):
            yield Edit((put_before(row, piece[0], opener),), FIRST_GUESS + rank)
        return
    closer = PARTNERS.get(word.norm, ")")
    wrong = next((other for other in row.words if other.begin > word.begin and other.kind == "close"), None)
    if wrong is not None and wrong.norm != closer:
        yield Edit((Change(wrong.begin, wrong.end, closer),), FIRST_GUESS)
    for rank, piece in enumerate(piece for piece in pieces(row) if piece[0].begin > word.begin and is_stitch(piece)):
        yield Edit((Change(piece[-1].end, piece[-1].end, closer),), FIRST_GUESS + 1 + rank)
    for at, other in enumerate(row.words):
        if other.begin > word.begin and other.norm in ("times", "twice", "into", "in"):
            before = row.words[at - 2 if other.norm == "times" else at - 1]
            yield Edit((Change(before.end, before.end, closer),), FIRST_GUESS - 1)


def _before(row: Stretch, word: Word) -> list[Piece]:
    """Return the stitches before a word, the nearest first."""
    return [piece for piece in reversed(pieces(row)) if piece[0].begin < word.begin and is_stitch(piece)]


def _started(row: Stretch, word: Word, fault: Fault, vocabulary: Vocabulary) -> Iterator[Edit]:
    """Put the star before a stitch of the row, the first before later ones."""
    sign = fault.word if fault.word and not fault.word.isalnum() else "*"
    for rank, first in enumerate(_whole_items(row, word)):
        yield Edit((put_before(row, first, sign),), FIRST_GUESS + rank)


def _whole_items(row: Stretch, word: Word) -> list[Word]:
    """Return the first words of the stitches and brackets before a word, those inside brackets left out."""
    found, depth, begins = [], 0, True
    for other in takewhile(lambda other: other.begin < word.begin, row.words):
        if begins and depth == 0 and other.kind not in ("pause", "close"):
            found.append(other)
        depth += (other.kind == "open") - (other.kind == "close")
        begins = other.kind == "pause"
    return found


def _ended(row: Stretch, word: Word, fault: Fault, vocabulary: Vocabulary) -> Iterator[Edit]:
    """Call the repeat at the end of the row, or before its last stitch; or leave the star out."""
    sign = row.given(word)
    behind = [piece for piece in pieces(row) if piece[0].begin > word.begin and is_stitch(piece)]
    if not behind:
        return
    yield Edit((Change(behind[-1][-1].end, behind[-1][-1].end, f"; rep from {sign} to end"),), FIRST_GUESS)
    left = number_of(behind[-1][0])
    if len(behind) > 1 and left:
        stop = "last st" if left == 1 else f"last {left} sts"
        between = Change(behind[-2][-1].end, behind[-1][0].begin, f"; rep from {sign} to {stop}, ")
        yield Edit((between,), FIRST_GUESS + 1)
    yield Edit((Change(word.begin, word.end, ""),), FIRST_GUESS + 2)


def closed_repeat(row: Stretch) -> Iterator[Edit]:
    """Yield edits for repeats with no single meaning: a bracket left out, a stitch put in."""
    opened = next((word for word in row.words if word.kind == "open"), None)
    closed = next((at for at, word in enumerate(row.words) if word.kind == "close"), None)
    if opened is not None and closed is not None and any(word.norm == "to" for word in row.words[:closed]):
        end = row.words[closed].end
        behind = row.words[closed + 1 : closed + 3]
        counted = len(behind) == 2 and behind[0].value is not None and behind[1].norm == "times"
        taken = Change(row.words[closed].begin, behind[1].end if counted else end, "")
        first = row.words[row.words.index(opened) + 1]
        yield Edit((Change(opened.begin, first.begin, ""), taken), FIRST_GUESS)
    for at, word in enumerate(row.words[1:], start=1):
        if word.norm in REPEAT:
            before = row.words[at - 1] if row.words[at - 1].kind != "pause" else row.words[at - 2]
            yield Edit((Change(before.end, before.end, ", k1"),), FIRST_GUESS)


def starred(row: Stretch) -> Edit:
    """Return the edit that puts a star before a row and calls its repeat in full at the end."""
    last = row.words[-1]
    begin = put_before(row, row.words[0], "*")
    if last.norm in REPEAT:
        before = row.words[-2] if row.words[-2].kind != "pause" else row.words[-3]
        return Edit((begin, Change(before.end, last.end, "; rep from * to end")), FIRST_GUESS)
    return Edit((begin, Change(last.end, last.end, "; rep from * to end")), FIRST_GUESS)


def decided(row: Stretch, word: Word, names: Sequence[str]) -> Iterator[Edit]:
    """Yield edits that leave a word with two meanings only one: one of these names, or "times more"."""
    if word.kind != "star":
        for rank, name in enumerate(names):
            said = name.capitalize() if row.given(word)[:1].isupper() else name
            yield Edit((Change(word.begin, word.end, said),), FIRST_GUESS + rank)
        return
    for count in islice(_counts_behind(row, word), 1):
        more = Change(count.end, count.end, " more")
        plainly = Change(count.number.begin, count.end, f"{count.times} times more")
        yield Edit((plainly if count.crossed else more,), FIRST_GUESS)
        if count.times == 2:
            yield Edit((Change(count.number.begin, count.end, "once more"),), FIRST_GUESS + 1)
        elif count.times > 1 and (count.crossed or count.number.value is None):
            fewer = Change(count.number.begin, count.end, f"{count.times - 1} times more")
            yield Edit((fewer,), FIRST_GUESS + 1)
        elif count.times > 1:
            yield Edit((*renumbered(row, count.number, count.times - 1), more), FIRST_GUESS + 1)


class _Count(NamedTuple):
    """How many times something is worked: the word of the number, where the count ends, and whether it has an "x"."""

    number: Word
    times: int
    end: int
    crossed: bool = False


def _counts_behind(row: Stretch, word: Word) -> Iterator[_Count]:
    """Yield each "once", "twice", "3 times", "3x" and "x 3" behind a word."""
    for before, other in pairwise(row.words):
        if other.begin <= word.begin:
            continue
        if other.norm in TIMES:
            yield _Count(other, TIMES[other.norm], other.end)
        elif other.norm in ("time", "times", "x") and before.value is not None:
            yield _Count(before, before.value, other.end, other.norm == "x")
        elif before.norm == "x" and other.value is not None:
            yield _Count(before, other.value, other.end, crossed=True)
        elif other.norm[:1] == "x" and other.norm[1:].isdecimal():
            yield _Count(other, int(other.norm[1:]), other.end, crossed=True)


_Kind = Callable[[Stretch, Word, Fault, Vocabulary], Iterator[Edit]]
_KINDS: Mapping[str, _Kind] = {
    "unknown-term": _respelt,
    "bracket-not-closed": _bracketed,
    "repeat-without-start": _started,
    "repeat-without-end": _ended,
}
