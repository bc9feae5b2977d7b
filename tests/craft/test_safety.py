"""What the safety inputs know of the child and the piece."""

from dataclasses import replace
from fractions import Fraction

import pytest

from counterpane.craft.measures import Gauge
from counterpane.craft.safety import Attachment, SafetyInputs, band_of, in_figures, kind_of
from counterpane.craft.safety.measured import Measurement


@pytest.mark.parametrize(
    ("months", "band"),
    [
        ("0", "0-3m"),
        ("2.9", "0-3m"),
        ("3", "3-12m"),
        ("12", "12-24m"),
        ("24", "24-36m"),
        ("36", "36m+"),
        ("90", "36m+"),
    ],
)
def test_a_band_begins_at_its_first_month(months: str, band: str) -> None:
    """The first month of a band belongs to it."""
    assert band_of(Fraction(months)) == band


def test_an_unknown_age_is_under_nothing_and_over_nothing() -> None:
    """A child of unknown age is neither under nor over any age."""
    assert SafetyInputs().under(12) is None
    assert SafetyInputs().concerns("under 36 months") is None


def test_a_preterm_baby_is_under_every_age() -> None:
    """A preterm baby is concerned by the rules for babies and for young children."""
    preterm = SafetyInputs(age_band="preterm")
    assert preterm.concerns("preterm") and preterm.concerns("under 12 months") and preterm.concerns("under 36 months")
    assert not preterm.concerns("12 to 36 months")


def test_an_estimate_is_not_known() -> None:
    """A value that was worked out from the gauge does not count as measured."""
    inputs = SafetyInputs(float_mm=Fraction(12), estimated=("float_mm",))
    assert not inputs.knows("float_mm")
    assert inputs.said("float_mm") == "about 12 mm, estimated from the gauge"


def test_one_of_two_inputs_is_enough() -> None:
    """A need of "a or b" is met by either."""
    assert SafetyInputs(gaps=False).knows("hole_mm or gaps")
    assert not SafetyInputs().knows("hole_mm or gaps")


def test_zero_is_known() -> None:
    """Nought millimetres is a measurement and not the lack of one."""
    assert SafetyInputs(tail_mm=Fraction(0)).knows("tail_mm")


def test_an_attachment_of_an_unheard_kind_leaves_attachments_not_known() -> None:
    """A kind that no rule can tell apart is no answer to whether there is a fringe."""
    assert SafetyInputs(attachments=(Attachment("Buttons"),)).knows("attachments")
    assert not SafetyInputs(attachments=(Attachment("Buttons"), Attachment("danglers"))).knows("attachments")


@pytest.mark.parametrize("written", ["pom-pom", "Pompom", "pom poms", "POM-POMS"])
def test_a_kind_is_the_same_however_it_is_spelt(written: str) -> None:
    """Case, hyphens, spaces and the plural make no other kind."""
    assert kind_of(written) == "pompom"


def test_advice_followed_is_that_of_the_markets_unless_stated() -> None:
    """The sleep advice of the markets counts where no other is named."""
    assert SafetyInputs(markets=("UK",)).followed == ("UK",)
    assert SafetyInputs(markets=("UK",), advice=("US",)).followed == ("US",)


@pytest.mark.parametrize(("value", "written"), [("6.9", "6.9"), ("25.10", "25.1"), ("7", "7"), ("4.999", "4.999")])
def test_a_measured_length_is_written_in_full(value: str, written: str) -> None:
    """A length is never rounded across a limit where it is told."""
    assert in_figures(Fraction(value)) == written


def test_an_endless_decimal_is_written_to_a_tenth() -> None:
    """An estimate is written to 0.1 mm, half up."""
    assert in_figures(Fraction(200, 11)) == "18.2"


def test_a_measurement_counts_at_its_own_gauge_or_where_it_tells_none() -> None:
    """What was measured on another fabric says nothing of this one; one that tells no gauge is not left out."""
    here, other = Gauge(Fraction(22), Fraction(30)), Gauge(Fraction(18), Fraction(24))
    told = Measurement("hole_mm", Fraction(4), "A. Knitter", "2026-11-01", gauge=here)
    assert told.counts_for((other, here))
    assert not told.counts_for((other,))
    assert replace(told, gauge=None).counts_for((other,))
