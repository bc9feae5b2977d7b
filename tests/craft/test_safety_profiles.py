"""A piece held against a ward's or a charity's own list."""

from fractions import Fraction
from typing import Any

import pytest

from counterpane.craft.safety import Attachment, Fibre, Item, Profile, SafetyInputs, Wash, hold


def verdict(item: Item, **known: Any) -> str:
    """Return the verdict of one item on a piece of which this is known."""
    (held,) = hold(Profile("A ward", "2026-11-26", "a leaflet", (item,)), SafetyInputs(**known))
    return held.verdict


@pytest.mark.parametrize(
    ("condition", "value", "expected"),
    [
        ({"under": Fraction(5)}, "4.9", "agrees"),
        ({"under": Fraction(5)}, "5", "differs"),
        ({"at_most": Fraction(5)}, "5", "agrees"),
        ({"at_most": Fraction(5)}, "5.1", "differs"),
        ({"at_least": Fraction(5)}, "5", "agrees"),
        ({"at_least": Fraction(5)}, "4.9", "differs"),
        ({"at_least": Fraction(4), "under": Fraction(5)}, "5", "differs"),
    ],
)
def test_a_figure_is_held_to_its_bounds(condition: dict[str, Fraction], value: str, expected: str) -> None:
    """A bound is inclusive unless it says under, and all bounds of an item count."""
    assert verdict(Item("says", "hole_mm", **condition), hole_mm=Fraction(value)) == expected  # type: ignore[arg-type]


def test_what_is_not_known_or_only_estimated_is_not_assessed() -> None:
    """Neither silence nor an estimate answers an item."""
    item = Item("No float over 10 mm.", "float_mm", at_most=Fraction(10))
    assert verdict(item) == "not assessed"
    assert verdict(item, float_mm=Fraction(12), estimated=("float_mm",)) == "not assessed"
    assert verdict(item, float_mm=Fraction(12)) == "differs"


def test_an_item_that_no_input_judges_is_kept() -> None:
    """What cannot be judged stands in its place, not assessed."""
    assert verdict(Item("Free of perfume."), hole_mm=Fraction(1)) == "not assessed"


@pytest.mark.parametrize(("wants", "found", "expected"), [(False, False, "agrees"), (False, True, "differs")])
def test_a_yes_or_no_is_held_to_what_is_wanted(wants: bool, found: bool, expected: str) -> None:
    """Openwork where none is wanted differs."""
    assert verdict(Item("Plain.", "openwork", wants=wants), openwork=found) == expected


@pytest.mark.parametrize(
    ("names", "expected"),
    [
        (("wool",), "agrees"),
        (("Merino wool",), "agrees"),
        (("wool", "nylon"), "differs"),
        (("moonspun",), "not assessed"),
    ],
)
def test_fibres_are_held_to_a_list(names: tuple[str, ...], expected: str) -> None:
    """Every fibre must be of the list, and a name that nobody knows is not assessed."""
    fibres = tuple(Fibre(name) for name in names)
    assert verdict(Item("All wool.", "fibres", only=("wool",)), fibres=fibres) == expected


def test_what_is_barred_may_not_be_there() -> None:
    """None of what is barred may be among the attachments; a piece without any has none."""
    item = Item("No buttons.", "attachments", none_of=("button",))
    assert verdict(item, attachments=(Attachment("Buttons"),)) == "differs"
    assert verdict(item, attachments=(Attachment("label"),)) == verdict(item, attachments=()) == "agrees"


def test_a_wash_is_held_to_degrees_and_ways() -> None:
    """Degrees and ways are two inputs."""
    wash = Wash("machine wash", Fraction(60))
    assert verdict(Item("60 °C.", "wash.temp_c", at_least=Fraction(60)), wash=wash) == "agrees"
    assert verdict(Item("Tumble dried.", "wash.method", only=("tumble",)), wash=wash) == "differs"


def test_mass_per_area_may_be_wanted() -> None:
    """A list can ask for grams per square metre."""
    square = {"width_cm": Fraction(100), "length_cm": Fraction(100)}
    item = Item("Light.", "gsm", at_most=Fraction(400))
    assert verdict(item, mass_g=Fraction(400), **square) == "agrees"
    assert verdict(item, **square) == "not assessed"
