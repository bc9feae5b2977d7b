"""Rows without a label: lines that read as rows, in a text that has no label, or among rows that have one."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from counterpane.craft.rows.borrowing import borrowed
from counterpane.craft.rows.care import words_of_work
from counterpane.craft.rows.clauses import LONGEST_ROW, Clause
from counterpane.craft.rows.labels import KNOWN, Label
from counterpane.craft.rows.layout import STITCHES
from counterpane.craft.rows.lexicon import lexicon_of
from counterpane.craft.rows.read import reads_well
from counterpane.craft.rows.sharing import Shared
from counterpane.craft.rows.tree import Side
from counterpane.craft.rows.words import Token, first_token, tokens
from counterpane.craft.stitches import Terms, Vocabulary

_NUMBER = re.compile(
    r"\s*\|?\s*(\d{1,4})\s*(?:[(\[]?\s*(rs|ws)\b\s*[)\]]?\s*)?[.:)|]\s*(?:[(\[|]?\s*(rs|ws)\s*[)\]|:]\s*)?"
)
# A stitch with a sign behind it and another further on: no sentence about knitting begins so.
_STITCH = r"(?:(?:k|p|sl|s|knit|purl)\s?\d+|k\d?tog|p\d?tog|ssk|yo|yfwd|m1|sm|pm|skpo?|psso)"
_STRONG = re.compile(rf"\W*{_STITCH}\s*[,;*(\[]")
_STITCHES = re.compile(rf"\b{_STITCH}\b")
# "Start the body: k5, p40, k5": words before a colon that name a part, and no stitch that is explained.
_HEAD = re.compile(
    r"(?:(?:now|then|start|begin|finish|end|the)\s+){0,3}(?:with\s+)?(?:the\s+)?(?:[a-z]+\s+){0,2}"
    r"(?:body|border|edging|edge|main\s+part|middle|bottom|top|centre|center|pattern|end|(?:in|de)creasing"
    rf"|(?P<known>{KNOWN}))\s*:\s+"
)
# "Ridge 3:", "Step 2 -": a word with a number before stitches, as a label stands.
_STRANGE_LABEL = re.compile(
    r"\W{0,3}(?P<label>[a-z][a-z'-]+(?:\s+[a-z'-]+)?\s*#?\d{1,4}(?:\s*[(\[][^()\[\]:]{1,20}[)\]])?)\s*(?:[:)=]|-(?=\s))\s*"
)
_MAY_WORK = re.compile(
    r"[a-z]{1,5}\d|(?:work|patt|pattern|rib|moss|garter|in|with|cast|bind|sl|slip|rep|k|p|knit|purl)"
)
_LETTER = re.compile("[a-z]")
_SAYS = re.compile(r"\b(?:is|are|means?|used|see|stands?|worked|works|can|may|will)\b")


def numbered(found: list[Clause], vocabulary: Vocabulary, labelled: bool, shared: Shared | None = None) -> list[Clause]:
    """Take lines that read as rows for rows, by the number before them, or in order where no row is labelled.

    What is the same in other texts is `shared`.
    """
    out, number, shared = [], 0, shared or Shared()
    for clause in found:
        may_be = clause.kind in ("prose", "heading") and _may_be_row(clause, labelled)
        row = shared.of(_row_of, clause, vocabulary) if may_be else None
        if row is None:
            out.append(clause)
        else:
            number = number + 1 if row.number is None else row.number
            out.append(replace(clause, kind="row", label=Label((number,), side=row.side), body=row.body))
    return out


def begins_with_stitches(text: str) -> bool:
    """Tell whether words begin with a stitch and a sign behind it, as a row without a label may."""
    return _STRONG.match(text) is not None


class _Unlabelled(NamedTuple):
    """A line that reads as a row, with the number and side printed before it."""

    number: int | None
    side: Side | None
    body: list[Token]


def _may_be_row(clause: Clause, labelled: bool) -> bool:
    """Tell quickly that signs and numbers alone name no stitch, and no line without a number among labelled rows."""
    text = clause.line.text
    return not (labelled and not _NUMBER.match(text, clause.start)) and bool(
        _LETTER.search(text, clause.start, clause.end)
    )


def _row_of(clause: Clause, vocabulary: Vocabulary) -> _Unlabelled | None:
    """Return what a line without a label says as a row; None where it says anything else."""
    printed = _NUMBER.match(clause.line.text, clause.start)
    start = printed.end() if printed else clause.start
    if printed and borrowed(body := tokens(clause.line, start, clause.end)):
        return _Unlabelled(int(printed[1]), _side(printed), body)
    named = clause.kind == "prose" or STITCHES.match(clause.line.text, start)
    first = first_token(clause.line, start, clause.end) if named else None
    if first is None or not _may_work(first, vocabulary):
        return None
    body = tokens(clause.line, start, min(clause.end, start + LONGEST_ROW))
    if not (reads_well(body, vocabulary) or is_strong(clause, start)):
        return None
    return _Unlabelled(int(printed[1]), _side(printed), body) if printed else _Unlabelled(None, None, body)


def _side(printed: re.Match[str]) -> Side | None:
    side = printed[2] or printed[3]
    return None if side is None else "RS" if side == "rs" else "WS"


def worked(clause: Clause, vocabulary: Vocabulary, terms: Terms) -> Sequence[Token] | None:
    """Return the words of a line without a label that are stitches; None where it says anything else."""
    if clause.kind not in ("prose", "heading"):
        return None
    head = _HEAD.match(clause.line.text, clause.start, clause.end)
    start = head.end() if head else clause.start
    if not STITCHES.match(clause.line.text, start):
        return None
    body = words_of_work(clause.line, start, min(clause.end, start + LONGEST_ROW))
    well = (head is None or head["known"] is not None) and reads_well(body, vocabulary, terms)
    return body if well or is_strong(clause, start) else None


def strange_label(clause: Clause, vocabulary: Vocabulary, terms: Terms) -> str | None:
    """Return the words that stand before stitches as a label does and name no row; None where none do."""
    label = _STRANGE_LABEL.match(clause.line.text, clause.start, clause.end)
    if label is None or not STITCHES.match(clause.line.text, label.end()):
        return None
    body = words_of_work(clause.line, label.end(), min(clause.end, label.end() + LONGEST_ROW))
    well = reads_well(body, vocabulary, terms) or is_strong(clause, label.end())
    return clause.line.given(*label.span("label")) if well else None


def is_strong(clause: Clause, start: int) -> bool:
    """Tell whether a line holds stitches beyond doubt, so that a word in it that cannot be read is a fault."""
    text = clause.line.text
    first = _STRONG.match(text, start, clause.end)
    return bool(first and _STITCHES.search(text, first.end(), clause.end) and not _SAYS.search(text, start, clause.end))


def _may_work(token: Token, vocabulary: Vocabulary) -> bool:
    """Tell quickly that most sentences begin with no stitch."""
    if token.kind not in ("word", "number"):
        return token.kind != "pause"
    return token.norm in lexicon_of(vocabulary).names.openings or bool(_MAY_WORK.match(token.norm))
