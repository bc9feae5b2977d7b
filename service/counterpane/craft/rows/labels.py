"""Row labels: "Row 1 (RS):", "2nd and 4th rows:", "Row 2 and all WS rows:", "Rows 3-8:", "Setup row:"."""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import pairwise

from counterpane.craft.records import record
from counterpane.craft.rows.tree import Side
from counterpane.craft.rows.words import LONGEST_NUMBER, NUMBER_WORD, NUMBER_WORDS

MOST_ROWS_AT_ONCE = 2000  # House.
_ROMAN_UNITS = ("", "i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix")
NTH = {
    word: number
    for number, word in enumerate(
        "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth "
        "fifteenth sixteenth seventeenth eighteenth nineteenth twentieth".split(),
        start=1,
    )
}
_ROMANS = {"x" * ten + unit: 10 * ten + one for ten in range(4) for one, unit in enumerate(_ROMAN_UNITS) if ten + one}
ENDINGS = ("st", "nd", "rd", "th", "d")
"""What follows the digits of an ordinal: 1st, 2nd, and 2d as old books print it."""

_ENDING = rf"(?:{'|'.join(ENDINGS)})"
_ENDED = "|".join(
    ending if len(ending) > 1 else rf"\d{ending}" for ending in ENDINGS
)  # Looked back at: all of a length.
ROW = r"(?:rows?|rnds?|rounds?)"
# "R3" where rows are labelled so; a letter before a number, and no stitch.
NAMED_ROW = rf"(?:{ROW}\s*|r\.?\s?(?=\d))"
ORDINAL = rf"(?:\d+{_ENDING}|{'|'.join(NTH)})"
_NUM = rf"(?:\d++{_ENDING}?|{'|'.join(NTH)}|(?:{NUMBER_WORD})\b)"
_JOIN = r"(?:\s*,\s*and\s+|\s*,\s*|\s+and\s+|\s*[&+/]\s*|\s+to\s+|\s+thru\s+|\s+through\s+|\s*-\s*)"
_RUNS = ("-", "to", "thru", "through")
_ROMAN = r"(?=[ivx])x{0,3}(?:ix|iv|v?i{0,3})(?![a-z0-9])"
_AFTER_NAME = r"(?:once|twice|until|till|for|inclusive|throughout)\b|\d"
# "Rep rows 1-4 to 30 in." names four rows.
_MEASURED = r"\s*+(?:\"|(?:(?:more\s+)?times?|sts?|stitches|ins|inch(?:es)?|cm|in(?=\s*(?:[.,;]|$)))\b)"
LIST = rf"{_NUM}(?:{_JOIN}(?:{ROW}\s+|r(?=\d))?{_NUM}(?!{_MEASURED}))*"
NAMES = rf"(?:{LIST}|{_ROMAN}(?:{_JOIN}(?:{ROW}\s+)?{_ROMAN})*(?=\s*(?:[^\sa-z]|$|{_AFTER_NAME})))"
ORDINALS = rf"{_NUM}(?:{_JOIN}{_NUM})*(?<={_ENDED})|{ORDINAL}"
HOW_MANY = rf"(?:\d+|{NUMBER_WORD})"
_SIDE = r"(?:rs|ws|right[- ]side|wrong[- ]side)(?:\s+facing)?"
_KIND = rf"(?:{_SIDE}|even(?:[- ]numbered)?|odd(?:[- ]numbered)?|alt(?:ernate)?|\d+{_ENDING})"
_NEEDLE = r"(?:needles?|pins?|turns?)(?=\s*[:.(=-])"
_FURTHER = r"(?:(?:foll(?:owing)?|subsequent|remaining|succeeding|rem|the)\s+)*"
_ALL_OF = (
    rf"(?:(?:all|every|each)\s+{_FURTHER}(?:(?:other\s+)?{_KIND}|other)|(?:the\s+)?foll(?:owing)?\s+alt(?:ernate)?)"
    rf"\s+{ROW}\b(?:\s+thereafter)?"
)
# Possessive blanks: a line of a megabyte of them is looked at once.
_ALSO = rf"(?:\s*+,?\s*+[(\[]?\s*+(?:(?:and|&)\s+)?(?:on\s+)?(?P<also>{_ALL_OF})\s*+[)\]]?)"
_NOTES = r"(?:\s*+[(\[](?!\s*+(?:and|&)\s)[^()\[\]:]{1,40}[)\]]){1,3}(?=\s*+[*_]{0,3}\s*+:)"
PARTS = r"(?:patt(?:ern)?|pat|border|body|edging|main|chart|lace|cable|panel|rib(?:bing)?|moss|seed|garter)"
PART = rf"(?:{PARTS}\s+)?"
_OF_PART = r"(?:\s+of\s+(?:the\s+)?[a-z]+(?:\s+[a-z]+)?(?=\s*[:(\[]))?"


def _tail(name: str) -> str:
    """Return the pattern of notes and sides behind a label; the side is found in what it matches."""
    side = rf"\s*+[(\[]\s*+{_SIDE}(?:\s*{ROW})?\s*[)\]]|\s*+(?:,\s*+)?(?<=[\s,])(?:rs|ws)\b"
    return rf"(?P<{name}>{_NOTES}|{side})?"


