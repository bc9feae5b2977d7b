"""A plan in words: what a pattern says beside its rows."""

import re
from dataclasses import replace
from fractions import Fraction

from counterpane.craft.component import Operation, Parameter, Provenance, SlippedEdge
from counterpane.craft.constructions import Plan
from counterpane.craft.findings import Finding
from counterpane.craft.measures import Gauge
from counterpane.craft.pattern import Pattern
from counterpane.craft.pattern.write import default_title, written
from counterpane.craft.stitches import Terms
from counterpane.craft.yarn import Yarn, estimate
from craft.pattern.plans import eyelets, moss, part, vocabulary, waffle


def write(plan: Plan, terms: Terms = "us", **more: object) -> Pattern:
    """Write a plan with nothing known of safety."""
    return written(plan, vocabulary(), terms, "Blanket", safety={}, **more)  # type: ignore[arg-type]


def test_equal_plans_give_equal_patterns() -> None:
    """Nothing of the day or the run is in a pattern."""
    assert write(eyelets()) == write(eyelets())


def test_both_terms_give_the_same_counts() -> None:
    """Only words differ."""
    us, uk = write(eyelets()), write(eyelets(), "uk")
    counts = [[(row.label, row.side, row.after) for part in each.sections for row in part.rows] for each in (us, uk)]
    assert counts[0] == counts[1]
    assert us.sections[1].rows[0].text != uk.sections[1].rows[0].text


def test_sections_number_the_rows_of_the_blanket_without_a_gap() -> None:
    """Each part begins at the row after the last one's end."""
    sections = write(waffle()).sections
    assert [(part.first_row, part.last_row) for part in sections] == [(1, 12), (13, 194), (195, 210)]
    assert write(waffle()).last_row == 210


def test_the_cast_on_says_its_count_and_which_side_row_1_is() -> None:
    """Steps that tell the knitter to turn are not told twice."""
    cast_on = write(waffle()).cast_on
    assert cast_on.line == "Cast on 151 sts."
    assert "That makes row 1 a RS row, with the bumps of the cast-on towards you." in cast_on.notes


def test_a_cast_on_whose_steps_are_silent_says_whether_to_turn() -> None:
    """A knitted cast-on is not turned."""
    knitted = Operation(("Knit into the last stitch.",), turn=False, faces_row_1="no difference")
    plan = waffle()
    request = replace(plan.request, cast_on=part("knitted", "cast-on", "Knitted cast-on", knitted))
    assert write(replace(plan, request=request)).cast_on.notes == ("Do not turn: row 1 is a RS row.",)


def test_what_a_cast_on_does_not_record_is_said_to_be_unknown() -> None:
    """Not known is no default."""
    plan = waffle()
    request = replace(plan.request, cast_on=part("odd", "cast-on", "Odd cast-on"))
    cast_on = write(replace(plan, request=request)).cast_on
    assert "is not recorded" in cast_on.steps[0]
    assert cast_on.notes == ("Whether to turn first is not recorded; row 1 is a RS row.",)


def test_the_bind_off_says_its_count_and_side_in_the_terms() -> None:
    """Sixteen rows of top border bring it to the RS."""
    assert write(waffle()).bind_off.line == "Bind off all 151 stitches on the RS."
    assert write(waffle(), "uk").bind_off.line == "Cast off all 151 stitches on the RS."


def test_a_gauge_that_was_not_given_is_said_to_be_borrowed() -> None:
    """The garter border has its own gauge, which nobody measured."""
    garter, waffled = write(waffle(), "uk").gauges
    assert (garter.stated, waffled.stated) == (False, True)
    assert garter.text.startswith("not known, so the tension of waffle is borrowed")


def test_each_texture_keeps_the_gauge_given_for_it() -> None:
    """A border with a gauge of its own borrows nothing."""
    plan = waffle()
    own = Gauge(Fraction(41, 2), Fraction(42), texture="garter-border")
    request = replace(plan.request, gauges=(*plan.request.gauges, own))
    garter = write(replace(plan, request=request)).gauges[0]
    assert garter.stated
    assert garter.text.startswith("20.5 sts and 42 rows over 10 cm")


def test_yarn_and_needles_that_nobody_stated_are_not_made_up() -> None:
    """A pattern without yarn says so."""
    yarn, amount, needles, *_ = write(waffle()).materials
    assert yarn.text.startswith("not stated")
    assert amount.text.startswith("not known: weigh the swatch")
    assert needles.text.startswith("size not known (mm and US): take the size that gives the gauge")


