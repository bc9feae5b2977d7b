"""The swatches of a plan in words: what to cast on, what to work, and what each is asked before a blanket is begun.

How a swatch is treated is common practice, no source; the rods are those of the safety rules on openings.
"""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.constructions import Section
from counterpane.craft.constructions.swatching import LEAST_CM, NoSwatch, Swatch
from counterpane.craft.measures import shown
from counterpane.craft.pattern import NoSwatchWords, SwatchWords
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.parts import called
from counterpane.craft.pattern.rows import listed_rows, next_side
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.say import WordsKind, say_row
from counterpane.craft.safety.limits import ENTRAPMENT_MM, FINGERTIP_MM
from counterpane.craft.stitches import Terms, Vocabulary

_WHERE = {"bottom": "bottom border", "sides": "side borders", "top": "top border"}
_APART = "its rows cannot be worked alone with the edges of the blanket"
_CLEAR = "2 cm (¾ in)"
"""How far from the edges of a swatch one counts; common practice, no source."""


def swatch_words(swatch: Swatch, vocabulary: Vocabulary, terms: Terms, words: WordsKind = "short") -> SwatchWords:
    """Write a swatch in US or UK terms."""
    name = called(swatch.part.component, terms)
    making = tuple(in_terms(step, terms) for step in _making(swatch, vocabulary, terms, words))
    asking = tuple(in_terms(step, terms) for step in _asking())
    return SwatchWords(name, _where(swatch.places), swatch.piece.stitches_total, making, asking)


def no_swatch_words(missing: NoSwatch, terms: Terms) -> NoSwatchWords:
    """Write in US or UK terms why a fabric has no swatch, and where it is measured."""
    why = "alone it has too few stitches for the cast-on" if missing.too_few else _APART
    steps = (
        f"It has no swatch: {why}.",
        "Work it with the parts that it has beside it in the blanket, over "
        f"{both(LEAST_CM)} or more, and measure it there.",
    )
    name = called(missing.part.component, terms)
    return NoSwatchWords(name, _where(missing.places), tuple(in_terms(step, terms) for step in steps))


def _where(places: tuple[str, ...]) -> str:
    return ", ".join(_WHERE.get(place, place) for place in places)


def _making(swatch: Swatch, vocabulary: Vocabulary, terms: Terms, words: WordsKind) -> Iterator[str]:
    """Give the cast-on, the rows in words, and the bind-off: all with the yarn and the needle of the blanket."""
    piece, section = swatch.piece, swatch.piece.sections[0]
    ends = (piece.request.cast_on.component, piece.request.bind_off.component)
    cast_on, bind_off = (called(component, terms) for component in ends)
    size = f"about {both(piece.width_cm)} by {both(piece.length_cm)}"
    guess = "; its gauge is not known yet, so that is a guess from another fabric" if swatch.borrowed else ""
    loops = f"{counted(piece.stitches_total, 'stitch', 'stitches')} in all with the bind-off"
    yield f"{counted(section.before, 'stitch', 'stitches')} and {counted(section.rows, 'row')}, {size}, {loops}{guess}."
    if swatch.narrow:
        yield f"It is narrower than the {both(LEAST_CM)} that tell a size: this fabric has no wider count."
    yield f"{cast_on}: {counted(section.before, 'stitch', 'stitches')}, with the yarn and the needle of this part."
    yield from _rows(section, vocabulary, terms, words)
    yield f"{bind_off}, on the {next_side(section)}."


def _rows(section: Section, vocabulary: Vocabulary, terms: Terms, words: WordsKind) -> Iterator[str]:
    """Give the rows in words, those that are all alike once, and how often they are worked."""
    rows = listed_rows(section, vocabulary)
    said = [say_row(row.parts, vocabulary, terms, words) for row in rows]
    if len(set(said)) == 1:
        yield f"Work every row so: {said[0]}."
        return
    yield f"Work {'; '.join(f'{row.side}, {words}' for row, words in zip(rows, said, strict=True))}."
    passes, rest = divmod(section.rows, len(rows))
    then = f", and then the first {rest} of them once more" if rest else ""
    yield f"These {counted(len(rows), 'row')} are worked {counted(passes, 'time')} in all{then}."


def _asking() -> Iterator[str]:
    """Give what is done with a swatch, in order."""
    yield (
        "Trim its ends to what is woven in and weigh it: its grams, shared out over its stitches in all, are the yarn "
        "of one stitch, and better than any rule."
    )
    yield (
        f"Let it lie flat and unstretched. Count stitches and rows over 10 cm (4 in) or more, {_CLEAR} clear of every "
        "edge, and write down both counts and the length they were counted over."
    )
    yield "Wash it as the blanket will be washed, dry it flat, weigh it again, and count over the same length again."
    yield (
        "Hang it by its cast-on edge for a day and measure how much longer it has become: a blanket that is carried or "
        "hung grows as much."
    )
    yield (
        f"Stretch it lightly both ways and lay smooth rods of {shown(FINGERTIP_MM, 0)} and {shown(ENTRAPMENT_MM, 0)} mm"
        " to its largest openings, without force (a knitting needle of that thickness does): write down which of them "
        "go through."
    )
    yield (
        "Stretch the cast-on and the bind-off: each gives as far as the fabric beside it, or it is worked on another "
        "needle or in another way."
    )
