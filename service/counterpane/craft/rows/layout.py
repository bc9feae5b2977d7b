"""The lines of a page: headings, and what is no part of the text (page numbers, running heads, addresses).

Only looks are judged here; what a line says is told elsewhere.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

from counterpane.craft.rows.words import Line

# House bounds, in signs and in words.
LONGEST_HEADING = 60
MOST_HEADING_WORDS = 7
LONGEST_PAGE_LINE = 120
LINES_BETWEEN = 3
_STITCHES = r"(?:k|p|sl|s)\s?\d|(?:knit|purl|k2tog|p2tog|ssk|yo)\b|[(\[*]"
STITCHES = re.compile(rf"[\s*(\[]*(?:{_STITCHES})")
_MARKED = re.compile(rf"#+\s*\S|(\*\*|__|\*|_)(?=[^\s*_])(?!{_STITCHES})[^*]{{1,80}}(?<=[^\s*])\1:?\s*$", re.IGNORECASE)
_SIGNS = frozenset("#*_")
_BEGINS_SENTENCE = re.compile(
    r"(?:now|work|cont|continue|proceed|beg|begin|rep|repeat|using|with|change|join|cut|break|turn|do|slip|leave|place|"
    r"weave|block|fasten|knit|purl|cast|bind|set|pick|divide|switch|keep)\b",
    re.IGNORECASE,
)
_ROW = re.compile(r"(?:k|p|sl|s)\s?\d+\s*[,;*(]|[(\[*]", re.IGNORECASE)
_MEASURE = re.compile(r"\d\s*(?:sts?|stitch(?:es)?|cm|mm|ins?|rows?)\b", re.IGNORECASE)
_PAGE = re.compile(r"\W*(?:(?:page|pg\.?)\s*)?\d{1,4}(?:\s*(?:of|/|\|)\s*\d{1,4})?\W*")
_WITH_PAGE = re.compile(r"(?:[^:]{0,80}(?:\s{2}|[|•·-])\s*)?page\s+\d{1,4}(?:\s*(?:of|/)\s*\d{1,4})?\W*")
_ADDRESS = re.compile(r"\W*(?:(?:https?://|www\.)\S+|(?:©|\(c\)|copyright\b).{0,100})\W*")
_DIGITS = re.compile(r"[\d\W]+")


def is_heading(raw: str) -> bool:
    """Tell a heading from a sentence by its looks."""
    if is_marked(raw):
        return True
    if len(raw) > LONGEST_HEADING or len(raw.split()) > MOST_HEADING_WORDS or not raw[:1].isupper():
        return False
    if raw[-1:] in ".;,!?" or _MEASURE.search(raw) or _is_sentence(raw):
        return False
    return not _ROW.match(raw)


def is_marked(raw: str) -> bool:
    """Tell whether a line is a heading by a sign: "## Body", "**Body**"."""
    return raw[:1] in _SIGNS and bool(_MARKED.match(raw))


def _is_sentence(raw: str) -> bool:
    return bool(_BEGINS_SENTENCE.match(raw)) and not raw.isupper()


def without_page_marks(lines: Sequence[Line]) -> list[Line]:
    """Return the lines that belong to the text, the empty ones among them; a page may end in the middle of a row."""
    numbers = {index for index, line in enumerate(lines) if _is_page_line(line)}
    if not numbers:
        return list(lines)
    near = [place for index in numbers for step in (-1, 1) if (place := _next_filled(lines, index, step)) is not None]
    out = numbers | _running(lines, [place for place in near if _may_run(lines[place])])
    for index in tuple(out):
        for step in (-1, 1):
            _add_empty(lines, index, step, out)
    return [line for index, line in enumerate(lines) if index not in out]


def _is_page_line(line: Line) -> bool:
    text = line.text
    if not 0 < len(text) <= LONGEST_PAGE_LINE:
        return False
    found = _PAGE.fullmatch(text) or _ADDRESS.fullmatch(text) or ("page" in text and _WITH_PAGE.fullmatch(text))
    return bool(found) and not text.isspace()


def _running(lines: Sequence[Line], near: Sequence[int]) -> set[int]:
    """Return those of the lines beside page numbers that are heads and stand on several pages."""
    if not near:
        return set()
    heads = Counter(_bare(line) for line in lines if 0 < len(line.text) <= LONGEST_PAGE_LINE)
    return {place for place in near if heads[_bare(lines[place])] > 1}


def _may_run(line: Line) -> bool:
    return bool(_bare(line)) and is_heading(line.raw.strip())


def _bare(line: Line) -> str:
    return _DIGITS.sub(" ", line.text).strip() if len(line.text) <= LONGEST_PAGE_LINE else ""


def _next_filled(lines: Sequence[Line], index: int, step: int) -> int | None:
    """Return the nearest line with words, past one or two empty ones."""
    for near in range(index + step, index + (LINES_BETWEEN + 1) * step, step):
        if 0 <= near < len(lines) and lines[near].text.strip():
            return near
    return None


def _add_empty(lines: Sequence[Line], index: int, step: int, out: set[int]) -> None:
    """Take the empty lines beside a page mark as part of it."""
    near = index + step
    while 0 <= near < len(lines) and near not in out and not lines[near].text.strip():
        out.add(near)
        near += step
