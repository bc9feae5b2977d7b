"""What a plan carries of safety: cautions, its parts' notes, and estimates that never make a pass."""

from fractions import Fraction
from typing import Any

import pytest

from counterpane.craft.component import Component, Kind, Measure, Operation, Provenance, SafetyNotes, SlippedEdge
from counterpane.craft.component.strands import PASSED_OVER
from counterpane.craft.constructions import Counts, Give, Part, Plan, PlanRequest, Section
from counterpane.craft.measures import Gauge
from counterpane.craft.openings import OPENING_STITCHES
from counterpane.craft.rows.tree import BindOff, CastOn, Group, Hold, Marker, Node, OpenRepeat, Row, Turn, Work
from counterpane.library.patterns.cautions import CAUTIONS
from counterpane.library.plans.plan_fabric import PICKED_UP
from counterpane.library.safety.safety import safety_of_plan
from counterpane.library.values import BadInput
from counterpane.seeding import load_vocabulary

PLAIN = SafetyNotes("none", "none", "none", "none", "not known")
KNIT: tuple[Node, ...] = (OpenRepeat((Work("k"),), plain=True),)
EYELETS: tuple[Node, ...] = (Work("k"), OpenRepeat((Work("yo"), Work("k2tog")), stop=1), Work("k"))


def component(slug: str, kind: Kind, notes: SafetyNotes = PLAIN, slipped: SlippedEdge | None = None) -> Component:
    """Make a component that only has what a safety record looks at."""
    steps = Operation(("Work it.",)) if kind in ("cast-on", "bind-off") else None
    source = Provenance("common-practice", "CC0-1.0", "project")
    return Component(slug, kind, slug, "", source, notes, operation=steps, slipped_edge=slipped)


def plan_of(*rows: tuple[Node, ...], gauge: str = "22", cast_on: SafetyNotes = PLAIN, edge: Part | None = None) -> Plan:
    """Make a plan of one section whose rows are these."""
    swatch = Gauge(Fraction(gauge), Fraction(29))
    worked = tuple(Row(str(number), parts) for number, parts in enumerate(rows, 1))
    size = Fraction(45), Fraction(60)
    section = Section("body", "t", worked, len(rows), 1, 100, 100, "RS", "WS", 100, *size, None)
    border, body = Part(component("border", "border")), Part(component("t", "body"))
    ends = Part(component("cast", "cast-on", cast_on)), Part(component("bind", "bind-off"))
    request = PlanRequest(ends[0], border, None, edge, (body,), border, ends[1], (swatch,), *size)
    counts, give = Counts(100, 0, 0, (100,), (100,)), Give(Fraction(1), (Fraction(44), Fraction(46)))
    return Plan(request, counts, (section,), *size, give, give, (), 100 * len(rows))


def spoken(answer: dict[str, Any]) -> dict[str, str]:
    """Return the severities by reference."""
    return {each["reference"]: each["severity"] for each in answer["findings"]}


def test_a_plan_for_nobody_in_particular_is_not_assessed() -> None:
    """With nothing said of the child, only what is always printed speaks and no rule passes."""
    answer = safety_of_plan(plan_of(KNIT), None)
    assert spoken(answer) == {"R02": "note", "R43": "note", "R44": "note"}
    assert answer["assessed"] == answer["not_applicable"] == []


def test_a_plan_carries_the_cautions_and_the_shape_of_an_assessment() -> None:
    """Every plan carries the standing cautions beside the members of an assessment."""
    answer = safety_of_plan(plan_of(KNIT), {"age_months": [0, 12], "use": "pram", "markets": ["UK"]})
    assert answer["cautions"] == list(CAUTIONS)
    assert {"findings", "assessed", "not_assessed", "not_applicable"} <= set(answer)
    assert {"R01", "R41"} <= set(spoken(answer))


def test_each_parts_notes_are_repeated() -> None:
    """What a component records is said of its part, a measure with its unit."""
    notes = SafetyNotes(openings=Measure("1", "yarn-over"), ties="none")
    parts = safety_of_plan(plan_of(KNIT, cast_on=notes), None)["parts"]
    assert [each["part"] for each in parts] == ["cast_on", "bottom", "body", "top", "bind_off"]
    assert parts[0]["component"] == "cast"
    assert parts[0]["notes"]["openings"] == {"value": "1", "unit": "yarn-over"}
    assert parts[0]["notes"]["ties"] == "none" and parts[0]["notes"]["loose_yarn"] == "not known"


def test_yarn_overs_are_estimated_and_leave_openings_not_assessed() -> None:
    """Openings of yarn-overs are shown as an estimate, the rules stay not assessed and a rod is asked for."""
    answer = safety_of_plan(plan_of(EYELETS, KNIT), {"age_band": "3-12m", "use": "lap"})
    (estimate,) = answer["estimates"]["openings"]
    assert (estimate["stitches"], estimate["low_mm"], estimate["high_mm"]) == (1, None, 7.4)
    assert "not known" in estimate["message"] and "rod" in estimate["message"]
    assert {"R11", "R12"} <= set(answer["not_assessed"])
    assert spoken(answer)["R45"] == "warn"


def test_an_estimate_below_the_limit_is_no_pass() -> None:
    """In fine yarn the estimate lies below 5 mm, and the rules on openings are still not assessed."""
    answer = safety_of_plan(plan_of(EYELETS, KNIT, gauge="36"), {"age_band": "3-12m", "use": "lap"})
    assert "below" in answer["estimates"]["openings"][0]["message"]
    assert {"R11", "R12"} <= set(answer["not_assessed"])


