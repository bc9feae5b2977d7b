"""What the safety rules take of a label, in the words and the JSON of their inputs; null is not known."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from counterpane.craft.care.composition import composition, rounded
from counterpane.craft.care.groups import known_headings
from counterpane.craft.care.labels import Labelled
from counterpane.craft.care.washing import superwash, washed_at_most
from counterpane.craft.care.wordings import fibre_lines, says_pure

Answer = dict[str, Any]

PLACES = 4
"""Decimals of the shares, rounded so that their sum is 100; house."""


def safety_inputs(made: Labelled) -> Answer:
    """Return what the safety rules take of a label."""
    wash, claims = washed_at_most(made), made.piece.claims
    return {
        "fibres": _fibres(made),
        "superwash": superwash(made),
        "wash": wash and {"method": wash.method, "temp_c": wash.degrees},
        "decoration_pct": _left_out(made),
        "says_pure": any(map(says_pure, claims)) if claims else None,
        "label": list(_fields(made)) if made.piece.stated else None,
    }


def _fibres(made: Labelled) -> list[Answer] | None:
    """Return every fibre of a piece by name, or by the word on the band; shares where all are known; None for no list.

    What may be left out of the percentages is there, since a thread that cuts does so whatever the label says.
    """
    yarns = made.piece.yarns
    if not all(yarn.total == 100 for yarn in yarns):
        return None
    of = composition(yarns, dry=made.piece.dry)
    if of.known:
        shares = zip(of.portions, rounded(of.percents, PLACES), strict=True)
        return [{"name": portion.fibre.name, "pct": float(share)} for portion, share in shares]
    told = (share.reading for yarn in yarns for share in yarn.fibres or () if share.percent)
    words = (reading.fibre.name if reading.fibre else reading.word for reading in told)
    return [{"name": word, "pct": None} for word in dict.fromkeys(words)]


def _left_out(made: Labelled) -> float | None:
    """Return what is asked to be left out of the percentages, in per cent of mass."""
    shares = [share for share in made.left_out.values() if share is not None]
    return None if None in made.left_out.values() else float(sum(shares, Fraction(0)))


def _fields(made: Labelled) -> Iterator[str]:
    """Give the fields of a label that are told, by the names of the safety rules."""
    stated = made.piece.stated
    have = {
        "fibre": made.whole.made_of.known,
        "maker": "registered_number" in stated or {"maker", "address"} <= set(stated),
        "batch": "batch" in stated,
        "origin": "origin" in stated,
        "tracking": {"maker", "made", "batch"} <= set(stated),
        "certificate": "certificate" in stated,
        "bilingual": fibre_lines(made, "CA") is not None,
        "care": all(known_headings(made.care).values()),
        "infant-class": "infant_class" in stated,
    }
    yield from (name for name, told in have.items() if told)
