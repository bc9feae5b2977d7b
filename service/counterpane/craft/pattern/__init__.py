"""The written pattern as data: what a knitter is told, in order, before anybody lays it out on a page.

Rows, counts and lengths come from the plan; no wording of a row is kept anywhere else. Yarn amounts, charts and
pictures are deliberately not here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from counterpane.craft.measures import Units
from counterpane.craft.rows.say import WordsKind
from counterpane.craft.rows.tree import Side
from counterpane.craft.stitches import Terms


@dataclass(frozen=True, slots=True)
class Size:
    """The finished size in centimetres, and how far the reading of the swatch lets it be off either way."""

    width_cm: Fraction
    length_cm: Fraction
    width_tolerance_cm: Fraction
    length_tolerance_cm: Fraction


@dataclass(frozen=True, slots=True)
class TextureGauge:
    """Stitches and rows over a window of centimetres in a named texture; `stated` False where it was borrowed."""

    texture: str
    stitches: Fraction
    rows: Fraction
    over_cm: Fraction
    stated: bool
    text: str


@dataclass(frozen=True, slots=True)
class Entry:
    """A short word and what it stands for: an abbreviation, a material."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class Special:
    """A stitch that is more than an abbreviation, with its steps."""

    name: str
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Level:
    """How demanding the blanket is, with the reason and where the scale is from."""

    name: str
    reason: str
    source: str


@dataclass(frozen=True, slots=True)
class Edge:
    """The cast-on or the bind-off: its name, the line that gives the count, its steps and what to mind."""

    name: str
    line: str
    stitches: int
    steps: tuple[str, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WrittenRow:
    """A row in words, with the stitches it leaves; numbered from 1 in its section."""

    label: str
    side: Side
    text: str
    after: int


@dataclass(frozen=True, slots=True)
class Repeat:
    """Work the rows `first` to `last` of the section `times` times again."""

    first: int
    last: int
    times: int
    text: str


@dataclass(frozen=True, slots=True)
class Checkpoint:
    """What should be seen when `rows` rows of the section are done, which is row `blanket_row` of the blanket.

    `stitches` are on the needle, `long_cm` is how long the piece is from its cast-on edge, or a picked-up border from
    the edge; `ridges` are those of garter on its right side, None where there are none, `look` what the right side
    shows, "" where that is not known. `next_side` faces the knitter on the next row.
    """

    rows: int
    blanket_row: int
    text: str
    stitches: int = 0
    next_side: Side = "RS"
    long_cm: Fraction = Fraction(0)
    ridges: int | None = None
    look: str = ""


@dataclass(frozen=True, slots=True)
class WrittenSection:
    """A part of the blanket in words: its rows once, how they repeat, and where to look up from the needles."""

    name: str
    texture: str
    intro: str
    first_row: int
    last_row: int
    before: int
    after: int
    rows: tuple[WrittenRow, ...]
    repeats: tuple[Repeat, ...]
    checkpoints: tuple[Checkpoint, ...]
    stop: str
    lifelines: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WrittenBorder:
    """A border that is picked up along an edge: where and how many, at which rate, its rows, and its bind-off."""

    line: str
    stitches: int
    rates: tuple[str, ...]
    section: WrittenSection
    bind_off: str


@dataclass(frozen=True, slots=True)
class Caution:
    """A safety finding as the knitter reads it."""

    rule: str
    severity: str
    reference: str
    basis: str
    message: str
    source: str
    markets: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Held:
    """A list that the blanket was held against: its name and day, and what each item came to, in words."""

    name: str
    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Cautions:
    """The safety record of a pattern; what was not assessed is listed and is never a pass.

    The three lists of rules are in words. `read_for` is for whom it was read, "" where nobody said; `held` names a list
    of a ward or charity, and what each of its items came to. `parts` is what each component records of itself, `record`
    the whole answer of the safety rules as JSON values.
    """

    standing: tuple[str, ...]
    findings: tuple[Caution, ...]
    parts: tuple[Entry, ...]
    estimates: tuple[str, ...]
    assessed: tuple[str, ...]
    not_assessed: tuple[str, ...]
    not_applicable: tuple[str, ...]
    read_for: str = ""
    held: Held | None = None
    measured: tuple[str, ...] = ()
    conflicts: tuple[str, ...] = ()
    home_check: tuple[str, ...] = ()
    record: Mapping[str, object] = field(default_factory=dict, compare=False)

    @property
    def says_stop(self) -> bool:
        """Tell whether any finding stops: read before casting on."""
        return any(finding.severity == "stop" for finding in self.findings)


@dataclass(frozen=True, slots=True)
class Credit:
    """Where components come from that share it, and the licence of their wording; `components` are their slugs."""

    name: str
    text: str
    licence: str
    components: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class SwatchWords:
    """A swatch as it is read: its fabric, where the blanket works it, how it is made, and what is then done with it.

    `stitches` are the loops of the whole swatch, by which its weight is divided.
    """

    name: str
    where: str
    stitches: int
    making: tuple[str, ...]
    asking: tuple[str, ...]

    @property
    def steps(self) -> tuple[str, ...]:
        """All of them in order."""
        return (*self.making, *self.asking)


@dataclass(frozen=True, slots=True)
class NoSwatchWords:
    """A fabric that has no swatch, where the blanket works it, and in sentences why and what to do instead."""

    name: str
    where: str
    steps: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Pattern:
    """A blanket in words, abbreviated or in full, in the terms of one trade and in one or both units.

    `designer` is None where nobody is named, `edition` "" where it is not written as one; `asks` says where to ask
    whether it was corrected, and is no part of what is published.
    """

    title: str
    terms: Terms
    summary: str
    level: Level
    size: Size
    gauges: tuple[TextureGauge, ...]
    materials: tuple[Entry, ...]
    abbreviations: tuple[Entry, ...]
    specials: tuple[Special, ...]
    notes: tuple[str, ...]
    cast_on: Edge
    sections: tuple[WrittenSection, ...]
    bind_off: Edge
    finishing: tuple[str, ...]
    care: str
    cautions: Cautions
    credits: tuple[Credit, ...]
    sharing: str = ""
    sampler: tuple[str, ...] = ()
    swatches: tuple[SwatchWords, ...] = ()
    no_swatches: tuple[NoSwatchWords, ...] = ()
    borders: tuple[WrittenBorder, ...] = ()
    designer: str | None = None
    units: Units = "both"
    words: WordsKind = "short"
    edition: str = ""
    asks: str = ""

    @property
    def every_section(self) -> tuple[WrittenSection, ...]:
        """All sections in working order, those of picked-up borders last."""
        return (*self.sections, *(border.section for border in self.borders))

    @property
    def last_row(self) -> int:
        """The number of rows of the blanket."""
        return self.sections[-1].last_row
