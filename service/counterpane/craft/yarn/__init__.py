"""Yarn of a plan: how much each part and colour takes, in loops, metres, grams and balls.

A figure is never one number: it has a low end, a likely value and a high end, and says what it rests on. What is not
known is None and never 0. Loops are the unit of all counting: one is the yarn of one plain knit stitch.
"""

from counterpane.craft.yarn.amounts import ColourYarn, PartYarn, YarnEstimate, estimate
from counterpane.craft.yarn.scales import Scale, scale_by_gauge, scale_by_weighing
from counterpane.craft.yarn.spreads import Spread
from counterpane.craft.yarn.values import Fibre, Weighed, Yarn

__all__ = [
    "ColourYarn",
    "Fibre",
    "PartYarn",
    "Scale",
    "Spread",
    "Weighed",
    "Yarn",
    "YarnEstimate",
    "estimate",
    "scale_by_gauge",
    "scale_by_weighing",
]
