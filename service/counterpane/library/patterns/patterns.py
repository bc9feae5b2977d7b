"""Writing a plan as a pattern, and proving that the pattern on paper says what the plan says."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from counterpane.craft.care.finishing import Aftercare
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.swatching import Swatches
from counterpane.craft.licensing.verdict import sharing_line, verdict
from counterpane.craft.pattern import Pattern
from counterpane.craft.pattern.write import default_title, written
from counterpane.craft.rows.say import WordsKind
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.craft.yarn import YarnEstimate
from counterpane.craft.yarn.needles import NeedleAdvice
from counterpane.library.review.licences import licensed_of
from counterpane.library.safety.safety import safety_of_plan
from counterpane.library.texts.checks import check_text

_NO_SWATCHES = Swatches()


def write_pattern(
    plan: Plan,
    vocabulary: Vocabulary,
    terms: Terms = "us",
    title: str | None = None,
    safety: Mapping[str, Any] | None = None,
    *,
    yarn: YarnEstimate | None = None,
    needles: NeedleAdvice | None = None,
    sampler: Plan | None = None,
    swatches: Swatches = _NO_SWATCHES,
    sources: Mapping[str, str] | None = None,
    after: Aftercare | None = None,
    designer: str | None = None,
    words: WordsKind = "short",
) -> Pattern:
    """Write a plan as a pattern; without a safety answer the plan is assessed with nothing known of the child.

    `words` are abbreviated or in full, `yarn` is the estimate of its yarn, `needles` those to begin with, `sampler` the
    sampler of the plan, `swatches` its swatches, `sources` the names of sources by slug, `after` its finishing and
    care, `designer` who designed it.
    """
    record = safety_of_plan(plan, None) if safety is None else safety
    named = title or default_title(plan, terms)
    pattern = written(
        plan,
        vocabulary,
        terms,
        named,
        words=words,
        safety=record,
        yarn=yarn,
        needles=needles,
        small=sampler,
        swatches=swatches,
        after=after,
        sources=sources or {},
    )
    sharing = sharing_line(verdict(licensed_of(plan, None, sources or {})))
    return replace(pattern, designer=designer, sharing=sharing)


def recheck(pattern: Pattern, text: str, vocabulary: Vocabulary) -> tuple[str, ...]:
    """Check a pattern's text as a stranger would and return what differs from the pattern; nothing where it holds.

    `text` is the pattern as any press laid it out. Any finding differs, notes too.
    """
    checked = check_text(text, vocabulary, terms=pattern.terms)
    found = [f"line {each['line']}: {each['rule']}: {each['message']}" for each in checked["findings"]]
    if checked["cast_on"] != pattern.cast_on.stitches:
        found.append(f"cast-on: {checked['cast_on']} read, {pattern.cast_on.stitches} written")
    meant = [(row.label, row.side, row.after) for section in pattern.every_section for row in section.rows]
    read = [(row["label"], row["side"], row["after"]) for row in checked["rows"]]
    if len(read) != len(meant):
        found.append(f"rows: {len(read)} read, {len(meant)} written")
    pairs = zip(meant, read, strict=False)
    found += [f"row {mine[0]}: {other} read, {mine} written" for mine, other in pairs if mine != other]
    return tuple(found)
