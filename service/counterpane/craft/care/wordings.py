"""A fibre label in the words of a market. Languages other than English, and French for Canada, are not written here."""

from __future__ import annotations

from counterpane.craft.care.composition import places_for
from counterpane.craft.care.labels import Labelled, Line, PartLabel, lines
from counterpane.craft.measures import shown

NO_ENGLISH = ("CN", "JP")
"""Markets whose labels are not in English, from memory."""

SPACED = ("EU", "NL")
"""Markets whose texts set a space before the per cent sign; house."""


def fibre_lines(label: Labelled, market: str) -> tuple[str, ...] | None:
    """Return the fibres of a piece in the words of a market, a line for each part; None where they cannot be said."""
    said = [_part(part, label, market) for part in label.parts or (label.whole,)]
    told = [line for line in said if line is not None]
    return tuple(told) if len(told) == len(said) else None


def _part(part: PartLabel, label: Labelled, market: str) -> str | None:
    if not part.made_of.known or market in NO_ENGLISH:
        return None
    found = lines(part, label.law, market, label.piece.places)
    words = [_name(line, part, market) for line in found]
    if None in words:
        return None
    sign = " %" if market in SPACED else "%"
    places = places_for(part.made_of.percents, label.piece.places)
    texts = [f"{shown(line.percent, places)}{sign} {word}" for line, word in zip(found, words, strict=True)]
    return f"{part.name}: {', '.join(texts)}" if part.name else ", ".join(texts)


def _name(line: Line, part: PartLabel, market: str) -> str | None:
    fibre = line.fibre
    if fibre is None:
        return {"US": "other fiber", "CA": "other fibres / autres fibres"}.get(market, "other fibres")
    if market == "US":
        return fibre.american
    if market == "CA":
        english = fibre.american
        return f"{english} / {fibre.french}" if english and fibre.french else None
    return "virgin wool" if fibre.name == "wool" and part.virgin else fibre.name
