"""Texts without a single label: lines that read as rows are taken for rows, numbered in order."""

from __future__ import annotations

import re
from dataclasses import replace

from counterpane.craft.rows.clauses import Clause
from counterpane.craft.rows.labels import Label
from counterpane.craft.rows.read import ReadRow, read_tokens
from counterpane.craft.rows.words import tokens
from counterpane.craft.stitches import Vocabulary

_NUMBER = re.compile(r"\s*(\d{1,4})\s*[.:)]\s+")


def numbered(found: list[Clause], vocabulary: Vocabulary) -> list[Clause]:
    """Take lines that read as rows for rows, by the number before them or in order, where a text has no label."""
    out, number = [], 0
    for clause in found:
        printed = _NUMBER.match(clause.line.text)
        start = printed.end() if printed else clause.start
        body = tokens(clause.line, start, clause.end)
        if clause.kind in ("prose", "heading") and body and reads_well(read_tokens(body, vocabulary)):
            number = int(printed.group(1)) if printed else number + 1
            out.append(replace(clause, kind="row", label=Label((number,)), body=body))
        else:
            out.append(clause)
    return out


def reads_well(row: ReadRow) -> bool:
    """Tell whether words say stitches and nothing unknown."""
    return bool(row.parts) and not any(fault.rule == "unknown-term" for fault in row.faults)
