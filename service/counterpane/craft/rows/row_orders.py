"""Rows that an order without a label asks for: "knit 6 rows", "work 10 rows in garter st", "knit one turn plain".

What is said beside such an order is kept where it speaks of stitches; where it only says which side the rows end on,
or how long the piece is by then, it changes no count and is left out.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.rows.care import words_of_work
from counterpane.craft.rows.labels import HOW_MANY, number_of
from counterpane.craft.rows.words import LONGEST_NUMBER, Line, Token, tokens

_ROWS = r"(?:(?P<rows>rows?|rnds?|rounds?)|(?P<turns>turns?))\b(?!,?\s*(?:thus|as\s+follows)\b)"
_MANY = rf"(?P<many>{HOW_MANY}|an?)\s+(?:(?:more|further|plain|complete|whole)\s+)*"
_FIRST = (
    r"(?:(?:now|then|next|and|also)\s*,?\s+){0,2}"
    r"(?:(?:with|using|in|join|change\s+to|changing\s+to)\b[^,.;:]{1,40}(?:,|\band\b)\s*)?"
    r"(?:(?:beg(?:inning)?|start(?:ing)?)\s+with\s+a\s+[^,.;]{1,24},\s*)?"
)
_NEXT = r"(?:the\s+)?(?:(?:next|foll(?:owing)?)\s+)?"
_NAME = r"(?:k\d+,?\s?p\d+\s+|\d+\s?x\s?\d+\s+|[a-z]+\s+){0,3}?"
_FABRIC = (
    rf"(?P<fabric>{_NAME}(?:garter|moss|rib(?:bing)?|patt?(?:ern)?|plain(?:\s+knitting)?|(?:g|m|st)[-.\s]\s?st|st(?:itch)?)"
    r"\b(?:\s+st(?:itch)?\b)?+)(?!\.?\s*(?:thus|as\s+follows)\b)"
)
_SET = r"(?P<set>as\s+(?:set|est(?:ablished)?|before)|even|straight|without\s+shaping)\b"
_PLAIN = re.compile(rf"{_FIRST}(?P<what>knit|purl|seam|pearl|k|p)\s+(?:plain\s+)?{_NEXT}{_MANY}{_ROWS}")
_BARE = re.compile(
    rf"{_FIRST}(?P<many>{HOW_MANY}|an?)\s+(?P<what>plain|purl(?:ed)?|knit(?:ted)?|seam(?:ed)?|pearl(?:ed)?)\s+{_ROWS}"
)
_MADE_IN = re.compile(
    rf"{_FIRST}(?:work|cont(?:inue)?|proceed|knit|keep)\s+(?:in\s+|on\s+)?(?:{_FABRIC}|{_SET})\s+(?:for\s+)?"
    rf"{_NEXT}{_MANY}{_ROWS}"
)
_MADE_OF = re.compile(
    rf"{_FIRST}(?:work|cont(?:inue)?|knit)\s+(?:for\s+)?{_NEXT}{_MANY}{_ROWS}\s*,?\s+"
    rf"(?:(?:in|of)\s+)?(?:{_FABRIC}|{_SET})"
)
_EDGE = re.compile(
    rf"(?P<what>(?:cast off|bind off|bo|cast on)\s+{HOW_MANY}\s*(?:stitches|sts?)?)\s+(?:at|on)\s+(?:the\s+)?"
    rf"(?:beg(?:inning)?|start)\s+of\s+(?:(?:the|each|every|both)\s+)*(?:next|foll(?:owing)?)\s+"
    rf"(?:(?P<many>{HOW_MANY})\s+)?(?P<rows>rows?)\b"
)
_CHANGES = re.compile(
    rf"{_FIRST}(?:(?:inc|dec|increase|decrease)\s+\S{{1,12}}\s+(?:st\w*\s+)?(?:at|each|on|every|in)\b[^.;)]{{0,150}}"
    r"\b(?:rows?|rnds?)\b|(?:inc|dec|increasing|decreasing|increase|decrease)\s+\d+\s+st\w*\b)"
)
_ALL_ROWS = r"(?:each|every|all(?:\s+the)?)\s+(?:rows?|rnds?|rounds?)\b"
_EVERY = re.compile(
    rf"(?:^|(?<=[.;:])|(?<=[.;:,*-]\s))\s*{_FIRST}(?:(?P<what>knit|purl|k|p)\s+(?:to\s+(?:the\s+)?end\s+(?:of\s+)?)?"
    rf"(?:{_ALL_ROWS}|(?=(?:until|till|for)\b))|(?:(?:work|cont(?:inue)?|proceed|knit|keep)\s+(?:even\s+)?(?:in\s+|on\s+)?)?"
    rf"(?P<set>(?<!\S){_FABRIC})\s+(?:until|till|for|to|throughout|{_ALL_ROWS})\b)"
)
_FORMS = (_PLAIN, _BARE, _MADE_IN, _MADE_OF, _EDGE, _CHANGES)
# How orders may begin, which most lines and all rows of stitches with numbers ("k2, p2") do not.
_OPENS = re.compile(
    r"(?![kp]\d)(?:now|then|next|also|and|with|using|in|join|chang|beg|start|knit|purl|seam|pearl|[akp]|work|cont|"
    rf"proceed|keep|cast|bind|bo|dec|{HOW_MANY})"
)
_VERBS = {"purled": "purl", "knitted": "knit", "seamed": "purl", "pearled": "purl"}
_WORK = tokens(Line(0, "work in patt to end"))
_TO_END = tokens(Line(0, ", patt to end"))
_STOPS = re.compile(r"[,;.()\[\]-]")
_MATTERS = re.compile(r"\b(?:\d+\s*(?:sts?|stitches)|inc\w*|dec\w*|k\d+|p\d+|k2tog|m1|yo|yfwd|cast|bind|except|but)\b")


@dataclass(frozen=True, slots=True)
class Order:
    """So many rows of the same words, which stand in `body`; `end` is where the order ends."""

    copies: int
    body: Sequence[Token]
    end: int
    round: bool = False


def order_at(line: Line, start: int, end: int) -> Order | None:
    """Return the order that begins at a place of a line; None where none does."""
    match = _match(line.text, start, end)
    if match is None:
        return None
    if match.re is _CHANGES:
        return Order(1, tokens(line, start, end), end)
    turns = match.re is not _EDGE and match["turns"]
    body = [*_body(line, match), *_beside(line, match.end(), end)]
    copies = _copies(match["many"]) * (2 if turns else 1)
    return Order(copies, body, match.end(), (match["rows"] or "").startswith(("rnd", "round")))


def every_row_in(line: Line, start: int, end: int) -> Order | None:
    """Return the row that is worked over and over: "knit every row until it is square", "moss stitch until 70 cm"."""
    match = _EVERY.search(line.text, start, end)
    return Order(1, _body(line, match), match.end()) if match else None


def begins_order(text: str, start: int, end: int) -> bool:
    """Tell whether an order begins at a place."""
    return _match(text, start, end) is not None


def _match(text: str, start: int, end: int) -> re.Match[str] | None:
    """Match an order, with or without a star before it."""
    start += text.startswith("*", start, end)
    if not _OPENS.match(text, start, end):
        return None
    return next((match for form in _FORMS if (match := form.match(text, start, end))), None)


def _copies(many: str | None) -> int:
    found = number_of(many[:LONGEST_NUMBER]) if many else None
    return 1 if found is None else found


def _body(line: Line, match: re.Match[str]) -> list[Token]:
    """Return the words of one row that an order asks for, in their places."""
    if match.re in (_MADE_IN, _MADE_OF) or (match.re is _EVERY and match["set"]):
        begin = match.start("fabric") if match["fabric"] else match.start("set")
        return [token._replace(line=line, start=begin) for token in _WORK]
    body = tokens(line, match.start("what"), match.end("what"))
    if match.re is _EDGE:
        return [*body, *(token._replace(line=line, start=match.end("what")) for token in _TO_END)]
    return [body[0]._replace(norm="knit")] if match["what"] == "plain" else plainly(body)


def plainly(body: list[Token]) -> list[Token]:
    """Return the words of a row with the first in the form of an order: "purled" is "purl"."""
    word = _VERBS.get(body[0].norm) if body else None
    return [body[0]._replace(norm=word), *body[1:]] if word else body


def _beside(line: Line, start: int, end: int) -> list[Token]:
    """Return what stands behind an order and speaks of stitches: a count, an increase, an exception."""
    first = _MATTERS.search(line.text, start, end)
    if first is None:
        return []
    signs = [match.start() for match in _STOPS.finditer(line.text, start, first.start())]
    return words_of_work(line, signs[-1] if signs else start, end)
