"""Where a component is used, and what an upgrade of a recipe would change."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import orjson
import pytest

from counterpane import wiring
from counterpane.library.editions import outdated
from counterpane.library.errors import NotFound
from counterpane.library.parts import components
from counterpane.library.ports import Holder
from counterpane.library.review import standing
from counterpane.library.services import Services
from counterpane_schema.outdated import OutdatedAnswer, UsedInAnswer

RECIPE = "first-frost"


@pytest.fixture
def services() -> Iterator[Services]:
    """Yield a library with the starters."""
    made = wiring.open_library()
    yield made
    made.store.close()


def revised(services: Services, slug: str, **changes: Any) -> str:
    """Make the next revision of a component and return its hash."""
    whole = orjson.loads(services.store.object(components.latest(services, slug).sha256))
    return components.COMPONENTS.revise(services, slug, whole | changes, None, "Bram").sha256


def widened(services: Services) -> str:
    """Give the waffle a knit stitch more in its repeat."""
    rows = "Row 1 (RS): P1, *k3, p1; rep from * to end.\nRow 2: K1, *p3, k1; rep from * to end."
    rows += "\nRow 3: P1, *k3, p1; rep from * to end.\nRow 4: Knit."
    return revised(services, "waffle", versions=[{"name": "", "rows": rows}], examples=[])


def test_what_is_pinned_to_the_latest_is_not_outdated(services: Services) -> None:
    """Nothing is planned, and nothing changes."""
    told = outdated.outdated(services, RECIPE)
    assert (told["parts"], told["changes"], told["fits"]) == ([], [], True)


def test_a_changed_repeat_changes_counts(services: Services) -> None:
    """Each figure that differs is told with both values, and the part with how far it is behind."""
    latest = widened(services)
    told = outdated.outdated(services, RECIPE)
    (part,) = told["parts"]
    assert (part["component"], part["latest"], part["behind"]) == ("waffle", latest, 1)
    changed = {each["pointer"]: (each["old"], each["new"]) for each in told["changes"]}
    assert "/counts/repeats" in changed
    assert all(old != new for old, new in changed.values())
    assert not OutdatedAnswer().validate(told)


def test_a_changed_summary_changes_no_figure(services: Services) -> None:
    """The words of a component are not its counts."""
    revised(services, "waffle", summary="Little boxes.")
    told = outdated.outdated(services, RECIPE)
    assert (len(told["parts"]), told["changes"]) == (1, [])
    assert outdated.words_of_outdated(told)[-1] == "An upgrade changes no count, row, yarn or safety."


def test_a_successor_in_quarantine_does_not_fit(services: Services) -> None:
    """The finding says why, and the recipe itself stays as it is."""
    widened(services)
    content = {"to": "quarantined", "because": "hazard", "say": "Wait.", "until": "2999-01-01", "owner": "Suri"}
    standing.move(services, "component", "waffle", content, Holder("", "keeper", "Bram", ""))
    told = outdated.outdated(services, RECIPE)
    assert (told["fits"], told["findings"][0]["rule"]) == (False, "pinned-part-quarantined")


def test_recipes_that_use_a_component_are_counted(services: Services) -> None:
    """Each with what it pins; one of the same words under another name is not among them."""
    before = outdated.used_in(services, "waffle")
    names = [each["recipe"] for each in before["items"]]
    assert (RECIPE in names, before["recipes"], before["whole"]) == (True, len(names), True)
    assert not any(each["outdated"] for each in before["items"])
    latest = widened(services)
    after = outdated.used_in(services, "waffle")
    assert all(each["outdated"] and each["pinned"] != latest for each in after["items"])
    assert not UsedInAnswer().validate(after)
    assert outdated.used_in(services, "garter-border")["recipes"] > 1
    with pytest.raises(NotFound):
        outdated.used_in(services, "nowhere")
