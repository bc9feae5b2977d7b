"""The two forms of a schema."""

from __future__ import annotations

from typing import ClassVar

from marshmallow import EXCLUDE, RAISE, Schema, ValidationError, validates_schema


class Closed(Schema):
    """What is sent to the library: a member that is not known is refused, since it is most often a slip of the pen."""

    class Meta:
        """Refuse members that are not known."""

        unknown = RAISE

    either_or: ClassVar[tuple[tuple[str, str], ...]] = ()
    """Pairs of members of which exactly one must be there."""

    unless: ClassVar[str] = ""
    """A member that stands for the pairs: where it is there, each pair may be left out, and never has both."""

    @validates_schema(skip_on_field_errors=True)
    def one_of_each_pair(self, data: dict[str, object], **_: object) -> None:
        """Refuse an object that has neither member of a pair, or both."""
        for one, other in self.either_or:
            if (one in data) == (other in data) and (one in data or self.unless not in data):
                raise ValidationError(f"Give either {one} or {other}.", one)

    error_messages = {  # noqa: RUF012 - marshmallow reads a plain dict on the class
        "unknown": "There is no such member here.",
        "type": "Write an object in braces.",
    }


class Open(Schema):
    """What the library answers: a reader leaves aside members that it does not know."""

    class Meta:
        """Leave aside members that are not known."""

        unknown = EXCLUDE
