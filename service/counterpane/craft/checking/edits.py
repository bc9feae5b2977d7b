"""Small edits of a printed row, in its own words: the changes that a slip of the pen or of the compositor calls for.

One number changed, a stitch exchanged for its neighbour, one left out or put in, a star moved. Whether an edit is worth
anything is not asked here. The weights are a house order: one number by one is the least; what is worked again and
again is likelier right than what stands once, and two words are more than one.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Callable, Iterator, Mapping, Sequence

from counterpane.craft.checking.rewriting import Change, Stretch, Word
from counterpane.craft.checking.wording import ordinal
from counterpane.craft.records import record
from counterpane.craft.rows.repeats import REPEAT
from counterpane.craft.rows.words import NUMBER_WORDS

# How unlikely a slip each edit takes back is, beside the others; house figures.
DOUBLED, ONE_NUMBER, PASSED_OVER, YARN_OVER, LEFT_OUT, PUT_IN, EXCHANGED = 9, 10, 9, 11, 12, 12, 12
STAR_LATE, STAR_EARLY, TWO_NUMBERS, STITCH_PUT_IN = 12, 13, 15, 16
INSIDE_REPEAT = 2
STEPS = (1, -1, 2, -2, 3, -3, 4, -4, 5, -5)
NEIGHBOURS: Mapping[str, tuple[str, ...]] = {
    "k1": ("k2tog", "kfb"),
    "k2": ("k2tog",),
    "k3": ("k3tog",),
    "k2tog": ("k3tog", "k2", "k1"),
    "k3tog": ("k2tog", "k3"),
    "p2": ("p2tog",),
    "p3": ("p3tog",),
    "p2tog": ("p3tog", "p2", "p1"),
    "p3tog": ("p2tog", "p3"),
    "ssk": ("k2", "k1", "sssk"),
    "skp": ("k2", "k1", "sk2p"),
    "sk2p": ("k3", "skp"),
    "kfb": ("k1",),
    "yo": ("yo twice",),
    "twice": ("3 times", "once"),
    "once": ("twice",),
    "together": ("",),
    "tog": ("",),
}
YARN_OVERS = frozenset({"yo", "m1", "make 1", "yfwd", "yrn", "yon", "yfrn", "over", "o", "wool forward", "make one"})
# A plain stitch is less often a misprint than a decrease; "sl 1, k1" before it is a decrease begun.
PLAIN = frozenset({"k1", "p1", "yo"})
SLIPPED_BEFORE = 2
_TOGETHER = re.compile(r"[kp]\d+tog.*")
_TAILS = frozenset({"st", "nd", "rd", "th"})
_TOGETHER_WORDS = frozenset({"together", "tog", "tog."})
_DIGITS = re.compile(r"\d{1,9}")
_NUMBER_NAMES = {number: word for word, number in NUMBER_WORDS.items()}
_SINGULAR = {"st": "sts", "stitch": "stitches"}
_PLURAL = {many: one for one, many in _SINGULAR.items()}
_NO_STITCH = REPEAT | {"to", "end", "ending", "from", "times", "into", "in", "more", "then", "row"}


@record
class Edit:
    """Changes of the text that belong together, and how much they ask for: less is likelier."""

    changes: tuple[Change, ...]
    weight: int


Piece = Sequence[Word]


def edits(row: Stretch) -> list[Edit]:
    """Return the edits of a row, the least first, later places before earlier ones."""
    inside = _inside(row)
    found = [edit for kind in _KINDS for edit in kind(row, inside)]
    return sorted(found, key=lambda edit: (edit.weight, -edit.changes[0].begin))


def renumbered(row: Stretch, word: Word, number: int) -> tuple[Change, ...]:
    """Return the changes that make a number another, in digits or in words as it stands, its "sts" with it."""
    given = row.given(word)
    digits = _DIGITS.search(given)
    if digits is None:
        name = _NUMBER_NAMES.get(number, str(number))
        change = Change(word.begin, word.end, name.capitalize() if given[:1].isupper() else name)
    else:
        change = Change(word.begin + digits.start(), word.begin + digits.end(), str(number))
    return change, *_agreeing(row, word, number)


def _agreeing(row: Stretch, word: Word, number: int) -> Iterator[Change]:
    """Yield the change of "st" to "sts" behind a number, or back, or of the end of an ordinal."""
    behind = _first_from(row.words, word.end)
    after = row.words[behind] if behind < len(row.words) else None
    if after is not None and after.begin == word.end and after.norm in _TAILS:
        yield Change(after.begin, after.end, ordinal(number).lstrip("-0123456789"))
        return
    forms = _PLURAL if number == 1 else _SINGULAR
    if after is not None and after.norm in forms:
        yield Change(after.begin, after.end, forms[after.norm])


def _first_from(words: Sequence[Word], offset: int) -> int:
    """Return the index of the first word that begins at an offset or behind it."""
    return bisect_left(words, offset, key=lambda word: word.begin)


def pieces(row: Stretch) -> list[Piece]:
    """Return the words between signs."""
    out: list[list[Word]] = [[]]
    for word in row.words:
        if word.kind in ("pause", "open", "close", "star"):
            out.append([])
        else:
            out[-1].append(word)
    return [piece for piece in out if piece]


def _said(piece: Piece) -> str:
    return " ".join(word.norm for word in piece)


def is_stitch(piece: Piece) -> bool:
    """Tell whether a piece may be a stitch: it says nothing of repeats and ends."""
    return not any(word.norm in _NO_STITCH for word in piece)


def number_of(word: Word) -> int | None:
    """Return the number that a word is or holds: 3 of "3", "three", "k3" and "k3tog"."""
    digits = _DIGITS.search(word.norm)
    return word.value if word.value is not None else int(digits.group()) if digits else None


def _inside(row: Stretch) -> frozenset[int]:
    """Return the offsets of the words that are worked more than once: in brackets, or behind a star."""
    found, depth, starred = set(), 0, False
    for word in row.words:
        depth += (word.kind == "open") - (word.kind == "close")
        if word.kind == "star":
            starred = not starred
        elif word.norm in REPEAT:
            starred = False
        if depth > 0 or starred:
            found.add(word.begin)
    return frozenset(found)


def _numbers(row: Stretch, inside: frozenset[int]) -> Iterator[Edit]:
    """Change one number by up to five; "last st" is the number 1."""
    for before, word, after in zip((None, *row.words), row.words, (*row.words[1:], None), strict=False):
        if before is not None and before.norm == "last" and word.norm in _SINGULAR:
            yield Edit((Change(word.begin, word.end, f"2 {_SINGULAR[word.norm]}"),), ONE_NUMBER)
        number = None if _TOGETHER.fullmatch(word.norm) else number_of(word)
        for step in STEPS if number else ():
            if number is not None and number + step > 0:
                least = EXCHANGED if after is not None and after.norm in _TOGETHER_WORDS else ONE_NUMBER
                weight = least + 2 * (abs(step) - 1) + _again(word, inside)
                yield Edit(renumbered(row, word, number + step), weight)


def _again(word: Word, inside: frozenset[int]) -> int:
    return INSIDE_REPEAT if word.begin in inside else 0


def _exchanged(row: Stretch, inside: frozenset[int]) -> Iterator[Edit]:
    """Exchange a stitch for its neighbour."""
    for at, word in enumerate(row.words):
        behind_slipped = row.words[at - 3].norm.startswith("sl") if at > SLIPPED_BEFORE else False
        for other in NEIGHBOURS.get(word.norm, ()):
            capital = row.text[word.begin - row.begin].isupper()
            change = Change(word.begin - (not other), word.end, other.capitalize() if capital else other)
            plain = not behind_slipped and word.norm in PLAIN
            yield Edit((change,), EXCHANGED + plain + _again(word, inside))


def _left_out(row: Stretch, inside: frozenset[int]) -> Iterator[Edit]:
    """Leave out a stitch with the comma that belongs to it."""
    for piece in filter(is_stitch, pieces(row)):
        begin, end = piece[0].begin, piece[-1].end
        at = _first_from(row.words, begin)
        behind = row.words[at + len(piece)] if at + len(piece) < len(row.words) else None
        before = row.words[at - 1] if at else None
        if behind is not None and behind.norm == "," and at + len(piece) + 1 < len(row.words):
            change = _without(row, begin, row.words[at + len(piece) + 1].begin)
        elif before is not None and before.norm == ",":
            change = Change(before.begin, end, "")
        else:
            continue
        said = _said(piece)
        # No word is empty: so many words hold the letters that are compared.
        near = " ".join(word.norm for word in row.words[max(0, at - len(said) - 2) : at])
        doubled = at > 1 and before is not None and said == near[:-2][-len(said) :]
        weight = DOUBLED if doubled else YARN_OVER if said in YARN_OVERS else LEFT_OUT
        yield Edit((change,), weight + _again(piece[0], inside))


def _without(row: Stretch, begin: int, end: int) -> Change:
    """Return the change that leaves out the beginning of a list; its capital goes to what follows."""
    capital = row.text[begin - row.begin].isupper()
    return Change(begin, end + capital, row.text[end - row.begin].upper() if capital else "")


def _put_in(row: Stretch, inside: frozenset[int]) -> Iterator[Edit]:
    """Put in what is easily forgotten: a yarn-over, a plain stitch, the passing over of a slipped one."""
    slipped = False
    for piece in filter(is_stitch, pieces(row)):
        again = _again(piece[0], inside)
        if slipped:
            yield Edit((Change(piece[-1].end, piece[-1].end, ", psso"),), PASSED_OVER + again)
        slipped = piece[0].norm.startswith(("sl", "s1"))
        for stitch, weight in (("yo", PUT_IN), ("k1", STITCH_PUT_IN), ("p1", STITCH_PUT_IN)):
            yield Edit((put_before(row, piece[0], f"{stitch}, "),), weight + again)


def put_before(row: Stretch, word: Word, words: str) -> Change:
    """Return the change that puts words before a word, with the capital where that had one."""
    first = row.text[word.begin - row.begin]
    if not (first.isupper() and words[:1].isalpha()):
        return Change(word.begin, word.begin, words)
    return Change(word.begin, word.begin + 1, words[:1].upper() + words[1:] + first.lower())


def _star_moved(row: Stretch, inside: frozenset[int]) -> Iterator[Edit]:
    """Move a star by one stitch to either side."""
    stars = [word for word in row.words if word.kind == "star" and word.begin in inside]
    all_pieces = pieces(row)
    for star in stars:
        sign = row.given(star)
        at = bisect_left(all_pieces, star.begin, key=lambda piece: piece[0].begin)
        behind = _first_from(row.words, star.end)
        gap = row.words[behind].begin if behind < len(row.words) else star.end
        for weight, near in ((STAR_LATE, all_pieces[max(0, at - 1) : at]), (STAR_EARLY, all_pieces[at + 1 : at + 2])):
            for piece in near:
                yield Edit((Change(star.begin, gap, ""), put_before(row, piece[0], sign)), weight)


def _edges(row: Stretch, inside: frozenset[int]) -> Iterator[Edit]:
    """Change a stop and the stitches kept for it together: "to last 3 sts, k3"."""
    for at, word in enumerate(row.words[:-1]):
        if word.norm != "last":
            continue
        kept = row.words[at + 1]
        rest = next((other for other in row.words[at + 2 :] if number_of(other) is not None), None)
        number, left = number_of(kept), number_of(rest) if rest else None
        if rest is None or number is None or left is None:
            continue
        for step in STEPS:
            if number + step > 0 and left + step > 0:
                both = (*renumbered(row, kept, number + step), *renumbered(row, rest, left + step))
                yield Edit(both, TWO_NUMBERS + 2 * (abs(step) - 1))


_KINDS: tuple[Callable[[Stretch, frozenset[int]], Iterator[Edit]], ...] = (
    _numbers, _exchanged, _left_out, _put_in, _star_moved, _edges,
)  # fmt: skip
