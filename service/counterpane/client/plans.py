"""Answers about a plan request as frozen values: plans, patterns, sizes, gauges, safety and labels."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.client.results import Finding, Json, Result


@dataclass(frozen=True, slots=True)
class Plan(Result):
    """A recipe worked out."""

    recipe: Json
    counts: Json
    finished: Json
    sections: tuple[Json, ...]
    nearest: tuple[Json, ...]
    stitches_total: int
    behaviour: Json
    yarn: Json | None
    findings: tuple[Finding, ...]
    label: Json | None
    safety: Json | None


@dataclass(frozen=True, slots=True)
class Proposals(Result):
    """Complete recipes, the best first; the `request` of each goes on to a plan as it stands. None is called safe."""

    proposals: tuple[Json, ...]
    passed_over: tuple[Json, ...]
    whole: bool
    said: str


@dataclass(frozen=True, slots=True)
class Pattern(Result):
    """A written pattern: as data, and as plain text."""

    pattern: Json
    text: str


@dataclass(frozen=True, slots=True)
class Swatches(Result):
    """The swatches of a plan, one entry for each fabric."""

    terms: str
    swatches: tuple[Json, ...]
    no_swatch: tuple[Json, ...]
    basis: str


@dataclass(frozen=True, slots=True)
class Regauged(Result):
    """A recipe at another gauge; a same size that cannot be made has null figures."""

    before: Json
    same_size: Json
    same_counts: Json
    shape: Json


@dataclass(frozen=True, slots=True)
class Grade(Result):
    """A recipe in several sizes: each worked out, and one pattern of all, as data and as a text."""

    names: tuple[str, ...]
    sizes: tuple[Json, ...]
    pattern: Json
    text: str


@dataclass(frozen=True, slots=True)
class Gauges(Result):
    """What swatches say, one entry for each texture; the `gauge` of an entry goes into a plan request."""

    gauges: tuple[Json, ...]
    basis: str
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class Lesson(Result):
    """A plan told for a class."""

    lesson: Json


@dataclass(frozen=True, slots=True)
class ClassSheet(Result):
    """A row for each knitter of a class, in their order; without a plan its counts are null and findings say why."""

    knitters: tuple[Json, ...]


@dataclass(frozen=True, slots=True)
class Safety(Result):
    """What the safety rules say, and what was not assessed, which is never a pass."""

    findings: tuple[Finding, ...]
    assessed: tuple[str, ...]
    not_assessed: tuple[str, ...]
    not_applicable: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Label(Result):
    """What a piece is made of, what each market wants on its label, and what is not known, which is never a pass."""

    composition: Json
    parts: tuple[Json, ...]
    labels: tuple[Json, ...]
    findings: tuple[Finding, ...]
    not_known: tuple[Json, ...]
