"""Plans as use cases: from JSON values to JSON values, proved on the way."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import pytest

from counterpane.craft.component import Component
from counterpane.craft.constructions import CannotBePlanned, Plan
from counterpane.craft.stitches import Vocabulary
from counterpane.library.errors import NotFound
from counterpane.library.plans.plans import (
    BadInput,
    UnknownPart,
    make_plan,
    plan_json,
    plan_request_of,
    proved,
    sampler_of,
    sampler_rows,
)
from counterpane.library.texts.checks import check_text

Starters = Mapping[str, Component]
WAFFLE: Mapping[str, Any] = {
    "construction": "one-piece",
    "parts": {"body": "waffle", "selvedge": "slipped-selvedge"},
    "gauge": {"stitches": 22, "rows": 30, "over_cm": 10, "in": None},
    "size": {"width_cm": 70, "length_cm": 90},
}


def made(content: Mapping[str, Any], starters: Starters, vocabulary: Vocabulary) -> Plan:
    """Make a plan of JSON values."""

    def find(slug: str) -> Component:
        if slug not in starters:
            raise NotFound(f"There is no component {slug!r}.")
        return starters[slug]

    return make_plan(plan_request_of(content, find, vocabulary), vocabulary)


def with_parts(**parts: object) -> dict[str, Any]:
    """Return the waffle request with other parts."""
    return {**WAFFLE, "parts": {**WAFFLE["parts"], **parts}}


def test_the_answer_has_the_fields_of_the_contract(starters: Starters, vocabulary: Vocabulary) -> None:
    """Counts, sizes and sections come out as the worked example says."""
    answer = plan_json(made(WAFFLE, starters, vocabulary))
    assert answer["counts"] == {"cast_on": 153, "sides": 6, "selvedge": 1, "body": 139, "repeats": 46}
    assert answer["nearest"][0] == {"cast_on": 153, "width_cm": 69.5, "error_cm": -0.5}
    bottom = answer["sections"][0]
    assert (bottom["name"], bottom["rows"], bottom["first_row"], bottom["last_row"]) == ("bottom", 12, 1, 12)
    assert (bottom["before"], bottom["after"], bottom["stitches"], bottom["width_cm"]) == (153, 153, 1836, 69.5)
    assert (bottom["first_row_side"], bottom["last_row_side"], bottom["ridges"]) == ("RS", "WS", 6)
    assert answer["finished"]["tolerance_cm"] == {"width": 1.2, "length": 1.4}
    assert json.loads(json.dumps(answer)) == answer


def test_every_part_that_is_used_is_named(starters: Starters, vocabulary: Vocabulary) -> None:
    """The usual parts stand in the recipe with their rows and stitches."""
    parts = plan_json(made(WAFFLE, starters, vocabulary))["recipe"]["parts"]
    garter = "garter-border"
    assert parts["cast_on"] == {"component": "long-tail"}
    assert parts["bottom"] == parts["top"] == {"component": garter, "rows": 12}
    assert (parts["sides"], parts["bind_off"]) == (
        {"component": garter, "stitches": 6},
        {"component": "plain-bind-off"},
    )


def test_a_recipe_makes_the_same_plan_again(starters: Starters, vocabulary: Vocabulary) -> None:
    """What the answer repeats can be sent back."""
    plan = made(with_parts(sides={"text": "Rows 1 and 2: k5."}), starters, vocabulary)
    recipe = plan_json(plan)["recipe"]
    again = made({**WAFFLE, **recipe}, starters, vocabulary)
    assert (again.counts, again.stitches_total) == (plan.counts, plan.stitches_total)


def test_bands_are_answered_as_lists(starters: Starters, vocabulary: Vocabulary) -> None:
    """Body and repeats have one entry for each band."""
    counts = plan_json(made(with_parts(body=["waffle", "basket-weave"]), starters, vocabulary))["counts"]
    assert (counts["body"], counts["repeats"]) == ([148, 148], [49, 18])


def test_numbers_are_read_by_their_decimal_text(starters: Starters, vocabulary: Vocabulary) -> None:
    """A width as text is the same width."""
    text = {**WAFFLE, "size": {"width_cm": "70.0", "length_in": "35.433070866141732283464566929"}}
    assert made(text, starters, vocabulary).counts == made(WAFFLE, starters, vocabulary).counts


def test_a_gauge_counts_for_every_part_of_the_same_rows(starters: Starters, vocabulary: Vocabulary) -> None:
    """A gauge knitted in garter is the garter border's own, and a body in words has it too."""
    gauge = {"stitches": 20, "rows": 40, "over_cm": 10, "in": "garter"}
    body = {"text": "Row 1: knit.\nRow 2: knit."}
    plan = made({**with_parts(body=body, selvedge=None), "gauge": gauge}, starters, vocabulary)
    assert [finding.rule for finding in plan.findings] == []


