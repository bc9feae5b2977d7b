"""A text cut into clauses: labelled rows, repeat lines, statements, headings, prose; no row is understood here."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from counterpane.craft.rows.again import AGAIN, FORM, Again, again_in
from counterpane.craft.rows.labels import LABEL, Label, label_of
from counterpane.craft.rows.statements import CASTING_ON
from counterpane.craft.rows.tree import Place
from counterpane.craft.rows.words import LINE_END, NUMBER_WORDS, Line, Token, normal_lines, tokens

ClauseKind: TypeAlias = Literal["row", "again", "cast-on", "heading", "prose"]
_BULLET = re.compile(r"[\s>]*(?:(?:[-•*+]|\d{1,3}[.)])\s+)?")
_INNER = re.compile(r"(?<=[.;)])\s+(?=(?:\*\*)?[a-z0-9])|,\s+(?=then\s+work\s+r)")
_PLAIN_ROWS = re.compile(rf"(?P<what>knit|purl)\s+(?P<many>\d+|{'|'.join(NUMBER_WORDS)})\s+rows?\b")
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
    raw = re.split(LINE_END, text.removeprefix("\ufeff"))
    blank = True
    for line in normal_lines(text):
        if not line.text.strip():
            blank = True
            continue
        found = list(_of_line(line, raw[line.number - 1]))
        if out and not blank and found[0].kind in ("prose", "heading") and _goes_on(out[-1], raw[line.number - 1]):
            _join(out[-1], found[0])
            found = found[1:]
        out += found
        blank = False
    return out


def _of_line(line: Line, raw: str) -> list[Clause]:
    """Cut one line where a sentence ends and a label, repeat line or cast-on begins."""
    out: list[Clause] = []
    lead = _BULLET.match(line.text)
    start = _start_of(line, lead.end() if lead else 0)
    cuts = [match.end() for match in _INNER.finditer(line.text, start)]
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
    if AGAIN.match(line.text, index) or FORM.match(line.text, index):
        return "again"
    if LABEL.match(line.text, index) or _PLAIN_ROWS.match(line.text, index):
        return "row"
    return "cast-on" if CASTING_ON.match(line.text, index) else "prose"


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
    plain = _PLAIN_ROWS.match(line.text, start, end)
    if plain:
        many = NUMBER_WORDS.get(plain["many"]) or int(plain["many"][:4])
        body = tokens(line, plain.start("what"), plain.end("what"))
        return Clause("row", line, start, end, Label((), "next", many), body=body, texts=[raw[start:end]])
    match = LABEL.match(line.text, start, end)
    if match is None:
        raise ValueError("a row clause begins with a label")
    return Clause("row", line, start, end, label_of(match), body=tokens(line, match.end(), end), texts=[raw[start:end]])


def _is_heading(raw: str) -> bool:
    """Tell a heading from a sentence by its looks."""
    if _HEADING.match(raw):
        return True
    short = len(raw) <= LONGEST_HEADING and len(raw.split()) <= MOST_HEADING_WORDS
    return short and raw[:1].isupper() and raw[-1:] not in ".;,!?" and not re.search(r"\d\s*(?:sts?|cm|mm|in)\b", raw)


def _goes_on(earlier: Clause, raw: str) -> bool:
    """Tell whether a line is the rest of a wrapped row."""
    if earlier.kind != "row":
        return False
    ended, begins = earlier.texts[-1].rstrip().lower(), raw.lstrip()[:1]
    unfinished = ended[-1:] in _UNFINISHED or ended[-6:].rpartition(" ")[2] in _UNFINISHED_WORDS
    return unfinished or begins.islower() or begins in "*([†" or begins.isdigit()


def _join(row: Clause, rest: Clause) -> None:
    """Add the words of the next line to a row."""
    start = len(rest.line.text) - len(rest.line.text.lstrip())
    row.body += tokens(rest.line, start, rest.end)
    row.texts += rest.texts
