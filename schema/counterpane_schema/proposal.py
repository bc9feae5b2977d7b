"""Proposals: complete recipes for a gauge, a size, the yarn at hand, skills, and what is to be avoided."""

from __future__ import annotations

from marshmallow import fields, validate

from counterpane_schema.choices import AVOIDED, DIFFICULTIES, MOST_PROPOSED, SKILLS
from counterpane_schema.fields import Slug, Text, Whole, Word, YesNo
from counterpane_schema.forms import Closed, Open
from counterpane_schema.plan import Size, gauges
from counterpane_schema.safety import SafetyInputs
from counterpane_schema.yarn import Yarn, one_amount

ABOUT = ("size", "counts", "yarn", "skills", "fabric", "avoided", "safety")


class ProposalQuestion(Closed):
    """What a blanket is wanted for and from; the parts are left to the library."""

    gauge = gauges()
    size = fields.Nested(Size, required=True)
    yarn = fields.Nested(Yarn, allow_none=True, metadata={"description": "The yarn at hand, as far as it is known."})
    have = one_amount(allow_none=True)
    for_ = fields.Nested(SafetyInputs, data_key="for", attribute="for", allow_none=True)
    level = Word(*DIFFICULTIES, allow_none=True, metadata={"description": "The most demanding level that is wanted."})
    skills = fields.List(
        Word(*SKILLS),
        allow_none=True,
        validate=validate.Length(0, len(SKILLS)),
        metadata={"description": "What the knitter can do beside rows of knit or of purl alone; all if not given."},
    )
    avoid = fields.List(
        Word(*AVOIDED),
        allow_none=True,
        validate=validate.Length(0, len(AVOIDED)),
        metadata={"description": "What is not wanted. A part of which it is not known is passed over too."},
    )
    limit = Whole(least=1, most=MOST_PROPOSED, metadata={"description": "How many proposals at most; 6 if not given."})


class Reason(Open):
    """One reason for the place of a proposal, in words."""

    about = Word(*ABOUT, required=True)
    said = Text(required=True, most=10_000)


class Proposal(Open):
    """A complete recipe that makes a plan: `request` can be sent on to plans, patterns and drawings as it stands."""

    title = Text(required=True)
    request = fields.Dict(required=True)
    counts = fields.Dict(required=True)
    finished = fields.Dict(required=True)
    level = fields.Dict(required=True)
    yarn_enough = Word("yes", "not surely", "no", "not known", required=True)
    near_copy_of = Slug(
        required=True,
        allow_none=True,
        metadata={"description": "An earlier proposal's body of which this is a near copy; those stand last."},
    )
    reasons = fields.List(fields.Nested(Reason), required=True)
    findings = fields.List(fields.Dict(), required=True)
    safety = fields.Dict(required=True, metadata={"description": "As a plan tells it; not assessed is never a pass."})


class PassedOver(Open):
    """A part that was not proposed, and why."""

    component = Slug(required=True)
    why = Text(required=True, most=10_000)


class ProposalAnswer(Open):
    """Proposals, the best first, all of another body; and what was passed over."""

    proposals = fields.List(fields.Nested(Proposal), required=True)
    passed_over = fields.List(fields.Nested(PassedOver), required=True)
    looked_at = Whole(required=True, least=0, metadata={"description": "Bodies and borders that were looked at."})
    whole = YesNo(required=True, metadata={"description": "False where the library holds more than was looked at."})
    said = Text(required=True, most=10_000)
