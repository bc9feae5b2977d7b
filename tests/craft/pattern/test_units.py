"""Lengths in centimetres, in inches or in both, and nothing else converted."""

import re

import pytest

from counterpane.craft.measures import Units
from counterpane.craft.pattern.units import in_units, pattern_in_units
from counterpane.library.patterns.patterns import write_pattern
from counterpane.press.text import as_text
from craft.pattern.plans import eyelets, vocabulary, waffle

PAIR = "about 90.0 cm (35½ in) long and 67.8 to 69.9 cm (26¾ to 27½ in) wide"
GAUGE = "22 sts and 30 rows over 10 cm (over 4 in: 22.4 sts and 30.5 rows), worked flat"


@pytest.mark.parametrize(
    ("text", "units", "said"),
    [
        (PAIR, "both", PAIR),
        (PAIR, "cm", "about 90.0 cm long and 67.8 to 69.9 cm wide"),
        (PAIR, "in", "about 35½ in long and 26¾ to 27½ in wide"),
        (GAUGE, "both", GAUGE),
        (GAUGE, "cm", "22 sts and 30 rows over 10 cm, worked flat"),
        (GAUGE, "in", "22.4 sts and 30.5 rows over 4 in, worked flat"),
        ("It frills by 4.6 cm.", "both", "It frills by 4.6 cm (1¾ in)."),
        ("It frills by 4.6 cm.", "in", "It frills by 1¾ in."),
        ("It frills by 20.5 to 32.7 cm.", "in", "It frills by 8 to 12¾ in."),
        ("It frills by 4.6 cm.", "cm", "It frills by 4.6 cm."),
        ("(the least is 15 cm here)", "both", "(the least is 15 cm here)"),
        ("42 rows over 10 cm and a rod of 5 mm", "in", "42 rows over 10 cm and a rod of 5 mm"),
        ("705 to 1,048 m (771 to 1,146 yd)", "in", "705 to 1,048 m (771 to 1,146 yd)"),
    ],
)
def test_one_side_of_a_pair_is_kept(text: str, units: Units, said: str) -> None:
    """A figure that stands alone gets inches; a gauge keeps its own window, and other units stay."""
    assert in_units(text, units) == said


@pytest.mark.parametrize("plan", [waffle, eyelets])
def test_a_pattern_in_one_unit_has_no_length_in_the_other(plan: object) -> None:
    """From the title to the care; the cautions are quoted."""
    pattern = write_pattern(plan(), vocabulary())  # type: ignore[operator]
    metric, imperial = (as_text(pattern_in_units(pattern, units)).split("\nCautions\n")[0] for units in ("cm", "in"))
    assert not re.search(r"[\d¼½¾] in\b(?! (all|every|each|the|turn|place|100))", metric)
    assert not re.search(r"\d\s+cm\b", imperial.replace("over 10 cm", ""))


def test_rows_and_counts_are_those_of_every_unit() -> None:
    """Only lengths are said otherwise."""
    pattern = write_pattern(eyelets(), vocabulary())
    said = [pattern_in_units(pattern, units) for units in ("both", "cm", "in")]
    assert len({tuple(row.text for part in each.sections for row in part.rows) for each in said}) == 1
    assert len({(each.cast_on.line, each.size, each.abbreviations) for each in said}) == 1
