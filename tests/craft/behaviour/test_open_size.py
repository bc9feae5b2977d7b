"""Openings with the error of the reading: never narrower than the model at the gauge as it was read."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from counterpane.craft.behaviour.open_size import opening_size
from counterpane.craft.behaviour.readings import read_ends
from counterpane.craft.measures import Gauge, Reading
from counterpane.craft.openings import opening_mm

GAUGES = st.builds(
    Gauge,
    st.fractions(4, 45),
    st.fractions(4, 60),
    st.fractions(Fraction(1, 20), 20),
    reading=st.builds(Reading, st.fractions(0, 2), st.fractions(0, 1), st.integers(1, 4)),
)


@given(GAUGES, st.integers(1, 3), st.one_of(st.none(), st.fractions(Fraction(1, 2), 6)))
def test_the_error_of_a_reading_only_widens_the_estimate(gauge: Gauge, wraps: int, yarn_mm: Fraction | None) -> None:
    """The model's own range lies inside; without the yarn's diameter the low end is not known."""
    size, model = opening_size(wraps, gauge, yarn_mm), opening_mm(wraps, gauge, yarn_mm)
    assert size.high is not None and size.high >= model.high
    assert (size.low is None) == (yarn_mm is None)
    if size.low is not None and model.low is not None:
        assert size.low <= model.low


@given(GAUGES)
def test_a_gauge_lies_between_the_ends_of_its_reading(gauge: Gauge) -> None:
    """More stitches in less width on one side, fewer in more on the other, both still gauges."""
    finer, coarser = read_ends(gauge)
    assert coarser.per_cm <= gauge.per_cm <= finer.per_cm
    assert coarser.rows_per_cm <= gauge.rows_per_cm <= finer.rows_per_cm


def test_rows_as_high_as_two_fingers_do_not_turn_the_estimate_round() -> None:
    """At 45 stitches and 4 rows to 10 cm the cells are larger than what the loops go round, and are the high end."""
    gauge = Gauge(Fraction(45), Fraction(4))
    size = opening_size(1, gauge, Fraction(1, 2))
    assert size.low is not None and size.high is not None and size.low < size.high
    assert opening_mm(1, gauge, Fraction(1, 2)).against(Fraction(5)) == "measure with a rod"
