"""What a plan says of its yarn beside the amounts: how ends are woven in, and which needles to begin with."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

from counterpane.craft.care.yarns import Yarn as Told
from counterpane.craft.constructions import Plan
from counterpane.craft.measures import Gauge, half_up
from counterpane.craft.needles import Needle
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Yarn, YarnEstimate
from counterpane.craft.yarn.choosing import plain_gauge
from counterpane.craft.yarn.classes import YarnClass, classes_of_gauge, classes_of_name
from counterpane.craft.yarn.needles import NeedleAdvice, needle_advice
from counterpane.craft.yarn.weaving import Worn, weaving_of
from counterpane.library.plans.known import Facts
from counterpane.library.plans.plan_labels import yarns_told
from counterpane.library.yarn.label_facts import law_of
from counterpane.library.yarn.yarn_facts import cords, needle_sizes, source_of_classes, weavings, yarn_classes
from counterpane.library.yarn.yarns import yarn_of_plan

Answer = dict[str, Any]
TAKEN = "Nobody says whether the wool is superwash, so take it to be. "
NOT_KNOWN = "Its fibre is not known: weave its ends in one way, back, and a third way."


def told_yarn(plan: Plan, given: Any, vocabulary: Vocabulary, facts: Facts) -> YarnEstimate | None:
    """Estimate the yarn of a plan, with how its ends are woven in; None and BadInput as `yarn_of_plan`."""
    return with_ends(yarn_of_plan(plan, given, vocabulary), given, facts)


def with_ends(found: YarnEstimate | None, given: Any, facts: Facts) -> YarnEstimate | None:
    """Return an estimate with how the ends of its yarns are woven in, and the classes that their names stand for."""
    if found is None:
        return None
    classes = tuple(_classes_said(each.yarn, yarn_classes(facts)) for each in found.colours)
    return replace(found, weaving=tuple(dict.fromkeys(_ends_said(given, facts))), classes=classes)


def _classes_said(yarn: Yarn, classes: Sequence[YarnClass]) -> str:
    """Say the classes that the name of a yarn's weight stands for, "" where it is no name of the trade."""
    return " or ".join(f"{each.number} {each.name}" for each in classes_of_name(yarn.weight or "", classes))


def _ends_said(given: Any, facts: Facts) -> Iterator[str]:
    for yarn in yarns_told(given, law_of(facts)):
        found = weaving_of(_worn(yarn), weavings(facts))
        unsure = TAKEN if found is not None and found.superwash and yarn.superwash is None else ""
        yield NOT_KNOWN if found is None else f"{unsure}{found.says}"


def _worn(yarn: Told) -> Worn:
    return Worn(tuple(fibre.sort for fibre in yarn.named) if yarn.is_read else None, yarn.superwash)


def needles_of_plan(plan: Plan, vocabulary: Vocabulary, facts: Facts, yarn: YarnEstimate | None = None) -> NeedleAdvice:
    """Advise on needles for a plan, and on a cord: those of its gauges, and those of a class.

    The class is that of its gauge where that was of stocking stitch, else that which the weight of its one yarn names.
    """
    gauge, is_plain = plain_gauge(plan.request, vocabulary)
    by_gauge = classes_of_gauge(gauge, yarn_classes(facts)) if is_plain else ()
    found = by_gauge or _of_the_yarn(yarn, facts)
    most = max(section.before for section in plan.every_section)
    advice = needle_advice(found, gauge, most, cords(facts))
    knitted_on = tuple(_knitted_on(plan.request.gauges, facts))
    return replace(advice, by_yarn=bool(found) and not by_gauge, knitted_on=knitted_on)


def _of_the_yarn(yarn: YarnEstimate | None, facts: Facts) -> tuple[YarnClass, ...]:
    """Return the classes of the one weight that all yarns of a plan name; none where they differ or name none."""
    weights = {each.yarn.weight for each in yarn.colours} if yarn else set()
    return classes_of_name(weights.pop() or "", yarn_classes(facts)) if len(weights) == 1 else ()


def _knitted_on(gauges: Iterable[Gauge], facts: Facts) -> Iterator[tuple[str | None, Needle]]:
    sizes = {needle.mm: needle for needle in needle_sizes(facts)}
    for gauge in gauges:
        if gauge.needle_mm is not None:
            yield gauge.texture, sizes.get(gauge.needle_mm, Needle(gauge.needle_mm))


def needles_json(advice: NeedleAdvice, facts: Facts) -> Answer:
    """Return needles as JSON values; `mm` and `us` are null where the gauge of stocking stitch is not known."""
    return {
        "mm": None if advice.mm is None else [_number(end) for end in advice.mm],
        "us": None if advice.us is None else list(advice.us),
        "classes": [{"number": each.number, "name": each.name} for each in advice.classes],
        "basis": None if advice.mm is None else "published",
        "source": None if advice.mm is None else source_of_classes(facts),
        "by": None if advice.mm is None else "yarn" if advice.by_yarn else "gauge",
        "knitted_on": [{"in": texture, "mm": _number(each.mm), "us": each.us} for texture, each in advice.knitted_on],
        "cord_cm": None if advice.cord_cm is None else int(advice.cord_cm),
        "stitches": advice.stitches,
    }


def _number(value: Fraction | None) -> float | None:
    return None if value is None else float(half_up(value, Fraction(1, 100)))
