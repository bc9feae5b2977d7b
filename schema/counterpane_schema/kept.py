"""What everything that is kept shares on the wire: its states, what only the library tells, and how it is listed."""

from __future__ import annotations

from typing import Any

from marshmallow import post_load

from counterpane_schema.fields import Text, Told, Whole, Word
from counterpane_schema.forms import Closed

STATUSES = ("draft", "in-review", "accepted", "deprecated", "yanked", "quarantined", "withdrawn", "mirrored")


class KeptContent(Closed):
    """What is sent to be kept."""

    status = Told()
    changed = Told()
    sha256 = Told()
    etag = Told()
    standing = Told()
    mirrored_from = Told()

    @post_load
    def leave_told(self, data: dict[str, Any], **_: Any) -> dict[str, Any]:
        """Leave aside what only the library tells, so that an answer can be changed and sent back."""
        return {name: value for name, value in data.items() if not isinstance(self.fields.get(name), Told)}


class KeptQuery(Closed):
    """Which of what is kept to list."""

    q = Text(least=0, most=200, metadata={"description": "Only those that hold all these words; those in names first."})
    status = Word(*STATUSES, metadata={"description": "Only those of this state."})
    profile = Word("raw", metadata={"description": "As CSV: cells exactly as they are, formulae too."})
    limit = Whole(least=1, most=200, metadata={"description": "How many items a page holds; 50 if not given."})
    cursor = Text(
        least=0, most=2_000, metadata={"description": "Where the page begins, from `next` of the page before."}
    )
