"""Care that some yarn does not tell."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.groups import known_headings
from counterpane.craft.care.labels import Labelled
from counterpane.craft.findings import Finding, rule


@rule(
    "care-not-told",
    family="label",
    severity="warning",
    bad='{"yarns": [{"name": "body", "fibres": [{"fibre": "cotton", "percent": 100}],'
    ' "care": {"washing": "machine 60", "bleaching": "none", "tumble_drying": "low", "ironing": "150"}}]}',
    good='{"yarns": [{"name": "body", "fibres": [{"fibre": "cotton", "percent": 100}],'
    ' "care": {"washing": "machine 60", "bleaching": "none", "tumble_drying": "low", "ironing": "150",'
    ' "dry_cleaning": "P"}}]}',
    source="ISO 3758, as the facts of care name it; that a blend takes the mildest of its yarns is worked out from it",
)
def care_not_told(label: Labelled) -> Iterator[Finding]:
    """A yarn tells some of its care and not all.

    A piece bears what its most tender yarn bears. What one yarn does not tell is not known of the piece.
    """
    if not any(yarn.care for yarn in label.piece.yarns):
        return
    for heading, known in known_headings(label.care).items():
        if known:
            continue
        lines = [line for line in label.care if line.group.heading == heading and not line.value]
        told = [line for line in lines if line.at_most] or lines
        places = sorted({place for line in told for place in line.untold})
        names = " and ".join(label.piece.yarns[place].name for place in places)
        verb = "does" if len(places) == 1 else "do"
        groups = " and ".join(line.group.name.replace("_", " ") for line in told)
        most = "; ".join(line.at_most.says for line in told if line.at_most)
        so_far = f" The other yarns leave no more than: {most}." if most else ""
        yield Finding(
            "care-not-told",
            "warning",
            f"{heading.capitalize()} is not known: {names} {verb} not tell {groups}.{so_far}",
            "Ask the spinner, and until then treat it as the mildest of the group.",
            pointer=f"/yarns/{places[0]}/care",
        )
