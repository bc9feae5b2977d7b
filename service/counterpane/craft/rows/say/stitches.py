"""One stitch in words, with its number, manner, cable needle and colour: "k3", "knit 2 stitches together twice"."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from counterpane.craft.rows.say.neighbours import Beside, kind
from counterpane.craft.rows.say.printed import NOTHING, Printed
from counterpane.craft.rows.say.spelling import FULL, Spelling, times
from counterpane.craft.rows.tree import Work
from counterpane.craft.stitches import Terms, Vocabulary

PATTERN = "patt"
_GLUED: Mapping[str, str] = {"k": "k", "p": "p", "k tbl": "k", "p tbl": "p"}
_COUNTED = frozenset({"sl", "pick up and knit", "pick up and purl"})
_LONGEST_CODE = 3  # House.


@dataclass(frozen=True, slots=True)
class Speech:
    """What it takes to speak: the vocabulary, the terms, the spelling, and what the tree does not keep."""

    vocabulary: Vocabulary
    terms: Terms
    spelling: Spelling
    printed: Printed = NOTHING

    @property
    def full(self) -> bool:
        """Whether words are written in full."""
        return self.spelling is FULL


def said_work(work: Work, speech: Speech, beside: Beside, moved: bool = False, bare: bool = False) -> str:
    """Write one stitch; `bare` leaves its number to the stop that follows.

    `moved` says that the yarn goes back behind a slipped stitch, where "yarn forward" would make no loop.
    """
    held = speech.spelling.from_cable_needle if work.held else ""
    colour = f"in {_colour(work.colour)}" if work.colour else ""
    numbered = _numbered(work, speech, bare)
    if numbered is not None:
        return _joined(numbered, *_manners(work, speech), held, colour)
    name = _name(work, speech, beside, moved)
    often = "" if work.times == 1 else times(work.times)
    return _joined(name, *_manners(work, speech), held, often, colour)


def _joined(*words: str) -> str:
    return " ".join(word for word in words if word)


def _manners(work: Work, speech: Speech) -> list[str]:
    return [speech.spelling.manners[manner] for manner in work.manner]


def _numbered(work: Work, speech: Speech, bare: bool) -> str | None:
    """Write a stitch whose number stands inside its words; None for all others."""
    number = "" if bare else str(work.times)
    if work.stitch in _GLUED:
        verb = _GLUED[work.stitch]
        back = verb != work.stitch
        if not speech.full:
            return f"{verb}{number}{' tbl' if back else ''}"
        loop = "loop" if bare or work.times == 1 else "loops"
        return _joined(_words(verb, speech), number, f"through the back {loop}" if back else "")
    if work.stitch == PATTERN:
        return _in_pattern(work, speech, bare)
    if work.stitch not in _COUNTED:
        return None
    name = _words(work.stitch, speech)
    if bare:
        return name
    # "Sl 1" is short for "sl 1 st"; what is picked up is always said.
    short = work.stitch == "sl" and not speech.full
    return f"{name} {number}" if short else f"{name} {speech.spelling.counted(work.times)}"


def _in_pattern(work: Work, speech: Speech, bare: bool) -> str:
    """Write stitches worked in a pattern by its name as printed, where it has one."""
    fabric = speech.printed.fabrics.get(work.place)
    if fabric is not None and fabric.whole:
        return fabric.words
    name = _words(PATTERN, speech) if fabric is None else f"work in {fabric.words}" if speech.full else fabric.words
    if bare:
        return name
    return f"{name} over {speech.spelling.counted(work.times)}" if speech.full else f"{name} {work.times}"


def _name(work: Work, speech: Speech, beside: Beside, moved: bool) -> str:
    """Return the name to print for a stitch."""
    stitch = speech.vocabulary[work.stitch]
    if work.stitch == "yo" and speech.terms == "uk":
        named = stitch.words["uk"] if speech.full else stitch.names["uk"]
        return named[1 if moved else kind(beside)]
    words = _words(work.stitch, speech)
    # "Slip 1, knit 1, pass slipped stitch over twice" would be read as two passes.
    several = work.times > 1 and ("," in words or stitch.makes < 0)
    return stitch.names[speech.terms][0] if several else words


def _words(key: str, speech: Speech) -> str:
    stitch = speech.vocabulary[key]
    spelt = stitch.words.get(speech.terms, ()) if speech.full else ()
    return (spelt or stitch.names[speech.terms])[0]


def _colour(colour: str) -> str:
    """Return the name of a colour; a code of letters is printed in capitals."""
    coded = len(colour) == 1 or (len(colour) <= _LONGEST_CODE and colour[:2] in ("mc", "cc"))
    return colour.upper() if coded else colour
