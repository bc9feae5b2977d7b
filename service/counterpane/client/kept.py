"""What a library keeps as frozen values: components, recipes, profiles, their revisions, and its history."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.client.results import Finding, Json, Multiple, Result


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
class FoundCard(ComponentCard):
    """A component's line in a search: counts within the width, how alike, and where it meets, as far as asked for."""

    widths: tuple[Json, ...] | None
    alike: Json | None
    goes_with: Json | None


@dataclass(frozen=True, slots=True)
class Facets(Result):
    """What a search finds, counted: each facet with its words, and of how many it is not known."""

    counted: int
    whole: bool
    facets: tuple[Json, ...]


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
class EditionCard(Result):
    """An edition's line in a list."""

    recipe: str
    number: int
    date: str
    reason: str
    revision: str
    sha256: str


@dataclass(frozen=True, slots=True)
class Edition(EditionCard):
    """An edition as it is kept, with what it pins and its erratum; the first has none."""

    note: str
    pins: Json
    previous: str | None
    patterns: tuple[Json, ...]
    erratum: Json | None
    etag: str


@dataclass(frozen=True, slots=True)
class Touched(Result):
    """A recipe, or its latest edition, that pins an older revision of a component; the erratum that would follow."""

    recipe: str
    revision: str
    edition: int | None
    pinned: str
    safety_notes_changed: bool
    fits: bool
    findings: tuple[Finding, ...]
    erratum: Json | None


@dataclass(frozen=True, slots=True)
class ProfileCard(Result):
    """A list's line in the list of lists."""

    slug: str
    name: str
    dated: str
    source: str
    status: str
    sha256: str


@dataclass(frozen=True, slots=True)
class Profile(Result):
    """A list as it is kept; `data` is what to change and send back with `etag`."""

    slug: str
    name: str
    dated: str
    source: str
    items: tuple[Json, ...]
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
    by: str
    parent: str | None


@dataclass(frozen=True, slots=True)
class Standing(Result):
    """Where each revision of a slug stands, and all moves, oldest first."""

    slug: str
    revisions: tuple[Json, ...]
    moves: tuple[Json, ...]


@dataclass(frozen=True, slots=True)
class SubmissionCard(Result):
    """A line of the queue: what it is about, whose turn it is, and for how many days."""

    number: int
    lane: str
    about: str
    slug: str
    turn: str
    since: str
    waiting_days: int | None


@dataclass(frozen=True, slots=True)
class Submission(SubmissionCard):
    """A submission or a report whole, with what the program found and all decisions."""

    sha256: str
    say: str
    checks: Json | None
    decisions: tuple[Json, ...]


@dataclass(frozen=True, slots=True)
class UsedIn(Result):
    """How many recipes use a component, and the first of them."""

    component: str
    recipes: int
    whole: bool
    items: tuple[Json, ...]


@dataclass(frozen=True, slots=True)
class Outdated(Result):
    """Which parts of a recipe have successors, and the figures that an upgrade changes."""

    recipe: str
    parts: tuple[Json, ...]
    fits: bool
    changes: tuple[Json, ...]
    findings: tuple[Json, ...]


@dataclass(frozen=True, slots=True)
class Change(Result):
    """One line of the history of a library."""

    seq: int
    at: str
    kind: str
    slug: str
    sha256: str | None
    event: str
