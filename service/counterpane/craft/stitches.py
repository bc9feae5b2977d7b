"""The vocabulary of stitches: what each uses, makes and shows. The entries are data and are passed in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

Terms = Literal["us", "uk"]
Face = Literal["knit", "purl"]


@dataclass(frozen=True, slots=True)
class Stitch:
    """One stitch or working of the trade.

    `uses` loops of the left needle become `makes` loops on the right one (`makes` may be negative for a pass-over).
    `names` are the spellings a reader accepts in each terminology, lower case, the one to print first; a name that is
    the same in both is in both. `words` are the names to print where rows are written in full; several where the
    neighbours decide, as for the UK yarn-over. `said` is the description for an abbreviation list in each terminology.
    `face` is what the stitch shows on the side it is worked from. `lean` is where the top stitch of a decrease,
    increase or cross leans. `back` is the key that shows the same fabric worked from the other side; `mirror` the key
    that leans the other way; None where there is none.
    `needs` is how many loops must be on the right needle before it. `loop_factor` is its yarn in loops of plain
    knitting, as decimal text, and `loop_range` the least and the most of it where that is no single figure; None is
    "not known".
    """

    key: str
    uses: int
    makes: int
    names: Mapping[Terms, tuple[str, ...]]
    said: Mapping[Terms, str]
    face: Face | None = None
    lean: Literal["left", "right", "centre"] | None = None
    back: str | None = None
    mirror: str | None = None
    opens: bool = False
    needs: int = 0
    ambiguous: tuple[str, ...] = ()
    source: str = "common practice, no source"
    loop_factor: str | None = None
    loop_range: tuple[str, str] | None = None
    words: Mapping[Terms, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, eq=False, repr=False)
class Vocabulary:
    """All stitches by key, and the keys by each name a reader may meet, in lower case."""

    stitches: Mapping[str, Stitch]
    by_name: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    @classmethod
    def of(cls, stitches: Iterable[Stitch]) -> Vocabulary:
        """Build the vocabulary with its index of names; a name shared by several keys lists them all."""
        known = {stitch.key: stitch for stitch in stitches}
        names: dict[str, tuple[str, ...]] = {}
        for stitch in known.values():
            for name in dict.fromkeys(name.lower() for group in stitch.names.values() for name in group):
                names[name] = (*names.get(name, ()), stitch.key)
        return cls(known, names)

    def __repr__(self) -> str:
        return f"<vocabulary of {len(self.stitches)} stitches>"

    def __getitem__(self, key: str) -> Stitch:
        """Return the stitch of a key; KeyError for one the vocabulary does not hold."""
        return self.stitches[key]
