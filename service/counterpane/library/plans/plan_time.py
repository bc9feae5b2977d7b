"""The hours of a plan as JSON values, to 0.1 half up, with the pace they rest on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn.pace import OF_PRACTICE, PRACTISED, SLOWER, TURNING_S, TURNS, hours
from counterpane.library.plans.plan_answers import tenths
from counterpane.library.yarn.yarn_requests import number_of

BEGINNERS = "beginners take about twice as long"


def time_json(plan: Plan, given: Mapping[str, Any] | None, vocabulary: Vocabulary) -> dict[str, Any]:
    """Return the hours of a plan, the quicker end first, at the pace of its request or of practised knitters."""
    pace = None if given is None else number_of(given, "stitches_a_minute", "/pace")
    found = hours(plan, vocabulary, pace)
    own = None if pace is None else [tenths(pace), tenths(pace)]
    return {
        "hours": [tenths(found.quick), tenths(found.slow)],
        "stitches_a_minute": own or [int(rate) for rate in PRACTISED],
        "turning_s": [int(turn) for turn in TURNING_S],
        "slower_parts": list(found.slow_parts),
        "slower_by": float(SLOWER),
        "basis": f"{OF_PRACTICE}; {BEGINNERS}" if pace is None else f"the pace that was given, {TURNS}",
    }
