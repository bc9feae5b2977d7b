"""The application holds what its description promises, whatever is sent to it.

A request that is sound by the schema may still be refused with 422, since a plan may be impossible and rows may not
prove. It is never refused as not being as described, which is checked here too.
"""

from __future__ import annotations

import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import SchemathesisConfig

from counterpane import wiring
from counterpane.api.document import document
from counterpane.library.review.tokens import create

CHECKS = {
    "positive_data_acceptance": {"expected-statuses": ["2xx", "304", "404", "409", "410", "412", "422", "428"]},
    "negative_data_rejection": {
        "expected-statuses": ["400", "401", "403", "404", "406", "412", "413", "415", "422", "428"]
    },
    "missing_required_header": {"expected-statuses": ["428"]},
}
PLANNED = ["draw", "grade", "on_needle", "plan_largest", "plan_midway", "regauge", "tell_lesson", "which_row"]
PLANNED += ["write_pattern", "write_swatches", "add_recipe", "revise_recipe"]
CHANGED = ["change_answer", "change_piece", "change_test_knit"]
SAME_BODY = {"include-operation-id": [*PLANNED, *CHANGED], "phases": {"coverage": {"enabled": False}}}
"""Operations that take what `plan`, or what adds a thing, takes: each bound of that body is tried there."""

NOT_ONES_OWN = {
    "include-operation-id": ["decide"],
    "checks": {"positive_data_acceptance": {"expected-statuses": ["2xx", "403", "404", "409", "422"]}},
}
"""A sound decision about what one handed in oneself is refused with 403, as it is described."""

CONFIG = SchemathesisConfig.from_dict({"checks": CHECKS, "operations": [SAME_BODY, NOT_ONES_OWN]})
SERVICES = wiring.open_library()
TOKEN = create(SERVICES.store, "keeper", "tester", SERVICES.now())
schema = schemathesis.openapi.from_dict(document(), config=CONFIG)
schema.app = wiring.app_of(SERVICES)


@schema.parametrize()
@settings(max_examples=6, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck))
def test_every_operation_keeps_its_description(case: schemathesis.Case) -> None:
    """No request, sound or broken, gets an answer that is not described."""
    response = case.call_and_validate(headers={"Authorization": f"Bearer {TOKEN}"})
    sound = case.meta is not None and case.meta.generation.mode.is_positive
    refused = response.status_code == 422 and response.json()["type"].endswith("not-as-described")
    assert not (sound and refused), response.json()["detail"]
