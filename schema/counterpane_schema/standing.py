"""Where revisions stand, how one is moved, and the reasons that there are."""

from __future__ import annotations

from marshmallow import fields

from counterpane_schema.fields import Day, Sha256, Slug, Text, Whole, Word
from counterpane_schema.forms import Closed, Open
from counterpane_schema.kept import STATUSES

SENTENCE = 1_000


class MoveContent(Closed):
    """A move of one revision to another state."""

    revision = Sha256(metadata={"description": "The hash of the revision that is moved; the latest if not given."})
    to = Word(*STATUSES, required=True, metadata={"description": "The state to which it moves."})
    because = Text(required=True, most=40, metadata={"description": "The code of a reason, from GET /v1/reasons."})
    say = Text(
        required=True, lines=True, most=SENTENCE, metadata={"description": "The reason in a sentence for people."}
    )
    replacement = Slug(metadata={"description": "What to use instead, where it is deprecated."})
    until = Day()
    owner = Text(most=200, metadata={"description": "The name of who looks after a quarantine."})


class PersonAnswer(Open):
    """Somebody, by a key that means nothing; the name is null where it was erased."""

    key = Text(required=True)
    name = Text(required=True, allow_none=True)


class MoveAnswer(Open):
    """A move as it is kept."""

    sha256 = Sha256(required=True)
    at = Text(required=True)
    before = Word(*STATUSES, data_key="from", required=True)
    to = Word(*STATUSES, required=True)
    because = Text(required=True)
    said = Text(required=True, lines=True)
    replacement = Slug(required=True, allow_none=True)
    until = Day(required=True, allow_none=True)
    by = fields.Nested(PersonAnswer, required=True)
    owner = fields.Nested(PersonAnswer, required=True, allow_none=True)


class StandingRevision(Open):
    """A revision and where it stands."""

    number = Whole(required=True, least=1)
    sha256 = Sha256(required=True)
    status = Word(*STATUSES, required=True)


class StandingAnswer(Open):
    """Where each revision of a slug stands, and all moves, oldest first."""

    slug = Slug(required=True)
    revisions = fields.List(fields.Nested(StandingRevision), required=True)
    moves = fields.List(fields.Nested(MoveAnswer), required=True)


class ReasonAnswer(Open):
    """A reason, and the states and decisions that it may be given for."""

    code = Text(required=True)
    meaning = Text(required=True)
    serves = fields.List(Text(), required=True)


class ReasonList(Open):
    """All reasons that there are."""

    items = fields.List(fields.Nested(ReasonAnswer), required=True)
