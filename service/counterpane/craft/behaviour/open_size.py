"""How large the openings of a texture come out at a gauge, with all that is uncertain about it. An estimate, no pass.

The house model of `openings` is put to both ends of the reading of the gauge. What the yarn draws from its neighbours
is not in it, so that only a rod in the washed piece decides.
"""

from __future__ import annotations

from fractions import Fraction

from counterpane.craft.behaviour.figures import Figure
from counterpane.craft.behaviour.readings import read_ends
from counterpane.craft.measures import Gauge
from counterpane.craft.openings import opening_mm

BY_MODEL = "house model of loops and cells, with the error of reading the gauge; measure with a rod"


def opening_size(yarn_overs: int, gauge: Gauge, yarn_mm: Fraction | None = None) -> Figure:
    """Return the millimetres of an opening of so many yarn-overs side by side.

    The low end is not known without the yarn's diameter.
    """
    finer, coarser = read_ends(gauge)
    low = opening_mm(yarn_overs, finer, yarn_mm).low
    return Figure(low, opening_mm(yarn_overs, coarser, yarn_mm).high, "mm", "house", BY_MODEL)
