"""R38: a fibre label that cannot be right."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from counterpane.craft.findings import rule
from counterpane.craft.measures import WHOLE_PCT
from counterpane.craft.safety import SafetyFinding, SafetyInputs, in_figures, speak
from counterpane.craft.safety.limits import UNLISTED_DECORATION_PCT


@rule(
    "fibre-label-wrong",
    family="safety",
    severity="stop",
    reference="R38",
    basis="published",
    jurisdiction="EU, UK",
    source="Regulation (EU) 1007/2011 Art. 7 and 10, read; UK: SI 2012/1102, second-hand",
    needs=("fibres.pct", "says_pure", "decoration_pct"),
    bad='{"fibres": [{"name": "cotton", "pct": 60}, {"name": "linen", "pct": 30}], "says_pure": false, '
    '"decoration_pct": 0}',
    good='{"fibres": [{"name": "cotton", "pct": 60}, {"name": "linen", "pct": 40}], "says_pure": false, '
    '"decoration_pct": 7}',
)
def fibre_label_wrong(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Fibre label that is wrong.

    Percentages add up to 100, "100 %", "pure" and "all" belong to one fibre alone, and only a decoration of up to
    7 per cent may be left out.
    """
    faults = [*_faults(inputs)]
    if faults:
        yield speak(
            fibre_label_wrong,
            "stop",
            f"The fibre label cannot stand: {'; '.join(faults)}.",
            "Weigh each yarn and write the shares by mass, the largest first.",
        )


def _faults(inputs: SafetyInputs) -> Iterable[str]:
    fibres = inputs.fibres or ()
    shares = [fibre.pct for fibre in fibres]
    total = sum((share for share in shares if share is not None), Fraction(0))
    if total > WHOLE_PCT or (shares and None not in shares and total != WHOLE_PCT):
        yield f"the shares add up to {in_figures(total)} and not to 100 per cent"
    if inputs.says_pure and len(fibres) > 1:
        yield f"it says pure, all or 100 per cent, and there are {len(fibres)} fibres"
    if inputs.decoration_pct is not None and inputs.decoration_pct > UNLISTED_DECORATION_PCT:
        yield f"it leaves out a decoration of {in_figures(inputs.decoration_pct)} per cent, and 7 is the most"
