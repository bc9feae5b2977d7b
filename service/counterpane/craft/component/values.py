"""A component: a part of a blanket that is kept to be used again, and what follows from its rows.

The content of a component is one JSON object, the same in a seed file, in a request and in the store; its field names
are the fields below. What is derived from the rows is never stored in the content; `derived` works it out.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Kind = Literal["cast-on", "border", "selvedge", "body", "bind-off"]
Reversible = Literal["yes", "both-good", "no"]
Look = Literal["chain", "bumps", "rope", "cord", "loops"]
KINDS: tuple[Kind, ...] = ("cast-on", "border", "selvedge", "body", "bind-off")
_NAMED = {"common-practice": "common practice, no source"}
"""What is said of a source that has no name of its own."""


@dataclass(frozen=True, slots=True)
class Version:
    """One set of rows of a component: most have one, a moss has one for odd and one for even counts.

    The rows of a selvedge are whole rows: what they work before and after the pattern is the edge.
    """

    name: str
    rows: str


@dataclass(frozen=True, slots=True)
class Operation:
    """How a cast-on or bind-off is worked, for which no row says it.

    `steps` are sentences. `turn` says whether one turns before row 1; `faces_row_1` which face of the cast-on faces the
    knitter on row 1; `side` on which side a bind-off is worked ("RS", "WS" or None for either).
    `look` is what the edge shows on the side it faces: that of row 1 for a cast-on, that on which it is worked for a
    bind-off; None where not known. `least` is the least number of stitches; `loops_per_stitch` the yarn of one stitch
    in loops of plain knitting, as decimal text, None where not known.
    """

    steps: tuple[str, ...]
    least: int = 1
    turn: bool | None = None
    faces_row_1: str | None = None
    side: str | None = None
    stretch: str | None = None
    loops_per_stitch: str | None = None
    look: Look | None = None


@dataclass(frozen=True, slots=True)
class Parameter:
    """A whole number that a component takes: "rows" or "stitches", from `least` in steps of `step`."""

    name: Literal["rows", "stitches"]
    least: int
    default: int
    step: int = 1
    most: int | None = None


@dataclass(frozen=True, slots=True)
class Measure:
    """A value with its unit, as decimal text: 1 yarn-over, 3 stitches."""

    value: str
    unit: str


Note = Measure | Literal["none", "not known"]


@dataclass(frozen=True, slots=True)
class SafetyNotes:
    """What the structure of a component holds for a baby's fingers and mouth; millimetres belong to a recipe."""

    loose_yarn: Note = "not known"
    floats: Note = "not known"
    openings: Note = "not known"
    ties: Note = "not known"
    fibre: Note = "not known"


@dataclass(frozen=True, slots=True)
class MeasuredOpening:
    """The largest opening of a washed piece of this part, in millimetres as decimal text, as somebody measured it.

    `on` is the day as ISO 8601 has it; yarn, gauge and wash are in words. It holds for that yarn and gauge alone.
    """

    mm: str
    by: str
    on: str
    yarn: str
    gauge: str
    wash: str


@dataclass(frozen=True, slots=True)
class Example:
    """A worked example: cast on `stitches`, and the counts after each row (of version number `version`)."""

    stitches: int
    after: tuple[int, ...]
    version: int = 0


@dataclass(frozen=True, slots=True)
class Provenance:
    """Where a component comes from: a source by slug, the place in it, its year, and the licence of the wording.

    `printed` is what the source itself says of it, word for word, such as the multiple that it states. `notice` is the
    maker's copyright notice, `address` where the maker keeps the part, `changes` who changed it and how, in order.
    """

    source: str
    licence: str
    author: str
    where: str | None = None
    year: int | None = None
    printed: str | None = None
    notice: str | None = None
    address: str | None = None
    changes: tuple[str, ...] = ()

    def cited(self, sources: Mapping[str, str]) -> str:
        """Return the source by its name, its year and the place in it, each once; `sources` are names by slug."""
        name = sources.get(self.source) or _NAMED.get(self.source, self.source)
        return ", ".join(dict.fromkeys(str(part) for part in (name, self.year, self.where) if part is not None))


@dataclass(frozen=True, slots=True)
class SlippedEdge:
    """How the slipped stitch of a selvedge is slipped, and where the yarn is."""

    manner: Literal["kwise", "pwise"]
    yarn: Literal["front", "back"]


@dataclass(frozen=True, slots=True)
class Component:
    """A stored part: its rows in words or its operation, and what people must know of it.

    `yarn_classes` are the council's numbers of the yarns that its author worked it in; none where nothing is said.
    """

    slug: str
    kind: Kind
    name: str
    summary: str
    provenance: Provenance
    safety: SafetyNotes
    also_called: tuple[str, ...] = ()
    versions: tuple[Version, ...] = ()
    operation: Operation | None = None
    parameters: tuple[Parameter, ...] = ()
    reversible: Reversible | None = None
    across_corner: bool | None = None
    slipped_edge: SlippedEdge | None = None
    examples: tuple[Example, ...] = ()
    gauge_notes: str = ""
    measured: tuple[MeasuredOpening, ...] = ()
    yarn_classes: tuple[int, ...] = ()
