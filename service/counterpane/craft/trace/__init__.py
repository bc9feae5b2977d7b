"""Counts, the second road: rows worked loop by loop on real needles, at small counts.

Nothing here uses arithmetic on rows: a repeat is laid off stitch by stitch, a group is worked as often as it says, and
what a list of stitches uses is found by working it from an endless needle. Only the tree and the vocabulary are shared
with `counts`. Each loop keeps its row, its stitch and the loops it was drawn through, so that the fabric can be asked.
"""

from counterpane.craft.trace.halts import Halt
from counterpane.craft.trace.loops import CAST_ON, Loop, Side, Worked
from counterpane.craft.trace.tracing import Step, Traced, TracedRow, trace

__all__ = ["CAST_ON", "Halt", "Loop", "Side", "Step", "Traced", "TracedRow", "Worked", "trace"]
