"""Numbers for several sizes that do not go one way."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from counterpane.craft.checking import Examined
from counterpane.craft.checking.wording import at
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.statements import casts_on
from counterpane.craft.rows.words import Line

_N = r"(?:(?:\d{1,4} )?(?<!/)\d/\d(?![\d/])|\d{1,4}(?:\.\d{1,2})?)"
"""A number, also with a fraction of one figure: 27 1/2."""
_SIZES = re.compile(rf"(?<![\d./])(?P<first>{_N})\s*[(\[]\s*(?P<rest>{_N}(?:\s*[,:;/-]\s*{_N})+)\s*[)\]]")

# What every such list holds, which is quickly told.
_MAY_LIST = re.compile(r"[(\[]\s*\d[\d./\s]*[,:;/-]")


@rule(
    "size-order-changes",
    family="wording",
    severity="warning",
    bad="Cast on 20 (28, 24) sts.\nRow 1: *K2, p2; rep from * to end.",
    good="Cast on 20 (24, 28) sts.\nRow 1: *K2, p2; rep from * to end.",
)
def size_order_changes(examined: Examined) -> Iterator[Finding]:
    """The numbers of several sizes do not go one way.

    Sizes are printed from small to large, and a cast-on and a finished size grow with them. A number out of order
    belongs to another size or is misprinted.
    """
    if "(" not in examined.text and "[" not in examined.text:
        return
    sized = {stretch.line.number for stretch in examined.instructions.page.under("size")}
    for line in examined.instructions.page.lines:
        if _MAY_LIST.search(line.text) and (line.number in sized or casts_on(line.text)):
            yield from _out_of_order(line)


def _out_of_order(line: Line) -> Iterator[Finding]:
    """Yield the lists of a line that rise and fall."""
    for match in _SIZES.finditer(line.text):
        numbers = [_value(text) for text in (match["first"], *re.findall(_N, match["rest"]))]
        rises = [later > earlier for earlier, later in pairwise(numbers) if later != earlier]
        if len(set(rises)) > 1:
            message = f"The numbers {match.group()} do not go one way."
            hint = "Put the sizes in one order, or correct the number that is out of it."
            yield at(line.place(match.start()), "size-order-changes", "warning", message, hint)


def _value(text: str) -> Fraction:
    return sum(map(Fraction, text.split()), Fraction(0))
