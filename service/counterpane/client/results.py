"""Answers as frozen values. Each keeps the whole JSON object in `data`, with members that are not named here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any, Self

Json = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Result:
    """An answer; `data` is all of it as it came."""

    data: Json

    @classmethod
    def of(cls, data: Json) -> Self:
        """Return the answer with its members as fields; one that is missing is None."""
        named = (field.name for field in fields(cls) if field.name != "data")
        return cls(data, **{name: cls.read(name, data.get(name)) for name in named})

    @classmethod
    def read(cls, name: str, value: Any) -> Any:
        """Return the value of a field; lists become tuples."""
        if isinstance(value, Mapping) and name == "multiple":
            return Multiple(value["of"], value["plus"], value["least"])
        if isinstance(value, list):
            return tuple(cls.item(name, each) for each in value)
        return value

    @classmethod
    def item(cls, name: str, value: Any) -> Any:
        """Return an entry of a list as a value of its own sort, where it has one."""
        sorts: dict[str, type[Result]] = {"findings": Finding, "rows": CheckedRow, "queries": SheetQuery}
        if name == "classes":
            return Multiple(value["of"], value["plus"], value["least"])
        return sorts[name].of(value) if name in sorts else value


@dataclass(frozen=True, slots=True)
class Multiple:
    """Every count from `least` that leaves `plus` when divided by `of`."""

    of: int
    plus: int
    least: int


@dataclass(frozen=True, slots=True)
class Finding(Result):
    """What a rule says, with its place and the next step."""

    rule: str
    severity: str
    message: str
    hint: str | None
    line: int | None
    column: int | None
    pointer: str | None


@dataclass(frozen=True, slots=True)
class CheckedRow(Result):
    """A row in working order with the stitches before and after it."""

    label: str
    section: str | None
    side: str | None
    line: int
    before: int | None
    after: int | None


@dataclass(frozen=True, slots=True)
class Check(Result):
    """What follows from a text of rows."""

    cast_on: int | None
    terms: str
    multiple: Multiple | None
    fixed: int | None
    classes: tuple[Multiple, ...] | None
    rows: tuple[CheckedRow, ...]
    drift: int | None
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class SheetQuery(Result):
    """A question to the designer, with what was answered and decided, and where it stands."""

    number: int
    state: str
    question: str
    answer: str
    decision: str | None
    note: str
    rule: str | None
    section: str | None
    row: str | None
    line: int | None
    column: int | None
    words: str
    acceptance: str | None


@dataclass(frozen=True, slots=True)
class Sheet(Result):
    """An editor's sheet after a check; `data` is what to change and send again with the changed text."""

    text: str | None
    checked: str
    style: str | None
    queries: tuple[SheetQuery, ...]


@dataclass(frozen=True, slots=True)
class SaidRow(Result):
    """A row in words, and as it is worked at its count; `repeats` is how often each repeat is worked.

    `kept` is why the words are those that are printed, None where they are not.
    """

    label: str
    section: str | None
    side: str | None
    line: int
    words: str
    kept: str | None
    written_out: str | None
    before: int | None
    after: int | None
    repeats: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Wording(Result):
    """A text in other words."""

    terms: str
    rows: tuple[SaidRow, ...]
    text: str
    findings: tuple[Finding, ...]

    @classmethod
    def item(cls, name: str, value: Any) -> Any:
        """Return an entry of a list as a value of its own sort."""
        return SaidRow.of(value) if name == "rows" else Finding.of(value)


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
class Pattern(Result):
    """A written pattern: as data, and as plain text."""

    pattern: Json
    text: str


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


@dataclass(frozen=True, slots=True)
class ComponentCard(Result):
    """A component's line in a list."""

    slug: str
    kind: str
    name: str
    summary: str
    reversible: str | None
    multiple: Multiple | None
    fixed: int | None
    classes: tuple[Multiple, ...] | None
    status: str
    sha256: str


@dataclass(frozen=True, slots=True)
class Companion(ComponentCard):
    """A component that fits another at a count, and where."""

    places: tuple[Json, ...]


@dataclass(frozen=True, slots=True)
class AlikeList(Result):
    """The components with textures like that of another, the likest first, and how many could not be compared."""

    component: str
    items: tuple[Json, ...]
    compared: int
    not_compared: int


@dataclass(frozen=True, slots=True)
class Component(Result):
    """A component as it is kept; `data` is what to change and send back with `etag`."""

    slug: str
    kind: str
    name: str
    summary: str
    derived: Json
    status: str
    sha256: str
    etag: str


@dataclass(frozen=True, slots=True)
class RecipeCard(Result):
    """A recipe's line in a list."""

    slug: str
    name: str
    summary: str
    construction: str
    parts: tuple[str, ...]
    status: str
    sha256: str


@dataclass(frozen=True, slots=True)
class Recipe(Result):
    """A recipe as it is kept; `data` is what to change and send back with `etag`."""

    slug: str
    name: str
    summary: str
    construction: str
    parts: Json
    status: str
    sha256: str
    etag: str


@dataclass(frozen=True, slots=True)
class Revision(Result):
    """One revision of what is kept."""

    number: int
    sha256: str
    at: str
    status: str


@dataclass(frozen=True, slots=True)
class Rule(Result):
    """A rule with its reason and examples; a list gives the first four fields only."""

    slug: str
    family: str
    severity: str
    title: str
    reason: str | None
    bad: str | None
    good: str | None
    source: str | None


@dataclass(frozen=True, slots=True)
class Fact(Result):
    """A fact with its source; numbers are decimal text."""

    name: str
    topic: str
    says: str
    source: str
    value: Any
    unit: str | None


@dataclass(frozen=True, slots=True)
class Size(Result):
    """A size by its name: what is planned for it, and the span of what its sources say."""

    name: str
    also: tuple[str, ...]
    says: str
    width_cm: float
    length_cm: float
    range_cm: Json
    beside_cots: tuple[Json, ...] | None


@dataclass(frozen=True, slots=True)
class Swatches(Result):
    """The swatches of a plan, one entry for each fabric."""

    terms: str
    swatches: tuple[Json, ...]
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
class Change(Result):
    """One line of the history of a library."""

    seq: int
    at: str
    kind: str
    slug: str
    sha256: str | None
    event: str
