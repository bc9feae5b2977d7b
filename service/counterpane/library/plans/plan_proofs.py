"""The proof of a plan: every row written in words, read back, and counted in closed form and loop by loop."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import examine
from counterpane.craft.constructions import Plan, Section
from counterpane.craft.constructions.joining import Nodes
from counterpane.craft.constructions.making import sampler
from counterpane.craft.rows.say import say_line, say_row
from counterpane.craft.rows.tree import Side
from counterpane.craft.rules import judge_text
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.trace import trace

MOST_TRACED = 20_000
"""Loops worked one by one in the proof of a section beyond which the closed form stands alone; house figure."""


def sampled(plan: Plan, vocabulary: Vocabulary) -> Plan:
    """Return the sampler of a plan by its way of building."""
    return sampler(plan, vocabulary)


def lines_of(plan: Plan, vocabulary: Vocabulary, terms: Terms = "us") -> tuple[str, ...]:
    """Return a plan as lines: the cast-on, then each section with its rows and how often they are worked."""
    lines = [f"Cast on {plan.counts.cast_on} sts."]
    for section in plan.sections:
        lines += [f"{section.name.capitalize()}: {section.rows} rows", *_rows(section, vocabulary, terms)]
    bind_off = f"{'Cast' if terms == 'uk' else 'Bind'} off."
    lines.append(bind_off)
    for edge in plan.picked:
        border = edge.border
        lines += [f"{border.name.capitalize()}: {border.rows} rows", f"Pick up and knit {edge.picks} sts."]
        lines += [*_rows(border, vocabulary, terms), bind_off]
    return tuple(lines)


def _rows(section: Section, vocabulary: Vocabulary, terms: Terms) -> Iterator[str]:
    for row in section.cycle[: section.rows]:
        yield say_line(row, vocabulary, terms)


class Wrong(Exception):
    """The words of a section, or one of the two roads, differ from the plan; the text says how."""


def disagreement(plan: Plan, vocabulary: Vocabulary) -> str | None:
    """Say where the words of a plan or one of the two roads differ from it; None where all agree."""
    small = sampled(plan, vocabulary)
    read: dict[tuple[int, tuple[Nodes, ...]], list[int]] = {}
    # A border picked up is the same on both edges, and its sampler shows another count of the same rows.
    borders = [(edge.border, edge.border) for edge in plan.picked[:1]]
    for section, sample in (*zip(plan.sections, small.sections, strict=True), *borders):
        words = section.before, tuple(row.parts for row in section.cycle)
        try:
            if words not in read:
                read[words] = _read_back(section, vocabulary)
                _work_loops(section, sample, vocabulary)
            _add_up(section, read[words])
        except Wrong as wrong:
            return f"{section.name}: {wrong}"
    return None


def _read_back(section: Section, vocabulary: Vocabulary) -> list[int]:
    """Return the counts after a section's rows as a stranger reads them; Wrong where they read otherwise."""
    lines = [f"Cast on {section.before} sts.", *_lines(section, vocabulary)]
    examined = examine("\n".join(lines), vocabulary)
    found = [finding for finding in judge_text(examined) if finding.severity != "note"]
    if found:
        raise Wrong(found[0].message)
    read = [(each.row.side, each.row.parts) for each in examined.followed]
    if read != [(row.side, row.parts) for row in section.cycle]:
        raise Wrong("its rows read back are other rows")
    return [each.after or 0 for each in examined.followed]


def _lines(section: Section, vocabulary: Vocabulary) -> Iterator[str]:
    """Give the rows of a section in words, those that are alike in one line, as a pattern prints them."""
    alike: dict[tuple[Nodes, Side | None], list[str]] = {}
    for row in section.cycle:
        alike.setdefault((row.parts, row.side), []).append(row.label)
    for (parts, side), labels in alike.items():
        *others, last = labels
        name = f"Rows {', '.join(others)} and {last}" if others else f"Row {last}"
        yield f"{name} ({side}): {say_row(parts, vocabulary)}."


def _add_up(section: Section, counts: list[int]) -> None:
    passes, rest = divmod(section.rows, len(counts))
    if passes * sum(counts) + sum(counts[:rest]) != section.stitches:
        raise Wrong("its stitches add up to another number")
    if counts[rest - 1] != section.after:
        raise Wrong("it ends on another count")


def _work_loops(section: Section, sample: Section, vocabulary: Vocabulary) -> None:
    """Work a section loop by loop, over the sampler's count where its words are the same; Wrong where that differs."""
    same = [row.parts for row in sample.cycle] == [row.parts for row in section.cycle]
    worked = sample if same else section
    if worked.before * len(worked.cycle) > MOST_TRACED:
        return
    steps = trace([row.parts for row in worked.cycle], worked.before, vocabulary).steps
    if any(step.after is None for step in steps):
        raise Wrong("it cannot be worked loop by loop")
    if steps[(worked.rows - 1) % len(worked.cycle)].after != worked.after:
        raise Wrong("worked loop by loop it ends on another count")
