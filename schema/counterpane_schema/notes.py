"""What is said of a component for a baby's sake: notes on its structure, measured openings, a peer's notes."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Day, Either, Millimetres, Sha256, Text, Word
from counterpane_schema.forms import Closed, Open


class Measure(Closed):
    """A value with its unit, as decimal text."""

    value = Text(required=True, most=40)
    unit = Text(required=True)


def note() -> Either:
    """Return the field of one safety note."""
    said = 'Write "none", "not known", or a value with its unit.'
    return Either(Word("none", "not known"), fields.Nested(Measure), said=said)


class SafetyNotes(Closed):
    """What the structure holds for a baby's fingers and mouth."""

    loose_yarn = note()
    floats = note()
    openings = note()
    ties = note()
    fibre = note()


class MeasuredOpening(Closed):
    """The largest opening of a washed piece of this part, as somebody measured it; it holds for that yarn and gauge."""

    mm = Millimetres(required=True)
    by = Text(required=True, most=200)
    on = Day(required=True)
    yarn = Text(required=True, most=200)
    gauge = Text(required=True, most=200)
    wash = Text(required=True, most=200)


class StricterNote(Open):
    """A safety note of a peer's component of the same name that is stricter than the one here."""

    value = note()
    note = Word("loose_yarn", "floats", "openings", "ties", "fibre", "measured", required=True)
    peer = Text(required=True)
    sha256 = Sha256(required=True)
