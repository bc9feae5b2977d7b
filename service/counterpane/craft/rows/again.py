"""Repeat lines: "Rep rows 1-4 5 times more.", "Rep last 2 rows until 3 sts remain.", "Work rows 1-6 once more."."""

from __future__ import annotations

import re
from dataclasses import dataclass

from counterpane.craft.rows.cursor import Cursor
from counterpane.craft.rows.labels import (
    HOW_MANY,
    KNOWN,
    NAMED_ROW,
    NAMES,
    ORDINAL,
    ORDINALS,
    PARTS,
    ROW,
    number_of,
    numbers_in,
)
from counterpane.craft.rows.stops import take_count
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LONGEST_NUMBER, NUMBER_WORD, NUMBER_WORDS, Line, tokens

_GO_ON = r"(?:(?:cont(?:inue)?|keep|cont\.)\s+(?:to\s+|on\s+)?)?"
_THOSE = r"(?:(?:all|the|these|those|last|previous|above|foregoing|preceding|this|of)\s+)"
_LETTER = r"\d{0,4}[a-z]"
_LETTERED = rf"(?P<letters>{_LETTER}(?:\s*(?:-|,|to|and|&|,\s*and)\s*{_LETTER})*)"
_STRIPES = r"(?:colou?r|stripe)s?\s+(?:sequence|patt(?:ern)?|repeat)\b"
_ALL = r"(?:all\s+(?:the\s+)?)?"
AGAIN = re.compile(
    rf"(?:(?:and\s+)?then\s+(?:the\s+)?(?={ROW}\s|first\s)|(?:(?:and\s+)?then\s+|now\s+)?{_GO_ON}"
    rf"(?P<verb>rep(?:eat(?:ing)?)?\.?|work(?:ing)?|knit)\s+)"
    rf"(?:(?:the\s+)?(?:(?P<named>{PARTS})\s+)?{NAMED_ROW}(?P<rows>{NAMES})(?![a-z0-9])|(?:the\s+)?{ROW}\s+{_LETTERED}(?![a-z])"
    rf"|(?:the\s+)?(?P<worded>{KNOWN})\s+{ROW}\b"
    rf"|(?:again\s+)?(?:from|beg(?:inning)?\s+(?:at|with))\s+(?:the\s+)?{ROW}\s*(?P<since>\d+)"
    rf"(?:\s+(?:to|through|-)\s+(?:{ROW}\s*)?(?P<upto>\d+))?"
    rf"|(?:again\s+)?from\s+(?:the\s+)?(?P<first>{ORDINAL})(?:\s+{ROW}\b|(?=\s*(?:[.;,]|$)))"
    rf"(?:\s+(?:to|through)\s+(?:the\s+)?(?P<upto_nth>{ORDINAL})(?:\s+{ROW}\b)?)?"
    rf"|from\s+(?:the\s+)?(?P<begin>beginning|start)\b(?!\s+of\s+(?:the\s+)?{ROW})"
    rf"|(?:the\s+)?(?P<ordinals>{ORDINALS})\s+{ROW}\b"
    rf"|(?:the\s+)?first\s+(?P<head>{HOW_MANY})\s+{ROW}\b"
    rf"|{_ALL}{_THOSE}+(?P<many>{HOW_MANY})[\s-]+(?:patt(?:ern)?\s+)?{ROW}\b(?!\s+{_STRIPES})"
    rf"|(?:the\s+)?(?:last|this|previous|above|preceding)\s+(?P<one>{ROW})\b|(?P<every>{_THOSE}+(?:rows|rnds|rounds)\b)"
    rf"|(?P<whole>(?:the\s+|this\s+)?(?:(?:{HOW_MANY})[\s-]+rows?\s+)?(?:{_STRIPES}|patt(?:ern)?|repeat)(?:\s+repeat)?\b"
    r"(?!\s+(?:rows?|rnds?|to\s+(?:the\s+)?(?:end|last)|across|around|between|in|on|from\s*\*)\b)))"
)
_OPENINGS = ("rep", "work", "knit", "then", "and", "now", "cont", "keep", "carry")
# "Rep until piece measures 20 cm", "Repeat until 4 sts remain": all that was said.
_REACHED = (
    r"(?:the\s+|your\s+)?(?:piece|work|blanket|it|length|knitting|fabric)\b|desired\b|there\s+are\b|you\s+have\b|"
    r"\d+(?:\.\d+)?\s*(?:cm|mm|in|\"|sts?\b|stitches)"
)
IN_THIS_WAY = re.compile(
    rf"rep(?:eat)?\.?\s+(?=until\s+(?:{_REACHED}))|"
    r"(?:cont(?:inue)?|rep(?:eat)?|work|carry\s+on|keep)\s+(?:on\s+)?(?:(?:in|working\s+in)\s+this\s+(?:way|manner)|"
    r"as\s+(?:set|established|est|above|before))(?:\s+|,\s(?:(?!until)[^.;]){1,120}?,?\s+)(?=until\b)"
)
# "Work 6 rows in this way", "Continue for 6 more rows": how many rows there are, of what was said before.
_SO_MANY = re.compile(
    rf"(?:(?:and|then|now)\s+)?(?:(?:cont(?:inue)?|carry\s+on|keep\s+on|work)\.?\s+(?:in\s+this\s+(?:way|manner)\s+)?(?:for\s+)?"
    r"|rep(?:eat)?\.?\s+for\s+)"
    rf"(?:a\s+further\s+|another\s+)?{HOW_MANY}\s+(?:more\s+)?{ROW}\b"
    r"(?:\s+(?:more|in\s+(?:all|total|this\s+(?:way|manner))|like\s+this))?(?=\s*(?:[.;]|$))"
)
FROM_STAR = re.compile(r"\s*(?:(?:and|then)\s+)?rep(?:eat)?\.?\s+from\s+\*(?!\*)")
FORM = re.compile(
    rf"(?:(?:the\s+)?{NAMED_ROW}(?P<rows>{NAMES})|(?:the\s+)?(?P<ordinals>{ORDINALS})\s+{ROW}"
    rf"|{_THOSE}+(?P<many>{HOW_MANY})\s+{ROW}|(?P<every>(?:these|the\s+above)\s+{ROW}))\s+"
    r"(?:(?:now\s+)?(?:forms?|sets?|makes?|establish(?:es)?|comprises?)|(?:are|is)\s+(?:repeated|worked(?!\s+(?:as|like|exactly|in\s+the\s+same|the\s+same|similarly))|the\s+patt))\b"
)
_REMAIN = re.compile(
    r"(?:until|till|down\s+to|to)\s+(?:only\s+|there\s+(?:are|remain)\s+|you\s+have\s+)*"
    rf"(\d{{1,{LONGEST_NUMBER}}}|{NUMBER_WORD})\s*(?:sts?|stitches|rem|left|on)\b"
    r"(?!\s+(?:between|before|after|in\s+each|have|of|from)\b)"
)
_STITCHES = rf"(\d{{1,{LONGEST_NUMBER}}})\s*(?:sts?|stitches)\b"
_COUNT = re.compile(
    rf"[(\[]\s*{_STITCHES}(?!\s+(?:between|before|after|in\s+each|on\s+each|each|per)\b)[^)\]]{{0,60}}[)\]]"
    rf"|[-:=.;,]\s*(?:(?:you|there|now|making|leaving)\b[a-z\s]{{0,30}}?\s)?{_STITCHES}"
    r"(?:\s+(?:rem\w*|left|in\s+all|total|now|on\s+(?:the\s+|your\s+)?needles?))*\s*[.)]*\s*$"
)
_SHAPING = re.compile(r"\b(?:inc|dec)(?:s|'d|\.|reas(?:e|es|ed|ing))?(?![a-z])")
_SHAPED = re.compile(
    rf"\b(?P<way>inc|dec)(?:\.|reas(?:e|ing))?\s+(?:evenly\s+)?(?P<many>{HOW_MANY})\s*(?:sts?|stitch(?:es)?)\b(?P<where>[^.;:]*)"
)
_LAST_ROW = re.compile(rf"\b(?:last|final)\s+(?:of\s+these\s+)?{ROW}\b")
_BOTH_ENDS = re.compile(r"\b(?:(?:each|both|either)\s+(?:ends?|sides?)|every\s+end)\b")
_PART = re.compile(
    r"\s*(?:\([^)]{0,40}\)\s*)?(?:of|from|in)\s+(?:the\s+)?(?P<part>[a-z][a-z' -]{1,40}?)\s*"
    r"(?=[.,;:(\d]|$|\b(?:until|till|once|twice|for|to|again|and|then|three|four|five|six)\b)"
)
_UNTIL = re.compile(r"[^.;]{0,60}?\b(?:until|till)\b")
_BEFORE_COUNT = 8  # Words before a count that are looked at; house.
_NO_PART = frozenset({"pattern", "patt", "all", "total", "order", "order given", "turn", "sequence", "this way"})
_NO_COUNT = frozenset({"until", "till", "ending", "end", "then", ".", ";", "to"})


