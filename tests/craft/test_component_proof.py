"""What keeps a component out: rows, examples, parameters and safety notes that do not hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import pytest

from counterpane.craft.component import Component, Example, Measure, Operation, Parameter, Problem, SafetyNotes, prove
from counterpane.craft.stitches import Vocabulary
from craft.textures import RIB, body


def only(problems: tuple[Problem, ...]) -> Problem:
    """Return the one problem there is."""
    (problem,) = problems
    return problem


def test_the_starters_prove(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """Every starter goes through the proof without a problem."""
    assert {slug: prove(component, vocabulary) for slug, component in starters.items()} == dict.fromkeys(starters, ())


@pytest.mark.parametrize(
    ("rows", "rule", "place"),
    [
        ("Row 1: *k1, qq1; rep from * to end.", "unknown-term", (1, 13)),
        ("Row 1: k4.\nRow 2: p5.", "rows-do-not-join", (2, 8)),
        ("Row 1: k1, *p2, k2; rep from * to end.\nRow 2: *p2, k2; rep from * to end.", "rows-do-not-join", (2, 8)),
        ("Row 1: k1, yo, k to end.", "count-drifts", None),
        ("", "no-rows", None),
    ],
)
def test_rows_that_do_not_work_are_refused_at_their_place(
    rows: str, rule: str, place: tuple[int, int] | None, vocabulary: Vocabulary
) -> None:
    """A problem names the version, the rule that explains it, and the line and column in the rows."""
    problem = only(prove(body(rows), vocabulary))

    assert (problem.pointer, problem.rule) == ("/versions/0/rows", rule)
    assert (problem.place and (problem.place.line, problem.place.column)) == place


def test_a_stated_multiple_that_the_rows_do_not_take_is_refused(vocabulary: Vocabulary) -> None:
    """Six and one make seven, over which fours do not come out; the counts that do are told."""
    problem = only(prove(body("Multiple of 6 sts plus 1.\nRow 1: *k3, p1; rep from * to end."), vocabulary))
    assert problem.rule == "stated-multiple-wrong"
    assert problem.step.startswith("State a multiple of 4 stitches")


@pytest.mark.parametrize(
    ("rows", "message"),
    [
        ("Cast on 20 sts.\nRow 1: knit.", "A part of a blanket has no cast-on of its own."),
        ("Row 1: knit.\nRow 2: purl.\nRep row 1 once.", "A repeat line works some of the rows again."),
        ("Row 1: k to marker, p to end.", "The counts of these rows cannot be derived."),
    ],
)
def test_a_part_is_whole_rows_without_a_cast_on(rows: str, message: str, vocabulary: Vocabulary) -> None:
    """A cast-on, rows worked again in part, and rows that count to a marker are refused."""
    assert only(prove(body(rows), vocabulary)).message == message


@pytest.mark.parametrize(
    ("example", "pointer", "message"),
    [
        (Example(4, (4, 5)), "/examples/0/after", "The counts after the rows are 4, 4, and the example says 4, 5."),
        (Example(5, (5, 5)), "/examples/0/stitches", "5 stitches do not fit."),
        (Example(4, (4, 4, 4)), "/examples/0/after", "3 counts stand for 2 rows."),
        (Example(4, ()), "/examples/0/after", "0 counts stand for 2 rows."),
        (Example(4, (4, 4), version=1), "/examples/0/version", "There is no version 1."),
    ],
)
def test_an_example_that_does_not_come_out_is_refused(
    example: Example, pointer: str, message: str, vocabulary: Vocabulary
) -> None:
    """The counts of a worked example are held against the rows."""
    problem = only(prove(replace(body(RIB), examples=(example,)), vocabulary))

    assert (problem.pointer, problem.message) == (pointer, message)


def test_a_word_of_two_meanings_and_one_count_keeps_nothing_out(vocabulary: Vocabulary) -> None:
    """Whether k1b is worked below or through the back loop, the rows add up."""
    assert not prove(body("Row 1: *k1b, p1; rep from * to end."), vocabulary)


def test_an_example_may_show_several_passes(vocabulary: Vocabulary) -> None:
    """Two passes of two rows have four counts."""
    assert not prove(replace(body(RIB), examples=(Example(6, (6, 6, 6, 6)),)), vocabulary)


EYELETS = "Row 1 (RS): *k2tog, yo; rep from * to end.\nRow 2: purl."
SLIPPED = "Row 1 (RS): k1, *sl 2 pwise wyib, k1; rep from * to end.\nRow 2: purl."


@pytest.mark.parametrize(
    ("rows", "safety", "pointer"),
    [
        (EYELETS, SafetyNotes(openings="none"), "/safety/openings"),
        (EYELETS, SafetyNotes(openings=Measure("2", "yarn-over")), "/safety/openings/value"),
        (SLIPPED, SafetyNotes(floats="none"), "/safety/floats"),
        (SLIPPED, SafetyNotes(floats=Measure("1", "stitches")), "/safety/floats/value"),
    ],
)
def test_a_safety_note_may_not_deny_what_the_rows_show(
    rows: str, safety: SafetyNotes, pointer: str, vocabulary: Vocabulary
) -> None:
    """Yarn-overs are openings and slipped stitches have strands, whatever the note says."""
    assert only(prove(body(rows, safety=safety), vocabulary)).pointer == pointer


@pytest.mark.parametrize(
    ("rows", "safety"),
    [
        (EYELETS, SafetyNotes(openings=Measure("1", "yarn-over"))),
        (EYELETS, SafetyNotes()),
        (SLIPPED, SafetyNotes(floats=Measure("2", "stitches"))),
        ("Row 1: k1, *yo, sl 1, k2tog, psso, yo; rep from * to last st, k1.", SafetyNotes(floats="none")),
        ("Row 1: sl 1 pwise wyif, k to end.", SafetyNotes(floats="none")),
        ("Row 1: k to last 3 sts, sl 3 wyif.", SafetyNotes(floats=Measure("3", "stitches"))),
        (RIB, SafetyNotes(floats="none", openings="none")),
    ],
)
def test_an_honest_safety_note_proves(rows: str, safety: SafetyNotes, vocabulary: Vocabulary) -> None:
    """A true number and "not known" both stand; a first stitch, or one passed over, has no strand."""
    assert [problem for problem in prove(body(rows, safety=safety), vocabulary) if "safety" in problem.pointer] == []


@pytest.mark.parametrize(
    ("parameter", "pointer"),
    [
        (Parameter("stitches", 2, 5), "/parameters/0"),
        (Parameter("stitches", 2, 1), "/parameters/0/default"),
        (Parameter("rows", 2, 8, most=6), "/parameters/0/default"),
        (Parameter("stitches", 2, 7, step=2), "/parameters/0/default"),
    ],
)
def test_a_parameter_may_only_allow_what_works(parameter: Parameter, pointer: str, vocabulary: Vocabulary) -> None:
    """A number of stitches over which the rows do not work, or a default out of reach, is refused."""
    problem = only(prove(replace(body(RIB), kind="border", parameters=(parameter,)), vocabulary))

    assert problem.pointer == pointer


def test_edges_have_an_operation_and_other_parts_have_rows(vocabulary: Vocabulary) -> None:
    """A cast-on with rows, a body with an operation and a body with neither are refused."""
    steps = Operation(("Wind the yarn round the needle.",))
    ribs = body(RIB)
    wrong = [replace(ribs, kind="cast-on", operation=steps), replace(ribs, operation=steps), replace(ribs, versions=())]

    assert [only(prove(each, vocabulary)).pointer for each in wrong] == ["/versions", "/operation", "/versions"]
    assert only(prove(replace(ribs, kind="bind-off", versions=()), vocabulary)).pointer == "/operation"


def test_a_bind_off_leaves_no_stitch(starters: Mapping[str, Component], vocabulary: Vocabulary) -> None:
    """An example of a bind-off that keeps a stitch, or of a cast-on below its least, does not hold."""
    off = replace(starters["plain-bind-off"], examples=(Example(20, (1,)),))
    on = replace(starters["cable-cast-on"], examples=(Example(1, ()),))

    assert [only(prove(each, vocabulary)).pointer for each in (off, on)] == ["/examples/0", "/examples/0"]
