"""R04: weight added to a blanket for a child of three years or more."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak


@rule(
    "weight-added-for-a-child",
    family="safety",
    severity="warn",
    reference="R04",
    basis="published",
    jurisdiction="UK",
    source="Royal College of Occupational Therapists, 2019, as cited on a page of a clinic, second-hand",
    needs=("age_band", "weighted"),
    scope="from 36 months",
    bad='{"age_band": "36m+", "weighted": true}',
    good='{"age_band": "36m+", "weighted": false}',
)
def weight_added_for_a_child(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Weight added for a child of three years or more.

    Weighted covers belong to therapy. Guidance speaks of a share of the body mass; that is for professionals to
    apply, so no share is told here.
    """
    if inputs.under(36) is False and inputs.weighted:
        yield speak(
            weight_added_for_a_child,
            "warn",
            "Weight is added to the blanket; that is used on professional advice only.",
            "Ask an occupational therapist, and make sure that the child can take it off alone.",
        )
