"""Written patterns of the recipes that ship, and of mixes of every kind of part, proved by reading them back."""

import tomllib
from collections.abc import Callable, Mapping
from decimal import Decimal
from functools import cache
from typing import Any

import pytest

from counterpane.craft.constructions import Plan
from counterpane.craft.pattern import Pattern
from counterpane.craft.stitches import Terms, Vocabulary
from counterpane.library.patterns.patterns import recheck, write_pattern
from counterpane.library.plans.plans import make_plan, plan_request_of, sampler_of
from counterpane.library.texts.checks import check_text
from counterpane.press.markdown import as_markdown
from counterpane.press.text import as_text
from counterpane.seeding import load_components, load_vocabulary, seeds_root

PRESSES = [as_text, as_markdown]
RECIPES = sorted((seeds_root() / "recipes").glob("*.toml"))
FIELDS = ("construction", "parts", "gauge", "size", "yarn", "for", "corner")
GAUGE = {"stitches": 22, "rows": 30, "over_cm": 10}
SIZE = {"width_cm": 60, "length_cm": 40}
MIXES: Mapping[str, dict[str, Any]] = {
    "cable in moss": {"body": "rope-cable", "sides": {"component": "seed-stitch-border", "stitches": 5}},
    "eyelets in rib": {"body": "eyelet-dots", "bottom": {"component": "rib-one-by-one-border", "rows": 8}},
    "waves": {"body": "old-shale", "cast_on": "knitted-cast-on", "bind_off": "stretchy-bind-off"},
    "slipped": {"body": "linen-stitch", "selvedge": "slipped-selvedge"},
    "moss": {"body": "moss-stitch", "sides": {"component": "moss-stitch-border", "stitches": 7}},
    "bands": {"body": ["garter", "seed-stitch", "two-by-two-check"]},
}


@cache
def vocabulary() -> Vocabulary:
    """Return the stitches that ship with the library."""
    return load_vocabulary()


@cache
def found(slug: str) -> Any:
    """Return the starter of this slug."""
    return next(component for component in load_components() if component.slug == slug)


def planned(content: Mapping[str, Any]) -> Plan:
    """Return the plan of a request."""
    return make_plan(plan_request_of(content, found, vocabulary()), vocabulary())


@cache
def recipe(index: int) -> Plan:
    """Return the plan of a recipe that ships."""
    content = tomllib.loads(RECIPES[index].read_text(), parse_float=Decimal)
    return planned({name: value for name, value in content.items() if name in FIELDS})


@cache
def mix(name: str) -> Plan:
    """Return the plan of a mix of starters."""
    return planned({"construction": "one-piece", "parts": MIXES[name], "gauge": GAUGE, "size": SIZE})


@pytest.mark.parametrize("press", PRESSES)
@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("index", range(len(RECIPES)), ids=[path.stem for path in RECIPES])
def test_the_recipes_that_ship_are_written_without_a_finding(
    index: int, terms: Terms, press: Callable[[Pattern], str]
) -> None:
    """Each row is read back with its side and its count, from the cast-on of the plan."""
    plan = recipe(index)
    pattern = write_pattern(plan, vocabulary(), terms, sampler=sampler_of(plan, vocabulary()))
    assert recheck(pattern, press(pattern), vocabulary()) == ()


@pytest.mark.parametrize("press", PRESSES)
@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("name", MIXES)
def test_mixes_of_every_kind_of_part_are_written_without_a_finding(
    name: str, terms: Terms, press: Callable[[Pattern], str]
) -> None:
    """Cables, eyelets, slipped stitches, the moss family and bands."""
    pattern = write_pattern(mix(name), vocabulary(), terms)
    assert recheck(pattern, press(pattern), vocabulary()) == ()