_BEGIN = (
    rf"(?P<deco>\*{{1,3}}|_{{1,2}})?(?:with\s+)?(?:(?P<lead>[(\[]?{_SIDE}[)\]]?)\s*+[:,-]?\s*+(?=row|rnd|round|\d))?"
)
_END = rf"{_OF_PART}{_tail('before_also')}{_ALSO}?(?:(?P=deco))?{_tail('behind')}(?:(?P=deco))?"
_COLON = r"\s*+(?P<colon>[:=)]|\.+|-+(?=\s|[a-z*]))?-*(?:(?P=deco))?"
KNOWN = "set-?\\s?up|foundation|preparation|prep|edge|joining|increase|decrease|inc|dec"
_WORKED = r"[kp]\d|[kp]\s|[*(\[]|(?:knit|purl|same|sl)\b"  # Behind "R1" without a sign.
LABEL = re.compile(
    rf"{_BEGIN}(?:{PART}{ROW}\.?\s*(?:#\s*|no\.?\s*)?(?P<after>{NAMES})(?:\s*\(?incl(?:usive)?\.?\)?|\+(?=\s*:))?(?![a-z0-9/])"
    rf"|{PART}{ROW}\s+(?P<letter>\d{{0,4}}[a-z])(?=\s*[:.(=]|\s-\s)"
    rf"|(?P<each>every|each|all)\s+{ROW}\b(?=\s*[:(=]|\s-\s|\s(?:knit|purl|k\d|p\d))"
    rf"|r\.?\s?(?P<short>\d+(?:\s*-\s*(?:r\.?\s?)?\d+)?(?=\s*\.)"
    rf"|\d+(?:{_JOIN}(?:r\.?\s?)?\d+)*(?=\s*[:(\[]|\s+(?:{_WORKED})|,?\s++(?:and|&)\s++(?:all|every)\s))"
    rf"|(?:the\s+)?(?P<before>{ORDINALS})(?:\s+(?:{PART}{ROW}\b|(?P<tool>{_NEEDLE}))|(?=,?\s++(?:and|&)\s++(?:on\s++)?(?:all|every)\s)"
    r"|(?=\s?:|\.\s?-|\s?--|\s-\s))"
    rf"|(?:the\s+)?(?:next|foll(?:owing)?)\s+(?:(?P<next>{HOW_MANY})\s+)?(?:{ROW}\b|(?P<next_turn>turns?\b))|next(?=\s*:)"
    rf"|(?:\d{{1,3}}{_ENDING}\s+)?(?P<word>{KNOWN})\s+{ROW}\b(?:\s+(?P<worded>{LIST}))?|(?:the\s+)?(?P<every>{_ALL_OF}|{_KIND}\s+{ROW}\b))"
    rf"{_END}{_COLON}"
)
_PLAIN = re.compile(r"row (\d{1,9}):(?!-)")  # As most labels are: what LABEL says of it is known.
_WORDED = re.compile(
    rf"(?:\*\*|__)?(?P<word>[a-z][a-z'-]+(?:\s+[a-z][a-z'-]+)?)\s+{ROW}\b{_tail('behind')}(?:\*\*|__)?\s*:"
)
_NO_NAME = re.compile(r"\b(?:work|rep|repeat|knit|purl|k|p|of|on|in|to|for|with|from|until|and|at|as|per|than)\b")
# "INCREASE ROWS", alone on its line, is the heading of rows.
_HEADS = re.compile(r"s\s*$")
_PART_NAME = re.compile(rf"({PARTS})\s+{ROW}")
_DIGITS = re.compile(r"\d+")
_ITEM = re.compile(rf"({_JOIN})?(?:{ROW}\s+|r\.?\s?(?=\d))?({_NUM}|{_ROMAN})")
_TELLS = re.compile(
    r"\s*(?:is|are|was|were|should|shows?|will|forms?|formed|sets?|makes?|has|have|may|can|could|must|contains?|counts?|"
    r"begins?|starts?|being|of|in|for|on|at|by|from|if|when|only|above|below|after|before|until|establish|comprise)\b"
)

# A sentence that says what a row is: "the 2nd row is purled", "rows 3 and 4 are worked like the first two".
_DESCRIBED = re.compile(
    r"\s*(?:is|are)\s+(?:(?:all|then|to\s+be|also)\s+)*"
    r"(?=(?:worked|knit(?:ted)?|purl(?:ed)?|seamed|plain|the\s+same|same|like|as|done|made|similar|a\s+repetition)\b"
    r"(?!\s+(?:until|till|once|twice|for\s+the\s+(?:pattern|border))\b))(?:made\s+|done\s+)?"
)


@record
class Label:
    """The rows that a label names.

    `numbers` in the order printed, empty for a worded label; `word` its name then; `copies` how many rows "next 2 rows"
    stands for. `also` is (first, step) of further rows that it stands for ("and all WS rows"), None where none. `part`
    is the part named before its numbers ("rib row 1").
    """

    numbers: tuple[int, ...]
    word: str = ""
    copies: int = 1
    side: Side | None = None
    also: tuple[int, int] | None = None
    round: bool = False
    too_long: bool = False
    part: str | None = None


