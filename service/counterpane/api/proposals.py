"""Proposals over HTTP."""

from __future__ import annotations

from counterpane.api import examples
from counterpane.api.operations import Answer, Call, operation
from counterpane.api.sending import as_json
from counterpane.library.proposing import proposals
from counterpane_schema.proposal import ProposalAnswer, ProposalRequest


@operation(
    "POST",
    "/v1/proposals",
    tag="plans",
    answer=ProposalAnswer,
    body=ProposalRequest,
    role="reader",
    problems=("not-usable",),
    examples=examples.PROPOSALS,
)
def propose(call: Call) -> Answer:
    """Propose complete recipes for a gauge and a size.

    Each is planned and proved; its `request` goes on to plans as it stands. No two are of one body, near copies come
    last, and each says in words why it stands where it stands: counts, size, whether the yarn at hand does, skills,
    what was to be avoided, and the safety rules that spoke. None is recommended as safe: what is not assessed is told
    as such. Nothing is stored.
    """
    return as_json(proposals.propose(call.services, call.body))
