"""A plan in words: everything that a pattern says, put together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain

from counterpane.craft.behaviour import Seam, seams
from counterpane.craft.care.finishing import Aftercare
from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.swatching import Swatches
from counterpane.craft.licensing import named
from counterpane.craft.pattern import Credit, Pattern, Size, WrittenBorder, WrittenSection
from counterpane.craft.pattern.abbreviations import abbreviations, specials
from counterpane.craft.pattern.advice import CARE, materials, notes, summary
from counterpane.craft.pattern.borders import written_border
from counterpane.craft.pattern.cautions import cautions
from counterpane.craft.pattern.checkpoints import checkpoints, stop
from counterpane.craft.pattern.edges import bind_off, cast_on
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.finishing import finishing
from counterpane.craft.pattern.gauges import gauges
from counterpane.craft.pattern.in_full import in_full
from counterpane.craft.pattern.level import level_of
from counterpane.craft.pattern.lifelines import lifelines
from counterpane.craft.pattern.notions import notions
from counterpane.craft.pattern.parts import called, components_of, section_name, texture_name
from counterpane.craft.pattern.rows import listed_rows, repeats, written_rows
from counterpane.craft.pattern.sampler import sampler
from counterpane.craft.pattern.seams import rows_in_notes, seam_notes
from counterpane.craft.pattern.swatches import no_swatch_words, swatch_words
from counterpane.craft.rows.say import WordsKind
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.yarn import YarnEstimate
from counterpane.craft.yarn.needles import NeedleAdvice

_NO_SOURCES: Mapping[str, str] = {}
_NO_SWATCHES = Swatches()


@dataclass(frozen=True, slots=True)
class _Worked:
    """The parts of a blanket in words, with all rows that are printed for them."""

    sections: tuple[WrittenSection, ...]
    borders: tuple[WrittenBorder, ...]
    rows: tuple[Row, ...]
    seams: tuple[Seam, ...]
    seam_notes: tuple[str, ...]
    words: WordsKind

    @property
    def every_section(self) -> tuple[WrittenSection, ...]:
        """All sections in working order."""
        return (*self.sections, *(border.section for border in self.borders))

    @property
    def is_lined(self) -> bool:
        """Tell whether any part asks for lifelines."""
        return any(section.lifelines for section in self.every_section)

    @property
    def every_row(self) -> tuple[Row, ...]:
        """All rows in words, those in the notes on seams too."""
        return (*self.rows, *rows_in_notes(self.seams))

    @property
    def lines(self) -> tuple[str, ...]:
        """The lines that a knitter works from, as they are printed."""
        lines = (*_lines(self.every_section), *(border.line for border in self.borders), *self.seam_notes)
        return lines if self.words == "short" else in_full(lines)


def written(
    plan: Plan,
    vocabulary: Vocabulary,
    terms: Terms,
    title: str,
    *,
    words: WordsKind = "short",
    safety: Mapping[str, object],
    yarn: YarnEstimate | None = None,
    needles: NeedleAdvice | None = None,
    small: Plan | None = None,
    swatches: Swatches = _NO_SWATCHES,
    after: Aftercare | None = None,
    sources: Mapping[str, str] = _NO_SOURCES,
) -> Pattern:
    """Write a plan as a pattern in US or UK terms, abbreviated or in full words; equal plans give equal patterns.

    `safety` is an answer of the safety rules as JSON values, `yarn` the estimate of the yarn, `needles` those to begin
    with, `small` the sampler of the plan, `swatches` its swatches, `after` its finishing and care, `sources` the names
    of sources by slug. No plan knows who designed it or how the pattern may be shared: that is left out.
    Raises CannotBeWritten for a plan whose rows do not work at its own counts.
    """
    done = _worked(plan, vocabulary, terms, words)
    wanted = notions(plan, done.rows, vocabulary, after, lifelines=done.is_lined)
    pattern = Pattern(
        title=title,
        terms=terms,
        summary=summary(plan, terms),
        level=level_of(plan, done.rows, vocabulary),
        size=Size(plan.width_cm, plan.length_cm, plan.width_give.tolerance_cm, plan.length_give.tolerance_cm),
        gauges=gauges(plan, vocabulary, terms),
        materials=materials(plan, yarn, needles, wanted, terms),
        abbreviations=abbreviations(done.every_row, done.lines, vocabulary, terms),
        specials=specials(done.every_row, vocabulary, terms, words),
        notes=(*notes(plan, vocabulary, terms), *done.seam_notes),
        cast_on=cast_on(plan, terms),
        sections=done.sections,
        bind_off=bind_off(plan, terms),
        finishing=finishing(plan, terms, after),
        care=(after.care if after else None) or CARE,
        cautions=cautions(safety, {part.slug: called(part, terms) for part in components_of(plan)}, terms),
        credits=_credits(components_of(plan), sources, terms),
        sampler=sampler(plan, small, vocabulary, terms, words) if small else (),
        swatches=tuple(swatch_words(swatch, vocabulary, terms, words) for swatch in swatches.made),
        no_swatches=tuple(no_swatch_words(missing, terms) for missing in swatches.missing),
        borders=done.borders,
        words=words,
    )
    return pattern if words == "short" else in_full(pattern)


def _worked(plan: Plan, vocabulary: Vocabulary, terms: Terms, words: WordsKind) -> _Worked:
    """Write the parts of a plan, those of the middle first."""
    listed = tuple(listed_rows(section, vocabulary) for section in plan.sections)
    outwards = tuple(listed_rows(edge.border, vocabulary) for edge in plan.picked)
    evened = seams(plan, vocabulary)
    return _Worked(
        tuple(_section(plan, index, rows, vocabulary, terms, words=words) for index, rows in enumerate(listed)),
        tuple(
            written_border(plan, edge, rows, vocabulary, terms, words=words)
            for edge, rows in zip(plan.picked, outwards, strict=True)
        ),
        tuple(chain.from_iterable((*listed, *outwards))),
        evened,
        seam_notes(evened, vocabulary, terms, words),
        words,
    )


def default_title(plan: Plan, terms: Terms) -> str:
    """Name a blanket after the textures of its body."""
    textures = dict.fromkeys(called(part.component, terms) for part in plan.request.body)
    return f"Blanket in {' and '.join(f'{name[0].lower()}{name[1:]}' for name in textures)}"


def _section(
    plan: Plan, index: int, rows: Sequence[Row], vocabulary: Vocabulary, terms: Terms, *, words: WordsKind
) -> WrittenSection:
    section = plan.sections[index]
    last = section.first_row + section.rows - 1
    texture = texture_name(plan, section.texture, terms)
    worked = written_rows(rows, section, vocabulary, terms, words)
    return WrittenSection(
        name=section_name(section),
        texture=texture,
        intro=(
            f"{texture}: {counted(section.rows, 'row')}, rows {section.first_row} to {last} of the blanket, "
            f"{both(section.cm_length)} long."
        ),
        first_row=section.first_row,
        last_row=last,
        before=section.before,
        after=section.after,
        rows=worked,
        repeats=repeats(len(rows), section.rows),
        checkpoints=checkpoints(plan, index, rows, vocabulary, terms),
        stop=stop(plan, index, terms),
        lifelines=lifelines(rows, worked, section.before, vocabulary),
    )


def _lines(sections: Sequence[WrittenSection]) -> Iterator[str]:
    """Give the lines that a knitter works from, with the words that stand beside them."""
    for section in sections:
        yield from (row.text for row in section.rows)
        yield from (repeat.text for repeat in section.repeats)


def _credits(components: Sequence[Component], sources: Mapping[str, str], terms: Terms) -> tuple[Credit, ...]:
    """Credit each component; those of one source, author and licence together."""
    alike: dict[tuple[str, str], list[Component]] = {}
    for component in components:
        source = component.provenance
        asked = (source.notice, source.address, *(f"changed: {each}" for each in source.changes))
        text = "; ".join((source.cited(sources), f"wording by {source.author}", *(each for each in asked if each)))
        alike.setdefault((text, named(source.licence)), []).append(component)
    return tuple(_credit(each, text, licence, terms) for (text, licence), each in alike.items())


def _credit(alike: Sequence[Component], text: str, licence: str, terms: Terms) -> Credit:
    names = "; ".join(called(component, terms) for component in alike)
    return Credit(names, text, licence, tuple(component.slug for component in alike if component.slug))
