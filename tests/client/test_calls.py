"""The client against the real application over a real connection."""

from __future__ import annotations

import hashlib
import subprocess
import sys
from pathlib import Path

import pytest

from api.contents import BLANKET, RIB, WARD
from counterpane import client as package
from counterpane.api.examples import BLANKET as PLANNED
from counterpane.api.examples import IN_YARN
from counterpane.api.sorts import SORTS
from counterpane.client import (
    CannotBePlanned,
    Client,
    DoesNotProve,
    Incomplete,
    Multiple,
    NotAsDescribed,
    NotFound,
    Stale,
    Taken,
    TokenNeeded,
)
from counterpane.client.errors import CLASSES
from counterpane.lending import Lent

SERVICE = Path(__file__).parents[2] / "service"


class TestReading:
    """Typed answers."""

    def test_a_check_gives_its_multiple(self, client: Client) -> None:
        """Rows become values."""
        check = client.check("Row 1 (RS): *k2, p2; rep from * to last 2 sts, k2.", cast_on=22)
        assert check.multiple == Multiple(4, 2, 6)
        assert [(row.label, row.after) for row in check.rows] == [("1", 22)]

    def test_rows_are_said_in_other_words(self, client: Client) -> None:
        """The form and the count go along, and the rows come as values."""
        said = client.say("Row 1: *k2, yo, k2tog; rep from * to end.", terms="uk", count=8, form="markdown")
        assert (said.rows[0].written_out, said.rows[0].repeats) == ("[k2, yfwd, k2tog] twice", (2,))
        assert said.text.startswith("| Row |")

    def test_a_finding_keeps_its_place(self, client: Client) -> None:
        """Line and column come with it."""
        finding = client.check("Row 1: k4, zz2.").findings[0]
        assert (finding.rule, finding.line) == ("unknown-term", 1)

    def test_components_come_over_all_pages(self, client: Client) -> None:
        """The iterator follows the links."""
        assert [card.slug for card in client.components(limit=9)] == [card.slug for card in client.components()]
        assert {card.kind for card in client.components(admits=139, kind="body")} == {"body"}

    def test_a_search_comes_over_all_pages_with_what_it_tells(self, client: Client) -> None:
        """At 22 stitches to 10 cm a width of 63 to 64 cm is 139 or 140 stitches, of which waffle takes 139."""
        asked = {"kind": "body", "width_cm": "63..64", "gauge": "22x30"}
        found = {each.slug: each for each in client.find(limit=7, **asked)}
        assert found["waffle"].widths == ({"stitches": 139, "width_cm": 63.2},)
        assert client.facets(**asked).counted == len(found)
        assert [each.slug for each in client.find("waffle", kind="body")] == ["waffle"]

    def test_what_is_proposed_is_planned(self, client: Client) -> None:
        """The request of a proposal goes on as it stands."""
        wanted = {"gauge": PLANNED["gauge"][0] | {"in": None}, "size": PLANNED["size"], "limit": 2}
        for each in client.propose(wanted).proposals:
            assert client.plan(each["request"]).counts == each["counts"]

    def test_textures_that_are_alike_are_listed(self, client: Client) -> None:
        """The same texture under other names comes first."""
        found = client.alike("seed-stitch", percent=100)
        assert [item["slug"] for item in found.items if item["same"]] == ["muff-stitch", "seed-stitch-border"]
        assert found.compared > 50

    def test_companions_say_where_they_fit(self, client: Client) -> None:
        """The place comes as sent."""
        found = {each.slug: each for each in client.companions("waffle", count=139, kind="border")}
        assert found["garter-border"].places[0]["place"] == "ends"

    def test_an_object_is_fetched_once_and_is_what_its_hash_says(self, client: Client) -> None:
        """The second call answers from memory."""
        sha256 = client.component("waffle").sha256
        first = client.object(sha256)
        assert hashlib.sha256(first).hexdigest() == sha256
        assert client.object(sha256) is first

    def test_plans_patterns_and_safety_are_answered(self, client: Client) -> None:
        """Each with its own type."""
        assert client.plan(PLANNED).counts["cast_on"] == 153
        assert client.pattern(PLANNED).text == client.pattern_text(PLANNED)
        assert client.pattern_text(PLANNED, "markdown").startswith("# ")
        label = client.label([{"fibre": [{"fibre": "merino", "percent": 100}]}], markets=["EU"])
        assert label.labels[0]["fibres"] == ["100 % wool"]
        assert "R11" in client.safety({"use": "pram"}).not_assessed

    def test_rules_facts_and_changes_are_answered(self, client: Client) -> None:
        """Lists give cards, single ones everything."""
        assert client.size(client.sizes()[0].name).beside_cots
        assert client.grade(PLANNED, [{"named": "pram"}, {"named": "cot"}]).names == ("pram", "cot")
        assert client.regauge(PLANNED, PLANNED["gauge"]).shape["percent"] == 0
        assert client.swatches(PLANNED).swatches[0]["in"] == "garter-border"
        assert client.gauge([{"stitches": 5, "rows": 7, "over_in": 1}]).findings[0].rule == "gauge-window-small"
        assert client.rule(client.rules()[0].slug).bad
        assert client.fact(client.facts()[0].name).source
        assert [change.seq for change in client.changes()][:3] == [1, 2, 3]

    def test_recipes_are_listed_and_fetched(self, client: Client) -> None:
        """A card leads to its recipe."""
        card = next(client.recipes(q="frost"))
        assert client.recipe(card.slug).sha256 == card.sha256
        assert client.recipe_revisions(card.slug)[0].number == 1


