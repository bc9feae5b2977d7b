"""By what components are searched and counted: worked out when one is kept, and once for those of earlier versions.

What is not known of a component has no trait: it answers no question, and facets count it apart. `none` is a word where
the question has no sense, since the component has no rows.
"""

from __future__ import annotations

from collections.abc import Iterator

import orjson

from counterpane.craft.component import Component, component_of, derive
from counterpane.craft.pattern.level import LEVELS, level_of_rows
from counterpane.craft.stitches import Vocabulary
from counterpane.library.errors import Gone
from counterpane.library.parts.wanted import Trait
from counterpane.library.plans.behaving import component_behaviour
from counterpane.library.ports import Kept
from counterpane.library.services import Services

LIES, ROW_REPEAT, DIFFICULTY, LICENCE, SOURCE, YEAR, YARN_CLASS = NAMES = (
    "lies",
    "row_repeat",
    "difficulty",
    "licence",
    "source",
    "year",
    "yarn_class",
)
FLAT = ("flat", "draws in", "shortens")
"""Verdicts of the house model on a fabric that is likely to lie flat."""
DIFFICULTIES = tuple(level.casefold() for level in LEVELS)
NO_ROWS = "none"
NOT_KNOWN = "not known"
AT_ONCE = 200
"""Components of an earlier version whose traits are worked out in one transaction; house."""


def traits_of(component: Component, vocabulary: Vocabulary) -> tuple[Trait, ...]:
    """Return by what a component is searched and counted, each once, in order."""
    return tuple(sorted(set(_of(component, vocabulary)), key=lambda trait: (trait.name, trait.word)))


def _of(component: Component, vocabulary: Vocabulary) -> Iterator[Trait]:
    origin = component.provenance
    yield from (Trait(LICENCE, origin.licence), Trait(SOURCE, origin.source))
    if origin.year is not None:
        yield _number(YEAR, origin.year)
    yield from (_number(YARN_CLASS, each) for each in component.yarn_classes)
    if component.operation is not None:
        yield from (Trait(LIES, NO_ROWS), Trait(ROW_REPEAT, NO_ROWS))
        return
    behaviour = component_behaviour(component, vocabulary)
    if behaviour is not None and behaviour["lies"] != NOT_KNOWN:
        yield Trait(LIES, behaviour["lies"])
    derived = derive(component, vocabulary)
    yield from (_number(ROW_REPEAT, version.row_repeat) for version in derived.versions)
    yield Trait(DIFFICULTY, level_of_rows(derived.rows, vocabulary).name.casefold())


def _number(name: str, number: int) -> Trait:
    return Trait(name, str(number), number)


def fill(services: Services) -> None:
    """Work out the traits of components that an earlier version kept, and keep them."""
    while lacking := services.store.without_traits(AT_ONCE):
        services.store.put_traits([(kept, _of_kept(services, kept)) for kept in lacking])


def _of_kept(services: Services, kept: Kept) -> tuple[Trait, ...]:
    try:
        component = component_of(orjson.loads(services.store.object(kept.sha256)))
    except Gone:
        return ()
    return traits_of(component, services.vocabulary)
