"""The inputs of a safety assessment: what is read, what counts as not known, and what is refused."""

from typing import Any

import pytest

from counterpane.library.safety.safety import assess
from counterpane.library.values import BadInput


@pytest.mark.parametrize(
    ("months", "band"),
    [([0, 12], "0-3m"), ([3, 12], "3-12m"), ([12, 36], "12-24m"), (40, "36m+"), ([23.5, 60], "12-24m")],
)
def test_a_range_of_ages_counts_by_its_strictest_band(months: Any, band: str) -> None:
    """A range of ages is assessed as the strictest band that it touches."""
    inputs = {"hole_mm": 7, "use": "lap", "float_mm": 11}
    assert assess({**inputs, "age_months": months}) == assess({**inputs, "age_band": band})


def test_the_stricter_of_two_ages_counts() -> None:
    """An age band and an age in months together count as the stricter one."""
    both = {"age_band": "preterm", "age_months": [12, 24], "hole_mm": 6}
    assert assess(both) == assess({"age_band": "preterm", "hole_mm": 6})


def test_all_inputs_together_are_read() -> None:
    """Every field of the inputs is taken, alone and beside all others."""
    pieces = {"attachments": [{"kind": "label", "largest_mm": 20, "metal": False}], "layers": 1}
    stuff = {"fibres": [{"name": "wool", "pct": 100, "micron": 19.5}], "wash": {"method": "machine", "temp_c": 30}}
    answer = assess({"age_band": "12-24m", "hole_mm": 2, "width_cm": 70, **pieces, **stuff})
    assert {"R13", "R24", "R25"} <= set(answer["assessed"])


def test_null_is_not_known() -> None:
    """A field that is null counts as one that is absent."""
    assert assess({"hole_mm": None, "age_band": None}) == assess({})


def test_decimals_are_read_by_their_text() -> None:
    """The figure told is the figure entered, and 6.9 lies below 7."""
    answer = assess({"age_band": "3-12m", "hole_mm": 6.9})
    assert "6.9 mm" in answer["findings"][0]["message"]


@pytest.mark.parametrize(
    ("inputs", "pointer", "hint"),
    [
        ({"hole": 5}, "/hole", "Did you mean hole_mm?"),
        ({"colour": "red"}, "/colour", "Use one of: "),
        ({"hole_mm": -1}, "/hole_mm", "from 0"),
        ({"hole_mm": float("nan")}, "/hole_mm", "as measured"),
        ({"hole_mm": float("inf")}, "/hole_mm", "as measured"),
        ({"hole_mm": 10**5000}, "/hole_mm", "from 0"),
        ({"hole_mm": "5"}, "/hole_mm", "a number"),
        ({"hole_mm": True}, "/hole_mm", "a number"),
        ({"use": "prams"}, "/use", "Did you mean pram?"),
        ({"markets": ["uk"]}, "/markets/0", "Did you mean UK?"),
        ({"markets": "UK"}, "/markets", "a list"),
        ({"age_band": 3}, "/age_band", "Use one of: preterm"),
        ({"age_months": [12, 3]}, "/age_months", "youngest"),
        ({"age_months": []}, "/age_months", "youngest"),
        ({"age_months": [-1, 3]}, "/age_months/0", "from 0"),
        ({"halo": "yes"}, "/halo", "true or false"),
        ({"layers": 0}, "/layers", "from 1"),
        ({"width_cm": 0}, "/width_cm", "above 0"),
        ({"attachments": [{"largest_mm": 5}]}, "/attachments/0", "kind"),
        ({"attachments": [{"kind": "bead", "size": 5}]}, "/attachments/0/size", "Use one of: "),
        ({"fibres": [{"name": "wool", "pct": 101}]}, "/fibres/0/pct", "0 to 100"),
        ({"fibres": [{"pct": 100}]}, "/fibres/0", "name"),
        ({"fibres": [{"name": "x" * 201}]}, "/fibres/0/name", "200"),
        ({"attachments": [{"kind": "bell\0"}]}, "/attachments/0/kind", "printable"),
        ({"wash": "hot"}, "/wash", "method"),
        ({"wash": {"method": "machine", "temp": 30}}, "/wash/temp", "temp_c"),
        ({"hole_mm": {"mm": 5}}, "/hole_mm", "a number"),
        ({"layers": 1.5}, "/layers", "from 1"),
        ({"a/b": 1}, "/a~1b", "Use one of: "),
        ([1], "", "object"),
    ],
)
def test_bad_input_is_refused_at_its_place_with_the_next_step(inputs: Any, pointer: str, hint: str) -> None:
    """Each refusal points at the field and says what to give instead."""
    with pytest.raises(BadInput) as refused:
        assess(inputs)
    assert refused.value.pointer == pointer
    assert hint in refused.value.hint


def test_deep_nonsense_is_refused_without_being_printed() -> None:
    """A value of ten thousand nested lists is refused by its kind."""
    deep: list[Any] = []
    for _ in range(10_000):
        deep = [deep]
    with pytest.raises(BadInput, match="A list is not known here"):
        assess({"use": deep})
