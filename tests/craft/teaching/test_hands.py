"""Left and right for mirrored work."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.teaching.hands import mirrored
from counterpane.craft.teaching.script import steps_of
from craft.teaching.samples import little, telling

WORDS = st.lists(
    st.sampled_from(
        "left right Left Right to the leans lean leaning needle hand edge border side stitch are -hand".split()
    ),
    max_size=12,
)


@given(WORDS)
def test_mirroring_twice_is_the_text_again(words: list[str]):
    """Whatever stands beside left and right."""
    text = " ".join(words)
    assert mirrored(mirrored(text)) == text


@pytest.mark.parametrize(
    ("said", "for_left"),
    [
        ("Put it on the left needle.", "Put it on the right needle."),
        ("k2tog leans to the right.", "k2tog leans to the left."),
        ("Left border", "Right border"),
        ("Look at the right side; 1 stitch is left.", "Look at the right side; 1 stitch is left."),
        ("Turn to the right side.", "Turn to the right side."),
    ],
)
def test_directions_mirror_and_sides_of_the_fabric_do_not(said: str, for_left: str):
    """The right side is a side of the fabric, and what is left is a number."""
    assert mirrored(said) == for_left


def test_a_left_handed_lesson_has_the_same_rows_and_counts():
    """Only words of direction differ."""
    right, left = steps_of(little(), telling()), steps_of(little(), telling("left"))
    assert [step.doing for step in left if step.rows] == [step.doing for step in right if step.rows]
    assert [(step.on_needle, step.minutes) for step in left] == [(step.on_needle, step.minutes) for step in right]
    assert {slip.notice for step in left for slip in step.slips} == {"It leans to the right."}


def test_a_left_handed_lesson_reads_the_fabric_from_its_left_edge():
    """There a RS row begins, so the faces come in the same order."""
    right, left = steps_of(little(), telling())[4], steps_of(little(), telling("left"))[4]
    assert left.seen == tuple(line.replace("from the right edge", "from the left edge") for line in right.seen)
