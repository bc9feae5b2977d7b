"""R33: wool on the skin, by its fineness."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import Fibre, SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.limits import PRICKLE_MICRON, SUPERFINE_MICRON


@rule(
    "wool-prickles",
    family="safety",
    severity="note",
    reference="R33",
    basis="borrowed",
    jurisdiction="research, AU",
    source="30 micrometres: literature on textiles, from memory; superfine merino: Su et al., Br J "
    "Dermatol 2017, doi 10.1111/bjd.15376, abstract, paid for by a body of the wool industry; 17.5: "
    "summaries of the trade",
    needs=("fibres",),
    scope="wool",
    bad='{"fibres": [{"name": "wool", "pct": 100, "micron": 30.1}]}',
    good='{"fibres": [{"name": "wool", "pct": 100, "micron": 30}]}',
)
def wool_prickles(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Wool that prickles.

    Coarse fibre ends prick; that is no allergy. Wool of unknown fineness counts as coarse. A trial on 39 children
    with eczema found superfine merino kinder than cotton; it does not clear coarse wool.
    """
    for fibre in inputs.fibres or ():
        if fibre.of("wool") and (said := _of(fibre)):
            yield speak(wool_prickles, "note", said, "With eczema or sore skin, ask the child's doctor first.")


def _of(fibre: Fibre) -> str | None:
    if fibre.micron is None:
        return f"How fine the {fibre.name} is, is not known; coarse wool can prickle on the skin."
    if fibre.micron > PRICKLE_MICRON:
        return f"The {fibre.name} has {in_figures(fibre.micron)} micrometres; over 30 it can prickle on the skin."
    if fibre.micron < SUPERFINE_MICRON:
        return (
            f"The {fibre.name} has {in_figures(fibre.micron)} micrometres; one trial, paid for by the wool industry, "
            "found wool under 17.5 comfortable on children with eczema."
        )
    return None
