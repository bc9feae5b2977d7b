"""Texts without a single label: lines that read as rows are taken for rows, numbered in order."""

from __future__ import annotations

from dataclasses import replace

from counterpane.craft.rows.clauses import Clause
from counterpane.craft.rows.labels import Label
from counterpane.craft.rows.read import ReadRow, read_tokens
from counterpane.craft.rows.words import tokens
from counterpane.craft.stitches import Vocabulary


def numbered(found: list[Clause], vocabulary: Vocabulary) -> list[Clause]:
    """Take lines that read as rows for rows, numbered in order, where a text has no label at all."""
    out, number = [], 0
    for clause in found:
        body = tokens(clause.line, clause.start, clause.end)
        if clause.kind in ("prose", "heading") and body and _reads_well(read_tokens(body, vocabulary)):
            number += 1
            out.append(replace(clause, kind="row", label=Label((number,)), body=body))
        else:
            out.append(clause)
    return out


def _reads_well(row: ReadRow) -> bool:
    return bool(row.parts) and not any(fault.rule == "unknown-term" for fault in row.faults)
