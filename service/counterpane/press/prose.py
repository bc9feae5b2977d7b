"""Prose that a reader of rows takes for prose, whoever wrote it and wherever its lines break.

A sentence of a component, a finding or a title may begin like a row ("Row 3 is worked tightly.") or state a multiple.
On the page of a pattern it would be read as an instruction, so it is set in brackets there, or its words are joined.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from counterpane.craft.rows.clauses import clauses
from counterpane.craft.rows.unlabelled import begins_with_stitches

WIDTH = 80
"""Columns of a page of text. House figure."""

_LOOK_AHEAD = 8
"""Words that decide whether a line begins like a row. House figure, above the longest label."""

_HANGING = "    "
_PIECE = re.compile(r"(?:\([^()]*\)|[^,;])+(?:[,;]\s*|$)")
_WORD = re.compile(r"\S*[\d¼½¾] \((?:[\d.¼½¾]+, )*[\d.¼½¾]+\)\S*|\((?:UK|US) [^()]{1,40}\)\S*|\S+")
"""A word, or what no line end may cut: one number a size, "95 (113, 131)", and a name explained, "(UK moss stitch)"."""
_SENTENCE = re.compile(r"(?<=[.;)])\s+")
_STATED = (
    (re.compile(r"\b(multiples?) of\b", re.IGNORECASE), r"\1-of"),
    (re.compile(r"\b(divisible|divided?) by\b", re.IGNORECASE), r"\1-by"),
    (re.compile(r"\b(odd|uneven|even|any)\s+(number|no\b)", re.IGNORECASE), r"\1-\2"),
    (re.compile(r"\b(cast(?:ing)?) on\b(?=\s+(?:about\s+)?\w)", re.IGNORECASE), r"\1-on"),
    (re.compile(r"\b(pattern|patt|repeat|rep)\s*:\s+(?=\d)", re.IGNORECASE), r"\1, "),
    (re.compile(r",\s+then\s+(?=(?:(?:work|rep|repeat)\s+)?r)", re.IGNORECASE), ", and then "),
    (re.compile(r"\band\s+(?=(?:knit|k|purl|p|work)\s+(?:\w+\s+){1,4}rows\b)", re.IGNORECASE), "and then "),
)
_MAY_INSTRUCT = re.compile(r"row|r(?:ou)?nd|\br\d|cast|\bc\.?o\b", re.IGNORECASE)
"""What every row label, repeat line and cast-on holds: looked for first, since it is quickly told."""

_MARKS = re.compile(r"[\x00-\x20\x7f-\xa0\u200b-\u200f\u2028\u2029\u2060\ufeff]+")


def quiet(text: str) -> str:
    """Return a text on one line of which no sentence is read as a row, a repeat line, a cast-on or a multiple."""
    line = one_line(text)
    for stated, joined in _STATED:
        line = stated.sub(joined, line)
    return " ".join(_aside(sentence) if instructs(sentence) else sentence for sentence in _SENTENCE.split(line))


def _aside(sentence: str) -> str:
    """Set a sentence in brackets; a colon after its row number would still look like a label."""
    return f"({sentence.replace(':', ',', 1)})"


def one_line(text: str) -> str:
    """Return a text without line ends, control characters and characters that cannot be seen."""
    return _MARKS.sub(" ", text).strip()


def instructs(text: str) -> bool:
    """Tell whether words at the beginning of a line or a sentence would be read as something to work."""
    if not _MAY_INSTRUCT.search(text):
        return False
    found = clauses(text)
    return bool(found) and found[0].kind not in ("prose", "heading", "bind-off", "aside", "abbreviation")


def wrapped(text: str, first: str = "", rest: str = "") -> str:
    """Wrap quiet prose to the width of the page, with an indent for the first line and for the rest.

    No line begins with words that would be read as something to work; one longer than the page stays whole.
    """
    return "\n".join(_lines(_WORD.findall(quiet(text)), first, rest))


def whole(line: str) -> str:
    """Break a row that is wider than the page after commas and semicolons, so that it is read as one row still."""
    lines = [""]
    for piece in _PIECE.findall(line):
        if lines[-1] and len(lines[-1]) + len(piece.rstrip()) > WIDTH:
            lines.append(_HANGING)
        lines[-1] += piece
    return "\n".join(each.rstrip() for each in lines)


def _lines(words: list[str], first: str, rest: str) -> Iterator[str]:
    indent = first
    while words:
        end = _break(words, WIDTH - len(indent))
        yield (indent + " ".join(words[:end])).rstrip()
        words, indent = words[end:], rest


def _may_not_begin(text: str) -> bool:
    """Tell whether words at the beginning of a line would be read as something to work, with a label or without."""
    return instructs(text) or begins_with_stitches(text)


def _break(words: list[str], width: int) -> int:
    """Return how many words stand on a line of this width."""
    fit = used = 0
    while fit < len(words) and (used := used + len(words[fit])) + fit <= width:
        fit += 1
    end = max(1, fit)
    while 1 < end < len(words) and _may_not_begin(" ".join(words[end : end + _LOOK_AHEAD])):
        end -= 1
    if end == 1 and len(words) > 1 and instructs(" ".join(words[1 : 1 + _LOOK_AHEAD])):
        return max(1, fit)
    return end