@dataclass(frozen=True, slots=True)
class Again:
    """A repeat line: which rows are worked again, how often, and how far.

    `numbers` are row numbers; empty with `last` n for the last n rows listed, or with last 0 for all of the section.
    `letters` are the names of rows that have letters; `head` n the first n rows of the section; `since` and `upto` the
    labels from which and up to which; `part` the words that name a section. `passes` is how many further times, None
    where unknown; `remain` the stitches at which to stop; `stated` the count printed after the line. `loose` says that
    it only speaks of rows ("these 4 rows form the pattern"). `change` is how many stitches are added while it is worked
    ("increasing 1 st in the centre of the last row"), None where that cannot be told.
    """

    numbers: tuple[int, ...]
    last: int
    passes: int | None
    remain: int | None
    place: Place
    stated: int | None = None
    stated_place: Place | None = None
    since: int | None = None
    loose: bool = False
    letters: tuple[str, ...] = ()
    head: int = 0
    upto: int | None = None
    part: str | None = None
    change: int | None = 0


def begins_again(text: str, start: int, end: int) -> bool:
    """Tell whether a repeat line begins at a place."""
    said = text.startswith(_OPENINGS, start) and (
        _again_match(text, start, end) or IN_THIS_WAY.match(text, start, end) or _SO_MANY.match(text, start, end)
    )
    return bool(said or FORM.match(text, start, end))


