"""Which safety notes on a component are stricter than others on the same one, where two people have looked.

Something found is stricter than "not known", and that stricter than "none": unknown is never fine. Of two measures in
one unit the larger is stricter; two in different units cannot be compared, and both stand. House rule.
"""

from __future__ import annotations

from dataclasses import fields
from fractions import Fraction

from counterpane.craft.component.values import Component, Measure, Note, SafetyNotes

MEASURED = "measured"
"""The name under which the largest measured opening is told."""


def stricter(own: Component, other: Component) -> dict[str, Note]:
    """Return the notes of the other component that are stricter than one's own, by name."""
    names = (field.name for field in fields(SafetyNotes))
    pairs = {name: (getattr(own.safety, name), getattr(other.safety, name)) for name in names}
    found = {name: theirs for name, (ours, theirs) in pairs.items() if _is_stricter(theirs, ours)}
    measured = largest_measured(other)
    if measured is not None and measured > (largest_measured(own) or 0):
        found[MEASURED] = Measure(str(max(other.measured, key=lambda each: Fraction(each.mm)).mm), "mm")
    return found


def largest_measured(component: Component) -> Fraction | None:
    """Return the largest opening that was measured, in millimetres; None where nobody measured one."""
    return max((Fraction(each.mm) for each in component.measured), default=None)


def _is_stricter(note: Note, than: Note) -> bool:
    if isinstance(note, Measure) and isinstance(than, Measure):
        return note.unit != than.unit or _value(note) > _value(than)
    return _rank(note) > _rank(than)


def _rank(note: Note) -> int:
    return 2 if isinstance(note, Measure) else 1 if note == "not known" else 0


def _value(note: Measure) -> Fraction:
    return Fraction(note.value)