def test_a_stated_yarn_is_printed() -> None:
    """The designer's words stand, with what the blanket takes of it."""
    wool = Yarn("an invented wool", "double knitting", tex=Fraction(400), ball_g=Fraction(50), ball_m=Fraction(125))
    yarn, ball, amount, joins, ends, *_ = write(waffle(), yarn=estimate(waffle(), [wool], vocabulary())).materials
    assert yarn.text == "an invented wool, double knitting, 250 m (273 yd) to 100 g, 400 tex."
    assert ball.text == "50 g, 125 m (137 yd)."
    assert re.fullmatch(r"\d+ balls, all of one dye lot. The blanket takes .* g, by the gauge.", amount.text)
    assert joins.text.startswith("a ball runs out about rows ")
    assert ends.name == "Ends to weave in"


def test_markers_are_asked_for_where_edges_are_worked_with_the_body() -> None:
    """Four border stitches and one selvedge stitch are five."""
    names = {entry.name: entry.text for entry in write(eyelets()).materials}
    assert "the 5 edge stitches" in names["2 stitch markers"]
    assert "2 stitch markers" not in {entry.name for entry in write(moss()).materials}


def test_a_blanket_alike_on_both_sides_asks_for_a_mark() -> None:
    """Nobody can tell the right side of it otherwise."""
    plan = moss()
    alike = part("seed-stitch", "body", "Seed stitch (UK moss stitch)", reversible="yes")
    request = replace(plan.request, bottom=alike, body=(alike,), top=alike)
    assert "Removable marker" in {entry.name for entry in write(replace(plan, request=request)).materials}
    assert "Removable marker" not in {entry.name for entry in write(waffle()).materials}


def test_a_slipped_edge_says_how_and_where_the_yarn_is() -> None:
    """Slipped alone says nothing: purlwise, the yarn in front, and back between the needles."""
    plan = eyelets()
    edge = part("edge", "selvedge", "Slipped selvedge", slipped_edge=SlippedEdge("pwise", "front"))
    notes = write(replace(plan, request=replace(plan.request, selvedge=edge))).notes
    assert any("purlwise with the yarn in front" in note and "between the needles" in note for note in notes)


def test_what_the_plan_has_to_say_stands_in_the_notes() -> None:
    """A warning that a designer has seen is still printed for the knitter, in the knitter's terms."""
    finding = Finding("frill", "warning", "The border's gauge is not known.", "Make a swatch of it.")
    notes = write(replace(waffle(), findings=(finding,)), "uk").notes
    assert "The border's tension is not known. Make a swatch of it." in notes


def test_a_next_step_about_the_request_is_left_to_the_designer() -> None:
    """The knitter is told what is not known, and not which field to fill."""
    finding = Finding("gauge-borrowed", "warning", "No gauge is known.", "Give a list.", pointer="/gauge")
    notes = write(replace(waffle(), findings=(finding,))).notes
    assert "No gauge is known." in notes


def test_each_source_is_credited_with_its_licence() -> None:
    """Components of one source share a line; another source has its own."""
    plan = waffle()
    body = part("waffle", "body", "Waffle", parameters=(Parameter("rows", 4, 4),))
    lambert = Provenance("lambert-1843", "CC0-1.0", "somebody", where="p. 12", year=1843)
    body = replace(body, component=replace(body.component, provenance=lambert))
    pattern = write(replace(plan, request=replace(plan.request, body=(body,))), sources={"lambert-1843": "My Book"})
    assert [credit.name for credit in pattern.credits][1] == "Waffle"
    assert pattern.credits[1].text == "My Book, 1843, p. 12; wording by somebody"
    assert pattern.credits[0].text.startswith("common practice, no source")


def test_a_blanket_without_a_title_is_named_after_its_textures() -> None:
    """Both names of the moss family stand in a title too."""
    assert default_title(waffle(), "us") == "Blanket in waffle"
    assert default_title(moss(), "uk") == "Blanket in moss stitch (US seed stitch)"


def test_care_is_not_known_without_a_yarn() -> None:
    """The label decides."""
    assert write(waffle()).care.startswith("Not known: follow the yarn's label")


def test_a_sampler_is_told_in_the_words_of_the_rows() -> None:
    """A smaller piece of the same rows needs no row of its own."""
    plan = waffle()
    small = tuple(replace(part, before=22, after=22, rows=4) for part in plan.sections)
    told = write(plan, small=replace(plan, counts=replace(plan.counts, cast_on=22), sections=small)).sampler
    assert told[0].startswith(
        "Try it on 22 stitches first: they and 12 rows show every change of the blanket: bottom border to body"
    )
    assert "Body: 4 rows, in the words below." in told


def test_a_sampler_with_other_rows_gives_them() -> None:
    """Where the words differ at the smaller count they are written out."""
    plan = waffle()
    small = tuple(replace(part, before=20, after=20, rows=2, cycle=plan.sections[0].cycle) for part in plan.sections)
    told = write(plan, small=replace(plan, counts=replace(plan.counts, cast_on=20), sections=small)).sampler
    assert told[2] == "Body: 2 rows: RS, knit; WS, knit."