def _again_match(text: str, start: int, end: int) -> re.Match[str] | None:
    """Match a repeat line; "work patt" and "knit rows" name no rows that were worked."""
    match = AGAIN.match(text, start, end) if text.startswith(_OPENINGS, start) else None
    if match is None or (match["verb"] or "rep").startswith("rep"):
        return match
    return None if match["whole"] or match["begin"] else match


def again_in(line: Line, start: int, end: int) -> Again | None:
    """Read a repeat line in a stretch of a line; None where it is none."""
    if match := FORM.match(line.text, start, end):
        return Again(_numbers(match), _last(match), None, None, line.place(start), loose=True)
    if match := _again_match(line.text, start, end):
        return _again(match, line, end)
    if match := IN_THIS_WAY.match(line.text, start, end):
        return Again((), 0, None, _remain(line, match.end(), end), line.place(start), loose=True)
    return Again((), 0, None, None, line.place(start), loose=True) if _SO_MANY.match(line.text, start, end) else None


def from_star(line: Line, start: int, end: int, since: int | None, rows: int) -> Again | None:
    """Read "rep from *" as a repeat line of the rows since a label, or of so many; None where it does not stand."""
    match = FROM_STAR.match(line.text, start, end)
    if match is None:
        return None
    remain, place = _remain(line, match.end(), end), line.place(match.end() - len("*"))
    passes = None if remain else _passes(line, match.end(), end)
    return Again((), 0 if since else rows, passes, remain, place, since=since)


def _again(match: re.Match[str], line: Line, end: int) -> Again:
    """Put together what a repeat line says."""
    worked = not (match["verb"] or "").startswith("rep")
    remain = _remain(line, match.end(), end)
    stated = _COUNT.search(line.text, match.end(), end)
    index = stated.lastindex if stated else None
    passes = _passes(line, match.end(), end)
    part = _PART.match(line.text, match.end(), end)
    return Again(
        _numbers(match),
        _last(match),
        None
        if remain
        else 1
        if passes is None and worked and not _UNTIL.match(line.text, match.end(), end)
        else passes,
        remain,
        line.place(match.start()),
        int(stated.group(index)) if stated and index else None,
        line.place(stated.start(index)) if stated and index else None,
        number_of((match["since"] or match["first"] or "")[:6]),
        letters=(re.sub(r"[-\s]", "", match["worded"]),) if match["worded"] else _letters(match["letters"] or ""),
        head=number_of(match["head"] or "") or 0,
        upto=number_of((match["upto"] or match["upto_nth"] or "")[:6]),
        part=part["part"] if part and part["part"] not in _NO_PART else match["named"],
        change=_change(line.text, match.end(), end),
    )


def _change(text: str, start: int, end: int) -> int | None:
    """Return how many stitches the last of the rows adds beside its own: "dec 6 sts evenly in last row" is -6."""
    if not _SHAPING.search(text, start, end):
        return 0
    found = _SHAPED.search(text, start, end)
    number = number_of(found["many"]) if found else None
    if (
        found is None
        or number is None
        or not _LAST_ROW.search(found["where"])
        or len(_SHAPING.findall(text, start, end)) > 1
    ):
        return None
    number *= 2 if _BOTH_ENDS.search(found["where"]) else 1
    return -number if found["way"] == "dec" else number


def _letters(printed: str) -> tuple[str, ...]:
    """Return the names of a list of rows with letters: "a to c" is a run."""
    names = re.findall(r"-|\bto\b|\d{0,4}[a-z]\b", printed)
    out: list[str] = []
    for index, name in enumerate(names):
        if name in ("-", "to"):
            continue
        run = index > 1 and names[index - 1] in ("-", "to") and len(out[-1]) == len(name) == 1
        out += [chr(code) for code in range(ord(out[-1]) + 1, ord(name) + 1)] if run else [name]
    return tuple(out)


def _numbers(match: re.Match[str]) -> tuple[int, ...]:
    printed = match["rows"] or match["ordinals"]
    return numbers_in(printed) if printed else ()


def _last(match: re.Match[str]) -> int:
    """Return how many rows "the last 4 rows" are; 0 where all are meant."""
    many = match["many"]
    if many:
        return NUMBER_WORDS.get(many) or int(many[:6])
    return 1 if match.groupdict().get("one") else 0


def _passes(line: Line, start: int, end: int) -> int | None:
    """Return how many further times a line says, within its first words: "(patt) 5 times more"."""
    cursor = Cursor(tokens(line, start, end))
    for at in range(min(_BEFORE_COUNT, len(cursor.run))):
        cursor.at = at
        if cursor.word() in _NO_COUNT:
            return None
        count = take_count(cursor)
        if count is not None and count.times is not None:
            return count.times - 1
    return None


def _remain(line: Line, start: int, end: int) -> int | None:
    remain = _REMAIN.search(line.text, start, end)
    return number_of(remain.group(1)) if remain else None