@lru_cache(maxsize=8)
def label_at(text: str, start: int, end: int) -> tuple[Label, int] | None:
    """Return the label that stands at a place and where it ends; None where none does, or a sentence about a row.

    The latest answers are kept, since whoever cuts a text asks several times at one place.
    """
    plain = _PLAIN.match(text, start, end)
    if plain is not None:
        return Label((int(plain[1]),)), plain.end()
    match = LABEL.match(text, start, end)
    if match is None:
        worded = _WORDED.match(text, start, end)
        if worded is None or _NO_NAME.search(worded["word"]):
            return None
        label = Label((), worded["word"], 1, _side(worded["behind"]), round=_is_round(worded.group()))
        return label, worded.end()
    if match["colon"] is not None:
        return _label_of(match), match.end()
    if match["word"] and _HEADS.match(text, match.end() - 1, end):
        return None
    described = _DESCRIBED.match(text, match.end(), end)
    if described is None and _TELLS.match(text, match.end(), end):
        return None
    return _label_of(match), described.end() if described else match.end()


def _label_of(match: re.Match[str]) -> Label:
    """Return what a match of LABEL names."""
    text, every = match.group(), match["every"] or ""
    printed = match["after"] or match["short"] or match["before"] or match["worded"]
    numbers = numbers_in(printed) if printed else ()
    side = _side(f"{match['lead'] or ''} {match['before_also'] or ''} {match['behind'] or ''}")
    also = _also(match["also"] or every, numbers)
    copies = match["next"] or ""
    rows = 1 if (found := number_of(copies[:LONGEST_NUMBER])) is None else found
    word = match["word"] or match["letter"] or (match["each"] and "every") or "next"
    if (match["tool"] or "").startswith("turn"):
        numbers = tuple(row for turn in numbers for row in (2 * turn - 1, 2 * turn))
    part = _PART_NAME.search(text) if numbers else None
    return Label(
        numbers,
        "" if numbers or every else re.sub(r"[-\s]", "", word),
        rows * (2 if match["next_turn"] else 1),
        side or _side(match["also"] or every),
        also,
        _is_round(text),
        bool(printed) and is_too_long(printed),
        part[1] if part else None,
    )


def number_of(text: str) -> int | None:
    """Return the number of "3", "3rd", "third", "three" or "iii"; None for one too long to be a row."""
    if text.isdecimal() and text.isascii():
        return int(text) if len(text) <= LONGEST_NUMBER else None
    word = NTH.get(text) or NUMBER_WORDS.get(text) or _ROMANS.get(text)
    digits = _DIGITS.match(text)
    return word or (int(digits.group()) if digits and len(digits.group()) <= LONGEST_NUMBER else None)


def numbers_in(text: str) -> tuple[int, ...]:
    """Return the numbers of a list: "1-4" and "1 to 4" are runs, "1, 3 and 5" are single.

    A run of more than `MOST_ROWS_AT_ONCE` gives its two ends alone: `is_too_long` tells.
    """
    if text.isdecimal():  # Most labels name one row.
        number = number_of(text)
        return () if number is None else (number,)
    out: list[int] = []
    for join, item in _ITEM.findall(text):
        number = number_of(item)
        if number is None:
            continue
        run = join.strip() in _RUNS and out
        if run and out[-1] < number <= out[-1] + MOST_ROWS_AT_ONCE:
            out.extend(range(out[-1] + 1, number + 1))
        else:
            out.append(number)
    return tuple(out)


def is_too_long(text: str) -> bool:
    """Tell whether a list names a run of more rows than are read at once."""
    if text.isdecimal():
        return False
    items = [(join.strip() in _RUNS, number_of(item)) for join, item in _ITEM.findall(text)]
    return any(
        run and first is not None and (last is None or last > first + MOST_ROWS_AT_ONCE)
        for (_, first), (run, last) in pairwise(items)
    )


def _is_round(text: str) -> bool:
    return bool(re.search(r"\br(?:ou)?nds?\b", text))


def _side(text: str | None) -> Side | None:
    if not text:
        return None
    if re.search(r"\brs\b|right[- ]side", text):
        return "RS"
    return "WS" if re.search(r"\bws\b|wrong[- ]side", text) else None


def _also(text: str, numbers: tuple[int, ...]) -> tuple[int, int] | None:
    """Return (first, step) of the rows that "and all WS rows" or "every foll 4th row" adds.

    The first of "every alternate row" alone is 0: which rows are meant depends on those that are printed.
    """
    if not text:
        return None
    step = re.search(rf"\b(\d+){_ENDING}\b", text)
    if step:
        every = max(1, int(step.group(1)[:6]))
        return (numbers[-1] if numbers else every, every)
    if numbers:
        return (numbers[-1], 2)
    if re.search(r"\balt|\bother\s+r", text):
        return (0, 2)
    return (2 if re.search(r"\bws\b|wrong|even", text) else 1, 2)
