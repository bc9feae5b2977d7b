"""A list with more or fewer numbers than there are sizes."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at, quoted
from counterpane.craft.findings import Finding, rule


@rule(
    "sizes-differ-in-number",
    family="reading",
    severity="error",
    bad="Cast on 12 (16, 20) sts.\nRow 1: K4 (5), p8 (12, 16).\n",
    good="Cast on 12 (16, 20) sts.\nRow 1: K4 (5, 6), p8 (11, 14).\n",
)
def sizes_differ_in_number(examined: Examined) -> Iterator[Finding]:
    """A list has more or fewer numbers than there are sizes.

    In a pattern of several sizes each list gives one number a size, in the same order. A list that is short of one, or
    has one too many, leaves open which number is whose.
    """
    sizes = examined.instructions.sizes
    for each in sizes.misfits if sizes else ():
        many = len(each.entries)
        printed = quoted(f"{each.entries[0]} ({', '.join(each.entries[1:])})")
        message = f"{printed} has {many} numbers, and this text is written in {sizes.number if sizes else many} sizes."
        hint = "Give one number for each size; write 0 or a dash where a size works none."
        yield at(each.place, "sizes-differ-in-number", "error", message, hint)
