"""Proposals: complete recipes of what a library holds, each planned and proved, diverse, ranked with reasons.

No two are of one body, and near copies of a texture come only after all others. None is recommended as safe.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from counterpane.craft.component import derive
from counterpane.craft.constructions import CannotBePlanned, Plan
from counterpane.craft.pattern import Level
from counterpane.craft.pattern.level import level_of_rows
from counterpane.craft.texture import CLOSE, likeness
from counterpane.library.parts.textures import LOOKS, cell_of, keys_of
from counterpane.library.plans import planning
from counterpane.library.plans.plan_answers import counts_json, finding_json, finished_json
from counterpane.library.plans.plan_labels import yarns_told
from counterpane.library.plans.plan_told import told_of
from counterpane.library.ports import TextureKey
from counterpane.library.proposing.proposal_parts import Frame, Offered, Passed, parts_of
from counterpane.library.proposing.proposal_reasons import NO_PASS, Weighed, weighed
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.library.yarn.label_facts import law_of

Answer = dict[str, Any]
Content = Mapping[str, Any]

USUAL_LIMIT = 6
PLANNED_TO_ONE = 2
"""Plans that are made for each proposal that is wanted, so that the best of them can be told; house figure."""
TRIED_TO_ONE = 4
"""Plans that are tried for each proposal that is wanted; house figure that bounds time."""
MOST_PASSED = 100
"""Parts passed over that are told; house figure."""
FRAMES_TRIED = 2
"""Frames that are tried round one body; house figure that bounds time."""
HAIR = "animal hair"
PASSED_ON = ("gauge", "size", "yarn", "for")
"""Members of the request that a plan takes as they are."""


@dataclass(frozen=True, slots=True)
class Laid:
    """A body in a frame, with the request and the plan that it makes."""

    offered: Offered
    frame: Frame
    request: Content
    plan: Plan


@dataclass(frozen=True, slots=True)
class Proposed:
    """A plan that was weighed; `copy_of` is the body of another proposal of which its body is a near copy."""

    laid: Laid
    level: Level
    safety: Content
    weighed: Weighed
    copy_of: str | None

    @property
    def slug(self) -> str:
        """The slug of the body."""
        return self.laid.offered.body.component.slug


@dataclass(slots=True)
class _Bench:
    """What proposals are made with: the request, the ends that were used, what was passed over, and plans to try."""

    services: Services
    asked: Content
    passed: Passed
    tries: int
    used: Counter[str]


def propose(services: Services, asked: Content) -> Answer:
    """Return proposals for a request as JSON values; raise BadInput where what is asked for contradicts itself."""
    unsure = _refuse_wool(services, asked)
    parts = parts_of(services, asked)
    limit = asked.get("limit") or USUAL_LIMIT
    bench = _Bench(services, asked, list(parts.passed), TRIED_TO_ONE * limit, Counter())
    made = list(_planned(bench, parts.offered, PLANNED_TO_ONE * limit))
    made.sort(key=lambda each: (each.copy_of is not None, each.weighed.place, each.slug))
    return {
        "proposals": [_answer(each, unsure) for each in made[:limit]],
        "passed_over": bench.passed[:MOST_PASSED],
        "looked_at": parts.looked_at,
        "whole": parts.whole,
        "said": NO_PASS if made else f"Nothing can be proposed: see what was passed over, and why. {NO_PASS}",
    }


def _refuse_wool(services: Services, asked: Content) -> bool:
    """Say whether wool is to be avoided and the yarn's fibre is not known; raise BadInput where it holds wool."""
    if "wool" not in (asked.get("avoid") or ()):
        return False
    law, yarn = law_of(services.facts), asked.get("yarn") or {}
    named = [_alone(each) for each in yarn.get("fibre") or yarn.get("fibres") or ()]
    if any(each.has(HAIR) for fibre in named for each in yarns_told(fibre, law)):
        message = "The yarn at hand holds wool or another animal hair, which is to be avoided."
        raise BadInput("/yarn", message, "Give another yarn, or take wool out of avoid.")
    return not named or any(each.has(HAIR) is None for each in yarns_told(yarn, law))


def _alone(fibre: Content) -> Answer:
    """Return a yarn of one fibre, which is told of by its name whatever its share."""
    return {"fibre": [{"fibre": fibre.get("fibre") or fibre.get("name"), "percent": 100}]}


