"""What one loop of a texture is: the stitch that made it as the right side shows it, and how it was drawn."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from counterpane.craft.fabric.faces import SLIP, Look
from counterpane.craft.stitches import Stitch, Vocabulary
from counterpane.craft.texture import Signs

TWISTED = frozenset({"k tbl", "p tbl"})
"""The stitches of the vocabulary whose legs are crossed."""

STANDS_EITHER_WAY = frozenset({"k", "p"}) | TWISTED
"""The stitches that are themselves upside down; a twisted one keeps the way it is twisted."""

FRONT, BACK, HELD_FRONT, HELD_BACK = "yarn in front", "yarn behind", "held in front", "held behind"
_OTHER_NOTE = {FRONT: BACK, BACK: FRONT, HELD_FRONT: HELD_BACK, HELD_BACK: HELD_FRONT}
_OTHER_FACE: dict[Look, Look] = {"knit": "purl", "purl": "knit"}
PASSED = "passed over"


@dataclass(frozen=True, slots=True)
class Mark:
    """One loop of a texture, as the right side shows it.

    `drawn` are the loops of the row below that it was drawn through, as columns to the left of its own. `notes` say
    where the yarn lies past it, whether it was held, and what was passed over it. `behind` says that the stitch was
    worked on the other side and has no name of its own from here.
    """

    stitch: str
    drawn: tuple[int, ...] = (0,)
    notes: tuple[str, ...] = ()
    behind: bool = False

    @property
    def label(self) -> str:
        """The mark as one word; a stitch drawn straight up is its key alone."""
        drawn = "" if self.drawn == (0,) else f" from {','.join(map(str, self.drawn)) or 'nothing'}"
        return ", ".join((f"{self.stitch}{' on the other side' if self.behind else ''}{drawn}", *self.notes))

    def from_behind(self, vocabulary: Vocabulary) -> Mark:
        """Return the mark as the other side shows it, columns counted from the other edge."""
        key = _pair(vocabulary.stitches.get(self.stitch), "back", vocabulary)
        behind = self.behind if key else not self.behind
        notes = tuple(sorted(_OTHER_NOTE.get(note, note) for note in self.notes))
        return Mark(key or self.stitch, self._across(), notes, behind)

    def in_mirror(self, vocabulary: Vocabulary) -> Mark | None:
        """Return its mirror image; None where the vocabulary names none."""
        key = _pair(vocabulary.stitches.get(self.stitch), "mirror", vocabulary)
        return (
            Mark(key, self._across(), self.notes, self.behind) if key and PASSED not in " ".join(self.notes) else None
        )

    def upside_down(self) -> Mark | None:
        """Return the mark upside down; only stitches drawn straight up can stand on their heads."""
        plain = self.drawn == (0,) and not self.notes and not self.behind
        return self if plain and self.stitch in STANDS_EITHER_WAY else None

    def look(self, vocabulary: Vocabulary) -> Look:
        """Return what the eye sees of it from the right side; a twisted stitch shows the face that it has."""
        stitch = vocabulary.stitches.get(self.stitch)
        if self.stitch == SLIP:
            return "slipped"
        if stitch is not None and stitch.opens:
            return "open"
        if HELD_FRONT in self.notes or HELD_BACK in self.notes or (stitch and stitch.uses == stitch.makes > 1):
            return "crossed"
        if stitch is None or stitch.face is None:
            return "not known"
        return _OTHER_FACE[stitch.face] if self.behind else stitch.face

    @property
    def sight(self) -> str | None:
        """What is sure of it wherever it was drawn from; None where that cannot be said in words of the vocabulary."""
        unsure = self.behind or PASSED in " ".join(self.notes) or (self.stitch == SLIP and not self.notes)
        return None if unsure else ", ".join((self.stitch, *self.notes))

    def _across(self) -> tuple[int, ...]:
        return tuple(sorted(-column for column in self.drawn))


def _pair(stitch: Stitch | None, way: str, vocabulary: Vocabulary) -> str | None:
    """Return the counterpart of a stitch that has it as a counterpart in turn; None where there is none."""
    key: str | None = getattr(stitch, way, None)
    other = vocabulary.stitches.get(key) if key else None
    return key if stitch and other and getattr(other, way) == stitch.key else None


def with_images(marks: Iterable[Mark], vocabulary: Vocabulary) -> frozenset[Mark]:
    """Return the marks with those that they become from behind and in a mirror, and so on."""
    known, fresh = set[Mark](), set(marks)
    while fresh:
        known |= fresh
        became = {mark for one in fresh for mark in (one.from_behind(vocabulary), one.in_mirror(vocabulary)) if mark}
        fresh = became - known
    return frozenset(known)


def signs_of(marks: Iterable[Mark], vocabulary: Vocabulary) -> Signs:
    """Return what the labels of these marks, which are all that they become, turn into."""
    return Signs(
        {mark.label: mark.from_behind(vocabulary).label for mark in marks},
        {mark.label: other.label for mark in marks if (other := mark.in_mirror(vocabulary))},
        {mark.label: other.label for mark in marks if (other := mark.upside_down())},
    )
