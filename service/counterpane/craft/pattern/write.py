"""A plan in words: everything that a pattern says, put together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import chain

from counterpane.craft.component import Component
from counterpane.craft.constructions import Plan
from counterpane.craft.pattern import Credit, Pattern, Size, WrittenSection
from counterpane.craft.pattern.abbreviations import abbreviations, specials
from counterpane.craft.pattern.advice import CARE, finishing, materials, notes, summary
from counterpane.craft.pattern.cautions import cautions
from counterpane.craft.pattern.checkpoints import checkpoints, stop
from counterpane.craft.pattern.edges import bind_off, cast_on
from counterpane.craft.pattern.figures import both, counted
from counterpane.craft.pattern.gauges import gauges
from counterpane.craft.pattern.parts import called, components_of, section_name, texture_name
from counterpane.craft.pattern.rows import listed_rows, repeats, written_rows
from counterpane.craft.rows.tree import Row
from counterpane.craft.stitches import Terms, Vocabulary


def written(
    plan: Plan,
    vocabulary: Vocabulary,
    terms: Terms,
    title: str,
    safety: Mapping[str, object],
    yarn: str | None = None,
    sampler: Sequence[str] = (),
) -> Pattern:
    """Write a plan as a pattern in US or UK terms; equal plans give equal patterns.

    `safety` is an answer of the safety rules as JSON values, `sampler` the paragraphs of the sampler, already in words.
    Raises CannotBeWritten for a plan whose rows do not work at its own counts.
    """
    listed = tuple(listed_rows(section, vocabulary) for section in plan.sections)
    sections = tuple(_section(plan, index, rows, vocabulary, terms) for index, rows in enumerate(listed))
    every_row = tuple(chain.from_iterable(listed))
    return Pattern(
        title=title,
        terms=terms,
        summary=summary(plan, terms),
        size=Size(plan.width_cm, plan.length_cm, plan.width_tolerance_cm, plan.length_tolerance_cm),
        gauges=gauges(plan, terms),
        materials=materials(plan, yarn, terms),
        abbreviations=abbreviations(every_row, tuple(_lines(sections)), vocabulary, terms),
        specials=specials(every_row, vocabulary, terms),
        notes=notes(plan, terms),
        cast_on=cast_on(plan, terms),
        sections=sections,
        bind_off=bind_off(plan, terms),
        finishing=finishing(plan, terms),
        care=CARE,
        cautions=cautions(safety, {part.slug: called(part, terms) for part in components_of(plan)}),
        credits=tuple(_credit(component, terms) for component in components_of(plan)),
        sampler=tuple(sampler),
    )


def default_title(plan: Plan, terms: Terms) -> str:
    """Name a blanket after the textures of its body."""
    textures = dict.fromkeys(called(part.component, terms) for part in plan.request.body)
    return f"Blanket: {' and '.join(textures)}"


def _section(plan: Plan, index: int, rows: Sequence[Row], vocabulary: Vocabulary, terms: Terms) -> WrittenSection:
    section = plan.sections[index]
    last = section.first_row + section.rows - 1
    texture = texture_name(plan, section.texture, terms)
    return WrittenSection(
        name=section_name(section),
        texture=texture,
        intro=(
            f"{texture}, {both(section.cm_length)}: {counted(section.rows, 'row')}, rows {section.first_row} to {last} "
            f"of the blanket. Row numbers below count within this part."
        ),
        first_row=section.first_row,
        last_row=last,
        before=section.before,
        after=section.after,
        rows=written_rows(rows, section, vocabulary, terms),
        repeats=repeats(len(rows), section.rows),
        checkpoints=checkpoints(plan, index, rows, terms),
        stop=stop(plan, index, terms),
    )


def _lines(sections: Sequence[WrittenSection]) -> Iterator[str]:
    """Give the lines that a knitter works from, with the words that stand beside them."""
    for section in sections:
        yield from (row.text for row in section.rows)
        yield from (repeat.text for repeat in section.repeats)


def _credit(component: Component, terms: Terms) -> Credit:
    source = component.provenance
    where = ", ".join(str(part) for part in (source.source, source.year, source.where) if part is not None)
    return Credit(called(component, terms), f"{where}; wording by {source.author}", source.licence)
