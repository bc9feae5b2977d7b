"""A text cut into clauses: labelled rows, repeat lines, statements, headings, prose; no row is understood here."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from counterpane.craft.rows.again import Again, again_in, begins_again
from counterpane.craft.rows.labels import HOW_MANY, MOST_ROWS_AT_ONCE, Label, label_at, number_of
from counterpane.craft.rows.statements import CASTING_ON
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LINE_END, LONGEST_NUMBER, Line, Token, normal_lines, tokens

ClauseKind: TypeAlias = Literal["row", "again", "cast-on", "heading", "prose"]
_BULLET = re.compile(r"[\s>]*(?:(?:[-•*+]|\d{1,3}[.)])\s+)?")
_INNER = re.compile(
    r"(?<=[.;)])\s+(?=(?:\*\*)?[a-z0-9(])"
    r"|,\s+(?=then\s+(?:(?:work|rep|repeat)\s+)?r(?:ows?|nds?|ounds?)\s)"
)
# What every label, repeat line and cast-on holds: looked for first, since it is quickly told.
_MAY_BEGIN = re.compile(r"row|r(?:ou)?nd|cast|\bco\b|\bco\d|c\.o|\br\d|until")
_PLAIN_ROWS = re.compile(rf"(?P<what>knit|purl|k|p)\s+(?P<many>{HOW_MANY})\s+rows?\b")
_EDGE_ROWS = re.compile(
    rf"(?P<what>(?:cast off|bind off|bo|cast on)\s+{HOW_MANY}\s*(?:stitches|sts?)?)\s+(?:at|on)\s+(?:the\s+)?"
    rf"(?:beg(?:inning)?|start)\s+of\s+(?:(?:the|each|every|both)\s+)*(?:next|foll(?:owing)?)\s+(?:(?P<many>{HOW_MANY})\s+)?rows?\b"
)
_CHANGES = re.compile(r"(?:inc|dec|increase|decrease)\s+\S+\s+(?:st\w*\s+)?(?:at|each|on|every|in)\b[^.]*\brows?\b")
_TO_END = tokens(Line(0, ", patt to end"))
STITCHES = re.compile(r"[\s*(\[]*(?:(?:k|p|sl|s)\s?\d|(?:knit|purl|k2tog|p2tog|ssk|yo)\b|[(\[*])")
_GOING_ON = re.compile(rf"{STITCHES.pattern}|(?:rep|repeat|end|ending|to|then|work|sl|slip|k|p|m1|turn)\b")
_UNFINISHED = frozenset(",;:([*&-")
_UNFINISHED_WORDS = frozenset({"and", "from", "to", "rep", "then", "last", "next"})
_HEADING = re.compile(r"#+\s*\S|(?:\*\*|__)[^*]+(?:\*\*|__)\s*$")
LONGEST_HEADING = 60
MOST_HEADING_WORDS = 7


@dataclass(slots=True)
class Clause:
    """A stretch of text of one kind, with the tokens of a row's words; `texts` are its lines as given."""

    kind: ClauseKind
    line: Line
    start: int
    end: int
    label: Label | None = None
    again: Again | None = None
    body: list[Token] = field(default_factory=list)
    texts: list[str] = field(default_factory=list)

    @property
    def text(self) -> str:
        """The clause as given, on one line."""
        return " ".join(text.strip() for text in self.texts)

    @property
    def place(self) -> Place:
        """Where the clause begins."""
        return self.line.place(self.start)


def clauses(text: str) -> list[Clause]:
    """Cut a text into clauses in the order printed; wrapped rows are joined."""
    out: list[Clause] = []
    given = re.split(LINE_END, text.removeprefix("\ufeff"))
    blank = True
    for line, raw in zip(normal_lines(text), given, strict=True):
        if not line.text.strip():
            blank = True
            continue
        plain = not _MAY_BEGIN.search(line.text)
        if plain and not blank and _goes_on(out[-1], raw):
            _join(out[-1], line, len(line.text), raw)
            continue
        found = [_clause(line, 0, len(line.text), "prose", raw)] if plain else _of_line(line, raw)
        if not plain and not blank and found[0].kind in ("prose", "heading") and _goes_on(out[-1], raw):
            _join(out[-1], line, found[0].end, raw[: found[0].end])
            found = found[1:]
        out += found
        blank = False
    return out


