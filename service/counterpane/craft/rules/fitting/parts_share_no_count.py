"""Parts that cannot share one number of stitches."""

from __future__ import annotations

from collections.abc import Iterator
from math import gcd

from counterpane.craft.component.derived import say_counts
from counterpane.craft.constructions.amending import working, working_together
from counterpane.craft.constructions.attempts import Attempt
from counterpane.craft.constructions.obstacles import Demand, NoCommonCount
from counterpane.craft.constructions.settling import settle
from counterpane.craft.constructions.sharing import changes_to_share, joint_changes, stuck_pair
from counterpane.craft.findings import Correction, Finding, rule


@rule(
    "parts-share-no-count",
    family="fitting",
    severity="error",
    bad=(
        '{"parts": {"body": "garter", "bottom": "rib-two-by-two-border", "top": "broken-rib-border"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
    good=(
        '{"parts": {"body": "garter", "bottom": "garter-border", "top": "garter-border"}, '
        '"gauge": {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}, '
        '"size": {"width_cm": 70, "length_cm": 90}}'
    ),
)
def parts_share_no_count(attempt: Attempt) -> Iterator[Finding]:
    """Parts that share no count.

    The whole piece is worked over one number of stitches, which each part must be able to take with what stands
    beside it.
    """
    for met in attempt.met(NoCommonCount):
        settled = settle(attempt.request, attempt.vocabulary)
        changes = working(attempt, changes_to_share(settled))
        joint = () if changes else working_together(attempt, joint_changes(settled))
        pair = stuck_pair(met.demands) or (met.demands[0], met.demands[-1])
        yield Finding(
            "parts-share-no-count",
            "error",
            f"No cast-on suits all parts. {' '.join(map(_asks, pair))}{_why(*pair)}",
            _hint(changes, joint, pair[1]),
            pointer=pair[1].pointer,
            changes=changes or joint,
        )


def _asks(demand: Demand) -> str:
    counts = " or ".join(say_counts(counts) for counts in demand.classes[:3])
    return f"{demand.name.capitalize()} with what stands beside it needs {counts}."


def _why(one: Demand, other: Demand) -> str:
    """Say in numbers why two parts share no count: what each leaves over by their greatest common divisor."""
    step = gcd(*(counts.of for counts in (*one.classes, *other.classes)))
    first, second = ({counts.plus % step for counts in each.classes} if step else set() for each in (one, other))
    if step < 2 or len(first) != 1 or len(second) != 1 or first == second:
        return ""
    return f" Counted in {step}s, the first leaves {first.pop()} over and the second {second.pop()}."


def _hint(changes: tuple[Correction, ...], joint: tuple[Correction, ...], culprit: Demand) -> str:
    if changes:
        return "Make one of the corrections, or choose another component for one of the parts."
    if joint:
        return "Make all of the corrections together, or choose other components."
    return f"Choose another component for “{culprit.name}”: a garter border takes every count."
