"""A washing that a yarn does not bear."""

from __future__ import annotations

from collections.abc import Iterator

from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.washing import beyond
from counterpane.craft.findings import Correction, Finding, rule

_EDGE = '{"name": "edge", "fibre": [{"fibre": "cotton", "percent": 100}], "care": {"washing": "machine 40", '
_REST = '"bleaching": "none", "tumble_drying": "none", "ironing": "150", "dry_cleaning": "P"}}'


@rule(
    "washed-harder-than-borne",
    family="label",
    severity="error",
    bad=f'{{"washed": {{"washing": "machine 60"}}, "yarns": [{_EDGE}{_REST}]}}',
    good=f'{{"washed": {{"washing": "machine 40"}}, "yarns": [{_EDGE}{_REST}]}}',
    source="ISO 3758, as the facts of care name it: a value is the harshest that is allowed",
)
def washed_harder_than_borne(label: Labelled) -> Iterator[Finding]:
    """A piece is going to be washed harder than one of its yarns bears.

    A ward that washes at 60 degrees washes everything so. What a yarn does not bear runs, felts or shrinks.
    """
    for found in beyond(label):
        asked = _lower(found.asked.says).replace(" at most", "")
        yield Finding(
            "washed-harder-than-borne",
            "error",
            f"Asked for: {asked}; {label.piece.yarns[found.place].name} bears: {_lower(found.bears.says)}.",
            "Choose another yarn, or treat the piece as its label says.",
            pointer=f"/washed/{found.line.group.name}",
            changes=(Correction(f"/washed/{found.line.group.name}", found.bears.word, "what this yarn bears"),),
        )


def _lower(text: str) -> str:
    return text[0].lower() + text[1:]
