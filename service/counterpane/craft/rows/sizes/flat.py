"""A text in normal form as one string, so that what is wrapped over lines is found as well."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence

from counterpane.craft.rows.words import Line

MOST_WRAPPED = 40  # House.
_BEGINS = re.compile(
    r"\s*(?:\*\*|__|[-•>#]+\s*)?(?:$|(?:for\s+|all\s+)?sizes?\b|(?:next|set-?up|foll\w*|\d+(?:st|nd|rd|th))\s+r"
    r"|r(?:ow|nd|ound)s?\b|rep(?:eat)?\s+(?:the\s+)?(?:row|last)|cast\b|co\s|work\b|(?:knit|purl)\s+-?\d)"
)


class Flat:
    """The text, where its lines begin in it, and where rows and sentences end."""

    def __init__(self, lines: Sequence[Line]) -> None:
        self.lines = lines
        self.text = "\n".join(line.text for line in lines)
        self.starts = [0]
        for line in lines[:-1]:
            self.starts.append(self.starts[-1] + len(line.text) + 1)

    def line_at(self, index: int) -> int:
        """Return which line an index lies on, from 0."""
        return bisect_right(self.starts, index) - 1

    def line_end(self, line: int) -> int:
        """Return the index behind the last letter of a line."""
        return self.starts[line] + len(self.lines[line].text)

    def begins(self, line: int) -> bool:
        """Tell whether something of its own begins with a line: a row, a repeat line, a blank line, the end."""
        return line >= len(self.lines) or bool(_BEGINS.match(self.lines[line].text))

    def begins_row(self, line: int) -> bool:
        """Tell whether a row, a repeat line or a statement begins with a line."""
        return bool(self.lines[line].text.strip()) and self.begins(line)

    def paragraph_end(self, index: int) -> int:
        """Return where the row or sentence that an index stands in ends, with the lines into which it is wrapped."""
        line = self.line_at(index)
        last = line + MOST_WRAPPED
        while line < last and not self.begins(line + 1) and not self.lines[line].text.rstrip().endswith((".", ":")):
            line += 1
        return self.line_end(line)
