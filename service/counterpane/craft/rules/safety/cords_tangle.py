"""R23: two cords that can reach each other."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.house import CORDS_TOGETHER_MM


@rule(
    "cords-tangle",
    family="safety",
    severity="stop",
    reference="R23",
    basis="borrowed",
    jurisdiction="EU",
    source="EN 71-1:2014+A1:2018, second-hand (SGS, July 2020), for toys: cords that can tangle count as "
    "one loop; the figures were not visible; 380 mm: EN 71-1:2005+A8:2009 cl. 5.4 c; adding lengths: "
    "house",
    needs=("attachments.cords",),
    bad='{"attachments": [{"kind": "tie", "largest_mm": 191}, {"kind": "ribbon", "largest_mm": 190}], '
    '"cord_thick_mm": 2, "ribbon_width_mm": 6}',
    good='{"attachments": [{"kind": "tie", "largest_mm": 60}], "cord_thick_mm": 2}',
)
def cords_tangle(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Cords that tangle into a loop.

    Two cords that reach each other can knot, and the knot makes a loop of both. Whether they reach each other is
    taken as given.
    """
    cords = inputs.cords
    count = sum(2 if cord.several else 1 for cord in cords)
    if count < 2:
        return
    lengths = [(2 if cord.several else 1) * (cord.largest_mm or inputs.cord_free_mm or 0) for cord in cords]
    together = Fraction(sum(lengths))
    long = together > CORDS_TOGETHER_MM
    measured = f"; together they measure at least {in_figures(together)} mm" if together else ""
    yield speak(
        cords_tangle,
        "stop" if long else "warn",
        f"There are two or more cords, ribbons or ties{measured}: they can tangle into one loop"
        + (", and over 380 mm it can go over a head." if long else "."),
        "Leave them away, or set them so far apart that their ends cannot meet.",
        basis="house" if long else "borrowed",
    )
