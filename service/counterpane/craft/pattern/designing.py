"""The designer's sheet of a plan: all its counts, where each comes from, its yarn, and all that the rules say of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from counterpane.craft.constructions import Plan
from counterpane.craft.pattern import Pattern
from counterpane.craft.pattern.derivations import Derivation, derivations
from counterpane.craft.pattern.parts import section_name
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import YarnEstimate


@dataclass(frozen=True, slots=True)
class DesignerSheet:
    """What the designer is told beside the knitter's `pattern`; `yarn` None where none was told."""

    pattern: Pattern
    plan: Plan
    derived: tuple[Derivation, ...]
    yarn: YarnEstimate | None
    section_names: Sequence[str]


def designer_sheet(
    plan: Plan, pattern: Pattern, vocabulary: Vocabulary, yarn: YarnEstimate | None = None
) -> DesignerSheet:
    """Put the sheet of a plan together, in the terms of its pattern."""
    names = tuple(section_name(section) for section in plan.every_section)
    return DesignerSheet(pattern, plan, derivations(plan, vocabulary, pattern.terms), yarn, names)
