"""What a plan's safety record holds beside the findings: for whom it is read, what is asked, sources, conflicts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from counterpane.craft.rules.safety import RULES
from counterpane.craft.safety import SafetyInputs
from counterpane.library.patterns.cautions import EDITION
from counterpane.library.safety.conflicts import conflicts_json

HOME_CHECK = (
    "Measure the finished piece, washed and dry; the largest counts, never the average.",
    "Openings: a smooth rod of the limit's size, such as a knitting needle, in the fabric lightly stretched both ways, "
    "without force.",
    "Cords: pulled straight before they are measured.",
    "What a check at home cannot do: published tests pull cords with 25 N, pull and twist parts with set forces for "
    "ten seconds, and light a surface under set conditions. A check at home repeats none of them and tells nothing of "
    "what is in the yarn.",
)
"""How a home check is made, and what it cannot do."""

NAMED = {"attachments.cords": "attachments.largest_mm", "markets on record": "markets"}
"""Needs whose name is not that of an input."""

_BY_REFERENCE = {rule.reference: rule for rule in RULES if rule.reference}


def read_for(inputs: SafetyInputs) -> dict[str, Any]:
    """Return for which child, use, markets and advice a record is read; null is not known."""
    return {
        "age_band": inputs.age_band,
        "use": inputs.use,
        "markets": None if inputs.markets is None else list(inputs.markets),
        "advice": None if inputs.followed is None else list(inputs.followed),
    }


def asked_for(inputs: SafetyInputs, not_assessed: Sequence[str]) -> dict[str, list[str]]:
    """Return which inputs each rule that was not assessed lacks: those that it needs, else those of its scope."""
    return {reference: _lacks(inputs, reference) for reference in not_assessed}


def beside(findings: Sequence[Mapping[str, Any]], concerned: Sequence[str]) -> dict[str, Any]:
    """Return the sources of the findings with their rules, the conflicts that are touched, and the home check."""
    sources: dict[str, list[str]] = {}
    for finding in findings:
        rules = sources.setdefault(finding["source"], [])
        if finding["reference"] not in rules:
            rules.append(finding["reference"])
    return {
        "sources": [{"source": source, "rules": rules} for source, rules in sources.items()],
        "edition": EDITION,
        "conflicts": conflicts_json(concerned),
        "home_check": list(HOME_CHECK),
    }


def _lacks(inputs: SafetyInputs, reference: str) -> list[str]:
    rule = _BY_REFERENCE[reference]
    needs = [need for need in rule.needs if not inputs.knows(need)]
    scope = [] if inputs.concerns(rule.scope) is not None else inputs.unmet(rule.scope)
    return list(dict.fromkeys(name for need in (*scope, *needs) for name in _named(inputs, need)))


def _named(inputs: SafetyInputs, need: str) -> list[str]:
    """Return the inputs by which a need is met, as they are named in a request."""
    if need == "gsm":
        return [name for name in ("mass_g", "width_cm", "length_cm") if not inputs.knows(name)]
    return [NAMED.get(need, need)]
