"""What a library holds back is held back by those who took it over: a safety correction reaches them by pulling."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from counterpane import wiring
from counterpane.craft.constructions import CannotBePlanned
from counterpane.library.editions import corrections, editions
from counterpane.library.errors import Gone, NotFound
from counterpane.library.keeping import recipes
from counterpane.library.keeping.record import Move
from counterpane.library.parts import components
from counterpane.library.plans import planning
from counterpane.library.sharing.pulling import Pulling
from counterpane.peers import read
from counterpane.seeding.recipes import load_recipes
from peers.libraries import SEEDS, Library, LocalPeer, furnish, keep

RECIPE = "first-frost"
Pair = tuple[Library, Library]


@pytest.fixture
def pair() -> Iterator[Pair]:
    """Yield a library with a recipe in one edition and another that took all of it over, both in memory."""
    one, two = (Library(wiring.open_library(starters=False), "") for _ in range(2))
    furnish(one)
    recipes.RECIPES.add(one.services, next(each for each in load_recipes() if each["slug"] == RECIPE), "anna")
    editions.publish(one.services, RECIPE, {"date": "2026-11-26"}, "anna")
    pulled(two, one)
    yield one, two


def pulled(into: Library, library: Library) -> list[tuple[str, str]]:
    """Pull all there is, and return what became of each line that brought something."""
    run = Pulling(into.services, LocalPeer(library.services, "one"), read).run()
    return [(each.change.slug, each.became) for each in run if each.became != "held"]


def moved(library: Library, to: str, number: int = -1, slug: str = "waffle") -> None:
    """Move a revision of a component, the latest if no number is given."""
    kept = library.services.store.history("component", slug)[number]
    words = (to, kept.at, "Suri", "hazard", "Holes of 9 mm.")
    move = Move("component", slug, kept.sha256, kept.status, *words)
    library.services.store.move(move, lambda body: body)


def state(library: Library, number: int = -1) -> str:
    """Return where a revision of the waffle stands."""
    return library.services.store.history("component", "waffle")[number].status


def told(library: Library) -> dict[str, Any]:
    """Return what is told to whoever has a copy of the edition."""
    return corrections.since(library.services, RECIPE, 1)


def test_whoever_has_a_copy_hears_of_a_part_that_the_first_library_held_back(pair: Pair) -> None:
    """By the page of the edition, as a matter of safety, with the place where the reason stands."""
    one, two = pair
    assert not told(two)["corrected"]
    moved(one, "quarantined")
    assert pulled(two, one) == [("waffle", "quarantined")]
    (item,) = told(two)["items"]
    assert (told(two)["safety"], item["sort"], item["safety"]) == (True, "standing", True)
    assert "one, from which it was taken over" in item["said"] and "/v1/components/waffle/standing" in item["said"]


def test_a_plan_of_a_recipe_that_was_taken_over_tells_of_it(pair: Pair) -> None:
    """It is refused, as in the library that held the part back."""
    one, two = pair
    moved(one, "quarantined")
    pulled(two, one)
    for library in pair:
        request = planning.planned_part(editions.titled(library.services.store.latest("recipe", RECIPE)))
        with pytest.raises(CannotBePlanned) as refused:
            planning.plan(library.services, request)
        assert [each.rule for each in refused.value.findings] == ["pinned-part-quarantined"]


def test_what_is_set_free_there_is_set_free_here(pair: Pair) -> None:
    """It stands as it stood before; no revision is added by it."""
    one, two = pair
    moved(one, "quarantined")
    pulled(two, one)
    moved(one, "draft")
    assert pulled(two, one) == [("waffle", "mirrored")]
    assert (state(two), told(two)["corrected"]) == ("mirrored", False)
    assert len(two.services.store.history("component", "waffle")) == 1


def test_an_earlier_revision_that_a_recipe_pins_is_held_back_too(pair: Pair) -> None:
    """The later one stands as it did."""
    one, two = pair
    keep(components.COMPONENTS, one.services, SEEDS["waffle"] | {"summary": "Mended."})
    moved(one, "quarantined", 0)
    assert pulled(two, one) == [("waffle", "revised"), ("waffle", "quarantined")]
    assert (state(two, 0), state(two), told(two)["safety"]) == ("quarantined", "mirrored", True)


@pytest.mark.parametrize(
    ("here", "there", "after"),
    [
        ("quarantined", ("accepted", "deprecated"), "quarantined"),
        ("yanked", ("quarantined", "draft"), "yanked"),
        ("accepted", ("quarantined", "accepted"), "accepted"),
        ("accepted", ("quarantined", "yanked"), "yanked"),
        ("withdrawn", ("quarantined", "accepted"), "withdrawn"),
    ],
)
def test_the_stricter_of_both_holds(pair: Pair, here: str, there: tuple[str, str], after: str) -> None:
    """Set free by the peer, it stands as it was decided here."""
    one, two = pair
    moved(two, here)
    for to in there:
        moved(one, to)
        pulled(two, one)
    assert state(two) == after


def test_what_is_withdrawn_there_is_gone_here(pair: Pair) -> None:
    """With the place of the reason, and its bytes with it."""
    one, two = pair
    sha256 = two.services.store.latest("component", "waffle").sha256
    moved(one, "withdrawn")
    assert pulled(two, one) == [("waffle", "withdrawn")]
    for ask in (lambda: two.services.store.latest("component", "waffle"), lambda: two.services.store.object(sha256)):
        with pytest.raises(Gone, match="from which it was taken over"):
            ask()


def test_of_what_is_not_held_nothing_is_moved(pair: Pair) -> None:
    """A component that was withdrawn before it was taken over is told of by its moves alone."""
    one, two = pair
    keep(components.COMPONENTS, one.services, SEEDS["garter"] | {"slug": "late", "summary": "Late."})
    moved(one, "quarantined", slug="late")
    moved(one, "withdrawn", slug="late")
    assert pulled(two, one) == []
    with pytest.raises(NotFound):
        two.services.store.history("component", "late")
