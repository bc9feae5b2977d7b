"""The matrix: every body against every border, edge, cast-on and bind-off, with the reason and the correction."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from math import lcm
from typing import Any

import orjson

from counterpane.craft.checking.wording import stitches
from counterpane.craft.component import Component, Kind
from counterpane.craft.component.derived import say_counts
from counterpane.craft.findings import Finding
from counterpane.craft.pairing import Facts, Join, Place, facts_of, meet, remarks
from counterpane.craft.pairing.facts import PLACES
from counterpane.craft.sizing.classes import nearest_of
from counterpane.craft.stitches import Vocabulary
from counterpane.library.errors import NotFound, Refused
from counterpane.library.near import nearest_few
from counterpane.library.parts import components
from counterpane.library.parts.telling import counts_json
from counterpane.library.ports import Wanted
from counterpane.library.services import Services

BESIDE = 6
"""Stitches on each side of a body where nobody says otherwise: the usual side border of a plan."""

MOST_BODIES, MOST_OTHERS = 200, 120
"""Bodies and other parts of one matrix; house figures that bound its size."""

STATES = {
    "fits": "at every count of the body, or at the count asked for",
    "some": "at some counts of the body, which are named",
    "change": "with the correction that is named",
    "no": "not at all, for the reason that is named",
}

WITH: tuple[Kind, ...] = ("border", "selvedge", "cast-on", "bind-off")


def matrix(
    services: Services,
    count: int | None = None,
    beside: int = BESIDE,
    *,
    body: str | None = None,
    kind: Kind | None = None,
    part: str | None = None,
) -> dict[str, Any]:
    """Return the matrix of what is kept; of one body, one kind or one other part where these are given.

    Raise NotFound, and Refused for a body or part that is none.
    """
    bodies, more_bodies = _kept(services, body, ("body",), MOST_BODIES)
    others, more_others = _kept(services, part, (kind,) if kind else WITH, MOST_OTHERS)
    answer = matrix_of(bodies, others, services.vocabulary, count, beside)
    return answer | {"more": {"bodies": more_bodies, "others": more_others}}


def _kept(services: Services, slug: str | None, kinds: tuple[Kind, ...], most: int) -> tuple[list[Component], bool]:
    if slug is not None:
        found = _named_part(services, slug, kinds)
        if found.kind not in kinds:
            raise _other_kind(found, kinds)
        return [found], False
    cards: list[bytes] = []
    more = False
    for kind in kinds:
        page = services.store.page(Wanted("component", kind, limit=most - len(cards) or 1))
        more = more or page.last is not None
        cards += page.cards
    read = (orjson.loads(card) for card in cards[:most])
    return [components.find(services, card["slug"], card["sha256"]) for card in read], more or len(cards) > most


def _named_part(services: Services, slug: str, kinds: tuple[Kind, ...]) -> Component:
    try:
        return components.find(services, slug)
    except NotFound as missing:
        pages = (services.store.page(Wanted("component", kind, limit=MOST_OTHERS)) for kind in kinds)
        known = (orjson.loads(card)["slug"] for page in pages for card in page.cards)
        raise NotFound(str(missing), nearest_few(slug, known)) from None


def _other_kind(found: Component, kinds: tuple[Kind, ...]) -> Refused:
    pointer = "/body" if kinds == ("body",) else "/part"
    message = f"{found.slug} is a {found.kind}, and this takes a {' or a '.join(kinds)}."
    finding = Finding("part-of-wrong-kind", "error", message, "Name a part of another kind.", pointer=pointer)
    return Refused(message, (finding,))


def matrix_of(
    bodies: Sequence[Component],
    others: Sequence[Component],
    vocabulary: Vocabulary,
    count: int | None = None,
    beside: int = BESIDE,
) -> dict[str, Any]:
    """Return the matrix of these parts, at a count of the body's own stitches or at all it takes.

    The ends, the cast-on and the bind-off run over `beside` stitches more on each side.
    """
    rows = [facts_of(component, vocabulary) for component in bodies]
    columns = [(facts_of(each, vocabulary), place) for each in others for place in PLACES[each.kind]]
    columns.sort(key=lambda column: _ORDER.index(column[1]))
    return {
        "count": count,
        "beside": beside,
        "states": STATES,
        "bodies": [_named(facts) | {"nearest": _nearest(facts, count)} for facts in rows],
        "others": [_other(facts, place) for facts, place in columns],
        "rows": [[_cell(body, other, place, beside, count) for other, place in columns] for body in rows],
        "more": {"bodies": False, "others": False},
    }


_ORDER: tuple[Place, ...] = ("ends", "sides", "selvedge", "cast-on", "bind-off")


def _named(facts: Facts) -> dict[str, Any]:
    one = facts.component
    return {"slug": one.slug, "name": one.name, "said": facts.said, "href": f"/v1/components/{one.slug}"}


def _nearest(body: Facts, count: int | None) -> list[int] | None:
    """Return the counts nearest one that a body does not take; None where it takes it, or none is asked for."""
    if count is None or _takes(body, count):
        return None
    return list(nearest_of(body.counts, Fraction(count), 2))


def _other(facts: Facts, place: Place) -> dict[str, Any]:
    width = facts.width if place in ("sides", "selvedge") else None
    return _named(facts) | {"kind": facts.component.kind, "place": place, "stitches": width}


def _cell(body: Facts, other: Facts, place: Place, beside: int, count: int | None) -> dict[str, Any]:
    join = meet(body, other, place, beside, count)
    said = remarks(body, other, place) if join.fit != "no" else ()
    return {
        "state": join.fit,
        **counts_json(join.common),
        "reason": _reason(join, body, (other, place), beside, count),
        "corrections": list(_corrections(join, place)),
        "remarks": [{"rule": each.rule, "message": each.message, "hint": each.hint} for each in said],
    }


def _takes(body: Facts, count: int) -> bool:
    return any(each.admits(count) for each in body.counts)


def _reason(join: Join, body: Facts, column: tuple[Facts, Place], beside: int, count: int | None) -> str:
    other, place = column
    if join.fit == "no":
        return f"{join.why[:1].upper()}{join.why[1:]}."
    if count is not None and not _takes(body, count):
        return f"The body takes {body.said}, and not {count}."
    if place in ("sides", "selvedge"):
        width = stitches(other.width or 0)
        both = lcm(body.rows, other.rows)
        return f"It stands beside the body, {width} on each side; both begin a repeat together every {both} rows."
    if join.fit == "some":
        return f"Of the counts of the body it takes {_classes(join)}."
    if join.fit == "fits":
        return (
            "It takes every count that the body takes." if count is None else f"It takes {count + 2 * beside} stitches."
        )
    if count is not None:
        return f"Here it is worked over {stitches(count + 2 * beside)}, and it takes {other.said}."
    over = f", and is worked over {stitches(2 * beside)} more" if beside else ""
    return f"They share no count: the body takes {body.said}; this takes {other.said}{over}."


def _classes(join: Join) -> str:
    return " or ".join(say_counts(each) for each in join.common[:3])


def _corrections(join: Join, place: Place) -> Iterator[dict[str, Any]]:
    if join.fit == "some":
        yield {"what": "counts", "value": None, "said": f"Take {_classes(join)}, for the body."}
    if join.counts:
        said = " or ".join(map(str, join.counts))
        yield {"what": "count", "value": join.counts[0], "said": f"Take {said} stitches for the body."}
    if join.add:
        yield {"what": "stitches", "value": join.add, "said": _added(join.add, place)}


def _added(add: int, place: Place) -> str:
    more = "more" if add > 0 else "fewer"
    part = "border" if place == "ends" else "part"
    if add % 2 == 0:
        return f"Work {stitches(abs(add) // 2)} {more} at each end of the {part}'s rows, outside its repeat."
    return f"Work {stitches(abs(add))} {more} at the ends of the {part}'s rows in all, outside its repeat."


def tally(answer: Mapping[str, Any]) -> dict[str, int]:
    """Return how many cells are in each state."""
    states = [cell["state"] for row in answer["rows"] for cell in row]
    return {state: states.count(state) for state in STATES}
