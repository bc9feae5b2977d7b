"""The longest run of one kind of stitch in a row, at a cost that does not grow with the row."""

import pytest

from counterpane.craft.openings import OPENING_STITCHES, SLIPPED, longest_run
from counterpane.craft.rows.tree import BindOff, Group, IntoOne, Marker, Node, OpenRepeat, Work

K, YO, SL = Work("k"), Work("yo"), Work("sl")


@pytest.mark.parametrize(
    ("parts", "run"),
    [
        ((K, YO, K), 1),
        ((K, Work("yo", 2), K), 2),
        ((YO, Marker("slip"), YO), 2),
        ((K, K), 0),
        ((OpenRepeat((YO, K, YO)),), 2),
        ((OpenRepeat((YO, K)), YO), 1),
        ((OpenRepeat((K, YO)), YO), 2),
        ((OpenRepeat((K, YO), last=(YO, K)), K), 2),
        ((Group((YO, K, YO), 1),), 1),
        ((Group((YO, K, YO), 3),), 2),
        ((Group((YO,), 3), YO), 4),
        ((IntoOne((K, YO, K)),), 1),
        ((YO, BindOff(3), YO), 1),
    ],
)
def test_a_run_goes_on_across_a_repeats_join(parts: tuple[Node, ...], run: int) -> None:
    """Stitches side by side count together, also where one repeat meets the next."""
    assert longest_run(parts, OPENING_STITCHES, 20) == run


@pytest.mark.parametrize("through", ["wyif", "wyib"])
def test_moving_the_yarn_does_not_end_a_run(through: str) -> None:
    """Yarn brought to the front between two slipped stitches leaves one longer strand."""
    assert longest_run((K, SL, Work(through), Work("sl", 2), K), SLIPPED, 20) == 3


def test_a_row_of_nothing_but_slipped_stitches_is_one_run() -> None:
    """Slipping every stitch makes a strand across the whole row."""
    assert longest_run((OpenRepeat((SL,), plain=True),), SLIPPED, 20) == 20


def test_a_run_in_a_row_of_a_billion_stitches_is_found_at_once() -> None:
    """Counted repeats are not unrolled."""
    assert longest_run((Group((K, Work("sl", 3), K), 10**9),), SLIPPED, 5 * 10**9) == 3
