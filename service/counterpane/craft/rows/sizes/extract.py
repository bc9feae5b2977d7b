"""A text of several sizes with the numbers of one size alone, everything else as it stands."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from counterpane.craft.rows.sizes.draft import Draft
from counterpane.craft.rows.words import LINE_END

_END = re.compile(LINE_END)


@dataclass(frozen=True, slots=True)
class Extract:
    """The text of one size, and for each letter of it the offset of its own in the text as given."""

    text: str
    offsets: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class _Given:
    """A line of the extract with its end: its letters, their offsets, whether anything of it was left out."""

    text: str
    offsets: Sequence[int]
    changed: bool

    @property
    def blank(self) -> bool:
        """Whether nothing is to be seen on it."""
        return not self.text.strip()


def extract(text: str, draft: Draft, *, keep_lines: bool = False) -> Extract:
    """Return the text of one size; a line of which nothing is left goes with its end, unless lines are to be kept."""
    lines = list(_lines(text, draft))
    if not keep_lines:
        lines = list(_without_emptied(lines))
    mark = text.startswith("\ufeff")
    offsets = [offset for line in lines for offset in line.offsets]
    return Extract("\ufeff" * mark + "".join(line.text for line in lines), (*range(mark), *offsets))


def _lines(text: str, draft: Draft) -> Iterator[_Given]:
    begin = int(text.startswith("\ufeff"))
    ends = [match.span() for match in _END.finditer(text, begin)]
    for number, (end, behind) in enumerate([*ends, (len(text), len(text))]):
        if number in draft.touched:
            words, columns = draft.given(number)
            offsets = [begin + column - 1 for column in columns]
            words, offsets = _trimmed(words, offsets, text[begin:end])
        else:
            words, offsets = text[begin:end], list(range(begin, end))
        yield _Given(words + text[end:behind], [*offsets, *range(end, behind)], number in draft.touched)
        begin = behind


def _trimmed(words: str, offsets: list[int], given: str) -> tuple[str, list[int]]:
    """Leave out blanks at the ends of a line that had none there."""
    first = 0 if given[:1].isspace() else len(words) - len(words.lstrip())
    last = len(words) if given[-1:].isspace() else len(words.rstrip())
    return words[first:last], offsets[first:last]


def _without_emptied(lines: Sequence[_Given]) -> Iterator[_Given]:
    """Yield the lines without those that were emptied, and one blank line where these stood between two."""
    before: _Given | None = None
    gap = False
    for line in lines:
        if line.changed and line.blank:
            gap = True
        elif not (gap and line.blank and before is not None and before.blank):
            yield line
            before, gap = line, False
