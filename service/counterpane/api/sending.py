"""Answers made on the spot."""

from __future__ import annotations

from typing import Any

from counterpane.api.operations import Answer
from counterpane.library.keeping.objects import json_bytes


def as_json(value: Any) -> Answer:
    """Return the value as JSON; a Decimal keeps its digits."""
    return Answer(json_bytes(value))
