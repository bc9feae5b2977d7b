"""A text of rows said again in other words: its rows from their trees, and the words between them.

Labels, sides, counts, headings, repeat lines and statements stay where they are. A row that cannot be read, and one
whose words would not be read back as the same row, stays as printed.
"""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from counterpane.craft.checking import Examined
from counterpane.craft.checking.rewriting import line_begins
from counterpane.craft.counts.wellformed import within
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.borrowing import borrowed
from counterpane.craft.rows.pages import page_of
from counterpane.craft.rows.read import read_row
from counterpane.craft.rows.say import NOTHING, Printed, WordsKind, printed_in, prose_in_full, say_row
from counterpane.craft.rows.sizes import sizes_in
from counterpane.craft.rows.tree import BindOff, Group, IntoOne, Node, OpenRepeat, Place, Row
from counterpane.craft.rows.words import LINE_END, normal_lines, tokens
from counterpane.craft.stitches import Terms, Vocabulary

_ENDS = re.compile(LINE_END)
# A gauge is a "tension" in UK terms; the tension of a yarn is one in both.
_TENSION = re.compile(r"\b(?P<word>tension)\b(?!\s+of\s+(?:the\s+)?(?:yarn|wool|thread))", re.IGNORECASE)
_YARN = re.compile(r"(?:yarn|wool|thread|even)\s+$", re.IGNORECASE)
_LOOKED_BACK = 8
_LETTER = re.compile(r"[^\W\d_]")
UNREAD = "it cannot be read"
SEVERAL = "it has a number for each size"
OTHER = "its words say more than can be said in others"


@dataclass(frozen=True, slots=True)
class Manner:
    """How to say a text: the vocabulary, the terms, short or full words.

    `turned` says that the terms were asked for, so that the words between the rows are put into them too.
    """

    vocabulary: Vocabulary
    terms: Terms
    words: WordsKind
    turned: bool = True

    def row(self, parts: Sequence[Node], printed: Printed = NOTHING) -> str:
        """Say the parts of a row."""
        return say_row(parts, self.vocabulary, self.terms, self.words, printed)

    def prose(self, text: str) -> str:
        """Say words that are no row."""
        said = in_terms(text, self.terms) if self.turned else text
        if self.turned and self.terms == "us":
            said = _TENSION.sub(_gauge, said)
        return prose_in_full(said) if self.words == "full" else said


@dataclass(frozen=True, slots=True)
class SaidRow:
    """The words of a row in a text: where they stand, and what is said there; None where they stay as printed.

    `kept` is why they do. `printed` is what stands beside the stitches.
    """

    begin: int
    end: int
    words: str | None
    kept: str | None = None
    printed: Printed = NOTHING


def _gauge(match: re.Match[str]) -> str:
    if _YARN.search(match.string[max(0, match.start() - _LOOKED_BACK) : match.start()]):
        return match.group()
    return "Gauge" if match.group()[0].isupper() else "gauge"


def said_rows(examined: Examined, manner: Manner) -> dict[Place, SaidRow]:
    """Say the words of each row of a text, by the place where they begin; rows of one line are said once.

    Rows that name other rows ("as row 1"), and orders ("knit 4 rows"), hold no words of their own. A row with a number
    for each size stays as printed: the tree of one size does not hold the others.
    """
    sized = _lists_of_sizes(examined.text)
    begins = line_begins(examined.text)
    rows = sorted(zip(examined.rows, examined.instructions.rows, strict=True), key=lambda pair: pair[0].start)
    out: dict[Place, SaidRow] = {}
    for start, lines in groupby(rows, key=lambda pair: pair[0].start):
        listed = list(lines)
        row = listed[0][0]
        begin = begins[start.line - 1] + start.column - 1
        end = begins[row.end.line - 1] + row.end.column - 1
        given = examined.text[begin:end]
        if begin < end and (not row.readable or not (_is_order(row, given) or _borrows(given))):
            alike = all(settled.parts == row.parts for settled, _ in listed)
            said = row if alike else listed[0][1]
            stated = next((settled.stated for settled, _ in listed if settled.stated is not None), None)
            if sized[bisect_left(sized, start) : bisect_right(sized, row.end)]:
                out[start] = SaidRow(begin, end, None, SEVERAL)
            else:
                out[start] = _said(replace(said, stated=stated), given, begin, manner)
    return out


