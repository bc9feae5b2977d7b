"""Textures for tests: a body of rows in words, as somebody would send it."""

from __future__ import annotations

from counterpane.craft.component import Component, Provenance, SafetyNotes, Version

FROM = Provenance("common-practice", "CC0-1.0", "a tester")
RIB = "Row 1 (RS): *k1, p1; rep from * to end.\nRow 2: *k1, p1; rep from * to end."


def body(*rows: str, safety: SafetyNotes | None = None) -> Component:
    """Return a body texture with a version for each text of rows."""
    versions = tuple(Version("", text) for text in rows)
    return Component(
        "tried", "body", "Tried", "A texture for a test.", FROM, safety or SafetyNotes(), versions=versions
    )