def test_what_is_borrowed_is_said(starters: Starters, vocabulary: Vocabulary) -> None:
    """The note names the parts without a gauge of their own and the one that is used."""
    notes = {finding.rule: finding.message for finding in made(WAFFLE, starters, vocabulary).findings}
    assert "bottom, sides, top" in notes["gauge-borrowed"]
    assert "22 stitches and 30 rows over 10 cm" in notes["gauge-borrowed"]
    assert "gauge-texture-unstated" in notes


@pytest.mark.parametrize(
    ("parts", "rule", "pointer"),
    [
        ({"body": {"text": "Row 1: k1, zz3."}}, "unknown-term", "/parts/body/text"),
        (
            {"body": {"text": "Row 1: *k2, p2; rep from * to last 3 sts, k2."}},
            "row-leaves-stitches",
            "/parts/body/text",
        ),
        ({"body": {"text": "Cast on 20 sts.\nRow 1: knit."}}, "cast-on-inside-part", "/parts/body"),
        ({"bottom": {"text": "Row 1: knit."}}, "part-needs-rows", "/parts/bottom/rows"),
        ({"sides": {"text": "Row 1: knit."}}, "part-needs-stitches", "/parts/sides/stitches"),
        ({"selvedge": {"text": "Row 1: sl 1, k to end."}}, "part-needs-stitches", "/parts/selvedge/stitches"),
        ({"top": "plain-bind-off"}, "part-of-wrong-kind", "/parts/top"),
    ],
)
def test_a_part_that_does_not_do_is_refused_with_its_place(
    parts: dict[str, object], rule: str, pointer: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """The first finding names the rule and points to the part."""
    with pytest.raises(CannotBePlanned) as refused:
        made(with_parts(**parts), starters, vocabulary)
    errors = [finding for finding in refused.value.findings if finding.severity == "error"]
    assert (errors[0].rule, errors[0].pointer) == (rule, pointer)


def test_parts_that_share_no_count_come_with_the_smallest_changes(starters: Starters, vocabulary: Vocabulary) -> None:
    """One more border stitch on each side lets a rib of 4n + 2 stand below a body of 4n."""
    bottom = {"text": "Rows 1 and 2: *k2, p2; rep from * to last 2 sts, k2.", "rows": 12}
    body = {"text": "Rows 1 and 2: *k2, p2; rep from * to end."}
    content = with_parts(bottom=bottom, body=body, selvedge=None)
    with pytest.raises(CannotBePlanned) as refused:
        made(content, starters, vocabulary)
    finding = refused.value.findings[0]
    assert finding.rule == "parts-share-no-count"
    assert (finding.changes[0].pointer, finding.changes[0].value) == ("/parts/sides/stitches", 7)
    assert "Counted in 4s, the first leaves 2 over and the second 0." in finding.message
    content["parts"]["sides"] = {"component": "garter-border", "stitches": 7}
    assert made(content, starters, vocabulary).counts.sides == 7


@pytest.mark.parametrize(
    ("change", "pointer"),
    [
        ({"size": {"width_cm": 0, "length_cm": 90}}, "/size/width_cm"),
        ({"size": {"width_cm": 70, "length_cm": -1}}, "/size/length_cm"),
        ({"size": {"width_cm": 70}}, "/size/length_cm"),
        ({"gauge": {"stitches": 0, "rows": 30, "over_cm": 10}}, "/gauge/stitches"),
        ({"gauge": {"stitches": "many", "rows": 30, "over_cm": 10}}, "/gauge/stitches"),
        ({"gauge": []}, "/gauge"),
        ({"parts": {}}, "/parts/body"),
        ({"parts": {"body": []}}, "/parts/body"),
        ({"parts": {"body": {"component": "garter", "rows": "1.5"}}}, "/parts/body/rows"),
        ({"parts": {"body": {"component": "garter", "colour": "red"}}}, "/parts/body/colour"),
        ({"parts": {"body": {"component": "garter", "text": "Row 1: knit."}}}, "/parts/body"),
        ({"parts": {"body": "garter", "cast_on": {"text": "Row 1: knit."}}}, "/parts/cast_on"),
        ({"construction": "hexagons"}, "/construction"),
    ],
)
def test_a_value_that_cannot_be_used_is_refused_with_its_place(
    change: dict[str, object], pointer: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """The pointer leads to the field, and the hint says what to write."""
    with pytest.raises(BadInput) as refused:
        made({**WAFFLE, **change}, starters, vocabulary)
    assert refused.value.pointer == pointer
    assert refused.value.hint


def test_a_size_asked_for_in_inches_is_corrected_in_inches(starters: Starters, vocabulary: Vocabulary) -> None:
    """Borders of 24 rows and one repeat of four are 9.3 cm, which is under 4 in."""
    short = {**WAFFLE, "size": {"width_in": 27, "length_in": 2}}
    with pytest.raises(CannotBePlanned) as refused:
        made(short, starters, vocabulary)
    change = refused.value.findings[0].changes[0]
    assert (change.pointer, change.value) == ("/size/length_in", 4)
    assert made({**WAFFLE, "size": {"width_in": 27, "length_in": 4}}, starters, vocabulary).counts.cast_on == 150


def test_each_of_several_faults_comes_with_its_own_change(starters: Starters, vocabulary: Vocabulary) -> None:
    """A border without rows and a side without stitches are mended one by one."""
    words = {"text": "Rows 1 and 2: knit."}
    with pytest.raises(CannotBePlanned) as refused:
        made(with_parts(bottom=words, sides=words), starters, vocabulary)
    changes = {change.pointer: change.value for each in refused.value.findings for change in each.changes[:1]}
    assert set(changes) == {"/parts/bottom/rows", "/parts/sides/stitches"}
    bottom, sides = {**words, "rows": 12}, {**words, "stitches": 6}
    assert made(with_parts(bottom=bottom, sides=sides), starters, vocabulary).counts.sides == 6


def test_an_end_border_that_shares_no_count_is_changed_for_one_that_does(
    starters: Starters, vocabulary: Vocabulary
) -> None:
    """A top of odd counts over a base of even ones can be changed for the garter border of the sides."""
    with pytest.raises(CannotBePlanned) as refused:
        made(with_parts(bottom="rib-two-by-two-border", top="broken-rib-border"), starters, vocabulary)
    values = {(change.pointer, change.value) for each in refused.value.findings for change in each.changes}
    assert ("/parts/top", "garter-border") in values


def test_an_unknown_component_is_refused_with_its_place(starters: Starters, vocabulary: Vocabulary) -> None:
    """The pointer leads to the slug."""
    with pytest.raises(UnknownPart) as refused:
        made(with_parts(sides={"component": "velvet-border"}), starters, vocabulary)
    assert refused.value.pointer == "/parts/sides/component"


@pytest.mark.parametrize("change", ["rows", "stitches", "after"])
def test_a_plan_whose_rows_do_not_prove_never_comes_out(
    change: str, starters: Starters, vocabulary: Vocabulary
) -> None:
    """A section that claims other rows or stitches than its words give is an internal error."""
    plan = made(WAFFLE, starters, vocabulary)
    body = plan.sections[1]
    wrong = replace(body, **{change: getattr(body, change) + 1})
    with pytest.raises(CannotBePlanned) as refused:
        proved(replace(plan, sections=(plan.sections[0], wrong, plan.sections[2])), vocabulary)
    assert refused.value.findings[0].rule == "plan-not-proved"


@pytest.mark.parametrize("terms", ["us", "uk"])
def test_a_sampler_in_words_checks_without_a_finding(terms: Any, starters: Starters, vocabulary: Vocabulary) -> None:
    """Its rows are read back section by section over the count it casts on."""
    plan = made(WAFFLE, starters, vocabulary)
    text = "\n".join(sampler_rows(plan, vocabulary, terms))
    answer = check_text(text, vocabulary, terms=terms)
    assert (answer["cast_on"], answer["findings"]) == (18, [])
    assert [row["after"] for row in answer["rows"]] == [18] * 8
    assert plan_json(plan, sampler=sampler_of(plan, vocabulary))["sampler"]["rows"] == 8