def _lists_of_sizes(text: str) -> list[Place]:
    """Return where the lists of one number a size begin."""
    sizes = sizes_in(normal_lines(text))
    return sorted(each.place for each in (*sizes.lists, *sizes.misfits)) if sizes else []


def _is_order(row: Row, given: str) -> bool:
    """Tell "knit 4 rows" from a row: the words worked are a part of the sentence."""
    return row.start == row.place and given.strip(" .") != row.text.strip(" .")


def _borrows(given: str) -> bool:
    return borrowed([token for line in normal_lines(given) for token in tokens(line)]) is not None


def _said(row: Row, given: str, begin: int, manner: Manner) -> SaidRow:
    """Say one row, unless that would lose anything."""
    end = begin + len(given)
    if not row.readable:
        return SaidRow(begin, end, None, UNREAD)
    printed = printed_in(given, row.start).mapped(manner.prose)
    words = manner.row(row.parts, printed)
    again = read_row(words, manner.vocabulary, manner.terms)
    whole = again.readable and again.parts == _counted_apart(row.parts) and all(each in words for each in printed.words)
    if not whole:
        return SaidRow(begin, end, None, OTHER, printed)
    return SaidRow(begin, end, _as_begun(words, given) + _count(row, manner), None, printed)


def _as_begun(words: str, given: str) -> str:
    """Begin the words of a row with a capital where the printed ones do."""
    capital = _LETTER.search(given)
    first = _LETTER.search(words)
    if first is None or capital is None or not capital.group().isupper():
        return words
    return words[: first.start()] + first.group().upper() + words[first.end() :]


def _count(row: Row, manner: Manner) -> str:
    """Write the count printed after a row."""
    if row.stated is None:
        return ""
    return manner.prose(f". ({row.stated} st{'' if row.stated == 1 else 's'})")


def _counted_apart(parts: tuple[Node, ...]) -> tuple[Node, ...]:
    """Return parts as they are read: which stitch the number after a bind-off counts is told by counts alone."""
    if not any(isinstance(node, BindOff) and node.joined for node in within(parts)):
        return parts
    return tuple(_apart(node) for node in parts)


def _apart(node: Node) -> Node:
    if isinstance(node, BindOff):
        return replace(node, joined=False)
    return replace(node, parts=_counted_apart(node.parts)) if isinstance(node, Group | OpenRepeat | IntoOne) else node


def reworded(
    text: str, said: Mapping[Place, SaidRow], manner: Manner, beneath: Mapping[Place, Sequence[str]] | None = None
) -> str:
    """Return the text with its rows as said; `beneath` are lines to put under the line on which a row ends.

    The lines of a list of abbreviations stay as they are.
    """
    return "".join(_pieces(text, said, manner, beneath or {}))


def _pieces(
    text: str, said: Mapping[Place, SaidRow], manner: Manner, beneath: Mapping[Place, Sequence[str]]
) -> Iterator[str]:
    spans = [(row.begin, row.end, row.words, beneath.get(place, ())) for place, row in said.items()]
    spans += [(begin, end, None, ()) for begin, end in _explained(text)]
    at: int = 0
    waiting: Sequence[str] = ()
    for begin, end, words, lines in sorted(spans, key=lambda span: span[:2]):
        if begin >= at:
            yield from _between(text, at, begin, manner, waiting)
            yield text[begin:end] if words is None else words
            at, waiting = end, lines
    yield from _between(text, at, len(text), manner, waiting)


def _between(text: str, begin: int, end: int, manner: Manner, beneath: Sequence[str]) -> Iterator[str]:
    """Yield the words between two rows, with lines put in before the first line end."""
    if beneath:
        line_end = _ENDS.search(text, begin, end)
        cut = line_end.start() if line_end else end
        newline = line_end.group() if line_end else "\n"
        yield manner.prose(text[begin:cut])
        yield "".join(f"{newline}{line}" for line in beneath)
        begin = cut
    yield manner.prose(text[begin:end])


def _explained(text: str) -> list[tuple[int, int]]:
    """Return where the lines of a list of abbreviations begin and end."""
    page = page_of(text)
    numbers = page.glossary.lines | {stretch.line.number for stretch in page.under("abbreviations")}
    begins = [*line_begins(text), len(text)]
    return [(begins[number - 1], begins[number]) for number in sorted(numbers)]
