"""Virgin wool that may not be called so."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled, shares
from counterpane.craft.findings import Finding, rule
from counterpane.craft.safety import in_figures


@rule(
    "virgin-wool-not-allowed",
    family="label",
    severity="warning",
    bad='{"yarns": [{"fibre": [{"fibre": "virgin wool", "percent": 20}, {"fibre": "acrylic", "percent": 80}]}]}',
    good='{"yarns": [{"fibre": [{"fibre": "virgin wool", "percent": 25}, {"fibre": "acrylic", "percent": 75}]}]}',
    source="Regulation (EU) No 1007/2011, Article 8 and Annex III",
)
def virgin_wool_not_allowed(label: Labelled) -> Iterator[Finding]:
    """Virgin wool is named where the label may not say so.

    All the wool of a blend must be such, it must be a quarter of it, and where it is scribbled there may be one other
    fibre only. Else the label says wool.
    """
    parts = label.parts or (label.whole,)
    claimed = [pointer for pointer, _, share in shares(label) if share.reading.virgin]
    if not claimed or all(part.virgin for part in parts if any(p.fibre.name == "wool" for p in part.made_of.portions)):
        return
    unsure = all(part.virgin is not False for part in parts)
    least = in_figures(label.law.virgin_least)
    yield Finding(
        "virgin-wool-not-allowed",
        "warning",
        "Whether the label may say virgin wool is not known: it is blended with several fibres in one yarn."
        if unsure
        else f"The label may not say virgin wool: all the wool must be such, and {least} % of a blend or more.",
        "Ask the spinner whether it was scribbled; until then the label says wool."
        if unsure
        else "The label says wool.",
        pointer=claimed[0],
    )
