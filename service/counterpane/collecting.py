"""How seldom the interpreter looks for objects that only hold each other.

Reading a text makes many small objects at once, of which hardly any are held in a circle. Looking for those as often as
an interpreter does by itself took up to half of the time of a check.
"""

from __future__ import annotations

import gc

NEW = 50_000
"""Objects made and not yet freed after which the newest are looked through; house figure."""

ROUNDS = 20
"""Such looks after which older objects are looked through too; house figure."""


def collect_seldom() -> None:
    """Set it for the whole process, as a program may at its start and a library may not."""
    gc.set_threshold(NEW, ROUNDS, ROUNDS)
