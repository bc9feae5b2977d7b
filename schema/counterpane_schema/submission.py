"""Submissions and safety reports: handing in, the queue, what the program found, and decisions."""

from __future__ import annotations

from typing import ClassVar

from marshmallow import fields

from counterpane_schema.fields import Sha256, Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.standing import SENTENCE, PersonAnswer

LANES = ("safety", "review")
TURNS = ("us", "contributor", "nobody")
DECISIONS = ("accept", "ask", "refuse", "uphold", "dismiss")


class SubmissionContent(Closed):
    """What is handed in: the latest revision of a component or of a recipe."""

    either_or: ClassVar[tuple[tuple[str, str], ...]] = (("component", "recipe"),)

    component = Slug(metadata={"description": "The slug of a component that its sender added."})
    recipe = Slug(metadata={"description": "The slug of a recipe that its sender added."})
    say = Text(least=0, lines=True, most=SENTENCE, metadata={"description": "What whoever reads it should know."})


class ReportContent(Closed):
    """A report that something may hurt a baby."""

    either_or: ClassVar[tuple[tuple[str, str], ...]] = (("component", "recipe"),)

    component = Slug(metadata={"description": "The slug of the component that it is about."})
    recipe = Slug(metadata={"description": "The slug of the recipe that it is about."})
    revision = Sha256(metadata={"description": "The hash of the revision that it is about; the latest if not given."})
    say = Text(required=True, lines=True, most=SENTENCE, metadata={"description": "What happened, or what may happen."})


class DecisionContent(Closed):
    """What a reviewer decides."""

    decision = Word(
        *DECISIONS,
        required=True,
        metadata={"description": "Submissions are accepted, asked about or refused; reports upheld or dismissed."},
    )
    because = Text(required=True, most=40, metadata={"description": "The code of a reason, from GET /v1/reasons."})
    say = Text(
        required=True, lines=True, most=SENTENCE, metadata={"description": "The reason in a sentence for people."}
    )


class SubmissionQuery(Closed):
    """Which of the queue to list."""

    lane = Word(*LANES, metadata={"description": "Only safety reports, or only submissions."})
    turn = Word(
        *TURNS, metadata={"description": "Only what waits for us, for who submitted it, or for nobody any more."}
    )
    slug = Slug(metadata={"description": "Only what is about this slug."})
    limit = Whole(least=1, most=200, metadata={"description": "How many items a page holds; 50 if not given."})
    cursor = Text(
        least=0, most=2_000, metadata={"description": "Where the page begins, from `next` of the page before."}
    )


class SubmissionCard(Open):
    """A line of the queue: what it is about, whose turn it is, since when and for how many days."""

    number = Whole(required=True, least=1)
    lane = Word(*LANES, required=True)
    about = Word("component", "recipe", required=True)
    slug = Slug(required=True)
    sha256 = Sha256(required=True)
    at = Text(required=True)
    by = fields.Nested(PersonAnswer, required=True)
    turn = Word(*TURNS, required=True)
    since = Text(required=True)
    waiting_days = Whole(required=True, allow_none=True, least=0)
    href = Text(required=True)


class SubmissionPage(Open):
    """A page of the queue."""

    items = fields.List(fields.Nested(SubmissionCard), required=True)
    next = Text(required=True, allow_none=True)


class MathematicsCheck(Open):
    """Whether all that is claimed proves."""

    holds = YesNo(required=True)
    problems = fields.List(Text(lines=True), required=True)


class SafetyCheck(Open):
    """What was told of a baby's safety, and what was not."""

    told = fields.List(Text(), required=True)
    not_told = fields.List(Text(), required=True)


class LicenceCheck(Open):
    """The licence of the words, and whether it is one of those that a library takes."""

    name = Text(required=True, least=0)
    known = YesNo(required=True)


class LikeCheck(Open):
    """A component that it is like, and by which move it is."""

    slug = Slug(required=True)
    percent = Whole(required=True, least=0, most=100)
    how = Text(required=True)
    same = YesNo(required=True)
    said = Text(required=True)


class ChecksAnswer(Open):
    """What the program found when it was handed in."""

    mathematics = fields.Nested(MathematicsCheck, required=True)
    wording = fields.List(fields.Dict(), required=True)
    safety = fields.Nested(SafetyCheck, required=True)
    licence = fields.Nested(LicenceCheck, required=True, allow_none=True)
    alike = fields.List(fields.Nested(LikeCheck), required=True)
    not_compared = Whole(required=True, least=0)


class DecisionAnswer(Open):
    """A decision as it is kept."""

    at = Text(required=True)
    by = fields.Nested(PersonAnswer, required=True)
    decision = Word(*DECISIONS, required=True)
    because = Text(required=True)
    said = Text(required=True, lines=True)


class SubmissionAnswer(SubmissionCard):
    """A submission or a report whole."""

    say = Text(required=True, least=0, lines=True)
    checks = fields.Nested(ChecksAnswer, required=True, allow_none=True)
    decisions = fields.List(fields.Nested(DecisionAnswer), required=True)
