"""Whether the file of a library is sound: no halves, no gaps, and an audit log that holds."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from counterpane import wiring
from counterpane.library.keeping.audit import verify

HALVES = """
    SELECT count(*) FROM item i WHERE
        NOT EXISTS (SELECT 1 FROM revision r WHERE r.item = i.id AND r.number = i.number AND r.sha256 = i.sha256)
        OR NOT EXISTS (SELECT 1 FROM object o WHERE o.sha256 = i.sha256)
        OR NOT EXISTS (SELECT 1 FROM change c WHERE c.slug = i.slug AND c.sha256 = i.sha256)
        OR i.number <> (SELECT count(*) FROM revision r WHERE r.item = i.id)"""


def unsound(path: Path) -> list[str]:
    """Return what the file itself says of its soundness, with halves and gaps."""
    db = sqlite3.connect(path)
    found = [row[0] for row in db.execute("PRAGMA integrity_check") if row[0] != "ok"]
    halves = db.execute(HALVES).fetchone()[0]
    gaps = db.execute("SELECT max(seq) - count(*) FROM change").fetchone()[0]
    lines = sum(1 for _ in db.iterdump())
    acts = "SELECT (SELECT count(*) FROM change) - count(*) FROM audit WHERE act IN ('add', 'revise', 'move')"
    untold = db.execute(acts).fetchone()[0]
    db.close()
    return [
        *found,
        *([f"{halves} halves"] if halves else []),
        *([f"{gaps} gaps"] if gaps else []),
        *([f"{untold} changes without a line in the log"] if untold else []),
        *([] if lines else ["no dump"]),
        *broken(path),
    ]


def broken(path: Path) -> list[str]:
    """Return the first line of the audit log that does not hold."""
    store = wiring.open_store(path)
    verdict = verify(store)
    store.close()
    return [verdict.wrong] if verdict.wrong else []
