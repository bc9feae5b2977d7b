"""The sampler of a plan in words: the smallest piece that shows every transition, worked from the same rows."""

from __future__ import annotations

from itertools import pairwise

from counterpane.craft.constructions import Plan, Section
from counterpane.craft.pattern.figures import counted
from counterpane.craft.pattern.parts import section_name
from counterpane.craft.pattern.rows import listed_rows
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.rows.say import WordsKind, say_row
from counterpane.craft.stitches import Terms, Vocabulary


def sampler(
    plan: Plan, small: Plan, vocabulary: Vocabulary, terms: Terms, words: WordsKind = "short"
) -> tuple[str, ...]:
    """Say how many stitches and rows the small piece takes of each part, and in which words they are worked."""
    pairs = tuple(zip(plan.sections, small.sections, strict=True))
    changes = ", ".join(f"{_low(one)} to {_low(other)}" for one, other in pairwise(small.sections))
    stitches = counted(small.counts.cast_on, "stitch", "stitches")
    rows = counted(sum(section.rows for section in small.sections), "row")
    every = f"every change of the blanket{': ' + changes if changes else ''}"
    lines = (
        f"Try it on {stitches} first: they and {rows} show {every}. Cast on and bind off as below.",
        *(_part(section, little, vocabulary, terms, words) for section, little in pairs),
        "It shows how the parts meet; it is too small to measure a gauge on.",
    )
    return tuple(in_terms(line, terms) for line in lines)


def _part(section: Section, little: Section, vocabulary: Vocabulary, terms: Terms, words: WordsKind) -> str:
    changes = any(row.stated is not None for row in listed_rows(section, vocabulary))
    mine, its = (_said(each, vocabulary, terms, words) for each in (section, little))
    told = f"{section_name(section)}: {counted(little.rows, 'row')}"
    if its[: len(mine)] == mine[: len(its)]:
        printed = "; the counts printed there are the blanket's" if changes else ""
        return f"{told}, in the words below{printed}."
    return f"{told}: {'; '.join(f'{side}, {words}' for side, words in its)}."


def _said(section: Section, vocabulary: Vocabulary, terms: Terms, words: WordsKind) -> list[tuple[str, str]]:
    return [(str(row.side), say_row(row.parts, vocabulary, terms, words)) for row in listed_rows(section, vocabulary)]


def _low(section: Section) -> str:
    return section_name(section).lower()
