"""The history of the whole library, line by line."""

from __future__ import annotations

from counterpane_schema.fields import Sha256, Slug, Text, Whole, Word
from counterpane_schema.forms import Closed, Open


class ChangeQuery(Closed):
    """From where to read on."""

    after = Whole(least=0, metadata={"description": "The last number that was read; 0 if not given."})
    limit = Whole(least=1, most=10_000, metadata={"description": "How many lines at most; 1000 if not given."})


class FeedQuery(Closed):
    """Which part of the feed to show."""

    before = Whole(least=1, metadata={"description": "Only what has a lower number; the latest if not given."})
    limit = Whole(least=1, most=200, metadata={"description": "How many lines of the history; 50 if not given."})


class Change(Open):
    """One line of the history; numbers have no gaps."""

    seq = Whole(required=True, least=1)
    at = Text(required=True)
    kind = Word("component", "recipe", "profile", "edition", required=True)
    slug = Slug(required=True)
    sha256 = Sha256(required=True, allow_none=True)
    event = Text(required=True)
