"""Test knits, answers and finished pieces of a recipe, and what was corrected since an edition: values and calls."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from counterpane.client.asking import Json, step
from counterpane.client.keeping import KeptCalls
from counterpane.client.results import Result


@dataclass(frozen=True, slots=True)
class Jotting(Result):
    """A jotting as it is kept; `data` holds what it says and what follows from it."""

    number: int
    sort: str
    recipe: str
    revision: str
    whose: str | None
    sha256: str
    etag: str
    href: str


@dataclass(frozen=True, slots=True)
class Knitted(Result):
    """All test knits of a recipe against their plans, and what yarn and pace come to by them."""

    recipe: str
    knits: int
    whole: bool
    items: tuple[Json, ...]
    loop_mm: Json | None
    stitches_a_minute: Json | None
    left_out: tuple[Json, ...]


@dataclass(frozen=True, slots=True)
class RowNote(Result):
    """What was asked and answered of one row, and by how many knitters."""

    section: str
    row: int
    knitters: int
    flagged: bool
    wrong: bool
    questions: tuple[Json, ...]
    answers: tuple[Json, ...]


@dataclass(frozen=True, slots=True)
class Corrections(Result):
    """What was corrected since an edition, safety first."""

    recipe: str
    edition: int
    latest: int
    corrected: bool
    safety: bool
    items: tuple[Json, ...]
    erratum: Json | None


class JottingCalls(KeptCalls):
    """What is noted of recipes; `sort` is "test-knits", "answers" or "pieces"."""

    def note(self, slug: str, sort: str, content: Json) -> Jotting:
        """Note something of a recipe; it is sent with a key, and written once."""
        return Jotting.of(self._post(f"/v1/recipes/{step(slug)}/{step(sort)}", content))

    def notes(self, slug: str, sort: str) -> Iterator[Jotting]:
        """Give what was noted of a recipe, over all pages."""
        return self._pages(f"/v1/recipes/{step(slug)}/{step(sort)}", None, Jotting)

    def noted(self, slug: str, sort: str, number: int) -> Jotting:
        """Get one with what follows from it."""
        return Jotting.of(self._get(f"/v1/recipes/{step(slug)}/{step(sort)}/{number}"))

    def change_note(self, slug: str, sort: str, number: int, content: Json, etag: str) -> Jotting:
        """Say something else in one; `etag` is that of what is changed."""
        return Jotting.of(self._put(f"/v1/recipes/{step(slug)}/{step(sort)}/{number}", content, etag))

    def take_back(self, slug: str, sort: str, number: int, say: str) -> Json:
        """Take one back for a reason: what it said is kept no longer; it is sent with a key, and done once."""
        return self._post(f"/v1/recipes/{step(slug)}/{step(sort)}/{number}/taking-back", {"say": say})

    def knitted(self, slug: str) -> Knitted:
        """Get all test knits of a recipe against their plans."""
        return Knitted.of(self._get(f"/v1/recipes/{step(slug)}/knitted"))

    def row_notes(self, slug: str) -> tuple[RowNote, ...]:
        """Return the rows of a recipe about which something was asked or answered."""
        return self._items(f"/v1/recipes/{step(slug)}/rows", RowNote)

    def corrections(self, slug: str, number: int, **asked: Any) -> Corrections:
        """Get what was corrected since an edition."""
        return Corrections.of(self._get(f"/v1/recipes/{step(slug)}/editions/{number}/corrections", asked))
