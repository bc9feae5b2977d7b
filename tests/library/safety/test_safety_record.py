"""What stands in a plan's safety record beside its findings."""

from typing import Any

import pytest

from counterpane.craft.component import Component
from counterpane.craft.rules.safety import LISTED
from counterpane.craft.stitches import Vocabulary
from counterpane.library.plans.plans import make_plan, plan_request_of
from counterpane.library.safety.conflicts import CONFLICTS, conflicts_json
from counterpane.library.safety.safety import safety_of_plan
from counterpane.library.safety.safety_record import HOME_CHECK
from counterpane.library.yarn.yarns import yarn_of_plan
from counterpane.seeding import load_components, load_vocabulary

VOCABULARY: Vocabulary = load_vocabulary()
STARTERS: dict[str, Component] = {each.slug: each for each in load_components()}
WOOL = {"fibre": [{"fibre": "wool", "percent": 100}], "metres_per_100g": 200}
CHILD = {"age_months": [0, 12], "use": "pram", "markets": ["UK"]}


def record(for_: Any = None, yarn: Any = None, stitches: int = 22, body: str = "garter") -> dict[str, Any]:
    """Return the safety record of a plain blanket."""
    content = {
        "parts": {"body": body},
        "gauge": {"stitches": stitches, "rows": 2 * stitches, "over_cm": 10},
        "size": {"width_cm": 70, "length_cm": 90},
    }
    plan = make_plan(plan_request_of(content, STARTERS.__getitem__, VOCABULARY), VOCABULARY)
    return safety_of_plan(plan, for_, yarn_of_plan(plan, yarn, VOCABULARY))


def test_a_record_says_for_whom_it_is_read() -> None:
    """By age band, use, markets and advice, each null where nobody said."""
    assert record(CHILD)["read_for"] == {"age_band": "0-3m", "use": "pram", "markets": ["UK"], "advice": ["UK"]}
    assert set(record()["read_for"].values()) == {None}


def test_every_rule_that_is_not_assessed_says_what_it_asks_for() -> None:
    """No rule is left open without the inputs that would close it."""
    for told in (record(), record(CHILD), record(CHILD, WOOL)):
        assert list(told["asked_for"]) == told["not_assessed"]
        assert all(told["asked_for"].values())


def test_what_is_asked_for_closes_the_rule() -> None:
    """Answering what a rule asks for takes it out of what is not assessed."""
    before = record(CHILD)
    answers = {"layers": 1, "hole_mm": 3, "tail_mm": 0, "loop_mm": 0, "halo": False, "attachments": []}
    closed = {reference for reference, asked in before["asked_for"].items() if set(asked) <= set(answers)}
    assert closed
    assert not closed & set(record({**CHILD, **answers})["not_assessed"])


def test_a_flat_plan_has_no_filling_weight_pocket_or_sleeve() -> None:
    """What the recipe has not is told from it, once a child is spoken of."""
    told = record(CHILD)
    assert {"filled", "weighted", "enclosed_part", "features"} <= set(told["from_the_plan"])
    assert "R03" in told["assessed"] and "R16" in told["not_applicable"]
    assert {"R03", "R16"} <= set(record()["not_assessed"])


def test_what_is_said_of_the_child_beats_what_a_flat_plan_has_not() -> None:
    """A weight that the designer declares is not taken back by the recipe."""
    assert "weight-added-for-a-baby" in [each["rule"] for each in record({**CHILD, "weighted": True})["findings"]]


def test_the_fibres_of_the_yarn_are_looked_at() -> None:
    """A yarn of wool brings what belongs to wool; without a yarn nothing of it is known."""
    assert "R47" in [each["reference"] for each in record(CHILD, WOOL)["findings"]]
    assert "R47" in record(CHILD)["not_assessed"]


def test_two_yarns_that_differ_have_fibres_and_no_shares() -> None:
    """Shares over two yarns would be an estimate, so the rules on shares stay open."""
    other = {"colour": "B", "parts": ["top"], "fibre": [{"fibre": "acrylic", "percent": 100}], "metres_per_100g": 200}
    told = record(CHILD, [{**WOOL, "colour": "A"}, other])
    assert {"R32", "R38"} <= set(told["not_assessed"])
    assert "fibres" in told["from_the_plan"]


