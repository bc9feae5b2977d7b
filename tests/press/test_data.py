"""A pattern as JSON values."""

import json

from counterpane.library.patterns.patterns import write_pattern
from counterpane.library.safety.safety import safety_of_plan
from counterpane.press.data import as_data
from craft.pattern.plans import eyelets, vocabulary, waffle


def test_a_pattern_is_json_and_the_same_each_time() -> None:
    """Nothing in it needs an encoder of its own."""
    one, other = (json.dumps(as_data(write_pattern(eyelets(), vocabulary()))) for _ in range(2))
    assert one == other


def test_sizes_are_shown_to_a_tenth_in_both_units() -> None:
    """151 stitches at 22 to 10 cm are 68.6 cm and 27.0 in."""
    size = as_data(write_pattern(waffle(), vocabulary()))["size"]
    assert size == {
        "width_cm": 68.6,
        "length_cm": 70,
        "width_in": 27,
        "length_in": 27.6,
        "tolerance_cm": {"width": 0.9, "length": 1.2},
    }


def test_a_window_of_four_inches_is_not_rounded_to_a_tenth() -> None:
    """10.16 cm stay 10.16 cm; a gauge is no length of a blanket."""
    gauge = as_data(write_pattern(waffle(), vocabulary()))["gauge"][1]
    assert (gauge["in"], gauge["stitches"], gauge["over_cm"]) == ("Waffle", 22, 10)


def test_rows_come_with_their_counts_and_repeats() -> None:
    """Another program need not read the words."""
    body = as_data(write_pattern(eyelets(), vocabulary()))["sections"][1]
    assert [row["after"] for row in body["rows"]] == [74, 54, 54, 54]
    assert body["repeats"] == [{"first": 1, "last": 4, "times": 19, "text": "Rep rows 1–4 nineteen times more."}]
    assert [check["blanket_row"] for check in body["checkpoints"]] == [14, 78, 90]


def test_safety_has_the_shape_of_its_own_answer() -> None:
    """A pattern's record is that of its plan, word for word."""
    plan = waffle()
    assert as_data(write_pattern(plan, vocabulary()))["safety"] == safety_of_plan(plan, None)