class TestWriting:
    """What a contributor does."""

    def test_a_component_is_added_changed_and_listed(self, client: Client) -> None:
        """The answer can be changed and sent back with its tag."""
        kept = client.add_component(RIB | {"slug": "client-rib"})
        changed = client.revise_component({**kept.data, "summary": "Changed."}, kept.etag)
        assert changed.summary == "Changed."
        assert [each.number for each in client.component_revisions("client-rib")] == [1, 2]

    def test_words_are_adopted_once_all_is_said(self, client: Client) -> None:
        """What is missing is asked for; with it the component is kept, its multiple derived."""
        rows = "Client ribs\nRow 1: *K3, p3; rep from * to end.\nRow 2: *K3, p3; rep from * to end.\n"
        said = {"kind": "body", "licence": "CC0-1.0", "author": "anna"}
        with pytest.raises(Incomplete) as asked:
            client.adopt(rows, **said)
        kept = client.adopt(rows, source="common-practice", **said)

        assert [each["pointer"] for each in asked.value.errors] == ["/source"]
        assert asked.value.derived["multiple"] == kept.derived["multiple"] == {"of": 6, "plus": 0, "least": 6}
        assert client.component("client-ribs") == kept

    def test_a_recipe_is_added_and_changed(self, client: Client) -> None:
        """Its parts come pinned."""
        client.add_component(RIB)
        kept = client.add_recipe(BLANKET)
        assert len(kept.parts["body"]["revision"]) == 64
        assert client.revise_recipe({**kept.data, "summary": "Changed."}, kept.etag).summary == "Changed."

    def test_a_stale_change_is_told_the_latest_tag(self, client: Client) -> None:
        """Nothing is written."""
        kept = client.add_component(RIB | {"slug": "stale-rib"})
        with pytest.raises(Stale) as caught:
            client.revise_component({**kept.data, "summary": "Changed."}, '"0"')
        assert caught.value.current == kept.etag


