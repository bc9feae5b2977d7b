"""The counts that parts take, in words: each by itself, and all together in the cast-on."""

from __future__ import annotations

from counterpane.craft.component import Component, derive
from counterpane.craft.constructions import Plan
from counterpane.craft.constructions.fitting import options
from counterpane.craft.constructions.obstacles import Stuck
from counterpane.craft.constructions.settling import settle
from counterpane.craft.counts import Progression
from counterpane.craft.stitches import Vocabulary


def takes(component: Component, vocabulary: Vocabulary) -> str:
    """Say which counts a component takes: "3 stitches plus 1, at least 4"."""
    return " or ".join(map(say_multiple, derive(component, vocabulary).starts)) or "no count"


def cast_on_takes(plan: Plan, vocabulary: Vocabulary) -> str:
    """Say which cast-on counts suit all parts of a plan at once."""
    return say_multiple(cast_on_counts(plan, vocabulary))


def say_multiple(counts: Progression) -> str:
    """Say a multiple in the words that stand after "multiple"; it states none by itself."""
    if counts.of == 0:
        return f"exactly {counts.least}"
    if counts.of == 1:
        return f"any count from {counts.least} on"
    plus = f" plus {counts.plus}" if counts.plus else ""
    return f"{counts.of} stitches{plus}, at least {counts.least}"


def cast_on_counts(plan: Plan, vocabulary: Vocabulary) -> Progression:
    """Return the counts of the cast-on of a plan over which all its parts can be worked, as it works them.

    Its own count alone for a plan whose parts cannot be settled again.
    """
    cast_on = plan.counts.cast_on
    try:
        found = tuple(option.counts for option in options(settle(plan.request, vocabulary)))
    except Stuck:
        return Progression.only(cast_on)
    return next((counts for counts in found if counts.admits(cast_on)), Progression.only(cast_on))
