"""What came of a pattern when it was knitted: predicted against actual, a refit of yarn and pace, and rows queried."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from counterpane.craft.constructions import CannotBePlanned, Plan
from counterpane.craft.constructions.gauging import body_gauge
from counterpane.craft.measures import WHOLE_PCT, exact, half_up
from counterpane.craft.yarn import Yarn, YarnEstimate, estimate
from counterpane.craft.yarn.pace import FASTEST, Work, hours, work_of
from counterpane.craft.yarn.refits import Refit, Took, metres_of, refit, time_taken, worth, yarn_taken
from counterpane.library.errors import LibraryError
from counterpane.library.knitting import noting
from counterpane.library.services import Services
from counterpane.library.yarn.yarn_requests import number_of, yarns_of

Content = Mapping[str, Any]
Answer = dict[str, Any]
Ends = tuple[Fraction, Fraction, Fraction]

OVER_CM = Fraction(10)
"""Centimetres over which a gauge is told."""
HUNDREDTH, TENTH = Fraction(1, 100), Fraction(1, 10)
FLAGGED_FROM = 2
"""Knitters who ask about one row, from which it is flagged; house."""
FIGURES = ("stitches_10cm", "rows_10cm", "width_cm", "length_cm", "grams", "hours")


@dataclass(frozen=True, slots=True)
class Predicted:
    """What a plan predicts of a knit: low, likely and high of each figure, its loops, and what there is to work."""

    plan: Plan
    figures: Mapping[str, Ends | None]
    loops: Fraction
    work: Work
    yarns: tuple[Yarn, ...]


def predicted_of(services: Services, based: noting.Based) -> Predicted:
    """Return what the plan of a recipe predicts; raise what planning raises."""
    plan, request = noting.plan_of(services, based)
    yarns, vocabulary = yarns_of(request.get("yarn")), services.vocabulary
    found = estimate(plan, yarns or (Yarn(),), vocabulary)
    given = request.get("pace")
    pace = None if given is None else number_of(given, "stitches_a_minute", "/pace")
    time = hours(plan, vocabulary, pace)
    loops = sum((each.loops.likely for each in found.colours), Fraction(0))
    figures = _figures(plan, found if yarns else None) | {
        "hours": (time.quick, (time.quick + time.slow) / 2, time.slow)
    }
    return Predicted(plan, figures, loops, work_of(plan, vocabulary), yarns)


def _figures(plan: Plan, yarn: YarnEstimate | None) -> dict[str, Ends | None]:
    gauge = body_gauge(plan.request).gauge
    stitches, rows = OVER_CM * gauge.per_cm, OVER_CM * gauge.rows_per_cm
    wide, long = plan.width_give.tolerance_cm, plan.length_give.tolerance_cm
    grams = None if yarn is None or yarn.grams is None else yarn.grams.ordered()
    return {
        "stitches_10cm": (stitches, stitches, stitches),
        "rows_10cm": (rows, rows, rows),
        "width_cm": (plan.width_cm - wide, plan.width_cm, plan.width_cm + wide),
        "length_cm": (plan.length_cm - long, plan.length_cm, plan.length_cm + long),
        "grams": None if grams is None else (grams.low, grams.likely, grams.high),
    }


def compared(services: Services, knit: Content) -> Answer:
    """Return a test knit with what its plan predicted, what it came to, and what washing did; raise NotFound."""
    found = _predicted(services, knit, {})
    if isinstance(found, str):
        return {**knit, "compared": [], "washing": _washing(knit), "for_a_plan": None, "not_compared": found}
    return {
        **knit,
        "compared": _compared(found, knit),
        "washing": _washing(knit),
        "for_a_plan": _for_a_plan(found, knit),
        "not_compared": None,
    }


def _predicted(services: Services, knit: Content, seen: dict[Any, Predicted | str]) -> Predicted | str:
    """Return what was predicted of a knit, or why nothing can be worked out any more; each plan is worked out once."""
    key = knit["revision"], knit.get("edition"), knit.get("size")
    if key not in seen:
        try:
            seen[key] = predicted_of(services, noting.based_of(services, knit["recipe"], knit))
        except (CannotBePlanned, LibraryError) as fault:
            seen[key] = f"Its plan cannot be worked out: {fault}"
    return seen[key]


def _actual(knit: Content) -> dict[str, Fraction]:
    """Return what a knit came to: its gauge and size after the wash, its grams and its hours, as far as told."""
    washed = knit.get("washed") or {}
    found = _measures(washed) | {name: exact(knit[name]) for name in ("grams", "hours") if knit.get(name) is not None}
    return {name: found[name] for name in FIGURES if name in found}


def _measures(told: Content) -> dict[str, Fraction]:
    over = exact(told["over_cm"]) if told.get("over_cm") is not None else OVER_CM
    counts = {f"{name}_10cm": exact(told[name]) * OVER_CM / over for name in ("stitches", "rows") if name in told}
    return counts | {name: exact(told[name]) for name in ("width_cm", "length_cm") if name in told}


def _compared(found: Predicted, knit: Content) -> list[Answer]:
    return [_against(name, found.figures[name], actual) for name, actual in _actual(knit).items()]


def _against(name: str, ends: Ends | None, actual: Fraction) -> Answer:
    """Return one figure: what was predicted, what it came to, and the difference from the likely value.

    A figure that was predicted without bounds is neither within them nor outside.
    """
    told = {"figure": name, "predicted": None, "low": None, "high": None, "actual": _shown(actual)}
    if ends is None:
        return told | {"difference": None, "percent": None, "within": None}
    low, likely, high = ends
    off = actual - likely
    return told | {
        "predicted": _shown(likely),
        "low": _shown(low),
        "high": _shown(high),
        "difference": _shown(off),
        "percent": float(half_up(off / likely * WHOLE_PCT, TENTH)),
        "within": None if low == high else low <= actual <= high,
    }


def _washing(knit: Content) -> list[Answer]:
    """Return how each figure that was taken before and after the wash changed in it."""
    before, after = _measures(knit.get("unwashed") or {}), _measures(knit.get("washed") or {})
    return [
        {
            "figure": name,
            "before": _shown(before[name]),
            "after": _shown(after[name]),
            "percent": float(half_up((after[name] - before[name]) / before[name] * WHOLE_PCT, TENTH)),
        }
        for name in before
        if name in after
    ]


def _shown(value: Fraction) -> float:
    return float(half_up(value, HUNDREDTH))


def _took_yarn(found: Predicted, knit: Content) -> Took | str:
    """Return the yarn that a knit took over its loops, or why that is not known."""
    strands = found.yarns[0].strands if len(found.yarns) == 1 else 1
    metres = _metres(found, knit)
    return metres if isinstance(metres, str) else yarn_taken(metres / strands, found.loops)


def _metres(found: Predicted, knit: Content) -> Fraction | str:
    if knit.get("metres") is not None:
        return exact(knit["metres"])
    if knit.get("grams") is None:
        return "Neither grams nor metres are told."
    grams = exact(knit["grams"])
    if knit.get("metres_per_100g") is not None:
        return grams * exact(knit["metres_per_100g"]) / WHOLE_PCT
    tex = found.yarns[0].tex if len(found.yarns) == 1 and knit.get("yarn") is None else None
    return "The metres to 100 g of its yarn are not told." if tex is None else metres_of(grams, tex)


def _took_time(found: Predicted, knit: Content) -> Took | str:
    """Return the stitches that a knit worked over its minutes, or why that is not known."""
    if knit.get("hours") is None:
        return "The hours are not told."
    work = found.work
    took = time_taken(work.plain, work.slower, work.rows, exact(knit["hours"]))
    if took is None:
        return "Turning alone takes as long as its hours."
    return took if took.rate <= FASTEST else f"It would be more than {FASTEST} stitches a minute."


def _for_a_plan(found: Predicted, knit: Content) -> Answer:
    """Return what a later plan request in the same yarn and by the same hands may take from a knit."""
    body = found.plan.request.body[0].component.slug
    told: Answer = {}
    if knit.get("grams") is not None and len(found.yarns) <= 1:
        piece = {"mass_g": knit["grams"], "stitches_total": found.plan.stitches_total}
        told["yarn"] = {"earlier": piece | ({"in": body} if body else {})}
    took = _took_time(found, knit)
    if isinstance(took, Took) and (pace := half_up(took.rate, TENTH)):
        told["pace"] = {"stitches_a_minute": float(pace)}
    return told


def knitted(services: Services, slug: str) -> Answer:
    """Return all test knits of a recipe, each compared, and what yarn and pace come to by them; raise NotFound."""
    noting.require_recipe(services, slug)
    seen: dict[Any, Predicted | str] = {}
    knits = list(noting.everything(services, "test-knit", slug))
    found = [_predicted(services, knit, seen) for knit in knits]
    took = {name: [_taken(take, *each) for each in zip(found, knits, strict=True)] for name, take in TAKING.items()}
    fitted = {name: refit([each for each in all_of if isinstance(each, Took)]) for name, all_of in took.items()}
    return {
        "recipe": slug,
        "knits": len(knits),
        "whole": len(knits) < noting.MOST_READ,
        "items": [_item(*each) for each in zip(found, knits, strict=True)],
        **{name: _refit_json(each) for name, each in fitted.items()},
        "left_out": [
            {"number": knit["number"], "of": name, "why": each}
            for name, all_of in took.items()
            for knit, each in zip(knits, all_of, strict=True)
            if isinstance(each, str)
        ],
    }


def _taken(take: Callable[[Predicted, Content], Took | str], found: Predicted | str, knit: Content) -> Took | str:
    return found if isinstance(found, str) else take(found, knit)


def _item(found: Predicted | str, knit: Content) -> Answer:
    head = {name: knit.get(name) for name in ("number", "whose", "whose_key", "revision", "edition", "size", "href")}
    return head | {"compared": [] if isinstance(found, str) else _compared(found, knit)}


TAKING: Mapping[str, Callable[[Predicted, Content], Took | str]] = {
    "loop_mm": _took_yarn,
    "stitches_a_minute": _took_time,
}
"""What is refitted, and how a knit tells it."""


def _refit_json(found: Refit | None) -> Answer | None:
    if found is None:
        return None
    ends = {name: _shown(getattr(found, name)) for name in ("value", "least", "most")}
    apart = float(half_up(found.apart_pct, TENTH))
    return ends | {"apart_percent": apart, "knits": found.knits, "worth": worth(found.knits)}


def by_row(services: Services, slug: str) -> Answer:
    """Return what was asked and answered of each row of a recipe, by revision, part and row; raise NotFound.

    A row that two knitters or more ask about is flagged: one may have slipped, two seldom do at one place.
    """
    noting.require_recipe(services, slug)
    knits = list(noting.everything(services, "test-knit", slug))
    answers = list(noting.everything(services, "answer", slug))
    rows: dict[tuple[str, str, int], Answer] = {}
    for knit in knits:
        for query in knit.get("queries") or ():
            _row(rows, knit, query)["questions"].append(_asked(knit, query["question"]))
    for answer in answers:
        _row(rows, answer, answer)["answers"].append(_answered(answer))
    whole = max(len(knits), len(answers)) < noting.MOST_READ
    return {"recipe": slug, "whole": whole, "items": [_counted(each) for _, each in sorted(rows.items())]}


def _row(rows: dict[tuple[str, str, int], Answer], of: Content, place: Content) -> Answer:
    key = of["revision"], place["section"], place["row"]
    names = ("revision", "section", "row")
    return rows.setdefault(key, {**dict(zip(names, key, strict=True)), "questions": [], "answers": []})


def _asked(knit: Content, question: str) -> Answer:
    return {"test_knit": knit["number"], "whose": knit["whose"], "whose_key": knit["whose_key"], "question": question}


def _answered(answer: Content) -> Answer:
    names = ("number", "whose", "question", "answer", "edition", "erratum")
    return {name: answer.get(name) for name in names} | {"wrong": bool(answer.get("wrong"))}


def _counted(row: Answer) -> Answer:
    """Return a row with how many knitters asked about it, each once however often."""
    knitters = len({each["whose_key"] for each in row["questions"]})
    wrong = any(each["wrong"] for each in row["answers"])
    return row | {"knitters": knitters, "flagged": knitters >= FLAGGED_FROM, "wrong": wrong}
