"""Care that some yarn does not tell."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from counterpane.craft.care.groups import CareLine, known_headings
from counterpane.craft.care.labels import Labelled
from counterpane.craft.findings import Finding, rule


@rule(
    "care-not-told",
    family="label",
    severity="warning",
    bad='{"yarns": [{"name": "body", "fibre": [{"fibre": "cotton", "percent": 100}],'
    ' "care": {"washing": "machine 60", "bleaching": "none", "tumble_drying": "low", "ironing": "150"}}]}',
    good='{"yarns": [{"name": "body", "fibre": [{"fibre": "cotton", "percent": 100}],'
    ' "care": {"washing": "machine 60", "bleaching": "none", "tumble_drying": "low", "ironing": "150",'
    ' "dry_cleaning": "P"}}]}',
    source="ISO 3758, as the facts of care name it; that a blend takes the mildest of its yarns is worked out from it",
)
def care_not_told(label: Labelled) -> Iterator[Finding]:
    """A yarn tells some of its care and not all.

    A piece bears what its most tender yarn bears. What one yarn does not tell is not known of the piece.
    """
    silent = [place for place, yarn in enumerate(label.piece.yarns) if not yarn.care]
    if len(silent) == len(label.piece.yarns):
        return
    if silent:
        names = " and ".join(label.piece.yarns[place].name for place in silent)
        yield _finding(f"Care is not known: {names} {_do(silent)} not tell any.", label.care, silent[0])
    for heading, known in known_headings(label.care).items():
        lines = [line for line in label.care if line.group.heading == heading and not line.value]
        told = [line for line in lines if line.at_most] or lines
        places = sorted({place for line in told for place in line.untold}.difference(silent))
        if not known and places:
            names = " and ".join(label.piece.yarns[place].name for place in places)
            groups = " and ".join(line.group.name.replace("_", " ") for line in told)
            said = f"{heading.capitalize()} is not known: {names} {_do(places)} not tell {groups}."
            yield _finding(said, told, places[0])


def _do(places: Sequence[int]) -> str:
    return "does" if len(places) == 1 else "do"


def _finding(said: str, lines: Iterable[CareLine], place: int) -> Finding:
    most = "; ".join(line.at_most.says for line in lines if line.at_most)
    return Finding(
        "care-not-told",
        "warning",
        f"{said} The other yarns leave no more than: {most}." if most else said,
        "Ask the spinner, and until then treat it as the mildest of each group.",
        pointer=f"/yarns/{place}/care",
    )
