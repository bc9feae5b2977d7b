"""What the right side of a texture should show, against faces laid out by hand."""

import pytest

from counterpane.craft.pattern.looks import look_of
from counterpane.seeding import load_component
from craft.pattern.plans import vocabulary
from craft.textures import body


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


def test_few_smooth_stitches_stand_on_a_ground_of_bumps() -> None:
    """By hand: of four stitches row 1 knits one and row 2, a WS row, purls two, which are smooth from the right."""
    few = body("Row 1 (RS): *k1, p3; rep from * to end.\nRow 2 (WS): *p1, k1; rep from * to end.")
    shows = "3 smooth stitches on a ground of bumps in each repeat of 4 stitches and 2 rows"
    assert look_of(few, vocabulary()) == shows


def test_ribs_of_many_widths_are_not_listed_one_by_one() -> None:
    """Nobody holds ten widths against a fabric: that columns keep their faces is enough."""
    ribs = "*k1, p1, k2, p2, k3, p3, k4, p4, k5, p5; rep from * to end"
    back = "*k5, p5, k4, p4, k3, p3, k2, p2, k1, p1; rep from * to end"
    many = body(f"Row 1 (RS): {ribs}.\nRow 2 (WS): {back}.")
    assert look_of(many, vocabulary()) == "upright ribs: each column keeps its face from bottom to top"
