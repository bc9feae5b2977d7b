"""A text on its way to one size: what is not for this size is left out, and every letter keeps its place."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Sequence
from itertools import compress

from counterpane.craft.rows.sizes.flat import Flat
from counterpane.craft.rows.sizes.phrase import OPENING, Window
from counterpane.craft.rows.words import Line

# House bound: no phrase of a row is longer. Beyond it nothing is looked at, so that the time stays in proportion to
# the text.
LONGEST_PHRASE = 400
_REPEAT = re.compile(r"\brep(?:eat)?\s+(?:the\s+)?(?:from\s+)?(?P<star>[*†#]+)\s*$")
_LAST = re.compile(r"\b(?:to|until)\s+(?P<last>(?:the\s+)?last\s*)$")
_TO = re.compile(r"\bto\s*$")
_STITCHES = re.compile(r"\s*(?:sts?|stitches)\b")
_BEFORE = re.compile(r"\s*(?:sts?|stitches)\s+before\s+")
_LABEL = re.compile(r"\b(?:rows?|rnds?|rounds?)\s*(?:\d+\s*(?:-|to|,|and|&)\s*)*$")
_LINE_END = re.compile("\n")
_MORE = re.compile(r"\s*(?:more\s+times|times\s+more)\b")


class Draft:
    """One string for each letter of the text: itself, nothing, or what stands there instead."""

    def __init__(self, flat: Flat) -> None:
        self.flat = flat
        self.letters = list(flat.text)
        self.capitals: set[int] = set()
        self.touched: set[int] = set()
        self.cut_through: set[int] = set()

    def drop(self, start: int, end: int) -> None:
        """Leave out a stretch; line ends stay, and the lines that end within it are known to be `cut_through`."""
        first = self.flat.line_at(start)
        if end <= self.flat.line_end(first):  # As nearly all of them do, it stands within one line.
            self.letters[start:end] = [""] * (end - start)
            if start < end:
                self.touched.add(first)
            return
        self.letters[start:end] = [kept if kept == "\n" else "" for kept in self.letters[start:end]]
        self.touched.update(range(first, self.flat.line_at(end - 1) + 1))
        self.cut_through.update(range(first, self.flat.line_at(end)))

    def drop_word(self, start: int, end: int) -> None:
        """Leave out words at the head of a sentence; their capital goes to what follows."""
        line = self.flat.line_at(start)
        at = start - self.flat.starts[line]
        if self.flat.lines[line].given(at, at + 1).isupper():
            self.capitals.add(end)
        self.drop(start, end)

    def put(self, start: int, end: int, words: str) -> None:
        """Put words in the place of a stretch."""
        self.drop(start, end)
        self.letters[start] = words

    def line(self, number: int) -> Line:
        """Return one line as it stands for this size, every letter with its column in the text as given."""
        line, letters = self.flat.lines[number], self._letters(number)
        own = line.columns or range(1, len(line.text) + 2)
        text = "".join(letters)
        columns: list[int] = list(compress(own, letters))
        if len(columns) != len(text):  # Words were put in the place of a letter.
            columns = [own[index] for index, kept in enumerate(letters) for _ in kept]
        return Line(line.number, text, (*columns, len(line.raw) + 1), line.raw)

    def given(self, number: int) -> tuple[str, tuple[int, ...]]:
        """Return one line as given, for this size, and the column of each letter of it."""
        line, start, kept = self.flat.lines[number], self.flat.starts[number], self._letters(number)
        if line.columns is None:
            columns = tuple(compress(range(1, len(kept) + 1), kept))
            if len(columns) == sum(map(len, kept)):  # No words were put in the place of a letter.
                raw = list(line.raw)
                for index in self.capitals.intersection(range(start, start + len(kept))):
                    raw[index - start] = raw[index - start].upper()
                return "".join(compress(raw, kept)), columns
        return self._given_by_letters(line, start, kept)

    def _given_by_letters(self, line: Line, start: int, kept: Sequence[str]) -> tuple[str, tuple[int, ...]]:
        own = line.columns or range(1, len(line.text) + 2)
        out: list[str] = []
        columns: list[int] = []
        for index, letters in enumerate(kept):
            if letters:
                # Letters that the normal form drops stay with the letter before them, the first ones with the first.
                first, last = own[index] - 1 if index else 0, own[index + 1] - 1
                words = line.raw[first:last] if letters == line.text[index] else letters
                out.append(words.upper() if start + index in self.capitals else words)
                columns += range(first + 1, first + 1 + len(words))
        return "".join(out), tuple(columns)

    def _letters(self, number: int) -> list[str]:
        start = self.flat.starts[number]
        return self.letters[start : start + len(self.flat.lines[number].text)]

    def leave_out(self, start: int, end: int) -> None:
        """Leave out what works nothing around the 0 or dash of this size."""
        window, low = self._window(start, end)
        before, behind = window.text[:low], window.text[low + end - start :]
        dash = self.flat.text[start:end] == "-"
        if self._worded_as_end(window, low, low + end - start):
            return
        if _LABEL.search(before):
            self.drop(self.flat.starts[self.flat.line_at(start)], self.flat.paragraph_end(start))
            return
        if not dash and before.rstrip()[-1:] in OPENING and _STITCHES.match(behind):
            return
        star = _REPEAT.search(before)
        if star is None:
            self._leave_out(window, low, low + end - start)
        elif dash or _MORE.match(behind):
            self._leave_out(window, star.start(), low + end - start)
            self._forget_star(window, star["star"], star.start())

    def leave_out_phrase(self, start: int, end: int) -> None:
        """Leave out the phrase that a stretch stands in, with its comma."""
        window, low = self._window(start, end)
        self._leave_out(window, low, low + end - start)

    def _window(self, start: int, end: int) -> tuple[Window, int]:
        """Return the letters kept around a stretch, as far as its row goes, and the stretch's place among them."""
        first, last = self._row_around(start, end)
        kept = self.letters[first:last]
        at = tuple(compress(range(first, last), kept))
        text = "".join(compress(self.flat.text[first:last], kept))
        line_ends = (match.start() for match in _LINE_END.finditer(text))
        ends = frozenset(n for n in line_ends if self.flat.begins(self.flat.line_at(at[n]) + 1))
        return Window(text, at, ends), bisect_left(at, start)

    def _row_around(self, start: int, end: int) -> tuple[int, int]:
        """Return where the row of a stretch begins, and ends with the blanks behind it; no phrase is longer."""
        flat = self.flat
        line, low, high = flat.line_at(start), start - LONGEST_PHRASE, end + LONGEST_PHRASE
        while flat.starts[line] > low and not flat.begins_row(line):
            line -= 1
        behind = flat.line_at(end) + 1
        while behind < len(flat.lines) and flat.starts[behind] < high and not flat.begins_row(behind):
            behind += 1
        stop = flat.starts[behind] if behind < len(flat.lines) else len(flat.text)
        return max(0, low, flat.starts[line]), min(high, stop)

    def _leave_out(self, window: Window, low: int, high: int) -> None:
        begin, end = window.phrase(low, high)
        if begin < end:
            first, last = window.at[begin], window.at[end - 1] + 1
            line = self.flat.line_at(first)
            if (
                self.flat.lines[line]
                .given(first - self.flat.starts[line], first - self.flat.starts[line] + 1)
                .isupper()
            ):
                self.capitals.update(window.at[end : end + 1])
            self.drop(first, last)

    def _worded_as_end(self, window: Window, low: int, high: int) -> bool:
        """Word "to last 0 sts" as "to end" and "to 0 sts before marker" as "to marker"."""
        last, stitches = _LAST.search(window.text, 0, low), _STITCHES.match(window.text, high)
        if last and stitches:
            self.put(window.at[last.start("last")], window.at[stitches.end() - 1] + 1, "end")
            return True
        marker = _BEFORE.match(window.text, high) if _TO.search(window.text, 0, low) else None
        if marker:
            self.drop(window.at[low], window.at[marker.end() - 1] + 1)
        return bool(marker)

    def _forget_star(self, window: Window, star: str, index: int) -> None:
        found = window.text.rfind(star, 0, index)
        if found >= 0:
            self.drop(window.at[found], window.at[found + len(star) - 1] + 1)
