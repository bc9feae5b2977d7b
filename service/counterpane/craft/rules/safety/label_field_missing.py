"""R39: a label that lacks what the law of a market asks for."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak
from counterpane.craft.safety.labels import FIELDS, WANTED


@rule(
    "label-field-missing",
    family="safety",
    severity="warn",
    reference="R39",
    basis="published",
    jurisdiction="EU, UK, US, CA, AU, CN",
    source="EU: Regulations (EU) 1007/2011, read, and 2023/988, second-hand; UK: SI 2012/1102 and "
    "General Product Safety Regulations 2005; US: 15 USC 2063(a)(5), 16 CFR 300 and 303; CA: C.R.C. "
    "c. 1551; AU: care labelling standard 2023; CN: GB 31701-2015, second-hand",
    needs=("sold", "markets on record", "label"),
    scope="sold",
    bad='{"sold": true, "markets": ["AU"], "label": ["fibre"]}',
    good='{"sold": true, "markets": ["AU"], "label": ["fibre", "care"]}',
)
def label_field_missing(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Label field missing.

    Whoever sells is the producer. What a label must say differs by country; for a market that is not on record
    here nothing is looked at, which is no pass.
    """
    if not inputs.sold or inputs.label is None:
        return
    for market in inputs.markets or ():
        missing = [FIELDS[field] for field in WANTED.get(market, ()) if field not in inputs.label]
        if missing:
            yield speak(
                label_field_missing,
                "warn",
                f"{market}: the label lacks {', '.join(missing)}.",
                "Add it, and look up the law where you sell.",
                markets=(market,),
            )
