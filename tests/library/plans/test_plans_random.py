"""Random mixes of parts: each is planned and proved, or refused with findings that lead on."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from counterpane.craft.component import Component
from counterpane.craft.constructions import CannotBePlanned
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import make_plan, plan_json, plan_request_of, sampler_of

BORDERS = (
    "garter-border",
    "seed-stitch-border",
    "rib-two-by-two-border",
    "check-border",
    "welt-border",
    "eyelet-border",
)
BODIES = ("waffle", "basket-weave", "old-shale", "fan", "rope-cable", "seed-stitch", "pennants", "linen-stitch")
SELVEDGES = ("slipped-selvedge", "chain-selvedge", "garter-selvedge", "cord-selvedge")
REPEATS = ("k{b}, p{b}", "p{b}, k2tog, yo", "k1, p{b}, sl 1 pwise wyif")


@st.composite
def rows(draw: st.DrawFn) -> str:
    """Draw up to four rows of one repeat, with plain rows between."""
    repeat = draw(st.sampled_from(REPEATS)).format(b=draw(st.integers(1, 5)))
    stop = draw(st.integers(0, 5))
    end = f"last {stop} sts, k{stop}" if stop else "end"
    kinds = st.sampled_from([f"*{repeat}; rep from * to {end}", "knit", "purl"])
    side = draw(st.sampled_from(["", " (RS)", " (WS)"]))
    lines = draw(st.lists(kinds, min_size=1, max_size=4))
    return "\n".join(f"Row {n}{side if n == 1 else ''}: {line}." for n, line in enumerate(lines, 1))


def stored(*slugs: str) -> st.SearchStrategy[dict[str, Any]]:
    """Draw one of these components."""
    return st.sampled_from(slugs).map(lambda slug: {"component": slug})


WORDS = rows().map(lambda text: {"text": text})
BODY = stored(*BODIES) | WORDS
END = stored(*BORDERS) | st.builds(lambda part, number: {**part, "rows": number}, WORDS, st.integers(1, 16))
SIDES = stored(*BORDERS) | st.builds(lambda part, number: {**part, "stitches": number}, WORDS, st.integers(1, 9))
PARTS = st.fixed_dictionaries(
    {"body": BODY | st.lists(BODY, min_size=1, max_size=3)},
    optional={
        "bottom": END | st.none(),
        "top": END | st.none(),
        "sides": SIDES | st.none(),
        "selvedge": stored(*SELVEDGES) | st.none(),
    },
)
SIZES = st.fixed_dictionaries({"width_cm": st.integers(15, 150), "length_cm": st.integers(15, 150)})


ROWS = st.integers(20, 60)
PICKED = stored(*BORDERS).flatmap(lambda part: st.integers(1, 24).map(lambda rows: {**part, "rows": rows})) | END


@settings(max_examples=30, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(parts=st.builds(lambda parts, sides: {**parts, "sides": sides}, PARTS, PICKED), size=SIZES, rows=ROWS)
def test_a_mix_with_picked_up_sides_is_proved_or_refused_with_a_next_step(
    parts: dict[str, Any],
    size: dict[str, int],
    rows: int,
    starters: Mapping[str, Component],
    vocabulary: Vocabulary,
) -> None:
    """No edge gets more stitches than it has places, the stitches add up, and a refusal never blames the program."""
    gauge = {"stitches": 22, "rows": rows, "over_cm": 10}
    content = {
        "construction": "sides-picked-up",
        "parts": parts,
        "gauge": gauge,
        "size": size,
    }
    try:
        plan = make_plan(plan_request_of(content, starters.__getitem__, vocabulary), vocabulary)
    except CannotBePlanned as refused:
        errors = [finding for finding in refused.findings if finding.severity == "error"]
        assert errors and all(finding.pointer and finding.hint for finding in errors)
        assert "plan-not-proved" not in {finding.rule for finding in errors}
    else:
        borders = sum(edge.picks + edge.border.stitches + edge.border.after for edge in plan.picked)
        middle = sum(section.stitches for section in plan.sections) + plan.sections[-1].after
        assert plan.stitches_total == middle + borders
        assert all(each.picks <= each.places for edge in plan.picked for each in edge.stretches)
        sampler_of(plan, vocabulary)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(parts=PARTS, size=SIZES, corner=st.sampled_from(["ends", "sides"]))
def test_a_mix_is_planned_and_proved_or_refused_with_a_next_step(
    parts: dict[str, Any],
    size: dict[str, int],
    corner: str,
    starters: Mapping[str, Component],
    vocabulary: Vocabulary,
) -> None:
    """The answer of a plan adds up, and a refusal names its part and never blames the program."""
    gauge = {"stitches": 22, "rows": 30, "over_cm": 10}
    content = {"parts": parts, "gauge": gauge, "size": size, "corner": corner}
    try:
        plan = make_plan(plan_request_of(content, starters.__getitem__, vocabulary), vocabulary)
    except CannotBePlanned as refused:
        errors = [finding for finding in refused.findings if finding.severity == "error"]
        assert errors and all(finding.pointer and finding.hint for finding in errors)
        assert "plan-not-proved" not in {finding.rule for finding in errors}
    else:
        answer = plan_json(plan, sampler=sampler_of(plan, vocabulary))
        worked = sum(section["stitches"] for section in answer["sections"])
        assert answer["stitches_total"] == worked + answer["sections"][-1]["after"]
