"""Care that one yarn sets for the whole piece."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.washing import WATER
from counterpane.craft.findings import Finding, rule


@rule(
    "care-set-by-one-yarn",
    family="label",
    severity="note",
    bad='{"yarns": [{"name": "body", "grams": 300, "fibre": [{"fibre": "cotton", "percent": 100}],'
    ' "care": {"washing": "machine 60", "bleaching": "none", "tumble_drying": "none", "ironing": "150",'
    ' "dry_cleaning": "P"}}, {"name": "edge", "grams": 30, "fibre": [{"fibre": "cotton", "percent": 100}],'
    ' "care": {"washing": "machine 40 mild", "bleaching": "none", "tumble_drying": "none", "ironing": "150",'
    ' "dry_cleaning": "P"}}]}',
    good='{"yarns": [{"name": "body", "grams": 300, "fibre": [{"fibre": "cotton", "percent": 100}],'
    ' "care": {"washing": "machine 60", "bleaching": "none", "tumble_drying": "none", "ironing": "150",'
    ' "dry_cleaning": "P"}}, {"name": "edge", "grams": 30, "fibre": [{"fibre": "cotton", "percent": 100}],'
    ' "care": {"washing": "machine 60", "bleaching": "none", "tumble_drying": "none", "ironing": "150",'
    ' "dry_cleaning": "P"}}]}',
    source="ISO 3758, as the facts of care name it; that a blend takes the mildest of its yarns is worked out from it",
)
def care_set_by_one_yarn(label: Labelled) -> Iterator[Finding]:
    """A yarn sets how the whole piece is washed or dried.

    One tender yarn in an edge makes a blanket that is washed by hand. Another yarn there may spare years of work.
    """
    for line in label.care:
        if line.value and line.deciding and line.group.name in WATER:
            names = " and ".join(label.piece.yarns[place].name for place in line.deciding)
            yield Finding(
                "care-set-by-one-yarn",
                "note",
                f"{line.value.says}: that is because of {names}.",
                "If that is too tender for a blanket, choose another yarn there.",
                pointer=f"/yarns/{line.deciding[0]}/care/{line.group.name}",
            )
