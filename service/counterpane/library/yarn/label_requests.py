"""A piece from JSON values that the wire schema has let through: its yarns, and where it is to be sold."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from counterpane.craft.care.fibres import Fibres
from counterpane.craft.care.labels import Piece
from counterpane.craft.care.yarns import Share, Yarn

Content = Mapping[str, Any]


def piece_of(content: Content, fibres: Fibres) -> Piece:
    """Build a piece; a yarn without a name is called by its number. Numbers are read by their decimal text."""
    return Piece(
        yarns=tuple(_yarn(each, number, fibres) for number, each in enumerate(content["yarns"], 1)),
        dry=content.get("mass") == "dry",
        places=int(content.get("places") or 0),
        markets=tuple(dict.fromkeys(content.get("markets") or ())),
        claims=tuple(content.get("claims") or ()),
        stated={name: text for name, text in (content.get("stated") or {}).items() if text},
        washed=care_of(content.get("washed")),
    )


def _yarn(content: Content, number: int, fibres: Fibres) -> Yarn:
    told, grams = content.get("fibre"), content.get("grams")
    return Yarn(
        name=content.get("name") or f"yarn {number}",
        fibres=tuple(_share(each, fibres) for each in told) if told else None,
        grams=None if grams is None else number_of(grams),
        part=content.get("part"),
        left_out=content.get("left_out"),
        superwash=content.get("superwash"),
        care=care_of(content.get("care")),
    )


def care_of(content: Content | None) -> dict[str, str]:
    """Return the care that is told, by group."""
    return {group: word for group, word in (content or {}).items() if word is not None}


def _share(content: Content, fibres: Fibres) -> Share:
    return Share(fibres.read(content["fibre"]), number_of(content["percent"]), content.get("state"))


def number_of(value: Any) -> Fraction:
    """Return the fraction that a number's decimal text stands for, however small: the wire bounds its decimals."""
    return Fraction(repr(value) if isinstance(value, float) else value)
