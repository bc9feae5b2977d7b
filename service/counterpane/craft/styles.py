"""House style: how a house prints what can be printed in several ways. The styles are data and are passed in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from counterpane.craft.stitches import Terms


@dataclass(frozen=True, slots=True)
class Style:
    """One house style. Each form is given by an example of it; None is "as the designer likes".

    `row_label`, `side`, `count`, `times` and `sizes` show the sign or bracket that is used, `first_letter` whether a
    row begins with a capital, `rep` and `to_end` the words of a starred repeat, `size_order` how sizes follow each
    other, `units` which of two lengths stands first. `abbreviations` gives by key of the vocabulary the name to print.
    `basis` says where the style comes from; a house's own figures and forms are "house".
    """

    slug: str
    name: str
    summary: str
    basis: Literal["house", "published"]
    source: str | None = None
    terms: Terms | None = None
    row_label: Literal["Row 1:", "1st row:"] | None = None
    side: Literal["(RS)", "[RS]", "(right side)"] | None = None
    first_letter: Literal["K2", "k2"] | None = None
    count: Literal["(95 sts)", "[95 sts]", "— 95 sts", "= 95 sts"] | None = None
    sizes: Literal["95 (113, 131)", "95 [113, 131]", "95 (113: 131)", "95 [113: 131]"] | None = None
    size_order: Literal["small to large", "large to small"] | None = None
    rep: Literal["rep from *", "repeat from *"] | None = None
    to_end: Literal["to end", "to the end", "to end of row"] | None = None
    times: Literal["[k1, p1] 3 times", "(k1, p1) 3 times"] | None = None
    units: Literal["20 cm (8 in)", "8 in (20 cm)"] | None = None
    abbreviations: Mapping[str, str] = field(default_factory=dict)
