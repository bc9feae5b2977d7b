"""The safety rules on cords, loops, hard parts, and weight at their limits, which are inclusive as written."""

from fractions import Fraction
from typing import Any

import pytest

from counterpane.craft.rules.safety import RULES
from counterpane.craft.safety import AGE_BANDS, Attachment, SafetyInputs

BY_REFERENCE = {rule.reference: rule for rule in RULES}
YOUNG = ("preterm", "0-3m", "3-12m", "12-24m", "24-36m")


def says(reference: str, **known: Any) -> list[str]:
    """Return the severities of what a rule says of these inputs."""
    return [finding.severity for finding in BY_REFERENCE[reference].check(SafetyInputs(**known))]


def part(kind: str, **sizes: str) -> Attachment:
    """Return an attachment with its figures in decimal text."""
    return Attachment(kind, **{name: Fraction(value) for name, value in sizes.items()})  # type: ignore[arg-type]


@pytest.mark.parametrize("band", AGE_BANDS)
def test_added_weight_stops_under_three_and_warns_from_then_on(band: str) -> None:
    """R03 ends where R04 begins, and without weight neither speaks."""
    assert says("R03", age_band=band, weighted=True) == ([] if band == "36m+" else ["stop"])
    assert says("R04", age_band=band, weighted=True) == (["warn"] if band == "36m+" else [])
    assert says("R03", age_band=band, weighted=False) == says("R04", age_band=band, weighted=False) == []


def test_weight_for_an_older_child_is_told_without_a_share_of_its_mass() -> None:
    """R08 is not used: a share of the body mass would read as permission."""
    (finding,) = BY_REFERENCE["R04"].check(SafetyInputs(age_band="36m+", weighted=True))
    assert "%" not in finding.message and "per cent" not in finding.message


@pytest.mark.parametrize("band", AGE_BANDS)
@pytest.mark.parametrize(("loop", "said"), [("4.9", []), ("5", ["warn"]), ("30", ["warn"]), ("30.1", ["stop"])])
def test_a_loop_warns_from_5_and_stops_over_30_mm(band: str, loop: str, said: list[str]) -> None:
    """R18 under three years, and no longer."""
    assert says("R18", age_band=band, loop_mm=Fraction(loop)) == (said if band in YOUNG else [])


@pytest.mark.parametrize("band", AGE_BANDS)
def test_a_loop_over_a_head_and_a_long_cord_stop_under_three_years(band: str) -> None:
    """R19 over 380 mm and R20 over 220 mm, not at them."""
    stopped = ["stop"] if band in YOUNG else []
    assert says("R19", age_band=band, loop_perimeter_mm=Fraction("380.1")) == stopped
    assert says("R20", age_band=band, cord_free_mm=Fraction("220.1")) == stopped
    assert says("R19", age_band=band, loop_perimeter_mm=Fraction(380)) == []
    assert says("R20", age_band=band, cord_free_mm=Fraction(220)) == []


@pytest.mark.parametrize(
    ("band", "use", "cord", "said"),
    [
        ("12-24m", "sleep", "75", []),
        ("12-24m", "sleep", "75.1", ["warn"]),
        ("12-24m", "sleep", "220", ["warn"]),
        ("12-24m", "sleep", "220.1", []),
        ("36m+", "sleep", "100", []),
        ("3-12m", "pram", "75", []),
        ("3-12m", "pram", "75.1", ["warn"]),
        ("3-12m", "sleep", "0", []),
        ("3-12m", "sleep", "0.1", ["stop"]),
        ("3-12m", "sleep", "300", ["stop"]),
    ],
)
def test_a_cord_near_a_baby(band: str, use: str, cord: str, said: list[str]) -> None:
    """R21: any cord where a baby sleeps stops; else one over 75 mm warns, up to where R20 takes over."""
    assert says("R21", age_band=band, use=use, cord_free_mm=Fraction(cord)) == said


@pytest.mark.parametrize("kind", ["ribbon", "Ties", "i-cord", "drawstring"])
def test_a_cord_of_unknown_length_stops_where_a_baby_sleeps(kind: str) -> None:
    """R21 needs no figure to see a ribbon in a baby's bed."""
    assert says("R21", age_band="0-3m", use="sleep", attachments=(part(kind),)) == ["stop"]


@pytest.mark.parametrize(
    ("known", "said"),
    [
        ({"cord_thick_mm": Fraction("1.4")}, ["warn"]),
        ({"cord_thick_mm": Fraction("1.5")}, []),
        ({"ribbon_width_mm": Fraction("5.9")}, ["warn"]),
        ({"ribbon_width_mm": Fraction(6)}, []),
        ({"cord_thick_mm": Fraction(1), "ribbon_width_mm": Fraction(5)}, ["warn"]),
    ],
)
def test_a_thin_cord_or_a_narrow_ribbon_warns_at_any_age(known: dict[str, Fraction], said: list[str]) -> None:
    """R22 under 1.5 mm of thickness or 6 mm of width."""
    assert says("R22", **known) == says("R22", age_band="36m+", **known) == said