def _planned(bench: _Bench, offered: Sequence[Offered], most: int) -> Iterator[Proposed]:
    """Plan bodies until there are so many: first those that are no near copies of each other, then the copies."""
    distinct: list[tuple[Offered, tuple[TextureKey, ...]]] = []
    copies: list[tuple[Offered, str]] = []
    for each in offered:
        if len(distinct) == most or not bench.tries:
            return
        keys = keys_of(each.body.component, bench.services.vocabulary)
        other = next((other for other, theirs in distinct if _near(keys, theirs)), None)
        if other is not None:
            copies.append((each, other.body.component.slug))
        elif (found := _first(bench, each)) is not None:
            distinct.append((each, keys))
            yield found
    for each, slug in copies[: most - len(distinct)]:
        if (found := _first(bench, each, slug)) is not None:
            yield found


def _near(here: Sequence[TextureKey], there: Sequence[TextureKey]) -> bool:
    if {key.key for key in here} & {key.key for key in there}:
        return True
    pairs = {(key.looks, mate.looks): (cell_of(key.looks), cell_of(mate.looks)) for key in here for mate in there}
    found = (likeness(mine, theirs, LOOKS) for mine, theirs in pairs.values())
    return any(each is not None and each.share >= CLOSE for each in found)


def _first(bench: _Bench, offered: Offered, copy_of: str | None = None) -> Proposed | None:
    """Return the body in the first of its frames that makes a plan; None, and why, where none does."""
    why = "there was no time to plan it"
    for frame in sorted(offered.frames, key=lambda frame: bench.used[frame.slugs[0]])[:FRAMES_TRIED]:
        if not bench.tries:
            break
        bench.tries -= 1
        request = _request(offered, frame, bench.asked)
        try:
            plan = planning.made(bench.services, request)
        except CannotBePlanned as refusal:
            why = refusal.findings[0].message
            continue
        bench.used[frame.slugs[0]] += 1
        return _proposed(bench, Laid(offered, frame, request, plan), copy_of)
    bench.passed.append({"component": offered.body.component.slug, "why": why})
    return None


def _proposed(bench: _Bench, laid: Laid, copy_of: str | None) -> Proposed:
    """Weigh a plan that was made."""
    vocabulary = bench.services.vocabulary
    told = told_of(laid.plan, laid.request, bench.services.known)
    facts = (laid.offered.body, laid.frame.ends, laid.frame.sides)
    parts = dict.fromkeys(each.component for each in facts)
    level = level_of_rows([row for part in parts for row in derive(part, vocabulary).rows], vocabulary)
    return Proposed(laid, level, told.safety, weighed(laid.plan, told, level, bench.asked), copy_of)


def _request(offered: Offered, frame: Frame, asked: Content) -> dict[str, Any]:
    """Return the plan request of a body in its frame."""
    ends, sides = frame.slugs
    parts = {
        "bottom": {"component": ends, "rows": frame.rows},
        "sides": {"component": sides, "stitches": frame.stitches},
        "body": offered.body.component.slug,
        "top": {"component": ends, "rows": frame.rows},
    }
    rest = {name: asked[name] for name in PASSED_ON if asked.get(name) is not None}
    return {"construction": "one-piece", "parts": parts, **rest}


def _answer(found: Proposed, unsure: bool) -> Answer:
    reasons = list(found.weighed.reasons)
    if unsure:
        said = "Whether the yarn holds wool or another animal hair is not known."
        reasons.append({"about": "avoided", "said": said})
    if found.copy_of:
        said = f"Its texture is nearly that of {found.copy_of}, which is proposed too; hence it stands last."
        reasons.append({"about": "fabric", "said": said})
    laid = found.laid
    return {
        "title": f"{laid.offered.body.component.name}, framed in {laid.frame.ends.component.name}",
        "request": laid.request,
        "counts": counts_json(laid.plan),
        "finished": finished_json(laid.plan),
        "level": {"name": found.level.name, "reason": found.level.reason, "source": found.level.source},
        "yarn_enough": found.weighed.enough,
        "near_copy_of": found.copy_of,
        "reasons": reasons,
        "findings": [finding_json(finding) for finding in laid.plan.findings],
        "safety": found.safety,
    }
