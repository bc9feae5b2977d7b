"""R16: a float or a tail inside a pocket, hood, foot or cocoon."""

from __future__ import annotations

from collections.abc import Iterable

from counterpane.craft.findings import rule
from counterpane.craft.safety import SafetyFinding, SafetyInputs, speak

KINDS = (("float", "float_mm"), ("yarn end", "tail_mm"))


@rule(
    "thread-inside-an-enclosed-part",
    family="safety",
    severity="stop",
    reference="R16",
    basis="borrowed",
    jurisdiction="AU, UK, US",
    source="no loose thread at hands and feet to 12 months: an Australian retailer on nursery goods, "
    "second-hand (garmentstech.com, read in 2026); fingers in mittens: Barton, Sloan and Nichter, "
    "Pediatrics 82:925, 1988; Arch Pediatr Adolesc Med 155:516, 2001",
    needs=("age_band", "enclosed_part", "float_mm", "tail_mm"),
    scope="under 12 months and enclosed part",
    bad='{"age_band": "3-12m", "enclosed_part": true, "float_mm": 0, "tail_mm": 3}',
    good='{"age_band": "3-12m", "enclosed_part": true, "float_mm": 0, "tail_mm": 0}',
)
def thread_inside_an_enclosed_part(inputs: SafetyInputs) -> Iterable[SafetyFinding]:
    """Loose thread inside an enclosed part.

    Hands and feet turn unseen in a pocket, hood, foot or cocoon, and a thread in there can cut off the blood of a
    finger or toe. Any length counts.
    """
    loose = [f"a {kind} of {inputs.said(name)}" for kind, name in KINDS if getattr(inputs, name)]
    if inputs.under(12) and inputs.enclosed_part and loose:
        yield speak(
            thread_inside_an_enclosed_part,
            "stop",
            f"The blanket has an enclosed part and {' and '.join(loose)}; a thread in there can wind round a finger.",
            "Leave the enclosed part away, or line it so that no thread lies inside.",
        )
