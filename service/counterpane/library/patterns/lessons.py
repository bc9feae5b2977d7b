"""Lessons: the sampler of a plan told for a class, with the kit to prepare."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from counterpane.craft.constructions import Plan
from counterpane.craft.drawing import Picture
from counterpane.craft.drawing.blanket import fabric
from counterpane.craft.drawing.charts import charts
from counterpane.craft.pattern.cautions import cautions
from counterpane.craft.pattern.parts import called, components_of
from counterpane.craft.pattern.terms import in_terms
from counterpane.craft.pattern.write import default_title
from counterpane.craft.pattern.yarns import needle_entries
from counterpane.craft.stitches import Terms
from counterpane.craft.teaching import Lesson, Slip, TooLong
from counterpane.craft.teaching.hands import Hand
from counterpane.craft.teaching.kit import kit_of
from counterpane.craft.teaching.lesson import Around, lesson_of, refuse_too_long
from counterpane.craft.teaching.script import Telling
from counterpane.craft.teaching.timing import Learners
from counterpane.craft.yarn import Yarn
from counterpane.library.plans.bench import Bench, bench_of
from counterpane.library.plans.known import Facts, Known
from counterpane.library.plans.plan_told import told_of
from counterpane.library.plans.plans import sampler_of
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.library.yarn.yarn_requests import yarns_of
from counterpane.library.yarn.yarn_told import needles_of_plan

Content = Mapping[str, Any]

BESIDE_THE_PLAN = ("terms", "title", "as", "hand", "session_minutes", "learners")
"""Members of a lesson's request that say how to tell it and not what to plan."""

SESSION = 60
"""Minutes of a session where nobody says; house figure."""
TOPIC, SLIP, CLASS = "teaching", "slip-", "class-"
"""The topic of the facts of teaching, and how those of each sort are called."""


def plan_lesson(content: Content, bench: Bench) -> Lesson:
    """Return the lesson on the plan of a request; raises what planning raises, BadInput for one that is too long."""
    request = {name: value for name, value in content.items() if name not in BESIDE_THE_PLAN}
    return lesson_on(bench.made(request), content, bench.known)


def lesson_on(plan: Plan, content: Content, known: Known) -> Lesson:
    """Return the lesson on a plan, told as its request says."""
    small = sampler_of(plan, known.vocabulary)
    try:
        refuse_too_long(small)
    except TooLong as reason:
        raise BadInput("/parts", str(reason), "Take parts whose rows repeat sooner, or over fewer stitches.") from None
    terms: Terms = content.get("terms") or "us"
    told = told_of(plan, content, known)
    yarns = yarns_of(content.get("yarn")) or (Yarn(),)
    needles = needle_entries(small, needles_of_plan(small, known.vocabulary, known.facts), terms)
    said = tuple(in_terms(f"{each.name}: {each.text}.", terms) for each in needles)
    names = {component.slug: called(component, terms) for component in components_of(plan)}
    around = Around(
        title=content.get("title") or default_title(plan, terms),
        session=content.get("session_minutes") or SESSION,
        kit=kit_of(small, yarns, said, known.vocabulary, terms),
        cautions=cautions(told.safety, names, terms),
        always=always(known.facts),
    )
    return lesson_of(plan, small, telling_of(content, known), around)


def written(services: Services, content: Content, form: str) -> bytes:
    """Return the lesson of a request in a form; raises what `plan_lesson` raises."""
    bench = bench_of(services, content)
    plan = bench.made({name: value for name, value in content.items() if name not in BESIDE_THE_PLAN})
    lesson = lesson_on(plan, content, bench.known)
    return services.lesson_presses[form](lesson, pictures_of(plan, lesson, bench.known) if form == "html" else ())


def pictures_of(plan: Plan, lesson: Lesson, known: Known) -> tuple[Picture, ...]:
    """Return the chart and the fabric of the sampler of a lesson, for its hand."""
    small, mirrored = sampler_of(plan, known.vocabulary), lesson.hand == "left"
    title = f"{lesson.title}: the sampler"
    return (
        Picture("Chart of the sampler", charts(small, known.vocabulary, title, lesson.terms, mirrored=mirrored)),
        Picture("Fabric of the sampler", fabric(small, known.vocabulary, title, lesson.terms, mirrored=mirrored)),
    )


def telling_of(content: Content, known: Known) -> Telling:
    """Return how a lesson is told, as its request says."""
    terms: Terms = content.get("terms") or "us"
    hand: Hand = content.get("hand") or "right"
    learners: Learners = content.get("learners") or "beginners"
    return Telling(known.vocabulary, terms, hand, learners, slips(known.facts))


def slips(facts: Facts) -> tuple[Slip, ...]:
    """Return the usual mistakes in the order in which they are kept."""
    found = (fact for fact in facts.values() if fact["topic"] == TOPIC and fact["name"].startswith(SLIP))
    return tuple(
        Slip(fact["name"].removeprefix(SLIP), says=fact["says"], source=fact["source"], **fact["value"])
        for fact in found
    )


def always(facts: Facts) -> tuple[str, ...]:
    """Return what every class hears, in the order in which it is kept."""
    return tuple(fact["says"] for fact in facts.values() if fact["topic"] == TOPIC and fact["name"].startswith(CLASS))
