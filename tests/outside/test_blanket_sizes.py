"""Named sizes and pieced blankets against what charities and shops print; each source stands beside its check."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

import pytest

from counterpane.seeding.facts import facts_by_name

FACTS = facts_by_name()


@pytest.mark.parametrize(
    ("name", "source", "least", "most"),
    [
        ("preemie", "Project Linus Canada", ("15", "15"), ("20", "20")),
        ("newborn", "Project Linus Canada", ("20", "20"), ("24", "24")),
        ("infant", "Project Linus Canada", ("24", "24"), ("35", "35")),
        ("toddler", "Project Linus Canada", ("35", "45"), ("35", "45")),
        ("child", "Project Linus Canada", ("40", "50"), ("40", "50")),
        ("baby", "Project Linus, Oregon", ("30", "36"), (None, None)),
        ("child", "Project Linus, Oregon", ("40", "55"), ("40", "60")),
        ("teen", "Project Linus, Oregon", ("45", "65"), ("45", "72")),
        ("cot", "pioneerthinking.com", ("36", "52"), ("36", "52")),
        ("receiving", "pioneerthinking.com", ("34", "36"), ("34", "36")),
        ("throw", "craftathome.co.uk", ("50", "60"), ("50", "60")),
    ],
)
def test_a_figure_is_what_its_source_prints(
    name: str, source: str, least: tuple[str, str], most: tuple[str | None, str | None]
) -> None:
    """In inches, read on the pages of the charity or shop that is named."""
    figure = next(each for each in FACTS[f"size-{name}"]["value"]["figures"] if source in each["source"])
    assert (figure["width"], figure["length"]) == least
    assert (figure.get("to_width"), figure.get("to_length")) == most


@pytest.mark.parametrize(("who", "inches"), [("baby", (36, 35)), ("small-child", (45, 35)), ("older-child", (54, 42))])
def test_rectangles_of_7_by_9_make_the_sizes_printed(who: str, inches: tuple[int, int]) -> None:
    """V8, Warm Up America as a blanket charity in Connecticut repeats it: 36 x 35, 45 x 35 and 54 x 42 inches."""
    value = FACTS["rectangles-sewn-together"]["value"]
    number, wide, long = int(value[who]), int(value["width"]), int(value["length"])
    pairs = [(a, b) for a, b in product(range(1, number + 1), repeat=2) if a * b == number]
    assert inches in [(a * long, b * wide) for a, b in pairs]


def test_16_squares_of_20_cm_make_80_by_80() -> None:
    """V9, Save the Children, 2011, as repeated on a knitter's page."""
    value = FACTS["squares-sewn-together"]["value"]
    assert int(value["width"]) * int(value["length"]) * int(value["blanket"]) == 80 * 80


def test_a_garter_square_has_about_two_rows_to_a_stitch() -> None:
    """30 stitches and about 62 rows (the Salvation Army's squares, in a copy): 2.07."""
    value = FACTS["garter-square-ratio"]["value"]
    assert round(Fraction(value["rows"]) / Fraction(value["stitches"]), 2) == Fraction(207, 100)
