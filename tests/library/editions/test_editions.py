"""Editions of kept recipes: what is published stays, and what changes is told, row by row."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from decimal import Decimal
from itertools import product
from typing import Any

import pytest

from counterpane import wiring
from counterpane.craft.erratum import WORKED
from counterpane.craft.erratum.comparing import changes
from counterpane.craft.erratum.lines import lines_of
from counterpane.craft.pattern import Pattern
from counterpane.library.editions import edition_files, editions, touched
from counterpane.library.errors import NotFound, Taken
from counterpane.library.keeping.recipes import RECIPES
from counterpane.library.parts import components
from counterpane.library.patterns.patterns import recheck
from counterpane.library.plans import planning
from counterpane.library.services import Services
from counterpane.library.values import BadInput
from counterpane.press.text import as_text

SLUG = "first-frost"
BY = "anna"
SOFT: dict[str, Any] = {
    "parts": {"body": "waffle"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
    "size": {"width_cm": 40, "length_cm": 50},
}
STITCHES = {"name": "stitches", "least": 5, "default": 5, "step": 5, "most": None}
BORDERED = {"component": "garter-border", "rows": 16}
VARIED: tuple[dict[str, Any], ...] = (
    SOFT,
    SOFT | {"size": {"width_cm": 40, "length_cm": 56}},
    SOFT | {"size": {"width_cm": 50, "length_cm": 50}},
    SOFT | {"parts": {"body": "seed-stitch"}},
    SOFT | {"parts": {"body": ["waffle", {"component": "garter", "rows": 20}, {"component": "waffle", "rows": 40}]}},
    SOFT | {"parts": {"body": "waffle", "bottom": BORDERED}},
    SOFT
    | {"parts": {"body": "waffle", "sides": {"component": "garter-border", "rows": 10}}}
    | {"construction": "sides-picked-up"},
)


@pytest.fixture
def services() -> Iterator[Services]:
    """Yield a library with the starters, to be written to."""
    made = wiring.open_library()
    yield made
    made.store.close()


@pytest.fixture(scope="module")
def varied() -> list[Pattern]:
    """Return patterns that differ in length, width, texture, parts and construction."""
    made = wiring.open_library()
    return [planning.pattern_of(planning.made(made, each), each, made.known) for each in VARIED]


def revise(services: Services, **change: Any) -> None:
    """Keep the next revision of the recipe, with these members changed."""
    whole = json.loads(RECIPES.get(services, SLUG).body, parse_float=Decimal)
    told = ("status", "changed", "sha256", "etag")
    content = {name: value for name, value in whole.items() if name not in told}
    RECIPES.revise(services, SLUG, content | change, None, BY)


def correct(services: Services, slug: str, **change: Any) -> None:
    """Keep the next revision of a component, with these members changed."""
    content = json.loads(services.store.object(components.latest(services, slug).sha256))
    components.COMPONENTS.revise(services, slug, content | change, None, BY)


def worked(pattern: Pattern) -> list[tuple[str, int, str, int]]:
    """Return every row of a blanket as it is worked, unrolled from its listed rows and repeats."""
    rows = []
    for number, section in enumerate(pattern.sections):
        listed = [(section.name, number, row.text, row.after) for row in section.rows]
        rows += listed
        for repeat in section.repeats:
            rows += listed[repeat.first - 1 : repeat.last] * repeat.times
    return rows


class TestPublishing:
    """What is published is numbered, dated and kept as it is."""

    def test_the_first_edition_pins_what_the_recipe_pins(self, services: Services) -> None:
        """Its number, its day, the revision of the recipe and of each part, and a hash in each of the terms."""
        kept = editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        body, recipe = json.loads(kept.body), services.store.latest("recipe", SLUG)
        assert (body["number"], body["date"], body["revision"]) == (1, "2026-11-26", recipe.sha256)
        assert body["pins"]["waffle"] == components.latest(services, "waffle").sha256
        assert [each["terms"] for each in body["patterns"]] == ["us", "uk"] and body["erratum"] is None

    def test_an_edition_stays_when_the_recipe_goes_on(self, services: Services) -> None:
        """The bytes of the first are those that were published."""
        first = editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        revise(services, size={"width_cm": 70, "length_cm": 96})
        second = editions.publish(services, SLUG, {"date": "2026-12-01"}, BY)
        assert editions.find(services, SLUG, 1) == first
        assert json.loads(second.body)["previous"] == first.sha256

    def test_an_edition_that_says_the_same_is_refused(self, services: Services) -> None:
        """A request that is sent twice publishes once."""
        editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        with pytest.raises(BadInput, match="says the same"):
            editions.publish(services, SLUG, {"date": "2026-11-27"}, BY)
        assert len(editions.history(services, SLUG)) == 1

    def test_an_edition_is_not_dated_before_the_one_it_follows(self, services: Services) -> None:
        """Readers go by the day."""
        editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        with pytest.raises(BadInput) as caught:
            editions.publish(services, SLUG, {"date": "2026-11-25"}, BY)
        assert caught.value.pointer == "/date"

    def test_of_those_who_publish_at_once_one_does(self, services: Services) -> None:
        """Two days, one number: who comes second is told so, and nothing is numbered twice."""

        def publish(day: int) -> str:
            try:
                return str(editions.publish(services, SLUG, {"date": f"2026-11-{day}"}, BY).number)
            except (Taken, BadInput) as refusal:
                return type(refusal).__name__

        with ThreadPoolExecutor(3) as pool:
            told = Counter(pool.map(publish, (26, 26, 26)))
        assert told["1"] == 1 and told["Taken"] + told["BadInput"] == 2
        assert len(editions.history(services, SLUG)) == 1

    def test_what_is_not_there_is_not_found(self, services: Services) -> None:
        """A recipe that is not kept, and an edition that is not published."""
        with pytest.raises(NotFound):
            editions.publish(services, "nobody", {}, BY)
        with pytest.raises(NotFound, match="no edition 1"):
            editions.find(services, SLUG, 1)


class TestPages:
    """The number and the day stand where a reader sees them."""

    @pytest.mark.parametrize("form", ["text", "markdown", "json", "html"])
    def test_each_form_names_the_edition(self, services: Services, form: str) -> None:
        """In the terms that are asked for."""
        editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        made = edition_files.written(services, edition_files.Asked(SLUG, 1, "uk"), form)
        assert b"Edition 1, 2026-11-26" in made

    def test_a_printed_page_names_the_edition_in_its_foot(self, services: Services) -> None:
        """HTML says it to the printer for every page."""
        editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        made = edition_files.written(services, edition_files.Asked(SLUG, 1), "html")
        assert b'@bottom-left { content: "Edition 1, 2026-11-26";' in made

    def test_the_text_of_an_edition_reads_back(self, services: Services) -> None:
        """The line with its number is prose to a reader of rows."""
        editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        whole = editions.content_of(services, editions.find(services, SLUG, 1))
        pattern = editions.written(services, whole, "us", None).pattern
        assert recheck(pattern, as_text(pattern), services.vocabulary) == ()

    def test_a_pattern_that_is_no_edition_names_none(self, varied: list[Pattern]) -> None:
        """Nothing of the kind stands in it."""
        assert "Edition" not in as_text(varied[0])


class TestErrata:
    """What leads from one pattern to another."""

    @pytest.mark.parametrize(("one", "other"), list(product(range(len(VARIED)), repeat=2)))
    def test_the_first_row_that_differs_is_where_the_worked_rows_part(
        self, varied: list[Pattern], one: int, other: int
    ) -> None:
        """Found a second way, by working both patterns row by row to the first that is not alike."""
        found = changes(lines_of(varied[one]), lines_of(varied[other]))
        rows, others = worked(varied[one]), worked(varied[other])
        parted = next((at for at, (mine, its) in enumerate(zip(rows, others, strict=False)) if mine != its), None)
        if parted is None and len(rows) != len(others):
            parted = min(len(rows), len(others))
        told = [each.past_row for each in found if each.sort in ("row", "repeat", "order") and not each.piece]
        assert (min(row for row in told if row is not None) if told else None) == parted

    @pytest.mark.parametrize("one", range(len(VARIED)))
    def test_a_pattern_beside_itself_gives_nothing(self, varied: list[Pattern], one: int) -> None:
        """Whatever it is built of."""
        assert changes(lines_of(varied[one]), lines_of(varied[one])) == ()

    @pytest.mark.parametrize(("one", "other"), list(product(range(len(VARIED)), repeat=2)))
    def test_the_old_rows_mended_are_the_fresh_rows(self, varied: list[Pattern], one: int, other: int) -> None:
        """Each row of each section by its place, and none is left over."""
        mended = _rows(varied[one])
        for change in changes(lines_of(varied[one]), lines_of(varied[other])):
            if change.sort == "row":
                mended.pop(change.key, None)
                mended |= {change.key: (change.fresh, change.fresh_stitches)} if change.fresh else {}
        assert mended == _rows(varied[other])

    def test_an_erratum_is_published_with_the_edition(self, services: Services) -> None:
        """The body is longer: the repeat is told in both terms, with what to do; the rows are not."""
        editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        revise(services, size={"width_cm": 70, "length_cm": 96})
        kept = editions.publish(services, SLUG, {"date": "2026-12-01", "note": "Longer, by request."}, BY)
        erratum = json.loads(kept.body)["erratum"]
        (change,) = (each for each in erratum["us"]["changes"] if each["sort"] in WORKED)
        assert erratum["uk"]["note"] == "Longer, by request."
        assert (change["section"], change["row"], change["past_row"]) == ("Body", "repeat", 264)

    def test_an_erratum_leads_over_several_editions(self, services: Services) -> None:
        """There and back again changes nothing; safety on the way stays said."""
        for length, reason in ((90, "correction"), (96, "safety"), (90, "correction")):
            revise(services, size={"width_cm": 70, "length_cm": length})
            editions.publish(services, SLUG, {"date": "2026-11-26", "reason": reason}, BY)
        found = editions.erratum(services, SLUG, 3, 1, "us")
        assert (found["changes"], found["safety"]) == ([], True)

    def test_a_graded_edition_names_the_sizes_that_are_hit(self, services: Services) -> None:
        """The bottom border is longer in both; each has its own count of rows after it."""
        sizes = {"sizes": [{"named": "preemie"}, {"named": "pram"}]}
        editions.publish(services, SLUG, {"date": "2026-11-26", **sizes}, BY)
        parts = json.loads(RECIPES.get(services, SLUG).body)["parts"]
        revise(services, parts=parts | {"bottom": {**parts["bottom"], "rows": 18}})
        editions.publish(services, SLUG, {"date": "2026-11-27", **sizes}, BY)
        found = editions.erratum(services, SLUG, 2, None, "us")["changes"]
        hit = [each["sizes"] for each in found if (each["section"], each["row"]) == ("Bottom border", "repeat")]
        assert hit == [["preemie", "pram"]]


class TestTouched:
    """A corrected component and what it touches."""

    def test_nothing_is_touched_before_a_correction(self, services: Services) -> None:
        """Every recipe pins the latest revision."""
        assert list(touched.everything(services, "waffle", "us")) == []

    def test_a_corrected_row_drafts_its_erratum_and_keeps_nothing(self, services: Services) -> None:
        """Row 4 of the waffle is purled: row 20 of the blanket, for the edition that is published."""
        editions.publish(services, SLUG, {"date": "2026-11-26"}, BY)
        before = services.store.changes(0, 10_000)
        correct(services, "waffle", versions=_purled(services))
        (found,) = (each for each in touched.everything(services, "waffle", "us") if each["recipe"] == SLUG)
        (change,) = (each for each in found["erratum"]["changes"] if each["sort"] in WORKED)
        assert (found["edition"], change["row"], change["past_row"]) == (1, "row 4", 19)
        assert len(services.store.changes(0, 10_000)) == len(before) + 1

    def test_a_note_of_safety_marks_the_draft(self, services: Services) -> None:
        """Openings are recorded: the caution comes first, and nothing is left as it is."""
        content = json.loads(services.store.object(components.latest(services, "waffle").sha256))
        correct(services, "waffle", safety=content["safety"] | {"floats": "not known"}, versions=_purled(services))
        found = next(each for each in touched.everything(services, "waffle", "us") if each["recipe"] == SLUG)
        assert (found["safety_notes_changed"], found["erratum"]["safety"]) == (True, True)
        assert found["erratum"]["changes"][0]["safety"]
        assert not any(each["may_stay"] for each in found["erratum"]["changes"])

    def test_a_part_that_fits_no_more_is_said(self, services: Services) -> None:
        """A border over a multiple of 5, where the recipe has sides of 6 stitches."""
        rows = "Row 1 (RS): *k4, p1; rep from * to end.\nRow 2 (WS): *k1, p4; rep from * to end.\n"
        examples = [{"version": 0, "stitches": n, "after": [n, n]} for n in (5, 10)]
        correct(
            services,
            "garter-border",
            versions=[{"name": "a multiple of 5", "rows": rows}],
            examples=examples,
            parameters=[STITCHES],
        )
        found = next(each for each in touched.everything(services, "garter-border", "us") if each["recipe"] == SLUG)
        assert (found["fits"], found["erratum"]) == (False, None)
        assert found["findings"][0]["message"]


def _rows(pattern: Pattern) -> dict[str, tuple[str | None, int | None]]:
    return {line.key: (line.text, line.stitches) for line in lines_of(pattern) if line.sort == "row"}


def _purled(services: Services) -> list[dict[str, Any]]:
    content = json.loads(services.store.object(components.latest(services, "waffle").sha256))
    (version,) = content["versions"]
    return [version | {"rows": version["rows"].replace("Row 4 (WS): knit.", "Row 4 (WS): purl.")}]
