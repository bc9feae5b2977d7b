"""From what a designer asks for to what a store is asked, and what is told beside each card.

A count that is asked for in several ways is one count: it lies within the width, is admitted, and is shared.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor
from typing import Any

import orjson

from counterpane.craft.measures import exact
from counterpane.craft.safety.limits import FINGERTIP_MM
from counterpane.library.parts import traits
from counterpane.library.parts.alike import alike
from counterpane.library.parts.goes_with import Beside, beside_of
from counterpane.library.parts.wanted import CountClass, Facets, Page, Span, Wanted
from counterpane.library.plans.plan_answers import tenths
from counterpane.library.ports import Key
from counterpane.library.services import Services
from counterpane.library.values import BadInput

Filters = Mapping[str, Any]
Json = dict[str, Any]

PLAIN = ("kind", "admits", "reversible", "status", "texture", "openings_under_mm", "words")
"""What the store is asked as it was asked for."""
WORDS = {traits.DIFFICULTY: traits.DIFFICULTY, traits.LICENCE: traits.LICENCE, traits.SOURCE: traits.SOURCE}
NUMBERS = {"row_repeat": traits.ROW_REPEAT, "year": traits.YEAR}

LIKE_PERCENT = 60
"""Stitches of a hundred that agree where nobody says how many; house figure."""
MOST_LIKE = 200
"""Components of one answer about likeness; house figure that bounds it."""
COUNTS_TOLD = 5
"""Counts within a width that are told with a card; house figure."""
WINDOW_CM = 10
"""The window of a gauge."""


@dataclass(frozen=True, slots=True)
class Search:
    """What a store is asked, and what is told beside each card.

    `found` says how alike each slug is, where likeness was asked for; `per_cm` are the stitches of the gauge, and
    `beside` what the components must go with.
    """

    wanted: Wanted
    found: Mapping[str, Json] | None = None
    per_cm: Fraction | None = None
    beside: Beside | None = None


def search_of(services: Services, filters: Filters) -> Search | None:
    """Return what the filters ask for, None where nothing can be found.

    Raise NotFound for a component that is not kept, and BadInput for filters that make no sense together.
    """
    between, per_cm = _width(filters)
    admits = filters.get("admits")
    if between and (between[0] > between[1] or (admits is not None and not between[0] <= admits <= between[1])):
        return None
    asked = {name: filters[name] for name in PLAIN if name in filters}
    wanted = Wanted("component", between=between, traits=_traits(filters), spans=_spans(filters), **asked)
    beside = beside_of(services, filters, between) if "goes_with" in filters else None
    if beside:
        if beside.never or (wanted.kind or beside.kind) not in beside.kinds:
            return None
        wanted = replace(wanted, kind=wanted.kind or beside.kind, meets=beside.meets)
    found = _alike(services, filters)
    if found is not None:
        wanted = replace(wanted, slugs=tuple(found))
    return Search(wanted, found, per_cm, beside)


def _width(filters: Filters) -> tuple[tuple[int, int] | None, Fraction | None]:
    """Return the counts between which the width lies at the gauge, and the stitches of a centimetre."""
    width, gauge = filters.get("width_cm"), filters.get("gauge")
    if width is None and gauge is None:
        return None, None
    if width is None or gauge is None:
        missing = "width_cm" if width is None else "gauge"
        message = "A width in centimetres is so many stitches only at a gauge: give both."
        raise BadInput(f"/{missing}", message, "Write such as width_cm=60..80 and gauge=21x28.")
    per_cm = exact(gauge.partition("x")[0]) / WINDOW_CM
    low, high = (exact(end) * per_cm for end in _ends(width))
    return (max(1, ceil(low)), floor(high)), per_cm


def _ends(span: str) -> tuple[str, str]:
    low, _, high = span.partition("..")
    return low, high or low


def _traits(filters: Filters) -> tuple[tuple[str, tuple[str, ...]], ...]:
    asked: list[tuple[str, tuple[str, ...]]]
    asked = [(trait, (filters[name],)) for name, trait in WORDS.items() if name in filters]
    if "yarn_class" in filters:
        asked.append((traits.YARN_CLASS, (str(filters["yarn_class"]),)))
    if "lies_flat" in filters:
        asked.append((traits.LIES, traits.FLAT))
    return tuple(asked)


def _spans(filters: Filters) -> tuple[Span, ...]:
    asked = ((trait, _ends(filters[name])) for name, trait in NUMBERS.items() if name in filters)
    return tuple(Span(trait, int(low), int(high)) for trait, (low, high) in asked)


def _alike(services: Services, filters: Filters) -> dict[str, Json] | None:
    if "like" not in filters:
        if "like_percent" in filters:
            raise BadInput("/like_percent", "It is not said like which component.", "Give like, the slug of one.")
        return None
    least = filters.get("like_percent", LIKE_PERCENT)
    answer = alike(services, filters["like"], least, MOST_LIKE)
    return {each["slug"]: {"percent": each["percent"], "said": each["said"]} for each in answer["items"]}


def page(services: Services, search: Search, after: Key | None, limit: int) -> Page:
    """Return a page of what a search finds, each card with what it tells."""
    if search.found is not None:
        found = _likest(services, search.wanted, search.found, after, limit)
    else:
        found = services.store.page(replace(search.wanted, after=after, limit=limit))
    return replace(found, cards=_told(services, search, found.cards))


def _likest(services: Services, wanted: Wanted, found: Mapping[str, Json], after: Key | None, limit: int) -> Page:
    """Return those that are alike by their likeness, which a slug keeps while others come and go."""
    cards = services.store.page(replace(wanted, limit=MOST_LIKE)).cards
    keyed = sorted((_likeness(found, slug), card) for card in cards if (slug := orjson.loads(card)["slug"]) in found)
    rest = [pair for pair in keyed if after is None or pair[0] > after]
    return Page(tuple(card for _, card in rest[:limit]), rest[limit - 1][0] if len(rest) > limit else None)


def _likeness(found: Mapping[str, Json], slug: str) -> Key:
    return -found[slug]["percent"], slug


def _told(services: Services, search: Search, cards: tuple[bytes, ...]) -> tuple[bytes, ...]:
    """Return the cards with what the search tells of each; as they are where it tells nothing."""
    if not cards or (search.found is None and search.per_cm is None and search.beside is None):
        return cards
    read: list[Json] = [orjson.loads(card) for card in cards]
    counts = services.store.classes("component", [card["slug"] for card in read])
    return tuple(orjson.dumps(card | _of_card(search, card, counts.get(card["slug"], ()))) for card in read)


def _of_card(search: Search, card: Json, counts: tuple[CountClass, ...]) -> Json:
    told: Json = {}
    if search.beside:
        counts = search.beside.shared(counts)
        told["goes_with"] = search.beside.told(card["kind"], counts)
    if search.per_cm and search.wanted.between:
        per_cm, found = search.per_cm, nearest_within(counts, *search.wanted.between)
        told["widths"] = [{"stitches": each, "width_cm": tenths(each / per_cm)} for each in found]
    if search.found is not None:
        told["alike"] = search.found[card["slug"]]
    return told


def nearest_within(counts: tuple[CountClass, ...], low: int, high: int) -> list[int]:
    """Return the few counts nearest the middle from `low` to `high`, in order."""
    middle = (low + high) // 2
    found = {count for each in counts for count in _around(each, low, middle, high)}
    return sorted(sorted(found, key=lambda count: (abs(count - middle), count))[:COUNTS_TOLD])


def _around(counts: CountClass, low: int, middle: int, high: int) -> list[int]:
    first = counts.first(low, high)
    if first is None or counts.modulus == 0:
        return [] if first is None else [first]
    nearest = first + max(0, middle - first) // counts.modulus * counts.modulus
    near = (nearest + place * counts.modulus for place in range(-COUNTS_TOLD, COUNTS_TOLD + 1))
    return [count for count in near if low <= count <= high and counts.admits(count)]


FINGERTIP = int(FINGERTIP_MM)
"""Millimetres by which measured openings are counted in two parts."""
MOST_COUNTED = 100_000
"""Components that facets count at most; house figure that bounds time."""
MOST_WORDS = 50
"""Words of a facet that are told; house figure."""
FACETS = ("kind", "reversible", *traits.NAMES, "openings_measured", "status")
UNDER, OVER = f"under {FINGERTIP} mm", f"{FINGERTIP} mm or more"


def facets(services: Services, search: Search | None) -> Json:
    """Count what a search finds under each facet; what is not known of a component counts as not known."""
    if search is None:
        return facets_json(Facets(0, True, {}, {}))
    return facets_json(services.store.facets(search.wanted, MOST_COUNTED))


def facets_json(found: Facets) -> Json:
    """Return facets as JSON values, the commonest words first."""
    openings = found.words.get("opening", {})
    under = sum(count for word, count in openings.items() if int(word) < FINGERTIP)
    split = {UNDER: under, OVER: sum(openings.values()) - under}
    words = {**found.words, "openings_measured": {word: count for word, count in split.items() if count}}
    known = {**found.known, "openings_measured": found.known.get("opening", 0)}
    told = [_facet(name, words.get(name, {}), found.total - known.get(name, 0)) for name in FACETS]
    return {"counted": found.total, "whole": found.whole, "facets": told}


def _facet(name: str, words: Mapping[str, int], not_known: int) -> Json:
    ordered = sorted(words.items(), key=lambda pair: (-pair[1], pair[0]))
    shown = [{"word": word, "count": count} for word, count in ordered[:MOST_WORDS]]
    return {"name": name, "words": shown, "more_words": len(ordered) - len(shown), "not_known": not_known}
