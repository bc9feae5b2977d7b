"""Counts, the first road: rows as maps on the stitch count, in closed form, at a cost independent of the count.

A row that works `A (B)^r C` turns a count `before = s + b r` into `after = s' + b' r`. A chain of rows is followed with
the count held as `base + per t` for an unknown whole `t`; each repeat thins the values of `t` by a congruence, each
stitch by a lower bound. What is left of `t` at the end is the multiple, and the same walk with a known count proves a
piece of any width. Nothing here simulates a needle: that is `trace`, which shares only the tree with this package.
"""

from counterpane.craft.counts.chain import count
from counterpane.craft.counts.cutting import cuts
from counterpane.craft.counts.maps import Maps
from counterpane.craft.counts.passes import can_repeat, passes_from, passes_until
from counterpane.craft.counts.values import UNPROVED, Chain, Misfit, Progression, Slug, Step, judge
from counterpane.craft.counts.ways import ways
from counterpane.craft.counts.wellformed import malformed
from counterpane.craft.counts.work import work

__all__ = [
    "UNPROVED",
    "Chain",
    "Maps",
    "Misfit",
    "Progression",
    "Slug",
    "Step",
    "can_repeat",
    "count",
    "cuts",
    "judge",
    "malformed",
    "passes_from",
    "passes_until",
    "ways",
    "work",
]
