"""Which parts of a library may be proposed, why others are passed over, and the frames of borders round a body.

What is not known of a part is no reason to take it: where openings are to be avoided, a part whose openings are not
known is passed over.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import orjson

from counterpane.craft.component import Component, Kind, derive
from counterpane.craft.pairing import Facts, facts_of, meet, remarks
from counterpane.craft.pattern.level import LEVELS, level_of_rows, skills_of_rows
from counterpane.craft.stitches import Vocabulary
from counterpane.library.parts import components, traits
from counterpane.library.parts.matrix import BESIDE
from counterpane.library.parts.wanted import Wanted
from counterpane.library.services import Services

MOST_BODIES, MOST_BORDERS = 200, 40
"""Bodies and borders that are looked at for one answer; house figures that bound its time."""
USUAL_BORDER = "garter-border"
"""The border that a plan takes where none is named; it stands at any count."""
SET_ASIDE = ("yanked", "quarantined", "deprecated")
"""States of parts that are never proposed."""
HANGING = ("fringe", "tassel", "pompom", "pom-pom")
"""Words of a part that is, or may become, a fringe."""

Passed = list[dict[str, str]]


@dataclass(frozen=True, slots=True)
class Frame:
    """Borders round a body: the one at bottom and top with its rows, the one at the sides with its stitches."""

    ends: Facts
    rows: int
    sides: Facts
    stitches: int

    @property
    def slugs(self) -> tuple[str, str]:
        """The slugs of both."""
        return self.ends.component.slug, self.sides.component.slug


@dataclass(frozen=True, slots=True)
class Offered:
    """A body with the frames that its counts meet, those first of which least is to be said."""

    body: Facts
    frames: tuple[Frame, ...]
    remarks: int


@dataclass(frozen=True, slots=True)
class Parts:
    """What may be proposed, what was passed over and why, and whether the library holds more."""

    offered: tuple[Offered, ...]
    passed: Passed
    looked_at: int
    whole: bool


def parts_of(services: Services, asked: Mapping[str, Any]) -> Parts:
    """Return the bodies that may be proposed, each with its frames."""
    passed: Passed = []
    bodies, more_bodies = _kept(services, "body", MOST_BODIES)
    borders, more_borders = _kept(services, "border", MOST_BORDERS)
    wanted_borders = [facts_of(each, services.vocabulary) for each in _wanted(services, borders, asked, passed)]
    wanted_bodies = [facts_of(each, services.vocabulary) for each in _wanted(services, bodies, asked, passed)]
    offered = [_offered(body, wanted_borders) for body in wanted_bodies]
    passed += [_over(each.body.component, "no border's counts meet its own") for each in offered if not each.frames]
    ordered = _spread([each for each in offered if each.frames], services.vocabulary)
    return Parts(tuple(ordered), passed, len(bodies) + len(borders), not (more_bodies or more_borders))


def _kept(services: Services, kind: Kind, most: int) -> tuple[list[Component], bool]:
    page = services.store.page(Wanted("component", kind, limit=most))
    cards = (orjson.loads(card) for card in page.cards)
    found = [
        components.find(services, card["slug"], card["sha256"]) for card in cards if card["status"] not in SET_ASIDE
    ]
    return found, page.last is not None


def _wanted(
    services: Services, found: Sequence[Component], asked: Mapping[str, Any], passed: Passed
) -> Iterator[Component]:
    for component in found:
        why = why_not(component, asked, services.vocabulary)
        if why:
            passed.append(_over(component, why))
        else:
            yield component


def _over(component: Component, why: str) -> dict[str, str]:
    return {"component": component.slug, "why": f"{why[:1].upper()}{why[1:]}."}


def why_not(component: Component, asked: Mapping[str, Any], vocabulary: Vocabulary) -> str:
    """Return why a part is not wanted, "" where nothing speaks against it."""
    rows = derive(component, vocabulary).rows
    level = level_of_rows(rows, vocabulary)
    if (most := asked.get("level")) and LEVELS.index(level.name) > traits.DIFFICULTIES.index(most):
        return f"it is {level.reason[:1].lower()}{level.reason[1:]}"
    known = asked.get("skills")
    lacks = [] if known is None else [each for each in skills_of_rows(rows, vocabulary) if each not in known]
    if lacks:
        return f"it asks for skills that are not named: {', '.join(lacks)}"
    said = (AVOIDING[word](component, vocabulary) for word in asked.get("avoid") or () if word in AVOIDING)
    return next((why for why in said if why), "")


def _noted(name: str, what: str) -> Callable[[Component, Vocabulary], str]:
    def avoiding(component: Component, _: Vocabulary) -> str:
        note = getattr(component.safety, name)
        if note == "none":
            return ""
        return f"whether it has {what} is not known" if note == "not known" else f"it has {what}"

    return avoiding


def _hangs(component: Component, vocabulary: Vocabulary) -> str:
    words = " ".join((component.name, component.summary, component.gauge_notes, *component.also_called)).casefold()
    found = next((word for word in HANGING if word in words), None)
    return f"its words tell of a {found}" if found else _noted("loose_yarn", "loose yarn")(component, vocabulary)


def _curls(component: Component, vocabulary: Vocabulary) -> str:
    lies = facts_of(component, vocabulary).behaviour.lies
    if lies in traits.FLAT:
        return ""
    return "whether it lies flat is not known" if lies == traits.NOT_KNOWN else "its edges roll or may roll"


def _one_sided(component: Component, vocabulary: Vocabulary) -> str:
    seen = facts_of(component, vocabulary).reversible
    return {"no": "it has one right side", None: "whether both its sides may be seen is not known"}.get(seen, "")


AVOIDING: Mapping[str, Callable[[Component, Vocabulary], str]] = {
    "openings": _noted("openings", "openings"),
    "floats": _noted("floats", "floats"),
    "loose-yarn": _noted("loose_yarn", "loose yarn"),
    "ties": _noted("ties", "ties"),
    "fringe": _hangs,
    "curl": _curls,
    "one-sided": _one_sided,
}


def _offered(body: Facts, borders: Sequence[Facts]) -> Offered:
    found = [(len(_remarks(body, frame)), frame.slugs, frame) for frame in _frames(body, borders)]
    ordered = sorted(found, key=lambda each: each[:2])
    return Offered(body, tuple(frame for *_, frame in ordered), ordered[0][0] if ordered else 0)


def _frames(body: Facts, borders: Sequence[Facts]) -> Iterator[Frame]:
    """Give each border at the ends with itself at the sides, or the usual border there where it is no edge."""
    usual = next((each for each in borders if each.component.slug == USUAL_BORDER), None)
    for border in borders:
        sides = border if border.width else usual
        rows = next((each.default for each in border.component.parameters if each.name == "rows"), None)
        if sides is None or rows is None:
            continue
        stitches = sides.width or BESIDE
        if meet(body, border, "ends", stitches).fit in ("fits", "some") and meet(body, sides, "sides", 0).fit != "no":
            yield Frame(border, rows, sides, stitches)


def _remarks(body: Facts, frame: Frame) -> list[str]:
    said = (*remarks(body, frame.ends, "ends"), *remarks(body, frame.sides, "sides"))
    return [each.rule for each in said]


def _spread(offered: Sequence[Offered], vocabulary: Vocabulary) -> list[Offered]:
    """Return the bodies with those first of which least is to be said, by turns of the skills that they ask for."""
    turns: Counter[tuple[str, ...]] = Counter()
    keyed = []
    for each in sorted(offered, key=lambda one: (*_judged(one), one.body.component.slug)):
        skills = skills_of_rows(derive(each.body.component, vocabulary).rows, vocabulary)
        keyed.append(((turns[skills], *_judged(each), each.body.component.slug), each))
        turns[skills] += 1
    return [each for _, each in sorted(keyed, key=lambda pair: pair[0])]


def _judged(offered: Offered) -> tuple[int, int]:
    lies = offered.body.behaviour.lies
    return offered.remarks, 0 if lies in traits.FLAT else 1 if lies == traits.NOT_KNOWN else 2
