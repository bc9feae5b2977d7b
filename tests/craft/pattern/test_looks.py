"""What the right side of a texture should show, against faces laid out by hand."""

import pytest

from counterpane.craft.pattern.looks import look_of
from counterpane.seeding import load_component
from craft.pattern.plans import vocabulary


@pytest.mark.parametrize(
    ("slug", "shows"),
    [
        ("stocking-stitch", "smooth columns of Vs, and no bump"),
        ("reverse-stocking-stitch", "rows of bumps all over, and no V"),
        ("garter", "a ridge of bumps, a row of Vs, a ridge again"),
        ("seed-stitch", "single bumps like the fields of a draughtboard, none above or beside another"),
        (
            "rib-two-by-two",
            "upright ribs, 2 and 2 stitches wide in turn: each column keeps its face from bottom to top",
        ),
        ("moss-stitch", "as many smooth stitches as bumps, 4 of each in each repeat of 2 stitches and 4 rows"),
        ("staggered-dots", "2 bumps on a smooth ground in each repeat of 4 stitches and 4 rows"),
        ("rope-cable", "crossed stitches in 1 row in each repeat of 8 stitches and 8 rows"),
        ("old-shale", "6 openings in each repeat of 18 stitches and 4 rows"),
    ],
)
def test_a_texture_shows_what_its_rows_make(slug: str, shows: str) -> None:
    """Counted by hand in one repeat."""
    assert look_of(load_component(slug), vocabulary()) == shows
