"""US and UK words for the same thing. Common practice, no source."""

import pytest

from counterpane.craft.pattern.parts import called
from counterpane.craft.pattern.terms import in_terms
from craft.pattern.plans import part

PAIRS = [
    ("Bind off all stitches.", "Cast off all stitches."),
    ("A plain bind-off.", "A plain cast-off."),
    ("stockinette stitch", "stocking stitch"),
    ("work even", "work straight"),
]


@pytest.mark.parametrize(("us", "uk"), PAIRS)
def test_a_sentence_is_said_in_either_terms(us: str, uk: str) -> None:
    """Each way, from either side, and a second time changes nothing."""
    assert (in_terms(us, "uk"), in_terms(uk, "us")) == (uk, us)
    assert (in_terms(us, "us"), in_terms(uk, "uk")) == (us, uk)


def test_gauge_becomes_tension_and_tension_stays() -> None:
    """US texts speak of the tension of the yarn, which is no gauge."""
    assert in_terms("Gauge is measured.", "uk") == "Tension is measured."
    assert in_terms("Keep the tension of the yarn even.", "us") == "Keep the tension of the yarn even."


def test_cast_on_is_the_same_in_both() -> None:
    """Only the end of a piece has two names."""
    assert in_terms("Cast on loosely.", "uk") == "Cast on loosely."


@pytest.mark.parametrize(
    ("name", "uk"),
    [
        ("Seed stitch (UK moss stitch)", "Moss stitch (US seed stitch)"),
        ("Moss stitch (UK double moss stitch)", "Double moss stitch (US moss stitch)"),
        ("Seed stitch border (UK moss stitch)", "Moss stitch border (US seed stitch)"),
    ],
)
def test_moss_and_seed_always_carry_both_names(name: str, uk: str) -> None:
    """The words alone do not say which stitch is meant, so that the other name stays beside the first."""
    component = part("moss", "body", name).component
    assert (called(component, "us"), called(component, "uk")) == (name, uk)


def test_the_stocking_stitch_of_the_library_has_one_name_in_each_terms() -> None:
    """Its bracket is for readers of the library, not of a pattern."""
    component = part("stocking-stitch", "body", "Stocking stitch (stockinette)").component
    assert (called(component, "us"), called(component, "uk")) == ("Stockinette stitch", "Stocking stitch")
