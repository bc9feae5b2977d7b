"""Row labels: "Row 1 (RS):", "2nd and 4th rows:", "Row 2 and all WS rows:", "Rows 3-8:", "Setup row:"."""

from __future__ import annotations

import re
from dataclasses import dataclass

from counterpane.craft.rows.tree import Side
from counterpane.craft.rows.words import LONGEST_NUMBER, NUMBER_WORDS

MOST_ROWS_AT_ONCE = 2000
_ORDINALS = {
    word: number
    for number, word in enumerate(
        "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth "
        "fifteenth sixteenth seventeenth eighteenth nineteenth twentieth".split(),
        start=1,
    )
}
_ROW = r"(?:rows?|rnds?|rounds?)"
_NUM = rf"(?:\d+(?:st|nd|rd|th)?|{'|'.join(_ORDINALS)})"
_JOIN = r"(?:\s*,\s*and\s+|\s*,\s*|\s+and\s+|\s*&\s*|\s+to\s+|\s+through\s+|\s*-\s*)"
LIST = rf"{_NUM}(?:{_JOIN}(?:{_ROW}\s+)?{_NUM})*"
_SIDE = r"(?:rs|ws|right[- ]side|wrong[- ]side)(?: facing)?"
_ALSO = (
    r"(?:\s*,?\s+and\s+(?P<also>(?:all|every)\s+(?:foll(?:owing)?\s+)?"
    rf"(?:{_SIDE}|even(?:[- ]numbered)?|odd(?:[- ]numbered)?|alt(?:ernate)?|other(?: {_SIDE})?|\d+(?:st|nd|rd|th))"
    rf"\s+{_ROW})"
    rf"|\s*(?P<all>(?:all|every)\s+(?:{_SIDE}|even(?:[- ]numbered)?|odd(?:[- ]numbered)?|alt(?:ernate)?|other)"
    rf"\s+{_ROW}))"
)
_TAIL = rf"(?:\s*[(\[]\s*(?P<side>{_SIDE})(?:\s*{_ROW}?)?\s*[)\]]|\s*,?\s+(?P<bare>rs|ws)\b)?"
LABEL = re.compile(
    rf"(?:\*\*|__)?(?:{_ROW}\.?\s*(?P<after>{LIST})(?![a-z0-9/])|r(?P<short>\d+)(?=\s*[:.(])"
    rf"|(?:the\s+)?(?P<before>{LIST})\s+{_ROW}\b"
    rf"|(?:the\s+)?(?:next|foll(?:owing)?)\s+(?:(?P<next>\d+|{'|'.join(NUMBER_WORDS)})\s+)?{_ROW}\b"
    rf"|(?P<word>set-?\s?up|foundation|preparation|prep|edge|joining|increase|decrease|inc|dec)\s+{_ROW}\b"
    rf"|(?P<every>(?:all|every)\s+(?:{_SIDE}|even(?:[- ]numbered)?|odd(?:[- ]numbered)?|alt(?:ernate)?)\s+{_ROW})\b)"
    rf"(?:{_ALSO})?(?:\*\*|__)?{_TAIL}(?:\*\*|__)?\s*(?P<colon>[:.=]|-(?=\s))?(?:\*\*|__)?"
)
_ITEM = re.compile(rf"({_JOIN})?(?:{_ROW}\s+)?({_NUM})")


@dataclass(frozen=True, slots=True)
class Label:
    """The rows that a label names.

    `numbers` in the order printed, empty for a worded label; `word` its name then; `copies` how many rows "next 2 rows"
    stands for. `also` is (first, step) of further rows that it stands for ("and all WS rows"), None where none.
    """

    numbers: tuple[int, ...]
    word: str = ""
    copies: int = 1
    side: Side | None = None
    also: tuple[int, int] | None = None
    round: bool = False
    too_long: bool = False


def number_of(text: str) -> int | None:
    """Return the number of "3", "3rd" or "third"; None for one too long to be a row."""
    if text in _ORDINALS:
        return _ORDINALS[text]
    digits = re.match(r"\d+", text)
    return int(digits.group()) if digits and len(digits.group()) <= LONGEST_NUMBER else None


def numbers_in(text: str) -> tuple[int, ...]:
    """Return the numbers of a list: "1-4" and "1 to 4" are runs, "1, 3 and 5" are single.

    A run of more than `MOST_ROWS_AT_ONCE` gives its two ends alone: `is_too_long` tells.
    """
    out: list[int] = []
    for join, item in _ITEM.findall(text):
        number = number_of(item)
        if number is None:
            continue
        run = join.strip() in ("-", "to", "through") and out
        if run and out[-1] < number <= out[-1] + MOST_ROWS_AT_ONCE:
            out.extend(range(out[-1] + 1, number + 1))
        else:
            out.append(number)
    return tuple(out)


def is_too_long(text: str) -> bool:
    """Tell whether a list names a run of more rows than are read at once."""
    numbers = numbers_in(text)
    return any(
        join.strip() in ("-", "to", "through") and after > before + MOST_ROWS_AT_ONCE
        for (join, _), before, after in zip(_ITEM.findall(text)[1:], numbers, numbers[1:], strict=False)
    )


def label_of(match: re.Match[str]) -> Label:
    """Return what a match of LABEL names."""
    text = match.group()
    printed = match["after"] or match["short"] or match["before"]
    numbers = numbers_in(printed) if printed else ()
    side = _side(match["side"] or match["bare"])
    also = _also(match["also"] or match["all"] or match["every"], numbers)
    side = side or _side(match["also"] or match["every"] or "")
    copies = match["next"]
    return Label(
        numbers,
        _word(match, numbers),
        min(MOST_ROWS_AT_ONCE, int(copies) if copies and copies.isdigit() else NUMBER_WORDS.get(copies or "", 1)),
        side,
        also,
        bool(re.search(r"\br(?:ou)?nds?\b", text)),
        bool(printed) and is_too_long(printed),
    )


def _word(match: re.Match[str], numbers: tuple[int, ...]) -> str:
    if numbers or match["every"]:
        return ""
    return re.sub(r"[-\s]", "", match["word"]) if match["word"] else "next"


def _side(text: str | None) -> Side | None:
    if not text:
        return None
    if re.search(r"\brs\b|right", text):
        return "RS"
    return "WS" if re.search(r"\bws\b|wrong", text) else None


def _also(text: str | None, numbers: tuple[int, ...]) -> tuple[int, int] | None:
    """Return (first, step) of the rows that "and all WS rows" or "every foll 4th row" adds."""
    if not text:
        return None
    step = re.search(r"\b(\d+)(?:st|nd|rd|th)\b", text)
    if step:
        return (numbers[-1] if numbers else 1, max(1, int(step.group(1)[:6])))
    if numbers:
        return (numbers[-1], 2)
    return (2 if re.search(r"\bws\b|wrong|even", text) else 1, 2)
