"""The kit of a lesson: pieces of the sampler that stop at given rows, so that a class sees each state at once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.pattern.figures import counted
from counterpane.craft.pattern.parts import section_name
from counterpane.craft.pattern.rows import listed_rows, next_side
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.teaching import Kit, StoppedPiece
from counterpane.craft.teaching.seen import shown
from counterpane.craft.yarn import Spread, Yarn
from counterpane.craft.yarn.amounts import Work, end_loops, worked_out
from counterpane.craft.yarn.choosing import scale_of
from counterpane.craft.yarn.scales import Scale
from counterpane.craft.yarn.spreads import NOTHING, total

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
TAILS = 2
"""Ends of a piece: one at the cast-on, one where it stops."""
HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Stop:
    """Where a piece stops: after so many rows of a section, None for the cast-on; `bound` is how much is bound off."""

    section: int | None
    rows: int
    stops: str
    why: str
    on_needle: int
    bound: Fraction = Fraction(0)


def kit_of(small: Plan, yarns: Sequence[Yarn], needles: Sequence[str], vocabulary: Vocabulary, terms: Terms) -> Kit:
    """Return the pieces to prepare, with the yarn of each; `needles` says which needles the sampler takes."""
    work = worked_out(small, yarns, vocabulary)
    scales = {place: scale_of(small, yarns[place], vocabulary) for place in work.places}
    stops = list(stops_of(small, vocabulary, terms))
    pieces = tuple(_piece(letter(at), stop, work, scales) for at, stop in enumerate(stops))
    live = sum(piece.on_needle > 0 for piece in pieces)
    held = f"Needles or holders for {counted(live, 'piece')} with live stitches; smooth waste yarn holds them as well."
    basis = "; ".join(dict.fromkeys(scale.source for scale in scales.values()))
    return Kit(
        pieces, (*needles, held), _sum(each.metres for each in pieces), _sum(each.grams for each in pieces), basis
    )


def letter(place: int) -> str:
    """Return the letter of a piece, from 0: A to Z, then A2 and so on."""
    again, at = divmod(place, len(LETTERS))
    return LETTERS[at] + (str(again + 1) if again else "")


def stops_of(small: Plan, vocabulary: Vocabulary, terms: Terms) -> Iterator[Stop]:
    """Give where the pieces stop, in the order of the work, each state once."""
    yield Stop(None, 0, "after the cast-on", "the edge, before a row is worked into it", small.counts.cast_on)
    for index in range(len(small.sections)):
        yield from _of_section(small, index, vocabulary, terms)
    last, name = len(small.sections) - 1, in_terms("bind-off", terms)
    left = small.sections[-1].after - small.sections[-1].after // 2
    rows = small.sections[-1].rows
    yield Stop(
        last, rows, f"halfway along the {name}", "the edge as it is worked off, beside stitches that wait", left, HALF
    )
    yield Stop(last, rows, f"after the {name}", "the whole sampler, with its ends to weave in", 0, Fraction(1))


def _of_section(small: Plan, index: int, vocabulary: Vocabulary, terms: Terms) -> Iterator[Stop]:
    section = small.sections[index]
    name, repeat = section_name(section), len(listed_rows(section, vocabulary))
    followed = small.sections[index + 1 :]
    after = f"the change to {section_name(followed[0]).lower()}" if followed else f"the {in_terms('bind-off', terms)}"
    told: dict[int, str] = {section.rows: f"the part is whole; {after} comes next"}
    if 2 < repeat < section.rows:
        told.setdefault(repeat, "one whole repeat")
    if index:
        told.setdefault(1, "the row that changes one part into the other, on the needle")
    counts = [step.after or 0 for step in shown(section, vocabulary).traced.steps]
    for rows in sorted(told):
        yield Stop(index, rows, f"{name}, after row {rows}", told[rows], counts[rows - 1])


def _piece(letter: str, stop: Stop, work: Work, scales: dict[int, Scale]) -> StoppedPiece:
    loops = {place: _loops(stop, place, work, scale) for place, scale in scales.items()}
    metres = _sum(scale.metres_of(loops[place]) for place, scale in scales.items())
    grams = _sum(scale.grams_of(loops[place]) for place, scale in scales.items())
    return StoppedPiece(letter, stop.stops, stop.why, caption(stop, work.plan), stop.on_needle, metres, grams)


def caption(stop: Stop, small: Plan) -> str:
    """Write what stands on the card of a piece: its rows, its stitches, and which row comes next."""
    if stop.section is None:
        first = small.sections[0].first_row_side
        return f"{counted(stop.on_needle, 'stitch', 'stitches')} cast on. The first row is a {first} row."
    rows = (*(section.rows for section in small.sections[: stop.section]), stop.rows)
    done = f"{counted(sum(rows), 'row')} in all: {_rows_said(small.sections, rows)}."
    if stop.bound == 1:
        return f"{done} No stitch on the needle."
    section = small.sections[stop.section]
    side = next_side(replace(section, rows=stop.rows))
    waits = counted(stop.on_needle, "stitch", "stitches")
    return f"{done} {waits} on the needle; " + (
        "the edge is being worked off." if stop.bound else f"the next row is a {side} row."
    )


def _rows_said(sections: Sequence[Section], rows: Sequence[int]) -> str:
    return ", ".join(
        f"{section_name(section).lower()} {number}" for section, number in zip(sections, rows, strict=False)
    )


def _loops(stop: Stop, place: int, work: Work, scale: Scale) -> Spread:
    """Return the loops of a yarn in a piece with its tails; a finished piece has its picked-up borders too."""
    found = [work.cast_on(place) or NOTHING, end_loops(work.plan, scale).times(TAILS)]
    if stop.section is not None:
        rows = [section.rows for section in work.plan.sections[: stop.section]] + [stop.rows]
        used = zip(work.sections, rows, strict=False)
        found += [section.loops(place, number) for section, number in used if place in section.places]
    found.append((work.bind_off(place) or NOTHING).times(stop.bound))
    if stop.bound == 1:
        found += [work.border(place, index) or NOTHING for index in range(len(work.borders))]
    return total(found)


def _sum(amounts: Iterator[Spread | None]) -> Spread | None:
    known = list(amounts)
    return None if None in known else total(each for each in known if each is not None)
