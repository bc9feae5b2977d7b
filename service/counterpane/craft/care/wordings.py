"""Fibres and care in the words of a market: in English, and French for Canada. No other language is written here."""

from __future__ import annotations

from counterpane.craft.care.composition import places_for
from counterpane.craft.care.groups import CareLine, CareValue, known_headings
from counterpane.craft.care.labels import LEAVING_OUT, Labelled, Line, PartLabel, lines
from counterpane.craft.measures import shown

NO_ENGLISH = ("CN", "JP")
"""Markets whose labels are not in English, from memory."""

SPACED = ("EU", "NL")
"""Markets whose texts set a space before the per cent sign; house."""

PURE = ("pure", "all", "100")
"""Words for one fibre alone: 100 %, pure, all. Regulation (EU) No 1007/2011, Article 7(1)."""


def says_pure(claim: str) -> bool:
    """Tell whether words that somebody wants to print say that there is one fibre alone."""
    return not set(claim.casefold().replace("%", " ").split()).isdisjoint(PURE)


def fibre_lines(label: Labelled, market: str) -> tuple[str, ...] | None:
    """Return the fibres of a piece in the words of a market, a line for each part; None where they cannot be said."""
    said = [_part(part, label, market) for part in label.of(market)]
    told = [line for line in said if line is not None]
    return tuple(told) if len(told) == len(said) else None


def care_lines(label: Labelled, market: str) -> tuple[str, ...] | None:
    """Return the care of a piece in words, in the order of a label; None until every heading is known.

    The United States have dots and degrees Fahrenheit beside. No symbol is drawn.
    """
    if not all(known_headings(label.care).values()) or market in NO_ENGLISH:
        return None
    return tuple(_care(line, line.value, label, market) for line in label.care if line.value)


def care_said(label: Labelled) -> str:
    """Say the care of a piece as a pattern has it, with what is not known and who does not tell it."""
    said = [f"{line.value.says}." for line in label.care if line.value]
    headings = known_headings(label.care)
    unknown = [heading for heading, is_known in headings.items() if not is_known]
    if unknown:
        lines = [line.at_most for line in label.care if line.at_most and not line.value]
        most = f" No more than: {'; '.join(value.says for value in lines)}." if lines else ""
        said.append(f"Not known: {', '.join(unknown)}; ask the spinner.{most}")
    return " ".join(said)


def _care(line: CareLine, value: CareValue, label: Labelled, market: str) -> str:
    degrees = str(value.ranks[-1])
    if market != "US" or line.group.name != "washing" or degrees not in label.law.american_dots:
        return value.says
    dots = int(label.law.american_dots[degrees])
    return f"{value.says} ({dots} dot{'s' * (dots > 1)}, {label.law.american_degrees[degrees]} °F)"


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
    return "virgin wool" if fibre.name == "wool" and part.virgin and market in LEAVING_OUT else fibre.name
