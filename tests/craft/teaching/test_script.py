"""The script of a lesson against a small waffle worked out by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from counterpane.craft.teaching import Step
from counterpane.craft.teaching.script import steps_of, total_minutes
from counterpane.craft.teaching.timing import sessions
from counterpane.craft.yarn.pace import hours
from craft.pattern.plans import eyelets, vocabulary
from craft.teaching.samples import little, telling


def _steps() -> tuple[Step, ...]:
    return steps_of(little(), telling())


def test_the_steps_go_from_cast_on_to_bind_off_and_repeats_are_practice():
    """Garter: rows 1 and 2, then twice more the same; waffle: row 3 is row 1 again, row 4 is another row."""
    assert [step.title for step in _steps()] == [
        "Cast-on: Long-tail cast-on",
        "Bottom border, set-up: row 1",
        "Bottom border, row 2",
        "Bottom border, practice: rows 3–4",
        "Body, the change to it: row 1",
        "Body, row 2",
        "Body, practice: row 3",
        "Body, row 4",
        "Top border, the change to it: row 1",
        "Top border, row 2",
        "Top border, practice: rows 3–4",
        "Bind-off: Plain bind-off",
    ]


def test_a_practice_step_says_which_rows_are_worked_again():
    """In the words of a repeat line."""
    assert _steps()[3].doing == ("Rows 3–4: work rows 1–2 once more.",)


@pytest.mark.parametrize(
    ("step", "faces"),
    [
        (5, "6 knit, 1 purl, 2 knit, 1 purl, 6 knit"),
        (6, "7 purl, 2 knit, 7 purl"),
        (8, "16 purl"),
    ],
)
def test_what_the_class_sees_is_what_the_row_leaves(step: int, faces: str):
    """K6, p1, k2, p1, k6 on the RS; row 2 is knit but for two purls, which show knit on the RS; row 4 is a ridge."""
    assert f"On the right side, just under the needle, from the right edge: {faces}." in _steps()[step - 1].seen


def test_a_part_at_its_end_tells_its_ridges():
    """Four rows of garter are two ridges on the RS; row 4 of the waffle is one."""
    assert "2 ridges across the right side of this part." in _steps()[3].seen
    assert "1 ridge across the right side of this part." in _steps()[7].seen


def test_the_side_that_faces_and_the_stitches_stand_with_each_row():
    """After row 2 there are 16 stitches, the WS still faces, and a RS row is next."""
    assert _steps()[2].seen[:2] == (
        "16 stitches on the needle; the next row is a RS row.",
        "The wrong side faces you until you turn.",
    )


def test_minutes_of_a_row_by_hand():
    """16 stitches at 25 and 15 a minute with 3 and 5 seconds a turn are 0.69 and 1.15 minutes, for beginners twice."""
    time = _steps()[1].minutes
    assert (time.quick, time.slow) == (Fraction("1.38"), Fraction("2.3"))


def test_the_minutes_of_all_rows_are_the_hours_of_the_plan():
    """Step by step and in one sum; the model of hours has no bind-off in it."""
    made = little()
    *rows, off = steps_of(made, telling(learners="practised"))
    model = hours(made, vocabulary())
    time = total_minutes(rows)
    assert (time.quick / 60, time.slow / 60) == (model.quick, model.slow)
    assert off.minutes.quick == Fraction(made.sections[-1].after, 25)


def test_each_mistake_stands_once_at_the_first_step_that_can_meet_it():
    """None is told twice; the change of part comes with the body's first row."""
    steps = _steps()
    names = [slip.name for step in steps for slip in step.slips]
    assert len(names) == len(set(names))
    assert "change-of-part" in [slip.name for slip in steps[4].slips]


def test_sessions_take_whole_steps_in_order_and_keep_to_their_minutes():
    """Together they are all steps; one is over its minutes only where a single step is."""
    steps = steps_of(eyelets(), telling())
    made = sessions(steps, 20)
    assert [number for each in made for number in range(each.steps[0], each.steps[1] + 1)] == list(
        range(1, len(steps) + 1)
    )
    assert all(each.minutes.slow <= 20 or (each.overlong and each.steps[0] == each.steps[1]) for each in made)