@pytest.mark.parametrize(("metres", "said"), [(400, None), (200, "note"), (120, "warn")])
def test_an_estimated_mass_speaks_by_its_low_end_and_clears_nothing(metres: int, said: str | None) -> None:
    """R07 speaks where even the low end is not lightweight, and is never assessed by an estimate."""
    told = record(CHILD, {**WOOL, "metres_per_100g": metres})
    (mass,) = told["estimates"]["mass"]
    assert mass["low_gsm"] <= mass["likely_gsm"] <= mass["high_gsm"]
    assert {each["reference"]: each["severity"] for each in told["findings"]}.get("R07") == said
    assert "R07" not in told["assessed"] and "R31" in told["not_assessed"]


def test_a_mass_that_was_weighed_beats_the_estimate() -> None:
    """Once weighed, the rule on mass is assessed."""
    assert "R07" in record({**CHILD, "mass_g": 200}, {**WOOL, "metres_per_100g": 120})["assessed"]


def test_a_measurement_at_another_gauge_counts_for_nothing() -> None:
    """It is of another fabric; it stays in the record and says so."""
    hole = {"what": "hole_mm", "value": 4, "by": "M. Tester", "on": "2026-11-20"}
    same, other = ({**hole, "gauge": {"stitches": count, "rows": 2 * count}} for count in (22, 20))
    assert "R11" in record({**CHILD, "measured": [same]})["assessed"]
    told = record({**CHILD, "measured": [other]})
    assert "R11" in told["not_assessed"]
    assert [each["counts"] for each in told["measured"]] == [False]


def test_the_same_gauge_over_another_length_is_the_same() -> None:
    """11 stitches over 5 cm are 22 over 10."""
    gauge = {"stitches": 11, "rows": 22, "over_cm": 5}
    hole = {"what": "hole_mm", "value": 4, "by": "M. Tester", "on": "2026-11-20", "gauge": gauge}
    assert record({**CHILD, "measured": [hole]})["measured"][0]["counts"] is True


def test_every_source_of_a_finding_is_listed_with_its_rules() -> None:
    """The sources name each rule that spoke, and the edition says when they were read."""
    told = record({**CHILD, "hole_mm": 6})
    listed = {rule for each in told["sources"] for rule in each["rules"]}
    assert listed == {each["reference"] for each in told["findings"]}
    assert "2026" in told["edition"]


def test_the_record_says_what_a_check_at_home_cannot_do() -> None:
    """Published tests use set forces, which a check at home does not repeat."""
    assert record()["home_check"] == list(HOME_CHECK)
    assert "cannot" in HOME_CHECK[-1] and "25 N" in HOME_CHECK[-1]


def test_conflicts_show_every_side_with_its_source() -> None:
    """Six conflicts, none of them with one side alone, and all of listed rules."""
    assert [each.reference for each in CONFLICTS] == ["K1", "K2", "K3", "K4", "K5", "K6"]
    assert all(len(each.statements) > 1 for each in CONFLICTS)
    assert all(side.who and side.says and side.source for each in CONFLICTS for side in each.statements)
    assert {rule for each in CONFLICTS for rule in each.rules} <= set(LISTED)


def test_a_conflict_is_told_where_one_of_its_rules_is_concerned() -> None:
    """A record carries the conflicts that touch it and no others."""
    assert [each["reference"] for each in conflicts_json(["R05"])] == ["K4"]
    assert "K4" not in [each["reference"] for each in record(CHILD)["conflicts"]]
    assert "K1" in [each["reference"] for each in record({**CHILD, "use": "sleep"})["conflicts"]]


def test_a_label_alone_says_nothing_of_a_child() -> None:
    """What the yarn tells of fibres and washing leaves open what depends on whom the piece is for."""
    told = record({"fibres": [{"name": "cotton", "pct": 100}]})
    assert {"R03", "R16", "R40"} <= set(told["not_assessed"])
