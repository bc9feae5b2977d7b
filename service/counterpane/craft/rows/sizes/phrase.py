"""The phrase around a place of a row: from the sign before it to the sign behind it, brackets passed over whole."""

from __future__ import annotations

import re
from dataclasses import dataclass

OPENING, CLOSING = frozenset("([{"), frozenset(")]}")
_SIGNS = frozenset(",;:*†")
_JOIN = re.compile(r"\s(then|and)\s")
_WORKED = re.compile(r"\s*(?:(?:then|and)\s+)?(?:rep(?:eat)?\b|work\b|knit\s+-?\d|purl\s+-?\d)")
_COUNT = re.compile(r"\s*[(\[][^()\[\]]*\b(?:sts?|stitches)\b[^()\[\]]*[)\]]\.?")
# What may stand between a bracket and the next sign and still speak of the bracket: "(p0) twice", "rep (p0)".
_OF_BRACKET = re.compile(
    r"\s*(?:(?:\d|[(\[]|(?:once|twice|thrice|times|x|more|a|for|in|into|to|until|till|across|all|from|rep|repeat|work)\b).*)?",
    re.DOTALL,
)
_GOING_ON = frozenset({",", ";", "then", "and"})
_SENTENCE = frozenset({"", "."})
_BLANKS = re.compile(r"\s*")


@dataclass(frozen=True, slots=True)
class Window:
    """The letters kept around a place, where each stands in the text, and which line ends end a row too."""

    text: str
    at: tuple[int, ...]
    ends: frozenset[int]

    def edge_before(self, index: int) -> tuple[int, str]:
        """Return where the phrase begins that goes on at an index, and the sign before it ("" for a line end)."""
        depth, text = 0, self.text
        for here in range(index - 1, -1, -1):
            letter = text[here]
            depth += (letter in CLOSING) - (letter in OPENING)
            if depth < 0 or (depth == 0 and self._is_sign(here)):
                return here + 1, letter
            if depth == 0 and here in self.ends:
                return here + 1, ""
            if depth == 0 and (join := _JOIN.match(text, here, index + 1)):
                return join.end() - 1, join.group(1)
        return 0, ""

    def edge_behind(self, index: int) -> tuple[int, str]:
        """Return where the phrase ends that goes on at an index, and the sign behind it ("" for a line end)."""
        depth, text = 0, self.text
        for here in range(index, len(text)):
            letter = text[here]
            depth += (letter in OPENING) - (letter in CLOSING)
            if depth < 0 or (depth == 0 and self._is_sign(here)):
                return here, letter
            if depth == 0 and here in self.ends:
                return here, ""
            if depth == 0 and (join := _JOIN.match(text, here)):
                return here, join.group(1)
        return len(text), ""

    def _is_sign(self, index: int) -> bool:
        """Tell whether a letter ends a phrase: a sign, or the full stop of a sentence."""
        text = self.text
        if text[index] == ".":
            return index + 1 == len(text) or text[index + 1].isspace()
        return text[index] in _SIGNS

    def phrase(self, start: int, end: int) -> tuple[int, int]:
        """Return what to leave out so that the phrase around a stretch is gone with its comma.

        Brackets that hold nothing else go with it, and so does a sentence or a labelled row.
        """
        (low, before), (high, behind) = self.edge_before(start), self.edge_behind(end)
        while before in OPENING and behind in CLOSING:
            opened, closed = low - 1, high + 1
            (low, before), (high, behind) = self.edge_before(opened), self.edge_behind(closed)
            led, followed = self._works(low, opened), self._works(closed, high)
            if led:
                return self._back_over(opened), closed
            if followed:
                return opened, self._on_over(closed)
        if before in _SENTENCE and _WORKED.match(self.text, low):
            while behind in _GOING_ON:
                high, behind = self.edge_behind(high + len(behind) + (len(behind) > 1))
        if before in _GOING_ON and not (behind in _GOING_ON and (before == ";" or "\n" in self.text[low:high])):
            return self._back_over(low - len(before)) if before else low, high
        if behind in _GOING_ON:
            return self._on_over(low), self._on_over(high + len(behind) + (len(behind) > 1))
        if behind in _SENTENCE and before in (":", *_SENTENCE):
            return self._sentence(low, before, high + len(behind))
        return self._on_over(low), self._on_over(high)

    def _works(self, start: int, end: int) -> bool:
        """Tell whether what stands beside a bracket is work of its own."""
        return not _OF_BRACKET.fullmatch(self.text, start, end)

    def _back_over(self, index: int) -> int:
        return len(self.text[:index].rstrip())

    def _on_over(self, index: int) -> int:
        blanks = _BLANKS.match(self.text, index)
        return blanks.end() if blanks else index

    def _sentence(self, low: int, before: str, high: int) -> tuple[int, int]:
        """Return a whole sentence, with its label and the count after it where it is a row."""
        if before != ":":
            return low, high
        line = self.text.rfind("\n", 0, low) + 1
        sentence = self.text.rfind(". ", line, low)
        count = _COUNT.match(self.text, high)
        return (sentence + 1 if sentence >= 0 else line), count.end() if count else high