class TestRefusals:
    """One exception for each sort of problem."""

    def test_each_refusal_has_its_own_class(self, client: Client, served: Lent) -> None:
        """With what the problem says."""
        with pytest.raises(NotFound) as missing:
            client.component("no such/thing")
        assert missing.value.hint and missing.value.request_id and not missing.value.retryable
        with pytest.raises(Taken):
            client.add_component(RIB | {"slug": "waffle"})
        with pytest.raises(TokenNeeded):
            Client(served.address).add_component(RIB)
        with pytest.raises(NotAsDescribed) as bad:
            client.safety({"hole": 3})
        assert bad.value.errors[0]["pointer"] == "/hole"

    def test_findings_and_corrections_come_along(self, client: Client) -> None:
        """They are what a program acts on."""
        with pytest.raises(DoesNotProve) as unproved:
            client.add_component(RIB | {"slug": "bad-rib", "examples": [{"stitches": 23, "after": [23, 23]}]})
        assert unproved.value.findings
        with pytest.raises(CannotBePlanned) as impossible:
            client.plan(PLANNED | {"size": {"width_cm": 1, "length_cm": 90}})
        assert impossible.value.findings

    def test_there_is_a_class_for_every_sort(self) -> None:
        """A sort of problem that is added needs its class."""
        assert set(CLASSES) == set(SORTS)


def test_the_package_names_what_it_offers() -> None:
    """The list is sorted and true."""
    assert package.__all__ == sorted(package.__all__)
    assert all(hasattr(package, name) for name in package.__all__)


FIRST_CALL = """
import sys
from counterpane.client import Client, Unreachable
client = Client("http://127.0.0.1:9", sleep=lambda seconds: None)
before = "requests" in sys.modules
try:
    client.rules()
except Unreachable:
    print(before, "requests" in sys.modules)
"""


def test_requests_is_loaded_with_the_first_call() -> None:
    """Neither importing the client nor making one loads it."""
    typed = [sys.executable, "-c", FIRST_CALL]
    done = subprocess.run(typed, env={"PYTHONPATH": str(SERVICE)}, capture_output=True, text=True, check=False)
    assert (done.stdout.split(), done.stderr) == (["False", "True"], "")


class TestYarn:
    """Plans that begin with yarn, and one yarn beside another."""

    def test_the_largest_blanket_of_the_yarn_at_hand(self, client: Client) -> None:
        """The size comes with its whole plan."""
        found = client.largest({**IN_YARN, "have": {"grams": 350}})
        assert (found.cast_on, found.limited) == (found.plan["counts"]["cast_on"], False)

    def test_a_piece_in_the_middle(self, client: Client) -> None:
        """What was not measured is None."""
        found = client.midway({**IN_YARN, "at": {"rows_done": 60, "left_g": 280}})
        assert found.yarn is not None and found.yarn["rows_left"]["sure"] > 0
        assert (found.at["section"], found.again) == ("body", None)

    def test_a_count_that_is_off(self, client: Client) -> None:
        """What it should be, and what leads to what it is."""
        right = client.on_needle(IN_YARN, 47)
        assert right.wrong is None
        found = client.on_needle(IN_YARN, 47, right.row["stitches_after"] + 1)
        assert found.wrong is not None and found.wrong["off"] == 1 and found.wrong["suspects"]

    def test_one_yarn_in_place_of_another(self, client: Client) -> None:
        """The amount is turned over."""
        found = client.substitute({"metres_per_100g": 230}, {"metres_per_100g": 230}, {"grams": 350})
        assert (found.verdict, found.amount) == ("alike", {"metres": 805.0, "grams": 350.0, "balls": None})


class TestProfiles:
    """Lists of wards and charities."""

    def test_a_list_is_added_changed_and_listed(self, client: Client) -> None:
        """The answer can be changed and sent back with its tag."""
        kept = client.add_profile(WARD | {"slug": "client-ward"})
        changed = client.revise_profile({**kept.data, "dated": "2026-11-01"}, kept.etag)
        assert (client.profile("client-ward").dated, changed.items[0]["at_most"]) == ("2026-11-01", 5.5)
        assert [each.number for each in client.profile_revisions("client-ward")] == [1, 2]
        assert "client-ward" in [card.slug for card in client.profiles(q="perfume")]
