"""A text of several sizes with the numbers of one size alone, everything else as it stands."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence, Set
from dataclasses import dataclass
from itertools import chain

from counterpane.craft.records import record
from counterpane.craft.rows.sizes.draft import Draft
from counterpane.craft.rows.words import LINE_END

_CLOSING = frozenset(",;.:")
_END = re.compile(LINE_END)


@dataclass(frozen=True, slots=True)
class Extract:
    """The text of one size, and for each letter of it the offset of its own in the text as given."""

    text: str
    offsets: tuple[int, ...]


@record
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
    """Return the text of one size; unless lines are kept, emptied ones go, and those cut through are joined."""
    lines = list(_lines(text, draft, frozenset() if keep_lines else draft.cut_through))
    if not keep_lines:
        lines = list(_without_emptied(lines))
    mark = text.startswith("\ufeff")
    offsets = chain(range(mark), chain.from_iterable([line.offsets for line in lines]))
    return Extract("\ufeff" * mark + "".join([line.text for line in lines]), tuple(offsets))


def _lines(text: str, draft: Draft, joined: Set[int]) -> Iterator[_Given]:
    begin = start = int(text.startswith("\ufeff"))
    held: tuple[str, list[int]] = ("", [])
    ends = [match.span() for match in _END.finditer(text, begin)]
    for number, (end, behind) in enumerate([*ends, (len(text), len(text))]):
        given = _Given(text[begin:behind], range(begin, behind), number in draft.touched)
        if given.changed or held[0]:
            words, columns = draft.given(number)
            words, offsets = held[0] + words, held[1] + [begin + column - 1 for column in columns]
            if number in joined and _is_open(words) and _goes_on_within_words(draft, number + 1):
                held, begin = (words, offsets), behind
                continue
            words, offsets = _trimmed(words, offsets, text[start:end])
            given = _Given(words + text[end:behind], [*offsets, *range(end, behind)], given.changed)
        yield given
        held, begin, start = ("", []), behind, behind


def _is_open(words: str) -> bool:
    return words.strip() != "" and words.rstrip()[-1] not in _CLOSING


def _goes_on_within_words(draft: Draft, number: int) -> bool:
    """Tell whether what is left of a line cannot begin one: "6, p2" behind "K", ", p2" behind "K4"."""
    left = draft.given(number)[0]
    return bool(left) and not left[0].isspace()


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