BODIES = sorted(path.stem for path in (seeds_root() / "components" / "body").glob("*.toml"))


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("body", BODIES)
def test_every_body_with_picked_up_sides_reads_back_as_it_does_in_one_piece(body: str, terms: Terms) -> None:
    """The pick-ups open pieces of their own whose rows come out, and nothing is found that the middle alone has not."""
    found = []
    for construction, sides in (("one-piece", None), ("sides-picked-up", "garter-border")):
        parts = {"body": body, "sides": sides}
        content = {"construction": construction, "parts": parts, "gauge": GAUGE, "size": SIZE}
        pattern = write_pattern(planned(content), vocabulary(), terms)
        found.append({line.split(": ")[1] for line in recheck(pattern, as_text(pattern), vocabulary())})
    assert found[1] - {"gauge-without-rows"} <= found[0]
    assert [border.line.split(",")[0] for border in pattern.borders] == ["With RS facing"] * 2


@pytest.mark.parametrize("press", PRESSES)
@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("sides", ["garter-border", "seed-stitch-border", "rib-two-by-two-border", "eyelet-border"])
def test_picked_up_borders_are_written_without_an_error_or_a_warning(sides: str, terms: Terms, press: Any) -> None:
    """A rib, a moss and an eyelet border begin on the WS row after the pick-up and keep their counts."""
    parts = {"body": "stocking-stitch", "sides": {"component": sides, "rows": 12}, "selvedge": "chain-selvedge"}
    plan = planned({"construction": "sides-picked-up", "parts": parts, "gauge": GAUGE, "size": SIZE})
    text = press(write_pattern(plan, vocabulary(), terms))
    checked = check_text(text, vocabulary(), terms=terms)
    assert [each for each in checked["findings"] if each["severity"] != "note"] == []
    assert [row["before"] for row in checked["rows"] if "border" in (row["section"] or "")][-1] == plan.picked[1].picks


@pytest.mark.parametrize("index", range(len(RECIPES)), ids=[path.stem for path in RECIPES])
def test_us_and_uk_texts_have_the_same_counts(index: int) -> None:
    """The words differ, the knitting does not."""
    texts = [as_text(write_pattern(recipe(index), vocabulary(), terms)) for terms in ("us", "uk")]  # type: ignore[arg-type]
    rows = [[(row["before"], row["after"]) for row in check_text(text, vocabulary())["rows"]] for text in texts]
    assert rows[0] == rows[1]
    assert texts[0] != texts[1]


@pytest.mark.parametrize("index", range(len(RECIPES)), ids=[path.stem for path in RECIPES])
def test_a_pattern_comes_to_the_rows_and_stitches_of_its_plan(index: int) -> None:
    """Rows listed and repeated are those of each section, and the loops they leave are its stitches."""
    plan = recipe(index)
    pattern = write_pattern(plan, vocabulary())
    for written, section in zip(pattern.sections, plan.sections, strict=True):
        again = sum(repeat.times * repeat.last for repeat in written.repeats)
        loops = sum(row.after for row in written.rows)
        loops += sum(repeat.times * sum(row.after for row in written.rows[: repeat.last]) for repeat in written.repeats)
        assert (len(written.rows) + again, loops) == (section.rows, section.stitches)


def test_a_changed_row_is_noticed() -> None:
    """One stitch more than the row has is a finding and another count."""
    pattern = write_pattern(recipe(0), vocabulary())
    text = as_text(pattern).replace("k6, p1,", "k7, p1,", 1)
    assert any("rows-do-not-join" in wrong for wrong in recheck(pattern, text, vocabulary()))


def test_a_missing_row_and_another_cast_on_are_noticed() -> None:
    """What a press leaves out is not written."""
    pattern = write_pattern(recipe(0), vocabulary())
    lines = [line for line in as_text(pattern).split("\n") if not line.startswith("Row 2 (WS)")]
    wrong = recheck(pattern, "\n".join(lines).replace("Cast on 153", "Cast on 156"), vocabulary())
    assert any(each.startswith("cast-on: 156 read, 153 written") for each in wrong)
    assert any(each.startswith("rows: 5 read, 8 written") for each in wrong)


def test_the_cautions_of_a_pattern_are_those_of_its_plan() -> None:
    """Without an answer at hand the plan is assessed with nothing known of the child."""
    pattern = write_pattern(recipe(0), vocabulary())
    assert {"R02", "R43", "R44"} <= {finding.reference for finding in pattern.cautions.findings}
    assert pattern.cautions.not_assessed
