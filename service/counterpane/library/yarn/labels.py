"""What stands on the label of a piece, from its yarns, as JSON values.

Percentages of a label are whole, or have as many decimals as it takes to show each fibre; exact shares are "a/b".
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from counterpane.craft.care.composition import Composition, Portion, places_for, rounded
from counterpane.craft.care.groups import CareLine
from counterpane.craft.care.labels import Labelled, PartLabel, labelled
from counterpane.craft.care.law import Want
from counterpane.craft.care.wanted import told
from counterpane.craft.care.wordings import care_lines, fibre_lines
from counterpane.craft.findings import Finding
from counterpane.craft.rules.label import judge_label
from counterpane.library.plans.known import Facts
from counterpane.library.plans.plan_answers import finding_json
from counterpane.library.yarn.label_facts import law_of
from counterpane.library.yarn.label_requests import piece_of
from counterpane.library.yarn.label_safety import safety_inputs

Answer = dict[str, Any]

NOTES = (
    "General information, not legal advice and no approval: local law and licensed practice decide, and laws change.",
    "What is not known is never a pass: ask the spinner, or have the yarn tested.",
    "A piece bears what its most tender yarn bears.",
)
TOLD_OF_CARE = ("care-words", "care-symbols-owned")
"""Facts that stand with every care label: what its words mean, and why it has no symbols."""

AS_LABELLED = "Percentages of the ball bands and grams as weighed, with no correction for moisture."
DRY = "Clean dry masses with the agreed allowances: Regulation (EU) No 1007/2011, Annexes VIII and IX."

OF_THE_UNKNOWN = frozenset(
    {"fibre-name-not-known", "fibre-process-not-told", "fibre-shares-not-whole", "fibre-state-not-told"}
    | {"yarn-fibres-not-told", "yarn-mass-not-told", "care-not-told", "superwash-not-told"}
)
"""Rules that speak of what is not known; their next step says whom to ask."""


def label(content: Mapping[str, Any], facts: Facts) -> Answer:
    """Return the composition and the labels of a piece; `content` has passed the wire schema, `facts` are by name."""
    return label_json(label_of(content, facts), facts)


def label_json(made: Labelled, facts: Facts) -> Answer:
    """Return a label as JSON values; `facts` give its standing notes."""
    findings = judge_label(made)
    return {
        "composition": _composition(made.whole, made),
        "parts": [_composition(part, made) for part in made.parts],
        "left_out": [_left_out(why, share, made) for why, share in made.left_out.items() if share != 0],
        "care": [_care_line(line, made) for line in made.care],
        "labels": [_label(made, market) for market in made.piece.markets],
        "findings": [finding_json(finding) for finding in findings],
        "not_known": list(_not_known(made, findings)),
        "safety_inputs": safety_inputs(made),
        "notes": [*NOTES, *(facts[name]["says"] for name in TOLD_OF_CARE), DRY if made.piece.dry else AS_LABELLED],
    }


def label_of(content: Mapping[str, Any], facts: Facts) -> Labelled:
    """Work out the label of a piece as a value."""
    law = law_of(facts)
    return labelled(piece_of(content, law.fibres), law)


def _composition(part: PartLabel, made: Labelled) -> Answer:
    of = part.made_of
    return {
        "part": part.name,
        "percent_of_piece": None if part.percent is None else _tenths(part.percent),
        "may_be_left_out": None if part.percent is None else bool(part.name) and part.percent < made.law.part_least,
        "known": of.known,
        "all_fibres_told": of.told,
        "fibres": _known(of, made.piece.places) if of.known else [_between(portion) for portion in of.portions],
    }


def _left_out(why: str, share: Fraction | None, made: Labelled) -> Answer:
    """Return what is to be left out of the percentages, and whether it is, in the markets that let it be."""
    lawful = share is not None and share <= made.law.left_out_most[why]
    return {"why": why, "percent_of_piece": None if share is None else _tenths(share), "left_out": lawful}


def _known(of: Composition, places: int) -> list[Answer]:
    percents = of.percents
    shown, finer = rounded(percents, places_for(percents, places)), rounded(percents, 2)
    return [
        {
            "fibre": portion.fibre.name,
            "percent": float(show),
            "hundredths": float(fine),
            "exact": str(portion.least),
            "between": None,
        }
        for portion, show, fine in zip(of.portions, shown, finer, strict=True)
    ]


def _between(portion: Portion) -> Answer:
    """Return the bounds of a share that is not known, to 0.1 outwards, so that they hold what may be."""
    step = Fraction(1, 10)
    ends = float(portion.least // step * step), float(-(-portion.most // step) * step)
    return {"fibre": portion.fibre.name, "percent": None, "hundredths": None, "exact": None, "between": list(ends)}


def _tenths(percent: Fraction) -> float:
    return float(rounded((percent, 100 - percent), 1)[0])


def _care_line(line: CareLine, made: Labelled) -> Answer:
    names = [yarn.name for yarn in made.piece.yarns]
    return {
        "heading": line.group.heading,
        "group": line.group.name,
        "value": line.value and line.value.word,
        "says": line.value and line.value.says,
        "at_most": line.at_most and line.at_most.word,
        "untold": [names[place] for place in line.untold],
        "set_by": [names[place] for place in line.deciding],
    }


def _label(made: Labelled, market: str) -> Answer:
    lines, care = fibre_lines(made, market), care_lines(made, market)
    wants = [_want(made, want, market) for want in made.law.wanted(market)]
    return {
        "market": market,
        "fibres": None if lines is None else list(lines),
        "care": None if care is None else list(care),
        "tolerance_percent": float(made.law.tolerances[market]) if market in made.law.tolerances else None,
        "stated": dict(made.piece.stated),
        "wants": wants,
        "missing": [want["field"] for want in wants if want["duty"] == "must" and not want["told"]],
    }


def _want(made: Labelled, want: Want, market: str) -> Answer:
    return {
        "field": want.field,
        "duty": want.duty,
        "told": told(made, want, market),
        "says": want.says,
        "source": want.source,
        "confidence": want.confidence,
    }


def _not_known(made: Labelled, findings: tuple[Finding, ...]) -> Iterator[Answer]:
    for finding in findings:
        if finding.rule in OF_THE_UNKNOWN:
            yield {"what": finding.message, "ask": finding.hint, "pointer": finding.pointer}
    if not any(yarn.care for yarn in made.piece.yarns):
        ask = "Copy it from each ball band, group by group, or ask the spinner."
        yield {"what": "Care is not known: no yarn tells it.", "ask": ask, "pointer": "/yarns"}
    for market in made.piece.markets:
        if all(part.made_of.known for part in made.of(market)) and fibre_lines(made, market) is None:
            yield {
                "what": f"The words of the label for {market}: a name or a language that is not kept here.",
                "ask": "Have them written by somebody who knows the law and the language there.",
                "pointer": "/markets",
            }
