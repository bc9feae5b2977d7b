"""Proposals over HTTP."""

from __future__ import annotations

from counterpane.api.operations import Answer, Call, Example, operation
from counterpane.api.sending import as_json
from counterpane.library.proposing import proposals
from counterpane_schema.proposal import ProposalAnswer, ProposalQuestion

PROPOSALS = (
    Example(
        body={
            "gauge": {"stitches": 22, "rows": 30, "over_cm": 10},
            "size": {"named": "pram"},
            "yarn": {"weight": "double knitting", "ball_g": 50, "ball_m": 115},
            "have": {"balls": 9},
            "level": "easy",
            "avoid": ["openings", "fringe", "one-sided"],
            "for": {"age_months": [0, 12], "use": "pram", "markets": ["UK"]},
            "limit": 2,
        }
    ),
)
"""Requests that work on a library with the starters."""


@operation(
    "POST",
    "/v1/proposals",
    tag="plans",
    answer=ProposalAnswer,
    body=ProposalQuestion,
    role="reader",
    problems=("not-usable",),
    examples=PROPOSALS,
)
def propose(call: Call) -> Answer:
    """Propose complete recipes for a gauge and a size.

    Each is planned and proved; its `request` goes on to plans as it stands. No two are of one body, near copies come
    last, and each says in words why it stands where it stands: counts, size, whether the yarn at hand does, skills,
    what was to be avoided, and the safety rules that spoke. None is recommended as safe: what is not assessed is told
    as such. Nothing is stored.
    """
    return as_json(proposals.propose(call.services, call.body))