def test_a_ribbon_has_no_thickness_to_ask_for() -> None:
    """With all attachments known, only the measures of those that are there are asked for."""
    ribbon = SafetyInputs(attachments=(part("ribbon"),), ribbon_width_mm=Fraction(8))
    assert ribbon.knows("cord_thick_mm") and ribbon.knows("ribbon_width_mm")
    assert not SafetyInputs(attachments=(part("tie"),)).knows("cord_thick_mm")
    assert not SafetyInputs(ribbon_width_mm=Fraction(8)).knows("cord_thick_mm")


@pytest.mark.parametrize(
    ("parts", "said"),
    [
        ([part("tie", largest_mm="300")], []),
        ([part("tie", largest_mm="190"), part("ribbon", largest_mm="190")], ["warn"]),
        ([part("tie", largest_mm="190"), part("ribbon", largest_mm="190.1")], ["stop"]),
        ([part("tie"), part("ribbon")], ["warn"]),
        ([part("ties")], ["warn"]),
        ([part("ties", largest_mm="191")], ["stop"]),
        ([part("tie", largest_mm="400"), part("button", largest_mm="10")], []),
    ],
)
def test_two_cords_warn_and_stop_over_380_mm_together(parts: list[Attachment], said: list[str]) -> None:
    """R23 counts cords, ribbons and ties, a plural as two, and adds up what is known of their lengths."""
    assert says("R23", attachments=tuple(parts)) == said


def test_cords_without_a_length_are_not_assessed_to_the_end() -> None:
    """A length that is missing could make R23 stricter, so the rule still lacks an input."""
    both = (part("tie", largest_mm="100"), part("ribbon"))
    assert not SafetyInputs(attachments=both).knows("attachments.cords")
    assert SafetyInputs(attachments=both, cord_free_mm=Fraction(100)).knows("attachments.cords")


@pytest.mark.parametrize(
    ("sizes", "weak", "proven"),
    [
        ({"largest_mm": "7", "pull_n": "89.9"}, ["stop"], []),
        ({"largest_mm": "7", "pull_n": "90"}, [], ["warn"]),
        ({"largest_mm": "6", "pull_n": "49.9"}, ["stop"], []),
        ({"largest_mm": "6", "pull_n": "50"}, [], ["warn"]),
        ({"largest_mm": "6.1", "pull_n": "89"}, ["stop"], []),
        ({"largest_mm": "7"}, ["stop"], []),
        ({"largest_mm": "31.7"}, ["stop"], []),
        ({"largest_mm": "31.8"}, ["warn"], []),
        ({"largest_mm": "57.1", "pull_n": "10"}, ["warn"], []),
        ({"largest_mm": "57.2"}, [], []),
        ({}, ["warn"], []),
        ({"pull_n": "90"}, [], ["warn"]),
    ],
)
def test_a_hard_part_that_fits_the_cylinder(sizes: dict[str, str], weak: list[str], proven: list[str]) -> None:
    """R26 and R27 share the parts between them by the pull that each held."""
    for kind in ("button", "Beads", "snap"):
        attachments = (part(kind, **sizes),)
        assert says("R26", age_band="12-24m", attachments=attachments) == weak
        assert says("R27", age_band="12-24m", attachments=attachments) == proven
        assert says("R26", age_band="36m+", attachments=attachments) == []


def test_a_part_whose_size_cannot_tell_leaves_the_rule_not_assessed() -> None:
    """Between the width and the depth of the cylinder the largest size decides nothing."""
    assert not SafetyInputs(attachments=(part("toggle", largest_mm="40"),)).knows("attachments.largest_mm")
    assert SafetyInputs(attachments=(part("toggle", largest_mm="60"),)).knows("attachments.largest_mm")


@pytest.mark.parametrize("found", ["float_mm", "tail_mm"])
def test_any_thread_inside_an_enclosed_part_stops_in_the_first_year(found: str) -> None:
    """R16 has no least length, and no say without an enclosed part."""
    known = {found: Fraction("0.1"), "age_band": "3-12m"}
    assert says("R16", enclosed_part=True, **known) == ["stop"]
    assert says("R16", enclosed_part=False, **known) == []
    assert says("R16", enclosed_part=True, age_band="12-24m", tail_mm=Fraction(9)) == []
    assert says("R16", enclosed_part=True, age_band="3-12m", tail_mm=Fraction(0), float_mm=Fraction(0)) == []


@pytest.mark.parametrize("known", [{"features": ("hood",)}, {"attachments": (part("zip"),)}])
def test_a_garment_or_a_toy_is_out_of_scope(known: dict[str, Any]) -> None:
    """R40 stops by what is made or by what is attached."""
    assert says("R40", **known) == ["stop"]
    assert says("R40", features=(), attachments=(part("button"),)) == []
