"""The yarn in a list of materials: what is known is told, and nothing is made up of what is not."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from counterpane.craft.component import Component
from counterpane.craft.pattern.yarns import yarn_entries
from counterpane.craft.stitches import Vocabulary
from counterpane.craft.yarn import Weighed, Yarn, estimate
from craft.constructions.asking import planned

Starters = Mapping[str, Component]
SWATCH = Weighed(Fraction(20), 40, 56, scale_g=Fraction(1, 10))


def told(yarn: Yarn, starters: Starters, vocabulary: Vocabulary) -> dict[str, str]:
    """Return the entries of a waffle blanket in this yarn by their names."""
    found = estimate(planned(starters, vocabulary, "waffle"), [yarn], vocabulary)
    return {entry.name: entry.text for entry in yarn_entries(found)}


def test_strands_held_together_are_told(starters: Starters, vocabulary: Vocabulary) -> None:
    """Whoever knits with one of two strands gets another gauge."""
    assert told(Yarn(name="Wool", strands=2), starters, vocabulary)["Yarn"] == "Wool, 2 strands held together"
    assert told(Yarn(name="Wool"), starters, vocabulary)["Yarn"] == "Wool"


def test_a_weighed_swatch_alone_tells_grams_and_no_metres(starters: Starters, vocabulary: Vocabulary) -> None:
    """How many metres a gram holds is not known without the ball or the thickness."""
    amount = told(Yarn(swatch=SWATCH), starters, vocabulary)["Amount of yarn"]
    assert " g, by the weighed swatch" in amount
    assert " m " not in amount
