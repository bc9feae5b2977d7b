"""Numbers of several sizes, in another form or order than the style's."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from counterpane.craft.checking.printed import Departure, Printed, noted
from counterpane.craft.findings import Finding, rule
from counterpane.craft.rows.tree import Place

_SIZES = re.compile(r"(?<!\d)(?P<first>\d++)\s*+[(\[]\s*(?P<rest>\d+(?:\s*[,;:/]\s*\d+)+)\s*[)\]]")
_NUMBER = re.compile(r"\d+")


@rule(
    "style-sizes",
    family="style",
    severity="note",
    bad="Cast on 8 [12, 16] sts.\nRow 1: Knit.",
    good="Cast on 8 (12, 16) sts.\nRow 1: Knit.",
    source="house",
)
def style_sizes(text: Printed) -> Iterator[Finding]:
    """The numbers of several sizes are printed in another form or order than the house style.

    Whoever knits the third size looks for the third number, a hundred times; the brackets, the signs between and the
    order must be the same each time.
    """
    every = [(number, found) for number, line in enumerate(text.lines, 1) for found in _SIZES.finditer(line)]
    if text.style.sizes is not None:
        yield from noted(text, "style-sizes", "Sizes are printed", _forms(text.style.sizes, every))
    if text.style.size_order is not None:
        down = text.style.size_order == "large to small"
        yield from noted(text, "style-sizes", "Sizes are printed", _orders(down, every))


def _forms(form: str, every: list[tuple[int, re.Match[str]]]) -> Iterator[Departure]:
    """Give the numbers whose brackets or signs differ."""
    opening, sign, closing = form[3], form[7], form[-1]
    for number, found in every:
        rest = f"{sign} ".join(_NUMBER.findall(found["rest"]))
        wanted = f"{found['first']} {opening}{rest}{closing}"
        if found.group() != wanted:
            yield Departure(Place(number, found.start() + 1), found.group(), wanted)


def _orders(down: bool, every: list[tuple[int, re.Match[str]]]) -> Iterator[Departure]:
    """Give the numbers that run the other way; those that go up and down say nothing of the sizes."""
    for number, found in every:
        counts = [int(count) for count in _NUMBER.findall(found.group())]
        if all((one < other if down else one > other) for one, other in pairwise(counts)):
            turned = iter(reversed(_NUMBER.findall(found.group())))
            wanted = _NUMBER.sub(lambda _, turned=turned: next(turned), found.group())  # type: ignore[misc]
            yield Departure(Place(number, found.start() + 1), found.group(), wanted)
