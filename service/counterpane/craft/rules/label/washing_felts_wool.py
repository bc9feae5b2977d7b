"""Wool that its washing would felt."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.washing import felts, may_felt, treated
from counterpane.craft.findings import Finding, rule
from counterpane.craft.safety import in_figures

_CARE = '"bleaching": "none", "tumble_drying": "none", "ironing": "150", "dry_cleaning": "P"}}]}'
_WOOL = '{"yarns": [{"name": "body", "fibre": [{"fibre": "wool", "percent": 100}], "superwash": false, "care": {'


@rule(
    "washing-felts-wool",
    family="label",
    severity="error",
    bad=f'{_WOOL}"washing": "machine 40", {_CARE}',
    good=f'{_WOOL}"washing": "machine 30 very mild", {_CARE}',
    source="a soap and detergent association (jsda.org), second-hand; the wool cycle: common practice, no source",
)
def washing_felts_wool(label: Labelled) -> Iterator[Finding]:
    """A wool that is not treated against felting is washed so that it felts.

    Untreated wool bears about 30 degrees, by hand or on a wool cycle, and no tumble dryer. What felts shrinks for good.
    A care that says otherwise is that of another yarn, or the wool is treated.
    """
    for place, yarn in enumerate(label.piece.yarns):
        told = treated(label, yarn)
        if may_felt(yarn) and felts(*told, label.law.untreated_wool_most):
            most = in_figures(label.law.untreated_wool_most)
            said = "; ".join(value.says for value in told if value)
            yield Finding(
                "washing-felts-wool",
                "error",
                f"{yarn.name} is wool that is not treated against felting. {said}: it would felt and shrink.",
                f"Wash it at {most} °C at most, by hand or on a wool cycle, and not in a tumble dryer; or choose a "
                "superwash yarn.",
                pointer=f"/yarns/{place}/care",
            )
