"""The two forms of a schema."""

from __future__ import annotations

from marshmallow import EXCLUDE, RAISE, Schema


class Closed(Schema):
    """What is sent to the library: a member that is not known is refused, since it is most often a slip of the pen."""

    class Meta:
        """Refuse members that are not known."""

        unknown = RAISE

    error_messages = {  # noqa: RUF012 - marshmallow reads a plain dict on the class
        "unknown": "There is no such member here.",
        "type": "Write an object in braces.",
    }


class Open(Schema):
    """What the library answers: a reader leaves aside members that it does not know."""

    class Meta:
        """Leave aside members that are not known."""

        unknown = EXCLUDE
