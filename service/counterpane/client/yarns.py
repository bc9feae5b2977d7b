"""Answers about yarn as frozen values."""

from __future__ import annotations

from dataclasses import dataclass

from counterpane.client.results import Json, Result


@dataclass(frozen=True, slots=True)
class Largest(Result):
    """The largest blanket of the yarn at hand; `size` can be sent on as the size of a plan request."""

    size: Json
    cast_on: int
    rows: int
    yarn: Json
    limited: bool
    without_margin: Json | None
    plan: Json


@dataclass(frozen=True, slots=True)
class OnNeedle(Result):
    """What should be on the needle after a row, how far the piece is, and where a count went wrong."""

    row: Json
    progress: Json
    count_in: Json | None
    looks_wrong: tuple[Json, ...]
    wrong: Json | None


@dataclass(frozen=True, slots=True)
class Where(Result):
    """The next question about a piece on the needle; None where one row is left, or those left look alike."""

    rows: int
    left: int
    question: Json | None
    candidates: tuple[Json, ...]
    told: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Midway(Result):
    """A piece in the middle: where it stands, what its yarn does for, and the plan at the gauge that came out."""

    at: Json
    yarn: Json | None
    gauge: Json | None
    again: Json | None


@dataclass(frozen=True, slots=True)
class Substitution(Result):
    """How two yarns compare, all strands of each together; `data["from"]` is the first of them."""

    to: Json
    thicker_percent: tuple[float | None, ...]
    verdict: str
    strands: Json | None
    amount: Json | None
    basis: str
    notes: tuple[str, ...]
