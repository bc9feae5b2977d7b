"""Which kept components have the same texture, or one that is like it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import orjson
import pytest

from counterpane.craft.component import Version, content_of
from counterpane.library.errors import NotFound
from counterpane.library.parts import components
from counterpane.library.parts.alike import alike
from counterpane.library.services import Services
from counterpane.wiring import open_library
from craft.textures import body


@pytest.fixture(scope="module")
def starting() -> Services:
    """Return a library with the starters, which no test changes."""
    return open_library()


def named(answer: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Return the items of an answer by slug."""
    return {item["slug"]: item for item in answer["items"]}


def test_the_same_texture_is_found_under_other_names(starting: Services) -> None:
    """Seed stitch is also a border, and the muff stitch of the 1840s; more is not the same."""
    found = named(alike(starting, "seed-stitch"))
    same = [slug for slug, item in found.items() if item["same"]]
    assert same == ["muff-stitch", "seed-stitch-border"]
    assert found["muff-stitch"]["said"] == "The same texture."


def test_the_back_of_a_texture_is_the_same_texture_turned_over(starting: Services) -> None:
    """Stocking stitch and its purl side are one fabric."""
    item = named(alike(starting, "stocking-stitch"))["reverse-stocking-stitch"]
    assert (item["same"], item["percent"], item["how"]) == (True, 100, "turned over a side edge")
    assert item["said"] == "The same texture, turned over a side edge."


def test_textures_that_are_nearly_alike_are_listed_with_what_agrees(starting: Services) -> None:
    """The likest come first, and each says of how many stitches so many agree."""
    items = alike(starting, "staggered-dots", percent=80)["items"]
    assert [item["percent"] for item in items] == sorted((item["percent"] for item in items), reverse=True)
    assert all(item["matching"] * 100 >= 80 * item["of"] and not item["same"] for item in items)
    assert named({"items": items})["stocking-stitch"]["said"] == "Of 16 stitches 14 agree."


def test_textures_that_look_the_same_in_other_stitches_are_told_apart(starting: Services) -> None:
    """A twisted rib looks like a plain one, and is not the same stitches."""
    texts = (
        "Row 1: *k1, p1; rep from * to end.",
        "Row 1: *k tbl, p1; rep from * to end.\nRow 2: *k1, p tbl; rep from * to end.",
    )
    services = open_library()
    for slug, text in zip(("plain-rib-here", "twisted-rib-here"), texts, strict=True):
        add(services, slug, text)
    item = named(alike(services, "plain-rib-here"))["twisted-rib-here"]
    assert (item["same"], item["percent"]) == (False, 100)
    assert item["said"] == "It looks the same, in other stitches."


def add(services: Services, slug: str, text: str) -> dict[str, Any]:
    """Add a body of these rows and return the answer."""
    content = content_of(replace(body(text), slug=slug, versions=(Version("", text),)))
    found: dict[str, Any] = orjson.loads(components.add(services, content, "anna").body)
    return found


def test_a_component_sent_in_is_told_of_the_same_texture() -> None:
    """It is kept all the same, begun at another stitch, mirrored or turned over as it may be."""
    services = open_library()
    shifted = add(
        services,
        "other-waffle",
        "Row 1: *p1, k2; rep from * to end.\nRow 2: *p2, k1; rep from * to end.\n"
        "Row 3: *p1, k2; rep from * to end.\nRow 4: knit.",
    )
    assert shifted["same_texture"] == [{"slug": "waffle", "href": "/v1/components/waffle"}]
    own = add(services, "quite-its-own", "Row 1: *k7, p1, k1, p2; rep from * to end.\nRow 2: purl.")
    assert own["same_texture"] == []


def test_a_component_without_a_texture_is_like_none(starting: Services) -> None:
    """A cast-on has no rows, and nothing is compared."""
    assert alike(starting, "long-tail") == {"component": "long-tail", "items": [], "compared": 0, "not_compared": 0}
    with pytest.raises(NotFound):
        alike(starting, "no-such-thing")


def test_the_same_texture_is_found_however_large_it_is() -> None:
    """A repeat of more rows than are compared with others, begun two rows later, is the same; others are left out."""
    services = open_library()
    rows = ["*k7, p1" if number % 5 else "*p2, k6" for number in range(1, 80)] + ["*k3, p5"]
    for slug, begun in (("tall-one", rows), ("tall-again", rows[2:] + rows[:2])):
        numbered = (f"Row {number}: {row}; rep from * to end.\n" for number, row in enumerate(begun, 1))
        add(services, slug, "".join(numbered))
    answer = alike(services, "tall-one", 60)
    assert named(answer)["tall-again"]["said"] == "The same texture."
    assert answer["not_compared"] > 0
