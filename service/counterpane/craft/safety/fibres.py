"""What a fibre's name tells: of which kinds it is, and whether the name is known at all."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

NAMES: Mapping[str, frozenset[str]] = {
    "wool": frozenset({"wool", "merino"}),
    "protein": frozenset(
        {"wool", "merino", "silk", "mohair", "angora", "cashmere", "alpaca", "llama", "yak", "camel", "casein"}
    ),
    "cellulosic": frozenset(
        {"cotton", "linen", "flax", "viscose", "rayon", "bamboo", "modal", "lyocell", "hemp", "ramie", "cupro"}
    ),
    "melting": frozenset({"acrylic", "nylon", "polyamide", "polyester"}),
    "untested": frozenset(
        {"acrylic", "nylon", "polyamide", "olefin", "polypropylene", "polyethylene", "polyester", "wool", "merino"}
    ),
    "shedding": frozenset({"mohair", "angora", "chenille", "unspun", "roving", "brushed", "fur", "eyelash"}),
    "cutting": frozenset({"monofilament", "invisible", "metal", "lamé"}),
    "other": frozenset({"elastane", "spandex", "acetate", "triacetate", "polylactide"}),
}
"""Words within the names of fibres, by kind. `untested` are those of 16 CFR 1610.1(d)(2): acrylic, modacrylic, nylon,
olefin, polyester and wool, also by their European names. The rest is common practice, no source."""

NO_WOOL = frozenset({"cotton wool"})
"""Names with a word of a kind to which they do not belong."""


@dataclass(frozen=True, slots=True)
class Fibre:
    """One fibre of the yarn, its share in per cent and its mean diameter in micrometres."""

    name: str
    pct: Fraction | None = None
    micron: Fraction | None = None

    def of(self, kind: str) -> bool:
        """Tell whether the name holds a word of this kind."""
        name = self.name.casefold()
        return name not in NO_WOOL and any(word in name for word in NAMES[kind])

    @property
    def known(self) -> bool:
        """Tell whether the name holds any word that is known here."""
        return any(self.of(kind) for kind in NAMES)