def test_openwork_stops_for_a_preterm_baby() -> None:
    """Yarn-overs in the rows are openings made on purpose."""
    assert spoken(safety_of_plan(plan_of(EYELETS), {"age_band": "preterm"}))["R14"] == "stop"
    assert "R14" not in spoken(safety_of_plan(plan_of(KNIT), {"age_band": "preterm"}))


def test_a_cast_on_of_unknown_openings_leaves_openwork_not_known() -> None:
    """Plain rows under a cast-on that says nothing of openings are not known to be closed."""
    plan = plan_of(KNIT, cast_on=SafetyNotes())
    assert "R14" in safety_of_plan(plan, {"age_band": "preterm", "hole_mm": 3})["not_assessed"]
    assert "R14" in safety_of_plan(plan_of(KNIT), {"age_band": "preterm", "hole_mm": 3})["assessed"]


@pytest.mark.parametrize(
    ("slipped", "said", "span"), [(2, None, (9.1, 13.6)), (3, "warn", (13.6, 18.2)), (6, "stop", (27.3, 31.8))]
)
def test_a_strand_speaks_by_its_low_end_only(slipped: int, said: str | None, span: tuple[float, float]) -> None:
    """A strand that is too long even at the low end warns or stops; a shorter one is never a pass."""
    answer = safety_of_plan(plan_of((Work("k"), Work("sl", slipped, ("wyif",)), Work("k"))), {"age_band": "0-3m"})
    (estimate,) = answer["estimates"]["strands"]
    assert (estimate["low_mm"], estimate["high_mm"]) == span
    assert spoken(answer).get("R15") == said
    assert ("R15" in answer["not_assessed"]) == (said != "stop")


@pytest.mark.parametrize(("slipped", "stitches"), [(1, []), (3, [2])])
def test_a_slipped_first_stitch_has_no_strand(slipped: int, stitches: list[int]) -> None:
    """The yarn waits beside the first stitch of a row, so slipping it leaves no strand past it."""
    strands = safety_of_plan(plan_of((Work("sl", slipped), *KNIT)), None)["estimates"]["strands"]
    assert [each["stitches"] for each in strands] == stitches


def test_a_stitch_slipped_to_be_passed_over_leaves_no_strand() -> None:
    """A plan counts as its parts do: in a double decrease of lace no yarn lies past the slipped stitch."""
    plan = plan_of((Work("k"), Work("yo"), Work("sl"), Work("k2tog"), Work("psso"), Work("yo"), Work("k")))
    assert safety_of_plan(plan, None)["estimates"]["strands"] == []


def test_a_measured_float_beats_the_estimate() -> None:
    """Where a float was measured the estimate does not speak."""
    plan = plan_of((Work("k"), Work("sl", 6), Work("k")))
    assert "R15" in safety_of_plan(plan, {"age_band": "0-3m", "float_mm": 9})["assessed"]


GAPS: tuple[Node, ...] = (Turn(), BindOff(3), CastOn(3), Work("pick up and knit", 4))
NESTED = (Group((Work("k"), Turn()), 2), OpenRepeat((Work("k"),), last=(Turn(),)))


@pytest.mark.parametrize("node", [*GAPS, *NESTED])
def test_gaps_in_the_rows_ask_for_a_rod(node: Node) -> None:
    """Turns, stitches bound off or cast on within a row, and picked-up stitches may open."""
    answer = safety_of_plan(plan_of((Work("k"), node, Work("k"))), {"age_band": "12-24m"})
    assert spoken(answer)["R45"] == "warn"


def test_markers_and_held_stitches_leave_no_gap() -> None:
    """A marker and a cable needle open nothing."""
    answer = safety_of_plan(plan_of((Marker("place"), Hold(2), Work("k", 4))), {"age_band": "12-24m"})
    assert "R45" not in spoken(answer)


def test_a_slipped_edge_asks_for_a_rod() -> None:
    """A chain of slipped stitches makes loops at the edge."""
    edge = Part(component("chain", "selvedge", slipped=SlippedEdge("pwise", "front")))
    assert spoken(safety_of_plan(plan_of(KNIT, edge=edge), {"age_band": "12-24m"}))["R45"] == "warn"


def test_a_coarse_gauge_asks_for_a_rod() -> None:
    """At 12 stitches to 10 cm plain fabric is to be measured too."""
    assert spoken(safety_of_plan(plan_of(KNIT, gauge="12"), {"age_band": "12-24m"}))["R45"] == "warn"
    assert "R45" not in spoken(safety_of_plan(plan_of(KNIT), {"age_band": "12-24m"}))


def test_bad_words_about_the_child_point_into_the_request() -> None:
    """A refusal points at the place in the plan request."""
    with pytest.raises(BadInput) as refused:
        safety_of_plan(plan_of(KNIT), {"use": "prams"})
    assert refused.value.pointer == "/for/use"


def test_the_stitches_sought_are_those_of_the_vocabulary() -> None:
    """The stitches that leave openings, pass others over or are picked up are all in the vocabulary, and no others."""
    stitches = load_vocabulary().stitches
    assert {key for key, stitch in stitches.items() if stitch.opens} == OPENING_STITCHES
    assert {key: -stitch.makes for key, stitch in stitches.items() if stitch.makes < 0} == PASSED_OVER
    assert {key for key in stitches if key.startswith("pick up")} == PICKED_UP