def _of_line(line: Line, raw: str) -> list[Clause]:
    """Cut one line where a sentence ends and a label, repeat line or cast-on begins."""
    out: list[Clause] = []
    lead = _BULLET.match(line.text)
    start = _start_of(line, lead.end() if lead else 0)
    labelled = label_at(line.text, start, len(line.text))
    cuts = [match.end() for match in _INNER.finditer(line.text, labelled[1] if labelled else start)]
    begin, first = start, _kind_at(line, start)
    for cut in (*cuts, len(line.text)):
        kind = _kind_at(line, cut) if cut < len(line.text) else "end"
        if kind == "prose" or (kind == "end" and cut < len(line.text)):
            continue
        out.append(_clause(line, begin, cut, first, raw))
        begin, first = cut, kind
    return out


def _start_of(line: Line, after_bullet: int) -> int:
    """Return where a line begins; a star before a stitch is no bullet."""
    if after_bullet and _kind_at(line, after_bullet) == "prose":
        return len(line.text) - len(line.text.lstrip())
    return after_bullet


def _kind_at(line: Line, index: int) -> str:
    """Tell what begins at an index of a line."""
    if begins_again(line.text, index, len(line.text)):
        return "again"
    if label_at(line.text, index, len(line.text)) or _unnamed_rows(line, index, len(line.text)):
        return "row"
    return "cast-on" if CASTING_ON.match(line.text, index) else "prose"


def _unnamed_rows(line: Line, start: int, end: int) -> re.Match[str] | None:
    """Find rows that an order without a label asks for: "knit 4 rows", "cast off 3 sts at beg of next 2 rows"."""
    return next(
        (match for form in (_PLAIN_ROWS, _EDGE_ROWS, _CHANGES) if (match := form.match(line.text, start, end))), None
    )


def _clause(line: Line, start: int, end: int, kind: str, raw: str) -> Clause:
    """Build the clause of a kind."""
    if kind == "again":
        return Clause("again", line, start, end, again=again_in(line, start, end), texts=[raw[start:end]])
    if kind == "row":
        return _row(line, start, end, raw)
    if kind == "cast-on":
        return Clause("cast-on", line, start, end, texts=[raw[start:end]])
    return Clause("heading" if _is_heading(raw.strip()) else "prose", line, start, end, texts=[raw])


def _row(line: Line, start: int, end: int, raw: str) -> Clause:
    """Build the clause of a labelled row, or of "knit 4 rows"."""
    found = label_at(line.text, start, end)
    if found is not None:
        label, behind = found
        return Clause("row", line, start, end, label, body=tokens(line, behind, end), texts=[raw[start:end]])
    unnamed = _unnamed_rows(line, start, end)
    if unnamed is None or unnamed.re is _CHANGES:
        return Clause("row", line, start, end, Label(()), body=tokens(line, start, end), texts=[raw[start:end]])
    many = number_of((unnamed["many"] or "1")[:LONGEST_NUMBER]) or 1
    body = tokens(line, unnamed.start("what"), unnamed.end("what"))
    if unnamed.re is _EDGE_ROWS:
        body = [*body, *(token._replace(line=line, start=unnamed.end("what")) for token in _TO_END)]
    body += tokens(line, unnamed.end(), end)
    return Clause(
        "row", line, start, end, Label((), "next", min(many, MOST_ROWS_AT_ONCE)), body=body, texts=[raw[start:end]]
    )


def _is_heading(raw: str) -> bool:
    """Tell a heading from a sentence by its looks."""
    if _HEADING.match(raw):
        return True
    short = len(raw) <= LONGEST_HEADING and len(raw.split()) <= MOST_HEADING_WORDS
    return short and raw[:1].isupper() and raw[-1:] not in ".;,!?" and not re.search(r"\d\s*(?:sts?|cm|mm|in)\b", raw)


def _goes_on(earlier: Clause, raw: str) -> bool:
    """Tell whether a line is the rest of a wrapped row."""
    if earlier.kind != "row" or _HEADING.match(raw.strip()):
        return False
    ended, begins = earlier.texts[-1].rstrip().lower(), raw.lstrip()[:1]
    if ended[-1:] in _UNFINISHED or ended[-6:].rpartition(" ")[2] in _UNFINISHED_WORDS:
        return True
    if ended[-1:] == ".":
        return begins in "*([†" or begins.isdigit() or (begins.islower() and bool(_GOING_ON.match(raw.lstrip())))
    return begins.islower() or begins in "*([†" or begins.isdigit() or bool(STITCHES.match(raw.lower()))


def _join(row: Clause, line: Line, end: int, raw: str) -> None:
    """Add the words of the next line to a row."""
    row.body += tokens(line, 0, end)
    row.texts.append(raw)
